import { ICE_DENSITY, icedDiameter, iceWeightPerLength, type TubePiece, type TubeRow } from '../../areas/index.ts';
import { GRAVITY, nth, remember, type Trace, under } from '../../foundation/index.ts';
import {
  type ElementBending,
  type ElementSegment,
  elementBending,
  type Load,
  type MountedOn,
  middleOf,
  type SlicesInWind,
  someSlices,
  tubeSection,
} from '../../structure/index.ts';
import { inActualWind } from '../holds-to.ts';
import { windsHeld } from '../holds-to-ratio.ts';
import type { IceCase, IceCaseShown } from '../ice-case.ts';
import type { TowerInWind, TowerModel } from '../model.ts';
import { type Check, type CheckOf, type CheckResult, judged, openCheck, withoutWinds } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';

type OwnSlices = ReturnType<typeof someSlices>;

/** A row of elements or a boom of which every segment's wall and the alloy are told. */
interface Member {
  readonly load: Load;
  readonly row: TubeRow;
  readonly number: number;
  readonly segments: readonly ElementSegment[];
  /** What else weighs on a boom, at places nobody tells: half of it at each end at the worst [kg]. */
  readonly onBoom: number;
}

/**
 * The elements and booms of which the plan tells segments, walls and strength: bent by the wind and their own weight, each
 * where a segment leaves the next larger one.
 */
export const elementsKind: CheckKind<'elements'> = {
  kind: 'elements',
  part: 'load',
  assess: ({ model, ice }) => [
    ...membersOf(model).map((member) => checkOf(model, member)),
    ...icedElementChecks(model, ice),
  ],
  explain: explainElements,
  loadedBy: 'wind',
  room: undefined,
};

/** The same with ice, in the gust that goes with ice: thicker, heavier, and no stronger. */
function icedElementChecks(model: TowerModel, ice: IceCase | undefined): readonly Check[] {
  if (!ice || ice.weights === undefined) return [];
  const { shown, needs } = ice;
  return membersOf(model).map((member): Check => {
    const iced = { ...elementOf(member), id: `${elementOf(member).id}:ice`, withIce: true } as const;
    if (!shown) return openCheck(iced, 'missing', needs);
    const bending = bentWithIce(shown, member);
    if (bending.notShown.length > 0) return openCheck(iced, 'not-computed');
    return judgedElement(model, iced, member, resultOf(bending, bentWithIce(shown, member, 0)));
  });
}

function elementOf({ load, number }: Member): CheckOf {
  const { name } = load;
  return { id: `elements:${name}:${number + 1}`, kind: 'elements', at: rowAt(load, number), name, number: number + 1 };
}

/** What the strength at rupture leaves open stays open. */
function judgedElement(model: TowerModel, of: CheckOf, member: Member, result: CheckResult): Check {
  const { load, row, number } = member;
  const missing = boomNeeds(member);
  const notGiven = row.material !== 'steel' && row.ultimateStrength === undefined;
  const asks = notGiven ? [`${rowAt(load, number)}/ultimate`] : [];
  const check = judged(of, result, { margin: model.input.wanted.margin, missing, asks });
  return missing.length > 0 && check.verdict === 'open' ? { ...check, result: withoutWinds(result) } : check;
}

const rowAt = (load: Load, number: number) => `${load.at}/tubes/${number}`;

/** The booms that are checked with a weight on them whose place nobody tells. */
export function boomsLaden(model: TowerModel): readonly { readonly at: string; readonly of: string }[] {
  return membersOf(model)
    .filter(({ onBoom }) => onBoom > 0)
    .map(({ load, number }) => ({ at: rowAt(load, number), of: load.name }));
}

/** What nobody told of the metal of tubes that are checked. */
export interface MetalNotGiven {
  readonly at: string;
  readonly of: string;
  readonly notGiven: 'material' | 'ultimate';
}

/** The rows of tubes that are checked without a word of their metal, or of what alloy breaks at. */
export function metalsNotGiven(model: TowerModel): readonly MetalNotGiven[] {
  return membersOf(model).flatMap(({ load, row, number }): MetalNotGiven[] => {
    const about = (notGiven: MetalNotGiven['notGiven']) => ({
      at: `${rowAt(load, number)}/${notGiven}`,
      of: load.name,
      notGiven,
    });
    return [
      ...(row.material === undefined ? [about('material')] : []),
      ...(row.material !== 'steel' && row.ultimateStrength === undefined ? [about('ultimate')] : []),
    ];
  });
}

