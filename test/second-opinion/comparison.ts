/*
 * One plan, two answers: every figure that both give, side by side.
 */
import type { Answer, AnsweredLevel } from './answer-fields.ts';
import { CHECK } from './answer-fields.ts';
import {
  blockOf,
  type Compared,
  capacitiesAt,
  compareAt,
  iceWind,
  loadItem,
  lowestReachingOne,
  mastForces,
  nominalReactions,
  siteWind,
  stormWind,
} from './station-by-hand.ts';
import { MPH, type Station } from './told-station.ts';
import { pressureAt, type Wind } from './wind-by-hand.ts';

export type Subject =
  | 'pressure'
  | 'area'
  | 'base moment'
  | 'level shear'
  | 'level moment'
  | 'couple'
  | 'braces'
  | 'bending ratio'
  | 'sideways ratio'
  | 'couple ratio'
  | 'tower ratio'
  | 'ice ratio'
  | 'tower holds to'
  | 'mast bending'
  | 'mast ratio'
  | 'bearing'
  | 'block'
  | 'toe pressure';

export interface Pair {
  readonly subject: Subject;
  readonly what: string;
  readonly product: number;
  readonly calculator: number;
}

type Note = (subject: Subject, what: string, product: number | undefined, calculator: number | undefined) => void;

/** Every figure of both, of the wind that the tower holds to only where it is asked: it takes long. */
export function compared(station: Station, answer: Answer, { holdsTo = false, ice = false } = {}): Pair[] {
  const pairs: Pair[] = [];
  const note: Note = (subject, what, product, calculator) => {
    if (product !== undefined && calculator !== undefined) pairs.push({ subject, what, product, calculator });
  };
  const wind = siteWind(station);
  for (const { z, pressure } of answer.pressures)
    note('pressure', `at ${z.toFixed(2)} m`, pressure, pressureAt(wind, z));
  compareAreas(station, wind, answer, note);
  note('base moment', 'nominal load', answer.nominal.moment, nominalReactions(station, wind).moment);
  if (station.ratings.length > 0) compareTower(station, answer, note, holdsTo);
  if (ice) compareIce(station, answer, note);
  compareMast(station, answer, note);
  compareBlock(station, wind, answer, note);
  return pairs;
}

function compareAreas(station: Station, wind: Wind, answer: Answer, note: Note): void {
  for (const load of station.loads) {
    const row = answer.areas.find(({ name }) => name === load.name);
    const { slices } = loadItem(wind, load, station);
    const sum = (side: 0 | 1) => slices.reduce((total, { area }) => total + area[side], 0);
    note('area', `${load.shape.kind}, front`, row?.front, sum(0));
    note('area', `${load.shape.kind}, side`, row?.side, sum(1));
  }
}

function compareTower(station: Station, answer: Answer, note: Note, holdsTo: boolean): void {
  const { levels } = answer;
  const trials = capacitiesAt(station, levels);
  const all = compareAt(station, levels, trials, (roughness) => siteWind(station, station.wind.speed, roughness));
  let most = 0;
  for (const [index, level] of levels.entries()) {
    const own = all[index] as Compared;
    if (hasFullerTwin(level, levels)) continue;
    compareLevel(level, own, answer.nominal.moment, note);
    if (level.kind !== 'couple') most = Math.max(most, own.bending ?? 0, own.sideways ?? 0);
  }
  const tower = answer.check(CHECK.tower);
  note('tower ratio', 'largest', tower?.ratio, most);
  if (!holdsTo || tower?.design === undefined) return;
  const places = levels.filter(({ kind }) => kind !== 'couple');
  const proven = capacitiesAt(station, places);
  const largest = (windWith: (roughness: number) => Wind) =>
    Math.max(
      ...compareAt(station, places, proven, windWith).map(({ bending, sideways }) =>
        Math.max(bending ?? 0, sideways ?? 0),
      ),
    );
  const reaching = (windAt: (speed: number, roughness: number) => Wind) =>
    lowestReachingOne((speed) => largest((roughness) => windAt(speed, roughness)), 10 * MPH, 300 * MPH);
  // The least pressure of ASCE 7 counts in a check, in no wind that is held to.
  const design = reaching((speed, roughness) => ({ ...siteWind(station, speed, roughness), leastPressure: false }));
  note('tower holds to', 'design speed', tower.design, design);
  note(
    'tower holds to',
    'gust',
    tower.gust,
    reaching((speed, roughness) => ({ ...stormWind(station, speed), roughness })),
  );
}

/** The tower with ice on all that stands in the wind, its weight within the rated one. */
function compareIce(station: Station, answer: Answer, note: Note): void {
  const places = answer.levels;
  const wind = iceWind(station);
  const all = compareAt(station, places, capacitiesAt(station, places), (roughness) => ({ ...wind, roughness }));
  const ratios = all.map(({ bending, sideways }) => Math.max(bending ?? 0, sideways ?? 0));
  note('ice ratio', 'largest', answer.check(CHECK.ice)?.ratio, Math.max(...ratios));
}

/** Of two rows at what is typed as one height, that counts on which all hangs that hangs there. */
const hasFullerTwin = (level: AnsweredLevel, levels: readonly AnsweredLevel[]) =>
  levels.some(({ z, kind, shear }) => kind === level.kind && Math.abs(z - level.z) < 1e-6 && shear > level.shear);

function compareLevel(level: AnsweredLevel, own: Compared, baseMoment: number, note: Note): void {
  const at = `${level.kind} at ${level.z.toFixed(2)} m`;
  const couple = level.kind === 'couple';
  // A moment of next to nothing, as where the mast passes its bearing, is left out.
  const small = level.moment < 0.003 * baseMoment;
  // Of the winds that were tried the answer shows the demand of one; the ratios decide which counts.
  const nearest = (product: number, of: 'shear' | 'moment' | 'sideways') =>
    own.demands
      .map((demand) => demand[of])
      .reduce((best, value) => (Math.abs(value - product) < Math.abs(best - product) ? value : best));
  note(couple ? 'couple' : 'level shear', `V, ${at}`, level.shear, nearest(level.shear, 'shear'));
  note('braces', at, level.sideways, nearest(level.sideways, 'sideways'));
  note(couple ? 'couple ratio' : 'sideways ratio', `V, ${at}`, level.sidewaysRatio, own.sideways);
  if (small) return;
  note(couple ? 'couple' : 'level moment', `M, ${at}`, level.moment, nearest(level.moment, 'moment'));
  note(couple ? 'couple ratio' : 'bending ratio', `M, ${at}`, level.bendingRatio, own.bending);
}

function compareMast(station: Station, answer: Answer, note: Note): void {
  if (station.mast === undefined || answer.mast === undefined) return;
  const mast = mastForces(station);
  note('mast bending', 'at the bearing', answer.mast.bending, mast.bending);
  note('bearing', 'reaction', answer.mast.atBearing, mast.atBearing);
  note('mast ratio', 'bending', answer.check(CHECK.mast)?.ratio, mast.bending / mast.allowable);
}

function compareBlock(station: Station, wind: Wind, answer: Answer, note: Note): void {
  if (answer.block === undefined) return;
  const block = blockOf(station, wind, answer.block.density);
  note('block', 'moment at the underside', answer.block.momentAtUnderside, block.momentAtUnderside);
  note('block', 'overturning', answer.block.overturning, block.overturning);
  note('block', 'older overturning', answer.block.olderOverturning, block.olderOverturning);
  // Close to tipping the pressed strip is so narrow that its pressure says nothing.
  if (block.olderOverturning < 1.2) note('toe pressure', 'largest', answer.block.toePressure, block.toePressure);
}
