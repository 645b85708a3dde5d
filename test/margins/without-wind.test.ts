import { describe, expect, it } from 'vitest';
import { remediesOf } from '../../src/margins/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

/** The bluff with a wire that pulls at 30 ft, level, on a tower that can be tilted. */
const pulled = (tension: number, more: Document = {}): Document => {
  const plan = demoPlan('river-bluff');
  const wire = {
    name: 'wire',
    height: 30,
    shape: 'wire',
    diameter: 0.1,
    to: { distance: 60, height: 30, heading: 90 },
    tension,
  };
  return { ...plan, loads: [...(plan['loads'] as Document[]), wire], ...more };
};
const tower = (plan: Document) => assessed(plan).checks[0];

describe('what is used up without any wind', () => {
  it('is told where it is more than the wanted margin leaves', () => {
    // Least is shown of shear, below the wire, at 28 ft: 481.3 lbf by pencil; the wire takes its tension whatever the wind.
    expect(tower(pulled(350))?.result?.ratioWithoutWind).toBeUndefined();
    expect(tower(pulled(420))?.result?.ratioWithoutWind).toBeCloseTo(420 / 481.3, 3);
    expect(tower(pulled(700))?.result?.ratioWithoutWind).toBeCloseTo(700 / 481.3, 3);
  });

  it('makes a link the weakest, though it holds to no gust', () => {
    const answer = assessed(pulled(700));
    expect([answer.weakest, answer.checks[0]?.result?.holdsTo]).toEqual(['tower', undefined]);
    expect(answerText(answer, [])).toMatch(/Without wind its ratio is already 1\.\d+\./);
    // Thin without wind it holds to a gust like any other.
    expect(tower(pulled(420))?.result?.holdsTo).toBeDefined();
  });

  it('leaves no forecast at which to lower, since lowering in time does not help', () => {
    for (const tension of [420, 700]) {
      const answer = assessed(pulled(tension));
      expect(answer.lowerAt).toMatchObject({ ofCheck: 'tower' });
      expect(answer.lowerAt?.gust).toBeUndefined();
      expect(answerText(answer, [])).toContain('No forecast is low enough: without wind the tower is already at');
    }
    expect(assessed(pulled(300)).lowerAt?.gust).toBeGreaterThan(0);
  });

  it('is what remedies are for', () => {
    expect(remediesOf(assessed(pulled(700)))?.check.id).toBe('tower');
  });
});

describe('a link over by weight, whatever the wind', () => {
  it('comes before one that holds to a gust and is not over', () => {
    const plan = demoPlan('river-bluff');
    const loads = (plan['loads'] as Document[]).map((load) => ({ ...load, weight: 20 }));
    const cables = (plan['cables'] as Document[]).map((run) => ({ ...run, weight: 0.1 }));
    // Loads 60 lb, lines 14.4, mast 56.1.
    const ratings = [...(plan['ratings'] as Document[]), { of: 'tower', kind: 'weight', weight: 100 }];
    const answer = assessed({ ...plan, loads, cables, ratings, rotator: { height: 44, weight: 0 } });
    const aloft = answer.checks.find(({ kind }) => kind === 'weight');
    expect([aloft?.verdict, answer.weakest, answer.checks[0]?.verdict]).toEqual(['over', 'tower', 'low-margin']);
    expect(aloft?.result?.ratio).toBeCloseTo(1.305, 2);
    expect(remediesOf(answer)?.check.kind).toBe('weight');
  });
});

describe('the forecast at which to lower', () => {
  it('says that ice is not in it where ice is given', () => {
    const plan = demoPlan('river-bluff');
    const site = { ...(plan['site'] as Document), ice: { thickness: 0.5, gust: 30 } };
    expect(answerText(assessed({ ...plan, site }), [])).toMatch(/Lower the tower when .* Ice is not included\./);
    expect(answerText(assessed(plan), [])).not.toContain('Ice is not included');
  });
});
