import type { UnitSystem } from '../foundation/index.ts';
import type { Assessment, Check, CheckResult, Compared, LegsAtFoot, LowerAt, RoomLeft } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { beyondInWords, DIMENSION_OF_COMPARED, ofWhat, WORDS_FOR_COMPARED } from './check-words.ts';
import { checkName, placeOfFall, verbOf, WORDS_FOR_BASIS } from './choice-words.ts';
import { heldGustInWords, inWords, listed, ratioFigures, sentence } from './quantity.ts';
import { missingSentences, questionOf } from './question-words.ts';

/** The verdict in a sentence or three: what is known first, then what is not shown. */
export function headline(assessment: Assessment): string {
  const { checks } = assessment;
  const main = mainCheck(assessment);
  const notShown = checks.filter((check) => check.verdict === 'open' && check !== main);
  const names = namesOf(notShown);
  const more = names.length > 6 ? ` and ${names.length - 6} more` : '';
  const tail = notShown.length > 0 ? ` Not shown yet: ${listed(names.slice(0, 6))}${more}.` : '';
  const falls = checks.filter((check) => check.kind === 'fall' && check.verdict === 'over' && check !== main);
  const near = falls.length > 0 ? ` Falling, it may reach the ${listed(falls.map(placeOfFall))}.` : '';
  return `${mainSentence(assessment, main)}${near}${tail}`;
}

/** What checks are called, each name once. */
function namesOf(checks: readonly Check[]): readonly string[] {
  return [...new Set(checks.map((check) => checkName(check)))];
}

/** The check the sentence is about: the worst of those with a verdict; a tower not shown comes before all but one over. */
function mainCheck(assessment: Assessment): Check {
  const { checks } = assessment;
  const tower = checks[0] as Check;
  if (tower.verdict === 'open' && checks.every((check) => check.verdict !== 'over')) return tower;
  const shown = checks.filter((check) => check.result && check.verdict !== 'open');
  const over = shown.filter((check) => check.verdict === 'over');
  const thin = shown.filter((check) => check.verdict === 'low-margin');
  // How far it may fall says nothing of what it takes, nor does what is lifted or weighed in still air: the one comes first
  // only where it alone is over or shown, the other where its verdict is worse.
  const standing = (each: readonly Check[]) => each.filter((check) => check.kind !== 'fall');
  const inWind = (each: readonly Check[]) => each.filter((check) => !isInStillAir(check));
  const orders = [standing(over), over, inWind(thin), thin, inWind(shown), standing(shown), shown];
  const foremost = orders.find((each) => each.length > 0) as readonly Check[];
  return foremost.reduce((worst, check) =>
    (check.result as CheckResult).ratio > (worst.result as CheckResult).ratio ? check : worst,
  );
}

/** Wind has no part in it. */
function isInStillAir({ kind, result }: Check): boolean {
  const still: readonly Check['kind'][] = ['weight', 'raising', 'lying', 'hoist', 'fall'];
  return still.includes(kind) || result?.of === 'weight';
}

function mainSentence(assessment: Assessment, check: Check): string {
  const { input } = assessment;
  const name = checkName(check);
  const { result } = check;
  const system = input.station.units;
  const basis = input.site.basis ?? METHOD_BY_ID[input.method].basis;
  const wind = `your ${inWords(input.site.speed, 'speed', system)} ${WORDS_FOR_BASIS[basis]}`;
  const soFar = assessment.verdict === check.verdict ? '' : ' so far';
  if (result && check.kind === 'fall') return fallSentence(check, result, soFar, system);
  if (result && check.verdict !== 'open') {
    const beyond = check.verdict === 'over' ? beyondInWords(check) : '';
    const said = result.over ?? result;
    const besides = result.over ? ` (${ratioFigures(result.ratio)} ${whereInWords(assessment, result)})` : '';
    return `${sentence(check.verdict)}${soFar}: ${isInStillAir(check) ? '' : `in ${wind} `}the ${name} ${takes(check)} ${ratioFigures(said.ratio)} of ${ofWhat(check)}, ${whereInWords(assessment, said)}${besides}${beyond}.`;
  }
  return notShownSentence(assessment, check, wind);
}

/** What a fall is given beyond its own reach, 10 ft. */
const FALL_SPARE: Readonly<Record<UnitSystem, string>> = { us: 'ten feet', si: '3 m' };

