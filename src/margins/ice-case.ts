import { nth, remember, type Trace } from '../foundation/index.ts';
import { METHOD_BY_ID, type Wind, type WindStructure } from '../methods/index.ts';
import {
  type Cut,
  cutIntoSlices,
  eccentricWeightLoad,
  type IcedItems,
  type IceLump,
  icedAppurtenanceItems,
  icedTowerItems,
  iceLumps,
  iceMassAbove,
  iceWeightsNotGiven,
  type ShapeReading,
  slicesInWind,
  wirePullItems,
  withShapesRead,
} from '../structure/index.ts';
import { type IceRule, iceThickness } from '../wind/index.ts';
import type { CheckInput } from './check-input.ts';
import type { Demand, IceWeights, Scenario, TowerModel } from './model.ts';
import { deadDemandOf, demandOf, siteWind } from './tower-model.ts';
import { type ComparisonRatio, towerRatios } from './tower-ratio.ts';

/** The ice case of a plan: its own wind, iced areas, weight of ice, against the same proof. */
export interface IceCase {
  /** Pointers to what geometry cannot tell; with any of them the case is not shown. */
  readonly needs: readonly string[];
  /** Present where nothing is missing. */
  readonly shown?: IceCaseShown;
  /** Absent where the method has no rule for ice. */
  readonly weights?: WeightsWithIce;
}

/** What ice weighs, wherever the plan or geometry tells it. */
export interface WeightsWithIce extends IceWeights {
  /** Piece by piece, as it lies [kg]. */
  readonly lumps: readonly IceLump[];
  /** Brings it to the allowable level. */
  readonly level: number;
  /** Thickness of ice by height [m]. */
  readonly iceAt: (z: number) => number;
}

export interface IceCaseShown {
  /** The same tower with ice; its site's speed is that of the gust with ice. */
  readonly model: TowerModel;
  /** From the allowable level of its wind to the nominal load of foundations. */
  readonly toNominal: number;
  readonly unfavourable: Demand;
  readonly ratios: readonly ComparisonRatio[];
  /** Thickness of ice by height [m]. */
  readonly iceAt: (z: number) => number;
  /** Of the weight of ice, to the allowable level. */
  readonly weightLevel: number;
  readonly explainItems: (trace: Trace) => void;
  readonly explainTower: (trace: Trace, scenario: Pick<Scenario, 'shapes'>) => void;
}

/**
 * The ice case, where the plan gives ice.
 *
 * F = level·q(gust with ice)·G·iced EPA; weight of ice with its own level
 *
 * @source asce7-10
 */
export function iceCaseOf(model: TowerModel): IceCase | undefined {
  const { input } = model;
  const { ice } = input.site;
  if (!ice) return undefined;
  const rule = METHOD_BY_ID[input.method].ice;
  if (!rule) return { needs: ['/method'] };
  const bareWind = model.scenarios[0].appurtenances.wind;
  const category = input.site.iceCategory ?? input.site.riskCategory ?? 'II';
  const iceAt = (z: number, trace?: Trace) =>
    iceThickness(rule, ice.thickness, category, z, bareWind.topographicFactor(z), trace);
  const { station } = input;
  const iced = icedAppurtenanceItems(station, iceAt);
  const appurtenances = { ...iced, items: [...iced.items, ...wirePullItems(station, iceAt)] };
  const towers = new Map<ShapeReading, IcedItems>();
  const ownRead = (shapes: ShapeReading) =>
    remember(towers, shapes, () => icedTowerItems(withShapesRead(station, shapes).tower, iceAt));
  const own: IcedItems = model.bareTowerKnown
    ? ownRead(model.scenarios[0].shapes)
    : { items: [], needs: ['/tower/shape'] };
  const needs = [...appurtenances.needs, ...own.needs];
  const weights = weightsWithIce(input, iceAt, rule);
  if (needs.length > 0) return { needs, weights };
  const speed = 'speedOfGust' in rule.wind ? rule.wind.speedOfGust(ice.gust) : model.site.speed;
  const appurtenanceCut = cutIntoSlices(appurtenances.items, model.cutAt);
  const cuts = new Map<ShapeReading, Cut>();
  const bareTowerCut = (shapes: ShapeReading) =>
    remember(cuts, shapes, () => cutIntoSlices(ownRead(shapes).items, model.cutAt));
  const inIce = (scenario: Scenario): Scenario => {
    const wind = iceWind(model, scenario.windStructure, speed);
    return {
      ...scenario,
      appurtenances: slicesInWind(wind, appurtenanceCut, 'demand', 'worse'),
      bareTower: slicesInWind(wind, bareTowerCut(scenario.shapes), scenario.own, scenario.direction),
    };
  };
  const [first, ...others] = model.scenarios;
  const bare = {
    ...model,
    appurtenances: appurtenances.items,
    scenarios: [inIce(first), ...others.map(inIce)] as const,
    site: { ...model.site, speed },
    dead: {
      ...model.dead,
      weight: withIce(model, rule, heaviestIceAbove(model, iceAt)),
      ...eccentricWeightLoad(station, model.levels, weights.onLoads),
    },
    ice: weights,
  };
  const icedModel: TowerModel = {
    ...bare,
    deadDemand: model.comparisons.map((comparison) => deadDemandOf(bare, comparison)),
    worked: new Map(),
  };
  const unfavourable = demandOf(icedModel, icedModel.scenarios, speed, 'unfavourable', false);
  const favourable = demandOf(icedModel, icedModel.scenarios, speed, 'favourable', false);
  return {
    needs,
    weights,
    shown: {
      model: icedModel,
      toNominal: rule.weightLevel / rule.windLevel,
      unfavourable,
      ratios: towerRatios(icedModel, unfavourable, favourable),
      iceAt,
      weightLevel: rule.weightLevel,
      explainItems: (trace) => icedAppurtenanceItems(station, iceAt, trace),
      explainTower: (trace, { shapes }) => icedTowerItems(withShapesRead(station, shapes).tower, iceAt, trace),
    },
  };
}