function bentWithIce(shown: IceCaseShown, member: Member, onEnd?: number): ElementBending {
  return worstBending(cutsOf(shown.model.scenarios), (cut) => icedBending(shown, cut, member, onEnd));
}

/** What hangs on the tower in every wind that is tried, each once. */
const cutsOf = (scenarios: readonly TowerInWind[]): readonly SlicesInWind[] => [
  ...new Set(scenarios.map(({ appurtenances }) => appurtenances)),
];

function worstBending<C>(cuts: readonly C[], bentBy: (cut: C) => ElementBending): ElementBending {
  return cuts.map(bentBy).reduce((most, here) => (largest(here) > largest(most) ? here : most));
}

/** The slices of those of a member's pieces that are meant: in a cut of hundreds a member has a few. */
function slicesOf({ load, row }: Member, cut: SlicesInWind, diameter?: number): OwnSlices {
  const { items, from, slices } = cut;
  const numbers: number[] = [];
  for (let item = 0; item < items.length; item += 1) {
    if (nth(items, item).at !== load.at) continue;
    for (let number = nth(from, item); number < nth(from, item + 1); number += 1) {
      const { part } = nth(slices, number);
      if (part.what !== row.along) continue;
      if (diameter === undefined || part.diameter === diameter) numbers.push(number);
    }
  }
  return someSlices(cut, numbers);
}

/** The largest force of the wind on a unit of area of some slices. */
function forcePerArea(row: TubeRow, { slices, forces }: OwnSlices, speed: number, least: boolean): number {
  const { front, side } = forces(speed, 'unfavourable', least);
  return slices.reduce((most, slice, index) => {
    const [area, force] = row.along === 'boom' ? [slice.side, nth(side, index)] : [slice.front, nth(front, index)];
    return area > 0 ? Math.max(most, force / area) : most;
  }, 0);
}

/** Iced members all stand in slow flow: their force for each area is one, and their width that of the ice. */
function icedBending(
  shown: IceCaseShown,
  cut: SlicesInWind,
  member: Member,
  onEnd?: number,
  trace?: Trace,
): ElementBending {
  const { load, row, segments, onBoom } = member;
  const { site, ice: weights } = shown.model;
  const ice = shown.iceAt(middleOf(load));
  const perArea = forcePerArea(row, slicesOf(member, cut), site.speed, false);
  const iced = segments.map(({ outside }) => icedDiameter.of(outside, ice));
  const wind = iced.map((width) => perArea * width);
  const weight = segments.map((each) => {
    const ofIce = shown.weightLevel * iceWeightPerLength.of(ICE_DENSITY, ice, each.outside);
    return (tubeSection(each).weightPerLength + ofIce) * GRAVITY;
  });
  const number = shown.model.input.station.loads.indexOf(load);
  // Ice on the boom itself is counted in both.
  const ofIce = onBoom === 0 ? 0 : (weights?.onLoads[number] ?? 0) / load.count;
  const appurtenances = mountedOn(member, onEnd ?? (onBoom + ofIce) / 2);
  return elementBending(segments, { wind, appurtenances, ...(row.along === 'upright' ? {} : { weight }) }, trace);
}

function membersOf(model: TowerModel): readonly Member[] {
  return model.input.station.loads.flatMap((load) => {
    if (load.shape.kind !== 'tubes') return [];
    return load.shape.rows.flatMap((row, number): Member[] => {
      const segments = segmentsOf(row);
      return segments ? [{ load, row, number, segments, onBoom: weightOnBoom(load, row, segments) }] : [];
    });
  });
}

/** What of a load's weight is not that of its boom. */
function weightOnBoom({ shape, weight }: Load, row: TubeRow, segments: readonly ElementSegment[]): number {
  if (row.along !== 'boom' || !carriesMore(shape) || weight === undefined) return 0;
  const half = segments.reduce((sum, each) => sum + tubeSection(each).weightPerLength * each.length, 0);
  return Math.max(0, weight - 2 * row.count * half) / row.count;
}

const carriesMore = (shape: Load['shape']) =>
  shape.kind === 'tubes' && shape.rows.some(({ along }) => along !== 'boom');

/** A boom of which nobody tells what else it carries. */
function boomNeeds({ load, row }: Member): readonly string[] {
  return row.along === 'boom' && load.weight === undefined && carriesMore(load.shape) ? [`${load.at}/weight`] : [];
}

/** Beside its own weight half of what a boom carries, at its end; without it at the favourable end of what is not told. */
function mountedOn({ segments, onBoom }: Member, kilograms = onBoom / 2): readonly MountedOn[] {
  if (kilograms === 0) return [];
  const at = segments.reduce((sum, { length }) => sum + length, 0);
  return [{ at, wind: 0, weight: kilograms * GRAVITY }];
}

