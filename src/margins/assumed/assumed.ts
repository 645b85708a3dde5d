/** What a plan may not give and an answer must assume one way or the other. */
export const ASSUMED = [
  'cables',
  'mast',
  'load-offset',
  'bearing-height',
  'rated-height',
  'ice-class',
  'frequency',
  'damping',
  'pole-sides',
  'bracing-pattern',
  'conductor',
  'alike-along',
] as const;
export type AssumedName = (typeof ASSUMED)[number];

/** One thing that a plan does not say. */
export interface Assumed {
  readonly of: AssumedName;
  /** JSON pointer of the field that would say it. */
  readonly at: string;
}
