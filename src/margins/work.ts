import { nth } from '../foundation/index.ts';
import { appurtenanceItems, bareTowerWindKnown, levelsOf } from '../structure/index.ts';
import { assumptionsOf, plausiblePlans } from './assumed/assumptions.ts';
import type { CheckInput } from './check-input.ts';
import { ratingsSpeaking } from './claims.ts';
import { otherOrders } from './lowered-input.ts';
import { ratedTops } from './plausible-rated-heights.ts';
import { ratedReadings } from './rated-case.ts';
import { scenariosOf } from './scenarios.ts';

/** What makes a plan dear to check. */
export const WORK_CAUSES = ['tower', 'loads', 'members', 'ratings'] as const;
export type WorkCause = (typeof WORK_CAUSES)[number];

/** What the check of a plan is likely to cost, before it is made. */
export interface Work {
  /** Processor time by cause, and in all [ms]. */
  readonly by: Readonly<Record<WorkCause, number>>;
  readonly total: number;
  /** Rows of tubes that are checked, and readings of the tower's ratings [-]. */
  readonly members: number;
  readonly readings: number;
  /** Ways in which the plan is read as a whole [-]. */
  readonly ways: number;
}

/**
 * Microseconds of one processor, fitted to measured times of some two hundred plans of every sort: most come out within
 * a factor of three, towers that sway too low. It is for a limit, not for a clock.
 */
const COST = {
  base: 3000,
  level: 70,
  levelSearched: 150,
  guyed: 12_000,
  part: 45,
  partSearched: 570,
  segment: 400,
  segmentSearched: 3000,
  reading: 40,
  readingAtLevel: 1.7,
  answerAtLevel: 0.5,
  assumedAtLevel: 3,
} as const;

/** Below this a gust effect factor goes with the speed, so that every wind is searched step by step [Hz]. @source asce7-16 */
const SWAYS_BELOW = 1;

/**
 * What the check of a plan is likely to cost, from counts of what it holds and of the ways in which it can be read.
 *
 * Σ count·cost of each
 *
 * @source derived
 */
export function workOf(input: CheckInput): Work {
  const assumptions = assumptionsOf(input);
  const plans = plausiblePlans(input, assumptions);
  const worst = nth(plans, 0);
  const { station } = worst;
  const ways = plans.length + otherOrders(worst).length;
  const answers = assumptions.reduce((sum, { readings }) => sum + Math.max(0, readings.length - 1), 0);
  const scenarios = scenariosOf(worst, bareTowerWindKnown(station.tower)).length;
  const levels = scenarios * levelsOf(station).length;
  const parts = appurtenanceItems(station).reduce((sum, item) => sum + item.parts.length, 0);
  const guyed = station.tower.held.filter(({ by }) => by === 'guys').length;
  const searched = sways(worst) ? 1 : 0;
  const { members, segments } = membersOf(worst);
  const { rows, readings, asked } = readingsOf(worst);
  const by = {
    tower:
      COST.base + ways * guyed * COST.guyed + ways * levels * (COST.level + searched * COST.levelSearched * (1 + rows)),
    loads: ways * parts * (COST.part + searched * COST.partSearched) + answers * COST.assumedAtLevel * (levels + parts),
    members: ways * segments * (COST.segment + searched * COST.segmentSearched),
    ratings:
      readings * (ways * scenarios * COST.reading + (ways + answers) * levels * COST.readingAtLevel) +
      asked * levels * COST.answerAtLevel * (rows + readings / Math.max(1, rows)),
  };
  const milliseconds = {
    tower: by.tower / 1000,
    loads: by.loads / 1000,
    members: by.members / 1000,
    ratings: by.ratings / 1000,
  };
  const total = WORK_CAUSES.reduce((sum, cause) => sum + milliseconds[cause], 0);
  return { by: milliseconds, total, members, readings, ways };
}

function sways({ station: { tower, loads } }: CheckInput): boolean {
  return (tower.frequency ?? SWAYS_BELOW) < SWAYS_BELOW || loads.some(({ shape }) => shape.kind === 'wire');
}

function membersOf({ station }: CheckInput) {
  const rows = station.loads.flatMap(({ shape }) => (shape.kind === 'tubes' ? shape.rows : []));
  const checked = rows.filter(
    ({ yieldStrength, pieces }) => yieldStrength !== undefined && pieces.every(({ wall }) => wall !== undefined),
  );
  // Each is cut where its diameter changes, on both sides alike.
  const segments = checked.reduce((sum, { pieces }) => sum + 1 + pieces.length / 2, 0);
  return { members: checked.length, segments };
}

function readingsOf(input: CheckInput) {
  const counted = { rows: 0, readings: 0, asked: 0 };
  for (const { rating } of ratingsSpeaking(input)) {
    const rows = rating.claim.kind === 'area' ? rating.claim.rows.length : 1;
    const tops = ratedTops(rating, input).length;
    const read = rating.wind === undefined ? 1 : ratedReadings(rating.wind).length;
    counted.rows += rows;
    counted.readings += rows * tops * read;
    counted.asked += (tops > 1 ? tops : 0) + (read > 1 ? read : 0);
  }
  return counted;
}
