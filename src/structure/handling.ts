import { cite, defineFormula, evaluate, Refusal, type Trace, under, variable } from '../foundation/index.ts';

/** Which part of an antenna points at the ground while the tower lies: its boom, or its elements. */
export const ORIENTATIONS = ['booms-upright', 'elements-upright'] as const;
export type Orientation = (typeof ORIENTATIONS)[number];

/** An antenna on a tower that is laid down about a hinge. Its boom and elements are square to the mast. */
export interface Laid {
  readonly name: string;
  /** Along the tower from the hinge [m]. */
  readonly along: number;
  /** Longer part of the boom, from the mast [m]; 0 where it has none. */
  readonly halfBoom: number;
  /** Half the longest element [m]; 0 where it has none. */
  readonly halfElement: number;
  /** Turned a quarter against the others on the mast. */
  readonly crossed?: boolean;
  /** Fixed, so that turning the mast does not help: whatever way it faces counts. Absent: it turns with the mast. */
  readonly fixed?: boolean;
}

export interface LaidAntenna {
  readonly name: string;
  /** How far it reaches below the mast, tower level [m]. */
  readonly below: number;
  /** Between its lowest part and the ground, tower level; below zero: it touches before the tower is level [m]. */
  readonly clearance: number;
  /** Where it touches: how far the tower is still above level [rad]; absent where it does not. */
  readonly touchesAt?: number;
}

export interface LaidTower {
  readonly orientation: Orientation;
  readonly antennas: readonly LaidAntenna[];
  /** The least of the clearances [m]. */
  readonly clearance: number;
  /** How high the mast must lie for all to be clear of the ground, tower level [m]. */
  readonly mastAtLeast: number;
  /** How far above level the tower stops, held up by what touches first [rad]; 0: it comes down level. */
  readonly restsAt: number;
  /** Working height of each antenna at the mast when the tower has come down, in the order given [m]. */
  readonly workingHeights: readonly number[];
}

export interface Handling {
  /** Height of the axis of the lying tower [m]. */
  readonly axisHeight: number;
  readonly orientations: readonly [LaidTower, LaidTower];
  /** The one with the larger clearance; alike: booms upright. */
  readonly best: Orientation;
}

export const reachBelowMast = defineFormula({
  id: 'reach-below-mast',
  title: 'How far an antenna that does not turn with the mast may reach from it',
  symbol: 'r',
  unit: 'length',
  expression: 'sqrt(r_b^2 + r_e^2)',
  variables: [
    variable('r_b', 'half the boom', 'length', 0, 20),
    variable('r_e', 'half the longest element, as given or from the reach of its tips', 'length', 0, 20),
  ],
  cite: cite('derived', 'from the mast to the corner of boom and element', 'derived'),
  of: (boom: number, element: number) => Math.sqrt(boom ** 2 + element ** 2),
});

export const clearanceOfLaid = defineFormula({
  id: 'clearance-when-laid',
  title: 'Between the lowest part of an antenna and the ground, the tower level',
  symbol: 'c',
  unit: 'length',
  expression: 'h - r',
  variables: [
    variable('h', 'height of the axis of the tower lowered flat', 'length', 0, 15),
    variable('r', 'reach of the antenna towards the ground', 'length', 0, 20),
  ],
  cite: cite('common-practice', 'with its boom upright a beam reaches half its boom below the mast', 'common-practice'),
  of: (height: number, reach: number) => height - reach,
});

export const heightOfLaid = defineFormula({
  id: 'height-when-laid',
  title: 'Height of a place on a tower that is at an angle above level',
  symbol: 'y',
  unit: 'length',
  expression: 'h + x * sin(theta)',
  variables: [
    variable('h', 'height of the axis of the tower lowered flat', 'length', 0, 15),
    variable('x', 'place from the hinge, along the tower', 'length', 0, 40),
    variable('theta', 'above level', 'angle', 0, Math.PI / 2),
  ],
  cite: cite('derived', 'geometry', 'derived'),
  of: (height: number, along: number, angle: number) => height + along * Math.sin(angle),
});

export const reachDownWhenLaid = defineFormula({
  id: 'reach-down-when-laid',
  title: 'How far below the mast an antenna reaches on a tower that is at an angle above level',
  symbol: 'y_r',
  unit: 'length',
  expression: 'r * cos(theta)',
  variables: [
    variable('r', 'reach of the antenna from the mast', 'length', 0, 20),
    variable('theta', 'above level', 'angle', 0, 1.57),
  ],
  cite: cite('derived', 'geometry; it touches where this is the height of the mast there', 'derived'),
  of: (reach: number, angle: number) => reach * Math.cos(angle),
});

