import { describe, expect, it } from 'vitest';
import { answerDocument } from '../../src/worksheet/index.ts';
import { assessed, type Document } from '../margins/any-plan.ts';

const STATION: Document = {
  units: 'us',
  method: 'tia222-h',
  site: { wind: { speed: 100 }, exposure: 'C', riskCategory: 'II', topographicFactor: 1 },
  tower: {
    support: 'free',
    top: 50,
    shape: 'lattice',
    faces: 3,
    width: 18,
    members: 'round',
    solidity: 0.2,
    frequency: 2,
  },
  loads: [{ name: 'Beam', area: 4, areaKind: 'effective', above: 0, ratedWind: { speed: 120 }, weight: 30 }],
  cables: [],
};

const inquiriesOf = (changed: Document) => {
  const plan = { ...STATION, ...changed };
  return { ...answerDocument(assessed(plan), plan, [], 'none').inquiries, plan };
};

const tower = STATION['tower'] as Document;
const RATED = { of: 'tower', area: 12, areaKind: 'effective', top: 50 };

describe('what to ask and to measure', () => {
  it('asks a tower without papers for what it carries, by which standard and on which footing', () => {
    const { letter, measure } = inquiriesOf({});
    expect(letter?.match(/^\d\. /gm)).toEqual(['1. ', '2. ', '3. ']);
    expect(letter).toMatch(/1\. Which effective projected area/);
    expect(letter).toMatch(/2\. By which standard and edition/);
    expect(letter).toMatch(/3\. Which footing/);
    expect(letter).toContain('top 50 ft above ground');
    expect(letter).toContain('lattice of 3 faces, 18 in wide, round members');
    expect(letter).toContain('No data sheet came with it.');
    expect(measure?.findIndex((each) => each.includes('plate'))).toBe(0);
    expect(measure?.some((each) => each.includes('caliper'))).toBe(true);
  });

  it('asks for what the data sheet leaves out, and says what it states', () => {
    const { letter } = inquiriesOf({ ratings: [{ ...RATED, wind: { speed: 90 } }] });
    expect(letter).toContain('By which standard is the tower rated?');
    expect(letter).toContain('12 ft²');
    expect(letter).not.toContain('No data sheet');
    expect(letter).not.toContain('Which effective projected area');
  });

  it('asks in the order of what the answers move, three at most', () => {
    const { letter, plan } = inquiriesOf({ ratings: [{ of: 'tower', area: 12, wind: { speed: 90 } }] });
    const asked = (letter ?? '').match(/^\d\. .*$/gm) ?? [];
    expect(asked).toHaveLength(3);
    const { toFindOut } = answerDocument(assessed(plan), plan, [], 'none');
    const falls = asked.flatMap((line) => {
      const question = toFindOut.find(({ ask }) => line.endsWith(ask));
      return question ? [Math.min(...Object.values(question.ratioIf))] : [];
    });
    expect(falls.length).toBeGreaterThan(1);
    expect(falls).toEqual([...falls].sort((one, other) => one - other));
  });

  it('has the owner measure what a tape tells', () => {
    const { solidity: _, ...bare } = tower;
    const wind = { speed: 90, method: 'tia222-g', exposure: 'C', riskCategory: 'II' };
    const { measure } = inquiriesOf({ tower: bare, ratings: [{ ...RATED, wind }] });
    expect(measure?.[0]).toMatch(/legs and braces/);
  });

  it('neither asks nor measures where nothing is open', () => {
    const wind = { speed: 90, method: 'tia222-g', exposure: 'C', riskCategory: 'II' };
    const whole = { ...tower, foundation: { kind: 'manufacturer' } };
    const { letter, measure } = inquiriesOf({ tower: whole, ratings: [{ ...RATED, wind }] });
    expect(letter).toBeUndefined();
    expect(measure).toBeUndefined();
  });
});
