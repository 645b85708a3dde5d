import { describe, expect, it } from 'vitest';
import { FOOT } from '../../src/foundation/index.ts';
import { loweredOf } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { loweredSays } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { CRANK_UP_TOWER } from './crank-up-tower.ts';

const plan = (ratings: Document[], more: Document = {}): Document => ({
  units: 'us',
  method: 'asce7-16',
  site: { wind: 100, exposure: 'C' },
  tower: CRANK_UP_TOWER,
  loads: [{ name: 'beam', above: 2, area: 4, areaKind: 'effective' }],
  cables: [],
  ratings,
  ...more,
});
const raised: Document = {
  of: 'tower',
  area: 9,
  areaKind: 'effective',
  top: 54,
  wind: { speed: 80, method: 'tia222-g', exposure: 'C' },
};
const nested: Document = { ...raised, area: 20, top: 24 };

describe('a telescoping tower let down', () => {
  it('is shown by a rating of the raised one, as a plan of it let down is', () => {
    const answer = assessed(plan([raised]));
    const lowered = loweredOf(answer);
    const { nested: _, ...tower } = plan([])['tower'] as Document;
    const down = assessed({ ...plan([{ ...raised, top: 54 }]), tower: { ...tower, top: 24 } });
    const ratio = lowered?.assessment.checks[0]?.result?.ratio ?? Number.NaN;
    expect(ratio).toBeCloseTo(down.checks[0]?.result?.ratio ?? Number.NaN, 9);
    expect(ratio).toBeLessThan(answer.checks[0]?.result?.ratio ?? Number.NaN);
    expect(lowered?.unspoken).toBe(0);
    expect(lowered && loweredSays(lowered, 'us')).toMatch(
      /^Lowered to 24 ft, the tower is at [\d.]+ of its rated capacity there/,
    );
  });

  it('is not shown by a rating for a height it does not reach', () => {
    const lowered = loweredOf(assessed(plan([{ ...raised, top: 70 }])));
    expect(lowered?.assessment.checks[0]).toMatchObject({ id: 'tower', verdict: 'open' });
    expect(lowered && loweredSays(lowered, 'us')).toBe(
      'Lowered to 24 ft, the tower is open: its rating is for the raised tower. Ask the manufacturer for one with the top at 24 ft.',
    );
  });

  it('is checked by a rating for its own height, and holds to more wind', () => {
    const answer = assessed(plan([raised, nested]));
    const lowered = loweredOf(answer);
    const tower = lowered?.assessment.checks[0];
    expect(tower?.result?.ratio).toBeGreaterThan(0);
    expect(tower?.result?.holdsTo?.gust).toBeGreaterThan(answer.checks[0]?.result?.holdsTo?.gust ?? 0);
    expect(lowered && loweredSays(lowered, 'us')).toMatch(
      /It keeps the margin set up to a forecast of [\d.]+ mph; the \w+ governs\./,
    );
    // By the gust at ratio 0.9, of a tower whose coefficients stay √0.9 of that at 1, and a tenth off for the forecast.
    const gust = tower?.result?.holdsTo?.gust ?? Number.NaN;
    expect((lowered?.assessment.lowerAt?.gust ?? 0) / (0.9 * Math.sqrt(0.9) * gust)).toBeCloseTo(1, 2);
    expect(lowered?.assessment.input.station.tower.top).toBeCloseTo(24 * FOOT, 9);
    expect(lowered?.assessment.input.station.loads[0]?.low).toBeCloseTo(26 * FOOT, 9);
  });

  it('names what meets the section below on the way', () => {
    const appurtenances = plan([raised, nested], {
      loads: [{ name: 'side arm', height: 30, area: 1, areaKind: 'effective', on: 'tower', offset: 0 }],
    });
    expect(loweredOf(assessed(appurtenances))?.clashes).toEqual(['side arm']);
  });

  it('needs its sections, and says so', () => {
    const document = {
      ...plan([raised]),
      tower: { support: 'free', top: 54, telescopes: true, nested: 22 },
    };
    const reading = readPlan(document);
    if (!reading.ok) throw new Error('a tower without sections is readable');
    expect(reading.entryWarnings).toContainEqual({
      pointer: '#/tower/nested',
      code: 'nested-without-sections',
      says: 'Tower nested at 22 ft, and no sections given: nothing is computed for the lowered tower. Give each section with its length.',
    });
    expect(loweredOf(assessed(document))).toBeUndefined();
    // Without a rating sections would decide nothing either.
    const unrated = readPlan({ ...document, ratings: [] });
    expect(unrated.ok && unrated.entryWarnings.map(({ code }) => code)).toEqual([]);
  });

  it('is not asked of a tower that does not slide', () => {
    const { telescopes: _, nested: __, ...tower } = plan([raised])['tower'] as Document;
    const stiff = { ...tower, top: 66 };
    expect(loweredOf(assessed({ ...plan([raised]), tower: stiff }))).toBeUndefined();
  });
});
