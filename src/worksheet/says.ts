import type { Note, Piece } from '../answer/index.ts';
import { type UnitSystem, withArticle } from '../foundation/index.ts';
import {
  type AreaUsed,
  type Assessment,
  type Check,
  type CheckResult,
  type Compared,
  type ComparedOf,
  couldBeOver,
  enteredBasis,
  type GuyedForces,
  guyedForcesOf,
  isInStillAir,
  type LegsAtFoot,
  type LowerAt,
  type Part,
  type RoomLeft,
  SERVICE_GUST,
  swayOf,
  type WindLoads,
} from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import {
  ASSUMPTION_WORDS,
  CAUTION_WORDS,
  CHECK_WORDS,
  COMPARED_WORDS,
  capacityOf,
  checkName,
  figures,
  heldGustInWords,
  inWords,
  listed,
  missingSentences,
  type PlanHash,
  partName,
  placeOfFall,
  questionOf,
  REASON_WORDS,
  ratioFigures,
  SPEED_WORDS,
  sentence,
  VERDICT_WORDS,
  verbOf,
} from '../words/index.ts';

/**
 * The verdict in a sentence or three, in pieces: what is decided and by what, then how much of the plan that is.
 *
 * What is over comes first; then what is open and could be over, with what is decided of the tower; then the worst decided.
 */
export function headline(assessment: Assessment): readonly Piece[] {
  const { checks } = assessment;
  const main = mainCheck(assessment);
  const falls = checks.filter((check) => check.kind === 'fall' && check.verdict === 'over' && check !== main);
  const near = falls.length > 0 ? ` If it falls, it could reach the ${listed(falls.map(placeOfFall))}.` : '';
  const besides = `${towerSays(assessment, main)}${near} `;
  return [...mainPieces(assessment, main), { text: besides }, { text: decidedSays(assessment, main), as: 'scope' }];
}

/** Of a tower that is decided, where something else is open that could be over. */
function towerSays({ parts }: Assessment, main: Check): string {
  const tower = parts.find(({ kind }) => kind === 'tower');
  if (main.verdict !== 'open' || !tower?.governs.result || tower.verdict === undefined || tower.verdict === 'open') {
    return '';
  }
  const { result } = tower.governs;
  return ` The tower is ${VERDICT_WORDS[tower.verdict]}: at ${ratioFigures(result.ratio)} of its rated capacity.`;
}

/** "4 of 6 parts decided; open: footing and beam." */
export function decidedSays({ parts, decided }: Assessment, main?: Check): string {
  const open = parts.filter(({ verdict }) => verdict === 'open');
  const besides = parts.filter((part) => part.verdict === undefined);
  const named = (which: readonly Part[]) => {
    const names = which.map(partName);
    return names.length > 6 ? `${names.slice(0, 6).join(', ')} and ${names.length - 6} more` : listed(names);
  };
  const count =
    decided.parts === decided.of
      ? decided.of === 1
        ? 'Its one part is decided'
        : `All ${decided.of} parts decided`
      : `${decided.parts === 0 ? 'None' : decided.parts} of ${decided.of} parts decided`;
  const alone = open.length === 1 && open[0]?.checks.includes(main as Check);
  const waits = open.length === 0 || alone ? '' : `; open: ${named(open)}`;
  const notCompared = besides.length === 0 ? '' : ` Nothing to compare: ${named(besides)}.`;
  return `${count}${waits}.${notCompared}`;
}

/** The headline as one text. */
export function headlineSays(assessment: Assessment): string {
  return headline(assessment)
    .map(({ text }) => text)
    .join('');
}

/** What checks are called, each name once. */
function namesOf(checks: readonly Check[]): readonly string[] {
  return [...new Set(checks.map((check) => checkName(check)))];
}

/**
 * The check the sentence is about: the worst of those over; else the open one that could be over, the tower first; else an open
 * tower; else the worst of those decided.
 */
