import { dishCoefficient } from '../areas/index.ts';
import { nth } from '../foundation/index.ts';
import { METHOD_BY_ID, type Wind } from '../methods/index.ts';
import { firstModeAtMost, type Load, type Mast, type Tower } from '../structure/index.ts';
import { type Climate, type RecordDoubt, recordDoubts } from '../wind/index.ts';
import type { Assumption } from './assumed/assumption.ts';
import { SHORT_RECORD } from './chance.ts';
import type { Check, CheckKindName } from './checks/check.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import { boomsLaden, metalsNotGiven } from './checks/element-check.ts';
import { fallComparisons } from './checks/fall-check.ts';
import { ruptureNotGiven } from './checks/mast-check.ts';
import { yieldsAssumed } from './checks/own-strength-check.ts';
import { guyedForcesOf } from './held/guyed-forces.ts';
import { heldNeeds, heldWeightsNotGiven } from './held/held-model.ts';
import type { SiteSpeed, TowerModel } from './model.ts';
import { fitsNoStandard } from './rated-case.ts';
import { farthestTip } from './reach.ts';
import { leansOn, misfitsOf, ratedSupports } from './stated-for.ts';
import { LEANING, leaningOf, sheddingOf, swayOf } from './sway.ts';
import type { ComparisonRatio } from './tower-ratio.ts';

export const CAUTION_CODES = [
  'engineer-and-local-code',
  'climbing',
  'power-lines',
  'corrosion-and-age',
  'over',
  'within-its-fall',
  'low-margin',
  'basis-assumed',
  'basis-converted',
  'risk-category-assumed',
  'topography-not-given',
  'topography-not-applied',
  'topography-not-in-method',
  'topography-large',
  'roof-speed-up',
  'least-pressure',
  'own-drag-missing',
  'members-unknown',
  'assumed',
  'area-kind-unknown',
  'rating-without-speed',
  'rating-standard-unknown',
  'rating-fits-no-standard',
  'rating-old-standard',
  'rating-exposure-assumed',
  'partial-factor',
  'by-second-standard',
  'rating-class-assumed',
  'rating-height-assumed',
  'rating-lines-assumed',
  'rating-supports-assumed',
  'rating-basis-assumed',
  'rating-basis-converted',
  'rating-level-assumed',
  'uneven-gusts',
  'rating-for-other-height',
  'rating-by-sections',
  'top-couple',
  'loads-later',
  'side-load',
  'torsion',
  'weights-not-counted',
  'wire-pull',
  'strength-as-measured',
  'strength-contradicts-rating',
  'slender-dynamic',
  'frequency-not-used',
  'vortex',
  'vortex-of-pole',
  'guyed-not-analysed',
  'anchors-not-checked',
  'guys-overloaded',
  'supports-not-given',
  'bracket-not-checked',
  'lowered-state',
  'raise-in-calm',
  'hoist-by-section',
  'hoist-not-checked',
  'reaches-guys',
  'building-in-reach',
  'dish-shape-assumed',
  'metal-assumed',
  'rupture-not-given',
  'weight-on-boom',
  'ice-not-checked',
  'climate-short-record',
  'climate-tells-no-law',
  'climate-units',
  'climate-not-gumbel',
  'climate-two-values',
  'climate-chart-band',
  'climate-converted',
  'foundation-not-checked',
  'rotator-not-checked',
  'bearing-not-checked',
  'anchor-bolts-not-checked',
  'deflection-not-checked',
  'p-delta-not-included',
  'p-delta',
  'method-from-memory',
] as const;

export type CautionCode = (typeof CAUTION_CODES)[number];

/** `verdict` changes the answer or how far it may be trusted; `line` belongs to one thing; `standing` is always there. */
export const SEVERITIES = ['verdict', 'line', 'standing'] as const;
export type Severity = (typeof SEVERITIES)[number];

/**
 * What is said not to be checked until a check of the kind has a result. A footing to the maker's drawing has one and is not
 * checked all the same.
 */
const UNCHECKED: Readonly<Record<CheckKindName, CautionCode | undefined>> = {
  tower: undefined,
  'tower-below': undefined,
  guys: undefined,
  'own-strength': undefined,
  'tower-top': undefined,
  ice: 'ice-not-checked',
  mast: undefined,
  bearing: 'bearing-not-checked',
  rotator: 'rotator-not-checked',
  weight: undefined,
  antenna: undefined,
  elements: undefined,
  foundation: undefined,
  raising: undefined,
  lying: undefined,
  hoist: 'hoist-not-checked',
  fall: undefined,
};

