import { describe, expect, it } from 'vitest';
import { FOOT, MILE_PER_HOUR, POUND_FORCE } from '../../src/foundation/index.ts';
import { assessed } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

/*
 * Every figure here was worked out by hand arithmetic, apart from the program:
 *   site    q(z) = 0.00256·Kz·0.85·105², Kz = 2.01·(max(z, 15)/900)^(2/9.5); force = 0.6·q·0.85·EPA
 *   rating  q(z) = 0.00256·Kz·0.85·100²·I; force = 0.96·q·0.85·EPA; unfavourable end: exposure B, I = 0.87
 *           Kz(48, B) = 2.01·(48/1200)^(2/7) = 0.8013, q = 15.1692 psf, F_r = 0.96·15.1692·0.85·18 = 222.805 lbf
 *   beam    5.5·1.8 = 9.9 ft² at 50 ft: 13.38246 psf·9.9 = 132.486 lbf
 *   lines   3·0.405/12·1.2 = 0.1215 ft²/ft, together 67.214 lbf
 *   tower   solidity 0.35: 1.5·0.35·2.1715·0.632475 = 0.721045 ft²/ft, together 398.881 lbf
 *           rated by TIA-222-G: 1.5·0.35·2.1715·0.61606 = 0.702332 ft²/ft, together 375.040 lbf
 *   shear at the foot: (132.486 + 67.214 + 398.881)/(222.805 + 375.040) = 598.581/597.845 = 1.001231
 * What is long is summed at the two Gauss points of pieces of at most 4 m, cut at the joints and at 15 ft, the rated wind where its own Kz
 * leaves its floor; four hundred thin steps a piece give 1.001230
 */
const BAD = {
  shear: { 38: 0.787184, 28: 0.895439, 18: 0.955326, 8: 0.984149, 0: 1.001231 },
  moment: { 38: 0.806495, 28: 0.829874, 18: 0.870724, 8: 0.903428, 0: 0.923913 },
};
const GOOD = {
  shear: { 38: 0.136431, 28: 0.176047, 18: 0.20837, 8: 0.234921, 0: 0.254214 },
  moment: { 38: 0.130398, 28: 0.144213, 18: 0.161502, 8: 0.177999, 0: 0.190389 },
};
const USE_IF: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  '/ratings/0/wind/exposure': { C: 0.7555294375, D: 0.6401947569 },
  '/ratings/0/wind/riskCategory': { II: 0.8710710497, III: 0.7574530867 },
  '/ratings/0/areaKind': { 'flat-plate': 0.9317798013 },
  '/loads/0/areaKind': { effective: 0.9027392856, 'projected-round': 0.9273622371 },
  '/tower': { '0.1': 0.956151474, '0.35': 1.001231092 },
};

describe('the plan of ten numbers, as worked out by hand', () => {
  const assessment = assessed(demoPlan('ten-numbers'));
  const tower = assessment.checks[0]?.result;

  it.each([38, 28, 18, 8, 0] as const)('has the uses of hand arithmetic at %i ft', (feet) => {
    for (const of of ['shear', 'moment'] as const) {
      const ratio = assessment.ratios.find((each) => {
        const level = assessment.model.levels[each.comparison.level];
        return each.comparison.of === of && Math.abs((level?.z ?? -1) / FOOT - feet) < 1e-6;
      });
      expect(ratio?.unfavourable).toBeCloseTo(BAD[of][feet], 6);
      expect(ratio?.favourable).toBeCloseTo(GOOD[of][feet], 6);
    }
  });

  it('is not shown: a hair over 1 in shear at the foot as read, a quarter at best', () => {
    expect(assessment.verdict).toBe('open');
    expect(assessment.decided.verdict).toBeUndefined();
    expect(tower?.ratio).toBeCloseTo(1.001231092, 8);
    expect(tower?.ratioRange[0]).toBeCloseTo(0.254214248, 8);
    expect(tower?.of).toBe('shear');
    expect(tower?.height).toBe(0);
    expect((tower?.demand ?? 0) / POUND_FORCE).toBeCloseTo(598.580728, 5);
    expect((tower?.capacity ?? 0) / POUND_FORCE).toBeCloseTo(597.844726, 5);
  });

  it('holds to 105/√1.001231 mph by design and √(0.6·0.85) of that in an actual gust', () => {
    expect((tower?.holdsTo?.design ?? 0) / MILE_PER_HOUR).toBeCloseTo(104.935427, 5);
    expect((tower?.holdsTo?.gust ?? 0) / MILE_PER_HOUR).toBeCloseTo(74.938884, 5);
  });

  it('says what each answer alone would give', () => {
    expect(assessment.questions.open.map((question) => question.at).sort()).toEqual(Object.keys(USE_IF).sort());
    for (const question of assessment.questions.open) {
      for (const [answer, ratio] of Object.entries(USE_IF[question.at] ?? {})) {
        expect(
          question.ratioIf.find((option) => option.answer === answer)?.ratio,
          `${question.at} ${answer}`,
        ).toBeCloseTo(ratio, 8);
      }
    }
  });

  it('asks first for what helps most', () => {
    expect(assessment.questions.open[0]?.at).toBe('/ratings/0/wind/exposure');
  });
});
