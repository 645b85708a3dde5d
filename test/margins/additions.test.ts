import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/foundation/index.ts';
import { additionsOf, assess, assessAsked, type Check, type CheckInput } from '../../src/margins/index.ts';
import { read } from '../plan/sample-plans.ts';
import { demoPlan } from './demo-plan.ts';

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
