export * from './checks.ts';
export * from './choices.ts';
export * from './compared.ts';
export * from './figures.ts';
export * from './reasons.ts';
export * from './speeds.ts';
export * from './verdicts.ts';
