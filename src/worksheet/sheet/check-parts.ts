import type { Answer, CheckAnswer, Quantity } from '../../answer/index.ts';
import { METHOD_BY_ID, WITHOUT_WIND_AT_STRENGTH } from '../../methods/index.ts';
import {
  COMPARED_WORDS,
  figures,
  partName,
  ratioFigures,
  SPEED_WORDS,
  sentence,
  standardHeight,
  VERDICT_WORDS,
} from '../../words/index.ts';
import { NO_CHANCE } from '../chance-document.ts';
import { LOWERED_BEFORE } from '../remedies-document.ts';
import { bracketSays, guysSay, legsSay, swaySays } from '../says.ts';
import { type AnswerSheetGiven, cautionsFor } from './given.ts';
import { list, orNone, paragraph, printed, RECKONED, small, strong, table } from './printed.ts';
import type { Block, SheetPart } from './sheet.ts';

/** Everything that could give first. */
export function checksPart(given: AnswerSheetGiven): SheetPart {
  const { document } = given;
  const basis = SPEED_WORDS[document.design.speed.basis];
  const unit = document.design.speed.unit;
  return {
    id: 'checks',
    heading: 'Checks: what could give first',
    blocks: [
      table<CheckAnswer>(
        'Demand, capacity and wind held to, check by check',
        [
          { head: 'check', of: ({ title }) => strong(sentence(title)) },
          { head: 'verdict', of: ({ verdict }) => ({ text: VERDICT_WORDS[verdict], mark: verdict }) },
          { head: 'demand', numeric: true, of: ({ demand }) => orNone(demand, compared(demand)) },
          { head: 'capacity', numeric: true, of: ({ demand, capacity }) => orNone(capacity, compared(demand)) },
          { head: 'ratio', numeric: true, of: ({ ratio }) => orNone(ratio, signed) },
          { head: 'ratio at best', numeric: true, of: ({ ratioRange }) => orNone(ratioRange?.[0], signed) },
          { head: 'margin', numeric: true, of: ({ margin }) => orNone(margin, signed) },
          {
            head: 'holds to, actual gust',
            unit,
            numeric: true,
            voice: 'wind',
            of: (check) => orNone(check.holdsTo?.gust, bare),
          },
          {
            head: `holds to, ${basis}`,
            unit,
            numeric: true,
            voice: 'wind',
            of: (check) => orNone(check.holdsTo?.design, bare),
          },
          { head: 'governed by', of: whereSays },
        ],
        document.checks,
      ),
      small(
        `Ratio: demand over capacity, every open question answered unfavourably; at best, favourably.${squaredNote(document)} An actual gust is a 3-second gust at ${standardHeight(given.assessment.input.station.units)} in open country, as in a forecast. The other speed is of the type of the design wind.`,
      ),
      ...list(document.checks.map(({ says }) => says)),
      ...cautionsFor('checks', given),
    ],
  };
}

const bare = ({ value }: Quantity) => printed({ value, unit: '' });

/** Two speeds beside each other have their kind beside them. */
const compared = (demand: CheckAnswer['demand']) => (value: Quantity) =>
  demand?.of === 'gust' ? `${printed(value, RECKONED)} nominal gust` : printed(value, RECKONED);

/** Pressure grows with the square of speed. */
function squaredNote({ checks }: Answer): string {
  return checks.some(({ demand }) => demand?.of === 'gust')
    ? ' For two gusts it is the square of demand over capacity, as pressure grows with the square of speed.'
    : '';
}

/** With a real minus. */
const signed = (margin: number) => (margin < 0 ? `−${ratioFigures(-margin)}` : ratioFigures(margin));

function whereSays({ demand, where, along, ratio }: CheckAnswer): string {
  if (ratio === undefined) return 'see below';
  const { mode } = COMPARED_WORDS[demand?.of ?? 'wind-ratio'];
  if (along) return `${mode} ${printed(along)} from the support`;
  return where ? `${mode} at ${printed(where)}` : mode;
}

