import { describe, expect, it } from 'vitest';
import { additionsOf, assess } from '../../src/margins/index.ts';
import { readAdditionsRequest } from '../../src/plan/index.ts';
import { additionSays, additionsSays, headlineSays } from '../../src/worksheet/index.ts';
import { assessed } from '../margins/any-plan.ts';
import { demoPlan } from '../margins/demo-plan.ts';

/** What is said of each proposal, and of the best of them. */
function saidOf(plan: object, proposals: readonly object[]) {
  const reading = readAdditionsRequest({ plan, proposals });
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const before = assess(reading.before);
  const then = reading.after.map(({ name, input }) => ({ name, assessment: assess(input) }));
  const additions = additionsOf(before, then);
  const said = additions.after.map((addition) => additionSays(before, addition, 'us'));
  return { before, then, said, best: additionsSays(additions, 'us') };
}

const bluff = demoPlan('river-bluff');
const near = { ...bluff, site: { ...(bluff['site'] as object), distances: { powerLine: 90 } } };
const mast = { ...(bluff['mast'] as object), yield: 50 };

describe('what is said where a power line stands near', () => {
  const fallOf = (plan: object) => assessed(plan).checks.find(({ kind }) => kind === 'fall')?.result?.ratio;

  it('is of what the wind does, though the fall takes more of the distance', () => {
    // 65 ft of tip, half of a boom of 24 ft, and 10 ft, of 90 ft: more than the 0.943 of the tower.
    expect(fallOf(near)).toBeCloseTo((65 + 12 + 10) / 90, 6);
    expect(headlineSays(assessed(near))).toMatch(
      /^Tower low margin: at 0\.943 of its rated capacity \(target 0\.8\) in a 105 mph strength-level gust;/,
    );
  });

  it('is of the fall where that is over and nothing else is', () => {
    const under = { ...near, site: { ...near.site, distances: { powerLine: 50 } } };
    expect(headlineSays(assessed(under))).toMatch(
      /^Distance to the power line over: a fall needs [\d.]+ ft with ten feet to spare, 50 ft given\./,
    );
  });

  it('is of what stands in the wind, though a weight aloft takes more of what is stated for it', () => {
    const [rating] = bluff['ratings'] as object[];
    const weighed = (weight: number) => ({
      ...bluff,
      rotator: { weight: 20 },
      loads: (bluff['loads'] as object[]).map((load) => ({ ...load, weight: 10 })),
      cables: (bluff['cables'] as object[]).map((cable) => ({ ...cable, weight: 0.1 })),
      ratings: [rating, { of: 'tower', kind: 'weight', weight }],
    });
    const aloft = assessed(weighed(1000)).checks.find(({ kind }) => kind === 'weight')?.result?.demand as number;
    const pounds = aloft / 0.45359237;
    expect(headlineSays(assessed(weighed(pounds / 0.99)))).toMatch(
      /^Tower low margin: at .* in a 105 mph strength-level gust;/,
    );
    expect(headlineSays(assessed(weighed(pounds / 1.25)))).toMatch(
      /^Weight aloft over: at 1\.25 of its rated limit; weight governs\. That is beyond the manufacturer’s rating/,
    );
  });

  it('says again of a fall that is over and stays only that it is', () => {
    const under = { ...near, site: { ...near.site, distances: { powerLine: 50 } } };
    const { said } = saidOf(under, [{ name: 'no panel', remove: ['link panel'] }]);
    expect(said[0]).toMatch(/^no panel: the tower top stays at 0\.872, low margin\./);
    expect(said[0]).toMatch(/ Over as before: distance to the power line\.$/);
  });

  it('tells of a proposal what then holds to the least, never a fall that stays', () => {
    const { said } = saidOf(near, [{ name: 'no beam', remove: ['four-element beam'] }]);
    expect(said[0]).toMatch(/^no beam: the tower goes from 0\.943 to 0\.\d+, \w+\. It then holds to an actual gust of/);
    expect(said[0]).toContain('instead of 77.2 mph');
    expect(said[0]).not.toContain('power line');
  });
});

