import type { Answer, CheckAnswer, Quantity } from '../../answer/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import {
  COMPARED_WORDS,
  figures,
  ratioFigures,
  SPEED_WORDS,
  sentence,
  standardHeight,
  VERDICT_WORDS,
} from '../../words/index.ts';
import { NO_CHANCE } from '../chance-document.ts';
import { LOWERED_BEFORE } from '../remedies-document.ts';
import { bracketSays, legsSay } from '../says.ts';
import { type AnswerSheetGiven, cautionsFor } from './given.ts';
import { paragraph, plain, printed, RECKONED, small, strong } from './printed.ts';
import type { Block, SheetPart, Words } from './sheet.ts';

const NONE = '–';

/** Everything that could give first. */
export function checksPart(given: AnswerSheetGiven): SheetPart {
  const { document } = given;
  const basis = SPEED_WORDS[document.design.speed.basis];
  const unit = document.design.speed.unit;
  return {
    id: 'checks',
    heading: 'Checks: what could give first',
    blocks: [
      {
        kind: 'table',
        caption: 'Demand, capacity and wind held to, check by check',
        columns: [
          { head: 'check' },
          { head: 'verdict' },
          { head: 'demand', numeric: true },
          { head: 'capacity', numeric: true },
          { head: 'ratio', numeric: true },
          { head: 'ratio at best', numeric: true },
          { head: 'margin', numeric: true },
          { head: 'holds to, actual gust', unit, numeric: true, voice: 'wind' },
          { head: `holds to, ${basis}`, unit, numeric: true, voice: 'wind' },
          { head: 'governed by' },
        ],
        rows: document.checks.map(checkRow),
      },
      small(
        `Ratio: demand over capacity, every open question answered unfavourably; at best, favourably.${squaredNote(document)} An actual gust is a 3-second gust at ${standardHeight(given.assessment.input.station.units)} in open country, as in a forecast. The other speed is of the type of the design wind.`,
      ),
      { kind: 'list', items: document.checks.map(({ says }) => says) },
      ...cautionsFor('checks', given),
    ],
  };
}

function checkRow(check: CheckAnswer): readonly Words[] {
  const { title, verdict, ratio, ratioRange, margin, demand, capacity, holdsTo } = check;
  const number = (value: number | undefined) => plain(value === undefined ? NONE : ratioFigures(value));
  return [
    strong(sentence(title)),
    { text: VERDICT_WORDS[verdict], mark: verdict },
    plain(demand ? comparedWords(demand, demand.of) : NONE),
    plain(capacity ? comparedWords(capacity, demand?.of) : NONE),
    number(ratio),
    number(ratioRange?.[0]),
    plain(margin === undefined ? NONE : marginFigures(margin)),
    plain(holdsTo ? printed({ value: holdsTo.gust.value, unit: '' }) : NONE, 'wind'),
    plain(holdsTo ? printed({ value: holdsTo.design.value, unit: '' }) : NONE, 'wind'),
    plain(whereSays(check)),
  ];
}

/** Two speeds beside each other have their kind beside them. */
function comparedWords(value: Quantity, of: string | undefined): string {
  return of === 'gust' ? `${printed(value, RECKONED)} nominal gust` : printed(value, RECKONED);
}

/** Pressure grows with the square of speed. */
function squaredNote({ checks }: Answer): string {
  return checks.some(({ demand }) => demand?.of === 'gust')
    ? ' For two gusts it is the square of demand over capacity, as pressure grows with the square of speed.'
    : '';
}

