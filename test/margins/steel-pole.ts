import type { Document } from './any-plan.ts';

/** A pole of 30 ft, 6.625 by 0.280 in, F_y 35 ksi, in one piece, without papers; 3 ft² at 28 ft. */
export function steelPole(section: Document = {}, more: Document = {}): Document {
  const plan = {
    units: 'us',
    method: 'tia222-h',
    site: {
      wind: { speed: 110, basis: 'gust3-strength' },
      exposure: 'C',
      riskCategory: 'II',
      topographicFactor: 1,
    },
    tower: {
      support: 'free',
      top: 30,
      sections: [
        { length: 30, shape: 'pole', sides: 0, width: 6.625, wall: 0.28, material: 'steel', yield: 35, ...section },
      ],
      frequency: 2.5,
      damping: 0.01,
      weight: 570,
    },
    loads: [{ name: 'vertical', height: 28, on: 'tower', area: 3, areaKind: 'effective', offset: 0, weight: 20 }],
    cables: [],
    ...more,
  };
  // What is undefined is not there.
  return JSON.parse(JSON.stringify(plan));
}
