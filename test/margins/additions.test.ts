import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/foundation/index.ts';
import { additionsOf, assess, assessAsked, type Inquiry, type Link } from '../../src/margins/index.ts';
import { read } from '../plan/sample-plans.ts';
import { demoPlan } from './demo-plan.ts';

const bluff = demoPlan('river-bluff');
const inquiryOf = (changes: object = {}): Inquiry => read({ ...bluff, ...changes }).inquiry;
const extra = (name: string, area: number) => ({ name, above: 1, area, areaKind: 'effective' });
const withLoad = (area: number) => inquiryOf({ loads: [...(bluff['loads'] as object[]), extra('extra', area)] });

function ranksOf(...proposals: readonly Inquiry[]): number[] {
  const then = proposals.map((inquiry, index) => ({ name: `${index}`, assessment: assess(inquiry) }));
  return additionsOf(assess(inquiryOf()), then).after.map(({ rank }) => rank);
}

describe('the ranking of proposals', () => {
  it('puts the larger margin first', () => {
    expect(ranksOf(withLoad(1), withLoad(0.1), withLoad(0.5))).toEqual([3, 1, 2]);
  });

  it('keeps the order asked among equals', () => {
    expect(ranksOf(withLoad(0.3), withLoad(0.3), withLoad(0.3))).toEqual([1, 2, 3]);
  });

  it('puts what shows nothing any more behind what is shown, and over last of all', () => {
    const bare = inquiryOf({ ratings: [] });
    const heavy = withLoad(60);
    expect(assess(heavy).verdict).toBe('over');
    expect(assess(bare).links[0]?.result).toBeUndefined();
    expect(ranksOf(heavy, bare, withLoad(0.5))).toEqual([3, 2, 1]);
  });

  it('puts fewer links that stop being shown before more', () => {
    const { yield: _, ...mast } = bluff['mast'] as Record<string, unknown>;
    const withoutGrade = inquiryOf({ mast });
    const lost = (inquiry: Inquiry) =>
      assess(inquiry).links.filter(
        ({ id, verdict }) =>
          verdict === 'not-shown' &&
          assess(inquiryOf()).links.some((was) => was.id === id && was.verdict !== 'not-shown'),
      ).length;
    const bare = inquiryOf({ ratings: [] });
    expect(lost(withoutGrade)).toBe(1);
    expect(lost(bare)).toBeGreaterThan(1);
    // The one without the grade is asked more of than the one without a rating shows.
    expect(ranksOf(bare, withoutGrade)).toEqual([2, 1]);
  });

  it('looks at the gust held to where the largest use is the same', () => {
    const assessment = assess(inquiryOf());
    const holding = (gust: number) => ({
      ...assessment,
      links: assessment.links.map((link): Link => {
        const { result } = link;
        return result?.holdsTo ? { ...link, result: { ...result, holdsTo: { ...result.holdsTo, gust } } } : link;
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
    const bare = read({ ...rest, loads: [{ ...beam, height: 40 }] }).inquiry;
    const { after } = additionsOf(assess(inquiryOf()), [{ name: 'bare', assessment: assess(bare) }]);
    const sides = new Map(after[0]?.links.map(({ id, before, after: then }) => [id, [before?.id, then?.id]]));
    expect(sides.get('tower')).toEqual(['tower', 'tower']);
    expect(sides.get('tower-top')).toEqual(['tower-top', undefined]);
    expect(sides.get('antenna:vertical')).toEqual(['antenna:vertical', undefined]);
    const back = additionsOf(assess(bare), [{ name: 'back', assessment: assess(inquiryOf()) }]).after[0];
    expect(back?.links.find(({ id }) => id === 'tower-top')).not.toHaveProperty('before');
  });
});

describe('what cannot be computed', () => {
  it('is refused by the name of its proposal, at its place in the request', () => {
    const good = inquiryOf();
    const impossible = { ...good, site: { ...good.site, distances: { powerLine: -5 } } } as Inquiry;
    const placed = (pointer: string) => ({ pointer: `#/proposals/2${pointer}` });
    const refusal = (name?: string) => {
      try {
        assessAsked({ inquiry: impossible, placed, ...(name === undefined ? {} : { name }) });
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
