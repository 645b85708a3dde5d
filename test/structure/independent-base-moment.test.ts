import { describe, expect, it } from 'vitest';
import { assessed } from '../margins/any-plan.ts';
import { demoPlan } from '../margins/demo-plan.ts';

/*
 * The base shear and moment of two plans once more, by a plain sum every 10 cm, with the formulas typed again and nothing
 * of the program but its answer. Units: ft, psf, lbf.
 */
const STEP = 0.1 / 0.3048;

type Pressure = (z: number) => number;

const onLevelGround: Pressure = (z) => 0.00256 * 2.01 * (Math.max(z, 15) / 900) ** (2 / 9.5) * 0.85 * 105 ** 2;

const behindTheEdge: Pressure = (z) =>
  onLevelGround(z) * (1 + 0.85 * (45 / 180) * (1 - 120 / (4 * 180)) * Math.exp((-2.5 * z) / 180)) ** 2;

const ALLOWABLE = 0.6;
const GUST = 0.85;

interface Part {
  readonly force: number;
  readonly moment: number;
}

function along(pressure: Pressure, low: number, high: number, areaPerFoot: number): Part {
  let force = 0;
  let moment = 0;
  for (let z = low; z < high; z += STEP) {
    const height = Math.min(STEP, high - z);
    const middle = z + height / 2;
    const slice = ALLOWABLE * pressure(middle) * GUST * areaPerFoot * height;
    force += slice;
    moment += slice * middle;
  }
  return { force, moment };
}

function atPoint(pressure: Pressure, z: number, area: number): Part {
  const force = ALLOWABLE * pressure(z) * GUST * area;
  return { force, moment: force * z };
}

/** Drag area of a foot of a three-face lattice of round members, 18 in wide. */
function lattice(solidity: number): number {
  return 1.5 * solidity * (3.4 * solidity ** 2 - 4.7 * solidity + 3.4) * (0.51 * solidity ** 2 + 0.57);
}

function expectAnswer(id: string, parts: readonly Part[]): void {
  const force = parts.reduce((sum, part) => sum + part.force, 0);
  const moment = parts.reduce((sum, part) => sum + part.moment, 0);
  const { windLoads } = assessed(demoPlan(id));
  expect(Math.abs(windLoads.total.force / 4.4482216152605 / force - 1)).toBeLessThan(1e-3);
  expect(Math.abs(windLoads.total.momentAtBase / 4.4482216152605 / 0.3048 / moment - 1)).toBeLessThan(1e-3);
}

describe('base shear and moment, by a plain sum along the tower', () => {
  it('are those of the answer for the plan of ten numbers', () => {
    // Areas of unsaid kind at 1.8 times what is stated, members of unsaid size at 0.35 of the face.
    expectAnswer('ten-numbers', [
      atPoint(onLevelGround, 50, 1.8 * 5.5),
      along(onLevelGround, 0, 48, (1.2 * 3 * 0.405) / 12),
      along(onLevelGround, 0, 48, lattice(0.35)),
    ]);
  });

  it('are those of the answer for the tower on the bluff', () => {
    const brace = (7 / 16) * Math.hypot(18 - 1.25, 18) * ((18 - 2.5) / (18 - 1.25));
    const elements = (4 * 2 * (48 * 1 + 48 * 0.75 + 40 * 0.5)) / 144;
    expectAnswer('river-bluff', [
      atPoint(behindTheEdge, 50.5, 1.2 * elements),
      along(behindTheEdge, 56, 65, (1.2 * 1.25) / 12),
      along(behindTheEdge, 44, 56, (1.2 * 2) / 12),
      // The panel's face: a board twice as high as wide, solid signs far above the ground.
      atPoint(behindTheEdge, 34, 1.85 * 2),
      along(behindTheEdge, 0, 48, (1.2 * 3 * 0.405) / 12),
      along(behindTheEdge, 0, 48, lattice((2 * 1.25 * 18 + brace) / (18 * 18))),
    ]);
  });
});
