import { remember } from '../foundation/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { type Load, movedLoad, type SlicesInWind, staysOn } from '../structure/index.ts';
import type { Ground, Hill } from '../wind/index.ts';
import type { Assessment } from './assess.ts';
import type { CheckInput } from './check-input.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import { goesByOwnStrength, ownStrengthUse } from './checks/own-strength-check.ts';
import { heldProofOf } from './held/held-proof.ts';
import type { Demand, TowerModel } from './model.ts';
import { LOADS_ASKED, type OpenQuestion, openQuestions } from './open-questions.ts';
import { demandOf, towerModel } from './tower-model.ts';
import { ratioAtWorst } from './tower-ratio.ts';

/** What is changed, alone, and by how much. */
export type Change =
  | { readonly of: 'speed' | 'gust-effect'; readonly times: number }
  | { readonly of: 'ground'; readonly to: Ground }
  | { readonly of: 'hill'; readonly to: 'none' | 'half-as-far' }
  /** Upwards [m], or downwards where its mast or its tower ends. */
  | { readonly of: 'load-height'; readonly by: number; readonly load: string }
  /** Out from the axis [m]. */
  | { readonly of: 'load-offset'; readonly by: number; readonly load: string }
  /** Half as high, so that it sways more. */
  | { readonly of: 'frequency'; readonly times: number }
  /** So many more in a run. */
  | { readonly of: 'lines'; readonly more: number; readonly run: string }
  | { readonly of: 'open-question'; readonly question: OpenQuestion; readonly answer: string };

export interface SensitivityRow {
  readonly change: Change;
  /** JSON pointer of what is changed. */
  readonly at: string;
  /** Use of the check with this change alone, every open question else at its unfavourable end. */
  readonly ratio: number;
  /** Share by which the ratio grows for each small share of change: d ln u/d ln x. */
  readonly elasticity?: number;
}

export interface Sensitivity {
  /** Which check: the weakest, else the tower; of a tower that goes by its own strength that. */
  readonly ofCheck: 'tower' | 'tower-below' | 'tower-top' | 'own-strength';
  /** Its use with nothing changed. */
  readonly ratio: number;
  /** Those that move the ratio most first. */
  readonly rows: readonly SensitivityRow[];
}

/** How far a load is moved: one foot, or 0.3 m [m]. @source derived */
export const HEIGHT_STEP = { us: 0.3048, si: 0.3 } as const;
/** How far speed and gust effect factor are changed for the ratio that is told. @source derived */
export const SPEED_STEP = 0.1;
/** How far a load is moved out from the axis: one foot, or 0.3 m [m]. @source derived */
export const OFFSET_STEP = { us: 0.3048, si: 0.3 } as const;
/** How much lower a natural frequency is tried: formulas and measurements of one tower lie as far apart. @source common-practice */
export const FREQUENCY_TIMES = 0.5;
/** Half-width of the central difference of an elasticity. @source derived */
const SMALL = 0.002;

/**
 * What the ratio of the weakest check hangs on: one thing is changed at a time, all else stays as the plan has it and every
 * open question stays at its unfavourable end.
 *
 * Δu = u(one change) − u; elasticity = [ln u(x·(1+h)) − ln u(x·(1−h))]/[ln(1+h) − ln(1−h)]
 *
 * A coefficient that steps between x·(1−h) and x·(1+h) is in the elasticity, which is then that step's and not a slope.
 * A wire that is moved keeps its pull.
 *
 * @returns the changes ranked by how far they move the ratio; undefined where there is no use to move
 * @source derived
 */