export function mainCheck(assessment: Assessment): Check {
  const { checks, parts } = assessment;
  const tower = checks[0] as Check;
  const over = checks.filter((check) => check.result && check.verdict === 'over');
  // How far it may fall is no load on it, nor is what is lifted or weighed in still air: the one comes first only where it
  // alone is over or decided, the other where its verdict is worse.
  const loaded = (each: readonly Check[]) => each.filter((check) => check.kind !== 'fall');
  const inWind = (each: readonly Check[]) => each.filter((check) => !isInStillAir(check));
  if (over.length > 0) return largestOf(loaded(over), over);
  const leaning = parts.filter(couldBeOver).map(({ governs }) => governs);
  if (tower.verdict === 'open' && (leaning.length === 0 || leaning.includes(tower))) return tower;
  const decided = checks.filter((check) => check.result && check.verdict !== 'open');
  const low = decided.filter((check) => check.verdict === 'low-margin');
  return largestOf(loaded(leaning), leaning, inWind(low), low, inWind(decided), loaded(decided), decided, [tower]);
}

/** The check with the largest ratio of the first lot that has any. */
function largestOf(...lots: readonly (readonly Check[])[]): Check {
  const first = lots.find((each) => each.length > 0) as readonly Check[];
  return first.reduce((most, check) => ((check.result?.ratio ?? 0) > (most.result?.ratio ?? 0) ? check : most));
}

function mainPieces(assessment: Assessment, check: Check): readonly Piece[] {
  const { result, verdict } = check;
  if (result && check.kind === 'fall') return fallPieces(check, result, assessment.input.station.units);
  if (!result || verdict === 'open') return openPieces(assessment, check);
  const decisive = result.over ?? result;
  const target = verdict === 'low-margin' ? ` (target ${ratioFigures(1 - assessment.input.wanted.margin)})` : '';
  const larger = result.over
    ? ` The larger ratio, ${ratioFigures(result.ratio)} (${whereInWords(assessment, result)}), only means that no rating entered covers it.`
    : '';
  const beyond = verdict === 'over' ? ` ${CHECK_WORDS[check.kind].over}` : '';
  return [
    { text: `${sentence(checkName(check))} ${VERDICT_WORDS[verdict]}`, as: 'verdict', verdict },
    { text: `: at ${ratioFigures(decisive.ratio)} of ${capacityOf(check)}${target}` },
    ...(isInStillAir(check) ? [] : inSiteWind(assessment)),
    { text: `; ${whereInWords(assessment, decisive)} governs${bySecondStandard(decisive)}.${beyond}${larger}` },
  ];
}

function inSiteWind({ input }: Assessment): readonly Piece[] {
  const basis = enteredBasis(input);
  const speed = `${inWords(input.site.speed, 'speed', input.station.units)} ${SPEED_WORDS[basis]}`;
  const article = withArticle(speed).slice(0, -speed.length);
  return [{ text: ` in ${article}` }, { text: speed, as: 'wind' }];
}

/** What a fall is given beyond its own reach, 10 ft. */
const FALL_SPARE: Readonly<Record<UnitSystem, string>> = { us: 'ten feet', si: '3 m' };

/** Wind has no part in it: how far it may fall, with what to spare, against where the thing is. */
function fallPieces(check: Check, { demand, capacity }: Compared, system: UnitSystem): readonly Piece[] {
  const long = (value: number) => inWords(value, 'length', system);
  const beyond = check.verdict === 'over' ? ` If it falls, it could reach the ${placeOfFall(check)}.` : '';
  return [
    { text: `${sentence(checkName(check))} ${VERDICT_WORDS[check.verdict]}`, as: 'verdict', verdict: check.verdict },
    { text: `: a fall needs ${long(demand)} with ${FALL_SPARE[system]} to spare, ${long(capacity)} given.${beyond}` },
  ];
}

