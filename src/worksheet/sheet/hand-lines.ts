import type { Answer } from '../../answer/index.ts';
import { figures } from '../../words/index.ts';
import { READ, RECKONED, readBack } from './printed.ts';

type WindLoadRow = Answer['windLoads']['rows'][number];

/** One line for a pencil: force = area × pressure × factor, moment = force × height above the base. */
export interface HandLine {
  readonly name: string;
  /** What is multiplied; absent where the force is taken as it stands. */
  readonly factors?: { readonly area: string; readonly pressure: string; readonly factor: string };
  readonly force: string;
  /** Above the base; absent where the moment is taken as it stands. */
  readonly height?: string;
  readonly moment: string;
}

export interface HandLines {
  readonly lines: readonly HandLine[];
  readonly total: { readonly force: string; readonly moment: string };
  /** What the factor is made of. */
  readonly factorSays: string;
  /** Rows of the wind loads that are combined in one line. */
  readonly together: readonly string[];
  /** The use of the tower by the same pencil, where its check is governed at the base by these very sums. */
  readonly ratio?: { readonly of: 'shear' | 'moment'; readonly capacity: string; readonly ratio: string };
}

/** All lines, the sum and the ratio with them. */
const LINES = 10;
/** Rounding of four figures, several times over. */
const ROUNDING = 0.003;

/**
 * The shear and moment at the base in lines to be redone by hand: every printed result is that of the printed figures,
 * and the sums come to those of the answer but for their rounding.
 */
export function handLinesOf(document: Answer): HandLines {
  const { windLoads, design, reactions } = document;
  const loadEffects = windLoads.rows.filter((row) => row.force !== 0);
  const stays = reactions.withoutWind.shear.value !== 0 || reactions.withoutWind.moment.value !== 0;
  const ratio = usable(document);
  const room = LINES - 1 - (stays ? 1 : 0) - (ratio ? 1 : 0);
  const { rows, together } = gathered(loadEffects, room);
  const level = design.level * design.directionFactorInForce;
  const lines: HandLine[] = rows.map((row) => lineOf(row, level));
  if (stays) {
    const { shear, moment } = reactions.withoutWind;
    lines.push({
      name: 'present without wind',
      force: figures(shear.value, RECKONED),
      moment: figures(moment.value, RECKONED),
    });
  }
  const total = { force: summed(lines.map(({ force }) => force)), moment: summed(lines.map(({ moment }) => moment)) };
  const tower = document.checks[0];
  const capacity = tower?.capacity && figures(tower.capacity.value, RECKONED);
  return {
    lines,
    total,
    factorSays: factorSays(document, rows),
    together,
    ...(ratio && capacity
      ? {
          ratio: {
            of: ratio,
            capacity,
            ratio: figures(readBack(ratio === 'shear' ? total.force : total.moment) / readBack(capacity), READ),
          },
        }
      : {}),
  };
}

type Row = Pick<WindLoadRow, 'name' | 'facing' | 'pressure' | 'gustEffect' | 'force' | 'momentAtBase'>;

function lineOf({ name, facing, pressure, gustEffect, force, momentAtBase }: Row, level: number): HandLine {
  const factors = {
    area: figures(facing, RECKONED),
    pressure: figures(pressure, RECKONED),
    factor: figures(level * gustEffect, RECKONED),
  };
  const byHand = readBack(factors.area) * readBack(factors.pressure) * readBack(factors.factor);
  const forceByHand = figures(byHand, RECKONED);
  const height = figures(momentAtBase / force, RECKONED);
  return {
    name,
    factors,
    force: forceByHand,
    height,
    moment: figures(readBack(forceByHand) * readBack(height), RECKONED),
  };
}

function summed(printed: readonly string[]): string {
  const sum = printed.reduce((total, each) => total + readBack(each), 0);
  return figures(sum, RECKONED);
}

/** The largest stand alone; of the tower's sections and of what is left each make one line. */
function gathered(rows: readonly WindLoadRow[], room: number) {
  if (rows.length <= room) return { rows, together: [] };
  const tower = rows.filter(({ kind }) => kind === 'tower');
  const others = rows.filter(({ kind }) => kind !== 'tower');
  const ownLine = tower.length > 0 ? 1 : 0;
  if (others.length + ownLine <= room) {
    return {
      rows: [...others, ...together(tower, `the tower’s ${tower.length} parts combined`)],
      together: namesOf(tower),
    };
  }
  const bySize = others.toSorted((a, b) => b.momentAtBase - a.momentAtBase);
  const alone = new Set(bySize.slice(0, room - ownLine - 1));
  const rest = others.filter((row) => !alone.has(row));
  return {
    rows: [
      ...others.filter((row) => alone.has(row)),
      ...together(rest, `the other ${rest.length} combined`),
      ...together(tower, tower.length === 1 ? (tower[0]?.name ?? '') : `the tower’s ${tower.length} parts combined`),
    ],
    together: namesOf([...rest, ...(tower.length > 1 ? tower : [])]),
  };
}

function namesOf(rows: readonly WindLoadRow[]): readonly string[] {
  return rows.map(({ name }) => name);
}

/** Areas added; pressure and height such that force and moment are those of all of them. */
function together(rows: readonly WindLoadRow[], name: string): readonly Row[] {
  if (rows.length === 0) return [];
  const sum = (of: (row: WindLoadRow) => number) => rows.reduce((total, row) => total + of(row), 0);
  const facing = sum((row) => row.facing);
  const [first] = rows as [WindLoadRow];
  const gustEffect = sum((row) => row.facing * row.gustEffect) / facing || first.gustEffect;
  return [
    {
      name,
      facing,
      gustEffect,
      pressure: sum((row) => row.facing * row.pressure * row.gustEffect) / (facing * gustEffect),
      force: sum((row) => row.force),
      momentAtBase: sum((row) => row.momentAtBase),
    },
  ];
}

function factorSays({ design }: Answer, rows: readonly Row[]): string {
  const gusts = [...new Set(rows.map(({ gustEffect }) => figures(gustEffect)))];
  const parts = [
    `${figures(design.level)} to the allowable level`,
    ...(design.directionFactorInForce === 1 ? [] : [`direction factor ${figures(design.directionFactorInForce)}`]),
    `gust effect factor ${gusts.length === 1 ? gusts[0] : 'of the row'}`,
  ];
  return parts.join(' × ');
}

/** Whether the tower's check is governed at the base by the sums of the wind loads, and which. */
function usable({ checks, windLoads, reactions }: Answer): 'shear' | 'moment' | undefined {
  const tower = checks[0];
  if (!tower?.demand || !tower.capacity || reactions.supportedAbove) return undefined;
  const { of, value } = tower.demand;
  if (of !== 'shear' && of !== 'moment') return undefined;
  const sum = reactions.allowable[of].value;
  const lowest = Math.min(...windLoads.rows.map(({ low }) => low));
  if (tower.where && Math.abs(tower.where.value - lowest) > 1e-6 * Math.max(1, lowest)) return undefined;
  return Math.abs(sum - value) <= ROUNDING * value ? of : undefined;
}