function weightsWithIce({ station }: CheckInput, iceAt: (z: number) => number, rule: IceRule): WeightsWithIce {
  const lumps = iceLumps(station, iceAt);
  const sum = (counts: (lump: IceLump) => boolean) =>
    rule.weightLevel * lumps.reduce((total, lump) => (counts(lump) ? total + lump.mass : total), 0);
  const ofTower = ({ at }: IceLump) => at.startsWith('/tower');
  return {
    lumps,
    level: rule.weightLevel,
    iceAt,
    onLoads: station.loads.map((_, number) => sum(({ load }) => load === number)),
    onMast: sum(({ onMast }) => onMast === true),
    aloft: sum((lump) => !ofTower(lump)),
    all: sum(() => true),
    needs: iceWeightsNotGiven(station.loads),
    needsOfMast: iceWeightsNotGiven(station.loads.filter(({ on }) => on === 'mast')),
  };
}

/**
 * The gust that goes with ice, or the share of its own wind that the method lets stand with ice.
 *
 * level·share instead of λ
 *
 * @param speed of that wind, in the basis of the method [m/s]
 * @throws RangeError where the method has no ice
 * @source asce7-10
 */
export function iceWind(asked: Pick<TowerModel, 'input' | 'site'>, windStructure: WindStructure, speed: number): Wind {
  const { input, site } = asked;
  const method = METHOD_BY_ID[input.method];
  const { ice: rule } = method;
  if (!rule) throw new RangeError(`${input.method} has no ice`);
  const own = siteWind(input, windStructure, false, site);
  const share = 'shareOfForce' in rule.wind ? rule.wind.shareOfForce : 1;
  const wind = method.wind({
    ...own.conditions,
    speed,
    speedLevel: 'own',
    // The gust with ice carries no importance of its own.
    riskCategory: 'II',
  });
  return { ...wind, toAllowableFactor: rule.windLevel * share, leastPressure: 0 };
}

/** Crossed diagonals have most of it, where nobody tells how the tower is braced [kg]. */
function heaviestIceAbove(
  { input: { station }, levels, scenarios }: TowerModel,
  iceAt: (z: number) => number,
): number[] {
  const crossed = withShapesRead(station, { ...scenarios[0].shapes, pattern: 'cross' });
  return iceMassAbove(iceLumps(crossed, iceAt), levels);
}

/** The rating's own covered weight is in terms of dead load; ice counts with its level. */
function withIce(model: TowerModel, rule: IceRule, ice: number[]): number[] {
  return model.dead.weight.map((weight, index) => weight + rule.weightLevel * nth(ice, index));
}
