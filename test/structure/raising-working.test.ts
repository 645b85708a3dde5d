import { describe, expect, it } from 'vitest';
import { type Step, Trace, under } from '../../src/foundation/index.ts';
import {
  hoistPull,
  lyingMoments,
  nestedSections,
  type RaisingGear,
  raisingThrough,
  type TiltingBody,
  windHeldAt,
} from '../../src/structure/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';

const bodies: readonly TiltingBody[] = [
  { mass: 180, low: 0, high: 14, offset: 0 },
  { mass: 35, low: 15, high: 15, offset: 0.1 },
  { mass: 60, low: -1.5, high: -1.5, offset: -0.05 },
];
const gears: Readonly<Record<string, RaisingGear>> = {
  'a line over a pole': { kind: 'line', anchor: [-12, 0.4], attach: [9, 0.2], over: [0.6, 4], breakingLoad: 60000 },
  'a screw that pushes': { kind: 'screw', anchor: [1, -1.5], attach: [2.5, -0.2], workingLoad: 30000 },
};
const section = (low: number, high: number) => ({ name: '', at: '', low, high, uniform: true });

const working = (work: (trace: Trace) => void): readonly Step[] => {
  const trace = new Trace();
  under(trace, 'raising', () => work(trace));
  return trace.steps;
};

describe.each(['us', 'si'] as const)('the working of raising, in %s units', (system) => {
  const failing = (steps: readonly Step[]) =>
    witness(workingDocument(steps, system))
      .filter(({ agrees }) => !agrees)
      .map(({ step, evaluated }) => `${step.formula}: ${evaluated} against ${step.value}`);

  it.each(Object.entries(gears))('by %s re-evaluates, units and all', (_, gear) => {
    const steps = working((trace) => {
      raisingThrough(bodies, gear, { from: 0, to: 1.4 }, trace);
      lyingMoments(bodies, gear, [-1.5, -1, 0, 3, 9, 14.5, 15, 16], 0, trace);
      const forces = [
        { force: 400, along: 7, acts: 'square' as const },
        { force: 300, along: 15, acts: 'level' as const },
      ];
      windHeldAt(bodies, gear, 0.7, { speed: 20, forces }, trace);
    });
    const named = new Set(steps.map(({ formula }) => formula.id));
    for (const id of ['force-of-raising-gear', 'use-of-raising-gear', 'bending-of-lying-tower']) {
      expect(named).toContain(id);
    }
    expect(named).toContain('wind-to-working-load-of-gear');
    expect(failing(steps)).toEqual([]);
  });

  it('of a crank-up re-evaluates', () => {
    const steps = working((trace) => {
      hoistPull([90, 70, 95], trace);
      nestedSections([section(0, 6), section(5, 11), section(10, 16)], 7, trace);
    });
    expect(steps).toHaveLength(4);
    expect(failing(steps)).toEqual([]);
  });
});