export interface Caution {
  readonly code: CautionCode;
  readonly severity: Severity;
  /** JSON pointer of what it is about. */
  readonly at?: string;
  /** Name of what it is about. */
  readonly of?: string;
  /** The check it is about. */
  readonly check?: Check;
  /** A figure it speaks of, in SI. */
  readonly value?: number;
  /** A word it speaks of. */
  readonly word?: string;
}

/** Topographic factor from which site-specific advice is wanted. @source common-practice */
const LARGE_TOPOGRAPHY = 1.5;
/** Length over diameter from which a long tube may sing. @source common-practice */
const LONG_TUBE = 50;

/**
 * Every caution of an answer, those that change the verdict first.
 *
 * @source common-practice
 */
export function cautionsOf(
  model: TowerModel,
  site: SiteSpeed,
  wind: Wind,
  checks: readonly Check[],
  ratios: readonly ComparisonRatio[],
  leastDecides: boolean,
  assumptions: readonly Assumption[],
): readonly Caution[] {
  const cautions: Caution[] = [];
  const checked = new Set(checks.filter(({ result }) => result).map(({ kind }) => UNCHECKED[kind]));
  const say = (code: CautionCode, severity: Severity, about: Omit<Caution, 'code' | 'severity'> = {}) => {
    if (!checked.has(code)) cautions.push({ code, severity, ...about });
  };
  say('engineer-and-local-code', 'standing');
  say('climbing', 'standing');
  say('power-lines', 'standing');
  for (const check of checks) {
    if (check.verdict === 'over')
      say(CHECK_KIND[check.kind].loadedBy === 'fall' ? 'within-its-fall' : 'over', 'verdict', { check });
    if (check.verdict === 'low-margin') say('low-margin', 'verdict', { check });
  }
  aboutSite(model, site, wind, say);
  if (leastDecides) say('least-pressure', 'verdict');
  aboutTower(model, ratios, checks, say);
  aboutSway(model, assumptions, say);
  aboutRatings(model, say);
  aboutLoads(model, say);
  aboutMetals(model, say);
  for (const { of, at, name } of [...assumptions, ...readInModel(model)]) {
    const worst = assumptions.find((each) => each.at === at)?.readings[0]?.value;
    const figure = typeof worst === 'number' ? { value: worst } : {};
    say('assumed', 'line', { at, word: of, ...figure, ...(name === undefined ? {} : { of: name }) });
  }
  aboutClimate(model.input.site.climate, say);
  if (!model.input.site.ice) say('ice-not-checked', 'standing');
  const footing = checks.find((check) => check.kind === 'foundation');
  if (!footing?.result || model.input.station.tower.foundation?.kind === 'manufacturer') {
    say('foundation-not-checked', 'standing');
  }
  aboutHolds(model, say);
  say('anchor-bolts-not-checked', 'standing');
  aboutBending(model, say);
  const { input } = model;
  const methods = new Set([
    input.method,
    ...(input.station.mast ? [METHOD_BY_ID[input.method].besideOnTowers] : []),
    ...model.claims.flatMap((claim) => claim.cases.map((each) => each.rated[0]?.reading.method)),
  ]);
  for (const id of methods) {
    if (id && METHOD_BY_ID[id].known !== 'published')
      say('method-from-memory', 'line', { word: METHOD_BY_ID[id].title });
  }
  return cautions;
}

/** What is not told and read at every level at its worse end. */
function readInModel({ input, scenarios }: TowerModel): readonly Pick<Assumption, 'of' | 'at' | 'name'>[] {
  const shapesMatter = new Set(scenarios.map(({ shapes }) => shapes)).size > 1;
  const always = new Set<Assumption['of']>(['rated-height', 'alike-along']);
  return input.assumed.filter(
    ({ of }) => always.has(of) || (shapesMatter && (of === 'pole-sides' || of === 'bracing-pattern')),
  );
}

type Say = (code: CautionCode, severity: Severity, about?: Omit<Caution, 'code' | 'severity'>) => void;

