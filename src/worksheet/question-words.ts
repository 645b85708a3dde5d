import type { AreaKind } from '../areas/index.ts';
import { DISPLAY_UNITS, displayValue, type UnitSystem } from '../foundation/index.ts';
import { type CheckInput, type OpenQuestion, ratedSupports } from '../margins/index.ts';
import { METHOD_BY_ID, type MethodId } from '../methods/index.ts';
import type { Ground } from '../wind/index.ts';
import { AREA_WORDS, figures, GROUND_WORDS, inWords, listed, ratioFigures } from '../words/index.ts';

/** The question behind a gap, as one asks it. */
export function questionOf(question: OpenQuestion, input: CheckInput): string {
  switch (question.question) {
    case 'rating-method':
      return 'By which standard did the maker rate the tower?';
    case 'rating-exposure':
    case 'rating-terrain':
      return 'For which ground did the maker rate the tower?';
    case 'rating-class':
      return 'For which class of structure did the maker rate the tower?';
    case 'rating-area-kind':
      return `Which area is ${ratedArea(question, input)}?`;
    case 'load-area-kind':
      return `Which area is stated for ${question.of}?`;
    case 'tower-members':
      return 'How thick are the legs and braces of the tower, and how high is a panel?';
  }
}

function ratedArea(question: OpenQuestion, input: CheckInput): string {
  const rating = input.ratings.find((each) => question.at.startsWith(`${each.at}/`));
  const [row] = rating?.claim.kind === 'area' ? rating.claim.rows : [];
  return row ? `the rating’s ${inWords(row.area, 'area', input.station.units)}` : 'the rating’s area';
}

/** An answer to a gap in words. */
export function answerInWords(question: OpenQuestion, answer: string): string {
  switch (question.question) {
    case 'rating-method':
      return METHOD_BY_ID[answer as MethodId].title;
    case 'rating-exposure':
    case 'rating-terrain':
      return GROUND_WORDS[answer as Ground];
    case 'rating-class':
      return `class ${answer}`;
    case 'rating-area-kind':
    case 'load-area-kind':
      return AREA_WORDS[answer as AreaKind];
    case 'tower-members':
      return `${answer} of a face solid`;
  }
}

/** What finding out may bring: "Ask the maker for which ground: it may take you from 0.84 to 0.63." */
export function promiseOf(question: OpenQuestion, ratio: number): string {
  const best = question.ratioIf.reduce((least, option) => (option.ratio < least.ratio ? option : least));
  if (best.ratio >= ratio) return 'No answer makes this better.';
  return `It may take you from ${ratioFigures(ratio)} to ${ratioFigures(best.ratio)} (${answerInWords(question, best.answer)}).`;
}

/** Everything that is missing; several weights in one sentence, and several ratings for other heights. */
export function missingSentences(needs: readonly string[], input: CheckInput): string {
  const weights = needs.filter((need) => need.endsWith('/weight'));
  const tops = needs.filter(isRatedTop);
  const others = needs.filter((need) => !need.endsWith('/weight') && !(tops.length > 1 && isRatedTop(need)));
  const said = others.map((need) => missingInWords(need, input));
  if (tops.length > 1) said.push(otherTops(tops, input));
  if (weights.length > 1) said.push(`${weights.length} weights are missing; a scale or the data sheets have them.`);
  else if (weights.length === 1) said.push(missingInWords(weights[0] as string, input));
  return said.join(' ');
}

const isRatedTop = (pointer: string) => /^\/ratings\/\d+\/top$/.test(pointer);

function ratingAt(pointer: string, { ratings }: CheckInput): CheckInput['ratings'][number] | undefined {
  return ratings.find(({ at }) => pointer.startsWith(`${at}/`));
}

/** "36 and 70 ft": exact enough that two heights which differ read differently. */
function heightsInWords(heights: readonly number[], system: UnitSystem): string {
  const each = heights.map((height) => figures(displayValue(height, 'length', system), 5));
  return `${listed(each)} ${DISPLAY_UNITS[system].length.label}`;
}

function otherTops(pointers: readonly string[], input: CheckInput): string {
  const { tower, units } = input.station;
  const tops = pointers.map((pointer) => ratingAt(pointer, input)?.top ?? tower.top);
  const [stated, yours] = [heightsInWords([...new Set(tops)], units), heightsInWords([tower.top], units)];
  return tops.length === 1
    ? `Its rating is stated for a top at ${stated}; yours is at ${yours}.`
    : `Its ratings are stated for tops at ${stated}; yours is at ${yours}.`;
}

