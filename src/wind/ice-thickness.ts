import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import { REFERENCE_HEIGHT } from './exposure-coefficient.ts';
import type { RiskCategory } from './site.ts';

export const iceHeightFactor = defineFormula({
  id: 'ice-height-factor',
  title: 'Height factor of ice thickness',
  symbol: 'f_z',
  unit: 'one',
  expression: 'min(1.4, (z / z_33)^0.10)',
  variables: [
    variable('z', 'height above ground', 'length', 0, 600),
    variable('z_33', 'reference height, 33 ft', 'length', 10.0584, 10.0584),
  ],
  cite: cite('asce7-10', 'Eq. 10.4-4, p. 48; TIA-222-G 2.6.8 in the same form', 'published'),
  of: (z: number, reference: number) => Math.min(1.4, (z / reference) ** 0.1),
});

export const designIceThickness = defineFormula({
  id: 'ice-design-thickness',
  title: 'Design thickness of radial ice',
  symbol: 't_d',
  unit: 'diameter',
  expression: 'k_T * t * I_i * f_z * K_zt^0.35',
  variables: [
    variable('k_T', '2 with the 50-year maps of ASCE 7-10 and TIA-222-G, else 1', 'one', 1, 2),
    variable('t', 'thickness on the map', 'diameter', 0, 0.1),
    variable('I_i', 'importance for ice', 'one', 0.8, 1.25),
    variable('f_z', 'height', 'one', 0.5, 1.4),
    variable('K_zt', 'hill', 'one', 1, 3),
  ],
  cite: cite('asce7-10', 'Eq. 10.4-5, p. 48; later editions and TIA-222 from memory', 'memory'),
  of: (mapFactor: number, thickness: number, importance: number, height: number, hill: number) =>
    mapFactor * thickness * importance * height * hill ** 0.35,
});

type ByRiskCategory = Readonly<Record<RiskCategory, number>>;
/** Importance of ice thickness, ASCE 7-10 Table 1.5-2. @source asce7-10 */
export const ICE_IMPORTANCE_7_10: ByRiskCategory = { I: 0.8, II: 1, III: 1.25, IV: 1.25 };
/** Importance of ice thickness, ASCE 7-16 Table 1.5-2. @source asce7-16 */
export const ICE_IMPORTANCE_7_16: ByRiskCategory = { I: 0.8, II: 1, III: 1.15, IV: 1.25 };
/** TIA-222-G Table 2-3, from memory; class I needs no ice, and counts as II where it is given. @source tia222-g */
export const ICE_IMPORTANCE_G: ByRiskCategory = { I: 1, II: 1, III: 1.25, IV: 1.25 };
/** TIA-222-H, likely as in ASCE 7-16, from memory; class I as in -G. @source tia222-h */
export const ICE_IMPORTANCE_H: ByRiskCategory = { I: 1, II: 1, III: 1.15, IV: 1.25 };

/** How a method turns the ice of its map into ice on a member, and which wind goes with it. */
export interface IceRule {
  /** 2 where the map's ice is of 50 years. */
  readonly mapFactor: 1 | 2;
  readonly importance: ByRiskCategory | undefined;
  /** Thickness grows with height and hill. */
  readonly grows: boolean;
  /** The speed its wind takes for the gust given beside the ice [m/s], or the share of its own wind's force. */
  readonly wind: { readonly speedOfGust: (gust: number) => number } | { readonly shareOfForce: number };
  /** To the allowable level, of the wind with ice and of the weight of ice. */
  readonly windLevel: number;
  readonly weightLevel: number;
}

/**
 * Design thickness of ice at a height.
 *
 * t_d = k_T·t·I_i·f_z·K_zt^0.35
 *
 * @param thickness on the map, or radial ice given [m]
 * @param z height above ground [m]
 * @param hill topographic factor there [-]
 * @returns the thickness [m]
 * @example iceThickness({ mapFactor: 2, importance: ICE_IMPORTANCE_7_10, grows: true, wind: { shareOfForce: 1 }, windLevel: 0.7, weightLevel: 0.7 }, 0.01905, 'II', 15.24, 1) // 0.03972
 * @source asce7-10
 */
export function iceThickness(
  rule: IceRule,
  thickness: number,
  category: RiskCategory,
  z: number,
  hill: number,
  trace?: Trace,
): number {
  if (!rule.grows) return thickness;
  const height = evaluate(trace, iceHeightFactor, [z, REFERENCE_HEIGHT]);
  const importance = rule.importance?.[category] ?? 1;
  return evaluate(trace, designIceThickness, [rule.mapFactor, thickness, importance, height, hill]);
}