function aboutSite(model: TowerModel, site: SiteSpeed, wind: Wind, say: Say): void {
  const { input } = model;
  const method = METHOD_BY_ID[input.method];
  if (input.notGiven.includes('speed-basis')) say('basis-assumed', 'verdict', { at: '/site/wind', word: method.basis });
  if (site.converted) say('basis-converted', 'verdict', { at: '/site/wind', word: method.basis, value: site.speed });
  if (input.notGiven.includes('risk-category') && method.classMatters && site.speedLevel === 'own') {
    say('risk-category-assumed', 'verdict', { at: '/site/riskCategory' });
  }
  if (input.notGiven.includes('hill')) say('topography-not-given', 'line', { at: '/site/hill' });
  for (const code of method.cautions) say(code, 'verdict', { at: '/method' });
  const hasHill = input.site.hill !== undefined || input.site.topographicFactor !== undefined;
  if (wind.hillExcluded) {
    say('topography-not-applied', 'verdict', {
      at: '/site/hill',
      word: wind.hillExcluded.why,
      value: wind.hillExcluded.wouldBe,
    });
  } else if (hasHill && method.hill === undefined) say('topography-not-in-method', 'verdict', { at: '/site/hill' });
  const lowest = wind.topographicFactor(input.station.tower.foot);
  if (lowest > LARGE_TOPOGRAPHY) say('topography-large', 'verdict', { at: '/site/hill', value: lowest });
  if (input.station.tower.support === 'roof') say('roof-speed-up', 'verdict', { at: '/tower/support' });
}

const CAUTION_OF_DOUBT: Readonly<Record<RecordDoubt, CautionCode>> = {
  'too-short': 'climate-tells-no-law',
  'too-even': 'climate-tells-no-law',
  low: 'climate-units',
  high: 'climate-units',
  'not-gumbel': 'climate-not-gumbel',
};

function aboutClimate(climate: Climate | undefined, say: Say): void {
  if (!climate) return;
  const at = '/site/climate';
  if (climate.basis !== 'gust3-nominal') say('climate-converted', 'line', { at: `${at}/basis`, word: climate.basis });
  if (climate.kind === 'record' && climate.yearlyMax.length < SHORT_RECORD) {
    say('climate-short-record', 'line', { at: `${at}/yearlyMax`, value: climate.yearlyMax.length });
  }
  for (const doubt of recordDoubts(climate)) {
    say(CAUTION_OF_DOUBT[doubt], 'line', { at: `${at}/yearlyMax`, word: doubt });
  }
  if (climate.kind === 'chart') {
    say(climate.returns.length === 2 ? 'climate-two-values' : 'climate-chart-band', 'line', {
      at: `${at}/returnPeriods`,
    });
  }
}

