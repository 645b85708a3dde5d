import { describe, expect, it } from 'vitest';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';

/** A plain lattice under a beam, and ratings of it. */
const plan = (ratings: Document[], loads: Document[] = [beam('beam', 2)]): Document => ({
  units: 'us',
  method: 'asce7-16',
  site: { wind: { speed: 100, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' },
  tower: {
    support: 'free',
    top: 40,
    sections: [
      {
        length: 40,
        shape: 'lattice',
        faces: 3,
        width: 18,
        members: 'round',
        leg: 1.25,
        brace: 0.4375,
        panel: 18,
        pattern: 'zigzag',
      },
    ],
  },
  mast: { outside: 2, wall: 0.25, length: 9, inside: 3, yield: 46, bearing: 40 },
  rotator: { weight: 20 },
  loads,
  ratings,
  cables: [],
});
function beam(name: string, above: number, more: Document = {}): Document {
  return { name, above, front: 6, side: 2, areaKind: 'effective', turns: true, weight: 20, ...more };
}
const wind = (more: Document = {}): Document => ({ speed: 90, method: 'tia222-g', exposure: 'C', ...more });
const area = (square: number, more: Document = {}): Document => ({
  of: 'tower',
  area: square,
  areaKind: 'effective',
  above: 1,
  top: 40,
  wind: wind(more),
});
const codes = (answer: ReturnType<typeof assessed>) => answer.cautions.map(({ code }) => code);
const tower = (of: Document) => assessed(of).checks[0];

describe('what a rating leaves unsaid', () => {
  it('of its kind of speed is read as its standard’s own, and named', () => {
    expect(codes(assessed(plan([area(20)])))).toContain('rating-basis-assumed');
    expect(codes(assessed(plan([area(20, { basis: 'gust3-nominal' })])))).not.toContain('rating-basis-assumed');
    expect(answerText(assessed(plan([area(20)])), [])).toContain(
      'Type of rated speed not stated. Nominal gust assumed, as its standard uses.',
    );
  });

  it('of its class is nothing under a strength-level speed, which has it in it', () => {
    expect(codes(assessed(plan([area(20)])))).toContain('rating-class-assumed');
    expect(codes(assessed(plan([area(20, { basis: 'gust3-strength' })])))).not.toContain('rating-class-assumed');
  });

  it('of the level of a force is open: not over where it would do as an allowable one', () => {
    const force = (level?: string): Document => ({
      of: 'tower',
      kind: 'force',
      top: 40,
      force: 420,
      ...(level ? { level } : {}),
      wind: wind({ basis: 'gust3-nominal', riskCategory: 'II' }),
    });
    const [strength, allowable, notGiven] = ['strength', 'allowable', undefined].map((level) =>
      tower(plan([force(level)])),
    );
    expect(notGiven?.result?.ratio).toBeCloseTo(strength?.result?.ratio ?? Number.NaN, 12);
    expect(notGiven?.result?.ratioRange[0]).toBeCloseTo(allowable?.result?.ratio ?? Number.NaN, 12);
    const moment = (level?: string): Document => ({
      of: 'tower',
      kind: 'moment',
      top: 40,
      moment: 9000,
      ...(level ? { level } : {}),
    });
    const open = tower(plan([force(), moment()]));
    expect(open?.result?.ratioRange[0]).toBeLessThan(open?.result?.ratio ?? 0);
  });

  it('of its standard leaves none that fits, where its kind of speed is younger or older than its year', () => {
    const told = { speed: 90, basis: 'gust3-nominal', year: 2004 };
    const answer = assessed(plan([{ ...area(20), wind: told }]));
    expect(answer.checks[0]?.needs).toEqual(['/ratings/0/wind/year']);
    expect(codes(answer)).toContain('rating-fits-no-standard');
    expect(codes(answer)).not.toContain('rating-for-other-height');
  });
});

describe('things that turn together', () => {
  const long = (heading?: number) =>
    beam('long beam', 5, { front: 1, side: 3, ...(heading === undefined ? {} : { heading }) });
  const force = (loads: Document[]) =>
    assessed(plan([area(20)], loads)).windLoads.rows.reduce(
      (sum, row) => (row.kind === 'load' ? sum + row.facing : sum),
      0,
    ) /
    0.3048 ** 2;

  it('stand at their worst to each other where nobody tells how they point', () => {
    // Broadside 6 and 1, endwise 2 and 3: side by side 6 + 1 at most, crosswise 6 + 3.
    expect(force([beam('beam', 2, { heading: 0 }), long(0)])).toBeCloseTo(7, 6);
    expect(force([beam('beam', 2, { heading: 0 }), long(90)])).toBeCloseTo(9, 6);
    expect(force([beam('beam', 2), long()])).toBeCloseTo(9, 6);
  });

  it('stand as one likes where only one turns', () => {
    const [{ headings }] = [assessed(plan([area(20)])).windLoads];
    expect(headings.turning).toBeDefined();
  });
});
