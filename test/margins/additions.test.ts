import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/foundation/index.ts';
import { additionsOf, assess, assessAsked, type Check, type CheckInput } from '../../src/margins/index.ts';
import fc from '../fast-check.ts';
import { read } from '../plan/sample-plans.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

const bluff = demoPlan('river-bluff');
const checkInputOf = (changes: object = {}): CheckInput => read({ ...bluff, ...changes }).input;
const extra = (name: string, area: number) => ({ name, above: 1, area, areaKind: 'effective' });
const withLoad = (area: number) => checkInputOf({ loads: [...(bluff['loads'] as object[]), extra('extra', area)] });

function ranksOf(...proposals: readonly CheckInput[]): number[] {
  const then = proposals.map((input, index) => ({ name: `${index}`, assessment: assess(input) }));
  return additionsOf(assess(checkInputOf()), then).after.map(({ rank }) => rank);
}

describe('the ranking of proposals', () => {
  it('puts the larger margin first', () => {
    expect(ranksOf(withLoad(1), withLoad(0.1), withLoad(0.5))).toEqual([3, 1, 2]);
  });

  it('keeps the order asked among equals', () => {
    expect(ranksOf(withLoad(0.3), withLoad(0.3), withLoad(0.3))).toEqual([1, 2, 3]);
  });

  it('puts what shows nothing any more behind what is shown, and over last of all', () => {
    const bare = checkInputOf({ ratings: [] });
    const heavy = withLoad(60);
    expect(assess(heavy).verdict).toBe('over');
    expect(assess(bare).checks[0]?.result).toBeUndefined();
    expect(ranksOf(heavy, bare, withLoad(0.5))).toEqual([3, 2, 1]);
  });

  it('puts fewer links that stop being shown before more', () => {
    const { yield: _, ...mast } = bluff['mast'] as Record<string, unknown>;
    const withoutGrade = checkInputOf({ mast });
    const lost = (input: CheckInput) =>
      assess(input).checks.filter(
        ({ id, verdict }) =>
          verdict === 'open' && assess(checkInputOf()).checks.some((was) => was.id === id && was.verdict !== 'open'),
      ).length;
    const bare = checkInputOf({ ratings: [] });
    expect(lost(withoutGrade)).toBe(1);
    expect(lost(bare)).toBeGreaterThan(1);
    // The one without the grade is asked more of than the one without a rating shows.
    expect(ranksOf(bare, withoutGrade)).toEqual([2, 1]);
  });

  it('looks at the gust held to where the largest use is the same', () => {
    const assessment = assess(checkInputOf());
    const holding = (gust: number) => ({
      ...assessment,
      checks: assessment.checks.map((check): Check => {
        const { result } = check;
        return result?.holdsTo ? { ...check, result: { ...result, holdsTo: { ...result.holdsTo, gust } } } : check;
      }),
    });
    const then = [30, 40, 35].map((gust) => ({ name: `${gust}`, assessment: holding(gust) }));
    expect(additionsOf(assessment, then).after.map(({ rank }) => rank)).toEqual([3, 1, 2]);
  });
});

