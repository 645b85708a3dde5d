import { METHOD_BY_ID } from '../methods/index.ts';
import type { Windward } from '../structure/index.ts';
import type { Ground, Hill } from '../wind/index.ts';
import type { Assessment } from './assess.ts';
import { type Gap, LOADS_ASKED, openQuestions } from './gaps.ts';
import type { Inquiry } from './inquiry.ts';
import { movedLoad, staysOn } from './moved-load.ts';
import { type Demand, demandOf, siteSpeed, type TowerModel, towerModel } from './tower-model.ts';
import { badUse } from './tower-use.ts';

/** What is changed, alone, and by how much. */
export type Change =
  | { readonly of: 'speed' | 'gust-effect'; readonly times: number }
  | { readonly of: 'ground'; readonly to: Ground }
  | { readonly of: 'hill'; readonly to: 'none' | 'half-as-far' }
  /** Upwards [m], or downwards where its mast or its tower ends. */
  | { readonly of: 'load-height'; readonly by: number; readonly load: string }
  | { readonly of: 'open-question'; readonly gap: Gap; readonly answer: string };

export interface SensitivityRow {
  readonly change: Change;
  /** JSON pointer of what is changed. */
  readonly at: string;
  /** Use of the link with this change alone, every open question else at its bad end. */
  readonly use: number;
  /** Share by which the use grows for each small share of change: d ln u/d ln x. */
  readonly elasticity?: number;
}

export interface Sensitivity {
  /** Which link: the weakest, else the tower. */
  readonly ofLink: 'tower' | 'tower-top';
  /** Its use with nothing changed. */
  readonly use: number;
  /** Those that move the use most first. */
  readonly rows: readonly SensitivityRow[];
}

/** Loads whose height is tried, those with the largest moment. @source derived */
export const LOADS_MOVED = LOADS_ASKED;
/** How far a load is moved: one foot, or 0.3 m [m]. @source derived */
export const HEIGHT_STEP = { us: 0.3048, si: 0.3 } as const;
/** How far speed and gust effect factor are changed for the use that is told. @source derived */
export const SPEED_STEP = 0.1;
/** Half-width of the central difference of an elasticity. @source derived */
const SMALL = 0.002;

/**
 * What the use of the weakest link hangs on: one thing is changed at a time, all else stays as the plan has it and every
 * open question stays at its bad end.
 *
 * Δu = u(one change) − u; elasticity = [ln u(x·(1+h)) − ln u(x·(1−h))]/[ln(1+h) − ln(1−h)]
 *
 * A coefficient that steps between x·(1−h) and x·(1+h) is in the elasticity, which is then that step's and not a slope.
 * A wire that is moved keeps its pull.
 *
 * @param own the plan as it is [-]
 * @returns the changes ranked by how far they move the use; undefined where there is no use to move [-]
 * @source derived
 */
export function sensitivityOf(own: Assessment): Sensitivity | undefined {
  const { inquiry, model } = own;
  const ofLink = own.weakest === 'tower-top' ? 'tower-top' : 'tower';
  if (model.proven.length + model.momentClaims.length === 0) return undefined;
  const useOf = (changed: Inquiry) => {
    const other = towerModel(changed);
    return badUse(other, ofLink, demandAt(other));
  };
  const use = badUse(model, ofLink, own.bad);
  if (!Number.isFinite(use) || use <= 0) return undefined;
  const rows: SensitivityRow[] = [
    speedRow(inquiry, useOf),
    gustRow(own, ofLink),
    ...groundRows(inquiry, useOf),
    ...hillRows(inquiry, useOf),
    ...heightRows(own, useOf),
    ...questionRows(own, ofLink),
  ];
  const told = rows.filter((row) => Number.isFinite(row.use));
  const moves = (row: SensitivityRow) => Math.abs(row.use - use);
  return { ofLink, use, rows: told.sort((a, b) => moves(b) - moves(a)) };
}

function demandAt(model: TowerModel): Demand {
  return demandOf(model, model.hungWind, model.ownWind, siteSpeed(model.inquiry).speed, 'bad', true);
}

function elasticityOf(useTimes: (times: number) => number): number {
  const [more, less] = [1 + SMALL, 1 - SMALL];
  return (Math.log(useTimes(more)) - Math.log(useTimes(less))) / (Math.log(more) - Math.log(less));
}

