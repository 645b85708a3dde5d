import { describe, expect, it } from 'vitest';
import { FOOT } from '../../src/foundation/index.ts';
import { hillHelpOf } from '../../src/margins/index.ts';
import { answerText, hillSays } from '../../src/worksheet/index.ts';
import { assessed, checkInputOf, type Document } from './any-plan.ts';

const plan = (hill: Document, site: Document = {}, method = 'asce7-16'): Document => ({
  units: 'us',
  method,
  site: { wind: 105, exposure: 'C', hill, ...site },
  tower: { support: 'free', top: 50 },
  loads: [{ name: 'beam', above: 2, area: 5 }],
  ratings: [{ of: 'tower', area: 9, wind: { speed: 100, method: 'tia222-g' }, top: 50 }],
  cables: [],
});
const ridge = (changed: Document = {}): Document => ({
  shape: 'ridge',
  height: 60,
  halfLength: 200,
  distance: 100,
  side: 'upwind',
  ...changed,
});
const helpOf = (given: Document) => hillHelpOf(checkInputOf(given)) as NonNullable<ReturnType<typeof hillHelpOf>>;
const failing = (given: Document) =>
  helpOf(given).conditions.flatMap(({ why, holds }) => (holds === false ? [why] : []));

describe('what a hill is to its method', () => {
  it('is its factor at the top, by ASCE 7 worked by hand', () => {
    // K1 = 1.45·0.3 = 0.435, K2 = 1 − 100/(1.5·200) = 2/3, K3 = e^(−3·50/200) = 0.47237: (1 + 0.13699)² = 1.29274.
    const help = helpOf(plan(ridge()));
    expect(help).toMatchObject({ counts: true, height: 50 * FOOT });
    expect(help.factor).toBeCloseTo(1.29274, 4);
    expect(help.wouldBe).toBe(help.factor);
    // At the crest K2 = 1: (1 + 0.20548)² = 1.45318.
    const crest = help.profile.find(({ distance }) => distance === 0);
    expect(crest?.factor).toBeCloseTo(1.45318, 4);
    expect(Math.max(...help.profile.map(({ factor }) => factor))).toBe(crest?.factor);
  });

  it('shows the tower in its profile once, places rising, and 1 where the standard ends', () => {
    for (const given of [ridge(), ridge({ distance: 0 }), ridge({ shape: 'escarpment', side: 'downwind' })]) {
      const { profile } = helpOf(plan(given));
      const places = profile.map(({ distance }) => distance);
      expect(places).toEqual([...new Set(places)].sort((a, b) => a - b));
      expect(profile.filter(({ here }) => here)).toHaveLength(1);
      expect(profile[0]?.factor).toBe(1);
    }
  });

  it.each<[string, string[], Document, Document?, string?]>([
    ['a gentle one', ['too-gentle'], ridge({ height: 30, halfLength: 200 })],
    ['a low one in B', ['too-low'], ridge({ height: 50 }), { exposure: 'B' }],
    ['one of many', ['not-isolated'], ridge({ isolated: false })],
    ['its lower half', ['lower-half'], ridge({ distance: 240 })],
    ['far behind an edge', ['beyond-reach'], ridge({ shape: 'escarpment', side: 'downwind', distance: 900 })],
    ['its lower half by TIA', ['lower-half'], ridge({ distance: 240 }), {}, 'tia222-h'],
    [
      'far behind an edge by TIA',
      ['beyond-reach'],
      ridge({ shape: 'escarpment', side: 'downwind', distance: 500 }),
      {},
      'tia222-g',
    ],
    ['two reasons at once', ['too-gentle', 'lower-half'], ridge({ height: 30, distance: 240 })],
  ])('does not count %s, says why, and what it would be', (_, reasons, hill, site, method) => {
    const given = plan(hill, site, method);
    expect(failing(given)).toEqual(reasons);
    const help = helpOf(given);
    expect(help.counts).toBe(false);
    expect(help.factor).toBe(1);
    expect(help.wouldBe).toBeGreaterThanOrEqual(1);
    const answer = assessed(given);
    expect(answer.wind.topographicFactor(10)).toBe(1);
    expect(answer.cautions.find(({ code }) => code === 'topography-not-applied')?.word).toBe(reasons[0]);
    expect(hillSays(help, 'us')).toMatch(
      /^The hill does not count: .+ If it counted, pressure would be [\d.]+ times as high at /,
    );
  });

  it('takes it to stand alone where the plan does not say, and says so', () => {
    const surroundings = helpOf(plan(ridge())).conditions.find(({ of }) => of === 'surroundings');
    expect(surroundings).toEqual({ why: 'not-isolated', of: 'surroundings' });
    expect(answerText(assessed(plan(ridge())), [])).toContain('The hill multiplies the pressure by 1.29 at 50 ft.');
  });

  it('is read from its run as from its half-length', () => {
    const { halfLength: _, ...rest } = ridge();
    expect(helpOf(plan({ ...rest, run: 400 }))).toEqual(helpOf(plan(ridge())));
  });

  it('is not asked where the county gives a factor, nor by a standard without hills', () => {
    const { hill: _, ...site } = plan(ridge())['site'] as Document;
    expect(hillHelpOf(checkInputOf({ ...plan(ridge()), site: { ...site, topographicFactor: 1.3 } }))).toBeUndefined();
    expect(hillHelpOf(checkInputOf(plan(ridge(), {}, 'eia222-f')))).toBeUndefined();
  });

  it('raises a caution by its figure where it is large', () => {
    const large = assessed(plan(ridge({ height: 100, distance: 0 }))).cautions.find(
      ({ code }) => code === 'topography-large',
    );
    // At the ground (1 + 1.45·0.5)² = 2.9756.
    expect(large?.value).toBeCloseTo(2.9756, 4);
  });
});
