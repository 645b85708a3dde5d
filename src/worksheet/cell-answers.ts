import type { Quantity } from '../answer/index.ts';
import { bundleDiameter, packingRatio } from '../areas/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import {
  areasOf,
  assess,
  type CheckInput,
  compareRatings,
  designHoldsTo,
  lowerAtGust,
  type Rating,
} from '../margins/index.ts';
import { allowedBending, type Tube } from '../structure/index.ts';
import { type Climate, chanceOfReaching, convertSpeed, type SpeedBasis } from '../wind/index.ts';
import { VERDICT_WORDS } from '../words/index.ts';

import { pressuresDocument } from './part-documents.ts';
import { quantity } from './quantity.ts';
import { headlineSays } from './says.ts';

/** What stands in a cell: one number, or words where there is none. */
export type CellAnswer = Quantity | { readonly words: string };

/** Pressure at a height, at the method's level. */
export function pressureCell(input: CheckInput, height: number): CellAnswer {
  const [row] = pressuresDocument(input, [height], true, []).heights;
  return row === undefined ? { words: VERDICT_WORDS.open } : row.pressure;
}

/** Force on the one load of a station, allowable level. */
export function forceCell(input: CheckInput): CellAnswer {
  const row = assess(input).windLoads.rows.find(({ at }) => at === '/loads/0');
  return row === undefined ? { words: VERDICT_WORDS.open } : quantity(row.force, 'force', input.station.units);
}

/** Effective area of what a part of a plan names, at its worst heading. */
export function areaCell(input: CheckInput, siteGiven: boolean): CellAnswer {
  return quantity(areasOf(input, siteGiven, false).worst, 'area', input.station.units);
}

/** A speed in another basis, read as a site's. */
export function speedCell(speed: number, from: SpeedBasis, to: SpeedBasis, units: UnitSystem): CellAnswer {
  return quantity(convertSpeed(speed, from, to, 'site'), 'speed', units);
}

/** The least force of a rating; with another wind, the effective area of that force there. */
export function ratingCell({ station }: CheckInput, ratings: readonly Rating[], target?: Rating): CellAnswer {
  const [compared] = compareRatings(station, ratings, target).ratings;
  if (compared === undefined) return { words: VERDICT_WORDS.open };
  if (target === undefined) return quantity(compared.force[0], 'force', station.units);
  return compared.equal === undefined
    ? { words: VERDICT_WORDS.open }
    : quantity(compared.equal[0], 'area', station.units);
}

/** The moment a mast is surely allowed. */
export function mastMomentCell(tube: Tube, units: UnitSystem): CellAnswer {
  const allowed = allowedBending(tube);
  return allowed === undefined
    ? { words: 'not computed: local buckling could govern a wall this thin' }
    : quantity(allowed.surely, 'moment', units);
}

/** Width of a round bundle. */
export function bundleWidthCell(count: number, diameter: number, units: UnitSystem): CellAnswer {
  return quantity(bundleDiameter.of(packingRatio(count), diameter), 'diameter', units);
}

/** Chance that so many years reach a speed, the high end of the band. */
export function chanceCell(climate: Climate, speed: number, years: number, units: UnitSystem): CellAnswer {
  return quantity(chanceOfReaching(climate, speed, years).overYears[1], 'one', units);
}

/** Forecast gust at which to lower what holds to a gust: the force that leaves the margin grows with its square. */
export function lowerAtCell(holdsTo: number, margin: number, forecast: number, units: UnitSystem): CellAnswer {
  const keepsMarginTo = designHoldsTo.of(holdsTo, 0, 1 / (1 - margin));
  return quantity(lowerAtGust.of(keepsMarginTo, forecast), 'speed', units);
}

/** One figure or word of a station of which only the tower is known. */
export function stationCell(
  input: CheckInput,
  give: 'ratio' | 'verdict' | 'holdsTo' | 'roomLeft' | 'says',
): CellAnswer {
  const assessment = assess(input);
  const { units } = input.station;
  const [tower] = assessment.checks;
  // A figure that would read as fit beside a verdict that does not say so would be taken for a pass.
  const result = tower?.verdict === 'open' && (tower.result?.ratio ?? 0) <= 1 ? undefined : tower?.result;
  switch (give) {
    case 'says':
      return { words: headlineSays(assessment) };
    case 'verdict': {
      if (tower === undefined || tower.verdict === 'open') return { words: VERDICT_WORDS.open };
      const { verdict, decided } = assessment;
      const alone = verdict === tower.verdict && decided.parts === decided.of;
      return { words: `${VERDICT_WORDS[tower.verdict]}${alone ? '' : ' (tower only)'}` };
    }
    case 'ratio':
      return result === undefined ? { words: VERDICT_WORDS.open } : quantity(result.ratio, 'one', units);
    case 'holdsTo':
      return result?.holdsTo === undefined
        ? { words: VERDICT_WORDS.open }
        : quantity(result.holdsTo.gust, 'speed', units);
    case 'roomLeft':
      return assessment.roomLeft[0] === undefined
        ? { words: VERDICT_WORDS.open }
        : quantity(assessment.roomLeft[0].area, 'area', units);
  }
}