function aboutTower(model: TowerModel, ratios: readonly ComparisonRatio[], checks: readonly Check[], say: Say): void {
  const { input, scenarios } = model;
  const { tower, mast, loads } = input.station;
  for (const { at, name } of input.later ?? []) say('loads-later', 'line', { at: `${at}/later`, of: name });
  if (!model.bareTowerKnown) say('own-drag-missing', 'verdict', { at: '/tower/shape' });
  if (new Set(scenarios.map((scenario) => scenario.solidity)).size > 1)
    say('members-unknown', 'verdict', { at: '/tower' });
  // A tower held at its very top is compared nowhere.
  const governing = ratios.reduce<ComparisonRatio | undefined>(
    (worst, ratio) => (worst === undefined || ratio.unfavourable > worst.unfavourable ? ratio : worst),
    undefined,
  );
  if (governing?.comparison.check === 'tower-top')
    say('top-couple', 'verdict', { at: '/mast', ...(mastTold(mast) ? { word: 'told' } : {}) });
  else if (mast && mast.foot === undefined) say('top-couple', 'verdict', { at: '/mast/inside' });
  else if (!mast && loads.some((load) => load.low > tower.top + 1e-6)) say('top-couple', 'verdict', { at: '/mast' });
  const { besideOnTowers } = METHOD_BY_ID[input.method];
  if (mast && besideOnTowers !== undefined)
    say('by-second-standard', 'line', { at: '/mast', word: METHOD_BY_ID[besideOnTowers].title });
  if (tower.support === 'guyed') {
    const compared = checks.some(({ kind, result }) => kind === 'tower-below' && result);
    if (compared) say('anchors-not-checked', 'line', { at: '/tower/supportedAt' });
    else say('guyed-not-analysed', 'verdict', { at: '/tower/supportedAt', ...lackingWord(model) });
    const onGuys = guyedForcesOf({ model });
    const broken = onGuys?.levels.some(({ tension, breaking }) => tension > breaking.most);
    if (broken || onGuys?.failure !== undefined)
      say('guys-overloaded', 'verdict', { at: '/tower/supportedAt', word: broken ? 'broken' : 'no-balance' });
  }
  if (tower.support === 'bracketed') {
    const compared = checks.some(({ kind, result }) => kind === 'tower-below' && result);
    const word = tower.held.length === 0 ? 'not-given' : compared ? 'compared' : undefined;
    say('bracket-not-checked', 'verdict', { at: '/tower/supportedAt', ...(word === undefined ? {} : { word }) });
  }
  if (leansOn(tower) && (!tower.heldGiven || tower.held.length === 0)) {
    const rated = ratedSupports(input.ratings, tower).length;
    const word = tower.held.length > 0 ? `rated-${tower.support}` : rated > 1 ? 'rated-apart' : 'not-given';
    say('supports-not-given', 'verdict', { at: '/tower/supportedAt', word });
  }
  if (tower.hingeHeight !== undefined) say('lowered-state', 'standing', { word: 'hinge' });
  if (tower.telescopes) say('lowered-state', 'standing', { word: 'telescopes' });
  if (tower.hingeHeight !== undefined || tower.telescopes) say('raise-in-calm', 'standing');
  if (tower.telescopes) {
    const told = checks.some((check) => check.kind === 'hoist');
    say(told ? 'hoist-by-section' : 'hoist-not-checked', 'line', { at: '/tower/telescopes' });
  }
  if (fallComparisons(model).some(({ to, ratio }) => to === 'building' && ratio > 1)) {
    say('building-in-reach', 'line', { at: '/site/distances/building' });
  }
  if (tower.used) say('corrosion-and-age', 'standing');
  const own = checks.find(({ kind, result }) => kind === 'own-strength' && result);
  if (own) {
    if (own.because === 'contradicts-rating') say('strength-contradicts-rating', 'verdict', { at: '/tower' });
    const [metal] = yieldsAssumed(input.station);
    say('strength-as-measured', 'verdict', { at: '/tower', ...(metal ? { word: metal } : {}) });
  }
}

/** What the model of a held tower lacks, by its sort. */
export const LACKING = ['supports', 'shape', 'walls', 'weights', 'pulls'] as const;
export type Lacking = (typeof LACKING)[number];

function lackingWord(model: TowerModel): { readonly word?: string } {
  const sorts = [...heldNeeds(model), ...heldWeightsNotGiven(model)].map((pointer): Lacking => {
    if (pointer.startsWith('/tower/supportedAt')) return 'supports';
    if (pointer.endsWith('/weight')) return 'weights';
    if (pointer.endsWith('/tension')) return 'pulls';
    return pointer.endsWith('all') ? 'walls' : 'shape';
  });
  const word = LACKING.filter((sort) => sorts.includes(sort)).join(' ');
  return word === '' ? {} : { word };
}

/** Frequency from which a structure is not slender to any standard [Hz]. */
const STIFF = 1;

function aboutSway({ input, scenarios }: TowerModel, assumptions: readonly Assumption[], say: Say): void {
  const { tower } = input.station;
  const isAssumed = assumptions.some(({ of }) => of === 'frequency');
  const frequency = isAssumed ? undefined : tower.frequency;
  const { flexibleBelow, stiffIf } = METHOD_BY_ID[input.method];
  const sways = (about: Pick<Caution, 'value' | 'word'>) =>
    say('slender-dynamic', 'verdict', { at: '/tower/frequency', ...about });
  if (frequency !== undefined && frequency < STIFF) {
    if (flexibleBelow !== undefined) sways({ value: frequency });
    else say('frequency-not-used', 'verdict', { at: '/tower/frequency', value: frequency });
    return;
  }
  const isTall = stiffIf !== undefined && tower.top - tower.foot >= stiffIf.height;
  if (tower.support === 'free' && isTall && (frequency ?? 0) <= stiffIf.frequency) {
    sways({ value: stiffIf.height, word: 'structural-factor' });
    return;
  }
  if (frequency !== undefined) return;
  const atMost = firstModeAtMost(input.station);
  const isSlender = atMost !== undefined && atMost < STIFF;
  if (isAssumed) {
    if (isSlender) sways({ value: atMost, word: 'flexible' });
  } else if (isSlender || tower.telescopes || scenarios[0]?.windStructure.kind === 'pole') {
    sways(atMost === undefined ? {} : { value: atMost, word: 'at-most' });
  }
}

