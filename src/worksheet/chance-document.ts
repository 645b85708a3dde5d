import { type ChanceAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { Chance, Chances, Check } from '../margins/index.ts';
import { checkName, figures, inWords } from '../words/index.ts';
import { quantity } from './quantity.ts';

/** The chance of the gust that each check holds to, as a document. */
export function chanceDocuments(
  chances: Chances,
  checks: readonly Check[],
  system: UnitSystem,
): readonly ChanceAnswer[] {
  return chances.ofChecks.map((chance) =>
    told<ChanceAnswer>({
      ofCheck: chance.ofCheck,
      gust: quantity(chance.gust, 'speed', system),
      years: chances.years,
      perYear: chance.perYear,
      overYears: chance.overYears,
      counted: chance.counted,
      byMethod: chance.byMethod.map((each) =>
        told<ChanceAnswer['byMethod'][number]>({
          method: each.method,
          through: each.through,
          location: quantity(each.fit?.location, 'speed', system),
          scale: quantity(each.fit?.scale, 'speed', system),
          shape: each.fit?.shape,
          fiftyYears: quantity(each.fiftyYears, 'speed', system),
          fiftyYearsError: quantity(each.fiftyYearsError, 'speed', system),
          perYear: each.perYear,
          inBand: each.inBand,
        }),
      ),
      says: chanceSays(chance, chances, checks, system),
    }),
  );
}

/** "Reaching an actual gust of 77 mph (tower): 0.4 to 0.9 % in a year. In 30 years: 11 to 24 %. …" */
export function chanceSays(chance: Chance, { years }: Chances, checks: readonly Check[], system: UnitSystem): string {
  const check = checks.find(({ id }) => id === chance.ofCheck);
  const of = check ? ` (${checkName(check)})` : '';
  const span = years === 1 ? '' : ` In ${years} years: ${between(chance.overYears)}.`;
  const reached = `Reaching an actual gust of ${inWords(chance.gust, 'speed', system)}${of}: ${between(chance.perYear)} in a year.${span}`;
  return `${reached} ${countedSays(chance)}`;
}

/** What the band is, and what was counted beside it. */
function countedSays({ counted }: Chance): string {
  if (!counted) return 'Wind from whatever direction counts.';
  const reached = counted.reached === 0 ? 'none' : counted.reached;
  return `90 % band; wind from whatever direction counts. Reached in ${reached} of the ${counted.years} years of the record.`;
}

/** Of a climate where no check has a wind to compare, or a record to which no law is fitted. */
export const NO_CHANCE = 'Chance not computed; no check has a gust it holds to, or the yearly maxima fit no law.';

/** The same as lines of plain text; a climate without a wind to compare says so. */
export function chanceLines(chances: Chances, checks: readonly Check[], system: UnitSystem): string[] {
  if (chances.ofChecks.length === 0) return [NO_CHANCE];
  return chances.ofChecks.map((chance) => chanceSays(chance, chances, checks, system));
}

function between([low, high]: readonly [number, number]): string {
  const [from, to] = [percent(low), percent(high)];
  if (from === to) return `${from} %`;
  return `${from} to ${to} %`;
}

/** A share in per cent to two figures; no digits are spent on what is as good as never or always. */
function percent(share: number): string {
  if (share < 0.000095) return 'less than 0.01';
  if (share >= 0.995) return 'more than 99';
  return figures(100 * share, 2);
}
