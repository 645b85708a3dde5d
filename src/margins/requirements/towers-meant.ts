import type { LatticeShape } from '../../areas/index.ts';
import { bareTowerWindKnown, type Section, type SectionShape, type Tower } from '../../structure/index.ts';
import type { CheckInput } from '../check-input.ts';

/** How a tower of unknown shape may be built: a lattice as wide at its top as at its base, one that tapers, or a pole. */
export const TOWER_KINDS = ['lattice', 'tapered', 'pole'] as const;
export type TowerKind = (typeof TOWER_KINDS)[number];

/** What the wind takes a tower of a kind for. */
export const SHAPE_OF_KIND: Readonly<Record<TowerKind, SectionShape['kind']>> = {
  lattice: 'lattice',
  tapered: 'lattice',
  pole: 'pole',
};

/** One tower that the plan may mean. */
interface TowerMeant {
  readonly plan: CheckInput;
  /** Of a tower of unknown shape. */
  readonly kind?: TowerKind;
}
export type Towers = readonly [TowerMeant, ...TowerMeant[]];

/**
 * How thick small towers are: shapes between which the wind on most of them lies. The coefficient of a pole falls over the widths
 * between, so that some of them are tried as well; how many sides it has, nobody tells.
 *
 * @source common-practice
 */
const PLAUSIBLE_TOWERS: Readonly<Record<TowerKind, readonly SectionShape[]>> = {
  lattice: [latticeOf(3, 0.25, 'round', 0.15), latticeOf(4, 0.6, 'flat', 0.25)],
  // Widths half-way up; the first has next to no wind on itself, and legs that lean all the same.
  tapered: [latticeOf(3, 0.25, 'round', 0.001), latticeOf(3, 0.25, 'round', 0.15), latticeOf(4, 0.6, 'flat', 0.25)],
  pole: [0.08, 0.14, 0.2, 0.3].map((width) => ({ kind: 'pole', sides: 0, width: [width, width] })),
};

function latticeOf(
  faces: LatticeShape['faces'],
  width: number,
  members: LatticeShape['members'],
  solidity: number,
): LatticeShape {
  return { kind: 'lattice', faces, members, width: [width, width], solid: { by: 'solidity', solidity } };
}

/** A lattice that tapers is half as wide at its top as at its base. @source common-practice */
const TAPER = 0.5;

/**
 * The plan's own tower; where it has no shape, one of every kind with next to no wind on itself, and at both ends of what is
 * plausible of it. What is required is a largest of straight lines in the own drag, so that its most is at an end. Where legs
 * lean, a force near their apex loads the braces little, so that the same demand needs more of it.
 *
 * @source derived
 */
export function towersOf(plan: CheckInput): Towers {
  const { tower } = plan.station;
  if (bareTowerWindKnown(tower)) return [{ plan }];
  const known = tower.sections.flatMap(({ shape }) => (shape ? [shape.kind] : []));
  const kinds = TOWER_KINDS.filter((kind) => known.length === 0 || known.includes(SHAPE_OF_KIND[kind]));
  const [first, ...others] = kinds.flatMap((kind): readonly TowerMeant[] => [
    ...(kind === 'tapered' ? [] : [{ plan, kind }]),
    ...PLAUSIBLE_TOWERS[kind].map((shape) => ({ plan: withTower(plan, shaped(tower, shape, kind)), kind })),
  ]);
  return [first as TowerMeant, ...others];
}

function withTower(plan: CheckInput, tower: Tower): CheckInput {
  return { ...plan, station: { ...plan.station, tower } };
}

function shaped(tower: Tower, shape: SectionShape, kind: TowerKind): Tower {
  const { foot, top, sections } = tower;
  // The width given is that half-way up.
  const share = (z: number) => (2 * (1 - ((1 - TAPER) * (z - foot)) / (top - foot))) / (1 + TAPER);
  const shapeOf = ({ low, high }: Section): SectionShape => {
    if (kind !== 'tapered') return shape;
    const [width] = shape.width;
    return { ...shape, width: [width * share(low), width * share(high)] };
  };
  return {
    ...tower,
    sections: sections.map(
      (section): Section =>
        section.shape
          ? section
          : { ...section, shape: shapeOf(section), ...(kind === 'pole' ? { notGiven: ['sides'] } : {}) },
    ),
  };
}
