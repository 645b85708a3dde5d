import type { StormCardAnswer } from '../../answer/index.ts';
import type { StormCard } from '../../margins/index.ts';
import { sentence, standardHeight } from '../../words/index.ts';
import { bandWords, highestSays, keptWords } from '../storm-document.ts';
import { versionLine } from './closing-parts.ts';
import { list, paragraph, plain, printed, strong, table } from './printed.ts';
import type { Sheet } from './sheet.ts';

type Posture = StormCardAnswer['postures'][number];

const RULES = [
  'Take the forecast gust of the worst hour. Do what its row says in calm air, the day before.',
  'Two people, nobody beneath, power lines farther off than the tower is long.',
  'Already blowing: leave the tower alone. Keep farther away than it is tall.',
  'A forecast without gusts: multiply an hourly mean by 1.75, a 10-minute mean by 1.66.',
  'Ice is not included: lower the tower before it forms.',
];

/** The card for the wall: one page. */
export function stormSheet(card: StormCard, document: StormCardAnswer, version: string): Sheet {
  const { input } = card.assessment;
  const { units } = input.station;
  const parts = document.postures.filter(({ posture }) => posture !== 'flat');
  const titles = new Map(parts.flatMap((posture) => posture.parts).map(({ id, title }) => [id, title]));
  const keeps = (posture: Posture, id: string) => posture.parts.find((part) => part.id === id)?.says ?? '–';
  const blanks = ['Who lowers it', 'Telephone', 'Keep away from it by', 'Posted on'];
  return {
    title: input.title === '' ? 'Antenna tower' : input.title,
    subject: 'Storm card',
    says: [{ text: document.says }],
    units,
    version: versionLine({ version, document }),
    foot: 'Void when anything on the tower changes. The local building code and a licensed engineer decide.',
    parts: [
      {
        id: 'what-to-do',
        heading: 'Before a storm',
        blocks: [
          table(
            `What to do by the forecast 3-second gust, at ${standardHeight(units)} in open country`,
            [
              { head: 'forecast gust', voice: 'wind', of: (row) => strong(bandWords(row, units)) },
              { head: 'what to do', of: (_, index) => plain(document.rows[index]?.says ?? '') },
            ],
            card.rows,
          ),
          ...list(RULES),
          { kind: 'blanks', rows: blanks.map((label) => ({ label })) },
        ],
      },
      {
        id: 'parts',
        heading: 'Part by part',
        blocks: [
          table<string>(
            'Forecast gust up to which each part keeps the margin',
            [
              { head: 'part', of: (id) => strong(sentence(titles.get(id) ?? id)) },
              ...parts.map((posture) => ({
                head: posture.top === undefined ? posture.posture : `top at ${printed(posture.top)}`,
                of: (id: string) => keeps(posture, id),
              })),
            ],
            [...titles.keys()],
          ),
          ...document.postures.map(({ says }) => paragraph(says)),
          ...highestSays(card).map((says) => paragraph(says)),
          paragraph(`${keptWords(card.assessment)} Not included: ${document.notIncluded.join(', ')}.`),
          ...list(document.entryWarnings.map(({ says }) => says)),
          { kind: 'caution', severity: 'standing', says: document.cautions[0]?.says ?? '' },
        ],
      },
    ],
  };
}
