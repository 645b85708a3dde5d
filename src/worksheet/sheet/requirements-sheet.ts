import type { RequirementsAnswer } from '../../answer/index.ts';
import { type Needed, type Requirements, TOWER_KINDS, type TowerKind } from '../../margins/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import { inWords, ratioFigures, SPEED_WORDS, sentence, VERDICT_WORDS } from '../../words/index.ts';
import {
  areaWords,
  askedSays,
  BRACKET_SAYS,
  caseLabel,
  leanSays,
  needWords,
  weightNotGivenSays,
} from '../requirements-document.ts';
import { perCent } from '../says.ts';
import { versionLine } from './closing-parts.ts';
import { list, orNone, paragraph, plain, printed, strong, table } from './printed.ts';
import type { Block, Sheet, SheetPart, Words } from './sheet.ts';

type Candidate = NonNullable<RequirementsAnswer['candidates']>[number];

/** What a manufacturer's answer must say to be compared. */
const PLEASE_STATE = [
  'The rated area or force, and at which height it acts.',
  'Wind speed and its type, standard, exposure and structure class.',
  'Which lines and which mast the rating includes.',
  'The rated weight aloft, and the couple of a mast that the top takes.',
  'The footing by drawing, with its soil, or the forces at the base.',
].join(' ');

/** What to send to manufacturers: one page; towers side by side follow where there are any. */
export function requirementsSheet(requirements: Requirements, document: RequirementsAnswer, version: string): Sheet {
  const { input } = requirements;
  return {
    title: input.title === '' ? 'Antenna tower' : input.title,
    subject: 'Tower inquiry',
    says: [{ text: askedSays(requirements) }],
    units: input.station.units,
    version: versionLine({ version, document }),
    foot: 'Compares entered numbers with ratings. The local building code and a licensed engineer decide.',
    parts: [stationPart(requirements, document), ratingsPart(requirements, document), ...candidatesPart(document)],
  };
}

function stationPart({ input, cases }: Requirements, { loads, height, withCables }: RequirementsAnswer): SheetPart {
  const { site, station, wanted, method } = input;
  const { units, tower } = station;
  const { title, basis, ground } = METHOD_BY_ID[method];
  const wind = `${inWords(site.speed, 'speed', units)} ${SPEED_WORDS[site.basis ?? basis]}, ${title}`;
  const upwind = ground.counts ? `, ${ground.field} ${site.exposure}` : '';
  const facts: readonly { readonly label: string; readonly words: Words }[] = [
    { label: 'Site wind', words: plain(`${wind}${upwind}`, 'wind') },
    ...cases
      .filter(({ wind: blowing }) => blowing === 'wished')
      .slice(0, 1)
      .map(({ speed, basis: kind }) => ({
        label: 'Wished wind',
        words: plain(`${inWords(speed, 'speed', units)} ${SPEED_WORDS[kind]}`, 'wind'),
      })),
    { label: 'Top of the tower', words: plain(inWords(tower.top, 'length', units), 'given') },
    { label: 'Rating acts at', words: plain(printed(height)) },
    { label: 'Lines in the rating', words: plain(withCables ?? 'none') },
    { label: 'Margin kept', words: plain(perCent(wanted.margin)) },
  ];
  return {
    id: 'station',
    heading: 'What goes up',
    blocks: [
      { kind: 'facts', rows: facts },
      table<(typeof loads)[number]>(
        'Loads; areas are effective, largest over wind directions',
        [
          { head: 'load', of: ({ name, later }) => strong(later ? `${name} (later)` : name) },
          { head: 'from', numeric: true, of: ({ low }) => printed(low) },
          { head: 'to', numeric: true, of: ({ high }) => printed(high) },
          { head: 'effective area', numeric: true, of: ({ area }) => printed(area) },
          { head: 'weight', numeric: true, of: ({ weight }) => orNone(weight, printed) },
        ],
        loads,
      ),
    ],
  };
}

