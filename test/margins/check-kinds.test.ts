import { describe, expect, it } from 'vitest';
import { Trace } from '../../src/foundation/index.ts';
import {
  assess,
  CHECK_KIND,
  CHECK_KINDS,
  type CheckKind,
  type CheckKindName,
  isInStillAir,
} from '../../src/margins/index.ts';
import { assessed, checkInputOf } from './any-plan.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

describe('kinds of checks', () => {
  it('each have a record under their own name', () => {
    expect(Object.keys(CHECK_KIND).sort()).toEqual([...CHECK_KINDS].sort());
    for (const kind of CHECK_KINDS) expect(CHECK_KIND[kind].kind).toBe(kind);
  });

  it('do not compile without a record', () => {
    const { fall: _, ...withoutFall } = CHECK_KIND;
    // @ts-expect-error A kind that is named and has no record.
    const incomplete: { readonly [K in CheckKindName]: CheckKind<K> } = withoutFall;
    const { room: __, ...silent } = CHECK_KIND.fall;
    // @ts-expect-error A record that does not say how more area loads it.
    const partial: CheckKind<'fall'> = silent;
    // @ts-expect-error A record under another name.
    const misplaced: { readonly hoist: CheckKind<'hoist'> } = { hoist: CHECK_KIND.fall };
    expect([incomplete, partial, misplaced]).toHaveLength(3);
  });

  it('stand in the order of their names, those of ratings in the order of the ratings', () => {
    const plan = demoPlan('river-bluff');
    const ratings = [
      { of: 'rotator', kind: 'force', force: 200, level: 'allowable' },
      ...(plan['ratings'] as object[]),
      { of: 'tower', kind: 'weight', weight: 200 },
      { of: 'bearing', kind: 'force', force: 600, level: 'allowable' },
    ];
    const checks = assess(checkInputOf({ ...plan, ratings })).checks;
    const byRating = checks.filter(({ kind }) => CHECK_KIND[kind].byRating);
    expect(byRating.map(({ kind, number }) => [kind, number])).toEqual([
      ['rotator', 1],
      ['weight', 3],
      ['bearing', 4],
    ]);
    const places = checks.filter((check) => !byRating.includes(check)).map(({ kind }) => CHECK_KINDS.indexOf(kind));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))('say where each thing is told: %s', (_, plan) => {
    for (const { at, id } of assessed(plan).checks)
      expect(at, id).toMatch(/^\/(tower|mast|rotator|site|loads|ratings)/);
  });

  it('hold to a wind only where wind has a part', () => {
    for (const { plan } of demoPlans()) {
      const still = assessed(plan).checks.filter(isInStillAir);
      expect(still.filter(({ result }) => result?.holdsTo)).toEqual([]);
    }
  });

  it('write their working down where they have one, and only where they are shown', () => {
    const answer = assessed(demoPlan('river-bluff'));
    for (const kind of ['tower', 'tower-top', 'mast'] as const) {
      const trace = new Trace();
      CHECK_KIND[kind].explain?.(
        answer,
        answer.checks.filter((check) => check.kind === kind),
        trace,
      );
      expect(trace.steps.length, kind).toBeGreaterThan(3);
      const nothing = new Trace();
      CHECK_KIND[kind].explain?.(answer, [], nothing);
      expect(nothing.steps.length, kind).toBe(0);
    }
  });
});
