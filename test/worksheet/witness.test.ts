import { describe, expect, it } from 'vitest';
import type { WorkingStep } from '../../src/answer/index.ts';
import { workingOf } from '../../src/margins/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import { assessed } from '../margins/any-plan.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { steelPole } from '../margins/steel-pole.ts';

const workingFor = (plan: Record<string, unknown>): readonly WorkingStep[] => {
  const assessment = assessed(plan);
  return workingDocument(workingOf(assessment).steps, assessment.input.station.units);
};

const atSite = (id: string, fields: object): Record<string, unknown> => {
  const plan = demoPlan(id);
  return { ...plan, site: { ...(plan['site'] as object), ...fields } };
};
const withIce = (id: string, ice: object) => atSite(id, { ice });

const CHART = [
  [10, 76],
  [25, 84],
  [50, 92],
  [100, 97],
];
const RECORD = [58, 61, 70, 66, 59, 83, 64, 62, 75, 68, 60, 57];

const PLANS: readonly (readonly [string, Record<string, unknown>])[] = [
  ...demoPlans().map(({ id, plan }) => [id, plan] as const),
  ['river-bluff with ice', withIce('river-bluff', { thickness: 0.5, gust: 40 })],
  ['ten-numbers with a chart', atSite('ten-numbers', { climate: { basis: 'gust3-nominal', returnPeriods: CHART } })],
  ['river-bluff with a record', atSite('river-bluff', { climate: { basis: 'fastest-mile', yearlyMax: RECORD } })],
  [
    'light-mast with a record',
    atSite('light-mast', { climate: { basis: 'mean-10min', yearlyMax: [18, 22, 19, 25, 21, 20, 23, 17, 24, 19] } }),
  ],
  ['light-mast with ice', withIce('light-mast', { thickness: 20, gust: 20 })],
  ['a steel pole without papers', steelPole()],
];

describe.each(PLANS)('the working of %s', (_, plan) => {
  const working = workingFor(plan);

  it('re-evaluates, every step of it, units and all', () => {
    expect(working.length).toBeGreaterThan(20);
    const failed = witness(working).filter((testimony) => !testimony.agrees);
    expect(failed.map(({ step, evaluated }) => `${step.formula}: ${evaluated} against ${step.value}`)).toEqual([]);
  });

  it('says of every step where it is from and how it is known', () => {
    for (const step of working) {
      expect(step.clause, step.formula).not.toBe('');
      expect(step.knownInWords, step.formula).not.toBe('');
      expect(step.about.length, step.formula).toBeGreaterThan(0);
    }
  });

  it('ends in a use', () => {
    expect(working.some((step) => step.symbol === 'u' || step.symbol === 'k')).toBe(true);
  });
});

describe('the witness', () => {
  const [first] = workingFor(demoPlan('river-bluff'));
  if (!first) throw new Error('a working has steps');

  it('catches a value that was changed', () => {
    const [testimony] = witness([{ ...first, value: first.value * 1.0001 }]);
    expect(testimony?.agrees).toBe(false);
  });

  it('catches an input that was changed', () => {
    const pressure = workingFor(demoPlan('river-bluff')).find((step) => step.symbol === 'q_z');
    if (!pressure) throw new Error('there is a pressure');
    const inputs = pressure.inputs.map((input) => (input.symbol === 'V' ? { ...input, value: 106 } : input));
    expect(witness([{ ...pressure, inputs }])[0]?.agrees).toBe(false);
  });

  it('catches a unit that does not fit', () => {
    const pressure = workingFor(demoPlan('river-bluff')).find((step) => step.symbol === 'q_z');
    if (!pressure) throw new Error('there is a pressure');
    expect(() => witness([{ ...pressure, unit: 'lbf' }])).toThrow();
  });
});