function openPieces(assessment: Assessment, check: Check): readonly Piece[] {
  const { input, questions } = assessment;
  const { result } = check;
  const open: Piece = { text: 'Open', as: 'verdict', verdict: 'open' };
  const needs = missingSentences(check.needs, input);
  if (!result || check.because === 'no-ice-rule') {
    const why = needs || REASON_WORDS[check.because ?? 'beyond-rating'];
    return [open, { text: `: ${checkName(check)}. ${why}${membersSay(assessment, check)}` }];
  }
  const subject = `the ${checkName(check)} ${verbOf(check, 'is', 'are')} at ${ratioFigures(result.ratio)} of ${capacityOf(check)}`;
  const governs = `${whereInWords(assessment, result)} governs.`;
  if (check.because === 'not-given' || check.because === 'brace-ends') {
    const range = `at worst, ${ratioFigures(result.ratioRange[0])} at best`;
    const depends = dependsSays(assessment, check);
    return [open, { text: `: ${subject} ${range}. ${sentence(governs)} ${depends}` }];
  }
  if (check.because === 'readings-disagree') {
    const [first] = questions.open;
    const ask = first ? ` First to find out: ${questionOf(first, input)}` : '';
    const range = `at worst, ${ratioFigures(result.ratioRange[0])} at best, depending on the open questions`;
    return [open, { text: `: ${subject} ${range}. ${sentence(governs)}${ask}` }];
  }
  const above = check.because === 'held' ? 'above its supports ' : '';
  const knownWhole = check.because === 'held' || check.because === 'beyond-rating';
  const ending = knownWhole ? `; ${governs}` : `, as far as known. ${sentence(governs)}`;
  const told = check.because === 'contradicts-rating' ? REASON_WORDS[check.because] : needs;
  const why = check.because === 'beyond-rating' ? beyondRatingSays(result) : told;
  return [
    open,
    { text: `: ${above}${subject}` },
    ...inSiteWind(assessment),
    { text: `${ending}${why === '' ? '' : ` ${why}`}` },
  ];
}

/** More of what a verdict depends on are not named one by one. */
const LONGEST_LIST = 3;

/** "It depends on the lines and how far the panel is off the axis." */
function dependsSays({ assumptions, input }: Assessment, { needs, because }: Check): string {
  if (because === 'brace-ends') return REASON_WORDS[because];
  const waits = assumptions.filter(({ at }) => needs.includes(at));
  const named = waits.map(({ of, name = 'it' }) => ASSUMPTION_WORDS[of].dependsOn(name));
  // What no assumption stands for is asked for by its field.
  if (named.length === 0) return missingSentences(needs, input) || REASON_WORDS['not-given'];
  const all =
    named.length > LONGEST_LIST
      ? `${named.slice(0, LONGEST_LIST - 1).join(', ')} and ${named.length - LONGEST_LIST + 1} more`
      : listed(named);
  return `It depends on ${all}.`;
}

/** What its members add where no rating of a tower of several pieces is given. */
function membersSay({ checks }: Assessment, { kind, because }: Check): string {
  const own = checks.find((each) => each.kind === 'own-strength');
  if (kind !== 'tower' || because !== 'missing') return '';
  return own?.verdict === 'within' || own?.verdict === 'low-margin'
    ? ' Its members take this wind by their measures. Its joints are not checked.'
    : '';
}

/** More than the rated capacity, or a place that no rating covers. */
function beyondRatingSays({ ratio }: Compared): string {
  return ratio > 1
    ? 'A ratio above 1 there means only that no rating entered covers this load. Ask the manufacturer.'
    : 'That is the place a rating covers; no rating entered covers the rest. Ask the manufacturer.';
}

/** "shear at the base". */
export function whereInWords(assessment: Assessment, result: Compared): string {
  const { tower, units } = assessment.input.station;
  const { mode, hasPlace } = COMPARED_WORDS[result.of];
  if (result.along !== undefined) return `${mode} ${inWords(result.along, 'length', units)} from the support`;
  if (result.height === undefined || !hasPlace) return mode;
  const height = inWords(result.height, 'length', units);
  if (result.place === 'top-couple') return `${mode} at the top (${height})`;
  return `${mode} ${Math.abs(result.height - tower.foot) < 1e-6 ? 'at the base' : `at ${height}`}`;
}

/** ", by ANSI/TIA-222-H", where the standard that speaks beside the plan's own of what stands on a tower counts. */
const bySecondStandard = ({ bySecondMethod }: Compared) =>
  bySecondMethod === undefined ? '' : `, by ${METHOD_BY_ID[bySecondMethod].title}`;

/** A check in a line, and the reason of its verdict alone. */
export interface CheckSays {
  readonly says: string;
  readonly why: string;
}

export function checkSays(assessment: Assessment, check: Check): CheckSays {
  const why = check.result ? comparedSays(assessment, check, check.result) : uncomparedSays(assessment, check);
  return { says: `${sentence(checkName(check))}: ${VERDICT_WORDS[check.verdict]}. ${why}`, why };
}