/** What comes down at the base, for whoever designs the footing. */
export function reactionsPart({ document, assessment }: AnswerSheetGiven): SheetPart {
  const { legs } = assessment.reactions;
  const { reactions, design, foundation } = document;
  const { allowable, nominal, strength, withoutWind, supportedAbove, withoutOwnWind, weight } = reactions;
  const bracket = bracketSays(assessment);
  const guys = guysSay(assessment);
  const sway = swaySays(assessment);
  type Level = readonly [name: string, forces: typeof allowable];
  const { atLargestShear, torsion } = reactions;
  const levels: readonly (Level | undefined)[] = [
    [
      stays(withoutWind) ? 'Allowable: wind loads and what is present without wind' : 'Allowable, as in the wind loads',
      allowable,
    ],
    [supportedAbove ? 'Nominal, supports above ignored' : 'Nominal, for footings', nominal],
    strength && [strengthRow(withoutWind, assessment), strength],
    ['Of this, present without wind (weight off the axis, wire tension)', withoutWind],
    ['Largest shear with its moment: allowable', atLargestShear.allowable],
    [
      `Largest shear with its moment: nominal, ${supportedAbove ? 'supports above ignored' : 'for footings'}`,
      atLargestShear.nominal,
    ],
    atLargestShear.strength && ['Largest shear with its moment: strength', atLargestShear.strength],
  ];
  if (guys !== undefined) return { id: 'reactions', heading: 'Reactions at the base', blocks: [paragraph(guys)] };
  const reckoned = ({ value }: Quantity) => printed({ value, unit: '' }, RECKONED);
  return {
    id: 'reactions',
    heading: 'Reactions at the base',
    blocks: [
      table<Level>(
        `Shear and moment at the base, ${design.title}`,
        [
          { head: 'level', of: ([name]) => strong(name) },
          { head: 'shear', unit: allowable.shear.unit, numeric: true, of: ([, { shear }]) => reckoned(shear) },
          { head: 'moment', unit: allowable.moment.unit, numeric: true, of: ([, { moment }]) => reckoned(moment) },
        ],
        levels.filter((level) => level !== undefined),
      ),
      paragraph(reactions.says),
      ...(torsion.nominal.value > 0
        ? [
            paragraph(
              `Torsion at the base, nominal: up to ${printed(torsion.nominal, RECKONED)}, each load at its own worst heading.`,
            ),
          ]
        : []),
      ...(strength === undefined ? [paragraph(`${design.title} has no separate strength level here.`)] : []),
      small(
        `Computed as a cantilever fixed at the base.${withoutOwnWind ? ' Wind on the tower itself is unknown and not included.' : ''}${supportedAbove ? ' Guys or brackets take a part of this, which is not computed.' : ''}${weight ? ` Total weight: ${printed(weight)}.` : ' Weight on the footing not computed; some weights are not given.'}`,
      ),
      ...(bracket === undefined ? [] : [paragraph(bracket)]),
      ...(sway === undefined ? [] : [paragraph(sway)]),
      ...(legs === undefined ? [] : [paragraph(legsSay(legs, assessment.input.station.units))]),
      ...(foundation === undefined ? [] : foundationBlocks(foundation)),
      ...raisingBlocks(document),
    ],
  };
}

const stays = ({ shear, moment }: Answer['reactions']['withoutWind']) => shear.value !== 0 || moment.value !== 0;

function strengthRow(
  withoutWind: Answer['reactions']['withoutWind'],
  { input }: AnswerSheetGiven['assessment'],
): string {
  const factor = METHOD_BY_ID[input.method].toStrengthFactorWithoutWind ?? WITHOUT_WIND_AT_STRENGTH;
  return stays(withoutWind) ? `Strength, with ${figures(factor)} times what is present without wind` : 'Strength';
}

