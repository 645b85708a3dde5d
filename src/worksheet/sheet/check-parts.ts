import { METHOD_BY_ID } from '../../methods/index.ts';
import type { AnswerDocument, CheckDocument } from '../answer-document.ts';
import { NO_CHANCE } from '../chance-document.ts';
import { type DIMENSION_OF_COMPARED, WORDS_FOR_COMPARED } from '../check-words.ts';
import { WORDS_FOR_BASIS, WORDS_FOR_VERDICT } from '../choice-words.ts';
import { figures, type Quantity, ratioFigures, sentence, standardHeight } from '../quantity.ts';
import { LOWERED_BEFORE } from '../remedies-document.ts';
import { bracketSays, legsSay } from '../says.ts';
import { type AnswerSheetGiven, cautionsFor } from './given.ts';
import { paragraph, plain, printed, RECKONED, small, strong } from './printed.ts';
import type { Block, SheetPart, Words } from './sheet.ts';

const NONE = '–';

/** Everything that could give first. */
export function checksPart(given: AnswerSheetGiven): SheetPart {
  const { document } = given;
  const basis = WORDS_FOR_BASIS[document.design.speed.basis];
  const unit = document.design.speed.unit;
  return {
    id: 'links',
    heading: 'Links: what could give first',
    blocks: [
      {
        kind: 'table',
        caption: 'Each link: what is asked of it, what it is good for, and the wind it holds to',
        columns: [
          { head: 'link' },
          { head: 'verdict' },
          { head: 'demand', numeric: true },
          { head: 'capacity', numeric: true },
          { head: 'use', numeric: true },
          { head: 'use at best', numeric: true },
          { head: 'margin', numeric: true },
          { head: 'holds to, actual gust', unit, numeric: true, voice: 'wind' },
          { head: `holds to, ${basis}`, unit, numeric: true, voice: 'wind' },
          { head: 'where' },
        ],
        rows: document.checks.map(checkRow),
      },
      small(
        `Use: demand over capacity, every open question read as it credits the link least; at best, as it credits it most.${squaredNote(document)} An actual gust is a 3-second gust at ${standardHeight(given.assessment.input.station.units)} in the open, as a forecast or a station has it; the other speed is of the kind of the design wind.`,
      ),
      { kind: 'list', items: document.checks.map(({ says }) => says) },
      ...cautionsFor('links', given),
    ],
  };
}

