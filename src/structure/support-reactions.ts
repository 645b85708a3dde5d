import { cite, defineFormula, evaluate, Refusal, type Trace, variable } from '../foundation/index.ts';

/** What a wall bracket takes; reported, not judged: the wall and what fastens it are not the tower's. */
export interface BracketReaction {
  /** Pull or push on the highest bracket, at most [N]. */
  readonly pull: number;
  /** The same with a foot that gives way like a hinge [N]. */
  readonly pullWithHingedFoot: number;
  /** Push of the foot the other way with a hinged foot; below zero: the same way as the wind [N]. */
  readonly footWithHingedFoot: number;
}

const force = variable('F', 'wind above the bracket', 'force', 0, 1e5);
const above = variable('a', 'middle of the wind above the bracket', 'length', 0, 30);
const span = variable('l', 'from the base to the bracket', 'length', 0.5, 30);

export const bracketPullFixed = defineFormula({
  id: 'bracket-pull-fixed-foot',
  title: 'Pull on the bracket of a tower fixed at its base',
  symbol: 'R',
  unit: 'force',
  expression: 'F * (1 + 1.5 * a / l)',
  variables: [force, above, span],
  cite: cite('derived', 'propped cantilever, the load beyond its prop', 'derived'),
  of: (F: number, a: number, l: number) => F * (1 + (1.5 * a) / l),
});

export const bracketPullHinged = defineFormula({
  id: 'bracket-pull-hinged-foot',
  title: 'Pull on the bracket of a tower hinged at its base',
  symbol: 'R',
  unit: 'force',
  expression: 'F * (1 + a / l)',
  variables: [force, above, span],
  cite: cite('derived', 'beam on two supports, the load beyond one', 'derived'),
  of: (F: number, a: number, l: number) => F * (1 + a / l),
});

/**
 * What the wind above pulls on the highest bracket, whatever way the foot is held; wind below adds less than its own force.
 *
 * R ≤ F·(1 + 1.5·a/l); hinged foot F·(1 + a/l), and at the foot F·a/l the other way
 *
 * @param force wind above the bracket [N]
 * @param above where its middle lies above the bracket [m]
 * @param span from the foot to the bracket [m]
 * @returns pulls on the bracket and, hinged, on the foot [N]
 * @throws Refusal where the span is not above zero or a number is below it
 * @example bracketReaction(1000, 3, 6).pull // 1750
 * @example bracketReaction(1000, 3, 6).pullWithHingedFoot // 1500
 * @source derived
 */
export function bracketReaction(force: number, above: number, span: number, trace?: Trace): BracketReaction {
  if (!(span > 0 && force >= 0 && above >= 0 && Number.isFinite(force + above + span)))
    throw new Refusal('bracket', 'A bracket is above the base, and the wind on what is above it is from zero up.');
  const hinged = evaluate(trace, bracketPullHinged, [force, above, span]);
  return {
    pull: evaluate(trace, bracketPullFixed, [force, above, span]),
    pullWithHingedFoot: hinged,
    footWithHingedFoot: hinged - force,
  };
}
