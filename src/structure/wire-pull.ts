import { type Conductor, ICE_DENSITY, iceWeightPerLength, type TautWire } from '../areas/index.ts';
import {
  cite,
  defineFormula,
  evaluate,
  GRAVITY,
  listVariable,
  nth,
  type Trace,
  under,
  variable,
} from '../foundation/index.ts';
import { type Cable, tensionFormula, tensionOf, unstrainedLength } from './cable.ts';
import type { IceAt } from './iced-items.ts';
import type { Load, Station } from './station.ts';
import type { WindItem } from './wind-item.ts';

/** Of a wire across the wind. @source tia222-h */
const WIRE_COEFFICIENT = 1.2;

/** Wind headings that are tried [rad]. */
const HEADING_STEP = Math.PI / 12;

/** Of steel, the stiffest of conductors; aluminium is the softest. @source common-practice */
const MODULUS: Readonly<Record<Conductor, number>> = {
  'hard-copper': 117e9,
  'soft-copper': 100e9,
  'copper-clad-steel': 165e9,
  aluminium: 69e9,
  steel: 190e9,
};

export const stiffnessOfWire = defineFormula({
  id: 'stiffness-of-wire',
  title: 'Stiffness of a wire, as if it were solid',
  symbol: 'EA',
  unit: 'force',
  expression: 'E * pi * d^2 / 4',
  variables: [
    variable('E', 'modulus of its material; of steel where that is not given', 'stress', 6e10, 2e11),
    variable('d', 'diameter', 'diameter', 0.0005, 0.02),
  ],
  cite: cite('derived', 'geometry; moduli from memory', 'memory'),
  of: (modulus: number, diameter: number) => (modulus * Math.PI * diameter ** 2) / 4,
});

export const loadOfWire = defineFormula({
  id: 'load-across-wire',
  title: 'What loads each length of a wire across: wind, and its weight with ice',
  symbol: 'q',
  unit: 'force-per-length',
  expression: 'sqrt((p * C * d * k)^2 + w^2)',
  variables: [
    variable('p', 'pressure of the wind, level, gust and direction factors in it', 'pressure', 0, 5000),
    variable('C', 'force coefficient', 'one', 1.2, 1.2),
    variable('d', 'diameter, with ice', 'diameter', 0.0005, 0.1),
    variable('k', 'share of the wind that crosses it', 'one', 0, 1),
    variable('w', 'weight of each length, across', 'force-per-length', 0, 50),
  ],
  cite: cite('derived', 'cross-flow: the wind less its part along the wire, squared', 'derived'),
  of: (pressure: number, coefficient: number, diameter: number, share: number, weight: number) =>
    Math.hypot(pressure * coefficient * diameter * share, weight),
});

export const growthOfPull = defineFormula({
  id: 'growth-of-pull',
  title: 'What the wind adds to the pull of the wires at one height',
  symbol: 'H_w',
  unit: 'force',
  expression: 'sqrt(sum(h .* map(psi, cos))^2 + sum(h .* map(psi, sin))^2)',
  variables: [
    listVariable('h', 'what it adds to each, level', 'force', 0, 1e4),
    listVariable('psi', 'where each runs', 'angle', 0, 6.3),
  ],
  cite: cite('derived', 'sum of vectors, at the wind heading that makes it largest', 'derived'),
  of: (growths: readonly number[], headings: readonly number[]) => {
    const [north, east] = sumOf(growths, headings);
    return Math.sqrt(north ** 2 + east ** 2);
  },
});

