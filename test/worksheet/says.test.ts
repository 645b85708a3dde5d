import { describe, expect, it } from 'vitest';
import { assess } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { checkText } from '../../src/worksheet/index.ts';
import { demoPlan } from '../margins/demo-plan.ts';

function textOf(plan: unknown): string {
  const reading = readPlan(plan);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return checkText(assess(reading.inquiry), [], {});
}

describe('a tower that nothing given shows', () => {
  const plan = demoPlan('ten-numbers');
  const rated = (rating: object) => textOf({ ...plan, ratings: [{ of: 'tower', kind: 'moment', ...rating }] });
  const part = 'That is where something given proves it; elsewhere nothing does: ask the maker.';
  const beyond = 'More than 1 there says only that nothing given shows it: ask the maker.';

  it('is told apart where a part of it is proven', () => {
    const text = rated({ moment: 90_000 });
    expect(text).toMatch(/^Not shown: the tower takes 0\.\d+ of/m);
    expect(text).toMatch(/^- Tower: not shown, .* use 0\.\d+/m);
    expect(text.split(part)).toHaveLength(3);
    expect(text).not.toContain(beyond);
  });

  it('is told apart where more is asked than is proven', () => {
    const text = rated({ moment: 9_000 });
    expect(text).not.toContain(part);
    expect(text.split(beyond)).toHaveLength(3);
  });
});