/**
 * Half the longest element of an antenna of which only the boom and the farthest tip are known: as if it sat at the end of
 * the boom.
 *
 * √(r² − (B/2)²), at most r
 *
 * @param reach the farthest tip from the mast [m]
 * @param boom length of the boom [m]
 * @returns half the element, at least [m]
 * @throws Refusal where the tip is nearer than the end of the boom
 * @example halfElementFrom(5, 6) // 4
 * @source derived
 */
export function halfElementFrom(reach: number, boom: number): number {
  if (!(boom >= 0 && reach >= boom / 2 && Number.isFinite(reach)))
    throw new Refusal('antenna-reach', 'The farthest tip is not nearer to the mast than the end of the boom.');
  return Math.sqrt(Math.max(0, reach ** 2 - (boom / 2) ** 2));
}

/**
 * What a tower that lies about its hinge leaves between its antennas and the ground, with their booms or with their
 * elements pointing down, and which of both is better.
 *
 * level c = h − r, r half the boom or half the element; it touches at h + x·sin θ = r·cos θ
 *
 * One antenna, or several alike, reach farther at any heading between. Where some are crossed a heading between may be
 * better than both; it is not looked for. Ground that slopes is the owner's to see.
 *
 * @param axisHeight height of the axis of the tower lowered flat, the hinge's with its offset [m]
 * @param antennas what is on it beyond the hinge [m]
 * @returns for both, and the better named: clearances, working heights [m], resting angle [rad]
 * @throws Refusal where a size is below zero
 * @example handling(1, [{ name: 'beam', along: 15, halfBoom: 4.572, halfElement: 6 }]).orientations[0].mastAtLeast // 4.572
 * @example handling(1, [{ name: 'beam', along: 15, halfBoom: 4.572, halfElement: 6 }]).best // 'booms-upright'
 * @source common-practice, derived
 */
export function handling(axisHeight: number, antennas: readonly Laid[], trace?: Trace): Handling {
  if (!(axisHeight >= 0 && Number.isFinite(axisHeight)))
    throw new Refusal('hinge-height', 'The axis of the tower lowered flat is at the ground or above it.');
  for (const { along, halfBoom, halfElement } of antennas)
    for (const each of [along, halfBoom, halfElement])
      if (!(each >= 0 && Number.isFinite(each)))
        throw new Refusal('antenna-reach', 'Places beyond the hinge, booms and elements are numbers from zero up.');
  const laid = (orientation: Orientation) =>
    under(trace, orientation.replace('-', ' '), () => laidTower(axisHeight, antennas, orientation, trace));
  const booms = laid('booms-upright');
  const elements = laid('elements-upright');
  return {
    axisHeight,
    orientations: [booms, elements],
    best: elements.clearance > booms.clearance ? 'elements-upright' : 'booms-upright',
  };
}

function laidTower(h: number, antennas: readonly Laid[], orientation: Orientation, trace?: Trace): LaidTower {
  const found = antennas.map((antenna): LaidAntenna & { readonly along: number } => {
    const below = reachOf(antenna, orientation, trace);
    const clearance = evaluate(trace, clearanceOfLaid, [h, below], antenna.name);
    const touchesAt = clearance < 0 ? touchingAngle(h, antenna.along, below) : undefined;
    if (trace && touchesAt !== undefined) {
      evaluate(trace, heightOfLaid, [h, antenna.along, touchesAt], `${antenna.name} where it touches`);
      evaluate(trace, reachDownWhenLaid, [below, touchesAt], `${antenna.name} where it touches`);
    }
    return {
      name: antenna.name,
      below,
      clearance,
      along: antenna.along,
      ...(touchesAt === undefined ? {} : { touchesAt }),
    };
  });
  const restsAt = Math.max(0, ...found.map(({ touchesAt }) => touchesAt ?? 0));
  return {
    orientation,
    antennas: found.map(({ along: _, ...antenna }) => antenna),
    clearance: found.length === 0 ? h : Math.min(...found.map(({ clearance }) => clearance)),
    mastAtLeast: Math.max(0, ...found.map(({ below }) => below)),
    restsAt,
    workingHeights: found.map(({ along, name }) => evaluate(trace, heightOfLaid, [h, along, restsAt], name)),
  };
}

function reachOf({ halfBoom, halfElement, crossed, fixed }: Laid, orientation: Orientation, trace?: Trace): number {
  if (fixed) return evaluate(trace, reachBelowMast, [halfBoom, halfElement]);
  return (orientation === 'booms-upright') !== (crossed ?? false) ? halfBoom : halfElement;
}

/** h + x·sin θ = r·cos θ, with r above h: an angle between level and upright. */
function touchingAngle(h: number, along: number, reach: number): number {
  return Math.atan2(reach, along) - Math.asin(h / Math.hypot(along, reach));
}