export function sensitivityOf(own: Assessment): Sensitivity | undefined {
  const { model } = own;
  const { input } = model;
  const weakest = own.checks.find(({ id }) => id === own.weakest);
  const compared = (weakest && CHECK_KIND[weakest.kind].comparesTower) ?? 'tower';
  const below = weakest?.kind === 'tower-below' ? weakest.kind : undefined;
  const ofCheck = below ?? (goesByOwnStrength(model) ? 'own-strength' : compared);
  if (ofCheck !== 'own-strength' && model.proven.length + model.momentClaims.length === 0) return undefined;
  const ratioOf = (changed: CheckInput) => {
    const other = towerModel(changed);
    return useOf(other, ofCheck, demandAt(other));
  };
  const ratio = useOf(model, ofCheck, own.unfavourable);
  if (!Number.isFinite(ratio) || ratio <= 0) return undefined;
  const rows: SensitivityRow[] = [
    rowTimes('speed', '/site/wind', (times) =>
      ratioOf({ ...input, site: { ...input.site, speed: input.site.speed * times } }),
    ),
    ...(below ? [] : [gustRow(own, ofCheck)]),
    ...groundRows(input, ratioOf),
    ...hillRows(input, ratioOf),
    ...heightRows(own, ratioOf),
    ...offsetRows(own, ratioOf),
    ...frequencyRows(own.input, input, ratioOf),
    ...lineRows(input, ratioOf),
    ...questionRows(own, ofCheck),
  ];
  const told = rows.filter((row) => Number.isFinite(row.ratio));
  const moves = (row: SensitivityRow) => Math.abs(row.ratio - ratio);
  return { ofCheck, ratio, rows: told.sort((a, b) => moves(b) - moves(a)) };
}

/** Of a check as demanded, the rated wind gustier by as much as the site's. */
function useOf(model: TowerModel, ofCheck: Sensitivity['ofCheck'], demand: Demand, gustier = 1): number {
  if (ofCheck === 'own-strength') return ownStrengthUse(model, demand) ?? Number.NaN;
  if (ofCheck === 'tower-below') return belowUse(model);
  return ratioAtWorst(model, ofCheck, demand, {}, gustier);
}

function belowUse(model: TowerModel): number {
  const proof = heldProofOf(model);
  return proof && proof.failure === undefined ? proof.worst.ratio : Number.NaN;
}

function demandAt(model: TowerModel): Demand {
  return demandOf(model, model.scenarios, model.site.speed, 'unfavourable', true);
}

function elasticityOf(ratioTimes: (times: number) => number): number {
  const [more, less] = [1 + SMALL, 1 - SMALL];
  return (Math.log(ratioTimes(more)) - Math.log(ratioTimes(less))) / (Math.log(more) - Math.log(less));
}

function rowTimes(of: 'speed' | 'gust-effect', at: string, ratioTimes: (times: number) => number): SensitivityRow {
  const times = 1 + SPEED_STEP;
  return { change: { of, times }, at, ratio: ratioTimes(times), elasticity: elasticityOf(ratioTimes) };
}

function gustRow({ model, site }: Assessment, ofCheck: Sensitivity['ofCheck']): SensitivityRow {
  const ratioTimes = (times: number) => {
    const gustier = (cut: SlicesInWind): SlicesInWind => ({
      ...cut,
      wind: { ...cut.wind, gustEffect: (speed, trace) => times * cut.wind.gustEffect(speed, trace) },
    });
    // One wind on what hangs for all scenarios is worked out once, so it must stay one.
    const changed = new Map<SlicesInWind, SlicesInWind>();
    const scenarios = model.scenarios.map(({ appurtenances, bareTower, least }) => ({
      least,
      appurtenances: remember(changed, appurtenances, () => gustier(appurtenances)),
      ...(bareTower ? { bareTower: gustier(bareTower) } : {}),
    }));
    return useOf(model, ofCheck, demandOf(model, scenarios, site.speed, 'unfavourable', true), times);
  };
  return rowTimes('gust-effect', '/method', ratioTimes);
}

function groundRows(input: CheckInput, ratioOf: (changed: CheckInput) => number): SensitivityRow[] {
  const { field, kinds, counts } = METHOD_BY_ID[input.method].ground;
  if (!counts) return [];
  return kinds
    .filter((ground) => ground !== input.site.exposure)
    .map((to) => ({
      change: { of: 'ground', to },
      at: `/site/${field}`,
      ratio: ratioOf({ ...input, site: { ...input.site, exposure: to } }),
    }));
}

