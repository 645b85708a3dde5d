import type { Trace } from '../foundation/index.ts';
import { METHOD_BY_ID, type SiteMethodId, toOwnBasis, type Wind } from '../methods/index.ts';
import {
  cutIntoSlices,
  type IcedItems,
  icedHungItems,
  icedTowerItems,
  iceMassAbove,
  iceOnLoads,
  leaningLoad,
  windward,
} from '../structure/index.ts';
import { type IceRule, iceThickness } from '../wind/index.ts';
import { type Demand, deadDemandOf, demandOf, siteSpeed, siteWind, type TowerModel } from './tower-model.ts';
import { type CheckUse, towerUses } from './tower-use.ts';

/** The ice case of a plan: its own wind, iced areas, weight of ice, against the same proof. */
export interface IceCase {
  /** Pointers to what geometry cannot tell; with any of them the case is not shown. */
  readonly needs: readonly string[];
  /** Present where nothing is missing. */
  readonly shown?: IceCaseShown;
  /** Design thickness at the top of the tower [m]. */
  readonly thicknessAtTop?: number;
}

export interface IceCaseShown {
  readonly model: TowerModel;
  readonly speed: number;
  readonly bad: Demand;
  readonly uses: readonly CheckUse[];
  /** Thickness of ice by height [m]. */
  readonly iceAt: (z: number) => number;
  /** Of the weight of ice, to the allowable level. */
  readonly weightLevel: number;
  readonly explainItems: (trace: Trace) => void;
  readonly explainTower: (trace: Trace) => void;
}

/**
 * The ice case, where the plan gives ice.
 *
 * F = level·q(gust with ice)·G·iced EPA; weight of ice with its own level
 *
 * @param model the bare tower [-]
 * @returns the case, or undefined where no ice is given [-]
 * @source asce7-10
 */
export function iceCaseOf(model: TowerModel): IceCase | undefined {
  const { inquiry } = model;
  const { ice } = inquiry.site;
  if (!ice) return undefined;
  const rule = METHOD_BY_ID[inquiry.method].ice;
  if (!rule) return { needs: ['/method'] };
  const bareWind = model.hungWind[0]?.wind as Wind;
  const category = inquiry.site.riskCategory ?? 'II';
  const iceAt = (z: number, trace?: Trace) =>
    iceThickness(rule, ice.thickness, category, z, bareWind.topographicFactor(z), trace);
  const { station } = inquiry;
  const hung = icedHungItems(station, iceAt);
  const own: IcedItems = model.ownKnown ? icedTowerItems(station.tower, iceAt) : { items: [], needs: ['/tower/shape'] };
  const needs = [...hung.needs, ...own.needs];
  const thicknessAtTop = iceAt(station.tower.top);
  if (needs.length > 0) return { needs, thicknessAtTop };
  const speed = rule.wind === 'given' ? gustWithIce(inquiry.method, ice.gust) : siteSpeed(inquiry).speed;
  const hungCut = cutIntoSlices(hung.items, model.levels);
  const ownCut = cutIntoSlices(own.items, model.levels);
  const onLoads = iceOnLoads(station, iceAt).map((mass) => rule.weightLevel * mass);
  const winds = model.scenarios.map(({ exposed }) => iceWind(model, exposed, rule, speed));
  const bare = {
    ...model,
    hung: hung.items,
    hungWind: winds.map((wind) => windward(wind, hungCut, 'demand', 'face')),
    ownWind: winds.map((wind, scenario) =>
      windward(wind, ownCut, 'demand', model.scenarios[scenario]?.direction ?? 'face'),
    ),
    dead: {
      ...model.dead,
      weight: withIce(model, rule, iceMassAbove(station, model.levels, iceAt)),
      ...leaningLoad(station, model.levels, onLoads),
    },
    iceOnLoads: onLoads,
  };
  const iced: TowerModel = {
    ...bare,
    deadDemand: model.checks.map((check) => deadDemandOf(bare, check)),
    worked: new Map(),
  };
  const bad = demandOf(iced, iced.hungWind, iced.ownWind, speed, 'bad', false);
  const good = demandOf(iced, iced.hungWind, iced.ownWind, speed, 'good', false);
  return {
    needs,
    thicknessAtTop,
    shown: {
      model: iced,
      speed,
      bad,
      uses: towerUses(iced, bad, good),
      iceAt,
      weightLevel: rule.weightLevel,
      explainItems: (trace) => icedHungItems(station, iceAt, trace),
      explainTower: (trace) => icedTowerItems(station.tower, iceAt, trace),
    },
  };
}

/** Beside ice stands a 3-second gust, which the methods of gusts take as it is. */
function gustWithIce(id: SiteMethodId, gust: number): number {
  return id === 'en1991-1-4' ? toOwnBasis(METHOD_BY_ID[id], gust, 'gust3-nominal', 'site') : gust;
}

/** The gust that goes with ice, or the share of its own wind that the method lets stand with ice. */
function iceWind(model: TowerModel, exposed: Parameters<typeof siteWind>[1], rule: IceRule, speed: number): Wind {
  const { inquiry } = model;
  const own = siteWind(inquiry, exposed, false);
  const level = rule.wind === 'given' ? rule.windLevel : rule.windLevel * rule.wind.shareOfForce;
  const wind = METHOD_BY_ID[inquiry.method].wind({
    ...own.conditions,
    speed,
    speedLevel: 'own',
    // The gust with ice carries no importance of its own.
    riskCategory: 'II',
  });
  return { ...wind, level, leastPressure: 0 };
}

/** The rating's own covered weight is in terms of dead load; ice counts with its level. */
function withIce(model: TowerModel, rule: IceRule, ice: number[]): number[] {
  return model.dead.weight.map((weight, index) => weight + rule.weightLevel * (ice[index] as number));
}