/** Wind has no part in it: how far it may fall, with what to spare, against where the thing stands. */
function fallSentence(check: Check, { demand, capacity }: Compared, soFar: string, system: UnitSystem): string {
  const long = (value: number) => inWords(value, 'length', system);
  const verdict = `${sentence(check.verdict)}${soFar}`;
  return check.verdict === 'over'
    ? `${verdict}: falling, with ${FALL_SPARE[system]} to spare, it needs ${long(demand)}, and the ${placeOfFall(check)} is ${long(capacity)} away.`
    : `${verdict}: falling, with ${FALL_SPARE[system]} to spare, it needs ${long(demand)}; the ${placeOfFall(check)} is ${long(capacity)} away.`;
}

function notShownSentence(assessment: Assessment, check: Check, wind: string): string {
  const { input, questions } = assessment;
  const name = checkName(check);
  const { result } = check;
  const needs = missingSentences(check.needs, input);
  if (!result) return `Not shown: ${name}. ${needs || 'Nothing given proves it.'}`;
  const reads = `${ratioFigures(result.ratio)} of what its rating shows in ${wind}, ${whereInWords(assessment, result)}`;
  switch (check.because) {
    case 'readings-disagree': {
      const [first] = questions.open;
      const ask = first ? ` First to find out: ${questionOf(first, input)}` : '';
      return `Not shown: the ${name} ${takes(check)} ${ratioFigures(result.ratio)} as we had to read it, ${ratioFigures(result.ratioRange[0])} if every open question falls well, ${whereInWords(assessment, result)}.${ask}`;
    }
    case 'beyond-rating':
      return `Not shown: the ${name} ${takes(check)} ${reads}. ${unprovenInWords(result)}`;
    case 'no-ice-rule':
      return `Not shown: ${name}. ${needs}`;
    case 'held':
      return `Not shown: above its highest support the ${name} ${takes(check)} ${reads}. ${needs}`;
    default:
      return `Not shown: the ${name} ${takes(check)} ${reads}, as far as it is known. ${needs}`;
  }
}

/** The verb of a check that has a ratio. */
const takes = (check: Check): string => verbOf(check, 'takes', 'take');

/** More than the proof, or a part of it that nothing proves. */
function unprovenInWords({ ratio }: Compared): string {
  return ratio > 1
    ? 'More than 1 there says only that nothing given shows it: ask the maker.'
    : 'That is where something given proves it; elsewhere nothing does: ask the maker.';
}

/** Comparisons that have no height to tell. */
const FOOTING: readonly Compared['of'][] = ['overturning', 'toe-pressure', 'embedment'];

/** "most in shear at the foot". */
export function whereInWords(assessment: Assessment, result: Compared): string {
  const { tower, units } = assessment.input.station;
  if (result.of === 'wind-ratio') return 'by the wind on the tower itself';
  const what = WORDS_FOR_COMPARED[result.of];
  if (result.along !== undefined) return `in bending, ${inWords(result.along, 'length', units)} from the hold`;
  if (result.height === undefined || FOOTING.includes(result.of)) return what;
  const place =
    Math.abs(result.height - tower.foot) < 1e-6 ? 'at the foot' : `at ${inWords(result.height, 'length', units)}`;
  return `${what} ${result.place === 'top-couple' ? `at the top, ${place}` : place}`;
}

/** What the capacity of a check is called, where it is not a maker's proof. */
const ALLOWED: Partial<Record<Check['kind'], string>> = {
  mast: 'allowed',
  elements: 'allowed',
  antenna: 'rated',
  foundation: 'held',
  fall: 'given',
};

/** Why a check without a comparison is not shown, where nothing that is missing tells it. */
const UNSAID: Partial<Record<NonNullable<Check['because']>, string>> = {
  'not-computed': 'This version does not check it.',
  balanced:
    'As given, nothing hangs off its axis; how far uneven gusts twist a balanced antenna, no rule known to us tells.',
  'no-bearing': 'As given, the mast has no bearing, so that there is nothing to compare its rating with.',
  'held-by-bearing':
    'A bearing holds the mast, and with its foot takes its moment as two forces: there is none to compare this rating with. How much of it a tight clamp takes all the same is not worked out.',
};

