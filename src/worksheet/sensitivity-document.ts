import { type SensitivityAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { Assessment, Change, Sensitivity, SensitivityRow } from '../margins/index.ts';
import { checkName, figures, groundNamed, inWords, QUESTION_WORDS, ratioFigures, sentence } from '../words/index.ts';
import { quantity } from './quantity.ts';

/** What the ratio hangs on, as a document. */
export function sensitivityDocument(sensitivity: Sensitivity, assessment: Assessment): SensitivityAnswer {
  const { ofCheck, ratio, rows } = sensitivity;
  const system = assessment.input.station.units;
  return {
    says: sensitivitySays(sensitivity, assessment),
    ofCheck,
    ratio,
    rows: rows.map((row) =>
      told<SensitivityAnswer['rows'][number]>({
        of: row.change.of === 'open-question' ? row.change.question.question : row.change.of,
        at: row.at,
        says: rowSays(row, sensitivity, assessment),
        ...changed(row.change, system),
        ratio: row.ratio,
        difference: row.ratio - ratio,
        elasticity: row.elasticity,
      }),
    ),
  };
}

function changed(change: Change, system: UnitSystem) {
  const { times, to, answer, by } = { times: undefined, to: undefined, answer: undefined, by: undefined, ...change };
  return { times, to: to ?? answer, by: quantity(by, 'length', system) };
}

/** How many changes the sentence names. */
const NAMED = 3;

/** What moves the ratio most, in a sentence or two. */
export function sensitivitySays(sensitivity: Sensitivity, assessment: Assessment): string {
  const { ratio, rows } = sensitivity;
  const most = rows
    .slice(0, NAMED)
    .map((row) => `${sentence(changeInWords(row.change, assessment))}: ${ratioFigures(row.ratio)}.`);
  const moved = `Of ${rows.length} changes tried, each alone, these move the ratio of the ${nameOf(sensitivity)} (${ratioFigures(ratio)}) most. ${most.join(' ')}`;
  const elasticity = rows.find((row) => row.change.of === 'speed')?.elasticity;
  if (elasticity === undefined) return moved;
  return `${moved} One per cent more wind raises the ratio by ${elasticity.toFixed(1)} %.`;
}

/** The same as lines of plain text. */
export function sensitivityLines(sensitivity: Sensitivity, assessment: Assessment): string[] {
  return [
    sensitivitySays(sensitivity, assessment),
    ...sensitivity.rows.map((row) => `- ${rowSays(row, sensitivity, assessment)}`),
  ];
}

function nameOf({ ofCheck }: Sensitivity): string {
  return checkName({ kind: ofCheck });
}

function rowSays(row: SensitivityRow, { ratio }: Sensitivity, assessment: Assessment): string {
  const difference = row.ratio - ratio;
  const by = Math.round(Math.abs(difference) * 1000) / 1000;
  const how =
    by === 0 || ratioFigures(row.ratio) === ratioFigures(ratio)
      ? 'no notable difference'
      : `${difference > 0 ? 'up' : 'down'} ${figures(by)} to ${ratioFigures(row.ratio)}`;
  return `${sentence(changeInWords(row.change, assessment))}: ${how}.`;
}

function changeInWords(change: Change, { input }: Assessment): string {
  const { units } = input.station;
  switch (change.of) {
    case 'speed':
      return `wind ${percentMore(change.times)} stronger`;
    case 'gust-effect':
      return `gust effect factor ${percentMore(change.times)} larger`;
    case 'ground':
      return `${Object.keys(groundNamed(input.site.exposure))[0]} ${change.to} instead of ${input.site.exposure}`;
    case 'hill':
      return change.to === 'none' ? 'without the hill' : 'half as far from the crest';
    case 'load-height':
      return `${change.load} ${inWords(Math.abs(change.by), 'length', units)} ${change.by > 0 ? 'higher' : 'lower'}`;
    case 'load-offset':
      return `${change.load} ${inWords(change.by, 'length', units)} farther off the axis`;
    case 'frequency':
      return 'natural frequency half as high';
    case 'lines':
      return `one line more (${change.run})`;
    case 'open-question':
      return QUESTION_WORDS[change.question.question].answered(change.answer, change.question, units);
  }
}

function percentMore(times: number): string {
  return `${Math.round(100 * (times - 1))} %`;
}
