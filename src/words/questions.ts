import type { AreaKind } from '../areas/index.ts';
import { DISPLAY_UNITS, displayValue, type UnitSystem } from '../foundation/index.ts';
import { type CheckInput, type OpenQuestion, ratedSupports } from '../margins/index.ts';
import { METHOD_BY_ID, type MethodId } from '../methods/index.ts';
import { drawnOut } from '../structure/index.ts';
import type { Ground } from '../wind/index.ts';
import { ASSUMPTION_WORDS } from './assumption-words.ts';
import { AREA_WORDS, GROUND_WORDS } from './choices.ts';
import { inWords, listed } from './figures.ts';
import { figures, ratioFigures } from './plain-figures.mjs';
import type { QuestionWords } from './question-words.ts';

const areaAnswer = (answer: string) => AREA_WORDS[answer as AreaKind];
const groundAnswer = (answer: string) => GROUND_WORDS[answer as Ground];

/** The words of every open question. */
export const QUESTION_WORDS: Readonly<Record<OpenQuestion['question'], QuestionWords>> = {
  'rating-method': {
    ask: () => 'By which standard is the tower rated?',
    answer: (answer) => METHOD_BY_ID[answer as MethodId].title,
    answered: (answer) => `tower rated by ${METHOD_BY_ID[answer as MethodId].title}`,
  },
  'rating-exposure': {
    ask: () => 'For which exposure is the tower rated?',
    answer: groundAnswer,
    answered: (answer) => `tower rated for exposure ${answer}, ${groundAnswer(answer)}`,
  },
  'rating-terrain': {
    ask: () => 'For which terrain is the tower rated?',
    answer: groundAnswer,
    answered: (answer) => `tower rated for terrain ${answer}, ${groundAnswer(answer)}`,
  },
  'rating-class': {
    ask: () => 'For which structure class is the tower rated?',
    answer: (answer) => `class ${answer}`,
    answered: (answer) => `tower rated for class ${answer}`,
  },
  'rating-area-kind': {
    ask: (question, input) => `What type of area is ${ratedArea(question, input)}?`,
    answer: areaAnswer,
    answered: (answer) => `rated area taken as ${areaAnswer(answer)}`,
  },
  'load-area-kind': {
    ask: ({ of }) => `What type of area is stated for ${of}?`,
    answer: areaAnswer,
    answered: (answer, { of }) => `area of ${of} taken as ${areaAnswer(answer)}`,
  },
  'tower-members': {
    ask: () => 'How thick are the tower’s legs and braces, and how tall is one bracing panel?',
    answer: (answer) => `solidity ${answer}`,
    answered: (answer) => `tower with solidity ${answer}`,
  },
  ...ASSUMPTION_WORDS,
};

/** An open question, as one asks it. */
export function questionOf(question: OpenQuestion, input: CheckInput): string {
  return QUESTION_WORDS[question.question].ask(question, input);
}

function ratedArea(question: OpenQuestion, input: CheckInput): string {
  const rating = input.ratings.find((each) => question.at.startsWith(`${each.at}/`));
  const [row] = rating?.claim.kind === 'area' ? rating.claim.rows : [];
  return row ? `the rated ${inWords(row.area, 'area', input.station.units)}` : 'the rated area';
}

/** A ground has its letter, which is what a checker looks for. */
export function answerWords(question: OpenQuestion, answer: string, system: UnitSystem): string {
  const words = QUESTION_WORDS[question.question].answer(answer, system);
  return question.question === 'rating-exposure' || question.question === 'rating-terrain'
    ? `${answer}, ${words}`
    : words;
}

/** Questions whose assumed reading is in words already. */
const TAKEN_AS_SAID: ReadonlySet<OpenQuestion['question']> = new Set([
  'rating-method',
  'tower-members',
  'pole-sides',
  'bracing-pattern',
  'rated-height',
]);

/** The reading that stands, in words where it is one of the answers. */
export function takenInWords(question: OpenQuestion, system: UnitSystem): string {
  if (TAKEN_AS_SAID.has(question.question)) return question.assumed;
  const [answer = '', and = ''] = question.assumed.split(/ (?=with )/);
  return [answerWords(question, answer, system), and].filter((words) => words !== '').join(' ');
}

