/** Share of the breaking strength of a guy that its tension may reach, and at which level of the wind. */
export interface GuyRule {
  readonly level: 'strength' | 'nominal';
  readonly share: number;
}

/** Two on breaking, in the wind of the map: TIA/EIA-222-F and before, second hand. @source eia222-f */
export const HALF_IN_MAPPED_WIND: GuyRule = { level: 'nominal', share: 0.5 };

/** TIA-222-G and -H, from memory. @source tia222-g */
export const SIX_TENTHS_AT_STRENGTH: GuyRule = { level: 'strength', share: 0.6 };

/** A partial factor of two on breaking: EN 1993-3-1, from memory. @source en1993-3-1 */
export const HALF_AT_STRENGTH: GuyRule = { level: 'strength', share: 0.5 };
