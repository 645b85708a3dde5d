import {
  icedLattice,
  icedPole,
  icedRoundPart,
  icedShape,
  iceMass,
  inSlowFlow,
  latticeParts,
  partsOfShape,
  poleParts,
} from '../areas/index.ts';
import { type Trace, under } from '../foundation/index.ts';
import type { Level } from './level.ts';
import { outsideAlong } from './mast-tubes.ts';
import type { Load, Section, Station, Tower } from './station.ts';
import { ALIKE_ON_TOWER, appurtenanceItems, type WindItem } from './wind-item.ts';

/** Ice thickness by height [m]. */
export type IceAt = (z: number, trace?: Trace) => number;

/** Items with ice, and pointers to what would be needed where geometry cannot tell. */
export interface IcedItems {
  readonly items: readonly WindItem[];
  readonly needs: readonly string[];
}

/**
 * Everything that hangs on the tower, with ice.
 *
 * @param iceAt thickness of ice by height [m]
 * @source asce7-10
 */
export function icedAppurtenanceItems(station: Station, iceAt: IceAt, trace?: Trace): IcedItems {
  const needs: string[] = [];
  const bare = appurtenanceItems(station);
  const items = bare.flatMap((item): WindItem[] =>
    under(trace, item.name, () => {
      if (item.kind !== 'load') {
        const parts = item.parts.flatMap((part) => icedRoundPart(part, (z) => iceAt(z, trace), trace));
        return [{ ...item, parts: inSlowFlow(parts) }];
      }
      const load = station.loads.find((each) => each.at === item.at);
      // The ice of its upper end, where it is thickest, counts for all of a load.
      const shape = load && icedShape(load.shape, iceAt(load.high, trace), trace);
      if (!load || !shape) {
        needs.push(`${item.at}/icedArea`);
        return [];
      }
      return [{ ...item, parts: inSlowFlow(partsOfShape(shape, load.low, load.high, load.count, trace)) }];
    }),
  );
  return { items, needs };
}

/**
 * The tower itself with ice, one item a section; a section has the ice of its upper end.
 *
 * @param iceAt thickness of ice by height [m]
 * @source asce7-10
 */
export function icedTowerItems(tower: Tower, iceAt: IceAt, trace?: Trace): IcedItems {
  const needs: string[] = [];
  const items = tower.sections.flatMap((section): WindItem[] =>
    under(trace, section.name, () => {
      const parts = icedSectionParts(section, tower, iceAt(section.high, trace), trace);
      if (!parts) {
        needs.push(`${section.at}/leg`);
        return [];
      }
      return [{ name: section.name, at: section.at, kind: 'tower', parts: inSlowFlow(parts), ...ALIKE_ON_TOWER }];
    }),
  );
  return { items, needs: [...new Set(needs)] };
}

function icedSectionParts(section: Section, tower: Tower, ice: number, trace: Trace | undefined) {
  const { shape, low, high } = section;
  if (!shape) return undefined;
  if (shape.kind === 'pole') {
    const iced = icedPole(shape, ice, trace);
    return poleParts(iced, low, high, (tower.top - tower.foot) / ((iced.width[0] + iced.width[1]) / 2), 1);
  }
  const iced = icedLattice(shape, ice, trace);
  return iced && latticeParts(iced, low, high, 0, 1, trace);
}

/**
 * Mass of the ice on each load.
 *
 * m = n·ρ·A·l
 *
 * @param iceAt thickness by height [m]
 * @returns by load [kg]
 * @source asce7-10
 */
export function iceOnLoads(station: Station, iceAt: IceAt): number[] {
  return station.loads.map(({ count, shape, low, high }) => count * iceMass(shape, iceAt(high), high - low));
}

/**
 * Weight of ice above every level, the tower's own included.
 *
 * Σ ρ·π·t·(D + t)·L
 *
 * @param station what stands where; what geometry cannot tell adds none
 * @param iceAt thickness of ice by height [m]
 * @returns the mass above each level [kg]
 * @source asce7-10
 */
export function iceMassAbove(station: Station, levels: readonly Level[], iceAt: IceAt): number[] {
  const { tower, mast } = station;
  const lumps: { readonly z: number; readonly mass: number }[] = [];
  const handedOverAt = mast?.foot ?? tower.top;
  const iceOnTube = (diameter: number, length: number, ice: number) =>
    iceMass({ kind: 'tube', along: 'upright', diameter: [diameter, diameter], length }, ice, length);
  iceOnLoads(station, iceAt).forEach((mass, number) => {
    const { on, low } = station.loads[number] as Load;
    lumps.push({ z: on === 'mast' ? Math.min(low, handedOverAt) : low, mass });
  });
  if (mast) {
    for (const { low, high, outside } of outsideAlong(mast, handedOverAt)) {
      lumps.push({ z: handedOverAt, mass: iceOnTube(outside, high - low, iceAt(mast.tip)) });
    }
  }
  for (const section of tower.sections) {
    if (!section.shape) continue;
    // Its own ice stands on its foot.
    lumps.push({ z: section.low, mass: iceMass(section.shape, iceAt(section.high), section.high - section.low) });
  }
  for (const { height, guys } of tower.held) {
    if (!guys) continue;
    // Half of it hangs on the tower, half on the anchor.
    const length = (guys.count * Math.hypot(guys.radius, height - tower.foot)) / 2;
    lumps.push({ z: height, mass: iceOnTube(guys.diameter, length, iceAt(height)) });
  }
  for (const run of station.cables) {
    lumps.push({ z: run.low, mass: run.count * iceOnTube(run.diameter, run.high - run.low, iceAt(run.high)) });
  }
  return levels.map(({ z }) => lumps.reduce((sum, lump) => (lump.z >= z - 1e-9 ? sum + lump.mass : sum), 0));
}
