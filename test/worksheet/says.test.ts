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

describe('a tower that no rating covers', () => {
  const plan = demoPlan('ten-numbers');
  const rated = (rating: object) => textOf({ ...plan, ratings: [{ of: 'tower', kind: 'moment', top: 48, ...rating }] });
  const part = 'That is the place a rating covers; no rating entered covers the rest. Ask the manufacturer.';
  const beyond = 'A ratio above 1 there means only that no rating entered covers this load. Ask the manufacturer.';

  it('is told apart where a part of it is covered', () => {
    const text = rated({ moment: 90_000 });
    expect(text).toMatch(/^Open: the tower is at 0\.\d+ of its rated capacity in a 105 mph strength-level gust; /m);
    expect(text).toMatch(/^- Tower: open\. Demand .*, ratio 0\.\d+ \(0\.\d+ at best\); .* governs\./m);
    expect(text.split(part)).toHaveLength(3);
    expect(text).not.toContain(beyond);
  });

  it('is told apart where the demand is more than what is covered', () => {
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
    const first = text.split('\n').find((line) => line.startsWith('Distance')) ?? '';
    expect(first).toMatch(
      /^Distance to the property line over: a fall needs [\d.]+ ft with ten feet to spare, 30 ft given\. If it falls, it could reach the property line\./,
    );
    expect(text).toContain('If it falls, it could reach the property line. Move it farther away');
    expect(text).not.toContain('Demand on the');
  });

  it('does not stand before a tower that takes too much', () => {
    const site = { ...(bluff['site'] as object), wind: 150, distances: { propertyLine: 10 } };
    const text = textOf({ ...bluff, site });
    expect(text).toMatch(/^(Tower|Mast|Tower top) over: at [\d.]+ of its \w+ capacity in a 150 mph /m);
    expect(text).toContain('If it falls, it could reach the property line.');
  });
});
