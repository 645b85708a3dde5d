import { describe, expect, it } from 'vitest';
import { assessed, type Document } from './any-plan.ts';

/** A beam whose boom is 6.5 m long on a tower of 12 m, 14 m from a border. */
const plan = (load: Document): Document => ({
  units: 'si',
  method: 'asce7-16',
  site: { wind: '46 m/s', exposure: 'C', distances: { propertyLine: 14 } },
  tower: { support: 'free', top: 12 },
  loads: [{ name: 'beam', height: 12.5, area: 0.5, areaKind: 'effective', ...load, offset: 0 }],
  ratings: [{ of: 'tower', area: 1, areaKind: 'effective', wind: '45 m/s', top: 12 }],
  cables: [],
});
const wanted = (load: Document) =>
  assessed(plan(load)).checks.find(({ id }) => id === 'fall:property-line')?.result?.demand;

describe('the distance something may fall', () => {
  it('is the height, the larger half of what lies across, and ten feet, however much of it is told', () => {
    // 12.5 + 6.5/2 + 3.048 m; a tip 4.2 m out makes elements of √(4.2² − 3.25²) = 2.66 m to a side, less than the boom.
    expect(wanted({ boom: 6.5 })).toBeCloseTo(18.798, 6);
    expect(wanted({ boom: 6.5, reach: 4.2 })).toBeCloseTo(18.798, 6);
    // A tip 6 m out: √(6² − 3.25²) = 5.0435 m to a side.
    expect(wanted({ boom: 6.5, reach: 6 })).toBeCloseTo(12.5 + 5.0435 + 3.048, 3);
    expect(wanted({ reach: 6 })).toBeCloseTo(12.5 + 6 + 3.048, 6);
  });
});