function otherSupports(pointer: string, input: CheckInput): string {
  const { tower, units } = input.station;
  const stated = heightsInWords(ratingAt(pointer, input)?.held ?? [], units);
  if (tower.held.length > 0) {
    const heights = tower.held.map(({ height }) => height).sort((a, b) => a - b);
    return `Its rating is stated for supports at ${stated}; yours are at ${heightsInWords(heights, units)}.`;
  }
  const yours = tower.support === 'roof' ? 'stands on a roof and is held nowhere' : 'stands by itself';
  return `Its rating is stated for a tower held at ${stated}; yours ${yours}, which the rating says nothing of.`;
}

/** Why a tower that leans on supports is not compared: none told, or one at its very top. */
function supportsInWords({ station, ratings }: CheckInput): string {
  const { tower, units } = station;
  if (tower.held.length > 0) return 'It is held at its very top; below its highest support nothing is compared.';
  const rated = ratedSupports(ratings, tower);
  if (rated.length < 2) return 'Where the tower is held is missing; the maker’s drawing has it.';
  const sets = rated.map((heights) => heightsInWords(heights, units));
  return `Where the tower is held is missing, and its ratings are for different supports: ${sets.join('; ')}. Give those of yours.`;
}

/** "The beam hangs below the highest bracket, where nothing is compared." */
function hungLow(pointer: string, { station }: CheckInput): string {
  const load = station.loads.find(({ at }) => pointer === `${at}/height`);
  const support = station.tower.support === 'bracketed' ? 'bracket' : 'guys';
  return `“${load?.name ?? 'Something'}” hangs below the highest ${support}, where nothing is compared.`;
}

/** What is missing, by the field that would hold it. */
export function missingInWords(pointer: string, input: CheckInput): string {
  if (pointer === '/method') return 'This standard has no ice here; compare with another.';
  if (pointer === '/tower/held') return supportsInWords(input);
  if (/^\/ratings\/\d+\/held$/.test(pointer)) return otherSupports(pointer, input);
  if (isRatedTop(pointer)) return otherTops([pointer], input);
  if (/^\/loads\/\d+\/height$/.test(pointer)) return hungLow(pointer, input);
  const field = pointer.split('/').at(-1) ?? '';
  const words: Readonly<Record<string, string>> = {
    ratings: 'No rating of the tower is given; the maker’s sheet has it.',
    wind: 'The rating names no wind; an area without a speed proves nothing. The maker’s sheet has it.',
    shape: 'The tower’s shape is missing, so its own wind is unknown; a tape measure has it.',
    mast: 'No mast is given, though something stands above the tower’s top.',
    wall: 'The mast’s wall is missing; a caliper at its end has it.',
    yield: 'The mast’s steel grade is missing; the seller’s invoice or mill sheet has it. We do not assume one.',
    ultimate: 'What its aluminium breaks at is missing; the mill sheet of the alloy and temper has it.',
    inside: 'How far the mast reaches down inside the tower is missing; a tape measure has it.',
    ratedWind: 'Its own rated wind is missing; its manual may have it.',
    basis: 'Which kind of wind its maker means (a gust, a fastest mile, a mean) is missing; he may tell.',
    icedArea: 'Its area with ice is missing, and geometry cannot tell it; its maker may have it.',
    leg: 'The members of the tower are not given, so their ice cannot be worked out; a tape measure has them.',
    level: 'Whether that is an allowable load or its strength is not told; the maker knows it.',
    year: 'No standard known here goes with the rating’s kind of speed and its year; name the standard that it is by.',
    method: 'The rating names no standard, so it proves none of the wind on the tower itself; the maker knows it.',
    foundation: 'Nothing is said of the footing; the maker’s drawing or the soil’s values have it.',
    weight: `A weight is missing (${pointer.slice(1).replaceAll('/', ' ')}); a scale or the data sheet has it.`,
    bearing: 'Where the bearing is, or whether there is one, is not told.',
    tension: 'The pull of the wire is missing; give its tension, or its sag and weight.',
    raisedBy: 'What raises it is not told: where the line is anchored and where it takes hold.',
    rating: 'What the gear may pull is not told; its plate or its maker has it.',
    asDrawn: 'Whether guys, brackets and footing are the maker’s own is not said.',
    cables:
      'Below the highest support nothing is compared, and lines and the tower itself catch more wind there than is rated for the tower itself.',
    tower:
      'Below the highest support nothing is compared, and the tower itself catches more wind there than the rated one.',
  };
  return words[field] ?? `Missing: ${pointer}.`;
}
