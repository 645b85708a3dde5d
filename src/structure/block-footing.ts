import { cite, defineFormula, evaluate, GRAVITY, Refusal, type Trace, under, variable } from '../foundation/index.ts';
import { pressureUnder, type ToePressure, type WorstToe, worstToePressure } from './toe-pressure.ts';

/**
 * Density taken for concrete where the plan gives none [kg/m³]. US drawings have 150 lb/ft³, which is 2402.8: the lighter
 * holds less against tipping, and presses on the soil a thousandth less.
 *
 * @source common-practice
 */
export const CONCRETE_DENSITY = 2400;

/** Share of the dead load that may hold a structure down. @source ibc-2018 */
export const DEAD_SHARE = 0.6;

/** Factor against overturning that older codes ask for under nominal wind. @source common-practice */
export const OLDER_OVERTURNING_FACTOR = 1.5;

/**
 * Forces at the foot of the tower, which is the top of the footing, at the nominal level: 0.6 of a strength-level wind,
 * the whole of any other. Moments of the pull of wires and of weight off the axis are part of `moment`.
 */
export interface FootLoad {
  /** [N] */
  readonly shear: number;
  /** [N·m] */
  readonly moment: number;
  /** Of the tower and all on it [kg]; absent: not known. */
  readonly weight?: number;
  /** Where not all of it is known: what is, which surely holds down [kg]. */
  readonly leastWeight?: number;
}

export interface BlockFooting {
  /** [m] */
  readonly length: number;
  readonly width: number;
  /** Thickness, from the foot of the tower to the underside [m]. */
  readonly depth: number;
  /** Of the concrete [kg/m³]; absent: taken, and said. */
  readonly density?: number;
  /** What the soil may carry [Pa]; absent: the toe is shown, not compared. */
  readonly bearing?: number;
}

/** The block about one of its edges. */
export interface BlockAboutEdge {
  /** The side along which it leans. */
  readonly along: 'length' | 'width';
  /** Dead load times half the side [N·m]. */
  readonly holding: number;
  /** Moment over 0.6 of what holds: 0.6D + 0.6W. */
  readonly ratio: number;
  /** 1.5 times the moment over what holds. */
  readonly olderRatio: number;
  /** What holds over the moment; absent without a moment. */
  readonly factor?: number;
  /** Absent where the weight is not known. */
  readonly toe?: ToePressure;
}

export interface BlockComparison {
  /** [kg/m³] */
  readonly density: number;
  /** The density is the usual one, not the plan's. */
  readonly densityTaken: boolean;
  /** Of the block [kg]. */
  readonly blockWeight: number;
  /** Of the block and, if known, all on it [N]. */
  readonly deadLoad: number;
  /** False: the block and what is known on it hold, which counts too little; the pressure under it is then not known. */
  readonly weightKnown: boolean;
  /** Base moment and base shear times depth [N·m]. */
  readonly momentAtUnderside: number;
  /** About the edge across the length, and about the one across the width. */
  readonly edges: readonly [BlockAboutEdge, BlockAboutEdge];
  /** The larger of both edges; about a corner more holds. */
  readonly overturning: { readonly ratio: number; readonly olderRatio: number };
  /** The heading that presses hardest, between the axes; absent where the weight is not known. */
  readonly toe?: WorstToe;
  /** Largest pressure over what the soil may carry; absent where one of both is not known, or the block tips. */
  readonly toePressureRatio?: number;
  /** What the block may have for it, or need, that is left out. */
  readonly notChecked: readonly ['sliding', 'soil-at-its-sides', 'groundwater', 'strength-of-the-concrete'];
}

const deadLoadVariable = variable('D', 'weight that holds down', 'force', 100, 1e6);
const side = variable('B', 'side along which it leans', 'length', 0.3, 6);
const momentVariable = variable('M_u', 'moment at the underside, nominal', 'moment', 0, 1e6);
const holdingVariable = variable('M_D', 'moment of the dead load about the edge', 'moment', 100, 1e6);

