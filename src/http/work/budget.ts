import { type CheckInput, type Work, type WorkCause, workOf } from '../../margins/index.ts';
import { Problem, type ProblemFault } from '../problems/problem.ts';

/** What an answer made of several checks may take, as a multiple of what one may. */
const OF_SEVERAL = 10;

/** Checks that each part of an answer takes beside the first, roughly. */
export const CHECKS_FOR = {
  spread: 7,
  sensitivity: 30,
  remedies: 40,
  working: 3,
  heights: 22,
  requirement: 30,
} as const;

/** The plans behind an answer, and how often each is checked. */
export interface AskedWork {
  readonly plans: readonly { readonly name?: string | undefined; readonly input: CheckInput }[];
  /** How many checks of each. */
  readonly times: number;
  /** What brings more than one plan or check, and where it is asked for. */
  readonly several?: { readonly says: string; readonly pointer?: string };
}

const PLACE: Readonly<Record<WorkCause, string>> = {
  tower: '#/tower/sections',
  loads: '#/loads',
  members: '#/loads',
  ratings: '#/ratings',
};

const REMEDY: Readonly<Record<WorkCause, (work: Work) => string>> = {
  tower: ({ ways }) => `The sections of the tower are checked in ${ways} ways. Give fewer, or give the frequency.`,
  loads: () => 'Loads: each is checked at every height. Give fewer, or give the offset of each.',
  members: ({ members }) => `${members} rows of tubes are checked by wall and yield. Give fewer with a yield.`,
  ratings: ({ readings }) =>
    `The ratings can be read in ${readings} ways. Give top, standard, exposure and class, or give fewer.`,
};

/** A figure as it is worth saying of an estimate. */
const roughly = (milliseconds: number) => Number(milliseconds.toPrecision(2)).toLocaleString('en');

/**
 * Refuses what would take longer than an answer may, before any of it is computed.
 *
 * @param limit for one check [ms]
 * @returns what it is likely to take [ms]
 */
export function withinBudget(limit: number, { plans, times, several }: AskedWork): number {
  let total = 0;
  for (const { name, input } of plans) {
    const work = workOf(input);
    if (work.total > limit) throw tooMuch(work.total, limit, faultsOf(work, limit, name));
    total += work.total;
  }
  total *= times;
  const most = plans.length * times > 1 ? OF_SEVERAL * limit : limit;
  if (total <= most) return total;
  const checks = plans.length * times;
  const says = several?.says ?? 'Ask for less in one request.';
  const pointer = several?.pointer;
  throw tooMuch(total, most, [
    { ...(pointer === undefined ? {} : { pointer }), code: 'too-much-work', given: checks, says },
  ]);
}

/** Every cause that alone takes more than a quarter of the limit, or else the largest. */
function faultsOf(work: Work, limit: number, name: string | undefined): readonly ProblemFault[] {
  const causes = Object.entries(work.by) as [WorkCause, number][];
  const largest = Math.max(...causes.map(([, each]) => each));
  return causes
    .filter(([, each]) => each > limit / 4 || each === largest)
    .sort(([, a], [, b]) => b - a)
    .map(([cause, each]) => ({
      pointer: PLACE[cause],
      code: 'too-much-work',
      given: `about ${roughly(each)} ms`,
      allowed: `${limit} ms in all`,
      says: `${name === undefined ? '' : `${name}: `}${REMEDY[cause](work)}`,
    }));
}

function tooMuch(total: number, most: number, faults: readonly ProblemFault[]): Problem {
  const detail = `This would take about ${roughly(total)} ms of computing. At most ${roughly(most)} ms are allowed.`;
  return new Problem('too-much-work', detail, { faults });
}