function ratingsPart(requirements: Requirements, document: RequirementsAnswer): SheetPart {
  const { cases, input } = requirements;
  const { units } = input.station;
  const [first] = document.cases;
  const titles = cases.map(caseLabel);
  const rows = cases.flatMap(({ force, moment }, number) =>
    kindsOf(force).map((kind) => ({ number, force: ofKind(force, kind), moment: ofKind(moment, kind) })),
  );
  const besides = [...new Set([...document.cases.flatMap(({ mast }) => mast ?? []), ...cases.flatMap(leanSays)])];
  const weightless = [...new Set(document.cases.flatMap(({ weightNotGiven }) => weightNotGiven))];
  const noWeight = weightless.length === 0 ? [] : [weightNotGivenSays(weightless)];
  return {
    id: 'ratings',
    heading: 'Any one row is enough',
    blocks: [
      table<NonNullable<typeof first>['quotes'][number]>(
        'Effective area that a rating must state at least',
        [
          { head: 'standard', of: ({ title }) => strong(title) },
          { head: 'wind', voice: 'wind', of: ({ speed }) => `${printed(speed)} ${SPEED_WORDS[speed.basis]}` },
          {
            head: 'ground, class',
            of: ({ exposure, terrain, riskCategory }) =>
              [exposure ?? terrain ?? '–', ...(riskCategory ? [riskCategory] : [])].join(', '),
          },
          ...cases.map(({ quotes }, number) => ({
            head: titles[number] ?? '',
            // What is said by kind of tower is a line of words, which may break.
            numeric: !requirements.anyTower,
            of: (_: unknown, row: number) => orNone(quotes[row]?.area, (area) => areaWords(area, units)),
          })),
        ],
        first?.quotes ?? [],
      ),
      table<(typeof rows)[number]>(
        'The same as forces, allowable level, with the wind on the tower',
        [
          { head: 'for', of: ({ number }) => strong(titles[number] ?? '') },
          {
            head: 'force there',
            numeric: true,
            of: ({ force }) => orNone(force, (it) => needWords(it, 'force', units)),
          },
          {
            head: 'moment at the base',
            numeric: true,
            of: ({ moment }) => orNone(moment, (it) => needWords(it, 'moment', units)),
          },
          {
            head: 'weight aloft',
            numeric: true,
            of: ({ number }) => orNone(document.cases[number]?.weight, printed),
          },
        ],
        rows,
      ),
      ...(requirements.anyTower ? [paragraph(BRACKET_SAYS)] : []),
      ...[...besides, ...document.assumed, ...noWeight].map((says) => paragraph(says)),
      paragraph(strong('Please state: '), PLEASE_STATE),
      paragraph(`Not included: ${document.notIncluded.join(', ')}.`),
      ...list(document.entryWarnings.map(({ says }) => says)),
      ...document.cautions.map(({ says }): Block => ({ kind: 'caution', severity: 'standing', says })),
    ],
  };
}

/** Each kind of tower for which something is needed; one that is none where the plan gives the tower. */
function kindsOf(needed: Needed | undefined): readonly (TowerKind | undefined)[] {
  const { byKind } = needed ?? {};
  return byKind === undefined ? [undefined] : TOWER_KINDS.filter((kind) => byKind[kind] !== undefined);
}

function ofKind(needed: Needed | undefined, kind: TowerKind | undefined): Needed | undefined {
  const ends = kind && needed?.byKind?.[kind];
  return needed === undefined || ends === undefined ? needed : { ...needed, byKind: { [kind as TowerKind]: ends } };
}

function candidatesPart({ candidates, cases }: RequirementsAnswer): readonly SheetPart[] {
  if (candidates === undefined) return [];
  const ranked = candidates.toSorted((a, b) => a.rank - b.rank);
  const last = cases.filter(({ wind }) => wind === 'site').length - 1;
  const shown = (candidate: Candidate) => candidate.cases[last];
  const partOf = (candidate: Candidate, id: string) => shown(candidate)?.parts.find((part) => part.id === id);
  const titles = new Map(ranked.flatMap((each) => shown(each)?.parts ?? []).map(({ id, title }) => [id, title]));
  const verdict = (candidate: Candidate): Words => {
    const { parts = 0, of = 0, verdict: said = 'open' } = shown(candidate)?.decided ?? {};
    return { text: `${VERDICT_WORDS[said]}, ${parts} of ${of} parts decided`, mark: said };
  };
  return [
    {
      id: 'candidates',
      heading: 'Towers side by side',
      blocks: [
        table<Candidate>(
          'The towers, the best first, in the wind of the site with all loads',
          [
            { head: 'tower', of: ({ name }) => strong(name) },
            { head: 'verdict', of: verdict },
            {
              head: 'weakest holds to, actual gust',
              numeric: true,
              voice: 'wind',
              of: (each) => orNone(shown(each)?.holdsTo, printed),
            },
            {
              head: 'room left at the top',
              numeric: true,
              of: (each) => orNone(shown(each)?.roomLeft[0]?.area, printed),
            },
          ],
          ranked,
        ),
        table<string>(
          'Ratio of each part',
          [
            { head: 'part', of: (id) => strong(sentence(titles.get(id) ?? id)) },
            ...ranked.map((each) => ({
              head: each.name,
              numeric: true,
              of: (id: string) =>
                orNone(partOf(each, id), ({ ratio, verdict: of = 'open' }) => ({
                  text: ratio === undefined ? VERDICT_WORDS[of] : ratioFigures(ratio),
                  mark: of,
                })),
            })),
          ],
          [...titles.keys()],
        ),
        ...ranked.flatMap((each) => [
          paragraph(strong(`${each.name}: `), shown(each)?.says ?? ''),
          ...list([...(shown(each)?.toFindOut ?? []), ...each.entryWarnings.map(({ says }) => says)]),
        ]),
      ],
    },
  ];
}
