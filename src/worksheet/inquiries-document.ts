import { type InquiriesAnswer, told } from '../answer/index.ts';
import { type Assessment, type CheckInput, type Inquiry, inquiriesOf } from '../margins/index.ts';
import type { Tower } from '../structure/index.ts';
import { inWords, missingInWords, questionOf } from '../words/index.ts';
import { RECKONED } from './sheet/printed.ts';
import { ratingWords, sectionWords } from './sheet/structure-words.ts';

/**
 * What tells most of a tower without papers, in the order of what it decides: the wind on it first, then what its steel may be.
 *
 * @source common-practice
 */
const WITHOUT_PAPERS = {
  lattice: [
    'Look for a plate, a stamp or paint on the lowest section, and for the year; photograph them.',
    'Faces, and width of one face between the middles of two legs, at the base and at the top.',
    'Outside diameter of the legs and of the braces, with a caliper.',
    'Height of one bracing panel, how it is braced, and the longest stretch of a leg that no brace holds.',
    'Wall of the legs and of the braces: at a drain hole or an open end, or by weighing one section.',
    'Length of each section, and how one is fixed to the next: sizes and number of bolts.',
    'Footing: length, width and depth, and the bolts that hold the base.',
  ],
  pole: [
    'Look for a plate, a stamp or paint near the base, and for the year; photograph them.',
    'Number of sides, and width across from flat to flat, at the base and at the top.',
    'Wall, where it is thinnest: at a drain hole, with an ultrasonic gauge, or by weighing one section.',
    'Whether a magnet sticks to it, and whether it is welded at the base or at a door.',
    'Length of each section, and how far one is inside the next.',
    'Footing: length, width and depth, and the bolts that hold the base.',
  ],
};

/** Without any rating these decide most. */
const ABOUT_A_TOWER_WITHOUT_PAPERS = [
  'Which effective projected area may it carry at its top, at what wind speed, and with which cables?',
  'By which standard and edition, for which exposure and for which type of wind speed (gust, fastest mile or mean)?',
  'Which footing is drawn for it, and for which moment and shear at the base?',
];

const SUPPORTED: Readonly<Record<Tower['support'], string>> = {
  free: 'free-standing',
  guyed: 'guyed',
  bracketed: 'bracketed to a house',
  roof: 'on a roof',
};

/** What the letter asks, where the words of a missing field ask nothing. */
const ASKED_BY_FIELD: readonly { readonly is: RegExp; readonly ask: string }[] = [
  { is: /\/wind$/, ask: 'At what wind speed may it carry the area that the data sheet states?' },
  { is: /\/wind\/year$/, ask: 'By which standard and edition is it rated, and of which year is the data sheet?' },
  { is: /\/level$/, ask: 'Is the stated load an allowable load, or a strength?' },
  { is: /\/top$/, ask: 'What may it carry at this height?' },
  { is: /\/supportedAt$/, ask: 'What may it carry with supports at these heights, or with none?' },
  { is: /\/foundation$/, ask: 'Which footing is drawn for it, and for which moment and shear at the base?' },
  { is: /\/asDrawn$/, ask: 'At which heights is it held, by what, and on which footing is it drawn?' },
];

/** What to ask the manufacturer of the tower, as text to copy, and what to measure; absent where nothing is to be asked or measured. */
export function inquiriesDocument({ input, checks, questions }: Assessment): InquiriesAnswer | undefined {
  const { letter, toMeasure, withoutPapers } = inquiriesOf(checks, questions.open);
  const { sections } = input.station.tower;
  const isPole = sections.length > 0 && sections.every(({ shape }) => shape?.kind === 'pole');
  const ofTower = isPole ? WITHOUT_PAPERS.pole : WITHOUT_PAPERS.lattice;
  const measure = [...(withoutPapers ? ofTower : []), ...toMeasure.map((each) => measured(each, input))];
  const asked = withoutPapers ? ABOUT_A_TOWER_WITHOUT_PAPERS : letter.map((each) => askedOf(each, input));
  if (measure.length === 0 && asked.length === 0) return undefined;
  return told<InquiriesAnswer>({
    letter: asked.length === 0 ? undefined : letterAbout(input, [...new Set(asked)]),
    measure: [...new Set(measure)],
  });
}

function measured({ at, question }: Inquiry, input: CheckInput): string {
  return question ? questionOf(question, input) : missingInWords(at, input);
}

function askedOf({ at, question }: Inquiry, input: CheckInput): string {
  if (question) return questionOf(question, input);
  return ASKED_BY_FIELD.find(({ is }) => is.test(at))?.ask ?? missingInWords(at, input);
}

function letterAbout(input: CheckInput, asked: readonly string[]): string {
  const { tower, units } = input.station;
  const [lowest] = tower.sections;
  const facts = [
    SUPPORTED[tower.support],
    `top ${inWords(tower.top, 'length', units, RECKONED)} above ground`,
    ...(tower.telescopes ? ['cranks up'] : []),
    ...(tower.hingeHeight === undefined ? [] : ['tilts over']),
    ...(lowest?.shape === undefined ? [] : [`at the base ${sectionWords(lowest, units)}`]),
  ];
  const rated = input.ratings
    .filter(({ of }) => of === 'tower')
    .map((rating) => {
      const { states, wind } = ratingWords(rating, units);
      return `- ${states}${wind === '' ? '' : `; ${wind}`}`;
    });
  return [
    'Rating of a tower',
    '',
    `The tower: ${facts.join('; ')}.`,
    ...(rated.length === 0 ? ['No data sheet came with it.'] : ['Its data sheet, as read:', ...rated]),
    '',
    `To compare it with the antennas planned, ${asked.length === 1 ? 'one answer is' : `${asked.length} answers are`} needed:`,
    ...asked.map((question, index) => `${index + 1}. ${question}`),
    '',
    'A copy of the data sheet or of the drawing may answer them all.',
  ].join('\n');
}
