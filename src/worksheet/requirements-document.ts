import { type EntryWarning, type RequirementsAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import {
  type Assessment,
  areasOf,
  type MastAnswer,
  type Needed,
  type NeededAt,
  type QuotedRequirement,
  type QuotedWind,
  type RequirementCase,
  type Requirements,
  TOWER_KINDS,
} from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { isTerrain } from '../wind/index.ts';
import {
  ASSUMPTION_WORDS,
  atLeastInWords,
  figures,
  groundNamed,
  inWords,
  listed,
  missingSentences,
  NOT_COVERED,
  type PlanHash,
  ratioFigures,
  SPEED_WORDS,
  sentence,
  weighedIn,
} from '../words/index.ts';
import type { Traced } from './additions-document.ts';
import { roomLeftDocument } from './answer-document.ts';
import { partDocuments } from './part-document.ts';
import { quantity } from './quantity.ts';
import { ENGINEER_DECIDES, headlineSays, mainCheck, perCent, tracedTo } from './says.ts';

type CaseAnswer = RequirementsAnswer['cases'][number];
type QuoteAnswer = CaseAnswer['quotes'][number];
type NeededAnswer = NonNullable<CaseAnswer['force']>;
type CandidateAnswer = NonNullable<RequirementsAnswer['candidates']>[number];

/** A tower to choose, in each wind and with each set of loads. */
export interface ComparedCandidate {
  readonly name: string;
  readonly rank: number;
  readonly cases: readonly (Pick<RequirementCase, 'wind' | 'loads'> & { readonly assessment: Assessment })[];
  readonly planHash?: PlanHash;
  readonly entryWarnings: readonly EntryWarning[];
}

const CAUTIONS = [
  ENGINEER_DECIDES,
  {
    code: 'check-the-rating',
    says: 'When a manufacturer answers, enter the rating as stated and check the whole plan. Footing, mast and rotator have ratings of their own.',
  },
];

const CASE_WORDS = {
  wind: { site: 'the wind of the site', wished: 'the wished wind' },
  loads: { now: 'the loads of now', 'with-later': 'all loads, later ones included' },
} as const;

const KIND_WORDS = { lattice: 'lattice', tapered: 'tapered lattice', pole: 'pole' } as const;

/** "Loads of now, 115 mph strength-level gust". */
export function caseTitle({ loads, wind, speed, basis }: RequirementCase, units: UnitSystem): string {
  const blowing = `${inWords(speed, 'speed', units)} ${SPEED_WORDS[basis]}`;
  const said = wind === 'wished' ? ', the wished wind' : '';
  return `${loads === 'now' ? 'Loads of now' : 'With later loads'}, ${blowing}${said}`;
}

/** "now, site wind": of a column whose winds are told elsewhere. */
export function caseLabel({ loads, wind }: Pick<RequirementCase, 'loads' | 'wind'>): string {
  return `${loads === 'now' ? 'now' : 'with later'}, ${wind} wind`;
}

/** What to ask for, in the reader's units. */
export function requirementsDocument(
  requirements: Requirements,
  candidates: readonly ComparedCandidate[],
  entryWarnings: readonly EntryWarning[],
  { version, planHash }: Traced = {},
): RequirementsAnswer {
  const { input, height, cases } = requirements;
  const { station, wanted } = input;
  const { units } = station;
  return told<RequirementsAnswer>({
    says: requirementsSays(requirements, candidates),
    margin: wanted.margin,
    height: quantity(height, 'length', units),
    above: quantity(height - station.tower.top, 'length', units),
    withCables: linesWords(requirements),
    assumed: assumedSays(requirements),
    loads: loadsOf(requirements),
    cases: cases.map((each) => caseDocument(requirements, each)),
    candidates: candidates.length === 0 ? undefined : candidates.map((each) => candidateDocument(each)),
    notIncluded: notIncluded(requirements),
    entryWarnings,
    cautions: CAUTIONS,
    planHash,
    version,
  });
}

function loadsOf({ input }: Requirements): RequirementsAnswer['loads'] {
  const { station, later = [] } = input;
  const { units } = station;
  const all = [...station.loads, ...later];
  const { items } = areasOf({ ...input, station: { ...station, loads: all } }, true, false);
  return all.map(({ name, at, low, high, count, weight }) =>
    told<RequirementsAnswer['loads'][number]>({
      name,
      later: later.some((each) => each.at === at) ? true : undefined,
      low: quantity(low, 'length', units),
      high: quantity(high, 'length', units),
      area: quantity(items.find((item) => item.at === at)?.worst ?? 0, 'area', units),
      weight: quantity(weight === undefined ? undefined : weight * count, 'weight', units),
    }),
  );
}

function caseDocument(requirements: Requirements, each: RequirementCase): CaseAnswer {
  const { units } = requirements.input.station;
  return told<CaseAnswer>({
    wind: each.wind,
    loads: each.loads,
    speed: { ...quantity(each.speed, 'speed', units), basis: each.basis },
    says: caseSays(requirements, each),
    force: each.force && neededDocument(each.force, 'force', units),
    moment: each.moment && neededDocument(each.moment, 'moment', units),
    mast: each.mast && mastSays(each.mast, units),
    weight: quantity(each.weight, 'weight', units),
    weightNotGiven: each.weightNotGiven.map((pointer) => weighedIn(pointer, requirements.input)),
    quotes: each.quotes.map((quote) => quoteDocument(requirements, quote)),
  });
}

function neededDocument(
  { value, byKind, governs }: Needed,
  dimension: 'area' | 'force' | 'moment',
  units: UnitSystem,
): NeededAnswer {
  const at = (each: number) => quantity(each, dimension, units);
  const kinds = TOWER_KINDS.flatMap((kind) => {
    const ends = byKind?.[kind];
    return ends?.every(Number.isFinite) ? [[kind, { least: at(ends[0]), most: at(ends[1]) }] as const] : [];
  });
  return told<NeededAnswer>({
    value: Number.isFinite(value) ? at(value) : undefined,
    byKind: kinds.length === 0 ? undefined : Object.fromEntries(kinds),
    governs: governs && governsWords(governs, units),
    steps: dimension === 'area' && governs && Number.isFinite(value) ? stepsOf(governs, units) : undefined,
  });
}

function stepsOf({ of, demand, own, perArea, arm }: NeededAt, units: UnitSystem): NonNullable<NeededAnswer['steps']> {
  const dimension = of === 'moment' ? 'moment' : 'force';
  return {
    demand: quantity(demand, dimension, units),
    own: quantity(own, dimension, units),
    perArea: quantity(perArea, 'pressure', units),
    arm: of === 'moment' ? quantity(arm, 'length', units).value : arm,
  };
}

function governsWords({ of, place, height }: NeededAt, units: UnitSystem): string {
  const mode = of === 'moment' ? 'bending' : 'shear';
  return place === 'base' ? `${mode} at the base` : `${mode} at ${inWords(height, 'length', units)}`;
}

function quoteDocument(requirements: Requirements, quote: QuotedRequirement): QuoteAnswer {
  const { units } = requirements.input.station;
  const { method, speed, basis = METHOD_BY_ID[method].basis, exposure, riskCategory } = quote.wind;
  return told<QuoteAnswer>({
    method,
    title: METHOD_BY_ID[method].title,
    speed: { ...quantity(speed, 'speed', units), basis },
    exposure: undefined,
    terrain: undefined,
    ...(exposure === undefined ? {} : groundNamed(exposure)),
    riskCategory,
    area: quote.area && neededDocument(quote.area, 'area', units),
    force: quantity(quote.force, 'force', units),
    top: topSays(quote, units),
    says: quoteSays(requirements, quote),
  });
}

/** "90 mph nominal gust, ANSI/TIA-222-G, exposure C, class II". */
export function windWords({ method, speed, basis, exposure, riskCategory }: QuotedWind, units: UnitSystem): string {
  const { title, basis: own, ground, classMatters } = METHOD_BY_ID[method];
  const upwind =
    exposure === undefined
      ? ground.counts
        ? [`any ${ground.field}`]
        : []
      : [`${isTerrain(exposure) ? 'terrain' : 'exposure'} ${exposure}`];
  const category = riskCategory === undefined ? (classMatters ? ['any class'] : []) : [`class ${riskCategory}`];
  return [`${inWords(speed, 'speed', units)} ${SPEED_WORDS[basis ?? own]}`, title, ...upwind, ...category].join(', ');
}

/** "2 ft above a 45 ft top and includes 5 lines of 0.4 in, singly". */
function placeWords(requirements: Requirements): string {
  const { input, height } = requirements;
  const { tower, units } = input.station;
  const [above, top] = [height - tower.top, tower.top].map((value) => inWords(value, 'length', units));
  const place = height - tower.top < 1e-6 ? `at a ${top} top` : `${above} above a ${top} top`;
  const lines = linesWords(requirements);
  return `${place}${lines === undefined ? '' : ` and includes ${lines}`}`;
}

const LAID_WORDS = { single: 'singly', flat: 'flat in a row', bundle: 'in one bundle', inside: 'inside', ladder: '' };

function linesWords({ withCables, input }: Requirements): string | undefined {
  if (withCables === undefined) return undefined;
  const { count, diameter, laid } = withCables;
  const size = inWords(diameter, 'diameter', input.station.units);
  const how = laid === undefined ? '' : `, ${LAID_WORDS[laid]}`;
  return count === 1 ? `1 line of ${size}` : `${count} lines of ${size}${how}`;
}

/** "at least 14.2 ft²", or by kind of tower. */
export function areaWords({ value, byKind }: Needed, units: UnitSystem): string {
  const most = (each: number) => (Number.isFinite(each) ? atLeastInWords(each, 'area', units) : 'no area is enough');
  if (byKind === undefined) return value === 0 ? 'any area' : most(value);
  return TOWER_KINDS.flatMap((kind) => {
    const ends = byKind[kind];
    return ends ? [`${KIND_WORDS[kind]} ${most(ends[1])}`] : [];
  }).join(', ');
}

/** "At 90 mph nominal gust, ANSI/TIA-222-G, exposure C: at least 14.2 ft² effective." */
function quoteSays({ input }: Requirements, { area, wind }: QuotedRequirement): string {
  const { units } = input.station;
  const said =
    area === undefined
      ? 'no area can be asked for'
      : TOWER_KINDS.flatMap((kind) => {
          const ends = area.byKind?.[kind];
          return ends === undefined ? [] : [`${KIND_WORDS[kind]} ${bracketWords(ends, units)}`];
        })
          .map((words, index) => (index === 0 ? words : sentence(words)))
          .join('. ') || enoughWords(area.value, units);
  return `At ${windWords(wind, units)}: ${said}.`;
}

function enoughWords(area: number, units: UnitSystem): string {
  if (area === 0) return 'any area is enough';
  return Number.isFinite(area) ? `at least ${atLeastInWords(area, 'area', units)} effective` : 'no area is enough';
}

function bracketWords([least, most]: readonly [number, number], units: UnitSystem): string {
  const [lowest, highest] = [least, most].map((each) => enoughWords(each, units));
  return lowest === highest ? `${highest}` : `${highest} (slender: ${lowest?.replace(/at least | effective/g, '')})`;
}

function topSays({ areaForTop }: QuotedRequirement, units: UnitSystem): string | undefined {
  if (areaForTop === undefined) return undefined;
  return Number.isFinite(areaForTop)
    ? `For the couple of the mast at the top ${atLeastInWords(areaForTop, 'area', units)} are needed, or the manufacturer’s word.`
    : 'No area shows that the top takes the couple of the mast. Ask the manufacturer.';
}

/** What the top must take of the mast. */
export function mastSays({ atBearing, atFoot, clampMoment }: MastAnswer, units: UnitSystem): string {
  const force = (value: number) => atLeastInWords(value, 'force', units);
  if (atBearing !== undefined) {
    return `The mast loads the top as a couple: ${force(atBearing)} at its bearing, ${force(atFoot)} at its lower end.`;
  }
  const moment = clampMoment === undefined ? '' : `, and ${atLeastInWords(clampMoment, 'moment', units)} of moment`;
  return `The mast loads what clamps its lower end with ${force(atFoot)}${moment}.`;
}

/** A force or a moment that is needed, or by kind of tower from its least to its most own drag. */
export function needWords({ value, byKind }: Needed, dimension: 'force' | 'moment', units: UnitSystem): string {
  const say = (each: number) => (Number.isFinite(each) ? atLeastInWords(each, dimension, units) : 'no limit');
  if (byKind === undefined) return say(value);
  return listed(
    TOWER_KINDS.flatMap((kind) => {
      const ends = byKind[kind];
      if (ends === undefined) return [];
      const [least = '', most = ''] = ends.map(say);
      if (least === most) return [`${kind} ${most}`];
      const unit = most.slice(most.lastIndexOf(' '));
      // One unit is enough for both.
      return [`${kind} ${least.endsWith(unit) ? least.slice(0, -unit.length) : least} to ${most}`];
    }),
  );
}

/** What the plan leaves out, each with what is assumed in its place. */
function assumedSays({ assumptions, input }: Requirements): readonly string[] {
  return assumptions.map(({ of, name = '', readings: [worst] }) =>
    ASSUMPTION_WORDS[of].assumed(name, input.station.units, typeof worst?.value === 'number' ? worst.value : undefined),
  );
}

/** Of the force on the braces of a tapering section, a force at the height of the rating makes so small a share or less. */
const LEANING = 0.6;

/** Why a force is so large where legs lean together; nothing where they do not. */
export function leanSays({ force }: RequirementCase): readonly string[] {
  const { of, arm = 1 } = force?.governs ?? {};
  if (of !== 'shear' || arm > LEANING) return [];
  return [
    'Leaning legs take most of a force near their apex, the braces little. Ask for an area with its wind instead.',
  ];
}

/** The figures of one wind and one set of loads. */
function caseSays(requirements: Requirements, each: RequirementCase): string {
  const { input, height } = requirements;
  const { units } = input.station;
  const { force, moment } = each;
  if (force === undefined) {
    return `${caseTitle(each, units)}: nothing is compared. ${missingSentences(['/tower/supportedAt'], input)}`;
  }
  const at = `Force at ${inWords(height, 'length', units)}, wind on tower included: ${needWords(force, 'force', units)}.`;
  const base = moment === undefined ? '' : ` Moment at the base: ${needWords(moment, 'moment', units)}.`;
  return [`${caseTitle(each, units)}; forces at the allowable level. ${at}${base}`, ...leanSays(each)].join(' ');
}

function requirementsSays(requirements: Requirements, candidates: readonly ComparedCandidate[]): string {
  const shape = requirements.anyTower ? ` ${BRACKET_SAYS}` : '';
  const best = candidates.find(({ rank }) => rank === 1);
  const first = best && candidates.length > 1 ? ` Of ${candidates.length} towers "${best.name}" comes first.` : '';
  return `${askedSays(requirements)}${shape}${first}`;
}

export const BRACKET_SAYS =
  'Shape of the tower not given: a bracket by kind is used. It is narrow in winds at least as strong as the site wind.';

/** The one rating to ask for that is nearest to the plan: its own standard and wind, with all that is to come. */
export function askedSays(requirements: Requirements): string {
  const { cases, input } = requirements;
  const whole = cases.filter(({ wind }) => wind === 'site').at(-1);
  const quote = whole?.quotes.find(({ area }) => area !== undefined && Number.isFinite(area.value));
  if (!quote || !whole) return `No area can be asked for. ${cases[0] ? caseSays(requirements, cases[0]) : ''}`;
  const loads = CASE_WORDS.loads[whole.loads];
  return `For ${loads}, ask for this rating or any other listed. ${quoteSays(requirements, quote)} It acts ${placeWords(requirements)}. A ${perCent(input.wanted.margin)} margin is kept.`;
}

function notIncluded({ input, comparedFrom, withCables }: Requirements): readonly string[] {
  const { tower, cables } = input.station;
  const { site } = input;
  return [
    ...(site.ice === undefined ? ['ice (not given)'] : ['ice']),
    'footing, mast, bearing and rotator',
    ...(comparedFrom > tower.foot ? ['the tower below its highest support, and its guys or brackets'] : []),
    ...(cables.length > 0 && withCables === undefined ? ['lines in the rating: the area has to do for them'] : []),
    ...NOT_COVERED,
  ];
}

function candidateDocument({ name, rank, cases, planHash, entryWarnings }: ComparedCandidate): CandidateAnswer {
  return told<CandidateAnswer>({
    name,
    rank,
    planHash,
    cases: cases.map(({ wind, loads, assessment }) => {
      const { units } = assessment.input.station;
      const { verdict, decided, weakest, checks } = assessment;
      const gust = checks.find(({ id }) => id === weakest)?.result?.holdsTo?.gust;
      return told<CandidateAnswer['cases'][number]>({
        wind,
        loads,
        verdict,
        decided,
        parts: partDocuments(assessment),
        governs: mainCheck(assessment).id,
        weakest,
        says: headlineSays(assessment),
        holdsTo: quantity(gust, 'speed', units),
        roomLeft: roomLeftDocument(assessment),
        toFindOut: openSays(assessment),
      });
    }),
    entryWarnings,
  });
}

/** What each open part waits for. */
function openSays(assessment: Assessment): readonly string[] {
  const open = partDocuments(assessment).filter(({ verdict }) => verdict === 'open');
  const worst = (ratio: number | undefined) => (ratio === undefined ? '' : `${ratioFigures(ratio)} at worst, `);
  return open.map(({ title, ratio, says }) => `${sentence(title)}: ${worst(ratio)}${says}`);
}

export const weightNotGivenSays = (names: readonly string[]) => `Weight not given, so not included: ${listed(names)}.`;

function weightSays({ value, unit }: CaseAnswer['weight'], notGiven: readonly string[]): string {
  const missing = notGiven.length === 0 ? '' : ` ${weightNotGivenSays(notGiven)}`;
  return value === 0 ? missing.trim() : `Weight aloft: ${figures(value)} ${unit}.${missing}`;
}

/** What to ask for as plain text. */
export function requirementsText(
  requirements: Requirements,
  candidates: readonly ComparedCandidate[],
  entryWarnings: readonly EntryWarning[],
  traced: Traced = {},
): string {
  const document = requirementsDocument(requirements, candidates, entryWarnings, traced);
  const { title } = requirements.input;
  const towers = (document.candidates ?? []).toSorted((a, b) => a.rank - b.rank);
  return [
    ...(title === '' ? [] : [title, '']),
    document.says,
    ...document.cases.flatMap(({ says, mast, quotes, weight, weightNotGiven }) => [
      '',
      says,
      ...(mast === undefined ? [] : [mast]),
      weightSays(weight, weightNotGiven),
      ...quotes.map((quote) => `- ${quote.says}${quote.top === undefined ? '' : ` ${quote.top}`}`),
    ]),
    ...towers.flatMap(({ name, rank, cases, entryWarnings: ofTower }) => [
      '',
      `${rank}. ${name}`,
      ...ofTower.map(({ says }) => `   ${says}`),
      ...cases.flatMap(({ wind, loads, says, roomLeft, toFindOut }) => [
        `   With ${CASE_WORDS.loads[loads]}, in ${CASE_WORDS.wind[wind]}: ${says}`,
        ...roomLeft.map((room) => `   ${room.says}`),
        ...toFindOut.map((open) => `   - ${open}`),
      ]),
    ]),
    '',
    ...document.assumed,
    `Not included: ${document.notIncluded.join(', ')}.`,
    ...entryWarnings.map(({ says }) => says),
    ...document.cautions.map(({ says }) => says),
    '',
    ...(traced.version === undefined ? [] : [tracedTo(traced.version, traced.planHash), '']),
  ].join('\n');
}
