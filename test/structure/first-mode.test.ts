import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { firstModeAtLeast, firstModeAtMost, latticeModeAtLeast, type Station } from '../../src/structure/index.ts';
import { cautionDocuments } from '../../src/worksheet/index.ts';
import { assessed, checkInputOf, type Document } from '../margins/any-plan.ts';

const math = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as typeof import('mathjs');

interface Element {
  readonly length: number;
  readonly EI: number;
  readonly perLength: number;
}

/**
 * Lowest frequency of a clamped chain of plane beams with consistent masses and lumps at its nodes, by stiffness and mass
 * matrices and inverse iteration: nothing of it is shared with the program.
 */
function frequencyByMatrices(elements: readonly Element[], lumps: ReadonlyMap<number, number>): number {
  const size = elements.length * 2;
  const empty = () => Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const [K, M] = [empty(), empty()];
  const add = (matrix: number[][], row: number, column: number, value: number) => {
    (matrix[row] as number[])[column] = ((matrix[row] as number[])[column] as number) + value;
  };
  elements.forEach(({ length: L, EI, perLength }, element) => {
    const stiff = [
      [12, 6 * L, -12, 6 * L],
      [6 * L, 4 * L * L, -6 * L, 2 * L * L],
      [-12, -6 * L, 12, -6 * L],
      [6 * L, 2 * L * L, -6 * L, 4 * L * L],
    ];
    const heavy = [
      [156, 22 * L, 54, -13 * L],
      [22 * L, 4 * L * L, 13 * L, -3 * L * L],
      [54, 13 * L, 156, -22 * L],
      [-13 * L, -3 * L * L, -22 * L, 4 * L * L],
    ];
    for (let i = 0; i < 4; i += 1) {
      for (let j = 0; j < 4; j += 1) {
        // The first node is clamped, so its two freedoms are left out.
        const [row, column] = [element * 2 + i - 2, element * 2 + j - 2];
        if (row < 0 || column < 0) continue;
        add(K, row, column, ((stiff[i] as number[])[j] as number) * (EI / L ** 3));
        add(M, row, column, ((heavy[i] as number[])[j] as number) * ((perLength * L) / 420));
      }
    }
  });
  for (const [node, mass] of lumps) add(M, (node - 1) * 2, (node - 1) * 2, mass);
  let shape = Array.from({ length: size }, (_, index) => (index % 2 === 0 ? (index + 2) ** 2 : 0));
  let frequency = 0;
  for (let round = 0; round < 30; round += 1) {
    const next = (math.lusolve(K, math.multiply(M, shape)) as unknown as number[][]).map((row) => row[0] as number);
    const product = (matrix: number[][]) => math.dot(next, math.multiply(matrix, next) as number[]) as number;
    frequency = Math.sqrt(product(K) / product(M)) / (2 * Math.PI);
    const largest = Math.max(...next.map(Math.abs));
    shape = next.map((value) => value / largest);
  }
  return frequency;
}

const plan = (tower: Document, more: Document = {}): Document => ({
  units: 'si',
  method: 'asce7-16',
  site: { wind: 45, exposure: 'C' },
  tower: { support: 'free', ...tower },
  cables: [],
  ...more,
});
const stationOf = (document: Document): Station => checkInputOf(document).station;
const atMost = (document: Document) => firstModeAtMost(stationOf(document)) as number;

const STEEL = { E: 200e9, density: 7850 };
const tube = (D: number, t: number) => {
  const d = D - 2 * t;
  return { A: (Math.PI / 4) * (D * D - d * d), I: (Math.PI / 64) * (D ** 4 - d ** 4) };
};
const split = (length: number, into: number, D: number, t: number): Element[] => {
  const { A, I } = tube(D, t);
  return Array.from({ length: into }, () => ({ length: length / into, EI: STEEL.E * I, perLength: STEEL.density * A }));
};
const poleSection = (length: number, width: number | number[], wall: number) => ({
  length,
  shape: 'pole',
  width,
  wall,
  material: 'steel',
  sides: 0,
});

