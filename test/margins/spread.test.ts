import { describe, expect, it } from 'vitest';
import { assess, checkRatio, type SpreadRow, spreadOf } from '../../src/margins/index.ts';
import { METHOD_BY_ID, SITE_METHODS, type SiteMethodId } from '../../src/methods/index.ts';
import { spreadSays } from '../../src/worksheet/index.ts';
import { assessed, checkInputOf, type Document } from './any-plan.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

const BASIS: Readonly<Record<string, string>> = { 'eia222-f': 'fastest-mile', 'tia222-g': 'gust3-nominal' };

const TERRAIN_BESIDE: Readonly<Record<string, string>> = { B: 'III', C: 'II', D: 'I' };
const EXPOSURE_BESIDE: Readonly<Record<string, string>> = { '0': 'D', I: 'D', II: 'C', III: 'B', IV: 'B' };

/** The site in the words of another method: its ground, and a basic wind as the gust of 1.534 times. */
function siteFor(method: SiteMethodId, site: Document, own: string, basis: string, given: { speed: number }): Document {
  const { exposure, terrain, ...rest } = site as { exposure?: string; terrain?: string };
  if (own === 'en1991-1-4') {
    if (method === own) return site;
    const wind = { speed: 1.534 * given.speed, basis: 'gust3-nominal' };
    return { ...rest, exposure: EXPOSURE_BESIDE[terrain as string] as string, wind };
  }
  const wind = { ...given, basis };
  if (METHOD_BY_ID[method].ground.field === 'exposure') return { ...site, wind };
  return { ...rest, terrain: TERRAIN_BESIDE[exposure as string] as string, wind };
}

/** Load at the top of a tower without drag of its own, in us units. */
const bare = (method: string, wind: Document): Document => ({
  units: 'us',
  method,
  site: { wind, exposure: 'C' },
  tower: { support: 'free', top: 50, used: true },
  loads: [{ name: 'beam', height: 50, area: 6, areaKind: 'effective', offset: 0 }],
  ratings: [
    { of: 'tower', area: 12, areaKind: 'effective', wind: { speed: 100, method: 'asce7-16', exposure: 'C' }, top: 50 },
  ],
  cables: [],
});

const product = ({ factors }: SpreadRow) => Object.values(factors).reduce((all, each) => all * each, 1);

