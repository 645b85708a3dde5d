import type { Conductor } from '../areas/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import {
  type AssumedName,
  LONGEST_ARM,
  LOWEST_BEARING,
  PIECE_ALIKE,
  POLE_DAMPING,
  USUAL_LINES,
  USUAL_MAST,
} from '../margins/index.ts';
import { FIELDS } from './fields.mjs';
import { inWords } from './figures.ts';
import { figures } from './plain-figures.mjs';
import type { QuestionWords } from './question-words.ts';

/** Something a plan does not tell: how it is asked for, what is assumed, and what a verdict waits for. */
interface AssumptionWords extends QuestionWords {
  /** With what is assumed at worst, where that is a quantity [SI]. */
  readonly assumed: (name: string, system: UnitSystem, worst?: number) => string;
  readonly action: string;
  /** After "depends on". */
  readonly dependsOn: (name: string) => string;
}

/** How a face is braced. */
const BRACING_WORDS: Readonly<Record<string, string>> = {
  zigzag: 'single diagonals',
  cross: 'crossed diagonals',
  rungs: 'level rungs',
};

const long = (answer: string, system: UnitSystem) => inWords(Number(answer), 'length', system);
const percent = (share: number) => `${figures(100 * share, 2)} %`;
const ALMOST = 0.995;
const hertz = (frequency: number) => {
  if (frequency >= 1) return '1 Hz or more';
  return frequency > ALMOST ? 'just under 1 Hz' : `${figures(frequency, 2)} Hz`;
};
const conductor = (answer: string) => FIELDS.load.conductor.choices[answer as Conductor] ?? answer;
const bracing = (answer: string) => BRACING_WORDS[answer] ?? answer;
const sides = (answer: string) => (answer === '0' ? 'round' : `${answer} sides`);

function lines(answer: string, system: UnitSystem): string {
  const { count, diameter } = USUAL_LINES;
  return Number(answer) === 0 ? 'no lines' : `${count} lines of ${inWords(diameter, 'diameter', system)}`;
}

function tube(answer: string, system: UnitSystem): string {
  return Number(answer) === 0 ? 'no mast' : `a tube of ${inWords(Number(answer), 'diameter', system)}`;
}

