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
  const speed = (value: number) => quantity(value, 'speed', system);
  return chances.ofChecks.map((chance) => ({
    ofCheck: chance.ofCheck,
    gust: speed(chance.gust),
    years: chances.years,
    perYear: chance.perYear,
    overYears: chance.overYears,
    byMethod: chance.byMethod.map((each) =>
      told<ChanceAnswer['byMethod'][number]>({
        method: each.method,
        through: each.through,
        location: speed(each.fit.location),
        scale: speed(each.fit.scale),
        fiftyYears: speed(each.fiftyYears),
        fiftyYearsError: quantity(each.fiftyYearsError, 'speed', system),
        perYear: each.perYear,
        inBand: each.inBand,
      }),
    ),
    says: chanceSays(chance, chances, checks, system),
  }));
}

/** "Reaching an actual gust of 77 mph (tower): 0.4 to 0.9 % in a year, 11 to 24 % in 30 years. …" */
export function chanceSays(chance: Chance, { years }: Chances, checks: readonly Check[], system: UnitSystem): string {
  const check = checks.find(({ id }) => id === chance.ofCheck);
  const of = check ? ` (${checkName(check)})` : '';
  const span = years === 1 ? '' : `, ${between(chance.overYears)} in ${years} years`;
  return `Reaching an actual gust of ${inWords(chance.gust, 'speed', system)}${of}: ${between(chance.perYear)} in a year${span}. This is an upper bound: it ignores wind direction.`;
}

/** Of a climate where no check has a wind to compare. */
export const NO_CHANCE = 'Chance not computed; no check has a gust it holds to.';

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
