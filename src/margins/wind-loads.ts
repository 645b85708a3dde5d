import { type WindDirection, worstHeading } from '../areas/index.ts';
import { nth } from '../foundation/index.ts';
import type { Wind } from '../methods/index.ts';
import { groupedSum, type SlicesInWind, sliceForces, type WindItem, worstOfGroups } from '../structure/index.ts';
import type { Demand, TowerModel } from './model.ts';

/** One thing the wind touches, at the headings that are worst for the moment at the lowest level compared. */
export interface WindLoadRow {
  readonly name: string;
  readonly at: string;
  readonly kind: WindItem['kind'];
  readonly low: number;
  readonly high: number;
  /** Area before any coefficient, by wind along and across its heading [m²]. */
  readonly frontArea: number;
  readonly sideArea: number;
  /** Effective projected area [m²]. */
  readonly front: number;
  readonly side: number;
  /** Largest effective over largest plain area. */
  readonly coefficient: number;
  /** Mean pressure over its area, and gust effect factor: force = level × pressure × G × EPA at its heading [Pa]. */
  readonly pressure: number;
  readonly gustEffect: number;
  /** Effective area at the ledger's heading [m²]. */
  readonly facing: number;
  /** Allowable level. */
  readonly force: number;
  readonly momentAtBase: number;
  readonly momentAtTop: number;
}

export interface WindLoads {
  readonly rows: readonly WindLoadRow[];
  readonly total: { readonly force: number; readonly momentAtBase: number; readonly momentAtTop: number };
  /** Height the foot column is about [m]. */
  readonly foot: number;
  /** Wind heading worst for what faces its own way, and rotator heading against the wind for what turns [rad]. */
  readonly headings: { readonly fixed?: number; readonly turning?: number };
  /** Which way the wind meets the tower itself, where that matters. */
  readonly direction?: WindDirection;
  /** The wind of its forces. */
  readonly wind: Wind;
}

/**
 * The ledger of a tower at the unfavourable end of its readings, of the direction and the reading of the tower that bend its foot
 * most: its rows add up to the shear and moment there. What the tower itself proves least in may be another.
 *
 * F = Σλ·q·G·C·A, M = ΣF·z
 *
 * @param speed of the site, in the basis of its method [m/s]
 * @source derived
 */
export function windLoadsOf(model: TowerModel, speed: number, demand: Demand): WindLoads {
  const scenario = heaviestOf(demand, model.levels.length - 1);
  const { levels, input } = model;
  const { foot, top } = input.station.tower;
  const { appurtenances, bareTower, direction } = nth(model.scenarios, scenario);
  const forces = sliceForces(appurtenances, speed, 'unfavourable', true);
  const profile = nth(demand.scenarios, scenario).appurtenances;
  const last = levels.length - 1;
  const sums = groupedSum(profile, 'moment', last);
  const { fixed, turning } = worstOfGroups(sums);
  const rows = rowsOf(appurtenances, forces, speed, foot, top, worstHeading(sums.fixed), worstHeading(sums.turning));
  if (bareTower)
    rows.push(...rowsOf(bareTower, sliceForces(bareTower, speed, 'favourable', true), speed, foot, top, 0, 0));
  const total = { force: 0, momentAtBase: 0, momentAtTop: 0 };
  for (const row of rows) {
    total.force += row.force;
    total.momentAtBase += row.momentAtBase;
    total.momentAtTop += row.momentAtTop;
  }
  return {
    rows,
    total,
    foot,
    headings: { ...(fixed === undefined ? {} : { fixed }), ...(turning === undefined ? {} : { turning }) },
    ...(model.scenarios.every((each) => each.direction === direction) ? {} : { direction }),
    wind: appurtenances.wind,
  };
}

/** The scenario with the largest moment at the foot. */
function heaviestOf({ scenarios }: Demand, last: number): number {
  const moments = scenarios.map(
    ({ appurtenances, bareTower }) => nth(appurtenances.moment, last) + (bareTower ? nth(bareTower.moment, last) : 0),
  );
  return moments.indexOf(Math.max(...moments));
}

function rowsOf(
  cut: SlicesInWind,
  forces: { readonly front: number[]; readonly side: number[] },
  speed: number,
  foot: number,
  top: number,
  fixed: number,
  turning: number,
): WindLoadRow[] {
  const { wind } = cut;
  const gustEffect = wind.gustEffect(speed);
  return cut.items.map((item, number) => {
    const row = { frontArea: 0, sideArea: 0, front: 0, side: 0, facing: 0, force: 0, momentAtBase: 0, momentAtTop: 0 };
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let index = nth(cut.from, number); index < nth(cut.from, number + 1); index += 1) {
      const slice = nth(cut.slices, index);
      const along = nth(forces.front, index);
      const across = nth(forces.side, index);
      const angle = (item.turn === 'turning' ? turning : fixed) - item.heading;
      const facing =
        item.turn === 'turning' || item.turn === 'fixed'
          ? along * Math.cos(angle) ** 2 + across * Math.sin(angle) ** 2
          : along;
      const perArea = nth(cut.forceFactor, index) * gustEffect * speed * speed;
      if (item.kind !== 'wire-pull') {
        row.frontArea += slice.front;
        row.sideArea += slice.side;
      }
      row.front += along / perArea;
      row.side += across / perArea;
      row.facing += facing / perArea;
      row.force += facing;
      row.momentAtBase += facing * (slice.z - foot);
      row.momentAtTop += facing * Math.max(0, slice.z - top);
      low = Math.min(low, slice.low);
      high = Math.max(high, slice.high);
    }
    const plain = Math.max(row.frontArea, row.sideArea);
    const levelled = wind.toAllowableFactor * wind.forceDirectionFactor * gustEffect * row.facing;
    return {
      name: item.name,
      at: item.at,
      kind: item.kind,
      low,
      high,
      ...row,
      coefficient: plain > 0 ? Math.max(row.front, row.side) / plain : 0,
      pressure: levelled > 0 ? row.force / levelled : 0,
      gustEffect,
    };
  });
}
