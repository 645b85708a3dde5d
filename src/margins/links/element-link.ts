import type { TubePiece, TubeRow } from '../../areas/index.ts';
import { GRAVITY, type Trace } from '../../foundation/index.ts';
import {
  type ElementBending,
  type ElementSegment,
  elementBending,
  type Load,
  type Slice,
  sliceForces,
  tubeSection,
  type WindItem,
  type Windward,
} from '../../structure/index.ts';
import { actualWindward } from '../holds-to.ts';
import { holdsToUse } from '../holds-to-use.ts';
import { siteSpeed, type TowerModel } from '../tower-model.ts';
import { verdictOf } from '../verdict.ts';
import { canBeLowered, type Link } from './link.ts';

/** A row of elements or a boom of which every segment's wall and the alloy are told. */
interface Member {
  readonly load: Load;
  readonly row: TubeRow;
  readonly number: number;
  readonly segments: readonly ElementSegment[];
}

/**
 * The elements and booms of which the plan tells segments, walls and strength: bent by the wind and their own weight, each
 * where a segment leaves the next larger one.
 *
 * u = √(M_wind² + M_weight²)/M_all
 *
 * @param model the tower [-]
 * @returns a link for each such row [-]
 * @source derived
 */
export function elementLinks(model: TowerModel): readonly Link[] {
  return membersOf(model).map((member) => linkOf(model, member));
}

function membersOf(model: TowerModel): readonly Member[] {
  return model.inquiry.station.loads.flatMap((load) => {
    if (load.shape.kind !== 'tubes') return [];
    return load.shape.rows.flatMap((row, number): Member[] => {
      const segments = segmentsOf(row);
      return segments ? [{ load, row, number, segments }] : [];
    });
  });
}

/** From the hold outwards: the taper is written to one tip and stands on both sides. */
function segmentsOf({ pieces, yieldStrength }: TubeRow): readonly ElementSegment[] | undefined {
  if (yieldStrength === undefined || pieces.length < 2 || pieces.length % 2 !== 0) return undefined;
  const half = pieces.slice(pieces.length / 2);
  if (!half.every((piece): piece is TubePiece & { wall: number } => piece.wall !== undefined)) return undefined;
  return half.map(({ diameter, length, wall }) => ({
    outside: diameter,
    wall: wall as number,
    length,
    // The stricter of the two metals where nobody says: its rupture counts too.
    material: 'aluminium',
    yieldStrength,
  }));
}

function linkOf(model: TowerModel, member: Member): Link {
  const { load, number } = member;
  const base = { id: `elements:${load.name}:${number + 1}`, kind: 'elements', name: load.name } as const;
  const { inquiry } = model;
  const { speed } = siteSpeed(inquiry);
  const [hung] = actualWindward(model);
  const at = (cuts: readonly Windward[], V: number, least: boolean) =>
    cuts.reduce<ElementBending | undefined>((worst, cut) => {
      const here = bent(cut, member, V, least);
      return !worst || largest(here) > largest(worst) ? here : worst;
    }, undefined) as ElementBending;
  const bending = at(model.hungWind, speed, true);
  if (bending.notShown.length > 0) return { ...base, verdict: 'not-shown', because: 'not-computed', needs: [] };
  const use = largest(bending);
  const byWind = {
    design: (V: number) => largest(at(model.hungWind, V, false)),
    actual: (V: number) => largest(at(hung, V, false)),
    steadyUpTo: Math.min(...[...model.hungWind, ...hung].map((cut) => cut.steadyUpTo)),
  };
  const holds = holdsToUse(inquiry, byWind, speed, 1);
  const keeps =
    holds && canBeLowered(model) ? holdsToUse(inquiry, byWind, speed, 1 - inquiry.wanted.margin) : undefined;
  const joint = bending.joints.reduce((most, each) => ((each.use ?? 0) > (most.use ?? 0) ? each : most));
  return {
    ...base,
    verdict: verdictOf(use, use, inquiry.wanted.margin),
    needs: [],
    result: {
      use,
      of: 'bending',
      demand: joint.moment,
      capacity: joint.moment / (joint.use ?? 1),
      along: joint.at,
      useRange: [use, use],
      headings: {},
      ...(holds ? { holdsTo: holds } : {}),
      ...(keeps ? { keepsMarginTo: keeps.gust } : {}),
    },
  };
}

const largest = ({ joints }: ElementBending) => joints.reduce((most, { use }) => Math.max(most, use ?? 0), 0);

/** One side of one member in a wind: force for each length from the pieces of its own diameter. */
function bent(
  cut: Windward,
  { load, row, segments }: Member,
  speed: number,
  least: boolean,
  trace?: Trace,
): ElementBending {
  const forces = sliceForces(cut, speed, 'bad', least);
  const perLength = segments.map((segment) => {
    let most = 0;
    cut.slices.forEach((slice, index) => {
      const item = cut.items[slice.item] as WindItem;
      const { part } = slice as Slice;
      if (item.at !== load.at || part.what !== row.along || part.diameter !== segment.outside) return;
      const [area, force] =
        row.along === 'boom'
          ? [slice.side, forces.side[index] as number]
          : [slice.front, forces.front[index] as number];
      if (area > 0) most = Math.max(most, (force / area) * segment.outside);
    });
    return most;
  });
  const weight = row.along === 'upright' ? [] : segments.map((each) => tubeSection(each).weightPerLength * GRAVITY);
  return elementBending(segments, { wind: perLength, ...(weight.length > 0 ? { weight } : {}) }, trace);
}

/**
 * The working of an element.
 *
 * @param model the tower [-]
 * @param link its link [-]
 * @param trace the working [-]
 * @returns nothing [-]
 * @source derived
 */
export function explainElements(model: TowerModel, link: Link, trace: Trace): void {
  const member = membersOf(model).find(({ load, number }) => link.id === `elements:${load.name}:${number + 1}`);
  if (!member || !link.result) return;
  bent(model.hungWind[0] as Windward, member, siteSpeed(model.inquiry).speed, true, trace);
}
