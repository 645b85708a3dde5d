import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { type Level, mastHold, profileOf, sliceForces } from '../../src/structure/index.ts';
import { assessed } from '../margins/any-plan.ts';

const math = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as typeof import('mathjs');

/*
 * A tower with a mast, as plane beams with stiffness matrices: the tower clamped at its foot, the mast hinged to it by
 * stiff checks at its bearing and its foot. The forces are those on the slices; shear and moment come from the
 * displacements.
 */
const EI = { tower: 2e6, mast: 4e4 };
const LINK = 1e10;

interface Beam {
  readonly nodes: readonly number[];
  readonly first: number;
  readonly EI: number;
}

function solve(
  beams: readonly Beam[],
  checks: readonly (readonly [number, number])[],
  loads: ReadonlyMap<number, number>,
) {
  const count = beams.reduce((sum, beam) => sum + beam.nodes.length, 0) * 2;
  const K: number[][] = Array.from({ length: count }, () => new Array<number>(count).fill(0));
  const add = (row: number, column: number, value: number) => {
    (K[row] as number[])[column] = ((K[row] as number[])[column] as number) + value;
  };
  for (const beam of beams) {
    for (let index = 0; index + 1 < beam.nodes.length; index += 1) {
      const L = (beam.nodes[index + 1] as number) - (beam.nodes[index] as number);
      const k = beam.EI / L ** 3;
      const element = [
        [12, 6 * L, -12, 6 * L],
        [6 * L, 4 * L * L, -6 * L, 2 * L * L],
        [-12, -6 * L, 12, -6 * L],
        [6 * L, 2 * L * L, -6 * L, 4 * L * L],
      ];
      const start = (beam.first + index) * 2;
      element.forEach((row, i) => {
        row.forEach((value, j) => {
          add(start + i, start + j, k * value);
        });
      });
    }
  }
  for (const [one, other] of checks) {
    add(one * 2, one * 2, LINK);
    add(other * 2, other * 2, LINK);
    add(one * 2, other * 2, -LINK);
    add(other * 2, one * 2, -LINK);
  }
  // Clamped at the first node of the first beam.
  for (const fixed of [0, 1]) add(fixed, fixed, 1e14);
  const f = new Array<number>(count).fill(0);
  for (const [node, force] of loads) f[node * 2] = force;
  const u = math.lusolve(K, f) as unknown as number[][];
  return u.map((row) => row[0] as number);
}

/** Shear and moment at the lower end of an element. */
function inside(beam: Beam, index: number, u: readonly number[]): { shear: number; moment: number } {
  const L = (beam.nodes[index + 1] as number) - (beam.nodes[index] as number);
  const at = (beam.first + index) * 2;
  const [v1, t1, v2, t2] = [u[at], u[at + 1], u[at + 2], u[at + 3]] as [number, number, number, number];
  const k = beam.EI / L ** 3;
  return {
    shear: Math.abs(k * (12 * v1 + 6 * L * t1 - 12 * v2 + 6 * L * t2)),
    moment: Math.abs(k * (6 * L * v1 + 4 * L * L * t1 - 6 * L * v2 + 2 * L * L * t2)),
  };
}

const PLAN = {
  units: 'si',
  method: 'asce7-16',
  site: { wind: 47, exposure: 'C' },
  tower: { support: 'free', top: 15, shape: 'lattice', faces: 3, width: 450, members: 'round', solidity: 0.2 },
  mast: { outside: 50, length: 4, inside: 1.2, bearing: 15 },
  loads: [
    { name: 'beam', above: 0.8, area: 0.6, areaKind: 'effective' },
    { name: 'vertical', height: [17, 19.6], shape: 'tube', diameter: 30, offset: 0 },
    { name: 'box', height: 9.5, area: 0.3, areaKind: 'effective', offset: 0 },
  ],
  cables: [{ count: 3, diameter: 10 }],
  ratings: [
    { of: 'tower', area: 2, areaKind: 'effective', wind: { speed: 45, method: 'asce7-16', exposure: 'C' }, top: 15 },
  ],
};

describe('shear and moment along the tower, against beams with stiffness matrices', () => {
  const { model, site } = assessed(PLAN);
  const { appurtenances } = model.scenarios[0];
  const forces = sliceForces(appurtenances, site.speed, 'unfavourable', false);
  const mast = model.input.station.mast;
  const profile = profileOf(appurtenances, forces, model.levels, mastHold(mast, model.input.station.tower));
  const bearing = mast?.bearing as number;
  const foot = mast?.foot as number;

  const onTower = appurtenances.onTower.map((number) => appurtenances.slices[number]?.z as number);
  const towerNodes = [...new Set([0, foot, bearing, ...model.levels.map((level: Level) => level.z), ...onTower])].sort(
    (a, b) => a - b,
  );
  const onMast = appurtenances.onMast.map((number) => appurtenances.slices[number]?.z as number);
  const mastNodes = [...new Set([foot, bearing, ...onMast])].sort((a, b) => a - b);
  const tower: Beam = { nodes: towerNodes, first: 0, EI: EI.tower };
  const pole: Beam = { nodes: mastNodes, first: towerNodes.length, EI: EI.mast };
  const loads = new Map<number, number>();
  const put = (beam: Beam, z: number, force: number) => {
    const node = beam.first + beam.nodes.indexOf(z);
    loads.set(node, (loads.get(node) ?? 0) + force);
  };
  for (const number of appurtenances.onTower)
    put(tower, appurtenances.slices[number]?.z as number, forces.front[number] as number);
  for (const number of appurtenances.onMast)
    put(pole, appurtenances.slices[number]?.z as number, forces.front[number] as number);
  const check = (z: number) => [tower.first + towerNodes.indexOf(z), pole.first + mastNodes.indexOf(z)] as const;
  const u = solve([tower, pole], [check(bearing), check(foot)], loads);

  it.each(model.levels.map((level, index) => [`${level.z.toFixed(2)} m, ${level.zone}`, level, index] as const))(
    'at %s',
    (_, level, index) => {
      // Just below a level is the upper end of the element under it; just above the mast's foot, the element over it.
      const node = towerNodes.indexOf(level.z);
      const justAbove = level.zone === 'couple' && level.z === foot;
      if (node === 0) {
        const { shear, moment } = inside(tower, 0, u);
        expect(Math.abs((profile.shear[index] as number) / shear - 1)).toBeLessThan(0.005);
        expect(Math.abs((profile.moment[index] as number) / moment - 1)).toBeLessThan(0.005);
        return;
      }
      const element = justAbove ? node : node - 1;
      const { shear, moment } = inside(tower, element, u);
      const length = (towerNodes[element + 1] as number) - (towerNodes[element] as number);
      // An element without load between its nodes has one shear, and a moment that changes by it.
      const here = justAbove ? moment : Math.abs(momentAbove(element, shear, length));
      expect(Math.abs((profile.shear[index] as number) - shear)).toBeLessThan(0.005 * shear + 1e-3);
      expect(Math.abs((profile.moment[index] as number) - here)).toBeLessThan(0.005 * here + 0.05);
    },
  );

  function momentAbove(element: number, shear: number, length: number): number {
    return inside(tower, element, u).moment - shear * length;
  }
});
