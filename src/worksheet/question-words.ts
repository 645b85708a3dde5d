import type { AreaKind } from '../areas/index.ts';
import type { Gap, Inquiry } from '../margins/index.ts';
import type { MethodId } from '../methods/index.ts';
import type { Ground } from '../wind/index.ts';
import { methodName, WORDS_FOR_AREA, WORDS_FOR_GROUND } from './choice-words.ts';
import { inWords, useFigures } from './quantity.ts';

/** The question behind a gap, as one asks it. */
export function questionOf(gap: Gap, inquiry: Inquiry): string {
  switch (gap.question) {
    case 'rating-method':
      return 'By which standard did the maker rate the tower?';
    case 'rating-exposure':
    case 'rating-terrain':
      return 'For which ground did the maker rate the tower?';
    case 'rating-class':
      return 'For which class of structure did the maker rate the tower?';
    case 'rating-area-kind':
      return `Which area is ${ratedArea(gap, inquiry)}?`;
    case 'load-area-kind':
      return `Which area is stated for ${gap.of}?`;
    case 'tower-members':
      return 'How thick are the legs and braces of the tower, and how high is a panel?';
  }
}

function ratedArea(gap: Gap, inquiry: Inquiry): string {
  const rating = inquiry.ratings.find((each) => gap.at.startsWith(`${each.at}/`));
  const [row] = rating?.claim.kind === 'area' ? rating.claim.rows : [];
  return row ? `the rating's ${inWords(row.area, 'area', inquiry.station.units)}` : "the rating's area";
}

/** An answer to a gap in words. */
export function answerInWords(gap: Gap, answer: string): string {
  switch (gap.question) {
    case 'rating-method':
      return methodName(answer as MethodId);
    case 'rating-exposure':
    case 'rating-terrain':
      return WORDS_FOR_GROUND[answer as Ground];
    case 'rating-class':
      return `class ${answer}`;
    case 'rating-area-kind':
    case 'load-area-kind':
      return WORDS_FOR_AREA[answer as AreaKind];
    case 'tower-members':
      return `${answer} of a face solid`;
  }
}

/** What finding out may bring: "Ask the maker for which ground: it may take you from 0.84 to 0.63." */
export function promiseOf(gap: Gap, use: number): string {
  const best = gap.useIf.reduce((least, option) => (option.use < least.use ? option : least));
  if (best.use >= use) return 'No answer makes this better.';
  return `It may take you from ${useFigures(use)} to ${useFigures(best.use)} (${answerInWords(gap, best.answer)}).`;
}

/** Everything that is missing; several weights in one sentence. */
export function missingSentences(needs: readonly string[]): string {
  const weights = needs.filter((need) => need.endsWith('/weight'));
  const others = needs.filter((need) => !need.endsWith('/weight'));
  const said = others.map((need) => missingInWords(need));
  if (weights.length > 1) said.push(`${weights.length} weights are missing; a scale or the data sheets have them.`);
  else if (weights.length === 1) said.push(missingInWords(weights[0] as string));
  return said.join(' ');
}

/** What is missing, by the field that would hold it. */
export function missingInWords(pointer: string): string {
  if (pointer === '/method') return 'This standard has no ice here; compare with another.';
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
    method: 'The rating names no standard, so it proves none of the wind on the tower itself; the maker knows it.',
    foundation: 'Nothing is said of the footing; the maker’s drawing or the soil’s values have it.',
    weight: `A weight is missing (${pointer.slice(1).replaceAll('/', ' ')}); a scale or the data sheet has it.`,
    bearing: 'Where the bearing is, or whether there is one, is not told.',
    tension: 'The pull of the wire is missing; give its tension, or its sag and weight.',
    raisedBy: 'What raises it is not told: where the line is anchored and where it takes hold.',
    rating: 'What the gear may pull is not told; its plate or its maker has it.',
    held: 'Where the tower is held is missing; the maker’s drawing has it.',
    asDrawn: 'Whether guys, brackets and footing are the maker’s own is not said.',
    height: 'It hangs below the highest support, where a rating by area proves nothing.',
    cables: 'Lines and the tower’s own drag are more than the rated own drag below the highest support.',
  };
  return words[field] ?? `Missing: ${pointer}.`;
}
