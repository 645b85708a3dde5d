import type { Quantity, StepInput, WorkingStep } from '../../answer/index.ts';
import { type BaseInWind, baseByWind } from '../../margins/index.ts';
import { COMPARED_WORDS, figures, inWords, listed, ratioFigures, sentence } from '../../words/index.ts';
import { type AnswerSheetGiven, cautionsFor } from './given.ts';
import { type HandLine, handLinesOf } from './hand-lines.ts';
import { list, paragraph, plain, printed, RECKONED, small, strong, table } from './printed.ts';
import type { Block, SheetPart, Words } from './sheet.ts';

/** Lines to redo by hand. */
export function handPart({ document, assessment }: AnswerSheetGiven): SheetPart {
  const { windLoads, reactions } = document;
  const { units } = windLoads;
  const { lines, total, factorSays, together, ratio } = handLinesOf(document);
  const sum: readonly Words[] = [
    strong(`${lines.length + 1}. sum`),
    plain(''),
    plain(''),
    plain(''),
    { text: total.force, strong: true, voice: 'wind' },
    plain(''),
    strong(total.moment),
  ];
  const { shear, moment } = reactions.allowable;
  return {
    id: 'by-hand',
    heading: 'Hand check: base shear and moment',
    blocks: [
      {
        ...table<HandLine>(
          'Area × pressure × factor is the force; force × height above the base is the moment',
          [
            { head: 'line', of: ({ name }, index) => strong(`${index + 1}. ${name}`) },
            { head: 'area to the wind', unit: units.area, numeric: true, of: ({ factors }) => factors?.area ?? '' },
            {
              head: 'pressure',
              unit: units.pressure,
              numeric: true,
              voice: 'wind',
              of: ({ factors }) => factors?.pressure ?? '',
            },
            { head: 'factor', numeric: true, of: ({ factors }) => factors?.factor ?? '' },
            { head: 'force', unit: units.force, numeric: true, voice: 'wind', of: ({ force }) => force },
            { head: 'height', unit: units.height, numeric: true, of: ({ height = '' }) => height },
            { head: 'moment', unit: units.moment, numeric: true, of: ({ moment }) => moment },
          ],
          lines,
        ),
        totals: [sum],
      },
      ...(ratio
        ? [
            paragraph(
              strong(`${lines.length + 2}. ratio of the tower in ${ratio.of}: `),
              `${ratio.of === 'shear' ? total.force : total.moment} ÷ ${ratio.capacity} = ${ratio.ratio}.`,
            ),
          ]
        : [paragraph('These sums do not give the tower’s ratio. See its line under Checks.')]),
      ...baseInBothWinds(assessment),
      small(
        [
          `Factor: ${factorSays}.`,
          `The answer has ${printed(shear, RECKONED)} and ${printed(moment, RECKONED)}. Differences in the last figure come from rounding of the printed figures.`,
          ...(reactions.supportedAbove ? ['Computed as a cantilever fixed at the base.'] : []),
          ...(together.length > 0
            ? [
                `Rows combined (areas summed; pressure and height averaged to keep force and moment): ${listed(together)}.`,
              ]
            : []),
        ].join(' '),
      ),
    ],
  };
}

/** The tower at its base in the wind on a face and on a corner: the sums above are of one of both. */
function baseInBothWinds({ model, unfavourable, input }: AnswerSheetGiven['assessment']): readonly Block[] {
  const { units } = input.station;
  const rows = baseByWind(model, unfavourable);
  if (rows.length === 0) return [];
  const amount = (value: number, of: BaseInWind['of']) =>
    inWords(value, of === 'moment' ? 'moment' : 'force', units, 4);
  return [
    table<BaseInWind>(
      'The tower at its base, wind on a face and on a corner',
      [
        { head: 'wind on', of: ({ direction }) => strong(direction === 'face' ? 'a face' : 'a corner') },
        { head: 'compared', of: ({ of }) => COMPARED_WORDS[of].mode },
        { head: 'by wind', numeric: true, of: ({ demand, ofWeight, of }) => amount(demand - ofWeight, of) },
        { head: 'by weight', numeric: true, of: ({ ofWeight, of }) => (ofWeight === 0 ? '' : amount(ofWeight, of)) },
        { head: 'demand', numeric: true, of: ({ demand, of }) => amount(demand, of) },
        { head: 'capacity', numeric: true, of: ({ capacity, of }) => amount(capacity, of) },
        { head: 'ratio', numeric: true, of: ({ ratio }) => ratioFigures(ratio) },
      ],
      rows,
    ),
    small('By weight: moment that fills the legs as the weight above does, and of what is off the axis.'),
  ];
}

