import {
  type DragPart,
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

/** Ice is read in the middle of every such step of height above the ground, however sections are written [m]. */
const ICE_STEP = 1;

interface IcedRun {
  readonly low: number;
  readonly high: number;
  /** Thickness of ice [m]. */
  readonly ice: number;
}

/** A run of height cut at every step above the ground. */
function iceAlong(low: number, high: number, iceAt: IceAt, trace?: Trace): readonly IcedRun[] {
  const first = Math.floor(low / ICE_STEP + 1e-9);
  const end = Math.ceil(high / ICE_STEP - 1e-9);
  return Array.from({ length: Math.max(1, end - first) }, (_, index) => {
    const step = (first + index) * ICE_STEP;
    return {
      low: Math.max(low, step),
      high: Math.min(high, step + ICE_STEP),
      ice: iceAt(step + ICE_STEP / 2, trace),
    };
  });
}

/**
 * The tower itself with ice, one item a section; the ice goes by the height, not by the section.
 *
 * @param iceAt thickness of ice by height [m]
 * @source asce7-10
 */
export function icedTowerItems(tower: Tower, iceAt: IceAt, trace?: Trace): IcedItems {
  const needs: string[] = [];
  const items = tower.sections.flatMap((section): WindItem[] =>
    under(trace, section.name, () => {
      const parts: DragPart[] = [];
      for (const run of iceAlong(section.low, section.high, iceAt, trace)) {
        const iced = icedSectionParts(section, tower, run, trace);
        if (!iced) {
          needs.push(`${section.at}/leg`);
          return [];
        }
        parts.push(...iced);
      }
      return [{ name: section.name, at: section.at, kind: 'tower', parts: inSlowFlow(parts), ...ALIKE_ON_TOWER }];
    }),
  );
  return { items, needs: [...new Set(needs)] };
}

/** Widths of a section at the ends of a run of it [m]. */
function widthsOf({ shape, low, high }: Section, run: IcedRun): readonly [number, number] {
  const [lower, upper] = shape?.width ?? [0, 0];
  const at = (z: number) => lower + ((upper - lower) * (z - low)) / (high - low);
  return [at(run.low), at(run.high)];
}

function icedSectionParts(section: Section, tower: Tower, run: IcedRun, trace: Trace | undefined) {
  const { shape } = section;
  if (!shape) return undefined;
  if (shape.kind === 'pole') {
    const whole = icedPole(shape, run.ice);
    const aspect = (tower.top - tower.foot) / ((whole.width[0] + whole.width[1]) / 2);
    return poleParts(
      icedPole({ ...shape, width: widthsOf(section, run) }, run.ice, trace),
      run.low,
      run.high,
      aspect,
      1,
    );
  }
  const iced = icedLattice({ ...shape, width: widthsOf(section, run) }, run.ice, trace);
  return iced && latticeParts(iced, run.low, run.high, 0, 1, trace);
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
    const { shape, low, high } = section;
    if (!shape) continue;
    for (const run of iceAlong(low, high, iceAt)) {
      // Its ice stands on its foot.
      const mass = iceMass({ ...shape, width: widthsOf(section, run) }, run.ice, run.high - run.low);
      lumps.push({ z: run.low, mass });
    }
  }
  for (const { height, guys } of tower.held) {
    if (!guys) continue;
    // Half of it hangs on the tower, half on the anchor.
    const length = (guys.count * Math.hypot(guys.radius, height - tower.foot)) / 2;
    lumps.push({ z: height, mass: iceOnTube(guys.diameter, length, iceAt(height)) });
  }
  for (const run of station.cables) {
    for (const { low, high, ice } of iceAlong(run.low, run.high, iceAt)) {
      lumps.push({ z: low, mass: run.count * iceOnTube(run.diameter, high - low, ice) });
    }
  }
  return levels.map(({ z }) => lumps.reduce((sum, lump) => (lump.z >= z - 1e-9 ? sum + lump.mass : sum), 0));
}
