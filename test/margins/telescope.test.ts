import { describe, expect, it } from 'vitest';
import { loweredOf } from '../../src/margins/index.ts';
import { assessed, type Document } from './any-plan.ts';

const FOOT = 0.3048;
const POUND_FORCE = 4.4482216152605;

const pole = (name: string, width: number): Document => ({ name, length: 18, shape: 'pole', width, sides: 0 });

/** Three round tubes, 18 ft each, that overlap by 5 ft: 0 to 18, 13 to 31, 26 to 44 ft. */
const plan = (changed: Document = {}, tower: Document = {}): Document => ({
  units: 'us',
  method: 'tia222-h',
  site: { wind: { speed: 100, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' },
  tower: {
    support: 'free',
    top: 44,
    telescopes: true,
    sections: [pole('A', 8.625), pole('B', 6.625), pole('C', 4.5)],
    ...tower,
  },
  mast: { outside: 2, length: 12, inside: 0, bearing: false, wall: 0.25, yield: 50 },
  loads: [{ name: 'a', above: 12, area: 16, areaKind: 'effective', weight: 0.001 }],
  cables: [],
  ratings: [
    {
      of: 'tower',
      area: 35,
      areaKind: 'effective',
      above: 0,
      wind: { speed: 100, method: 'tia222-h', exposure: 'C', riskCategory: 'II' },
      top: 44,
    },
  ],
  ...changed,
});

describe('a tower whose sections slide in each other', () => {
  it('is compared at the rim of the outer section, where the inner one is bent most', () => {
    // In thin steps 8630.0 lbf·ft of wind are asked at 31 ft and 8411.6 shown; 56.1 lb of mast add W·D/4 = 5.3 lbf·ft.
    const [tower] = assessed(plan()).checks;
    expect(tower?.verdict).toBe('over');
    expect((tower?.result?.height ?? 0) / FOOT).toBeCloseTo(31, 6);
    expect((tower?.result?.demand ?? 0) / POUND_FORCE / FOOT / 8635.3).toBeCloseTo(1, 3);
    expect((tower?.result?.capacity ?? 0) / POUND_FORCE / FOOT / 8411.6).toBeCloseTo(1, 3);
  });

  it('says the same as a tower told cut at its rims', () => {
    const cut = assessed(
      plan(
        {},
        {
          telescopes: false,
          sections: [
            { ...pole('A', 8.625), length: 18, uniform: true },
            { ...pole('B', 6.625), length: 13, uniform: true },
            { ...pole('C', 4.5), length: 13, uniform: true },
          ],
        },
      ),
    );
    const ratio = (answer: typeof cut) => answer.checks[0]?.result?.ratio ?? Number.NaN;
    expect(ratio(assessed(plan()))).toBeCloseTo(ratio(cut), 9);
  });

  it('catches the wind with the outer tube alone where one is in the other', () => {
    const { rows } = assessed(plan()).windLoads;
    const seen = rows.filter(({ kind }) => kind === 'tower').map(({ low, high }) => [low / FOOT, high / FOOT]);
    expect(seen).toEqual([
      [0, expect.closeTo(18, 9)],
      [expect.closeTo(18, 9), expect.closeTo(31, 9)],
      [expect.closeTo(31, 9), expect.closeTo(44, 9)],
    ]);
    const area = rows.filter(({ kind }) => kind === 'tower').reduce((sum, { frontArea }) => sum + frontArea, 0);
    expect(area / FOOT ** 2).toBeCloseTo((18 * 8.625 + 13 * 6.625 + 13 * 4.5) / 12, 6);
  });

  it('shows, let down, the wind of what is then seen', () => {
    const ratings = [{ ...(plan()['ratings'] as Document[])[0], top: 21 }];
    const answer = assessed(
      plan({ ratings, loads: [{ name: 'a', above: 12, area: 4, areaKind: 'effective', weight: 1 }] }, { nested: 21 }),
    );
    const { rows } = loweredOf(answer)?.assessment.windLoads ?? { rows: [] };
    const seen = rows.filter(({ kind }) => kind === 'tower').map(({ low, high }) => [low / FOOT, high / FOOT]);
    // Each sinks by 11.5 ft: B to 1.5 to 19.5 ft, C to 3 to 21.
    expect(seen).toEqual([
      [0, expect.closeTo(18, 6)],
      [expect.closeTo(18, 6), expect.closeTo(19.5, 6)],
      [expect.closeTo(19.5, 6), expect.closeTo(21, 6)],
    ]);
  });

  it('of lattices is read both ways, seen and hidden, and the worse counts', () => {
    const lattice = (name: string, width: number): Document => ({
      name,
      length: 18,
      shape: 'lattice',
      faces: 3,
      width,
      members: 'round',
      leg: 1,
      brace: 0.375,
      panel: 12,
      pattern: 'zigzag',
    });
    const sections = [lattice('A', 18), lattice('B', 14), lattice('C', 10)];
    const answer = assessed(plan({}, { sections }));
    expect(answer.model.scenarios.map(({ overlaps }) => overlaps)).toEqual(['both', 'outer']);
    const own = answer.unfavourable.scenarios.map(({ bareTower }) => bareTower?.shear.at(-1) ?? 0);
    expect(own[0]).toBeGreaterThan(own[1] ?? 0);
    // Its foot bears the whole wind.
    expect(answer.reactions.allowable.shear).toBeGreaterThanOrEqual(own[0] ?? Number.NaN);
    // A rating met by its own case is met however the overlaps are read.
    const loads = [{ name: 'a', above: 0, on: 'tower', area: 35, areaKind: 'effective', weight: 0 }];
    const { mast: _, ...own35 } = plan({ loads }, { sections });
    expect(assessed(own35).checks[0]?.result?.ratio).toBeCloseTo(1, 6);
  });
});
