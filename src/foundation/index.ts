export * from './citation.ts';
export * from './formula.ts';
export * from './interpolate.ts';
export * from './refusal.ts';
export * from './remember.ts';
export * from './root.ts';
export * from './trace.ts';
export * from './units.ts';