describe('what is said of a proposal', () => {
  it('names the weakest before, where another is now', () => {
    // By hand: the panel takes 56.3 of the 590.3 lbf at the foot, (590.3 − 56.3)/625.9 = 0.853; the top takes 0.872 of what is
    // shown there, and nothing of the panel.
    const { said } = saidOf({ ...bluff, mast }, [{ name: 'no panel', remove: ['link panel'] }]);
    expect(said[0]).toMatch(
      /^no panel: the tower top stays at 0\.872, low margin\. It then holds to an actual gust of/,
    );
    expect(said[0]).toContain('Before, the weakest was the tower, at 77.2 mph.');
    expect(said[0]).toMatch(/ The tower goes from 0\.943 to 0\.853, low margin\. It then holds to/);
  });

  it('tells what changed most, where what holds to the least stays', () => {
    const { said } = saidOf({ ...bluff, mast }, [{ name: 'harder mast', set: { mast: { yield: 75 } } }]);
    expect(said[0]).toMatch(
      /^harder mast: the tower stays at 0\.943, low margin\. It then holds to an actual gust of 77\.2 mph\. /,
    );
    // 1.5 times the yield, two thirds of the ratio.
    const [, from, to] = /The mast goes from (0\.\d+) to (0\.\d+), within/.exec(said[0] ?? '') ?? [];
    expect(Number(to) / Number(from)).toBeCloseTo(2 / 3, 2);
  });

  it('calls nothing the weakest that is no longer decided', () => {
    const { said } = saidOf({ ...bluff, mast }, [{ name: 'unrated', set: { ratings: null } }]);
    expect(said[0]).toContain('No longer decided: tower');
    expect(said[0]).toMatch(/^unrated: the mast stays at/);
    expect(said[0]).not.toMatch(/would then be/);
  });

  it('speaks of the largest margin, not of the weakest, where it ranks', () => {
    const [one, other] = ['no panel', 'no vertical'];
    const loads = (bluff['loads'] as { name: string }[]).map(({ name }) => name);
    const { best } = saidOf(bluff, [
      { name: one, remove: [loads[1]] },
      { name: other, remove: [loads[2]] },
    ]);
    expect(best).toMatch(/^Of 2 proposals "no \w+" (leaves the most margin|comes first, with parts still open)\. no /);
  });

  it('claims no margin for one that comes first by what it gives', () => {
    const { before, then } = saidOf(bluff, [
      { name: 'light', swap: [{ load: 'four-element beam', with: { area: 2, areaKind: 'effective' } }] },
      { name: 'weighed', swap: [{ load: 'four-element beam', with: { area: 3, areaKind: 'effective', weight: 30 } }] },
    ]);
    // As if nothing were open.
    const decided = then.map(({ name, assessment }) => ({
      name,
      assessment: { ...assessment, decided: { parts: 8, of: 8, verdict: 'low-margin' as const } },
    }));
    const [light, weighed] = decided as [(typeof decided)[number], (typeof decided)[number]];
    expect(additionsSays(additionsOf(before, [light, weighed]), 'us')).toMatch(
      /^Of 2 proposals "weighed" comes first, with the least not given\. /,
    );
    const [lighter] = saidOf(bluff, [
      { name: 'lighter', swap: [{ load: 'four-element beam', with: { area: 2, areaKind: 'effective', weight: 30 } }] },
    ]).then;
    const told = { ...(lighter as (typeof then)[number]) };
    const all = { ...told, assessment: { ...told.assessment, decided: weighed.assessment.decided } };
    expect(additionsSays(additionsOf(before, [weighed, all]), 'us')).toMatch(
      /^Of 2 proposals "lighter" leaves the most margin\. /,
    );
  });
});