export const weightOfBlock = defineFormula({
  id: 'weight-of-block',
  title: 'Weight of a block of concrete',
  symbol: 'W_block',
  unit: 'weight',
  expression: 'rho * L * W * T',
  variables: [
    variable('rho', 'density of the concrete', 'density', 1500, 3000),
    variable('L', 'length', 'length', 0.3, 6),
    variable('W', 'width', 'length', 0.3, 6),
    variable('T', 'depth', 'length', 0.2, 4),
  ],
  cite: cite('derived', 'volume times density', 'derived'),
  of: (density: number, length: number, width: number, depth: number) => density * length * width * depth,
});

export const deadLoadOfFooting = defineFormula({
  id: 'dead-load-of-footing',
  title: 'Dead load of a footing and of what is on it',
  symbol: 'D',
  unit: 'force',
  expression: 'g * (W_block + W_tower)',
  variables: [
    variable('g', 'pull of the earth on a unit of weight', 'force-per-weight', GRAVITY, GRAVITY),
    variable('W_block', 'weight of the footing', 'weight', 0, 1e5),
    variable('W_tower', 'weight of the tower and all on it', 'weight', 0, 1e4),
  ],
  cite: cite('derived', 'statics', 'derived'),
  of: (gravity: number, block: number, tower: number) => gravity * (block + tower),
});

export const momentAtUndersideFormula = defineFormula({
  id: 'moment-at-underside',
  title: 'Moment at the underside of the block',
  symbol: 'M_u',
  unit: 'moment',
  expression: 'M + V * T',
  variables: [
    variable('M', 'moment at the base of the tower, nominal', 'moment', 0, 1e6),
    variable('V', 'shear at the base of the tower, nominal', 'force', 0, 1e5),
    variable('T', 'depth', 'length', 0.2, 4),
  ],
  cite: cite('derived', 'statics', 'derived'),
  of: (moment: number, shear: number, depth: number) => moment + shear * depth,
});

export const holdingMoment = defineFormula({
  id: 'holding-moment',
  title: 'Moment of the dead load about the edge of the block',
  symbol: 'M_D',
  unit: 'moment',
  expression: 'D * B / 2',
  variables: [deadLoadVariable, side],
  cite: cite('derived', 'statics', 'derived'),
  of: (dead: number, length: number) => (dead * length) / 2,
});

export const overturningRatio = defineFormula({
  id: 'overturning-use',
  title: 'Overturning by 0.6D + 0.6W: overturning moment over resisting moment',
  symbol: 'u',
  unit: 'one',
  expression: 'M_u / (k_D * M_D)',
  variables: [variable('k_D', 'share of the dead load that resists', 'one', 0.6, 1), momentVariable, holdingVariable],
  cite: cite(
    'ibc-2018',
    '1605.3.1, 0.6D + 0.6W of strength-level wind, which is nominal wind; from IBC 2021 ASCE 7, 2.4',
    'memory',
  ),
  of: (share: number, moment: number, holding: number) => moment / (share * holding),
});

export const olderOverturningRatio = defineFormula({
  id: 'overturning-use-older',
  title: 'Overturning by the older factor: required over available factor',
  symbol: 'u',
  unit: 'one',
  expression: 'k_o * M_u / M_D',
  variables: [variable('k_o', 'required factor', 'one', 1.5, 2), momentVariable, holdingVariable],
  cite: cite('common-practice', '1.5 under nominal wind, as older codes had it', 'common-practice'),
  of: (factor: number, moment: number, holding: number) => (factor * moment) / holding,
});

export const toePressureRatioFormula = defineFormula({
  id: 'bearing-use',
  title: 'Pressure under the toe over allowable soil pressure',
  symbol: 'u',
  unit: 'one',
  expression: 'p_toe / q_a',
  variables: [
    variable('p_toe', 'largest pressure', 'soil-pressure', 0, 1e6),
    variable('q_a', 'what the soil may carry', 'soil-pressure', 1e4, 1e6),
  ],
  cite: cite('derived', 'demand over capacity; the weight of the block counts, no soil is deducted', 'derived'),
  of: (pressure: number, bearing: number) => pressure / bearing,
});