/** The words of everything that a plan may leave out. */
export const ASSUMPTION_WORDS: Readonly<Record<AssumedName, AssumptionWords>> = {
  cables: {
    ask: () => 'Which lines run up the tower, and how thick are they?',
    answer: lines,
    answered: (answer, _, system) => `${lines(answer, system)} on the tower`,
    assumed: (_, system) => `Lines not given. Assumed: ${lines('3', system)} up to the highest load; at best none.`,
    action: 'Count the lines and measure one; an empty list says that there are none.',
    dependsOn: () => 'the lines',
  },
  mast: {
    ask: () => 'Which mast is above the tower top, and how far does it reach inside?',
    answer: tube,
    answered: (answer, _, system) => `${tube(answer, system)} above the top`,
    assumed: (_, system) =>
      `Mast not given. Assumed in the wind: ${tube(String(USUAL_MAST.outside), system)} from ${inWords(USUAL_MAST.inside, 'length', system)} below the top to the highest load; at best none.`,
    action: 'Measure the mast.',
    dependsOn: () => 'the mast',
  },
  'load-offset': {
    ask: ({ of }) => `How far from the tower’s axis is the middle of ${of}?`,
    answer: (answer, system) => `${long(answer, system)} from the axis`,
    answered: (answer, { of }, system) => `${of} ${long(answer, system)} from the axis`,
    assumed: (name, system) =>
      `Distance of ${name} from the axis not given. Assumed: on the face, or on an arm of ${inWords(LONGEST_ARM, 'length', system)}.`,
    action: 'Measure from the tower’s axis to the middle of it.',
    dependsOn: (name) => `how far ${name} is off the axis`,
  },
  'bearing-height': {
    ask: () => 'At what height is the upper bearing of the mast?',
    answer: (answer, system) => `at ${long(answer, system)}`,
    answered: (answer, _, system) => `bearing of the mast at ${long(answer, system)}`,
    assumed: (_, system) =>
      `Height of the mast’s bearing not given. Assumed: at the top, or ${inWords(LOWEST_BEARING, 'length', system)} below it.`,
    action: 'Measure the height of the bearing.',
    dependsOn: () => 'the height of the mast’s bearing',
  },
  'rated-height': {
    ask: () => 'For what height of the tower is the rating meant?',
    answer: (answer, system) => `for a top at ${long(answer, system)}`,
    answered: (answer, _, system) => `rating meant for a top at ${long(answer, system)}`,
    assumed: () =>
      'Height of the tower that the rating is for not given. Assumed: this tower’s, or a neighbour’s in its series.',
    action: 'See for which height the line of the data sheet is.',
    dependsOn: () => 'the height that the rating is for',
  },
  'ice-class': {
    ask: () => 'Which risk category applies to the ice?',
    answer: (answer) => `risk category ${answer}`,
    answered: (answer) => `ice for risk category ${answer}`,
    assumed: () => 'Risk category not given. For ice category III is assumed; at best II.',
    action: 'Ask the building department.',
    dependsOn: () => 'the risk category',
  },
  frequency: {
    ask: () => 'How often does the tower sway in a second?',
    answer: (answer) => hertz(Number(answer)),
    answered: (answer) => `natural frequency of ${hertz(Number(answer))}`,
    assumed: (_, __, worst) =>
      `Natural frequency not given. Assumed: ${worst === undefined ? 'the lowest plausible' : hertz(worst)}, so that it sways in gusts.`,
    action: 'Time ten swings; the frequency is 10 divided by the seconds.',
    dependsOn: () => 'the natural frequency',
  },
  damping: {
    ask: () => 'How strongly is the sway of the pole damped?',
    answer: (answer) => `${percent(Number(answer))} of critical`,
    answered: (answer) => `damping of ${percent(Number(answer))}`,
    assumed: () =>
      `Damping of the pole not given. Assumed: ${percent(POLE_DAMPING.least)} or ${percent(POLE_DAMPING.usual)} of critical.`,
    action: 'Ask the manufacturer.',
    dependsOn: () => 'the damping of the pole',
  },
  'pole-sides': {
    ask: () => 'Is the pole round, or how many sides has it?',
    answer: sides,
    answered: (answer) => `pole ${answer === '0' ? 'round' : `with ${answer} sides`}`,
    assumed: () => 'Number of sides of the pole not given. Round or 8 sides assumed, the worse at each level.',
    action: 'Look at the pole and count.',
    dependsOn: () => 'the sides of the pole',
  },
  'bracing-pattern': {
    ask: () => 'How is the tower braced?',
    answer: bracing,
    answered: (answer) => `braced by ${bracing(answer)}`,
    assumed: () => 'Bracing pattern not given. Rungs, single or crossed diagonals assumed, the worst at each level.',
    action: 'Look at one panel of the tower.',
    dependsOn: () => 'the bracing',
  },
  conductor: {
    ask: ({ of }) => `What is ${of} made of?`,
    answer: conductor,
    answered: (answer, { of }) => `${of} of ${conductor(answer)}`,
    assumed: (name) => `Conductor of ${name} not given. Assumed: steel, the stiffest; at best aluminium.`,
    action: 'See what the wire is made of.',
    dependsOn: (name) => `what ${name} is made of`,
  },
  'alike-along': {
    ask: () => 'Is each section of the tower alike from its lower end to its upper one?',
    answer: (answer) => answer,
    answered: (answer) => answer,
    assumed: (_, system) =>
      `Steel along the sections not given. Assumed: pieces of ${inWords(PIECE_ALIKE, 'length', system)}, each alike all along.`,
    action: 'See whether a section has the same tubes from end to end.',
    dependsOn: () => 'the steel along the sections',
  },
};
