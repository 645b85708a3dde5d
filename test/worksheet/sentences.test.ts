import { describe, expect, it } from 'vitest';
import { withArticle } from '../../src/foundation/index.ts';
import { hillHelpOf, loweredOf } from '../../src/margins/index.ts';
import { answerText, hillSays, loweredSays } from '../../src/worksheet/index.ts';
import { assessed, checkInputOf, type Document } from '../margins/any-plan.ts';
import { CRANK_UP_TOWER } from '../margins/crank-up-tower.ts';

const wind = { speed: 100, method: 'tia222-h', exposure: 'C', riskCategory: 'II' };
const plan = (more: Document = {}): Document => ({
  units: 'us',
  method: 'tia222-h',
  site: { wind: { speed: 100, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' },
  tower: { support: 'free', top: 40, shape: 'pole', width: 6, sides: 0 },
  loads: [{ name: 'thing', height: 40, area: 5, areaKind: 'effective', offset: 0 }],
  ratings: [{ of: 'tower', area: 30, areaKind: 'effective', wind, top: 40 }],
  cables: [],
  ...more,
});
const dish = (fields: Document, site: Document = {}): Document => {
  const bare = plan();
  const loads = [{ name: 'dish', height: 40, shape: 'dish', diameter: 36, ...fields, offset: 0 }];
  return { ...bare, site: { ...(bare['site'] as Document), ...site }, loads };
};

describe('the sentence of a hill', () => {
  const hill = (distance: number, method = 'tia222-h') =>
    checkInputOf({
      ...plan(),
      method,
      site: {
        wind: { speed: 100, basis: 'gust3-strength' },
        exposure: 'C',
        hill: { shape: 'ridge', height: 100, halfLength: 200, distance, side: 'upwind' },
      },
    });
  const says = (input: ReturnType<typeof checkInputOf>) => {
    const help = hillHelpOf(input);
    return help && hillSays(help, 'us');
  };

  it('does not offer the same factor elsewhere as more', () => {
    // By TIA the upper half has one factor all along.
    expect(says(hill(0))).toMatch(
      /^The hill multiplies the pressure by [\d.]+ at 40 ft\. Nowhere on its slope is it more\.$/,
    );
    expect(says(hill(50))).toMatch(/Nowhere on its slope is it more\.$/);
    // By ASCE 7 it falls from the crest.
    expect(says(hill(150, 'asce7-16'))).toMatch(/At most, at the crest, it would be [\d.]+\.$/);
  });
});

describe('the caution of a dish', () => {
  const caution = (given: Document) => answerText(assessed(given), []);

  it('says which share of its rim was taken', () => {
    expect(caution(dish({}))).toContain(
      'Dish is taken as an ordinary dish, a quarter of its diameter deep. Effective area 1.67 of its rim area. That is at its worst angle, 50° to 60° off its axis.',
    );
    // A mesh half solid: 2·0.5 = 1 of its rim; from 0.835 solid it is a full dish.
    expect(caution(dish({ solidity: 0.5 }))).toContain(
      'Dish is taken as an ordinary mesh dish, a quarter of its diameter deep. Effective area 1 of its rim area, which is 2 of its solid share. That is at its worst angle, 50° to 60° off its axis.',
    );
    expect(caution(dish({ solidity: 0.84 }))).toContain(
      'ordinary dish, a quarter of its diameter deep. Effective area 1.67 of its rim area',
    );
    const ice = { ice: { thickness: 0.5, gust: 40 } };
    expect(caution(dish({ solidity: 0.5 }, ice))).toContain('50° to 60° off its axis. Ice closes it: then 1.67.');
    expect(caution(dish({}, ice))).not.toContain('Ice closes it');
  });
});

describe('a gust beyond any weather', () => {
  it('is told as a bound, its figure kept', () => {
    const loads = [{ name: 'thing', height: 40, area: 0.01, areaKind: 'effective', offset: 0 }];
    const mast = { outside: 4, wall: 0.5, length: 6, inside: 4, yield: 46, bearing: 40 };
    const answer = assessed(plan({ loads, mast }));
    const gust = answer.checks.find(({ id }) => id === 'mast')?.result?.holdsTo?.gust ?? 0;
    expect(gust).toBeGreaterThan(300 * 0.44704);
    const line = (text: string) => text.split('\n').find((each) => each.startsWith('- Mast')) ?? '';
    expect(line(answerText(answer, []))).toContain('Holds to an actual gust of more than 300 mph.');
    const metric = { ...answer.input, station: { ...answer.input.station, units: 'si' as const } };
    expect(line(answerText({ ...answer, input: metric }, []))).toContain('more than 134 m/s.');
  });
});

describe('what meets the section below', () => {
  it('comes off, one thing or several', () => {
    const station = (names: readonly string[]): Document =>
      plan({
        tower: CRANK_UP_TOWER,
        loads: names.map((name, index) => ({
          name,
          height: 30 + index,
          area: 1,
          areaKind: 'effective',
          on: 'tower',
          offset: 0,
        })),
      });
    const said = (names: readonly string[]) => {
      const lowered = loweredOf(assessed(station(names)));
      return lowered && loweredSays(lowered, 'us');
    };
    expect(said(['arm'])).toContain('arm would meet the section below. Take it off first.');
    expect(said(['arm', 'box'])).toContain('arm and box would meet the section below. Take them off first.');
  });
});

describe('an article', () => {
  it.each([
    ['hourly mean', 'an hourly mean'],
    ['fastest mile', 'a fastest mile'],
    ['8 in tube', 'an 8 in tube'],
    ['80 mph', 'an 80 mph'],
    ['11 mm tube', 'an 11 mm tube'],
    ['18 mm tube', 'an 18 mm tube'],
    ['110 mph', 'a 110 mph'],
    ['180 mph', 'a 180 mph'],
    ['1.8 in tube', 'a 1.8 in tube'],
  ])('of %s', (words, spoken) => {
    expect(withArticle(words)).toBe(spoken);
  });
});
