import type { UnitSystem } from '../foundation/index.ts';
import type { Chance, Chances, Check } from '../margins/index.ts';
import type { ExtremesMethod } from '../wind/index.ts';
import { checkName } from './choice-words.ts';
import { figures, inWords, type Quantity, quantity } from './quantity.ts';

export interface ChanceMethodDocument {
  readonly method: ExtremesMethod;
  /** Of a line through two values of a chart: their years. */
  readonly through?: readonly number[];
  /** Of the law fitted; absent where no single law was. */
  readonly location?: Quantity;
  readonly scale?: Quantity;
  readonly shape?: number;
  /** Gust reached once in 50 years on the average. */
  readonly fiftyYears?: Quantity;
  readonly fiftyYearsError?: Quantity;
  readonly perYear: readonly number[];
  readonly inBand: boolean;
}

export interface ChanceDocument {
  readonly ofCheck: string;
  readonly gust: Quantity;
  readonly years: number;
  readonly perYear: readonly number[];
  readonly overYears: readonly number[];
  /** In how many of the years of the record the gust was reached. */
  readonly counted?: { readonly reached: number; readonly years: number };
  readonly byMethod: readonly ChanceMethodDocument[];
  readonly says: string;
}

/** The chance of the gust that each check holds to, as a document. */
export function chanceDocuments(
  chances: Chances,
  checks: readonly Check[],
  system: UnitSystem,
): readonly ChanceDocument[] {
  return chances.ofChecks.map((chance) => ({
    ofCheck: chance.ofCheck,
    gust: quantity(chance.gust, 'speed', system),
    years: chances.years,
    perYear: chance.perYear,
    overYears: chance.overYears,
    ...(chance.counted === undefined ? {} : { counted: chance.counted }),
    byMethod: chance.byMethod.map((each) => ({
      method: each.method,
      ...(each.through === undefined ? {} : { through: each.through }),
      ...(each.fit === undefined
        ? {}
        : {
            location: quantity(each.fit.location, 'speed', system),
            scale: quantity(each.fit.scale, 'speed', system),
            ...(each.fit.shape === undefined ? {} : { shape: each.fit.shape }),
          }),
      ...(each.fiftyYears === undefined ? {} : { fiftyYears: quantity(each.fiftyYears, 'speed', system) }),
      ...(each.fiftyYearsError === undefined
        ? {}
        : { fiftyYearsError: quantity(each.fiftyYearsError, 'speed', system) }),
      perYear: each.perYear,
      inBand: each.inBand,
    })),
    says: chanceSays(chance, chances, checks, system),
  }));
}

/** A climate without a wind to compare, or one that tells no law. */
export const NO_CHANCE =
  'Chance: not shown, for no link shows a wind that it holds to, or the record of yearly maxima tells no law.';

/** "Reaching an actual gust of 77 mph (tower): 0.4 to 0.9 % in a year, 11 to 24 % in 30 years; …" */
export function chanceSays(chance: Chance, { years }: Chances, checks: readonly Check[], system: UnitSystem): string {
  const check = checks.find(({ id }) => id === chance.ofCheck);
  const of = check ? ` (${checkName(check)})` : '';
  const span = years === 1 ? '' : `, ${between(chance.overYears)} in ${years} years`;
  return `Reaching an actual gust of ${inWords(chance.gust, 'speed', system)}${of}: ${between(chance.perYear)} in a year${span}${countedSays(chance)}; from whatever direction.`;
}

/** What was counted, beside the band. */
function countedSays({ counted }: Chance): string {
  if (!counted) return '';
  return `; reached in ${counted.reached === 0 ? 'none' : counted.reached} of the ${counted.years} years told`;
}

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