/** With a real minus. */
function marginFigures(margin: number): string {
  return margin < 0 ? `−${ratioFigures(-margin)}` : ratioFigures(margin);
}

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
  const row = (name: string, { shear, moment }: typeof allowable) => [
    strong(name),
    plain(printed({ value: shear.value, unit: '' }, RECKONED)),
    plain(printed({ value: moment.value, unit: '' }, RECKONED)),
  ];
  return {
    id: 'reactions',
    heading: 'Reactions at the base',
    blocks: [
      {
        kind: 'table',
        caption: `Shear and moment at the base, ${design.title}`,
        columns: [
          { head: 'level' },
          { head: 'shear', unit: allowable.shear.unit, numeric: true },
          { head: 'moment', unit: allowable.moment.unit, numeric: true },
        ],
        rows: [
          row(
            stays(withoutWind)
              ? 'Allowable: wind loads and what is present without wind'
              : 'Allowable, as in the wind loads',
            allowable,
          ),
          row('Nominal, for footings', nominal),
          ...(strength === undefined ? [] : [row(strengthRow(withoutWind, assessment), strength)]),
          row('Of this, present without wind (weight off the axis, wire tension)', withoutWind),
        ],
      },
      ...(strength === undefined ? [paragraph(`${design.title} has no separate strength level here.`)] : []),
      small(
        `Computed as a cantilever fixed at the base.${withoutOwnWind ? ' Wind on the tower itself is unknown and not included.' : ''}${supportedAbove ? ' Guys or brackets take a part of this, which is not computed.' : ''}${weight ? ` Total weight: ${printed(weight)}.` : ' Weight on the footing not computed; some weights are not given.'}`,
      ),
      ...(bracket === undefined ? [] : [paragraph(bracket)]),
      ...(legs === undefined ? [] : [paragraph(legsSay(legs, assessment.input.station.units))]),
      ...(foundation === undefined ? [] : foundationBlocks(foundation)),
      ...raisingBlocks(document),
    ],
  };
}

const stays = ({ shear, moment }: Answer['reactions']['withoutWind']) => shear.value !== 0 || moment.value !== 0;

/** Beside the wind, where a method names no other. */
const STEADY_AT_STRENGTH = 1.2;

function strengthRow(
  withoutWind: Answer['reactions']['withoutWind'],
  { input }: AnswerSheetGiven['assessment'],
): string {
  const factor = METHOD_BY_ID[input.method].strengthOfSteady ?? STEADY_AT_STRENGTH;
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
  const said = [
    ...(lowerAt ? [lowerAt.says] : []),
    ...(raising ? [raising.says] : []),
    ...(lowered ? [lowered.says] : []),
  ];
  return [
    ...(said.length === 0 ? [] : titledList('Raising and lowering', said)),
    ...(roomLeft.length === 0
      ? []
      : titledList(
          'Room left',
          roomLeft.map(({ says }) => says),
        )),
    ...(chance === undefined
      ? []
      : [
          { kind: 'subheading', text: 'Chance' } as const,
          chance.length === 0
            ? paragraph(NO_CHANCE)
            : ({ kind: 'list', items: chance.map(({ says }) => says) } as const),
        ]),
  ];
}

const titledList = (text: string, items: readonly string[]): readonly Block[] => [
  { kind: 'subheading', text },
  { kind: 'list', items },
];

/** What was asked for beside the answer: other methods, what changes the ratio, what would help. */
export function besidesParts({ document }: AnswerSheetGiven): readonly SheetPart[] {
  const { spread, sensitivity, remedies } = document;
  return [
    ...(spread === undefined
      ? []
      : [
          {
            id: 'spread',
            heading: 'By other standards',
            blocks: [
              paragraph(spread.says),
              {
                kind: 'table',
                caption: 'The same plan by each standard',
                columns: [
                  { head: 'standard' },
                  { head: 'speed', voice: 'wind' },
                  { head: 'ratio', numeric: true },
                  { head: 'holds to, actual gust', numeric: true, voice: 'wind' },
                  { head: 'wind moment at base', numeric: true },
                ],
                rows: spread.rows.map(({ title, speed, ratio, holdsToGust, moment }) => [
                  strong(title),
                  plain(`${printed(speed)} ${SPEED_WORDS[speed.basis]}`, 'wind'),
                  plain(ratio === undefined ? NONE : ratioFigures(ratio)),
                  plain(holdsToGust ? printed(holdsToGust) : NONE, 'wind'),
                  plain(printed(moment, RECKONED)),
                ]),
              },
            ],
          } satisfies SheetPart,
        ]),
    ...(sensitivity === undefined
      ? []
      : [
          {
            id: 'sensitivity',
            heading: 'What changes the result most',
            blocks: [paragraph(sensitivity.says), { kind: 'list', items: sensitivity.rows.map(({ says }) => says) }],
          } satisfies SheetPart,
        ]),
    ...(remedies === undefined
      ? []
      : [
          {
            id: 'remedies',
            heading: 'What would help',
            blocks:
              remedies.rows.length === 0
                ? [paragraph(remedies.says)]
                : [
                    { kind: 'list', items: remedies.rows.map(({ says }) => says) },
                    ...(remedies.canBeLowered ? [paragraph(LOWERED_BEFORE)] : []),
                  ],
          } satisfies SheetPart,
        ]),
  ];
}