describe('what a candidate leaves unsaid', () => {
  type Candidate = Readonly<Record<string, unknown>>;
  const gust = (speed: number) => ({ ratedWind: { speed, basis: 'gust3-nominal' } });
  const whole: Candidate = { area: 3, areaKind: 'effective', weight: 20, boom: 10, reach: 12, ...gust(160) };
  const without = (candidate: Candidate, field: string): Candidate =>
    Object.fromEntries(Object.entries(candidate).filter(([key]) => key !== field));
  /** Names of candidates for the place of the first load, the best first. */
  const ranked = (plan: Candidate, candidates: Readonly<Record<string, Candidate>>): string[] => {
    const [old, ...others] = plan['loads'] as Candidate[];
    const { height, above, turns } = old as { height?: unknown; above?: unknown; turns?: unknown };
    const places = Object.fromEntries(Object.entries({ height, above, turns }).filter(([, at]) => at !== undefined));
    const then = Object.entries(candidates).map(([name, candidate]) => ({
      name,
      assessment: assess(read({ ...plan, loads: [{ name: 'candidate', ...places, ...candidate }, ...others] }).input),
    }));
    const { after } = additionsOf(assess(read(plan).input), then);
    return after.toSorted((a, b) => a.rank - b.rank).map(({ name }) => name);
  };

  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))(
    'does not put it before one whose leaflet is against it: %s',
    (_, plan) => {
      const weak = { ...whole, ...gust(15) };
      const silent = without(whole, 'ratedWind');
      expect(ranked(plan, { silent, weak, good: whole })).toEqual(['good', 'weak', 'silent']);
    },
  );

  it('does not put one first that opens what was decided', () => {
    // All that the plan has is rated for more wind than there is, so that a candidate alone decides the loads.
    const rated = demoPlan('river-bluff');
    const loads = (rated['loads'] as Candidate[]).map((load) => ({ ...load, weight: 20, ...gust(200) }));
    const plan = { ...rated, loads, mast: { ...(rated['mast'] as Candidate), yield: 50 } };
    const before = assess(read(plan).input)
      .parts.filter(({ verdict }) => verdict !== 'open')
      .map(({ id }) => id);
    expect(before).toContain('load:four-element beam');
    expect(before).toContain('mast');
    const light = { ...whole, area: 1 };
    for (const field of ['ratedWind', 'weight', 'areaKind']) {
      expect(ranked(plan, { unsaid: without(light, field), heavier: { ...whole, area: 3.2 } })[0], field).toBe(
        field === 'areaKind' ? 'unsaid' : 'heavier',
      );
    }
  });

  // An area of flats alone is the exception: one of unknown type is read as that of tubes and compact flats, less than slender ones.
  const candidates = fc.record({
    area: fc.double({ min: 0.5, max: 25, noNaN: true }),
    areaKind: fc.constantFrom('effective', 'projected-round', 'flat-plate'),
    weight: fc.double({ min: 5, max: 150, noNaN: true }),
    boom: fc.double({ min: 4, max: 30, noNaN: true }),
    reach: fc.double({ min: 4, max: 30, noNaN: true }),
    ratedWind: fc.record({
      speed: fc.double({ min: 20, max: 170, noNaN: true }),
      basis: fc.constantFrom('gust3-nominal', 'fastest-mile', 'gust3-strength'),
    }),
  });
  const plans = fc.constantFrom(...demoPlans().map(({ plan }) => plan));
  const fields = fc.constantFrom('areaKind', 'weight', 'boom', 'reach', 'ratedWind', 'ratedWind.basis');

  it('never improves its place', () => {
    fc.assert(
      fc.property(plans, candidates, fields, (plan, candidate, field) => {
        const unsaid =
          field === 'ratedWind.basis'
            ? { ...candidate, ratedWind: { speed: candidate.ratedWind.speed } }
            : without(candidate, field);
        expect(ranked(plan, { told: candidate, unsaid }), field).toEqual(['told', 'unsaid']);
      }),
      { numRuns: 300 },
    );
  });
});

describe('links before and after', () => {
  it('stand beside each other by id, alone where one comes or goes', () => {
    const { mast: _, ...rest } = bluff;
    const [beam] = bluff['loads'] as object[];
    const bare = read({ ...rest, loads: [{ ...beam, height: 40 }] }).input;
    const { after } = additionsOf(assess(checkInputOf()), [{ name: 'bare', assessment: assess(bare) }]);
    const sides = new Map(after[0]?.checks.map(({ id, before, after: then }) => [id, [before?.id, then?.id]]));
    expect(sides.get('tower')).toEqual(['tower', 'tower']);
    expect(sides.get('tower-top')).toEqual(['tower-top', undefined]);
    expect(sides.get('antenna:vertical')).toEqual(['antenna:vertical', undefined]);
    const back = additionsOf(assess(bare), [{ name: 'back', assessment: assess(checkInputOf()) }]).after[0];
    expect(back?.checks.find(({ id }) => id === 'tower-top')).not.toHaveProperty('before');
  });
});

describe('what cannot be computed', () => {
  it('is refused by the name of its proposal, at its place in the request', () => {
    const favourable = checkInputOf();
    const impossible = { ...favourable, site: { ...favourable.site, distances: { powerLine: -5 } } } as CheckInput;
    const placed = (pointer: string) => ({ pointer: `#/proposals/2${pointer}` });
    const refusal = (name?: string) => {
      try {
        assessAsked({ input: impossible, placed, ...(name === undefined ? {} : { name }) });
      } catch (error) {
        return error;
      }
      return undefined;
    };
    expect(refusal('far off')).toBeInstanceOf(Refusal);
    expect(refusal('far off')).toMatchObject({ code: 'fall-distance', at: '/proposals/2' });
    expect((refusal('far off') as Refusal).message).toMatch(/^far off: A distance/);
    expect((refusal() as Refusal).message).toMatch(/^A distance/);
  });
});
