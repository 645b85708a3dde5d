import { describe, expect, it } from 'vitest';
import { assess } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { demoPlan } from '../margins/demo-plan.ts';

function textOf(plan: unknown): string {
  const reading = readPlan(plan);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return answerText(assess(reading.input), [], {});
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

describe('how far it may fall', () => {
  const bluff = demoPlan('river-bluff');
  const near = (distances: object) => ({ ...bluff, site: { ...(bluff['site'] as object), distances } });

  it('is said by itself, beside what gives first in the wind', () => {
    const text = textOf(near({ propertyLine: 30 }));
    const first = text.split('\n').find((line) => line.startsWith('Over')) ?? '';
    expect(first).toMatch(
      /^Over: falling, with ten feet to spare, it needs [\d.]+ ft, and the property line is 30 ft away\./,
    );
    expect(text).toContain('Falling, it may reach the property line. Set it farther off');
    expect(text).not.toContain('asked for more than');
  });

  it('does not stand before a tower that takes too much', () => {
    const site = { ...(bluff['site'] as object), wind: 150, distances: { propertyLine: 10 } };
    const text = textOf({ ...bluff, site });
    expect(text).toMatch(/^Over: in your 150 mph .* the (tower|mast|top)/m);
    expect(text).toContain('Falling, it may reach the property line.');
  });
});
