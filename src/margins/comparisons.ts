import { nth } from '../foundation/index.ts';
import { isStoutTube, type Level, rimOf, type Section, type Station } from '../structure/index.ts';

/** Where a tower is compared. */
export const COMPARED_PLACES = ['base', 'joint', 'section', 'top-couple'] as const;

/** One comparison of what is asked with what is proven, at a level. */
export interface Comparison {
  readonly of: 'moment' | 'shear';
  readonly check: 'tower' | 'tower-top';
  /** Number of the level whose demand is compared. */
  readonly level: number;
  /** Where it is proven, each place as good as another. */
  readonly provenAt: Proof;
  /** What a ratio over 1 means: beyond what the maker stands behind, or only that nothing shows it. */
  readonly beyond: 'over' | 'open';
  readonly place: (typeof COMPARED_PLACES)[number];
  readonly section: number;
  /** Height at which tapering legs would meet [m]; Infinity where they stand upright. */
  readonly apex: number;
  /** Of the shear in a stout round tube: its diameter [m], and the number of the moment there, which proves shear too. */
  readonly tube?: { readonly diameter: number; readonly moment: number };
}

/** Levels of which any proves the same: the largest counts, each times its factor. */
export type Proof = readonly {
  readonly level: number;
  readonly factor: number;
  /** Where legs would meet there, if it is another place than that of the comparison [m]. */
  readonly apex?: number;
  /** A moment, though the comparison be of shear: of a couple, its factor is one over its arm. */
  readonly of?: 'moment';
}[];

/**
 * Every comparison of a station: foot and joints point by point, sections of one make sharing their joints; a tapering
 * section by the force in its legs where members are constant and point by point otherwise; the couple of the mast at the
 * top. Inside a uniform section the demand is largest and the proof best at its lower end, so that end speaks for it. Of a
 * section that slides in another that end is the other's rim: below it hands its moment over.
 *
 * @param comparedFrom no level below this is compared: the highest support of a held tower [m]
 */
export function comparisonsOf(station: Station, levels: readonly Level[], comparedFrom: number): readonly Comparison[] {
  const { sections, foot } = station.tower;
  const comparisons: Comparison[] = [];
  const stout = sections.map((section) => isStoutTube(section, station.tower));
  const plain = new Map(levels.flatMap((level, index) => (level.zone === 'couple' ? [] : [[level.z, index] as const])));
  const bottoms = sections.map((_, number) => rimOf(sections, number));
  const joints = bottoms.map((bottom) => (bottom >= comparedFrom ? plain.get(bottom) : undefined));
  // Of a section that ends within the couple the end is there.
  const lowEnds = bottoms.map((bottom) =>
    bottom >= comparedFrom ? levels.findLastIndex(({ z }) => z === bottom) : undefined,
  );
  const add = (
    level: number,
    section: number,
    place: Comparison['place'],
    beyond: Comparison['beyond'],
    moment: Proof,
    shear: Proof,
  ) => {
    const common = { check: place === 'top-couple' ? 'tower-top' : 'tower', level, place, section } as const;
    const apex = apexOf(nth(sections, section));
    const bending: Comparison = { of: 'moment', ...common, apex, provenAt: moment, beyond };
    const own = nth(sections, section);
    const tube = stout[section]
      ? { diameter: widthAt(own, nth(levels, level).z), moment: comparisons.length }
      : undefined;
    comparisons.push(bending);
    comparisons.push({ of: 'shear', ...common, apex, provenAt: shear, beyond: 'open', ...(tube ? { tube } : {}) });
  };
  sections.forEach((section, number) => {
    const bottom = nth(bottoms, number);
    if (section.high <= Math.max(comparedFrom, bottom)) return;
    const lowEnd = joints[number];
    if (lowEnd !== undefined) {
      const atFoot = section.low === foot;
      const proof = [lowEnd, ...(atFoot ? [] : jointsAlike(sections, number, joints))].map(at);
      add(lowEnd, number, atFoot ? 'base' : 'joint', 'over', proof, proof);
    }
    levels.forEach((level, index) => {
      if (level.z < comparedFrom || level.z < bottom || level.z > section.high) return;
      if (level.zone === 'couple') {
        const ends = level.z > bottom ? lowEndsAlike(sections, number, lowEnds) : [];
        add(index, number, 'top-couple', 'open', [...ends, index].map(at), [at(index)]);
      } else if (level.zone === 'plain' && level.z !== bottom && (!section.uniform || level.z === comparedFrom)) {
        add(index, number, 'section', 'open', legProof(section, index, levels, Math.max(bottom, comparedFrom)), [
          at(index),
        ]);
      }
    });
  });
  return comparisons;
}

function at(level: number): Proof[number] {
  return { level, factor: 1 };
}

/** Where legs and panels are constant, the leg force M/b proven anywhere in the section serves all of it. */
function legProof(section: Section, index: number, levels: readonly Level[], comparedFrom: number): Proof {
  const shape = section.shape;
  if (section.uniform || shape?.kind !== 'lattice' || shape.solid.by !== 'members') return [at(index)];
  const widthHere = widthAt(section, nth(levels, index).z);
  return levels.flatMap((level, other) => {
    if (level.zone !== 'plain' || level.z < comparedFrom || level.z > section.high) return [];
    return [{ level: other, factor: widthHere / widthAt(section, level.z) }];
  });
}

/** Of the legs' axes, in a lattice told by its members. */
function widthAt(section: Section, z: number): number {
  const { shape } = section;
  const [low, high] = shape?.width ?? [1, 1];
  const leg = shape?.kind === 'lattice' && shape.solid.by === 'members' ? shape.solid.leg : 0;
  return low - leg + ((high - low) * (z - section.low)) / (section.high - section.low);
}

/** Other joints between two sections of the same make. */
function jointsAlike(
  sections: readonly Section[],
  number: number,
  joints: readonly (number | undefined)[],
): readonly number[] {
  const { make, within } = nth(sections, number);
  if (make === undefined || within || sections[number - 1]?.make !== make) return [];
  return sections.flatMap((section, other) => {
    const joint = joints[other];
    const ofMake = section.make === make && sections[other - 1]?.make === make;
    const alike = ofMake && other > 0 && other !== number && !section.within;
    return alike && joint !== undefined ? [joint] : [];
  });
}

/** Lower ends of a uniform section and of those of its make, within the couple or below it: the steel there is the same. */
function lowEndsAlike(
  sections: readonly Section[],
  number: number,
  lowEnds: readonly (number | undefined)[],
): readonly number[] {
  const { make, uniform } = nth(sections, number);
  if (!uniform) return [];
  return sections.flatMap((section, other) => {
    const alike = other === number || (make !== undefined && section.make === make && section.uniform);
    const end = alike ? lowEnds[other] : undefined;
    return end === undefined ? [] : [end];
  });
}

/**
 * Where the axes of the legs meet; by the outside width, a little higher, where their thickness is not told.
 *
 * @returns the height [m]; Infinity where they stand upright
 */
export function apexOf(section: Section): number {
  const shape = section.shape;
  if (shape?.kind !== 'lattice' || shape.width[0] <= shape.width[1]) return Number.POSITIVE_INFINITY;
  const spacing = shape.width[0] - (shape.solid.by === 'members' ? shape.solid.leg : 0);
  return section.low + (spacing * (section.high - section.low)) / (shape.width[0] - shape.width[1]);
}