describe('the spread between methods', () => {
  it('does not compare what goes by a ground that nobody gave', () => {
    const { site: _, ...rest } = bare('eia222-f', { speed: 80 });
    const own = assess(checkInputOf({ ...rest, site: { wind: 80 } }));
    const told = assess(checkInputOf({ ...rest, site: { wind: 80, exposure: 'D' } }));
    const worst = ({ ratios }: typeof own) => ratios.map(({ unfavourable }) => unfavourable);
    expect(worst(own)).toEqual(worst(told));
    const { rows, refused, cause } = spreadOf(own);
    expect(rows.map(({ method }) => method)).toEqual(['eia222-f']);
    expect(cause).toBeUndefined();
    expect(refused.map(({ method }) => method)).toEqual(SITE_METHODS.filter((id) => METHOD_BY_ID[id].ground.counts));
    expect(spreadOf(told).refused).toEqual([]);
  });

  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))(
    'of %s has for every method the answer to the plan rewritten for it',
    (_, plan) => {
      const own = assess(checkInputOf(plan));
      const site = plan['site'] as Document & { wind: number | { speed: number; basis?: string } };
      const given = typeof site.wind === 'object' ? site.wind : { speed: site.wind };
      const basis = given.basis ?? BASIS[plan['method'] as string] ?? 'gust3-strength';
      const { rows, refused } = spreadOf(own);
      expect(refused).toEqual([]);
      expect(rows.map((row) => row.method).sort()).toEqual([...SITE_METHODS].sort());
      for (const row of rows) {
        const rewritten = {
          ...plan,
          method: row.method,
          site: siteFor(row.method, site, plan['method'] as string, basis, given),
        };
        const alone = assessed(rewritten);
        const members = alone.checks.find(({ kind }) => kind === 'own-strength');
        const rated = alone.checks[0]?.kind === 'tower';
        const ratio = rated ? checkRatio(alone.ratios, 'tower')?.unfavourable : members?.result?.ratio;
        expect(row.result?.ratio).toBeCloseTo(ratio as number, 9);
        const ratios = alone.checks.flatMap(({ id, result }) => (result ? [{ check: id, ratio: result.ratio }] : []));
        const largest = ratios.sort((a, b) => b.ratio - a.ratio)[0];
        expect(row.largest).toEqual(largest && { check: largest.check, ratio: expect.closeTo(largest.ratio, 9) });
        expect(row.moment).toBeCloseTo(alone.windLoads.total.momentAtBase, 6);
        expect(product(row)).toBeCloseTo(alone.windLoads.total.momentAtBase / own.windLoads.total.momentAtBase, 9);
      }
    },
  );

  it('splits the difference into the factors of the standards', () => {
    // By hand, 50 ft, exposure C, Kd 0.85: 7-16 has Kz 2.01(50/900)^(2/9.5) = 1.0938 and 7-22 2.41(50/2460)^(2/9.8) = 1.0882;
    // TIA-222-F has Kz (50/33)^(2/7) = 1.1260, no Kd, and its forces pair with stresses raised by a third: 0.75 for 0.6.
    const plan = bare('asce7-16', { speed: 110, basis: 'gust3-strength' });
    const lattice = {
      support: 'free',
      top: 50,
      shape: 'lattice',
      faces: 3,
      width: 18,
      members: 'round',
      solidity: 0.2,
    };
    const { rows } = spreadOf(assessed({ ...plan, tower: lattice }));
    const of = (method: string) => rows.find((row) => row.method === method) as SpreadRow;
    expect(of('asce7-22').factors['height-and-ground']).toBeCloseTo(1.0882 / 1.0938, 3);
    expect(of('eia222-f').factors['height-and-ground']).toBeCloseTo(1.126 / 1.0938, 3);
    expect(of('eia222-f').factors.level).toBeCloseTo(0.75 / 0.6, 9);
    expect(of('eia222-f').factors.direction).toBeCloseTo(1 / 0.85, 9);
    // 110·√0.6 = 85.206; (85.206 − 10.5)/1.05 = 71.148 mph.
    expect(of('eia222-f').factors.speed).toBeCloseTo((71.148 / 110) ** 2, 4);
  });

  it('leaves nothing to the shapes where a stated area stands at the top of a tower without drag', () => {
    for (const method of SITE_METHODS.filter((each) => METHOD_BY_ID[each].ground.field === 'exposure')) {
      const { rows } = spreadOf(assessed(bare(method, { speed: 110, basis: 'gust3-strength' })));
      for (const row of rows) expect(row.factors.shapes, `${method} ${row.method}`).toBeCloseTo(1, 9);
    }
  });

  it('names what carries the farthest method away', () => {
    const of = (id: string) => spreadOf(assessed(demoPlan(id)));
    // The fastest mile, its gust factor and its level belong together; the speed alone would say 0.41.
    expect(of('river-bluff').cause).toMatchObject({ method: 'eia222-f', factor: 'design-wind' });
    // Speeds alike: TIA's pole has a gust effect factor of 1.1, ASCE's rigid structure 0.85.
    const mast = demoPlan('light-mast');
    const stiff = spreadOf(assessed({ ...mast, tower: { ...(mast['tower'] as Document), frequency: 3 } }));
    const ofAsce = stiff.rows.find(({ method }) => method === 'asce7-10');
    expect(ofAsce?.factors.gust).toBeCloseTo(0.85 / 1.1, 9);
    expect(stiff.cause).toMatchObject({ method: 'asce7-10', factor: 'gust' });
    expect(spreadSays(of('river-bluff'))).toMatch(
      /^The choice of standard alone moves the tower’s ratio from [\d.]+ \(TIA\/EIA-222-F\) to [\d.]+ \(EN 1991-1-4\)\. The largest difference from /,
    );
  });
});
