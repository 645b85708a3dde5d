/** What the browser may use of this room. */
export * from './fields.mjs';
export * from './plain-figures.mjs';
export * from './plan-formats.mjs';
export * from './side-by-side.mjs';
export * from './verdicts.mjs';