/**
 * A block of concrete that stands by its weight: overturning by two rules, and the pressure under its toe.
 *
 * M_u = M + V·T; M_u/(0.6·D·B/2); 1.5·M_u/(D·B/2); p_toe/q_a with the whole D
 *
 * Sliding, soil at the sides and above, groundwater and the concrete itself are not claimed.
 *
 * @param block its size [m], density [kg/m³], what the soil may carry [Pa]
 * @param foot nominal shear [N], moment [N·m] and weight [kg] at the top of the block
 * @returns both uses about both edges, toe pressures [Pa], and what is left out
 * @throws Refusal where a size or strength is not above zero, or a load is below it
 * @example blockFooting({ length: 2, width: 2, depth: 1 }, { shear: 2e3, moment: 30e3, weight: 300 }).overturning.ratio // 0.549
 * @example blockFooting({ length: 2, width: 2, depth: 1 }, { shear: 2e3, moment: 30e3, weight: 300 }).edges[0].factor // 3.03
 * @source derived, ibc-2018, common-practice
 */
export function blockFooting(block: BlockFooting, foot: FootLoad, trace?: Trace): BlockComparison {
  const { length, width, depth, bearing } = block;
  const density = block.density ?? CONCRETE_DENSITY;
  for (const each of [length, width, depth, density, ...(bearing === undefined ? [] : [bearing])])
    if (!(each > 0 && Number.isFinite(each)))
      throw new Refusal('footing-size', 'Length, width, depth, density and bearing of a block are above zero.');
  refuseBelowZero(foot);
  const blockWeight = evaluate(
    trace,
    weightOfBlock,
    [density, length, width, depth],
    block.density === undefined ? 'density by common practice: 2400 kg/m³, 149.8 lb/ft³' : undefined,
  );
  const weightKnown = foot.weight !== undefined;
  const deadLoad = evaluate(
    trace,
    deadLoadOfFooting,
    [GRAVITY, blockWeight, foot.weight ?? foot.leastWeight ?? 0],
    weightKnown ? undefined : 'some weights unknown: the block and what is known',
  );
  const moment = evaluate(trace, momentAtUndersideFormula, [foot.moment, foot.shear, depth]);
  const about = (along: 'length' | 'width'): BlockAboutEdge =>
    under(trace, `leaning along its ${along}`, () => {
      const holding = evaluate(trace, holdingMoment, [deadLoad, block[along]]);
      const off = moment / deadLoad;
      const [offLength, offWidth] = along === 'length' ? [off, 0] : [0, off];
      return {
        along,
        holding,
        ratio: evaluate(trace, overturningRatio, [DEAD_SHARE, moment, holding]),
        olderRatio: evaluate(trace, olderOverturningRatio, [OLDER_OVERTURNING_FACTOR, moment, holding]),
        ...(moment > 0 ? { factor: holding / moment } : {}),
        ...(weightKnown ? { toe: pressureUnder(block, deadLoad, offLength, offWidth, trace) } : {}),
      };
    });
  const edges = [about('length'), about('width')] as const;
  const toe = weightKnown
    ? under(trace, 'leaning where it presses hardest', () => worstToePressure(block, deadLoad, moment, trace))
    : undefined;
  return {
    density,
    densityTaken: block.density === undefined,
    blockWeight,
    deadLoad,
    weightKnown,
    momentAtUnderside: moment,
    edges,
    overturning: {
      ratio: Math.max(edges[0].ratio, edges[1].ratio),
      olderRatio: Math.max(edges[0].olderRatio, edges[1].olderRatio),
    },
    ...(toe ? { toe } : {}),
    ...(toe && toe.contact !== 'tips' && bearing !== undefined
      ? { toePressureRatio: evaluate(trace, toePressureRatioFormula, [toe.pressure, bearing]) }
      : {}),
    notChecked: ['sliding', 'soil-at-its-sides', 'groundwater', 'strength-of-the-concrete'],
  };
}

/**
 * Refuses forces at a foot that are below zero or no numbers.
 *
 * @param foot shear [N], moment [N·m] and weight [kg]
 * @throws Refusal where one is below zero or no number
 * @example refuseBelowZero({ shear: 1, moment: 0 }) // undefined
 */
export function refuseBelowZero(foot: FootLoad): void {
  for (const each of [foot.shear, foot.moment, foot.weight ?? 0, foot.leastWeight ?? 0])
    if (!(each >= 0 && Number.isFinite(each)))
      throw new Refusal('footing-load', 'Shear, moment and weight at a base are numbers from zero up.');
}