describe('the lowest frequency of a free tower', () => {
  it('of a bare tube is a little over that of the exact cantilever', () => {
    // f = 3.5160/(2π)·√(EI/(m·L⁴)); with the shape under its own weight laid sideways 3.530 instead.
    const { A, I } = tube(0.2, 0.005);
    const exact = (3.516 / (2 * Math.PI)) * Math.sqrt((STEEL.E * I) / (STEEL.density * A * 12 ** 4));
    const found = atMost(plan({ top: 12, shape: 'pole', width: 200, wall: 5, material: 'steel', sides: 0 }));
    expect(found / exact).toBeCloseTo(3.53 / 3.516, 3);
  });

  it('of a tube with a great weight at its top is that of a spring', () => {
    // f = √(3EI/(L³·(M + 0.2357·mL)))/(2π), the tube's share 33/140.
    const { A, I } = tube(0.2, 0.005);
    const mass = 2000 + (33 / 140) * STEEL.density * A * 12;
    const spring = Math.sqrt((3 * STEEL.E * I) / (12 ** 3 * mass)) / (2 * Math.PI);
    const document = plan(
      { top: 12, shape: 'pole', width: 200, wall: 5, material: 'steel', sides: 0 },
      { loads: [{ name: 'tank', height: 12, area: 1, weight: 2000, offset: 0 }] },
    );
    expect(atMost(document) / spring).toBeCloseTo(1, 3);
  });

  it('of three tubes with loads and a stiff mast is that of stiffness matrices, and never under it', () => {
    const sections = [poleSection(4, 219, 6), poleSection(4, 168, 5), poleSection(4, 114, 4)];
    const document = plan(
      { top: 12, sections },
      {
        loads: [
          { name: 'beam', height: 12, area: 0.5, weight: 30, offset: 0 },
          { name: 'panel', height: 8, area: 0.2, weight: 12, offset: 0 },
        ],
      },
    );
    const elements = [...split(4, 8, 0.219, 0.006), ...split(4, 8, 0.168, 0.005), ...split(4, 8, 0.114, 0.004)];
    const matrices = frequencyByMatrices(
      elements,
      new Map([
        [24, 30],
        [16, 12],
      ]),
    );
    const found = atMost(document);
    expect(found / matrices).toBeGreaterThan(1 - 5e-4);
    expect(found / matrices).toBeLessThan(1.03);
  });

  it('of a tapered pole is that of stiffness matrices', () => {
    const elements = Array.from({ length: 40 }, (_, index) => {
      const { A, I } = tube(0.3 - (0.2 * (index + 0.5)) / 40, 0.005);
      return { length: 0.5, EI: STEEL.E * I, perLength: STEEL.density * A };
    });
    const matrices = frequencyByMatrices(elements, new Map([[40, 50]]));
    const found = atMost(
      plan(
        { top: 20, shape: 'pole', width: [300, 100], wall: 5, material: 'steel', sides: 0 },
        { loads: [{ name: 'beam', height: 20, area: 0.5, weight: 50, offset: 0 }] },
      ),
    );
    expect(found / matrices).toBeGreaterThan(1 - 5e-4);
    expect(found / matrices).toBeLessThan(1.03);
  });

  it('of a lattice is that of its legs, the bracing taken as rigid', () => {
    // Three legs 30 × 3 at 400 − 30 mm: I = ½·A·c² and their own.
    const leg = tube(0.03, 0.003);
    const EI = STEEL.E * (0.5 * leg.A * 0.37 ** 2 + 3 * leg.I);
    const elements = Array.from({ length: 20 }, () => ({ length: 0.75, EI, perLength: STEEL.density * 3 * leg.A }));
    const lattice = {
      shape: 'lattice',
      faces: 3,
      width: 400,
      members: 'round',
      leg: 30,
      brace: 10,
      panel: 400,
      pattern: 'zigzag',
    };
    const document = plan(
      { top: 15, ...lattice, legWall: 3, material: 'steel' },
      { loads: [{ name: 'beam', height: 15, area: 0.5, weight: 40, offset: 0 }] },
    );
    const matrices = frequencyByMatrices(elements, new Map([[20, 40]]));
    expect(atMost(document) / matrices).toBeGreaterThan(1 - 5e-4);
    expect(atMost(document) / matrices).toBeLessThan(1.02);
    // Four legs of the same: I = A·c².
    const four = plan({ top: 15, ...lattice, faces: 4, legWall: 3, material: 'steel' });
    const three = plan({ top: 15, ...lattice, legWall: 3, material: 'steel' });
    const [I3, I4] = [0.5 * leg.A * 0.37 ** 2 + 3 * leg.I, leg.A * 0.37 ** 2 + 4 * leg.I];
    expect(atMost(four) / atMost(three)).toBeCloseTo(Math.sqrt(I4 / 4 / (I3 / 3)), 6);
  });

  it('of a pole of many sides nears that of a round one, and of aluminium goes with √(E/ρ)', () => {
    const pole = { top: 12, shape: 'pole', width: 200, wall: 4, material: 'steel', sides: 0 };
    const round = atMost(plan(pole));
    // A thin polygon about the same circle: I/A = r²·(1 + tan²(π/n)/3)/2.
    for (const sides of [8, 12, 16, 18]) {
      const ofSides = atMost(plan({ ...pole, sides })) / round;
      expect(ofSides).toBeCloseTo(Math.sqrt(1 + Math.tan(Math.PI / sides) ** 2 / 3), 3);
    }
    const aluminium = atMost(plan({ ...pole, material: 'aluminium' })) / round;
    expect(aluminium).toBeCloseTo(Math.sqrt(70 / 200 / (2700 / 7850)), 6);
  });

  it('counts lines and the mast where their weights can be known', () => {
    const pole = { top: 12, shape: 'pole', width: 200, wall: 5, material: 'steel', sides: 0 };
    const bare = atMost(plan(pole));
    const lined = atMost(plan(pole, { cables: [{ count: 4, diameter: 12, weight: 0.3 }] }));
    // A uniform line is a little more mass a length: 1.2 kg/m.
    const perLength = STEEL.density * tube(0.2, 0.005).A;
    expect(lined / bare).toBeCloseTo(Math.sqrt(perLength / (perLength + 1.2)), 3);
    const masted = plan(pole, { mast: { outside: 50, wall: 4, length: 4, inside: 1 } });
    expect(atMost(masted)).toBeLessThan(bare);
    expect(atMost(plan(pole, { mast: { outside: 50, length: 4, inside: 1 } }))).toBe(bare);
  });

  it('is not told where it cannot be', () => {
    const pole = { top: 12, shape: 'pole', width: 200, sides: 0 };
    const walled = { ...pole, wall: 5, material: 'steel' };
    expect(firstModeAtMost(stationOf(plan(pole)))).toBeUndefined();
    expect(firstModeAtMost(stationOf(plan({ ...walled, support: 'guyed' })))).toBeUndefined();
    const sections = [poleSection(7, 200, 5), poleSection(7, 150, 5)];
    expect(firstModeAtMost(stationOf(plan({ top: 12, telescopes: true, sections })))).toBeUndefined();
    expect(
      firstModeAtMost(stationOf(plan({ top: 14, sections: [...sections.slice(1), { length: 7 }] }))),
    ).toBeUndefined();
    const wire = { name: 'wire', height: 11, shape: 'wire', diameter: 2, to: { distance: 20, height: 3, heading: 0 } };
    expect(firstModeAtMost(stationOf(plan(walled, { loads: [{ ...wire, tension: 100 }] })))).toBeUndefined();
  });
});

