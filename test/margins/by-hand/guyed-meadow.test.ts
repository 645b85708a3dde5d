import { describe, expect, it } from 'vitest';
import { FOOT, INCH, POUND, POUND_FORCE, SQUARE_FOOT } from '../../../src/foundation/index.ts';
import { guyedForcesOf } from '../../../src/margins/index.ts';
import type { HeldCase, HeldTower } from '../../../src/structure/index.ts';
import { heldByShooting } from '../../structure/held-by-shooting.ts';
import { assessed } from '../any-plan.ts';
import { demoPlan } from '../demo-plan.ts';

/*
 * The tower in the meadow a second time: pressures and areas from the formulas of the standard, the tower as a bent axis
 * integrated upwards on guys that hang as catenaries. Nothing of the program but its units is used.
 */
const G = 9.80665;
/** TIA-222-G 2.6.5 and 2.6.9 in exposure C, on a lattice: pressure times gust factor [Pa], speed in miles an hour. */
const pressure = (z: number, speed: number) => {
  const feet = Math.max(15, z / FOOT);
  return 0.00256 * 2.01 * (feet / 900) ** (2 / 9.5) * 0.85 * speed ** 2 * 0.85 * (POUND_FORCE / SQUARE_FOOT);
};

/** Three legs of 1.25 in, 12 in over all; one brace of 0.4375 in to a panel of 16 in, as far as it is clear of the legs. */
const AXES = 12 - 1.25;
const brace = (Math.hypot(AXES, 16) * (12 - 2 * 1.25)) / AXES;
const solid = (2 * 1.25 * 16 + 0.4375 * brace) / (12 * 16);
const rounds = 0.57 - 0.14 * solid + 0.86 * solid ** 2 - 0.24 * solid ** 3;
/** Effective area of a metre of it [m²]. */
const LATTICE = (3.4 * solid ** 2 - 4.7 * solid + 3.4) * rounds * solid * 12 * INCH;
/** Two single lines of 0.405 in, 1.2 each. */
const LINES = 2 * 0.405 * INCH * 1.2;

const legArea = Math.PI * (1.25 - 0.083) * 0.083 * INCH ** 2;
const legOwn = ((1.25 ** 4 - (1.25 - 2 * 0.083) ** 4) * Math.PI * INCH ** 4) / 64;
const EI = (E: number) => E * ((legArea * (AXES * INCH) ** 2) / 2 + 3 * legOwn);

interface Case {
  readonly speed: number;
  /** Of the wind, to the level that is looked at. */
  readonly factor: number;
  readonly top: number;
  readonly side: number;
  readonly lines: boolean;
}

/** Wind to the north on a tower of which one guy runs out to the north, or to the south. */
function solved({ speed, factor, top, side, lines }: Case, young: number, upwind: boolean) {
  const guys = [33, 65].flatMap((height) =>
    [0, 120, 240].map((degrees) => ({
      height: height * FOOT,
      offset: (12 * INCH) / Math.sqrt(3),
      heading: ((degrees + (upwind ? 180 : 0)) * Math.PI) / 180,
      radius: 50 * FOOT,
      anchorHeight: 0,
      stiffness: young * 7 * (Math.PI / 4) * 0.00157 ** 2,
      // Read at the anchor; half-way up half of the guy hangs beneath.
      tension: 400 * POUND_FORCE + (0.1086 * G * height * FOOT) / 2,
      weight: 0.1086 * G,
      drag: factor * pressure((height * FOOT) / 2, speed) * 1.2 * 0.1875 * INCH,
    })),
  );
  const layers = Array.from({ length: 70 }, (_, number) => {
    const [low, high] = [number * FOOT, (number + 1) * FOOT];
    const area = (LATTICE + (lines ? LINES : 0)) * FOOT;
    return { low, high, east: 0, north: factor * pressure((low + high) / 2, speed) * area, weight: 0 };
  });
  const at = (feet: number, area: number, weight: number) => ({
    low: feet * FOOT,
    high: feet * FOOT,
    east: 0,
    north: factor * pressure(feet * FOOT, speed) * area * SQUARE_FOOT,
    weight: weight * POUND * G,
  });
  const tower: HeldTower = {
    stretches: [{ low: 0, high: 70 * FOOT, bending: EI(200e9) }],
    footHeld: false,
    guys,
    brackets: [],
  };
  const held: HeldCase = {
    loads: [
      { low: 0, high: 70 * FOOT, east: 0, north: 0, weight: 450 * POUND * G },
      ...layers,
      at(70, top, lines ? 40 + 2 * 0.1 * 70 : 0),
      ...(side > 0 ? [at(50, side, 5)] : []),
    ],
    windTo: 0,
    onGuys: 1,
  };
  const { ends, start, tip } = heldByShooting(tower, held, true);
  const most = (level: number) => Math.max(...ends.slice(3 * level, 3 * level + 3).map(({ atTower }) => atTower));
  return { tensions: [most(0), most(1)] as const, thrust: (start[2] as number) * 1e4, tip };
}

const plan = assessed(demoPlan('meadow-guyed'));
const ways = [140e9, 190e9].flatMap((young) => [true, false].map((upwind) => ({ young, upwind })));
const worst = (of: (way: (typeof ways)[number]) => number) => Math.max(...ways.map(of));
const within = (share: number, actual: number, expected: number) =>
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThan(share);

describe('the tower in the meadow', () => {
  const forces = guyedForcesOf(plan);
  const nominal: Case = { speed: 80, factor: 1, top: 6, side: 1, lines: true };

  it('draws its guys, pushes down and moves as the second way says', () => {
    [0, 1].forEach((level) => {
      const expected = worst(({ young, upwind }) => solved(nominal, young, upwind).tensions[level] as number);
      within(5e-3, forces?.levels[level]?.tension ?? 0, expected);
    });
    within(
      5e-3,
      forces?.foot.thrust ?? 0,
      worst(({ young, upwind }) => solved(nominal, young, upwind).thrust),
    );
    within(
      1e-2,
      forces?.movement ?? 0,
      worst(({ young, upwind }) => solved(nominal, young, upwind).tip),
    );
  });

  it('uses what its rating shows of the lower guys as the second way says', () => {
    // At strength level, 1.6 of the wind of the map; what is there in still air off both.
    const still = (young: number) =>
      solved({ speed: 1, factor: 1e-9, top: 0, side: 0, lines: false }, young, true).tensions[0];
    const added = (each: Case, young: number) =>
      Math.max(...[true, false].map((upwind) => solved(each, young, upwind).tensions[0])) - still(young);
    const uses = [140e9, 190e9].map((young) => {
      const asked = added({ ...nominal, factor: 1.6 }, young);
      const shown = [0, 12].map((top) => added({ speed: 100, factor: 1.6, top, side: 0, lines: false }, young));
      return asked / Math.max(...shown);
    });
    const found = plan.checks.find(({ kind }) => kind === 'tower-below')?.result;
    expect(found?.of).toBe('guy-tension');
    within(5e-3, found?.ratio ?? 0, Math.max(...uses));
    within(5e-3, found?.ratioRange[0] ?? 0, Math.min(...uses));
  });

  it('uses its guys as the second way says', () => {
    const strength = worst(
      ({ young, upwind }) => Math.max(...solved({ ...nominal, factor: 1.6 }, young, upwind).tensions) / (0.6 * 17750),
    );
    within(5e-3, plan.checks.find(({ kind }) => kind === 'guys')?.result?.ratio ?? 0, strength);
  });
});