export const growthOfWire = defineFormula({
  id: 'growth-of-wire-tension',
  title: 'What the wind adds to the level pull of a wire',
  symbol: 'h',
  unit: 'force',
  expression: 'n * k * (max(T, 0.6 * T_s) - T_0)',
  variables: [
    variable('n', 'how many', 'one', 1, 100),
    variable('k', 'level share of its pull', 'one', 0.1, 1),
    variable('T', 'tension in this wind', 'force', 0, 1e5),
    variable('T_s', 'tension in the same wind at strength level', 'force', 0, 1e5),
    variable('T_0', 'tension in still air', 'force', 0, 1e5),
  ],
  cite: cite('derived', 'tension grows slower than its wind: the larger of both levels counts', 'derived'),
  of: (count: number, level: number, tension: number, atStrength: number, still: number) =>
    count * level * (Math.max(tension, ALLOWABLE_TO_STRENGTH * atStrength) - still),
});

/** Of the allowable to the strength level of a wind. @source asce7-16 */
const ALLOWABLE_TO_STRENGTH = 0.6;

const sumOf = (forces: readonly number[], headings: readonly number[]): readonly [north: number, east: number] => {
  let [north, east] = [0, 0];
  forces.forEach((force, index) => {
    north += force * Math.cos(nth(headings, index));
    east += force * Math.sin(nth(headings, index));
  });
  return [north, east];
};

/**
 * What the wind adds to the pull of wires whose tension in still air is known, one item for all that leave from one height. It
 * acts on the tower whatever the heading of the wind on everything else.
 *
 * @param station its loads
 * @param iceAt thickness of ice by height [m], or nothing
 * @source derived
 */
export function wirePullItems(station: Pick<Station, 'loads'>, iceAt?: IceAt): readonly WindItem[] {
  const groups = new Map<string, Load[]>();
  for (const load of station.loads) {
    if (load.shape.kind !== 'wire' || load.shape.pull === undefined) continue;
    const place = `${load.on} ${load.low.toFixed(3)}`;
    groups.set(place, [...(groups.get(place) ?? []), load]);
  }
  return [...groups.values()].map((group): WindItem => {
    const first = nth(group, 0);
    const { low, on, at } = first;
    const wires = group.flatMap((load) => tautWire(load, iceAt?.(low) ?? 0) ?? []);
    const rule = { of: 'wire-pull', wires } as const;
    return {
      name: `wind on the pull of ${group.map(({ name }) => name).join(', ')}`,
      at,
      kind: 'wire-pull',
      parts: [{ low, high: low, what: 'pull', front: 1, side: 1, diameter: 0, rule }],
      turn: 'still',
      heading: 0,
      carriedBy: on,
      offset: 0,
    };
  });
}

function tautWire({ shape, count, weight = 0 }: Load, ice: number): TautWire | undefined {
  if (shape.kind !== 'wire' || shape.pull === undefined) return undefined;
  const { diameter, distance, rise, heading, pull, conductor } = shape;
  const chord = Math.hypot(distance, rise);
  const level = distance / chord;
  const ofOwn = (weight * GRAVITY * level) / chord;
  return {
    count,
    chord,
    level,
    heading,
    diameter: diameter + 2 * ice,
    tension: pull / level,
    stiffness: stiffnessOfWire.of(MODULUS[conductor ?? 'steel'], diameter),
    ...(conductor ? {} : { softest: stiffnessOfWire.of(MODULUS.aluminium, diameter) }),
    weight: ofOwn,
    weightWithIce: ofOwn + iceWeightPerLength.of(ICE_DENSITY, ice, diameter) * GRAVITY * level,
  };
}

/** Share of a wind that crosses a wire. */
function crossing({ level, heading }: TautWire, wind: number): number {
  return 1 - (level * Math.cos(wind - heading)) ** 2;
}

/**
 * What a wind adds to the pull of wires, at the heading that adds most.
 *
 * |Σ n·k·(T − T_0)·e|, T by the elastic parabola between ends that do not move
 *
 * @param pressure of the wind there, with its level, gust and direction factors [Pa]
 * @returns the force on the tower [N]
 * @source derived
 */