describe('the lowest frequency that a free tower may have', () => {
  // EI 2 MN·m² and 18 kg/m: A = m/ρ, D² + d² = 16·I/A, D² − d² = 4·A/π.
  const A = 18 / STEEL.density;
  const [sum, difference] = [(16 * 2e6) / STEEL.E / A, (4 * A) / Math.PI];
  const D = Math.sqrt((sum + difference) / 2);
  const wall = (D - Math.sqrt((sum - difference) / 2)) / 2;
  const pole = { top: 15, shape: 'pole', width: 1000 * D, wall: 1000 * wall, material: 'steel', sides: 0 };
  const laden = plan(pole, { loads: [{ name: 'beam', height: 15, area: 1, weight: 120, offset: 0 }] });

  it('is just under that of a pole with a weight at its top, on rigid and on soft ground', () => {
    // 0.4943 Hz, on 3 MN·m 0.461. Σm·δ: 18·15⁴/12 and 120·15³/3 over EI; 18·15³/3 and 120·15² over the footing.
    const bends = ((18 * 15 ** 4) / 12 + (120 * 15 ** 3) / 3) / 2e6;
    const tilts = ((18 * 15 ** 3) / 3 + 120 * 15 ** 2) / 3e6;
    const by = (sum: number) => 1 / (2 * Math.PI * Math.sqrt(sum));
    expect(firstModeAtLeast(stationOf(laden), Number.POSITIVE_INFINITY)).toBeCloseTo(by(bends), 4);
    expect(by(bends) / 0.4943).toBeGreaterThan(0.99);
    expect(by(bends)).toBeLessThan(0.4943);
    expect(atMost(laden)).toBeCloseTo(0.4952, 3);
    expect(firstModeAtLeast(stationOf(laden), 3e6)).toBeCloseTo(by(bends + tilts), 4);
    expect(by(bends + tilts) / 0.461).toBeGreaterThan(0.99);
    expect(by(bends + tilts)).toBeLessThan(0.461);
  });

  it('counts the weight of what is there though nobody tells it, and the mast by itself', () => {
    const bare = firstModeAtLeast(stationOf(plan(pole)), Number.POSITIVE_INFINITY) as number;
    const silent = plan(pole, { loads: [{ name: 'beam', height: 15, area: 1.5, offset: 0 }] });
    const told = plan(pole, { loads: [{ name: 'beam', height: 15, area: 1.5, weight: 120, offset: 0 }] });
    const least = (document: Document) => firstModeAtLeast(stationOf(document), Number.POSITIVE_INFINITY) as number;
    expect(least(silent)).toBeCloseTo(least(told), 9);
    expect(least(told)).toBeLessThan(bare);
    // A mast on a stiff stub swings by itself: 5 m above its bearing, held 1 m below it.
    const stub = { top: 6, shape: 'pole', width: 1000, wall: 20, material: 'steel', sides: 0 };
    const mast = { outside: 50, wall: 4, length: 6, inside: 1, bearing: 6, material: 'steel' };
    const whip = plan(stub, { mast, loads: [{ name: 'whip', height: 11, area: 0.1, weight: 30, on: 'mast' }] });
    const { A: area, I } = tube(0.05, 0.004);
    const moved = (5 ** 3 + 5 ** 2 * 1) / (3 * STEEL.E * I);
    const steel = Array.from({ length: 5000 }, (_, index) => (index + 0.5) / 1000).reduce(
      (so, z) => so + (STEEL.density * area * 0.001 * (z ** 3 + z ** 2)) / (3 * STEEL.E * I),
      0,
    );
    const alone = 1 / (2 * Math.PI * Math.sqrt(30 * moved + steel));
    expect(least(whip) / alone).toBeGreaterThan(0.97);
    expect(least(whip)).toBeLessThan(alone * 1.001);
  });

  it('of a lattice of known weight is that of legs and bracing half as heavy', () => {
    // √(E/ρ)·b/3: bare 942·b/h² and with its own mass at its top 416·b/h², Dunkerley's sum a little under both.
    const lattice = { top: 15, shape: 'lattice', faces: 3, width: 400, members: 'round', weight: 150 };
    const bare = latticeModeAtLeast(stationOf(plan(lattice)), Number.POSITIVE_INFINITY) as number;
    const topped = plan(lattice, { loads: [{ name: 'beam', height: 15, area: 1, weight: 150, offset: 0 }] });
    const least = latticeModeAtLeast(stationOf(topped), Number.POSITIVE_INFINITY) as number;
    const by = (times: number) => (0.9 * times * 0.4) / 15 ** 2;
    expect(bare / by(942)).toBeGreaterThan(0.98);
    expect(bare / by(942)).toBeLessThan(1);
    expect(least / by(416)).toBeGreaterThan(0.99);
    expect(least / by(416)).toBeLessThan(1);
    const { weight: _, ...weightless } = lattice;
    expect(latticeModeAtLeast(stationOf(plan(weightless)))).toBeUndefined();
  });

  it('is not told of what is held or telescopes', () => {
    expect(firstModeAtLeast(stationOf(plan({ ...pole, support: 'guyed' })))).toBeUndefined();
    const sections = [poleSection(8, 200, 5), poleSection(8, 150, 5)];
    expect(firstModeAtLeast(stationOf(plan({ top: 15, telescopes: true, sections })))).toBeUndefined();
  });
});

