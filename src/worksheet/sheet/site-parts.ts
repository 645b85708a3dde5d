import type { Answer } from '../../answer/index.ts';
import { withArticle } from '../../foundation/index.ts';
import { isMeanBasis } from '../../wind/index.ts';
import { figures, GROUND_WORDS, inWords, SPEED_WORDS, standardHeight } from '../../words/index.ts';
import { type AnswerSheetGiven, cautionsFor } from './given.ts';
import { list, paragraph, plain, printed, RECKONED, small, table } from './printed.ts';
import type { Block, SheetPart, Words } from './sheet.ts';

interface Fact {
  readonly label: string;
  readonly words: Words;
  readonly note?: string;
}

/** The wind the tower is checked for, and every factor of it. */
export function designPart(given: AnswerSheetGiven): SheetPart {
  const { document, assessment } = given;
  const { design } = document;
  const { site, station } = assessment.input;
  const { units } = station;
  const basisGiven = site.basis === undefined ? 'type not given, assumed' : '';
  const entered = inWords(site.speed, 'speed', units, RECKONED);
  const facts: Fact[] = [
    { label: 'Standard for the tower', words: plain(design.title, 'given') },
    {
      label: 'Wind speed as entered',
      words: plain(`${entered} ${SPEED_WORDS[site.basis ?? design.speed.basis]}`, 'wind'),
      ...(basisGiven === '' ? {} : { note: basisGiven }),
    },
    {
      label: 'Design wind speed as the standard defines it',
      words: plain(`${printed(design.speed, RECKONED)} ${SPEED_WORDS[design.speed.basis]}`, 'wind'),
      note: `at ${standardHeight(units)} in open country`,
    },
    ...levels(design),
    ...(site.returnYears === undefined
      ? []
      : [{ label: 'Return period', words: plain(`${site.returnYears} years`, 'given') }]),
    {
      label: 'Risk category',
      words: plain(design.riskCategory, 'given'),
      ...(site.riskCategory === undefined ? { note: 'not given, II assumed' } : {}),
    },
    groundFact(design),
    { label: 'Direction factor', words: plain(figures(design.directionFactor)), ...inForce(design) },
    { label: 'Importance factor', words: plain(figures(design.importance)) },
    {
      label: 'Ground elevation factor',
      words: plain(figures(design.elevationFactor)),
      note:
        site.groundElevation === 0
          ? 'ground at sea level, given or assumed'
          : `ground ${inWords(site.groundElevation, 'length', units, RECKONED)} above sea level`,
    },
    { label: 'Topographic factor', words: plain(topographyWords(document)), note: hillNote(given) },
    { label: 'Gust effect factor', words: plain(figures(design.gustEffect)), note: gustNote(given) },
    {
      label: 'Level of all forces',
      words: plain(`allowable: ${figures(design.level)} × the wind force of the standard`),
    },
    iceFact(given),
  ];
  return {
    id: 'design',
    heading: 'Design criteria',
    blocks: [{ kind: 'facts', rows: facts }, ...hillBlocks(document), ...cautionsFor('design', given)],
  };
}

/** The design wind at the level it is not given at. */
function levels({ speed, speedLevels }: Answer['design']): readonly Fact[] {
  if (!speedLevels) return [];
  const facts = [
    { level: 'strength', basis: 'gust3-strength', label: 'The same at strength level' },
    { level: 'nominal', basis: 'gust3-nominal', label: 'The same at nominal level' },
  ] as const;
  return facts
    .filter(({ basis }) => basis !== speed.basis)
    .map(({ level, basis, label }) => ({
      label,
      words: plain(`${printed(speedLevels[level])} ${SPEED_WORDS[basis]}`, 'wind'),
      note: 'nominal gust = strength-level gust × √0.6, IBC 1609.3.1',
    }));
}

function groundFact({ exposure, terrain, title }: Answer['design']): Fact {
  const ground = exposure ?? terrain;
  const label = terrain === undefined ? 'Exposure' : 'Terrain';
  if (ground === undefined) return { label, words: plain('not given'), note: `${title} does not use it` };
  return { label, words: plain(`${ground}: ${GROUND_WORDS[ground]}`, 'given') };
}

function inForce({ directionFactor, directionFactorInForce }: Answer['design']): { readonly note?: string } {
  return directionFactor === 1
    ? {}
    : { note: directionFactorInForce === 1 ? 'included in the pressure' : 'on the force, not in the pressure' };
}

function topographyWords({ wind }: Answer): string {
  const factors = wind.map(({ topographicFactor }) => topographicFactor);
  const [highest, lowest] = [wind.at(0), wind.at(-1)];
  if (!highest || !lowest) return '1';
  if (factors.every((factor) => factor === factors[0])) return figures(highest.topographicFactor);
  return `${figures(lowest.topographicFactor)} at ${printed(lowest.height)} to ${figures(highest.topographicFactor)} at ${printed(highest.height)}`;
}

