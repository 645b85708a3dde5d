import { type EntryWarning, type StormCardAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type {
  Assessment,
  Forecast,
  ForecastBasis,
  StormCard,
  StormPart,
  StormPosture,
  StormRow,
} from '../margins/index.ts';
import { inWords, listed, partName, VERDICT_WORDS } from '../words/index.ts';
import type { Traced } from './additions-document.ts';
import { quantity } from './quantity.ts';
import { ENGINEER_DECIDES, perCent, tracedTo } from './says.ts';

const FORECAST_WORDS: Readonly<Record<ForecastBasis, string>> = {
  gust3: 'gust',
  'mean-1min': '1-minute mean',
  'mean-10min': '10-minute mean',
  'mean-hour': 'hourly mean',
};

const CAUTIONS = [
  ENGINEER_DECIDES,
  {
    code: 'calm-air-only',
    says: 'Lower in calm air, the day before, with a second person and nobody beneath. Climbing, raising and power lines kill.',
  },
  {
    code: 'too-late',
    says: 'If it is already blowing, leave the tower alone. Keep farther away than the tower is tall.',
  },
];

/** The card, in the reader's units. */
export function stormDocument(
  card: StormCard,
  entryWarnings: readonly EntryWarning[] = [],
  { version, planHash }: Traced = {},
): StormCardAnswer {
  const { assessment, postures, rows, forecast } = card;
  const { wanted, station } = assessment.input;
  const { units } = station;
  const speed = (value: number | undefined) => (value === undefined ? undefined : quantity(value, 'speed', units));
  const length = (value: number | undefined) => (value === undefined ? undefined : quantity(value, 'length', units));
  return told<StormCardAnswer>({
    says: stormSays(card),
    margin: wanted.margin,
    forecastError: wanted.forecast,
    forecast:
      forecast &&
      told<NonNullable<StormCardAnswer['forecast']>>({
        speed: quantity(forecast.given.speed, 'speed', units),
        basis: forecast.given.basis,
        gust: quantity(forecast.gust, 'speed', units),
        act: forecast.row.act,
      }),
    rows: rows.map((row) =>
      told<StormCardAnswer['rows'][number]>({
        above: speed(row.above),
        upTo: speed(row.upTo),
        act: row.act,
        top: length(row.posture?.top),
        says: actSays(row, card),
      }),
    ),
    postures: postures.map((posture) =>
      told<StormCardAnswer['postures'][number]>({
        posture: posture.posture,
        top: length(posture.top),
        keepsTo: speed(posture.keepsTo),
        governs: posture.governs?.part.id,
        says: postureSays(posture, units),
        parts: posture.parts.map((part) =>
          told<StormCardAnswer['postures'][number]['parts'][number]>({
            id: part.part.id,
            kind: part.part.kind,
            title: partName(part.part),
            state: part.state,
            ratio: posture.posture === 'flat' ? undefined : part.part.governs.result?.ratio,
            keepsTo: speed(part.keepsTo),
            couldBeOver: part.couldBeOver ? true : undefined,
            says: partKeeps(part, posture, units),
          }),
        ),
        clashes: posture.clashes,
      }),
    ),
    highestInSiteWind: length(card.highestInSiteWind),
    notIncluded: notIncluded(card),
    entryWarnings,
    cautions: CAUTIONS,
    planHash,
    version,
  });
}

/** "58 mph gust", and of a mean the gust that goes with it. */
function forecastWords({ speed, basis }: Forecast, gust: number, units: UnitSystem): string {
  const given = inWords(speed, 'speed', units);
  if (basis === 'gust3') return `a gust of ${given}`;
  const kind = basis === undefined ? `${given}, type of speed not given` : `${given} ${FORECAST_WORDS[basis]}`;
  return `${kind}: gusts of ${inWords(gust, 'speed', units)}`;
}

/** The card in a few sentences. */
export function stormSays(card: StormCard): string {
  const { assessment, forecast, rows } = card;
  const { units } = assessment.input.station;
  if (forecast === undefined) {
    const [first] = rows;
    return first?.upTo === undefined
      ? `${actSays(first as StormRow, card)} No forecast gust can be given below which the margin is kept.`
      : `${actSays(first, card)} Above that, see the rows.`;
  }
  return `Forecast ${forecastWords(forecast.given, forecast.gust, units)}. ${actSays(forecast.row, card)}`;
}

/** "up to 43 mph", "43 to 51 mph", "over 82 mph". */
export function bandWords({ above, upTo }: Pick<StormRow, 'above' | 'upTo'>, units: UnitSystem): string {
  const speed = (value: number) => inWords(value, 'speed', units);
  if (above === undefined) return upTo === undefined ? 'any forecast' : `up to ${speed(upTo)}`;
  return upTo === undefined ? `over ${speed(above)}` : `${speed(above)} to ${speed(upTo)}`;
}

function actSays({ act, posture, upTo }: StormRow, { assessment, postures }: StormCard): string {
  const { units, tower } = assessment.input.station;
  const top = posture?.top === undefined ? '' : inWords(posture.top, 'length', units);
  const kept = upTo === undefined ? '' : ` up to a forecast of ${inWords(upTo, 'speed', units)}`;
  const governs = posture?.governs ? `; the ${partName(posture.governs.part)} governs` : '';
  const known = posture?.parts.filter(({ state }) => state !== 'open').length ?? 0;
  const decided = posture && known < posture.parts.length ? ` ${known} of ${posture.parts.length} parts decided.` : '';
  switch (act) {
    case 'as-it-stands':
      return `Margin kept with the top at ${top}${kept}${governs}.${decided}`;
    case 'crank-down':
      return `Crank it down to ${top}. There the margin is kept${kept}${governs}.${decided}`;
    case 'nest':
      return `Nest it to ${top}. There the margin is kept${kept}${governs}.${decided}`;
    case 'lower-flat':
      return 'Lower it flat. The wind on the tower lying down is not checked.';
    case 'not-known': {
      const open = postures.some(({ keepsTo }) => keepsTo === undefined)
        ? 'Not enough known.'
        : 'The margin is not kept.';
      const down = tower.telescopes
        ? ' Nest it as far as it goes, and keep away.'
        : ' Nothing in this plan lowers it. Keep away.';
      return `${open}${down}`;
    }
  }
}

const POSTURE_WORDS = {
  'as-it-stands': 'As it is',
  'part-way': 'Cranked down part of the way',
  nested: 'Nested',
} as const;

function postureSays({ posture, top, keepsTo, governs, parts, clashes }: StormPosture, units: UnitSystem): string {
  const height = top === undefined ? '' : inWords(top, 'length', units);
  if (posture === 'flat') {
    const against = parts.filter(({ state, couldBeOver }) => state === 'in-none' || couldBeOver);
    const over = listed(against.map(({ part }) => partName(part)));
    const said = over === '' ? '' : ` Over, or above 1 at worst, on the way down: ${over}.`;
    return `Lowered flat: the wind on it is not checked.${said}`;
  }
  const name = `${POSTURE_WORDS[posture]}, top at ${height}`;
  const names = (which: (part: StormPart) => boolean) => listed(parts.filter(which).map(({ part }) => partName(part)));
  const open = names(({ state }) => state === 'open');
  const also = open === '' ? '' : ` Not included (open): ${open}.`;
  if (keepsTo !== undefined && governs) {
    return `${name}: margin kept up to a forecast of ${inWords(keepsTo, 'speed', units)}; the ${partName(governs.part)} governs.${also}`;
  }
  if (clashes.length > 0) {
    return `${name}: on the way down ${listed(clashes)} would meet the section below. Take ${clashes.length > 1 ? 'them' : 'it'} off first.`;
  }
  const never = names(({ state }) => state === 'in-none');
  if (never !== '') return `${name}: the margin is not kept in any wind: ${never}.${also}`;
  const over = names(({ couldBeOver }) => couldBeOver);
  if (over !== '') return `${name}: not enough known. Above 1 at worst: ${over}.${also}`;
  return `${name}: not enough known.${also}`;
}

function partKeeps(
  { part, state, keepsTo, couldBeOver }: StormPart,
  { posture }: StormPosture,
  units: UnitSystem,
): string {
  if (posture === 'flat') return VERDICT_WORDS[part.verdict ?? 'open'];
  if (state === 'in-none') return 'margin not kept in any wind';
  if (state === 'in-any-wind') return 'no wind in it, margin kept';
  const known = keepsTo === undefined ? '' : inWords(Math.max(0, keepsTo), 'speed', units);
  if (state === 'open') {
    const most = known === '' ? '' : `; at most ${known}`;
    return couldBeOver ? `open, above 1 at worst${most}` : `open${most}`;
  }
  return `up to ${known}`;
}

function notIncluded({ assessment, postures }: StormCard): readonly string[] {
  const open = postures.flatMap(({ parts, posture }) =>
    posture === 'flat' ? [] : parts.filter(({ state }) => state === 'open').map(({ part }) => partName(part)),
  );
  const { tower } = assessment.input.station;
  return [
    ...[...new Set(open)].map((name) => `${name} (open)`),
    'ice',
    ...(tower.telescopes && !postures.some(({ posture }) => posture === 'part-way')
      ? ['heights between raised and nested']
      : []),
    ...(tower.hingeHeight === undefined ? [] : ['wind on the tower lowered flat']),
    'gusts stronger than the forecast and its error allow',
  ];
}

/** The card as plain text. */
export function stormText(card: StormCard, entryWarnings: readonly EntryWarning[], traced: Traced = {}): string {
  const document = stormDocument(card, entryWarnings, traced);
  const { title, station } = card.assessment.input;
  return [
    ...(title === '' ? [] : [title, '']),
    document.says,
    '',
    'By the gust that is forecast:',
    ...card.rows.map((row, index) => `- ${bandWords(row, station.units)}: ${document.rows[index]?.says ?? ''}`),
    '',
    ...document.postures.flatMap(({ says, parts }) => [says, ...parts.map((part) => `   ${part.title}: ${part.says}`)]),
    '',
    ...highestSays(card),
    `${keptWords(card.assessment)} Not included: ${document.notIncluded.join(', ')}.`,
    ...entryWarnings.map(({ says }) => says),
    ...document.cautions.map(({ says }) => says),
    '',
    ...(traced.version === undefined ? [] : [tracedTo(traced.version, traced.planHash), '']),
  ].join('\n');
}

/** Up to which height of its top a telescoping tower keeps the margin in the wind of the site. */
export function highestSays({ assessment, highestInSiteWind: top }: StormCard): readonly string[] {
  if (top === undefined) return [];
  const { units } = assessment.input.station;
  return [
    `In the site wind its decided parts keep the margin with the top at ${inWords(top, 'length', units)} or lower.`,
  ];
}

/** What of every capacity is kept, and what is taken off the gust. */
export function keptWords({ input }: Assessment): string {
  const { margin, forecast } = input.wanted;
  return `Keeps a ${perCent(margin)} margin, with ${perCent(forecast)} for forecast error.`;
}