describe('the caution about swinging', () => {
  const said = (document: Document) =>
    cautionDocuments(assessed(document).cautions, 'si').find(({ code }) => code === 'slender-dynamic')?.says;
  const lattice = {
    shape: 'lattice',
    faces: 3,
    width: 250,
    members: 'round',
    leg: 25,
    brace: 8,
    panel: 250,
    legWall: 2,
    material: 'steel',
    pattern: 'zigzag',
  };
  const loads = [{ name: 'beam', height: 20, area: 1, weight: 90, offset: 0 }];

  it('is raised by a lattice that even at best is under 1 Hz', () => {
    const limp = plan({ top: 20, ...lattice }, { loads });
    const figure = atMost(limp);
    expect(figure).toBeLessThan(1);
    expect(said(limp)).toMatch(
      /^Estimated natural frequency at most 0\.\d+ Hz .+ The gust factor of a flexible structure is used/,
    );
    expect(said(limp)).toContain(`${Number(figure.toPrecision(2))} Hz`);
    const stiff = plan({ top: 10, ...lattice });
    expect(atMost(stiff)).toBeGreaterThan(1);
    expect(said(stiff)).toBeUndefined();
  });

  it('stands aside for a frequency of the maker', () => {
    expect(said(plan({ top: 20, ...lattice, frequency: 0.7 }, { loads }))).toMatch(
      /^Natural frequency 0\.7 Hz, below 1 Hz/,
    );
    expect(said(plan({ top: 20, ...lattice, frequency: 1.4 }, { loads }))).toBeUndefined();
  });

  it('stays with a slender pole, with its figure where there is one', () => {
    const pole = { top: 12, shape: 'pole', width: 200, sides: 0 };
    const byTia = (document: Document) => ({ ...document, method: 'tia222-h' });
    expect(said(byTia(plan(pole)))).toMatch(/Natural frequency not given; the ordinary gust factor is used/);
    expect(said(byTia(plan({ ...pole, wall: 5, material: 'steel' })))).toMatch(
      /Estimated natural frequency at most [\d.]+ Hz .+ordinary/,
    );
  });

  it('of EN 1991-1-4 is about its structural factor from 15 m up', () => {
    const byEn = (top: number, more: Document = {}): Document => ({
      units: 'si',
      method: 'en1991-1-4',
      site: { wind: 26, terrain: 'II' },
      tower: { support: 'free', top, ...lattice, ...more },
      cables: [],
    });
    expect(said(byEn(15))).toMatch(/^Structural factor taken as 1/);
    expect(said(byEn(15, { frequency: 4 }))).toMatch(/^Structural factor taken as 1/);
    expect(said(byEn(15, { frequency: 6 }))).toBeUndefined();
    expect(said(byEn(14))).toBeUndefined();
  });
});
