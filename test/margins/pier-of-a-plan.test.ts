import { describe, expect, it } from 'vitest';
import { FOOT, POUND_FORCE } from '../../src/foundation/index.ts';
import type { Assessment, Check } from '../../src/margins/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { POLE_PLAN, poleOn, poleRating } from './pole-station.ts';

/** The pole on a round pier, 3 ft across and 8 ft deep, in soil of 200 psf a foot. */
const station = (tower: Document, load: Document, foundation: Document = {}): Document => ({
  format: 2,
  ...POLE_PLAN,
  tower: { ...poleOn({ kind: 'pier', diameter: 3, depth: 8, soilLateral: 200, ...foundation }), ...tower },
  loads: [{ name: 'a', height: 40, area: 8, areaKind: 'effective', weight: 20, offset: 0, ...load }],
  ratings: [poleRating(20)],
});

const footingOf = ({ checks }: Assessment) => checks.find(({ kind }) => kind === 'foundation') as Check;
const loadOf = ({ foundation }: Assessment) => ({
  P: (foundation?.load.shear ?? 0) / POUND_FORCE,
  M: (foundation?.load.moment ?? 0) / POUND_FORCE / FOOT,
});
// S₁ = 200·8/3 psf; S₁·b·d²/2.34 = 533.33·3·64/2.34 = 43,760.7 lbf·ft.
const HOLDS = (((200 * 8) / 3) * 3 * 64) / 2.34;

describe('a pier under weight off the axis', () => {
  it.each([false, true])('answers though without wind it has a moment and no shear (held: %s)', (constrained) => {
    const eccentricWeight = assessed(station({}, { offset: 1 }, { constrained }));
    const upright = assessed(station({}, {}, { constrained }));
    // 20 lb one foot off: 20 lbf·ft more, in still air too.
    expect(loadOf(eccentricWeight).M - loadOf(upright).M).toBeCloseTo(20, 6);
    expect(loadOf(eccentricWeight).P).toBeCloseTo(loadOf(upright).P, 9);
    const more = constrained ? (4.25 * 20) / (1600 * 3 * 64) : (2.34 * 1.09 * 20) / ((1600 / 3) * 3 * 64);
    const [ratio, bare] = [eccentricWeight, upright].map((answer) => footingOf(answer).result?.ratio ?? 0) as [
      number,
      number,
    ];
    expect(ratio - bare).toBeCloseTo(more, 9);
    // Where no coefficient changed the wind's share would go with the square of its speed.
    const [holds, holdsBare] = [eccentricWeight, upright].map((each) => footingOf(each).result?.holdsTo?.gust ?? 0);
    expect(holds).toBeGreaterThan(0);
    expect(holds).toBeLessThan(holdsBare as number);
  });
});

describe('a pier whose head stands above the ground', () => {
  const level = assessed(station({}, {}));
  const raised = assessed(station({ base: 5, top: 45 }, { height: 45 }));

  it('takes the shear down to the surface', () => {
    for (const [answer, head] of [
      [level, 0],
      [raised, 5],
    ] as const) {
      const { P, M } = loadOf(answer);
      const asked = P * 8 + 1.09 * (M + P * head);
      const { result } = footingOf(answer);
      expect(result?.ratio).toBeCloseTo(asked / HOLDS, 9);
      expect((result?.demand ?? 0) / POUND_FORCE / FOOT).toBeCloseTo(asked, 6);
      expect((result?.capacity ?? 0) / POUND_FORCE / FOOT).toBeCloseTo(HOLDS, 6);
      expect((answer.foundation?.pier?.height ?? 0) / FOOT).toBeCloseTo(M / P + head, 9);
    }
  });
});

describe('the sentences of a pier', () => {
  it('divide what they print, and tell the depths beside it', () => {
    const answer = assessed(station({}, {}, { depth: 5, isolatedPole: false, bothAccepted: false }));
    const { ratio, demand, capacity } = footingOf(answer).result ?? { ratio: 0, demand: 0, capacity: 1 };
    expect(ratio).toBe(demand / capacity);
    expect(ratio).toBeGreaterThan(1);
    const said = answerText(answer, []);
    const [, asked, held, told] =
      /Footing: over\. Demand ([\d,]+) lbf·ft, capacity ([\d,]+) lbf·ft, ratio (\d\.\d+)/.exec(said) ?? [];
    const number = (text = '') => Number(text.replaceAll(',', ''));
    expect(number(asked) / number(held)).toBeCloseTo(number(told), 2);
    expect(said).toMatch(/Required depth [\d.]+ ft, given 5 ft\./);
  });
});

describe('a pier that half an inch at the ground does not harm', () => {
  it('has twice the lateral value of its soil, where the plan says so', () => {
    const [once, twice] = [assessed(station({}, {})), assessed(station({}, {}, { isolatedPole: true }))];
    expect(footingOf(once).result?.capacity).toBeCloseTo(HOLDS * POUND_FORCE * FOOT, 2);
    expect(footingOf(twice).result?.capacity).toBeCloseTo(2 * HOLDS * POUND_FORCE * FOOT, 2);
    expect(answerText(twice, [])).toContain('Twice the lateral soil bearing is counted');
    expect(answerText(once, [])).not.toContain('Twice the lateral');
  });

  it('is not taken where the plan says no', () => {
    const said = assessed(station({}, {}, { isolatedPole: false }));
    expect(footingOf(said).result?.capacity).toBeCloseTo(HOLDS * POUND_FORCE * FOOT, 2);
  });
});