function aboutBending(model: TowerModel, say: Say): void {
  const sway = swayOf(model);
  const onSupports = guyedForcesOf({ model });
  if (onSupports && onSupports.failure === undefined) return;
  const leaning = leaningOf(model);
  if (sway === undefined) say('deflection-not-checked', 'standing');
  if (leaning === undefined) say('p-delta-not-included', 'standing');
  else if (leaning > LEANING.told) {
    const word = leaning > LEANING.most ? 'beyond' : sway === undefined ? 'by-frequency' : undefined;
    say('p-delta', 'verdict', { at: '/tower', value: leaning, ...(word === undefined ? {} : { word }) });
  } else if (sway === undefined) say('p-delta-not-included', 'standing');
  const shedding = sheddingOf(model);
  // No steady wind blows faster than the gusts of the site.
  if (shedding && shedding.second[0] < METHOD_BY_ID[model.input.method].actualGust(model.site.speed))
    say('vortex-of-pole', 'line', { at: '/tower', value: shedding.second[0] });
}

function aboutRatings(model: TowerModel, say: Say): void {
  const { tower } = model.input.station;
  const held = leansOn(tower);
  const speaking = new Set(model.claims.map((claim) => claim.number));
  for (const claim of model.momentClaims) speaking.add(claim.number);
  model.input.ratings.forEach((rating, number) => {
    const { claim, wind, at } = rating;
    if (rating.of === 'bearing' || rating.of === 'rotator') {
      if ((claim.kind === 'force' || claim.kind === 'moment' || claim.kind === 'torque') && !claim.levelGiven)
        say('rating-level-assumed', 'verdict', { at });
      if (claim.kind === 'torque') say('uneven-gusts', 'line', { at });
    }
    if (rating.of !== 'tower') return;
    if (claim.kind === 'weight') return;
    if (!speaking.has(number)) {
      // What the tower itself leans on is not told: that caution stands for both.
      if (held && tower.held.length === 0 && !misfitsOf(rating, tower).includes('top')) return;
      const speedless =
        claim.kind === 'area' && wind?.speed === undefined && claim.rows.every((row) => row.speed === undefined);
      const why = speedless
        ? 'rating-without-speed'
        : fitsNoStandard(rating)
          ? 'rating-fits-no-standard'
          : 'rating-for-other-height';
      say(why, 'verdict', { at });
      return;
    }
    const bySections = model.claims.some((each) => each.number === number && each.cases.some(({ asRated }) => asRated));
    if (bySections && rating.top !== undefined)
      say('rating-by-sections', 'verdict', { at: `${at}/top`, value: rating.top });
    if (held && tower.held.length > 0 && rating.held === undefined)
      say('rating-supports-assumed', 'verdict', { at: `${at}/supportedAt` });
    if ((claim.kind === 'force' || claim.kind === 'moment') && !claim.levelGiven)
      say('rating-level-assumed', 'verdict', { at });
    if (claim.kind === 'area' && claim.areaKind === 'unknown')
      say('area-kind-unknown', 'verdict', { at: `${at}/areaKind` });
    if ((claim.kind === 'area' || claim.kind === 'force') && rating.height === undefined)
      say('rating-height-assumed', 'verdict', { at: `${at}/above` });
    // One line is no bundle, and two lie as wide in one as singly; but a pole hides even one.
    const lines = rating.withCables;
    if (
      lines &&
      lines.laid === undefined &&
      (lines.count > 2 || tower.sections.some(({ shape }) => shape?.kind === 'pole'))
    )
      say('rating-lines-assumed', 'verdict', { at: `${at}/withCables/arrangement` });
    if (!wind) return;
    if (!wind.method) {
      say('rating-standard-unknown', 'verdict', { at: `${at}/wind/method` });
      return;
    }
    const method = METHOD_BY_ID[wind.method];
    if (method.since < 2005) say('rating-old-standard', 'verdict', { at: `${at}/wind/method`, word: method.title });
    const { field, kinds, counts } = method.ground;
    if (counts && !wind.exposure) {
      say('rating-exposure-assumed', 'verdict', { at: `${at}/wind/${field}`, word: nth(kinds, 0) });
    }
    const keptStrength = wind.basis !== undefined && method.speedLevel(wind.basis) === 'strength';
    // A strength-level speed has the class in it.
    if (method.classMatters && !wind.riskCategory && !keptStrength)
      say('rating-class-assumed', 'verdict', { at: `${at}/wind/riskCategory` });
    if (!wind.basis) say('rating-basis-assumed', 'verdict', { at: `${at}/wind/basis`, word: method.basis });
    if (wind.basis && wind.basis !== method.basis && !keptStrength) {
      say('rating-basis-converted', 'verdict', { at: `${at}/wind/basis`, word: method.basis });
    }
  });
}