export function pullGrowth(wires: readonly TautWire[], pressure: number, trace?: Trace): number {
  const headings = wires.map(({ heading }) => heading);
  const cables = wires.map((wire) => readingsOf(wire).map((stiffness) => cableOf(wire, stiffness)));
  let [most, decides] = [-1, 0];
  let chosen: readonly number[] = wires.map(() => 0);
  for (const wind of windHeadings(wires)) {
    const growths = wires.map((wire, index) =>
      nth(cables, index).map((cable) => growth(wire, cable, pressure, crossing(wire, wind))),
    );
    for (const choice of choices(growths, headings)) {
      const sum = growthOfPull.of(
        growths.map((each, index) => nth(each, nth(choice, index))),
        headings,
      );
      if (sum <= most + 1e-9) continue;
      [most, decides] = [sum, wind];
      chosen = choice;
    }
  }
  if (!trace) return most;
  const growths = wires.map((wire, index) => {
    const { stiffness } = nth(nth(cables, index), nth(chosen, index));
    return under(trace, `wire ${index + 1}`, () =>
      explainGrowth(wire, stiffness, pressure, crossing(wire, decides), trace),
    );
  });
  return evaluate(trace, growthOfPull, [growths, headings]);
}

/** As stiff as it may be, and as soft. */
function readingsOf({ stiffness, softest }: TautWire): readonly number[] {
  return softest === undefined ? [stiffness] : [stiffness, softest];
}

/** Directions of the sum that are tried where wires of one height pull against each other [rad]. */
const DIRECTION_STEP = Math.PI / 36;

/** Of each wire the reading that pulls more in a direction, for every direction: nothing not told may spare what it opposes. */
function choices(growths: readonly (readonly number[])[], headings: readonly number[]): readonly (readonly number[])[] {
  if (growths.length === 1 || growths.every(({ length }) => length === 1)) return [growths.map(() => 0)];
  return Array.from({ length: Math.round((2 * Math.PI) / DIRECTION_STEP) }, (_, step) =>
    growths.map((each, index) => (Math.cos(step * DIRECTION_STEP - nth(headings, index)) >= 0 ? 0 : each.length - 1)),
  );
}

/** Every so many degrees, and across each wire. */
function windHeadings(wires: readonly TautWire[]): readonly number[] {
  const across = wires.map(({ heading }) => heading + Math.PI / 2);
  if (wires.length < 2) return across;
  const steps = Math.round(Math.PI / HEADING_STEP);
  return [...across, ...Array.from({ length: steps }, (_, step) => step * HEADING_STEP)];
}

function cableOf({ chord, tension, weight }: TautWire, stiffness: number): Cable {
  return { chord, stiffness, unstrained: unstrainedLength(chord, weight, tension, stiffness) };
}

function growth(wire: TautWire, cable: Cable, pressure: number, share: number): number {
  const { count, level, diameter, weightWithIce, tension } = wire;
  const at = (wind: number) => tensionOf(cable, loadOfWire.of(wind, WIRE_COEFFICIENT, diameter, share, weightWithIce));
  return growthOfWire.of(count, level, at(pressure), at(pressure / ALLOWABLE_TO_STRENGTH), tension);
}

function explainGrowth(wire: TautWire, stiffness: number, pressure: number, share: number, trace: Trace): number {
  const { count, chord, level, tension, weight, diameter, weightWithIce } = wire;
  const cable = { chord, stiffness, unstrained: unstrainedLength(chord, weight, tension, stiffness, trace) };
  const at = (wind: number) => {
    const load = evaluate(trace, loadOfWire, [wind, WIRE_COEFFICIENT, diameter, share, weightWithIce]);
    const found = tensionOf(cable, load);
    return load > 0 ? evaluate(trace, tensionFormula, [load, chord, cable.unstrained, found, stiffness]) : found;
  };
  const [here, atStrength] = [at(pressure), at(pressure / ALLOWABLE_TO_STRENGTH)];
  return evaluate(trace, growthOfWire, [count, level, here, atStrength, tension]);
}