/** What an answer may bring: "The answer can move the ratio between 0.84 and 0.63." */
export function promiseOf({ ratio, ...question }: OpenQuestion): string {
  const best = question.ratioIf.reduce((least, option) => (option.ratio < least.ratio ? option : least));
  if (best.ratio >= ratio) return 'No answer lowers the ratio.';
  return `The answer can move the ratio between ${ratioFigures(ratio)} and ${ratioFigures(best.ratio)}.`;
}

/** Everything that is not given; several weights in one sentence, and several ratings for other heights. */
export function missingSentences(needs: readonly string[], input: CheckInput): string {
  const weights = needs.filter((need) => need.endsWith('/weight'));
  const tops = needs.filter(isRatedTop);
  const others = needs.filter((need) => !need.endsWith('/weight') && !(tops.length > 1 && isRatedTop(need)));
  const said = others.map((need) => missingInWords(need, input));
  if (tops.length > 1) said.push(otherTops(tops, input));
  if (weights.length > 1) said.push(`${weights.length} weights are not given; use a scale or the data sheets.`);
  else if (weights.length === 1) said.push(missingInWords(weights[0] as string, input));
  return [...new Set(said)].join(' ');
}

const isRatedTop = (pointer: string) => /^\/ratings\/\d+\/top$/.test(pointer);

function ratingAt(pointer: string, { ratings }: CheckInput): CheckInput['ratings'][number] | undefined {
  return ratings.find(({ at }) => pointer.startsWith(`${at}/`));
}

/** "36 and 70 ft": exact enough that two heights which differ read differently. */
function heightsInWords(heights: readonly number[], system: UnitSystem): string {
  const each = heights.map((height) => figures(displayValue(height, 'length', system), 5));
  return `${listed(each)} ${DISPLAY_UNITS[system].length.label}`;
}

function otherTops(pointers: readonly string[], input: CheckInput): string {
  const { tower, units } = input.station;
  const tops = pointers.map((pointer) => ratingAt(pointer, input)?.top ?? drawnOut(tower).top);
  const [stated, here] = [heightsInWords([...new Set(tops)], units), heightsInWords([tower.top], units)];
  return tops.length === 1
    ? `Its rating is for a top at ${stated}; this one is at ${here}.`
    : `Its ratings are for tops at ${stated}; this one is at ${here}.`;
}

function otherSupports(pointer: string, input: CheckInput): string {
  const { tower, units } = input.station;
  const stated = `Its rating is for supports at ${heightsInWords(ratingAt(pointer, input)?.held ?? [], units)}`;
  if (tower.held.length > 0) {
    const heights = tower.held.map(({ height }) => height).sort((a, b) => a - b);
    return `${stated}; those of this tower are at ${heightsInWords(heights, units)}.`;
  }
  return `${stated}; this tower ${tower.support === 'roof' ? 'is on a roof and' : 'is free-standing and'} has none.`;
}

/** Why a tower that needs supports is not compared: none given, or one at its very top. */
function supportsInWords({ station, ratings }: CheckInput): string {
  const { tower, units } = station;
  if (tower.held.length > 0) return 'Its highest support is at its very top; nothing is compared below it.';
  const rated = ratedSupports(ratings, tower);
  if (rated.length < 2) return 'Heights of guys or brackets not given; the manufacturer’s drawing has them.';
  const sets = rated.map((heights) => heightsInWords(heights, units));
  return `Heights of guys or brackets not given, and its ratings name different ones: ${sets.join('; ')}. Give those of this tower.`;
}

/** "“Beam” is below the highest bracket, where nothing is compared." */
function belowSupports(pointer: string, { station }: CheckInput): string {
  const load = station.loads.find(({ at }) => pointer === `${at}/height`);
  const support = station.tower.support === 'bracketed' ? 'bracket' : 'guys';
  return `“${load?.name ?? 'Something'}” is below the highest ${support}, where nothing is compared.`;
}