function checkRow(check: CheckDocument): readonly Words[] {
  const { title, verdict, ratio, ratioRange, margin, demand, capacity, holdsTo } = check;
  const number = (value: number | undefined) => plain(value === undefined ? NONE : ratioFigures(value));
  return [
    strong(sentence(title)),
    { text: WORDS_FOR_VERDICT[verdict], mark: verdict },
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

/** Wind presses by the square of its speed. */
function squaredNote({ checks }: AnswerDocument): string {
  return checks.some(({ demand }) => demand?.of === 'gust')
    ? ' Where two gusts are compared it is the square of demand over capacity, as wind presses by the square of its speed.'
    : '';
}

/** With a real minus. */
function marginFigures(margin: number): string {
  return margin < 0 ? `−${ratioFigures(-margin)}` : ratioFigures(margin);
}

function whereSays({ demand, where, along, ratio }: CheckDocument): string {
  if (ratio === undefined) return 'why, stands below';
  const of = demand?.of as keyof typeof DIMENSION_OF_COMPARED | undefined;
  const what = of === undefined || of === 'wind-ratio' ? 'by the wind on the tower itself' : WORDS_FOR_COMPARED[of];
  if (along) return `in bending, ${printed(along)} from the hold`;
  return where ? `${what}, at ${printed(where)}` : what;
}

/** What comes down at the foot, for whoever designs the footing. */
export function reactionsPart({ document, assessment }: AnswerSheetGiven): SheetPart {
  const { legs } = assessment.reactions;
  const { reactions, design, foundation } = document;
  const { allowable, nominal, strength, steady, supportedAbove, withoutOwnWind, weight } = reactions;
  const bracket = bracketSays(assessment);
  const row = (name: string, { shear, moment }: typeof allowable) => [
    strong(name),
    plain(printed({ value: shear.value, unit: '' }, RECKONED)),
    plain(printed({ value: moment.value, unit: '' }, RECKONED)),
  ];
  return {
    id: 'reactions',
    heading: 'Reactions at the foot',
    blocks: [
      {
        kind: 'table',
        caption: `Shear and moment at the foot, ${design.title}`,
        columns: [
          { head: 'level' },
          { head: 'shear', unit: allowable.shear.unit, numeric: true },
          { head: 'moment', unit: allowable.moment.unit, numeric: true },
        ],
        rows: [
          row(
            stays(steady) ? 'Allowable: the ledger’s and what stays without wind' : 'Allowable, as in the ledger',
            allowable,
          ),
          row('Nominal, for footings', nominal),
          ...(strength === undefined ? [] : [row(strengthRow(steady, assessment), strength)]),
          row('Of which stays without wind', steady),
        ],
      },
      ...(strength === undefined ? [paragraph(`${design.title} has no strength level of its own here.`)] : []),
      small(
        `As if nothing but its foot held the tower.${withoutOwnWind ? ' The wind on the tower itself is not known and not in it.' : ''}${supportedAbove ? ' It is held above: guys or brackets take a part of this, which is not worked out.' : ''}${weight ? ` Weight of all: ${printed(weight)}.` : ' Weight on the footing: not shown, since some weights are not given.'}`,
      ),
      ...(bracket === undefined ? [] : [paragraph(bracket)]),
      ...(legs === undefined ? [] : [paragraph(legsSay(legs, assessment.input.station.units))]),
      ...(foundation === undefined ? [] : foundationBlocks(foundation)),
      ...raisingBlocks(document),
    ],
  };
}

const stays = ({ shear, moment }: AnswerDocument['reactions']['steady']) => shear.value !== 0 || moment.value !== 0;

/** Beside the wind, where a method names no other. */
const STEADY_AT_STRENGTH = 1.2;

function strengthRow(steady: AnswerDocument['reactions']['steady'], { input }: AnswerSheetGiven['assessment']): string {
  const factor = METHOD_BY_ID[input.method].strengthOfSteady ?? STEADY_AT_STRENGTH;
  return stays(steady) ? `Strength, with ${figures(factor)} times what stays without wind` : 'Strength';
}

function foundationBlocks({ says, notChecked }: NonNullable<AnswerDocument['foundation']>): readonly Block[] {
  return [
    { kind: 'subheading', text: 'Footing' },
    paragraph(says),
    ...(notChecked.length === 0 ? [] : [paragraph(`Not claimed of it: ${notChecked.join('; ')}.`)]),
  ];
}

function raisingBlocks({ raising, lowered, lowerAt, roomLeft, chance }: AnswerDocument): readonly Block[] {
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

/** What was asked for beside the answer: other methods, what the ratio hangs on, what would help. */
export function besidesParts({ document }: AnswerSheetGiven): readonly SheetPart[] {
  const { spread, sensitivity, remedies } = document;
  return [
    ...(spread === undefined
      ? []
      : [
          {
            id: 'spread',
            heading: 'By the other standards',
            blocks: [
              paragraph(spread.says),
              {
                kind: 'table',
                caption: 'The same plan by each standard',
                columns: [
                  { head: 'standard' },
                  { head: 'speed', voice: 'wind' },
                  { head: 'use', numeric: true },
                  { head: 'holds to, actual gust', numeric: true, voice: 'wind' },
                  { head: 'moment of the wind at foot', numeric: true },
                ],
                rows: spread.rows.map(({ title, speed, ratio, holdsToGust, moment }) => [
                  strong(title),
                  plain(`${printed(speed)} ${WORDS_FOR_BASIS[speed.basis as keyof typeof WORDS_FOR_BASIS]}`, 'wind'),
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
            heading: 'What it hangs on',
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
