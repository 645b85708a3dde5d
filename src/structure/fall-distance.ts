import { cite, defineFormula, evaluate, FOOT, Refusal, type Trace, variable } from '../foundation/index.ts';

/** Left between the farthest that a falling tower reaches and a line or limit [m]: 10 ft. @source common-practice */
export const FALL_CLEARANCE = 10 * FOOT;

export type FallTarget = 'power-line' | 'property-line' | 'building';

export interface FallComparison {
  readonly to: FallTarget;
  /** From the foot of the tower [m]. */
  readonly distance: number;
  /** Height of all and half an element [m]: what may come down there. */
  readonly reach: number;
  /** The reach and the clearance [m]. */
  readonly wanted: number;
  /** Distance less what is wanted; below zero: too near [m]. */
  readonly spare: number;
  /** Wanted over distance. */
  readonly ratio: number;
  /** The bare reach is short of it, whatever the clearance. */
  readonly outOfReach: boolean;
}

export const fallDistanceWanted = defineFormula({
  id: 'fall-distance',
  title: 'Distance to keep from what a falling tower must not reach',
  symbol: 'd_w',
  unit: 'length',
  expression: 'h_tip + r_e + c',
  variables: [
    variable('h_tip', 'height of the tip of all above the ground', 'length', 0, 100),
    variable('r_e', 'half the longest element, as given or from the reach of its tips', 'length', 0, 30),
    variable('c', 'left between, 10 ft', 'length', FALL_CLEARANCE, FALL_CLEARANCE),
  ],
  cite: cite('common-practice', 'height, half an element and ten feet', 'common-practice'),
  of: (tip: number, element: number, clearance: number) => tip + element + clearance,
});

export const fallRatio = defineFormula({
  id: 'fall-use',
  title: 'Distance to keep over distance given',
  symbol: 'u',
  unit: 'one',
  expression: 'd_w / d',
  variables: [
    variable('d_w', 'distance to keep', 'length', 3, 150),
    variable('d', 'distance from the base', 'length', 0.5, 500),
  ],
  cite: cite('derived', 'demand over what there is', 'derived'),
  of: (wanted: number, distance: number) => wanted / distance,
});

/**
 * Whether what falls may reach a power line, a property line or a building.
 *
 * d_w = h_tip + half an element + 10 ft, against the distance from the foot
 *
 * It takes the tower to fall whole and straight; a line under voltage wants more room than a fence, by its voltage, and
 * nothing is said of what comes loose and flies.
 *
 * @param tip height of the highest part, mast and antennas in it, above the ground [m]
 * @param halfElement half the longest element, or what an antenna else reaches from the mast; 0 without any [m]
 * @param distances what must not be reached, and how far from the foot [m]
 * @returns for each, the distance wanted, what is to spare [m], and the ratio
 * @throws Refusal where a distance is not above zero, or a height or length is below it
 * @example fallDistances(18, 5, [{ to: 'power-line', distance: 30 }])[0].wanted // 26.048
 * @example fallDistances(18, 5, [{ to: 'property-line', distance: 24 }])[0].ratio // 1.0853
 * @source common-practice
 */
export function fallDistances(
  tip: number,
  halfElement: number,
  distances: readonly { readonly to: FallTarget; readonly distance: number }[],
  trace?: Trace,
): readonly FallComparison[] {
  if (!(tip >= 0 && halfElement >= 0 && Number.isFinite(tip + halfElement)))
    throw new Refusal('fall-height', 'Height and half the element are numbers from zero up.');
  if (distances.length === 0) return [];
  const wanted = evaluate(trace, fallDistanceWanted, [tip, halfElement, FALL_CLEARANCE]);
  const reach = tip + halfElement;
  return distances.map(({ to, distance }) => {
    if (!(distance > 0 && Number.isFinite(distance)))
      throw new Refusal('fall-distance', 'A distance from the base is above zero.');
    return {
      to,
      distance,
      reach,
      wanted,
      spare: distance - wanted,
      ratio: evaluate(trace, fallRatio, [wanted, distance]),
      outOfReach: reach < distance,
    };
  });
}
