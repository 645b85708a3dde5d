import { describe, expect, it } from 'vitest';
import { latticeParts, poleParts } from '../../src/areas/index.ts';
import { METHOD_BY_ID, type MethodId } from '../../src/methods/index.ts';
import {
  ALIKE_ON_TOWER,
  cutIntoSlices,
  type Level,
  profileOf,
  sliceForces,
  slicesInWind,
} from '../../src/structure/index.ts';

/*
 * Held against an integration of its own: thousands of thin steps of width times pressure, the pressure by the formulas of
 * the standards written here a second time, the coefficients by the local width.
 */
const FOOT = 0.3048;
const STEPS = 4000;

interface Tower {
  readonly width: readonly [number, number];
  readonly height: number;
}

/** Shear and moment at a height by thin steps. */
function byThinSteps({ width, height }: Tower, from: number, force: (z: number, wide: number) => number) {
  const step = (height - from) / STEPS;
  let [shear, moment] = [0, 0];
  for (let index = 0; index < STEPS; index += 1) {
    const z = from + (index + 0.5) * step;
    const here = force(z, width[0] + ((width[1] - width[0]) * z) / height) * step;
    shear += here;
    moment += here * (z - from);
  }
  return { shear, moment };
}

/** q/V² of level ground in exposure C or terrain II, and λ·G of a pole. */
const WINDS: Readonly<Partial<Record<MethodId, readonly [q: (z: number) => number, levelled: number]>>> = {
  'asce7-16': [(z) => 0.613 * 2.01 * (Math.max(z, 15 * FOOT) / (900 * FOOT)) ** (2 / 9.5), 0.6 * 0.85],
  'tia222-h': [(z) => 0.613 * 0.95 * Math.max(0.85, 2.01 * (z / (900 * FOOT)) ** (2 / 9.5)), 0.6 * 1.1],
  'eia222-f': [(z) => 0.613 * Math.max(1, (z / (33 * FOOT)) ** (2 / 7)), 0.75 * 1.69],
  'en1991-1-4': [
    (z) => {
      const log = Math.log(Math.max(z, 2) / 0.05);
      return (1 + 7 / log) * 0.5 * 1.25 * (0.19 * log) ** 2;
    },
    0.9,
  ],
};

const levelsAt = (...heights: readonly number[]): readonly Level[] => heights.map((z) => ({ z, zone: 'plain' }));

function windOver(method: MethodId, speed: number, height: number) {
  return METHOD_BY_ID[method].wind({
    units: 'si',
    speed,
    speedLevel: 'own',
    actual: false,
    exposure: method === 'en1991-1-4' ? 'II' : 'C',
    riskCategory: 'II',
    groundElevation: 0,
    windStructure: { kind: 'pole', sides: 8, guyed: false, height, width: 0.3 },
  });
}

function sums(
  method: MethodId,
  parts: ReturnType<typeof poleParts>,
  speed: number,
  levels: readonly Level[],
  top: number,
) {
  const wind = windOver(method, speed, top);
  const item = { name: 'tower', at: '', kind: 'tower', parts, ...ALIKE_ON_TOWER } as const;
  const cut = cutIntoSlices([item], [...levels.map(({ z }) => z), wind.bendsAt]);
  const inWind = slicesInWind(wind, cut, 'demand', 'face');
  return profileOf(inWind, sliceForces(inWind, speed, 'unfavourable', false), levels, { foot: top });
}

const TOWERS: Readonly<Record<string, Tower>> = {
  'short, strongly tapered': { width: [1.2, 0.2], height: 4 },
  'tall and slim': { width: [0.5, 0.15], height: 18 },
  straight: { width: [0.3, 0.3], height: 11 },
};

describe('the wind on what is long', () => {
  for (const [name, tower] of Object.entries(TOWERS)) {
    it.each(Object.entries(WINDS))(
      `bends and pushes a pole that is ${name} as thin steps have it, by %s`,
      (method, [q, levelled]) => {
        const speed = 20;
        const { width, height } = tower;
        const levels = levelsAt(height, height * 0.6, 0);
        const parts = poleParts({ kind: 'pole', width, sides: 8 }, 0, height, 8, 1);
        const profile = sums(method as MethodId, parts, speed, levels, height);
        // Eight sides: one coefficient at every speed.
        const coefficient = coefficientBy(method as MethodId, parts, height);
        const force = (z: number, wide: number) => levelled * q(z) * speed ** 2 * coefficient(z) * wide;
        const foot = byThinSteps(tower, 0, force);
        expect(profile.shear[0]).toBe(0);
        for (const [index, from] of [height * 0.6, 0].entries()) {
          const thin = byThinSteps(tower, from, force);
          expect(Math.abs((profile.shear[index + 1] as number) - thin.shear)).toBeLessThan(1e-4 * foot.shear);
          expect(Math.abs((profile.moment[index + 1] as number) - thin.moment)).toBeLessThan(1e-4 * foot.moment);
        }
      },
    );
  }

  it('has the solidity of a tapering lattice at every height, not in its middle', () => {
    const [width, height, leg, brace, panel] = [[0.9, 0.3] as const, 6, 0.03, 0.012, 0.4];
    const shape = {
      kind: 'lattice',
      faces: 3,
      members: 'round',
      width,
      solid: { by: 'members', leg, brace, panel, pattern: 'zigzag' },
    } as const;
    const levels = levelsAt(height, 3, 0);
    const profile = sums('asce7-16', latticeParts(shape, 0, height, 0.3, 1), 30, levels, height);
    const [q, levelled] = WINDS['asce7-16'] as NonNullable<(typeof WINDS)['asce7-16']>;
    const force = (z: number, wide: number) => {
      // ASCE/SEI 7 Fig. 29.5-3 and its note 3; one brace a panel between the legs.
      const axes = wide - leg;
      const solid = 2 * leg + (brace * Math.hypot(axes, panel) * ((wide - 2 * leg) / axes)) / panel;
      const e = solid / wide;
      return levelled * q(z) * 900 * (3.4 * e ** 2 - 4.7 * e + 3.4) * (0.51 * e ** 2 + 0.57) * solid;
    };
    for (const [index, from] of [3, 0].entries()) {
      const thin = byThinSteps({ width, height }, from, force);
      expect(Math.abs((profile.shear[index + 1] as number) / thin.shear - 1)).toBeLessThan(1e-4);
      expect(Math.abs((profile.moment[index + 1] as number) / thin.moment - 1)).toBeLessThan(1e-4);
    }
  });
});

/** The coefficient is the method's own: pressure, width and where they act are what is held here. */
function coefficientBy(method: MethodId, parts: ReturnType<typeof poleParts>, height: number) {
  const [part] = parts;
  if (!part) throw new Error('a pole without a part');
  const wind = windOver(method, 20, height);
  return (z: number) => wind.forceCoefficient((part.asAt?.(z) ?? part).rule, 'demand', 'face').byFlow.slow;
}
