import { type IceReport, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { Assessment } from '../margins/index.ts';
import type { IceLump } from '../structure/index.ts';
import { figures, inWords } from '../words/index.ts';
import { quantity } from './quantity.ts';

/** The ice on one thing, all its pieces together. */
type IcedRow = Pick<IceLump, 'name' | 'at' | 'low' | 'high' | 'thickness' | 'mass'>;

type Weights = NonNullable<NonNullable<Assessment['ice']>['weights']>;

/** Thickness and weight of ice by height and by what it lies on; undefined where none is given, or no rule tells it. */
export function iceDocument({ ice, input, windRows }: Assessment): IceReport | undefined {
  const weights = ice?.weights;
  if (!weights) return undefined;
  const system = input.station.units;
  const length = (value: number) => quantity(value, 'length', system);
  return told<IceReport>({
    level: weights.level,
    weight: quantity(sumOf(weights.lumps), 'weight', system),
    byHeight: windRows.map(({ height }) => ({
      height: length(height),
      thickness: quantity(weights.iceAt(height), 'diameter', system),
      weightAbove: quantity(massAbove(weights.lumps, height), 'weight', system),
    })),
    rows: rowsOf(weights).map(({ name, at, low, high, thickness, mass }) => ({
      name,
      at,
      low: length(low),
      high: length(high),
      thickness: quantity(thickness, 'diameter', system),
      weight: quantity(mass, 'weight', system),
    })),
    notGiven: weights.needs,
    says: totalSays(weights, system),
  });
}

/** The same in lines: what all of it weighs, then thing by thing. */
export function iceLines({ ice, input }: Assessment): readonly string[] {
  const weights = ice?.weights;
  if (!weights) return [];
  const { units } = input.station;
  return [totalSays(weights, units), ...rowsOf(weights).map((row) => `- ${rowSays(row, units)}`)];
}

const sumOf = (lumps: readonly IceLump[]) => lumps.reduce((sum, { mass }) => sum + mass, 0);

function massAbove(lumps: readonly IceLump[], height: number): number {
  return lumps.reduce((sum, { low, high, mass }) => {
    if (low >= height - 1e-9) return sum + mass;
    return high <= height ? sum : sum + (mass * (high - height)) / (high - low);
  }, 0);
}

/** One row for each thing; a run of many pieces has the thickness of its middle. */
function rowsOf({ lumps, iceAt }: Weights): readonly IcedRow[] {
  const rows = new Map<string, IcedRow>();
  for (const { name, at, low, high, thickness, mass } of lumps) {
    const key = `${at} ${name}`;
    const row = rows.get(key);
    if (!row) {
      rows.set(key, { name, at, low, high, thickness, mass });
      continue;
    }
    const [from, to] = [Math.min(row.low, low), Math.max(row.high, high)];
    rows.set(key, { ...row, low: from, high: to, thickness: iceAt((from + to) / 2), mass: row.mass + mass });
  }
  return [...rows.values()];
}

function totalSays({ lumps, level, needs }: Weights, system: UnitSystem): string {
  const share = level === 1 ? '' : ` ${figures(level)} of it counts at the allowable level.`;
  const unknown =
    needs.length === 0
      ? ''
      : ' The ice on loads with a stated area is not included; their weight with ice is not given.';
  return `All ice weighs ${inWords(sumOf(lumps), 'weight', system, 4)}, at 56 lb/ft³ (897 kg/m³).${share}${unknown}`;
}

function rowSays({ name, low, high, thickness, mass }: IcedRow, system: UnitSystem): string {
  const long = (height: number) => inWords(height, 'length', system);
  const place = high - low < 1e-6 ? `at ${long(low)}` : `${long(low)} to ${long(high)}`;
  // A section without a name of its own is called by its heights.
  const called = name === place ? `tower, ${place}` : `${name}, ${place}`;
  return `${called}: ice ${inWords(thickness, 'diameter', system)} thick, ${inWords(mass, 'weight', system)}.`;
}
