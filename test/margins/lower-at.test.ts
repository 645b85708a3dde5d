import { describe, expect, it } from 'vitest';
import { answerDocument, answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

const BLUFF = demoPlan('river-bluff');
const on = (foundation: Document, changes: Document = {}): Document => ({
  ...BLUFF,
  tower: { ...(BLUFF['tower'] as Document), foundation },
  ...changes,
});
/** 3 ft of concrete each way weigh 4,045 lb: with the mast nearly all of the 4,500 lb that 500 psf carry. */
const SMALL = { kind: 'block', length: 3, width: 3, depth: 3, soilBearing: 500 };

describe('the gust at which to lower', () => {
  it('names what is over and has no gust', () => {
    const assessment = assessed(on(SMALL));
    const footing = assessment.checks.find(({ kind }) => kind === 'foundation');
    expect(footing?.verdict).toBe('over');
    // All of it pressed, the corner leaned on at 500 psf: M = (q·A − N)·B/(6·√2).
    const { load } = assessment.foundation as NonNullable<typeof assessment.foundation>;
    const N = 9.80665 * (2400 * 0.9144 ** 3 + (load.leastWeight as number));
    const takes = ((500 * 47.880259 * 0.9144 ** 2 - N) * 0.9144) / (6 * Math.SQRT2);
    expect((footing?.result?.ratio as number) / ((load.moment + load.shear * 0.9144) / takes)).toBeCloseTo(1, 4);
    expect(assessment.lowerAt?.overWithoutGust).toEqual(['foundation']);
    const { lowerAt } = answerDocument(assessment, {}, [], 'none');
    expect(lowerAt?.overWithoutGust).toEqual(['foundation']);
    expect(lowerAt?.says).toContain('Above 1, with no gust known: footing. Mend that first.');
    expect(answerText(assessment, [])).toContain('Above 1, with no gust known: footing.');
  });

  it('names it where nothing else has a gust', () => {
    const { ['mast']: _, ...bare } = on(SMALL, {
      ratings: [],
      loads: [{ name: 'whip', height: 47, area: 4, offset: 0 }],
    });
    const assessment = assessed(bare);
    const { lowerAt } = answerDocument(assessment, {}, [], 'none');
    expect(lowerAt).toMatchObject({ overWithoutGust: ['foundation'] });
    expect(lowerAt?.gust).toBeUndefined();
    expect(lowerAt?.says).toMatch(
      /^No gust at which to lower the tower can be given\. Above 1, with no gust known: footing\./,
    );
  });

  it('names nothing where all that is above 1 has its gust', () => {
    const large = { kind: 'block', length: 8, width: 8, depth: 4, soilBearing: 2000 };
    expect(assessed(on(large)).lowerAt?.overWithoutGust).toEqual([]);
  });

  it('leaves out nothing above 1 that wind or weight loads, in silence', () => {
    for (const side of [2, 3, 4, 5, 6, 8]) {
      for (const soilBearing of [300, 1000, 3000]) {
        const { checks, lowerAt } = assessed(on({ kind: 'block', length: side, width: side, depth: 3, soilBearing }));
        for (const { id, verdict, result } of checks) {
          if (!result || result.ratio <= 1 || (verdict !== 'over' && verdict !== 'open')) continue;
          const named = result.keepsMarginTo !== undefined || result.ratioWithoutWind !== undefined;
          expect(named || lowerAt?.overWithoutGust.includes(id), `${id} at ${side} ft`).toBe(true);
        }
      }
    }
  });
});