function foundationBlocks({ says, notChecked }: NonNullable<Answer['foundation']>): readonly Block[] {
  return [
    { kind: 'subheading', text: 'Footing' },
    paragraph(says),
    ...(notChecked.length === 0 ? [] : [paragraph(`Not checked: ${notChecked.join('; ')}.`)]),
  ];
}

function raisingBlocks({ raising, lowered, lowerAt, roomLeft, chance }: Answer): readonly Block[] {
  return [
    ...list(
      [lowerAt, raising, lowered].flatMap((each) => each?.says ?? []),
      'Raising and lowering',
    ),
    ...list(
      roomLeft.map(({ says }) => says),
      'Room left',
    ),
    ...(chance === undefined ? [] : list(chance.length === 0 ? [NO_CHANCE] : chance.map(({ says }) => says), 'Chance')),
  ];
}

/** What was asked for beside the answer: other methods, what changes the ratio, what would help. */
export function besidesParts({ document }: AnswerSheetGiven): readonly SheetPart[] {
  const { spread, crankHeights, sensitivity, remedies } = document;
  const parts: readonly (SheetPart | undefined)[] = [
    spread && { id: 'spread', heading: 'By other standards', blocks: [paragraph(spread.says), spreadTable(spread)] },
    crankHeights && {
      id: 'crank-heights',
      heading: 'At other heights',
      blocks: [paragraph(crankHeights.says), heightsTable(crankHeights)],
    },
    sensitivity && {
      id: 'sensitivity',
      heading: 'What changes the result most',
      blocks: [paragraph(sensitivity.says), ...list(sensitivity.rows.map(({ says }) => says))],
    },
    remedies && {
      id: 'remedies',
      heading: 'What would help',
      blocks:
        remedies.rows.length === 0
          ? [paragraph(remedies.says)]
          : [
              ...list(remedies.rows.map(({ says }) => says)),
              ...(remedies.canBeLowered ? [paragraph(LOWERED_BEFORE)] : []),
            ],
    },
  ];
  return parts.filter((part) => part !== undefined);
}

function heightsTable({ rows }: NonNullable<Answer['crankHeights']>): Block {
  const ratioOf = ({ ratio, verdict }: (typeof rows)[number]['parts'][number]) =>
    ratio === undefined ? VERDICT_WORDS[verdict] : ratioFigures(ratio);
  return table<(typeof rows)[number]>(
    'Cranked to several heights',
    [
      { head: 'top at', numeric: true, of: ({ height }) => strong(printed(height)) },
      {
        head: 'ratio by part',
        of: ({ parts, inTheWay }) =>
          inTheWay
            ? 'something is in the way of its sections'
            : parts.map((part) => `${partName(part)} ${ratioOf(part)}`).join(', '),
      },
      {
        head: 'holds to, actual gust',
        numeric: true,
        voice: 'wind',
        of: ({ holdsToGust }) => orNone(holdsToGust, printed),
      },
      {
        head: 'keeps the margin to',
        numeric: true,
        voice: 'wind',
        of: ({ keepsMarginTo }) => orNone(keepsMarginTo, printed),
      },
    ],
    rows,
  );
}

function spreadTable({ rows }: NonNullable<Answer['spread']>): Block {
  return table<(typeof rows)[number]>(
    'The same plan by each standard',
    [
      { head: 'standard', of: ({ title }) => strong(title) },
      { head: 'speed', voice: 'wind', of: ({ speed }) => `${printed(speed)} ${SPEED_WORDS[speed.basis]}` },
      { head: 'ratio', numeric: true, of: ({ ratio }) => orNone(ratio, ratioFigures) },
      {
        head: 'holds to, actual gust',
        numeric: true,
        voice: 'wind',
        of: ({ holdsToGust }) => orNone(holdsToGust, printed),
      },
      { head: 'wind moment at base', numeric: true, of: ({ moment }) => printed(moment, RECKONED) },
    ],
    rows,
  );
}