function uncomparedSays(assessment: Assessment, check: Check): string {
  if (isUnstatedClamp(check)) return unstatedClampSays(assessment, check);
  const why = missingSentences(check.needs, assessment.input) || REASON_WORDS[check.because ?? 'beyond-rating'];
  return `${why}${membersSay(assessment, check)}`;
}

function comparedSays(assessment: Assessment, check: Check, result: CheckResult): string {
  const { input } = assessment;
  const { units } = input.station;
  const range = result.ratioRange[0] < result.ratio ? ` (${ratioFigures(result.ratioRange[0])} at best)` : '';
  const where = whereInWords(assessment, result);
  const said = [`${amountsInWords(result, units)}${range}; ${where} governs${bySecondStandard(result)}.`];
  if (check.kind === 'tower-below') said.push('Both leave out what the bare tower has in still air.');
  if (result.over) {
    const over = sentence(whereInWords(assessment, result.over));
    said.push(
      `That only means that no rating entered covers it. ${over} is over: ${lower(amountsInWords(result.over, units))}.`,
    );
  }
  if (result.torque) said.push(torqueSays(result.torque, units));
  const { ratioWithoutWind = 0 } = result;
  if (ratioWithoutWind > 1) {
    said.push(`Without wind ${verbOf(check, 'its', 'their')} ratio is already ${ratioFigures(ratioWithoutWind)}.`);
  }
  if (result.holdsTo) {
    const { holdsToAtBest } = result;
    const ends = holdsToAtBest === undefined ? '' : ` at worst, about ${heldGustInWords(holdsToAtBest, units)} at best`;
    const gust = heldGustInWords(result.holdsTo.gust, units);
    said.push(`${verbOf(check, 'Holds', 'Hold')} to an actual gust of ${gust}${ends}.`);
  }
  if (result.areaUsed) said.push(areaUsedSays(result.areaUsed, result.of, units));
  if (check.because === 'area-only') {
    said.push('An area is not a force. Ask the manufacturer for its rated lateral force, torque and weight.');
  }
  if (check.because === 'beyond-rating') said.push(beyondRatingSays(result));
  if (check.because === 'not-given' || check.because === 'brace-ends') said.push(dependsSays(assessment, check));
  if (check.because === 'contradicts-rating') said.push(REASON_WORDS[check.because]);
  if (check.because === 'readings-disagree' || check.because === 'held') {
    const needs = missingSentences(check.needs, input);
    if (needs !== '') said.push(needs);
    else if (check.because === 'readings-disagree') said.push(REASON_WORDS[check.because]);
  }
  if (check.kind === 'ice' && check.because === 'held') {
    said.push(
      'Nothing is compared below its highest support. Ice there could catch more wind than the rated tower itself.',
    );
  }
  return said.join(' ');
}

/** "Wind on the tower itself makes 282 lbf of it. Loads, mast and lines equal 9.81 ft² effective …" */
function areaUsedSays({ area, rated, height, ofTower }: AreaUsed, of: ComparedOf, units: UnitSystem): string {
  const own = inWords(ofTower, COMPARED_WORDS[of].dimension, units, 4);
  const size = (value: number) => inWords(value, 'area', units);
  return `Wind on the tower itself makes ${own} of it. Loads, mast and lines equal ${size(area)} effective at ${inWords(height, 'length', units)}; ${size(rated)} is rated there.`;
}