/** One check in a line. */
export function checkSays(assessment: Assessment, check: Check): string {
  const { input } = assessment;
  const { units } = input.station;
  const { result } = check;
  const name = sentence(checkName(check));
  if (!result) {
    const needs = isUnstatedClamp(check) ? unstatedClampSays(assessment, check) : missingSentences(check.needs, input);
    if (needs) return `${name}: not shown. ${needs}`;
    return `${name}: not shown. ${UNSAID[check.because ?? 'beyond-rating'] ?? 'Nothing given proves it.'}`;
  }
  const dimension = DIMENSION_OF_COMPARED[result.of];
  const kind = result.of === 'gust' ? ' nominal gust' : '';
  const compared =
    result.of === 'wind-ratio'
      ? ''
      : ` ${inWords(result.demand, dimension, units, 4)}${kind} asked, ${inWords(result.capacity, dimension, units, 4)}${kind} ${ALLOWED[check.kind] ?? 'shown'},`;
  const calm =
    (result.ratioWithoutWind ?? 0) > 1
      ? ` Without any wind ${verbOf(check, 'it is', 'they are')} used to ${ratioFigures(result.ratioWithoutWind ?? 0)} already.`
      : '';
  const holds = result.holdsTo
    ? ` ${verbOf(check, 'Holds', 'Hold')} to an actual gust of ${heldGustInWords(result.holdsTo.gust, units)}.`
    : '';
  const range = result.ratioRange[0] < result.ratio ? ` (${ratioFigures(result.ratioRange[0])} at best)` : '';
  const areaOnly =
    check.because === 'area-only'
      ? ' An area is no force on it: ask the maker what force sideways, torque and weight it takes.'
      : '';
  const unproven = check.because === 'beyond-rating' ? ` ${unprovenInWords(result)}` : '';
  const tellsNeeds = check.because === 'readings-disagree' || check.because === 'held';
  const open = tellsNeeds && check.needs.length > 0 ? ` ${missingSentences(check.needs, input)}` : '';
  const iced =
    check.kind === 'ice' && check.because === 'held'
      ? ' Below its highest support nothing is compared, and ice may catch more wind there than the rated tower itself.'
      : '';
  const turning = result.torque ? torqueSays(result.torque, units) : '';
  const over = result.over ? overSays(assessment, result.over) : '';
  return `${name}: ${check.verdict === 'open' ? 'not shown' : check.verdict},${compared} use ${ratioFigures(result.ratio)}${range}, ${whereInWords(assessment, result)}.${over}${turning}${calm}${holds}${areaOnly}${unproven}${open}${iced}`;
}

/** A rotator on which a mast without a bearing is clamped, of which nobody states what moment it takes. */
const isUnstatedClamp = ({ kind, needs }: Check): boolean => kind === 'rotator' && needs.includes('/ratings');

function unstatedClampSays({ input, mast }: Assessment, { needs }: Check): string {
  const besides = missingSentences(
    needs.filter((need) => need !== '/ratings'),
    input,
  );
  const moment = mast?.clampMoment;
  const figure =
    moment === undefined || besides !== ''
      ? ''
      : `, ${inWords(moment, 'moment', input.station.units, 4)} in your wind,`;
  const says = `No bearing holds the mast: its moment at its foot${figure} comes on the rotator alone, and nothing given shows that it takes it. Ask its maker what moment it takes.`;
  return besides === '' ? says : `${says} ${besides}`;
}

/** The comparison that says over, where another has a larger use and says only that nothing shows it. */
function overSays(assessment: Assessment, over: Compared): string {
  const { units } = assessment.input.station;
  const long = (value: number) => inWords(value, DIMENSION_OF_COMPARED[over.of], units, 4);
  return ` That says only that nothing given shows it. Over it is ${whereInWords(assessment, over).replace(/^most /, '')}: ${long(over.demand)} asked, ${long(over.capacity)} shown, use ${ratioFigures(over.ratio)}.`;
}

/** " Its brake holds it, and in actual gusts up to 41 mph it can turn." */
function torqueSays({ heldBy, turnsWith, turnsUpTo }: NonNullable<CheckResult['torque']>, units: UnitSystem): string {
  if (heldBy === 'turning-torque') return ' No brake is told: it is held by no more than what turns it.';
  if (turnsWith === undefined) return ' Its brake holds it; in which winds it can turn is not told.';
  const upTo =
    turnsUpTo === undefined ? '' : `, and in actual gusts up to ${heldGustInWords(turnsUpTo, units)} it can turn`;
  return ` Its brake holds it${upTo}.`;
}