function hillNote({ assessment, document }: AnswerSheetGiven): string {
  const { hill, topographicFactor } = assessment.input.site;
  if (topographicFactor !== undefined) return 'factor as entered';
  if (!hill) return 'no hill given, level ground assumed';
  const { units } = assessment.input.station;
  const long = (value: number) => inWords(value, 'length', units, RECKONED);
  const shape = hill.shape.replace('-', ' ');
  return `${shape} ${long(hill.height)} high, ${long(hill.halfLength)} from the crest to half-way down; the tower ${long(hill.distance)} ${hill.side} of the crest${document.hill && !document.hill.counts ? '; it does not count' : ''}`;
}

function gustNote({ assessment }: AnswerSheetGiven): string {
  const { frequency } = assessment.input.station.tower;
  const { frequency: assumed } = assessment.model.input.station.tower;
  if (frequency === undefined) {
    const taken = assumed === undefined ? '' : `, ${inWords(assumed, 'frequency', 'si')} assumed`;
    return `natural frequency not given${taken}`;
  }
  return `natural frequency ${inWords(frequency, 'frequency', 'si')}`;
}

function iceFact({ assessment, document }: AnswerSheetGiven): Fact {
  const { ice } = assessment.input.site;
  const { units } = assessment.input.station;
  if (!ice) return { label: 'Ice', words: plain('not checked'), note: 'none given' };
  const check = document.checks.find(({ id }) => id === 'ice');
  return {
    label: 'Ice',
    words: plain(
      `${inWords(ice.thickness, 'diameter', units, RECKONED)} thick with an actual gust of ${inWords(ice.gust, 'speed', units, RECKONED)}`,
      'given',
    ),
    ...(check ? { note: 'see the checks with ice' } : {}),
  };
}

function hillBlocks({ hill }: Answer): readonly Block[] {
  if (!hill) return [];
  const conditions = list(hill.conditions.map(({ says }) => says));
  return [{ kind: 'subheading', text: 'The hill' }, paragraph(hill.says), ...conditions];
}

/** The wind by height. */
export function windPart({ document }: AnswerSheetGiven): SheetPart {
  const { design, wind } = document;
  const [first] = wind;
  // A factor of exposure by EN 1991-1-4 holds the gusts: out of a mean comes a peak.
  const peak = isMeanBasis(design.speed.basis);
  const basis = peak ? 'peak gust' : SPEED_WORDS[design.speed.basis];
  return {
    id: 'wind',
    heading: 'Wind by height',
    blocks: [
      table<(typeof wind)[number]>(
        `Wind by height above the ground, ${design.title}`,
        [
          { head: 'height', numeric: true, of: ({ height }) => printed(height) },
          { head: 'exposure coefficient', numeric: true, of: (row) => figures(row.exposureCoefficient) },
          { head: 'topographic factor', numeric: true, of: (row) => figures(row.topographicFactor) },
          {
            head: `speed there, ${basis}`,
            unit: first?.speed.unit ?? '',
            numeric: true,
            voice: 'wind',
            of: ({ speed }) => figures(speed.value),
          },
          {
            head: 'velocity pressure',
            unit: first?.pressure.unit ?? '',
            numeric: true,
            voice: 'wind',
            of: ({ pressure }) => figures(pressure.value),
          },
        ],
        wind,
      ),
      small(
        `Speed there: the design wind times the root of the factors at its height. It is ${withArticle(basis)}, ${peak ? 'since the exposure factor includes the gusts' : 'as the design wind is'}.`,
      ),
    ],
  };
}

/** Ice by height, and what of it lies on what. */
export function icePart({ document }: AnswerSheetGiven): readonly SheetPart[] {
  const { ice } = document;
  if (!ice) return [];
  const thickness = ice.byHeight[0]?.thickness.unit ?? '';
  return [
    {
      id: 'ice',
      heading: 'Ice',
      blocks: [
        table<(typeof ice.byHeight)[number]>(
          'Thickness of ice by height, and the weight of all ice above',
          [
            { head: 'height', numeric: true, of: ({ height }) => printed(height) },
            { head: 'thickness', unit: thickness, numeric: true, of: (row) => figures(row.thickness.value, RECKONED) },
            {
              head: 'weight above',
              unit: ice.weight.unit,
              numeric: true,
              of: ({ weightAbove }) => figures(weightAbove.value, RECKONED),
            },
          ],
          ice.byHeight,
        ),
        table<(typeof ice.rows)[number]>(
          'Weight of ice by what it lies on',
          [
            { head: 'on', of: ({ name }) => plain(name, 'given') },
            { head: 'from', numeric: true, of: ({ low }) => printed(low) },
            { head: 'to', numeric: true, of: ({ high }) => printed(high) },
            {
              head: 'thickness in its middle',
              unit: thickness,
              numeric: true,
              of: (row) => figures(row.thickness.value, RECKONED),
            },
            {
              head: 'weight',
              unit: ice.weight.unit,
              numeric: true,
              of: ({ weight }) => figures(weight.value, RECKONED),
            },
          ],
          ice.rows,
        ),
        small(`${ice.says} Weight of a round member: density × π × thickness × (diameter + thickness) × length.`),
      ],
    },
  ];
}
