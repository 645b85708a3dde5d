import { GRAVITY, nth } from '../../foundation/index.ts';
import {
  type Bracket,
  type Guy,
  type GuysThere,
  type Held,
  type Section,
  STRAND_GRADES,
  type Strand,
  sectionCarrying,
  steelOf,
  strandOf,
  type Tower,
} from '../../structure/index.ts';

/** Initial tension as a share of breaking strength, where nobody tells it. @source common-practice */
const DRAWN = [0.07, 0.15] as const;
/** Of strand, new and stretched [Pa]. @source common-practice */
const YOUNG = [140e9, 190e9] as const;
/** Of a round strand across the wind, from memory. @source common-practice */
export const DRAG_OF_GUY = 1.2;
/** A bracket with the wall behind it: as good as rigid, and on a wall or eave of wood [N/m]. @source common-practice */
const BRACKETS = [1e9, 2e5] as const;
/** A grip is as strong as its strand, a U-bolt clip is not. @source common-practice */
const SHARE_OF_CLIPS = 0.8;

/** Guys at one height of which all that the model needs is told. */
export interface GuyLevelThere {
  readonly height: number;
  readonly there: GuysThere;
  readonly strand: Strand;
  /** From the axis to their attachment [m]. */
  readonly offset: number;
}

/** What holds a tower, from the foot up, and what is not told of it. */
export interface Supports {
  readonly guys: readonly GuyLevelThere[];
  readonly brackets: readonly number[];
  /** Pointers to what the model cannot do without. */
  readonly needs: readonly string[];
}

/**
 * What holds a tower, as far as the plan tells it.
 *
 * @param tower its supports and sections [m]
 * @returns guys and brackets from the foot up, and pointers to what is missing
 * @source project-rule
 */
export function supportsOf(tower: Pick<Tower, 'held' | 'sections' | 'heldGiven'>): Supports {
  const { held, sections, heldGiven } = tower;
  const needs: string[] = held.length === 0 || !heldGiven ? ['/tower/supportedAt'] : [];
  const guys: GuyLevelThere[] = [];
  const brackets: number[] = [];
  held.forEach(({ height, by, guys: there }, index) => {
    const at = `/tower/supportedAt/${index}`;
    if (by === 'bracket') {
      brackets.push(height);
      return;
    }
    if (!there) {
      needs.push(at);
      return;
    }
    const strand = strandOf(there.diameter);
    const offset = legAt(nth(sections, sectionCarrying(sections, height, 'outer')), height);
    if (!strand) needs.push(`${at}/diameter`);
    if (there.count < 3) needs.push(`${at}/count`);
    if (!strand || offset === undefined || there.count < 3) return;
    if (there.radius <= offset) needs.push(`${at}/radius`);
    guys.push({ height, there, strand, offset });
  });
  guys.sort((a, b) => a.height - b.height);
  // Guys that cross rub on each other: no such tower is worked out.
  guys.forEach(({ height, there }, index) => {
    if (there.radius <= (guys[index + 1]?.there.radius ?? there.radius)) return;
    needs.push(`/tower/supportedAt/${held.findIndex((each: Held) => each.height === height)}/radius`);
  });
  return { guys, brackets: brackets.sort((a, b) => a - b), needs };
}

/** From the axis to a leg, or to the wall of a pole [m]. */
function legAt({ shape, low, high }: Section, height: number): number | undefined {
  if (!shape) return undefined;
  const width = shape.width[0] + ((shape.width[1] - shape.width[0]) * (height - low)) / (high - low);
  if (shape.kind !== 'lattice') return width / 2;
  return shape.faces === 3 ? width / Math.sqrt(3) : width / Math.SQRT2;
}

/** One way in which what nobody tells of the supports may be. */
export interface SupportReading {
  readonly guys: readonly Guy[];
  readonly brackets: readonly Bracket[];
}

/**
 * Every way in which the supports may be drawn, stretch and give: initial tension, stiffness of strand, walls behind brackets.
 *
 * @param supports of a tower of which the model needs nothing more
 * @param foot height of the anchors [m]
 * @source common-practice
 */
export function supportReadings(supports: Supports, foot: number): readonly SupportReading[] {
  const drawn = supports.guys.every(({ there }) => there.tension !== undefined) ? [DRAWN[0]] : DRAWN;
  const young = supports.guys.length > 0 ? YOUNG : [YOUNG[0]];
  const guyed = drawn.flatMap((share) =>
    young.map((modulus) => supports.guys.flatMap((each) => guysOf(each, share, modulus, foot))),
  );
  return guyed.flatMap((guys) => bracketReadings(supports.brackets).map((brackets) => ({ guys, brackets })));
}

/** Up to three brackets each stiff or soft by itself; more of them alike. */
function bracketReadings(heights: readonly number[]): readonly (readonly Bracket[])[] {
  if (heights.length === 0) return [[]];
  if (heights.length > 3) return BRACKETS.map((stiffness) => heights.map((height) => ({ height, stiffness })));
  return heights.reduce<readonly (readonly Bracket[])[]>(
    (so, height) => so.flatMap((below) => BRACKETS.map((stiffness) => [...below, { height, stiffness }])),
    [[]],
  );
}

function guysOf({ height, offset, there, strand }: GuyLevelThere, share: number, modulus: number, foot: number): Guy[] {
  const { count, radius } = there;
  const breaking = breakingOf({ there, strand });
  const weight = strand.mass * GRAVITY;
  // A gauge reads at the anchor; half-way up half of its weight hangs beneath.
  const read = there.tension ?? share * (share === DRAWN[0] ? breaking.least : breaking.most);
  const tension = read + (weight * (height - foot)) / 2;
  return Array.from({ length: count }, (_, number) => ({
    height,
    offset,
    heading: (number * 2 * Math.PI) / count,
    radius,
    anchorHeight: foot,
    stiffness: modulus * steelOf(strand),
    tension,
    weight,
    drag: DRAG_OF_GUY * strand.diameter,
  }));
}

/**
 * What breaks a guy: as stated, or by size and grade; of no told grade anything from the weakest to the strongest.
 *
 * @returns the force [N]
 * @source astm-a475
 */
export function breakingOf(level: Pick<GuyLevelThere, 'there' | 'strand'>): { least: number; most: number } {
  const { there, strand } = level;
  if (there.breakingStrength !== undefined) return { least: there.breakingStrength, most: there.breakingStrength };
  const grades = there.grade === undefined ? STRAND_GRADES : [there.grade];
  const all = grades.map((grade) => strand.breaking[grade]);
  return { least: Math.min(...all), most: Math.max(...all) };
}

/**
 * What share of the strength of a guy its ends leave.
 *
 * @returns the share [-]
 * @source common-practice
 */
export function shareOfEnds(ends: GuysThere['ends']): { least: number; most: number } {
  return { least: ends === 'grips' ? 1 : SHARE_OF_CLIPS, most: ends === 'clips' ? SHARE_OF_CLIPS : 1 };
}