function hillRows(input: CheckInput, ratioOf: (changed: CheckInput) => number): SensitivityRow[] {
  const { hill, topographicFactor, ...level } = input.site;
  if (METHOD_BY_ID[input.method].hill === undefined) return [];
  if (!hill && topographicFactor === undefined) return [];
  const at = hill ? '/site/hill' : '/site/topographicFactor';
  const rows: SensitivityRow[] = [
    { change: { of: 'hill', to: 'none' }, at, ratio: ratioOf({ ...input, site: level }) },
  ];
  if (hill && hill.distance > 0) {
    const nearer: Hill = { ...hill, distance: hill.distance / 2 };
    rows.push({
      change: { of: 'hill', to: 'half-as-far' },
      at,
      ratio: ratioOf({ ...input, site: { ...input.site, hill: nearer } }),
    });
  }
  return rows;
}

/**
 * The loads that bend the foot most, those first.
 *
 * @param count how many at the most [-]
 */
export function heaviestLoads(own: Assessment, count: number): readonly Load[] {
  const moments = new Map<string, number>();
  for (const { at, momentAtBase } of own.windLoads.rows) moments.set(at, (moments.get(at) ?? 0) + momentAtBase);
  return [...own.model.input.station.loads]
    .sort((a, b) => (moments.get(b.at) ?? 0) - (moments.get(a.at) ?? 0))
    .slice(0, count);
}

function heightRows(own: Assessment, ratioOf: (changed: CheckInput) => number): SensitivityRow[] {
  const { input } = own.model;
  const { station } = input;
  return heaviestLoads(own, LOADS_ASKED).flatMap((load): SensitivityRow[] => {
    const step = HEIGHT_STEP[station.units];
    const by = [step, -step].find((each) => staysOn(station, load, each));
    if (by === undefined) return [];
    const loads = station.loads.map((each) => (each === load ? movedLoad(load, by) : each));
    return [
      {
        change: { of: 'load-height', by, load: load.name },
        at: load.at,
        ratio: ratioOf({ ...input, station: { ...station, loads } }),
      },
    ];
  });
}

/** A wire pulls at the axis. */
function offsetRows(own: Assessment, ratioOf: (changed: CheckInput) => number): SensitivityRow[] {
  const { input } = own.model;
  const { station } = input;
  const by = OFFSET_STEP[station.units];
  return heaviestLoads(own, LOADS_ASKED)
    .filter(({ shape }) => shape.kind !== 'wire')
    .map((load) => {
      const loads = station.loads.map((each) => (each === load ? { ...load, offset: load.offset + by } : each));
      return {
        change: { of: 'load-offset', by, load: load.name },
        at: load.at,
        ratio: ratioOf({ ...input, station: { ...station, loads } }),
      };
    });
}

function frequencyRows(
  told: CheckInput,
  input: CheckInput,
  ratioOf: (changed: CheckInput) => number,
): SensitivityRow[] {
  const { station } = input;
  const { tower } = station;
  // One that is not told is an open question.
  if (told.station.tower.frequency === undefined || tower.frequency === undefined) return [];
  const slower = { ...tower, frequency: FREQUENCY_TIMES * tower.frequency };
  const ratio = ratioOf({ ...input, station: { ...station, tower: slower } });
  return [{ change: { of: 'frequency', times: FREQUENCY_TIMES }, at: '/tower/frequency', ratio }];
}

function lineRows(input: CheckInput, ratioOf: (changed: CheckInput) => number): SensitivityRow[] {
  const { station } = input;
  // An assumed mast is no line that there could be more of.
  const runs = station.cables.filter(({ at }) => at !== '/mast');
  return runs.map((run) => {
    const cables = station.cables.map((each) => (each === run ? { ...run, count: run.count + 1 } : each));
    return {
      change: { of: 'lines', more: 1, run: run.name },
      at: run.at,
      ratio: ratioOf({ ...input, station: { ...station, cables } }),
    };
  });
}

/** For every open question the answer that helps most. */
function questionRows(own: Assessment, ofCheck: Sensitivity['ofCheck']): SensitivityRow[] {
  // What is open of its own strength is asked for by its fields.
  if (ofCheck === 'own-strength' || ofCheck === 'tower-below') return [];
  const asked = openQuestions(own, own.assumptions, ofCheck).open.filter((question) => question.ofCheck === ofCheck);
  return asked.map((question) => {
    const best = question.ratioIf.reduce((least, option) => (option.ratio < least.ratio ? option : least));
    return { change: { of: 'open-question', question, answer: best.answer }, at: question.at, ratio: best.ratio };
  });
}