/** "Demand 590 lbf, capacity 626 lbf, ratio 0.943". */
function amountsInWords({ of, demand, capacity, ratio }: Compared, units: UnitSystem): string {
  const figure = ratioFigures(ratio);
  if (of === 'wind-ratio') return `Ratio ${figure}`;
  const type = of === 'gust' ? ` ${SPEED_WORDS['gust3-nominal']}` : '';
  const amount = (value: number) => `${inWords(value, COMPARED_WORDS[of].dimension, units, 4)}${type}`;
  return `Demand ${amount(demand)}, capacity ${amount(capacity)}, ratio ${figure}`;
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** A rotator on which a mast without a bearing is clamped, of which nobody states what moment it takes. */
const isUnstatedClamp = ({ kind, needs }: Check): boolean => kind === 'rotator' && needs.includes('/ratings');

function unstatedClampSays({ input, mast }: Assessment, { needs }: Check): string {
  const besides = missingSentences(
    needs.filter((need) => need !== '/ratings'),
    input,
  );
  const moment = mast?.clampMoment;
  const figure =
    moment === undefined || besides !== '' ? '' : ` (${inWords(moment, 'moment', input.station.units, 4)})`;
  const says = `Without a bearing, the rotator alone takes the moment at the lower end of the mast${figure}. No rated moment given; ask the manufacturer.`;
  return besides === '' ? says : `${says} ${besides}`;
}

/** "Its brake holds it. It can turn in actual gusts up to 41 mph." */
function torqueSays({ heldBy, turnsWith, turnsUpTo }: NonNullable<CheckResult['torque']>, units: UnitSystem): string {
  if (heldBy === 'turning-torque') return 'No brake rating given; its turning torque is taken as its holding torque.';
  if (turnsWith === undefined) return 'Its brake holds it. Turning torque not given.';
  return `Its brake holds it.${turnsUpTo === undefined ? '' : ` It can turn in actual gusts up to ${heldGustInWords(turnsUpTo, units)}.`}`;
}

/** Beside every answer of its own: what it is not. */
export const ENGINEER_DECIDES: Note = {
  code: 'engineer-and-local-code',
  says: CAUTION_WORDS['engineer-and-local-code'].says(),
};

export const perCent = (share: number) => `${figures(100 * share)} %`;

/** "Above 1, with no gust known: footing. Mend that first." */
export function aboveSays(over: readonly string[]): string {
  return over.length === 0 ? '' : `Above 1, with no gust known: ${listed(over)}. Mend that first.`;
}

/** "Lower the tower when gusts of 62.2 mph are forecast. Below that …" */
export function lowerAtSays(
  { input, checks }: Assessment,
  { gust, ofCheck, ratioWithoutWind, without, overWithoutGust, withoutIce }: LowerAt,
): string {
  const { units } = input.station;
  const weakest = checks.find((check) => check.id === ofCheck);
  const name = weakest ? checkName(weakest) : 'tower';
  const verb = (one: string, several: string) => (weakest ? verbOf(weakest, one, several) : one);
  const over = namesOf(checks.filter((check) => overWithoutGust.includes(check.id)));
  const above = aboveSays(over);
  const others = namesOf(checks.filter(({ id }) => without.includes(id) && !overWithoutGust.includes(id)));
  const named = others.map((other) => (other === name ? `other ratings of the ${name}` : other));
  const open = named.length === 0 ? '' : ` Not included (open): ${listed(named)}.`;
  const rest = above === '' ? open : ` ${above}${open}`;
  if (gust === undefined && ratioWithoutWind === undefined) {
    return `No gust at which to lower the tower can be given. ${above}${open}`;
  }
  const ice = withoutIce ? ' Ice is not included.' : '';
  const { margin, forecast } = input.wanted;
  if (gust === undefined) {
    return `No forecast is low enough: without wind the ${name} ${verb('is', 'are')} already at ${ratioFigures(ratioWithoutWind ?? 0)} (target ${ratioFigures(1 - margin)}).${rest}`;
  }
  return `Lower the tower when gusts of ${inWords(gust, 'speed', units)} are forecast. Below that the ${name} ${verb('keeps', 'keep')} a ${perCent(margin)} margin, with ${perCent(forecast)} for forecast error.${rest}${ice}`;
}

/** "Room left on the mast at 56 ft with a 10 % margin: 3.1 ft² effective; the footing governs. It does not cover: …" */
export function roomSays(
  { input, checks }: Assessment,
  { height, on, area, check, without, notCovered }: RoomLeft,
): string {
  const { units } = input.station;
  const found = (id: string) => checks.find((each) => each.id === id) as Check;
  const nameOf = (id: string) => checkName(found(id));
  const size = inWords(Math.abs(area), 'area', units);
  const up = inWords(height, 'length', units);
  const where = on === 'tower' ? `at the top (${up})` : `on the mast at ${up}`;
  const much = area >= 0 ? `${size} effective` : `none, exceeded by ${size} effective`;
  const named = (says: string, ids: readonly string[]) =>
    ids.length === 0 ? '' : ` ${says}: ${listed([...new Set(ids.map(nameOf))])}.`;
  const rest = `${named('Not included (open)', without)}${named('It does not cover', notCovered)}`;
  return `Room left ${where} with a ${perCent(input.wanted.margin)} margin: ${much}; the ${nameOf(check)} ${verbOf(found(check), 'governs', 'govern')}.${rest}`;
}

/** Which way the wind blows and rotating loads stand: "wind from 90° or 270°"; nothing where no heading counts. */
export function headingsSay({ fixed, turning }: WindLoads['headings'], units: UnitSystem): string {
  const angle = (value: number) => inWords(value, 'angle', units);
  return listed([
    ...(fixed === undefined ? [] : [`wind from ${angle(fixed)} or ${angle(fixed + Math.PI)}`]),
    ...(turning === undefined ? [] : [`rotating loads at ${angle(turning)} to it`]),
  ]);
}

/** Shear and moment at the base in two or three sentences: the largest moment with its shear, the largest shear with its moment. */
export function reactionsSay({ input, reactions }: Assessment): string {
  const { units } = input.station;
  const { allowable, atLargestShear, torsion, supportedAbove, withoutOwnWind } = reactions;
  const start = `At the base${supportedAbove ? ', supports above ignored' : ''}`;
  if (withoutOwnWind && atLargestShear.allowable.shear === 0) {
    return `${start}, shear and moment are not known: the wind on the tower itself is not known.`;
  }
  const force = (value: number) => inWords(value, 'force', units, 4);
  const moment = (value: number) => inWords(value, 'moment', units, 4);
  const without = withoutOwnWind ? ', wind on the tower itself not included (unknown)' : '';
  const by = (headings: WindLoads['headings']) => {
    const said = headingsSay(headings, units);
    return said === '' ? '' : ` (${said})`;
  };
  const said = [
    `${start}${without}, allowable level, ${METHOD_BY_ID[input.method].title}: shear ${force(allowable.shear)}, moment ${moment(allowable.moment)}.`,
  ];
  const sheared = atLargestShear.allowable;
  said.push(
    sheared.shear > allowable.shear * (1 + SAME_PAIR)
      ? `That is the largest moment${by(reactions.headings)}. Largest shear: ${force(sheared.shear)}, with a moment of ${moment(sheared.moment)}${by(atLargestShear.headings)}.`
      : 'Both are the largest.',
  );
  if (torsion.allowable > 0) said.push(`Largest torsion: ${moment(torsion.allowable)}.`);
  return said.join(' ');
}

/** A shear this much larger is another one: the last of four figures. */
const SAME_PAIR = 5e-4;

/** What an answer that is kept can be traced by: the service that gave it, and the plan. */
export function tracedTo(version: string, planHash?: PlanHash): string {
  if (planHash === undefined) return `Gustworthy ${version}`;
  const before = planHash.format1 === undefined ? '' : ` (in format 1, ${planHash.format1})`;
  return `Gustworthy ${version}, plan format 2, SHA-256 ${planHash.format2}${before}`;
}

/** What the legs do at the base, in a sentence or three. */
export function legsSay(legs: LegsAtFoot, units: UnitSystem): string {
  const { uplift, upliftWithoutWeight, push, byOutsideWidth } = legs;
  const force = (value: number) => inWords(value, 'force', units, 4);
  const up =
    uplift === undefined
      ? `up to ${force(upliftWithoutWeight)}, dead load not included`
      : `${uplift > 0 ? `up to ${force(uplift)}` : 'none'}, with 0.6 of the dead load`;
  const down = push === undefined ? '' : ` Largest leg compression: ${force(push)}.`;
  const spacing = byOutsideWidth
    ? ' Leg spacing is taken as the face width. True spacing is less by the leg thickness (not given), so true leg forces are larger.'
    : '';
  return `Leg uplift at the base: ${up} (nominal level, for footings).${down} Anchor bolts and concrete are not checked.${spacing}`;
}

const NO_FIGURES: Readonly<Record<NonNullable<GuyedForces['failure']>, string>> = {
  unstable: 'it is unstable in the design wind',
  'not-converged': 'its forces find no balance in the design wind',
  'beyond-small-movement': 'it leans too far in the design wind for these formulas',
};

/** What a tower on guys does in the design wind, where the plan gives enough. */
export function guysSay(assessment: Assessment): string | undefined {
  const found = guyedForcesOf(assessment);
  if (!found || found.levels.length === 0) return undefined;
  const { units } = assessment.input.station;
  const force = (value: number) => inWords(value, 'force', units, 3);
  const failure =
    found.failure === undefined ? '' : ` In one or more cases tried, ${NO_FIGURES[found.failure]}: ask an engineer.`;
  if (found.levels.every(({ tension }) => tension === 0)) return `Forces in the guys not computed.${failure}`;
  const levels = found.levels.map(({ height, tension, breaking: { least, most }, anchorLevel, anchorUp }) => {
    const breaks = least === most ? force(least) : `${force(least)} to ${force(most)} by its grade`;
    return ` Guys at ${inWords(height, 'length', units)}: largest tension ${force(tension)}; the strand breaks at ${breaks}. One anchor takes ${force(anchorLevel)} level, ${force(anchorUp)} up.`;
  });
  const { thrust, shear, moment } = found.foot;
  const { baseHeld } = assessment.input.station.tower;
  const bent = baseHeld === false ? '' : `, moment ${inWords(moment, 'moment', units, 3)} if it cannot tilt`;
  return `On its guys, nominal level, each at its own worst.${levels.join('')} At the base: thrust ${force(thrust)}, shear ${force(shear)}${bent}. The top moves ${inWords(found.movement, 'length', units)}. ${assumedOfGuys(assessment)}Anchors are not checked; ice on the guys is not included.${failure}`;
}

/** "In an actual gust of 60 mph the top moves 0.41 ft and leans 1.2°": shown, not checked. */
export function swaySays(assessment: Assessment): string | undefined {
  const sway = swayOf(assessment.model);
  if (!sway || !Number.isFinite(sway.movement)) return undefined;
  const { units } = assessment.input.station;
  const lean = `${figures((sway.lean * 180) / Math.PI, 2)}°`;
  const added = `${figures(sway.leaning * 100, 2)} %`;
  return `In an actual gust of ${inWords(SERVICE_GUST, 'speed', units)} the tower top moves ${inWords(sway.movement, 'length', units)} and leans ${lean}. The weight as it leans adds ${added} to the moment at the base, not included above.`;
}

function assumedOfGuys({ input }: Assessment): string {
  const { held, baseHeld } = input.station.tower;
  const guys = held.flatMap((each) => each.guys ?? []);
  const lacks = [
    ...(guys.every(({ tension }) => tension !== undefined) ? [] : ['initial tension (7 to 15 % of breaking)']),
    ...(guys.every(({ grade, breakingStrength }) => grade ?? breakingStrength) ? [] : ['grade of the strand']),
    ...(baseHeld === undefined ? ['whether the base can tilt'] : []),
  ];
  return lacks.length === 0 ? '' : `Both ends tried, since not given: ${listed(lacks)}. `;
}

/** "Largest pull on the highest bracket: 632 lbf …": shown, since the house is not checked. */
export function bracketSays(assessment: Assessment): string | undefined {
  const { input, reactions } = assessment;
  const { bracketPull } = reactions;
  if (bracketPull === undefined) return undefined;
  const { tower, units } = input.station;
  const force = (value: number) => inWords(value, 'force', units, 4);
  const found = guyedForcesOf(assessment);
  const others = found && found.failure === undefined ? found.brackets.slice(0, -1) : undefined;
  const below =
    tower.held.length < 2
      ? ''
      : others
        ? others
            .map(({ height, pull }) => ` At ${inWords(height, 'length', units)}: ${force(pull)}, either way.`)
            .join('')
        : ' Supports below it can be pushed the other way; by how much is not computed.';
  const unknown = input.station.loads.some(({ shape }) => shape.kind === 'wire' && shape.pull === undefined);
  const wires = unknown ? ' The tension of a wire is not given, so it is not included.' : '';
  return `Largest pull on the highest bracket: ${force(bracketPull)} (nominal level, for footings). The house and the fixing of the bracket are not checked.${below}${wires}`;
}
