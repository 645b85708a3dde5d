import type { LatticeShape } from '../../areas/index.ts';
import { bareTowerWindKnown, type Section, type SectionShape, type Tower } from '../../structure/index.ts';
import type { CheckInput } from '../check-input.ts';

/** How a tower of unknown shape may be built. */
export const TOWER_KINDS = ['lattice', 'pole'] as const;
export type TowerKind = (typeof TOWER_KINDS)[number];

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

/**
 * The plan's own tower; where it has no shape, one of every kind without any wind on itself, and at both ends of what is
 * plausible of it. What is required is a largest of straight lines in the own drag, so that its most is at an end.
 *
 * @source derived
 */
export function towersOf(plan: CheckInput): Towers {
  const { tower } = plan.station;
  if (bareTowerWindKnown(tower)) return [{ plan }];
  const known = tower.sections.flatMap(({ shape }) => (shape ? [shape.kind] : []));
  const kinds = known.length === 0 ? TOWER_KINDS : TOWER_KINDS.filter((kind) => known.includes(kind));
  const [first, ...others] = kinds.flatMap((kind): readonly TowerMeant[] => [
    { plan, kind },
    ...PLAUSIBLE_TOWERS[kind].map((shape) => ({ plan: withTower(plan, shaped(tower, shape)), kind })),
  ]);
  return [first as TowerMeant, ...others];
}

function withTower(plan: CheckInput, tower: Tower): CheckInput {
  return { ...plan, station: { ...plan.station, tower } };
}

function shaped(tower: Tower, shape: SectionShape): Tower {
  return {
    ...tower,
    sections: tower.sections.map(
      (section): Section =>
        section.shape ? section : { ...section, shape, ...(shape.kind === 'pole' ? { notGiven: ['sides'] } : {}) },
    ),
  };
}