/** The line that says how many steps agree; a sheet is not made where one does not. */
export function witnessSays({ testimony }: AnswerSheetGiven): string {
  const agree = testimony.filter(({ agrees }) => agrees).length;
  return `${agree} of ${testimony.length} steps were recomputed by a second, general-purpose program, units included, with the same result.`;
}

/** Every step, each under what it is about. */
export function workingPart(given: AnswerSheetGiven): SheetPart {
  const { testimony, working } = given;
  const blocks: Block[] = [];
  let about = '';
  if (working === 'full') {
    for (const { step } of testimony) {
      const here = sentence(step.about.join(', '));
      if (here !== about) blocks.push({ kind: 'subheading', text: here });
      about = here;
      blocks.push(stepBlock(step, given));
    }
  } else {
    blocks.push(
      paragraph(`The ${testimony.length} steps of the working are not printed here; working=full prints all of them.`),
    );
  }
  return { id: 'working', heading: 'Working', blocks: [paragraph(witnessSays(given)), ...blocks] };
}

function stepBlock(step: WorkingStep, { sources }: AnswerSheetGiven): Block {
  const source = sources.find(({ id }) => id === step.source);
  const title = source?.short ?? source?.title ?? step.source;
  return {
    kind: 'step',
    symbol: step.symbol,
    title: step.title,
    expression: step.expression,
    inputs: step.inputs.map((input) => ({
      symbol: input.symbol,
      words: inputWords(input),
      ...(typeof input.value === 'number' ? { value: valueWords(input.value, input.unit) } : {}),
    })),
    value: valueWords(step.value, step.unit),
    source:
      step.source === 'derived'
        ? `${step.clause}; ${step.knownInWords}`
        : `${title}, ${step.clause}; ${step.knownInWords}`,
    fromMemory: step.known === 'memory' || step.known === 'second-hand',
    ...(step.note === undefined ? {} : { note: step.note }),
  };
}

function inputWords({ meaning, value, unit }: StepInput): string {
  const numbers = typeof value === 'number' ? valueWords(value, unit) : listWords(value, unit);
  return `${numbers} (${meaning})`;
}

function valueWords(value: number, unit: Quantity['unit']): string {
  return printed({ value, unit }, RECKONED);
}

function listWords(values: readonly number[], unit: string): string {
  const numbers = values.map((each) => figures(each, RECKONED)).join('; ');
  return unit === '' || unit === '°' ? `${numbers}${unit}` : `${numbers} ${unit}`;
}

/** The documents behind the working, and what of them is from memory. */
export function sourcesPart(given: AnswerSheetGiven): SheetPart {
  const { testimony, sources } = given;
  const steps = testimony.map(({ step }) => step);
  const used = [...new Set(steps.map(({ source }) => source))].filter((source) => source !== 'derived').sort();
  const titled = (id: string) => sources.find((source) => source.id === id);
  const clausesIn = (id: string) => [
    ...new Set(steps.flatMap(({ source, clause }) => (source === id ? [clause] : []))),
  ];
  return {
    id: 'sources',
    heading: 'Sources, and what is from memory',
    blocks: [
      table<string>(
        'Documents used by the working',
        [
          { head: 'document', of: (id) => strong(titled(id)?.title ?? id) },
          { head: 'edition', of: (id) => titled(id)?.edition ?? '' },
          { head: 'clauses', of: (id) => clausesIn(id).join('; ') },
          { head: 'what of it was read', of: (id) => titled(id)?.seen ?? '' },
        ],
        used,
      ),
      ...list(clausesOf(steps, 'memory'), 'From memory: check against the document'),
      ...list(clausesOf(steps, 'second-hand'), 'Second hand: check against the document'),
      ...list(clausesOf(steps, 'common-practice'), 'Common practice, no standard'),
      small(
        'Formulas without a document are derived here from mechanics or geometry, as marked in the working. Manufacturers’ numbers are as entered.',
      ),
      ...cautionsFor('sources', given),
    ],
  };
}

function clausesOf(steps: readonly WorkingStep[], known: WorkingStep['known']): readonly string[] {
  return [...new Set(steps.filter((step) => step.known === known).map(({ title, clause }) => `${title} (${clause})`))];
}
