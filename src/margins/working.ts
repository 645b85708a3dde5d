import { evaluate, Trace, under } from '../foundation/index.ts';
import type { Assessment } from './assess.ts';
import { chancesOf } from './chance.ts';
import { ALL_CHECK_KINDS } from './checks/check-kinds.ts';
import { roomByMoment, roomByShear } from './formulas.ts';
import { lowerAtOf } from './lower-at.ts';
import { explainSway } from './sway.ts';
import { siteSpeed } from './tower-model.ts';

/**
 * The working behind an answer: the wind, every piece of everything it touches, the sums at the level that decides each
 * check, what is proven there, use, margin and the wind it holds to; with every open question at its unfavourable end. It goes a
 * second way through the same formulas and refuses to differ from the answer.
 *
 * @throws Error when a sum of the working differs from the answer
 */
export function workingOf(assessment: Assessment): Trace {
  const trace = new Trace();
  const { input, model, site, wind } = assessment;
  under(trace, 'site wind', () => {
    if (site.converted || input.site.returnYears !== undefined) siteSpeed(input, trace);
    wind.gustEffect(undefined, trace);
  });
  for (const { kind, explain } of ALL_CHECK_KINDS) {
    const checks = assessment.checks.filter((check) => check.kind === kind);
    explain?.(assessment, checks, trace);
  }
  under(trace, 'when to lower', () => lowerAtOf(input, assessment.checks, trace));
  under(trace, 'sway', () => explainSway(model, trace));
  const [room] = assessment.roomLeft;
  if (room?.of) {
    under(trace, 'room left at the top', () =>
      evaluate(trace, room.of === 'moment' ? roomByMoment : roomByShear, [
        model.input.wanted.margin,
        room.capacity,
        room.demand,
        room.perArea,
        room.arm,
      ]),
    );
  }
  chancesOf(input, assessment.checks, trace);
  return trace;
}