/** What is not given, by the last name of the field that would hold it. */
const MISSING_WORDS: Readonly<Record<string, string>> = {
  ratings: 'No rating of the tower given; its data sheet has it.',
  wind: 'The rating states no wind speed. An area without a speed gives no capacity.',
  shape: 'Shape of the tower not given, so the wind on it is unknown; measure it with a tape.',
  mast: 'Mast not given, though a load is above the tower top.',
  wall: 'Mast wall thickness not given; measure it with a caliper at the end.',
  yield: 'Steel grade of the mast not given; the seller’s invoice or mill certificate has it. No grade is assumed.',
  ultimate: 'Ultimate strength of its aluminium not given; the mill certificate of the alloy and temper has it.',
  inside: 'How far the mast reaches inside the tower is not given; measure it with a tape.',
  ratedWind: 'Its rated wind speed is not given; look in its manual.',
  basis: 'Type of its rated wind speed not stated (gust, fastest mile or mean); ask the manufacturer.',
  icedWeight: 'Its weight with ice is not given and cannot be computed; ask the manufacturer.',
  icedArea: 'Its area with ice is not given and cannot be computed; ask the manufacturer.',
  leg: 'Members of the tower not given, so their ice cannot be computed; measure them.',
  level: 'Level of the rating not stated (allowable load or strength); ask the manufacturer.',
  year: 'No standard known here fits the rating’s type of speed and its year; name its standard.',
  bearingNet:
    'Whether the soil bearing is net or gross is not given; the soils report or the building department knows.',
  isolatedPole: 'Whether half an inch of movement at the ground does harm is not given; ask the building official.',
  soilLateral: 'Lateral soil bearing not given; the building department’s table has it.',
  soilBearing: 'Soil bearing not given; the building department’s table has it.',
  bothAccepted: 'Whether sides and base of the footing count together is not given; ask the building official.',
  foundation: 'Footing not given; use the manufacturer’s drawing, or block size and soil values.',
  bearing: 'Whether the mast has a bearing, and where, is not given.',
  tension: 'Tension of the wire not given; give it, or its sag and weight.',
  raisedBy: 'Raising gear not given: where the line is anchored and where it attaches.',
  nested: 'How high its top is when down is not given. It is raised nested; drawn out is assumed.',
  sections: 'Sections of the tower not given. It is raised nested; drawn out is assumed.',
  rating: 'Rating of the gear not given; look at its plate or ask the manufacturer.',
  asDrawn: 'Whether guys, brackets and footing are to the manufacturer’s drawing is not given.',
  cables:
    'Nothing is compared below the highest support. Lines and the tower itself catch more wind there than the rated tower itself.',
  tower: 'Nothing is compared below the highest support. The tower itself catches more wind there than the rated one.',
};

/** The same of what the own strength of a tower hangs on. */
const MISSING_OF_TOWER: Readonly<Record<string, string>> = {
  wall: 'Wall of the pole not given; measure it at a drain hole, with an ultrasonic gauge, or weigh a section.',
  legWall: 'Wall of the legs not given; measure it at a drain hole, or weigh a section. Half the leg is solid.',
  braceWall: 'Wall of the braces not given; measure it at an open end. Half the brace is solid.',
  brace: 'Thickness of the braces not given; measure it with a caliper.',
  panel: 'Height of a bracing panel not given; measure it with a tape.',
  pattern: 'How the tower is braced is not given; look at one panel.',
  sides: 'Number of sides of the pole not given; count them.',
  legFree: 'Longest stretch of a leg that no brace holds is not given; measure it with a tape.',
  yield: 'Yield strength of the tower not given; look for a stamp or the mill certificate.',
};

/** What is not given, by the field that would hold it. */
export function missingInWords(pointer: string, input: CheckInput): string {
  if (pointer === '/method') return 'This standard has no rule for ice here; compare with another.';
  if (pointer === '/tower/supportedAt') return supportsInWords(input);
  if (/^\/ratings\/\d+\/supportedAt$/.test(pointer)) return otherSupports(pointer, input);
  if (isRatedTop(pointer)) return otherTops([pointer], input);
  if (/^\/loads\/\d+\/height$/.test(pointer)) return belowSupports(pointer, input);
  const field = pointer.split('/').at(-1) ?? '';
  if (field === 'weight') {
    return `Weight of ${weighedIn(pointer, input)} not given; use a scale or the data sheet.`;
  }
  const ofTower = pointer.startsWith('/tower/') ? MISSING_OF_TOWER[field] : undefined;
  return ofTower ?? MISSING_WORDS[field] ?? `Not given: ${pointer}.`;
}

/** What a missing weight is of, loads that come later among them. */
export function weighedIn(pointer: string, { station, later = [] }: Pick<CheckInput, 'station' | 'later'>): string {
  const at = pointer.slice(0, pointer.lastIndexOf('/'));
  if (at === '/tower') return 'the tower';
  const named = [...station.loads, ...later, ...station.cables, ...station.tower.sections].find(
    (each) => each.at === at,
  );
  return named?.name ?? `the ${at.split('/').at(-1)}`;
}
