import { describe, expect, it } from 'vitest';
import { answerDocument, answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';

const PLAN: Document = {
  format: 2,
  units: 'us',
  method: 'asce7-16',
  site: { wind: { speed: 105, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II', groundElevation: 0 },
  tower: { support: 'free', top: 60, frequency: 3 },
  ratings: [],
  cables: [],
};

/** A load that faces its own way and has nothing to show endwise. */
const facing = (name: string, height: number, front: number, heading: number): Document => ({
  name,
  height,
  front,
  side: 0.001,
  areaKind: 'effective',
  heading,
  on: 'tower',
  offset: 0,
});

/** ASCE 7-16, exposure C, a round pole (Kd 1), G 0.85, 0.6 to the allowable level: pounds on one square foot. */
const onOneFoot = (z: number) => 0.6 * 0.00256 * 2.01 * (Math.max(z, 15) / 900) ** (2 / 9.5) * 105 ** 2 * 0.85;

type Facing = readonly [height: number, front: number, heading: number];

/** Shear and moment at every degree of wind, by plain sums. */
function rose(loads: readonly Facing[]) {
  return Array.from({ length: 181 }, (_, degree) => {
    let [shear, moment] = [0, 0];
    for (const [height, front, heading] of loads) {
      const force = onOneFoot(height) * front * Math.cos(((degree - heading) * Math.PI) / 180) ** 2;
      shear += force;
      moment += force * height;
    }
    return { degree, shear, moment };
  });
}
const most = (rows: ReturnType<typeof rose>, of: 'shear' | 'moment') =>
  rows.reduce((worst, row) => (row[of] > worst[of] ? row : worst));

describe('forces at the base', () => {
  it.each<readonly [Facing, Facing]>([
    // 6 ft² high up and 30 ft² low down, across it: the moment says little of the shear.
    [
      [58, 6, 0],
      [10, 30, 90],
    ],
    [
      [58, 12, 20],
      [10, 30, 75],
    ],
    [
      [40, 5, 10],
      [20, 25, 170],
    ],
  ])('are the largest moment with its shear and the largest shear with its moment: %j, %j', (one, other) => {
    const assessment = assessed({ ...PLAN, loads: [facing('one', ...one), facing('other', ...other)] });
    const { reactions } = answerDocument(assessment, {}, [], 'none');
    const rows = rose([one, other]);
    const [byMoment, byShear] = [most(rows, 'moment'), most(rows, 'shear')];
    expect(reactions.allowable.moment.value / byMoment.moment).toBeCloseTo(1, 3);
    expect(reactions.allowable.shear.value / byMoment.shear).toBeCloseTo(1, 1);
    expect(reactions.atLargestShear.allowable.shear.value / byShear.shear).toBeCloseTo(1, 3);
    expect(reactions.atLargestShear.allowable.moment.value / byShear.moment).toBeCloseTo(1, 1);
    // The opposite wind is as bad.
    const apart = (heading: number, degree: number) => Math.abs(((heading - degree + 270) % 180) - 90);
    expect(apart(reactions.atLargestShear.heading.fixed?.value as number, byShear.degree)).toBeLessThan(1.01);
    expect(apart(reactions.heading.fixed?.value as number, byMoment.degree)).toBeLessThan(1.01);
    // Strength level ÷ 0.6, footings as they are.
    expect(reactions.atLargestShear.strength?.shear.value).toBeCloseTo(byShear.shear / 0.6, -1);
    expect(answerText(assessment, [])).toContain('Largest shear: ');
  });

  it('is one pair where one heading is worst for both', () => {
    const { reactions } = answerDocument(assessed({ ...PLAN, loads: [facing('one', 50, 6, 0)] }), {}, [], 'none');
    expect(reactions.atLargestShear.allowable.shear.value).toBeCloseTo(reactions.allowable.shear.value, 9);
    expect(reactions.says).toContain('Both are the largest.');
  });

  it('has the torsion of what is off the axis', () => {
    const load = { ...facing('arm', 50, 6, 0), offset: 3, weight: 10 };
    const { reactions } = answerDocument(assessed({ ...PLAN, loads: [load] }), {}, [], 'none');
    expect(reactions.torsion.allowable.value / (3 * 6 * onOneFoot(50))).toBeCloseTo(1, 3);
    expect(reactions.torsion.strength?.value).toBeCloseTo(reactions.torsion.allowable.value / 0.6, 6);
    expect(reactions.says).toContain('Largest torsion: ');
  });

  it('says that nothing is known where nothing is', () => {
    const assessment = assessed({ ...PLAN, loads: [] });
    const { reactions } = answerDocument(assessment, {}, [], 'none');
    const says = 'At the base, shear and moment are not known: the wind on the tower itself is not known.';
    expect(reactions).toMatchObject({ withoutOwnWind: true, says });
    expect(answerText(assessment, [])).toContain(says);
    expect(answerText(assessment, [])).not.toContain('shear 0 lbf');
  });

  it('says in JSON as in text what is not included', () => {
    const { reactions } = answerDocument(assessed({ ...PLAN, loads: [facing('one', 50, 6, 0)] }), {}, [], 'none');
    expect(reactions.says).toContain('wind on the tower itself not included (unknown)');
  });
});
