import { describe, expect, it } from 'vitest';
import { FOOT, POUND } from '../../src/foundation/index.ts';
import { guyedForcesOf } from '../../src/margins/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';

const GUYS = { by: 'guys', count: 3, diameter: 0.1875, radius: 50 };
const TOWER = {
  support: 'guyed',
  top: 70,
  shape: 'lattice',
  faces: 3,
  width: 12,
  members: 'round',
  leg: 1.25,
  brace: 0.4375,
  panel: 16,
  pattern: 'zigzag',
  legWall: 0.083,
  material: 'steel',
  weight: 450,
  asDrawn: true,
  supportedAt: [
    { height: 33, ...GUYS },
    { height: 65, ...GUYS },
  ],
};
const given = (tower: Document) => Object.fromEntries(Object.entries(tower).filter(([, value]) => value !== undefined));
const plan = (tower: Document = {}, more: Document = {}) => ({
  units: 'us',
  method: 'tia222-g',
  site: { wind: { speed: 90, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' },
  tower: given({ ...TOWER, ...tower }),
  mast: { outside: 2, wall: 0.25, length: 10, inside: 4, yield: 50, bearing: 70 },
  rotator: { weight: 20 },
  loads: [{ name: 'b', above: 2, front: 6, side: 3, areaKind: 'effective', turns: true, weight: 40 }],
  cables: [{ count: 2, diameter: 0.4, weight: 0.1 }],
  ratings: [],
  ...more,
});
const forcesOf = (tower?: Document, more?: Document) => guyedForcesOf(assessed(plan(tower, more)));

describe('forces of a tower on guys', () => {
  it('stand in the answer where guys, walls and weights are given', () => {
    const found = forcesOf();
    expect(found?.failure).toBeUndefined();
    expect(found?.levels.map(({ height }) => Math.round(height / FOOT))).toEqual([33, 65]);
    expect(answerText(assessed(plan()), [])).toContain('On its guys');
  });

  it('forbid what would break a guy, and say so first', () => {
    const codes = (more?: Document) =>
      assessed(plan({}, more)).cautions.flatMap(({ code, word, severity }) =>
        code === 'guys-overloaded' ? [[word, severity]] : [],
      );
    expect(codes()).toEqual([]);
    const load = (place: Document, area: number) => ({
      loads: [{ name: 'b', ...place, front: area, side: area, areaKind: 'effective', weight: 40, heading: 0 }],
    });
    // 3990 lbf break a strand of 3/16 in: 250 ft² right at the lower guys pull some 3700 lbf level, nominal, on one of them alone.
    expect(codes(load({ height: 33, on: 'tower', offset: 0 }, 250))).toEqual([['broken', 'verdict']]);
    expect(codes(load({ above: 2 }, 150))).toEqual([['no-balance', 'verdict']]);
  });

  it('push down with at least all weights and what the guys rest at', () => {
    // At rest by 15 %: T·sin α of three guys each at 33 and 65 ft on a radius of 50 ft, less half a foot for the legs.
    const resting = 0.15 * 17750 * 3 * (33 / Math.hypot(49.42, 33) + 65 / Math.hypot(49.42, 65));
    const weight = (450 + 40 + 20) * POUND * 9.80665;
    expect(forcesOf()?.foot.thrust ?? 0).toBeGreaterThan(resting + weight);
  });

  it('grow with the wind, the load, and where the anchors come nearer', () => {
    const [least, windier, more, nearer] = [
      forcesOf(),
      forcesOf({}, { site: { wind: { speed: 100, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' } }),
      forcesOf(
        {},
        { loads: [{ name: 'b', above: 2, front: 9, side: 3, areaKind: 'effective', turns: true, weight: 40 }] },
      ),
      forcesOf({ supportedAt: TOWER.supportedAt.map((each) => ({ ...each, radius: 35 })) }),
    ];
    for (const each of [windier, more, nearer])
      expect(each?.levels[1]?.tension ?? 0).toBeGreaterThan(least?.levels[1]?.tension ?? 0);
    expect(windier?.movement ?? 0).toBeGreaterThan(least?.movement ?? 0);
  });

  it.each<[string, Document, Document?]>([
    ['the wall of the legs', { legWall: undefined, material: undefined }],
    ['the weight of the tower', { weight: undefined }],
    [
      'one level of guys',
      {
        supportedAt: [
          { height: 33, ...GUYS },
          { height: 65, by: 'guys' },
        ],
      },
    ],
    ['a third guy', { supportedAt: [{ height: 65, ...GUYS, count: 2 }] }],
    ['a strand of a known size', { supportedAt: [{ height: 65, ...GUYS, diameter: 0.22 }] }],
  ])('are not shown without %s', (_, tower, more) => {
    expect(forcesOf(tower, more)).toBeUndefined();
  });

  it('say so where the tower cannot stand in the wind', () => {
    const found = forcesOf(
      { supportedAt: [{ height: 20, ...GUYS, radius: 10 }] },
      {
        site: { wind: { speed: 150, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' },
        loads: [{ name: 'b', above: 2, front: 60, side: 3, areaKind: 'effective', turns: true, weight: 40 }],
      },
    );
    expect(found?.failure).toBeDefined();
  });
});
