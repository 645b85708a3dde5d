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
import { counterpoiseLoad } from './counterpoise.ts';
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
      if (item.kind !== 'load' && item.kind !== 'counterpoise') {
        const parts = item.parts.flatMap((part) => icedRoundPart(part, (z) => iceAt(z, trace), trace));
        return [{ ...item, parts: inSlowFlow(parts) }];
      }
      const load = [...station.loads, ...counterpoiseOf(station)].find((each) => each.at === item.at);
      const shape = load && icedShape(load.shape, iceAt(middleOf(load), trace), trace);
      if (!load || !shape) {
        needs.push(`${item.at}/icedArea`);
        return [];
      }
      return [{ ...item, parts: inSlowFlow(partsOfShape(shape, load.low, load.high, load.count, trace)) }];
    }),
  );
  return { items, needs };
}

function counterpoiseOf({ tower }: Station): readonly Load[] {
  const load = counterpoiseLoad(tower);
  return load ? [load] : [];
}

/**
 * The height at which the ice of a load is read.
 *
 * (z_low + z_high)/2
 *
 * @returns the height [m]
 * @source project-rule
 */
export function middleOf(place: Pick<Load, 'low' | 'high'>): number {
  return (place.low + place.high) / 2;
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

/** A piece of ice, with its mass all together. */
export interface IceLump {
  readonly name: string;
  /** JSON pointer of what it is on. */
  readonly at: string;
  readonly low: number;
  readonly high: number;
  /** Thickness in the middle of it [m]. */
  readonly thickness: number;
  /** [kg] */
  readonly mass: number;
  /** Where the tower takes it [m]. */
  readonly carriedAt: number;
  /** It rides on the mast. */
  readonly onMast?: true;
  /** Number of the load it is on. */
  readonly load?: number;
}

/**
 * The ice on all of a station, piece by piece, the tower's own included.
 *
 * ρ·π·t·(D + t)·L; of a load with its weight with ice given n·(W_i − W)
 *
 * @param station what stands where; what neither geometry nor the plan tells adds none
 * @param iceAt thickness of ice by height [m]
 * @source asce7-10
 */
export function iceLumps(station: Station, iceAt: IceAt): readonly IceLump[] {
  const { tower, mast } = station;
  const lumps: IceLump[] = [];
  const handedOverAt = mast?.foot ?? tower.top;
  const iceOnTube = (diameter: number, length: number, ice: number) =>
    iceMass({ kind: 'tube', along: 'upright', diameter: [diameter, diameter], length }, ice, length);
  station.loads.forEach((load, number) => {
    const { name, at, low, high, on } = load;
    const thickness = iceAt(middleOf(load));
    const carriedAt = on === 'mast' ? Math.min(low, handedOverAt) : low;
    const mass = iceOnLoad(load, thickness);
    const rides = on === 'mast' ? { onMast: true as const } : {};
    lumps.push({ name, at, low, high, thickness, mass, carriedAt, ...rides, load: number });
  });
  if (mast) {
    for (const { low, high, outside } of outsideAlong(mast, handedOverAt)) {
      const thickness = iceAt(middleOf({ low, high }));
      const mass = iceOnTube(outside, high - low, thickness);
      lumps.push({ name: 'mast', at: '/mast', low, high, thickness, mass, carriedAt: handedOverAt, onMast: true });
    }
  }
  for (const section of tower.sections) {
    const { name, at, shape, low, high } = section;
    if (!shape) continue;
    for (const run of iceAlong(low, high, iceAt)) {
      const mass = iceMass({ ...shape, width: widthsOf(section, run) }, run.ice, run.high - run.low);
      // Its ice stands on its foot.
      lumps.push({ name, at, low: run.low, high: run.high, thickness: run.ice, mass, carriedAt: run.low });
    }
  }
  tower.held.forEach(({ height, guys }, number) => {
    if (!guys) return;
    // Half of it hangs on the tower, half on the anchor.
    const length = (guys.count * Math.hypot(guys.radius, height - tower.foot)) / 2;
    const thickness = iceAt(height);
    const mass = iceOnTube(guys.diameter, length, thickness);
    const at = `/tower/supportedAt/${number}`;
    lumps.push({ name: 'guys, upper half', at, low: height, high: height, thickness, mass, carriedAt: height });
  });
  for (const load of counterpoiseOf(station)) {
    const { name, at, low, high } = load;
    const thickness = iceAt(low);
    const mass = iceOnLoad(load, thickness);
    lumps.push({ name, at, low, high, thickness, mass, carriedAt: tower.hingeHeight ?? low });
  }
  for (const { name, at, low, high, count, diameter } of station.cables) {
    for (const run of iceAlong(low, high, iceAt)) {
      const mass = count * iceOnTube(diameter, run.high - run.low, run.ice);
      lumps.push({ name, at, low: run.low, high: run.high, thickness: run.ice, mass, carriedAt: run.low });
    }
  }
  return lumps;
}

function iceOnLoad({ count, shape, low, high, weight, icedWeight }: Load, thickness: number): number {
  if (icedWeight !== undefined) return count * Math.max(0, icedWeight - (weight ?? 0));
  return count * iceMass(shape, thickness, high - low);
}

/**
 * Pointers to what would tell the weight of ice that neither geometry nor the plan does.
 *
 * @param loads those of a station that count
 */
export function iceWeightsNotGiven(loads: readonly Load[]): readonly string[] {
  return loads
    .filter(({ shape, weight, icedWeight }) =>
      icedWeight === undefined ? !icedByGeometry(shape) : weight === undefined,
    )
    .map(({ at, icedWeight }) => `${at}/${icedWeight === undefined ? 'icedWeight' : 'weight'}`);
}

/** Whether its shape tells what ice on it weighs. */
function icedByGeometry(shape: Load['shape']): boolean {
  if (shape.kind === 'lattice') return shape.solid.by === 'members';
  return shape.kind !== 'stated' && shape.kind !== 'stated-force';
}

/**
 * Weight of ice above every level.
 *
 * Σ m
 *
 * @returns the mass above each level [kg]
 * @source derived
 */
export function iceMassAbove(lumps: readonly IceLump[], levels: readonly Level[]): number[] {
  return levels.map(({ z }) =>
    lumps.reduce((sum, { carriedAt, mass }) => (carriedAt >= z - 1e-9 ? sum + mass : sum), 0),
  );
}