function speedRow(inquiry: Inquiry, useOf: (changed: Inquiry) => number): SensitivityRow {
  const useTimes = (times: number) =>
    useOf({ ...inquiry, site: { ...inquiry.site, speed: inquiry.site.speed * times } });
  const times = 1 + SPEED_STEP;
  return {
    change: { of: 'speed', times },
    at: '/site/wind',
    use: useTimes(times),
    elasticity: elasticityOf(useTimes),
  };
}

function gustRow({ model, site }: Assessment, ofLink: Sensitivity['ofLink']): SensitivityRow {
  const useTimes = (times: number) => {
    const gustier = (cut: Windward): Windward => ({
      ...cut,
      wind: { ...cut.wind, gustEffect: (speed, trace) => times * cut.wind.gustEffect(speed, trace) },
    });
    // One wind on what hangs for all scenarios is worked out once, so it must stay one.
    const changed = new Map(model.hungWind.map((cut) => [cut, gustier(cut)]));
    const hung = model.hungWind.map((cut) => changed.get(cut) as Windward);
    const own = model.ownWind.map((cut) => cut && gustier(cut));
    return badUse(model, ofLink, demandOf(model, hung, own, site.speed, 'bad', true), {}, times);
  };
  const times = 1 + SPEED_STEP;
  return {
    change: { of: 'gust-effect', times },
    at: '/method',
    use: useTimes(times),
    elasticity: elasticityOf(useTimes),
  };
}

function groundRows(inquiry: Inquiry, useOf: (changed: Inquiry) => number): SensitivityRow[] {
  const { exposureMatters, grounds } = METHOD_BY_ID[inquiry.method];
  if (!exposureMatters) return [];
  const at = inquiry.method === 'en1991-1-4' ? '/site/terrain' : '/site/exposure';
  return grounds
    .filter((ground) => ground !== inquiry.site.exposure)
    .map((to) => ({
      change: { of: 'ground', to },
      at,
      use: useOf({ ...inquiry, site: { ...inquiry.site, exposure: to } }),
    }));
}

function hillRows(inquiry: Inquiry, useOf: (changed: Inquiry) => number): SensitivityRow[] {
  const { hill, topographicFactor, ...level } = inquiry.site;
  if (!METHOD_BY_ID[inquiry.method].exposureMatters) return [];
  if (!hill && topographicFactor === undefined) return [];
  const at = hill ? '/site/hill' : '/site/topographicFactor';
  const rows: SensitivityRow[] = [{ change: { of: 'hill', to: 'none' }, at, use: useOf({ ...inquiry, site: level }) }];
  if (hill && hill.distance > 0) {
    const nearer: Hill = { ...hill, distance: hill.distance / 2 };
    rows.push({
      change: { of: 'hill', to: 'half-as-far' },
      at,
      use: useOf({ ...inquiry, site: { ...inquiry.site, hill: nearer } }),
    });
  }
  return rows;
}

function heightRows({ inquiry, ledger }: Assessment, useOf: (changed: Inquiry) => number): SensitivityRow[] {
  const { station } = inquiry;
  const moments = new Map(ledger.rows.map((row) => [row.at, row.momentAtFoot]));
  const heaviest = [...station.loads]
    .sort((a, b) => (moments.get(b.at) ?? 0) - (moments.get(a.at) ?? 0))
    .slice(0, LOADS_MOVED);
  return heaviest.flatMap((load): SensitivityRow[] => {
    const step = HEIGHT_STEP[station.units];
    const by = [step, -step].find((each) => staysOn(station, load, each));
    if (by === undefined) return [];
    const loads = station.loads.map((each) => (each === load ? movedLoad(load, by) : each));
    return [
      {
        change: { of: 'load-height', by, load: load.name },
        at: load.at,
        use: useOf({ ...inquiry, station: { ...station, loads } }),
      },
    ];
  });
}

/** For every open question the answer that helps most. */
function questionRows({ model, bad, site }: Assessment, ofLink: Sensitivity['ofLink']): SensitivityRow[] {
  return openQuestions(model, bad, site.speed, ofLink).gaps.map((gap) => {
    const best = gap.useIf.reduce((least, option) => (option.use < least.use ? option : least));
    return { change: { of: 'open-question', gap, answer: best.answer }, at: gap.at, use: best.use };
  });
}
