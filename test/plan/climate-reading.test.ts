import { describe, expect, it } from 'vitest';
import { changed, faultsOf, read, type Sample } from './sample-plans.ts';

const climateOf = (climate: Sample) => {
  const reading = read(changed({ site: { climate } }));
  return { climate: reading.input.site.climate, entryWarnings: reading.entryWarnings };
};

describe('the climate of a site', () => {
  it('is read from a chart, in SI and in the order of its years', () => {
    const { climate, entryWarnings } = climateOf({
      basis: 'gust3-nominal',
      returnPeriods: [
        [50, 92],
        [10, '122.31 km/h'],
        [300, 105],
      ],
    });
    expect(entryWarnings).toEqual([]);
    if (climate?.kind !== 'chart') throw new Error('a chart was given');
    expect(climate.returns.map(({ years }) => years)).toEqual([10, 50, 300]);
    expect(climate.returns[0]?.speed).toBeCloseTo(33.975, 9);
    expect(climate.returns[1]?.speed).toBeCloseTo(41.12768, 9);
  });

  it('is read from years of record, with the basis as given', () => {
    const { climate, entryWarnings } = climateOf({ basis: 'fastest-mile', yearlyMax: [50, 42, 58, '44 mph', 53] });
    expect(entryWarnings).toEqual([]);
    if (climate?.kind !== 'record') throw new Error('a record was given');
    expect(climate.basis).toBe('fastest-mile');
    expect(climate.yearlyMax).toHaveLength(5);
    expect(climate.yearlyMax[3]).toBeCloseTo(19.66976, 9);
  });

  it('is absent where none is given', () => {
    expect(read(changed({})).input.site.climate).toBeUndefined();
  });

  it.each([
    [{ basis: 'gust3-nominal', returnPeriods: [[10, 76], [50]] }, '#/site/climate/returnPeriods/1'],
    [
      {
        basis: 'gust3-nominal',
        returnPeriods: [
          [10, 76],
          [1, 60],
        ],
      },
      '#/site/climate/returnPeriods/1/0',
    ],
    [{ basis: 'gust3-nominal', returnPeriods: [[10, 76], 'much'] }, '#/site/climate/returnPeriods/1'],
    [{ basis: 'gust3-nominal', yearlyMax: [60, 70] }, '#/site/climate/yearlyMax'],
    [{ basis: 'gust3-nominal', yearlyMax: [60, 70, 65, 62, 'fast'] }, '#/site/climate/yearlyMax/4'],
    [{ yearlyMax: [60, 70, 65, 62, 71] }, '#/site/climate/basis'],
    [{ basis: 'gust3', yearlyMax: [60, 70, 65, 62, 71] }, '#/site/climate/basis'],
  ])('%j is refused once, where it is wrong', (climate, pointer) => {
    expect(faultsOf(changed({ site: { climate } })).map((fault) => fault.pointer)).toEqual([pointer]);
  });
});