/** What holds the mast, where its maker states nothing of it. */
function aboutHolds({ input: { station, ratings } }: TowerModel, say: Say): void {
  const stated = (of: 'rotator' | 'bearing') => ratings.some((rating) => rating.of === of);
  if (station.rotator && !stated('rotator')) say('rotator-not-checked', 'standing', { at: '/rotator' });
  if (station.mast?.bearing !== undefined && !stated('bearing')) {
    say('bearing-not-checked', 'standing', { at: '/mast/bearing' });
  }
}

function aboutLoads(model: TowerModel, say: Say): void {
  const { station, notGiven } = model.input;
  for (const load of station.loads) {
    const about = { at: load.at, of: load.name };
    const { shape } = load;
    if (shape.kind === 'stated' && shape.areaKind === 'unknown')
      say('area-kind-unknown', 'line', { ...about, at: `${load.at}/areaKind` });
    if (shape.kind === 'wire')
      say('wire-pull', 'line', { ...about, ...(shape.pull === undefined ? { word: 'not-given' } : {}) });
    if (shape.kind === 'dish') {
      const iced = shape.solidity < 1 && model.input.site.ice !== undefined;
      const value = dishCoefficient.of(shape.solidity);
      say('dish-shape-assumed', 'line', { ...about, value, ...(iced ? { word: 'iced' } : {}) });
    }
    if (load.on === 'tower' && load.low < station.tower.top)
      say('side-load', 'line', { ...about, ...(hangsOnPole(load, station.tower) ? { word: 'pole' } : {}) });
    if (load.offset > 0)
      say('torsion', 'line', { ...about, ...(legsNotGiven(station.tower) ? { word: 'outside-width' } : {}) });
    if (reachesGuys(load, station.tower)) say('reaches-guys', 'line', about);
    const longest = longestAspect(shape);
    if (longest > LONG_TUBE) say('vortex', 'line', about);
  }
  if (notGiven.includes('weights')) say('weights-not-counted', 'line');
}

/** Where a mast is held at the top of the tower is told. */
function mastTold(mast: Mast | undefined): boolean {
  return mast?.foot !== undefined && mast.bearing !== undefined;
}

/** A pole has neither legs nor panels. */
function hangsOnPole({ low }: Load, { sections }: Tower): boolean {
  return sections.find((section) => section.low <= low && low <= section.high)?.shape?.kind === 'pole';
}

/** A lattice of which nobody tells how thick its legs are, so that they may stand closer than its outside width. */
function legsNotGiven({ sections }: Tower): boolean {
  return sections.some(({ shape }) => shape?.kind === 'lattice' && shape.solid.by !== 'members');
}

function aboutMetals(model: TowerModel, say: Say): void {
  for (const about of boomsLaden(model)) say('weight-on-boom', 'line', about);
  for (const at of ruptureNotGiven(model)) say('rupture-not-given', 'line', { at });
  for (const { at, of, notGiven } of metalsNotGiven(model)) {
    say(notGiven === 'material' ? 'metal-assumed' : 'rupture-not-given', 'line', { at, of });
  }
}

/** Guys slant from where they hold down to their anchors: what swings or stands farther out than they are may meet them. */
function reachesGuys(load: Load, tower: Tower): boolean {
  const tip = farthestTip(load);
  return tower.held.some(({ by, height, guys }) => {
    if (by !== 'guys' || !guys || load.low >= height) return false;
    return tip > guys.radius * (1 - (load.low - tower.foot) / (height - tower.foot));
  });
}

function longestAspect(shape: TowerModel['input']['station']['loads'][number]['shape']): number {
  if (shape.kind === 'tube') return shape.length / Math.max(...shape.diameter);
  if (shape.kind !== 'tubes') return 0;
  return Math.max(
    ...shape.rows.map((row) => {
      const length = row.pieces.reduce((sum, piece) => sum + piece.length, 0);
      return length / Math.max(...row.pieces.map((piece) => piece.diameter));
    }),
  );
}