/** From the hold outwards: the taper is written to one tip and stands on both sides. */
function segmentsOf(row: TubeRow): readonly ElementSegment[] | undefined {
  const { pieces, yieldStrength, ultimateStrength } = row;
  if (yieldStrength === undefined || pieces.length < 2 || pieces.length % 2 !== 0) return undefined;
  const half = pieces.slice(pieces.length / 2);
  if (!half.every((piece): piece is TubePiece & { wall: number } => piece.wall !== undefined)) return undefined;
  return half.map(({ diameter, length, wall }) => ({
    outside: diameter,
    wall,
    length,
    // The weaker of the two for the same yield where nobody says: its rupture counts too.
    material: row.material ?? 'aluminium',
    yieldStrength,
    ...(ultimateStrength === undefined ? {} : { ultimateStrength }),
  }));
}

function checkOf(model: TowerModel, member: Member): Check {
  const { speed } = model.site;
  const blowing = inActualWind(model);
  const inWind = (scenarios: readonly TowerInWind[]) => cutsOf(scenarios).map((cut) => segmentsIn(cut, member));
  const [design, actual] = [inWind(model.scenarios), inWind(blowing)];
  const at = (cuts: readonly SegmentsInWind[], V: number, least: boolean, onEnd?: number) =>
    worstBending(cuts, (cut) => bent(cut, member, V, least, onEnd));
  const bending = at(design, speed, true);
  const of = elementOf(member);
  if (bending.notShown.length > 0) return openCheck(of, 'not-computed');
  const byWind = {
    design: (V: number) => largest(at(design, V, false)),
    actual: (V: number) => largest(at(actual, V, false)),
    steadyUpTo: Math.min(...[...model.scenarios, ...blowing].map(({ appurtenances }) => appurtenances.steadyUpTo)),
  };
  return judgedElement(model, of, member, {
    ...resultOf(bending, member.onBoom === 0 ? bending : at(design, speed, true, 0)),
    ...windsHeld(model, byWind),
  });
}

function resultOf(bending: ElementBending, atBest: ElementBending): CheckResult {
  const joint = bending.joints.reduce((most, each) => ((each.ratio ?? 0) > (most.ratio ?? 0) ? each : most));
  const ratio = largest(bending);
  return {
    ratio,
    of: 'bending',
    demand: joint.moment,
    capacity: joint.moment / (joint.ratio ?? 1),
    along: joint.at,
    ratioRange: [atBest.joints.reduce((most, { ratioAtBest }) => Math.max(most, ratioAtBest ?? 0), 0), ratio],
    headings: {},
  };
}

const largest = ({ joints }: ElementBending) => joints.reduce((most, { ratio }) => Math.max(most, ratio ?? 0), 0);

/** Of each segment of a member the slices of its own diameter. */
type SegmentsInWind = readonly OwnSlices[];

function segmentsIn(cut: SlicesInWind, member: Member): SegmentsInWind {
  const byDiameter = new Map<number, OwnSlices>();
  return member.segments.map(({ outside }) => remember(byDiameter, outside, () => slicesOf(member, cut, outside)));
}

/** One side of one member in a wind: force for each length from the pieces of its own diameter. */
function bent(
  inWind: SegmentsInWind,
  member: Member,
  speed: number,
  least: boolean,
  onEnd?: number,
  trace?: Trace,
): ElementBending {
  const { row, segments } = member;
  const perLength = segments.map(({ outside }, index) => outside * forcePerArea(row, nth(inWind, index), speed, least));
  const weight = row.along === 'upright' ? [] : segments.map((each) => tubeSection(each).weightPerLength * GRAVITY);
  const appurtenances = mountedOn(member, onEnd);
  return elementBending(segments, { wind: perLength, appurtenances, ...(weight.length > 0 ? { weight } : {}) }, trace);
}

function explainElements({ model, ice }: CheckContext, checks: readonly Check[], trace: Trace): void {
  const members = new Map(membersOf(model).map((member) => [elementOf(member).at, member]));
  for (const { at, name, withIce, result } of checks) {
    const member = members.get(at);
    if (!member || !result) continue;
    under(trace, `tubes of the ${name}${withIce ? ' with ice' : ''}`, () => {
      if (!withIce)
        bent(segmentsIn(model.scenarios[0].appurtenances, member), member, model.site.speed, true, undefined, trace);
      else if (ice?.shown) icedBending(ice.shown, ice.shown.model.scenarios[0].appurtenances, member, undefined, trace);
    });
  }
}
