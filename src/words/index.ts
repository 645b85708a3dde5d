export * from './cautions.ts';
export * from './checks.ts';
export * from './choices.ts';
export * from './compared.ts';
export * from './figures.ts';
export * from './index.mjs';
export { type PlanHash, planText } from './plan-text.ts';
export * from './questions.ts';
export * from './reasons.ts';