/** "Lower it when gusts above 64 mph are forecast." */
export function lowerAtSays(
  { input, checks }: Assessment,
  { gust, ofCheck, ratioWithoutWind, without, withoutIce }: LowerAt,
): string {
  const { units } = input.station;
  const weakest = checks.find((check) => check.id === ofCheck);
  const name = weakest ? checkName(weakest) : 'tower';
  const verb = (one: string, several: string) => (weakest ? verbOf(weakest, one, several) : one);
  const others = namesOf(checks.filter((check) => without.includes(check.id)));
  const named = others.map((other) => (other === name ? `what else is stated of the ${name}` : other));
  const rest = named.length === 0 ? '' : ` Not counted, since not shown: ${listed(named)}.`;
  const ice = withoutIce ? ' Ice is not counted in it.' : '';
  if (gust === undefined) {
    return `No forecast is low enough to keep the margin you want: without any wind the ${name} ${verb('is', 'are')} used to ${ratioFigures(ratioWithoutWind ?? 0)} already.${rest}`;
  }
  return `Lower it when gusts of ${inWords(gust, 'speed', units)} are forecast: then the ${name} ${verb('keeps', 'keep')} the margin you want, with ${Math.round(100 * input.wanted.forecast)} % off for the error of a forecast.${rest}${ice}`;
}

/** "Room left on the mast at 56 ft, keeping a margin of 0.2: 3.1 ft² effective, decided by the footing. Not counted: …" */
export function roomSays({ input, checks }: Assessment, { height, on, area, check, without }: RoomLeft): string {
  const { units } = input.station;
  const nameOf = (id: string) => {
    const found = checks.find((each) => each.id === id);
    return found ? checkName(found) : id;
  };
  const size = inWords(Math.abs(area), 'area', units);
  const up = inWords(height, 'length', units);
  const where = on === 'tower' ? `at the top (${up})` : `on the mast at ${up}`;
  const much = area >= 0 ? `${size} effective` : `${size} too much`;
  const rest = without.length === 0 ? '' : ` Not counted: ${listed([...new Set(without.map(nameOf))])}.`;
  return `${area >= 0 ? 'Room left' : 'No room left'} ${where}, keeping a margin of ${ratioFigures(input.wanted.margin)}: ${much}, decided by the ${nameOf(check)}.${rest}`;
}

/** What the legs do at the foot, in a sentence. */
export function legsSay(legs: LegsAtFoot, units: UnitSystem): string {
  const { uplift, upliftWithoutWeight, push, byOutsideWidth } = legs;
  const force = (value: number) => inWords(value, 'force', units, 4);
  const pulls =
    uplift === undefined
      ? `pulls up to ${force(upliftWithoutWeight)} at its foot with no weight counted`
      : `${uplift > 0 ? `pulls up to ${force(uplift)}` : 'is not pulled'} with 0.6 of the weight against it`;
  const presses = push === undefined ? '' : `, and presses up to ${force(push)}`;
  const more = byOutsideWidth
    ? ' The legs were taken as far apart as the face is wide; they stand closer by their thickness, which is not told, and take more.'
    : '';
  return `A leg ${pulls}${presses}, nominal load of foundations; its bolts and concrete are not checked.${more}`;
}

/** "The highest bracket is pulled by up to 632 lbf …": shown, since the house is not checked. */
export function bracketSays({ input, reactions }: Assessment): string | undefined {
  const { bracketPull } = reactions;
  if (bracketPull === undefined) return undefined;
  const { tower, units } = input.station;
  const lower =
    tower.held.length > 1 ? ' Supports below it may be pushed the other way, by what is not worked out.' : '';
  const untold = input.station.loads.some(({ shape }) => shape.kind === 'wire' && shape.pull === undefined);
  const wires = untold ? ' The pull of a wire is not in it, since it is not told.' : '';
  return `Pull on the highest bracket, at most: ${inWords(bracketPull, 'force', units, 4)}, nominal load of foundations; the house and what fastens it there are not checked.${lower}${wires}`;
}
