/** What a plan may leave unsaid and an answer must take one way or the other. */
export const UNTOLD = [
  'cables',
  'load-offset',
  'bearing-height',
  'rated-height',
  'ice-class',
  'damping',
  'pole-sides',
  'bracing-pattern',
] as const;
export type UntoldName = (typeof UNTOLD)[number];

/** One thing that a plan does not say. */
export interface Untold {
  readonly of: UntoldName;
  /** JSON pointer of the field that would say it. */
  readonly at: string;
}
