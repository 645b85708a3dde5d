import type { Assumed, Rating } from '../../margins/index.ts';
import type { Station } from '../../structure/index.ts';
import type { PlanDocument } from '../schema/plan-document.ts';

/** Heights within this are one [m]. */
const SAME_HEIGHT = 1e-6;

/** What a plan does not say and its answer takes at both plausible ends, in the order of the plan. */
export function assumedIn(document: PlanDocument, station: Station, ratings: readonly Rating[]): Assumed[] {
  const { tower, mast, loads } = station;
  const assumed: Assumed[] = [];
  const say = (of: Assumed['of'], at: string, isAssumed: boolean) => {
    if (isAssumed && !assumed.some((each) => each.at === at)) assumed.push({ of, at });
  };
  say('ice-class', '/site/riskCategory', document.site.riskCategory === undefined);
  say('frequency', '/tower/frequency', tower.frequency === undefined);
  say('damping', '/tower/damping', tower.damping === undefined);
  for (const { at, notGiven: ofShape = [] } of tower.sections) {
    say('pole-sides', `${at}/sides`, ofShape.includes('sides'));
    say('bracing-pattern', `${at}/pattern`, ofShape.includes('pattern'));
  }
  say('alike-along', '/tower/sections', isAlikeAssumed(document, station));
  say('bearing-height', '/mast/bearing', mast?.bearing !== undefined && document.mast?.bearing === undefined);
  loads.forEach(({ at, on, low, high, shape }, number) => {
    const isBeside = on === 'tower' && (low + high) / 2 < tower.top - SAME_HEIGHT && shape.kind !== 'wire';
    say('load-offset', `${at}/offset`, isBeside && document.loads?.[number]?.offset === undefined);
  });
  for (const { at, shape } of loads)
    say('conductor', `${at}/conductor`, shape.kind === 'wire' && shape.conductor === undefined);
  say('cables', '/cables', document.cables === undefined);
  // A load that says it is on the tower stands there without one.
  const onMast = loads.some(
    ({ low }, number) => low > tower.top + SAME_HEIGHT && document.loads?.[number]?.on === undefined,
  );
  say('mast', '/mast', mast === undefined && onMast);
  for (const { of, at, claim, top } of ratings) {
    say('rated-height', `${at}/top`, of === 'tower' && claim.kind !== 'weight' && top === undefined);
  }
  return assumed;
}

/** Whether steel of which nobody says so is taken as alike all along a piece; what tapers is looked at within. */
function isAlikeAssumed({ tower }: PlanDocument, station: Station): boolean {
  const rows = tower.sections ?? [{ ...tower, uniform: undefined }];
  const isShaped = station.tower.sections.some(({ shape }) => shape !== undefined);
  return isShaped && rows.some(({ uniform, width }) => uniform === undefined && !Array.isArray(width));
}
