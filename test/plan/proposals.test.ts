import { describe, expect, it } from 'vitest';
import { readAdditionsRequest } from '../../src/plan/index.ts';
import { applyProposal, mergePatch } from '../../src/plan/proposals.ts';
import { tenNumbers } from './sample-plans.ts';

describe('a merge patch', () => {
  // RFC 7396, appendix A, test cases: original, patch, result.
  it.each([
    [{ a: 'b' }, { a: 'c' }, { a: 'c' }],
    [{ a: 'b' }, { b: 'c' }, { a: 'b', b: 'c' }],
    [{ a: 'b' }, { a: null }, {}],
    [{ a: 'b', b: 'c' }, { a: null }, { b: 'c' }],
    [{ a: ['b'] }, { a: 'c' }, { a: 'c' }],
    [{ a: 'c' }, { a: ['b'] }, { a: ['b'] }],
    [{ a: { b: 'c' } }, { a: { b: 'd', c: null } }, { a: { b: 'd' } }],
    [{ a: [{ b: 'c' }] }, { a: [1] }, { a: [1] }],
    [
      ['a', 'b'],
      ['c', 'd'],
      ['c', 'd'],
    ],
    [{ a: 'b' }, ['c'], ['c']],
    [{ a: 'foo' }, null, null],
    [{ a: 'foo' }, 'bar', 'bar'],
    [{ e: null }, { a: 1 }, { e: null, a: 1 }],
    [[1, 2], { a: 'b', c: null }, { a: 'b' }],
    [{}, { a: { bb: { ccc: null } } }, { a: { bb: {} } }],
  ])('of %j with %j is %j', (original, patch, result) => {
    expect(mergePatch(original, patch)).toEqual(result);
  });

  it('changes nothing it is given, and no prototype', () => {
    const original = { a: { b: 1 } };
    const patched = mergePatch(original, JSON.parse('{"__proto__":{"polluted":true},"a":{"c":2}}')) as object;
    expect(original).toEqual({ a: { b: 1 } });
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    expect(Object.getPrototypeOf(patched)).toBe(Object.prototype);
  });
});

describe('a proposal', () => {
  const plan = {
    ...tenNumbers(),
    loads: [
      { name: 'beam', above: 2, area: 5.5, turns: true },
      { name: 'panel', height: 30, area: 2, heading: 90 },
    ],
  };
  const applied = (proposal: object) => {
    const result = applyProposal(plan, { name: 'x', ...proposal }, '/proposals/0');
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    return result;
  };

  it('adds, removes, moves, swaps and sets', () => {
    expect(applied({ add: [{ name: 'new', above: 5, area: 1 }] }).plan['loads']).toHaveLength(3);
    expect(applied({ remove: ['beam'] }).plan['loads']).toEqual([plan.loads[1]]);
    expect(applied({ move: [{ load: 'panel', above: 1 }] }).plan['loads']).toEqual([
      plan.loads[0],
      { name: 'panel', area: 2, heading: 90, above: 1 },
    ]);
    // The new load keeps place, heading and turning of the old one, and nothing else.
    expect(applied({ swap: [{ load: 'beam', with: { area: 3, areaKind: 'effective' } }] }).plan['loads']).toEqual([
      { name: 'beam', above: 2, turns: true, area: 3, areaKind: 'effective' },
      plan.loads[1],
    ]);
    expect(applied({ swap: [{ load: 'beam', with: { name: 'other', height: 40, area: 3 } }] }).plan['loads']).toEqual([
      { name: 'other', height: 40, turns: true, area: 3 },
      plan.loads[1],
    ]);
    expect(applied({ set: { tower: { top: 38 } } }).plan['tower']).toMatchObject({ top: 38, width: 18 });
  });

  it('leaves the plan as it was', () => {
    const before = structuredClone(plan);
    applied({ set: { tower: { top: 38 } }, remove: ['panel'], move: [{ load: 'beam', above: 1 }] });
    expect(plan).toEqual(before);
  });
});

describe('what is wrong with proposals', () => {
  const faultsOf = (proposals: unknown, plan: unknown = tenNumbers()) => {
    const reading = readAdditionsRequest({ plan, proposals });
    return reading.ok ? [] : reading.faults.map(({ code, pointer }) => `${code} ${pointer}`);
  };

  it('is told all at once, each where it stands in the request', () => {
    expect(
      faultsOf([
        { name: 'a', remove: ['nothing'] },
        { name: 'b', add: [{ name: 'new', above: 5, area: -1 }] },
        { name: 'c', move: [{ load: 'beam', height: 2, above: 2 }] },
        { name: 'd', set: { tower: { top: 'tall' } } },
        { name: 'e', swap: [{ load: 'beam', with: { arae: 3 } }] },
      ]),
    ).toEqual([
      'unknown-load #/proposals/0/remove/0',
      'out-of-bounds #/proposals/1/add/0/area',
      'height-or-above #/proposals/2/move/0',
      expect.stringMatching(/ #\/proposals\/3\/set\/tower\/top$/),
      'unknown-field #/proposals/4/swap/0/with/arae',
    ]);
  });

  it('names the loads there are', () => {
    const reading = readAdditionsRequest({ plan: tenNumbers(), proposals: [{ name: 'a', remove: ['dish'] }] });
    expect(reading.ok ? '' : reading.faults[0]?.says).toBe('a: no load is called "dish". There is: beam.');
  });

  it('is told of the plan itself, of the form and of nothing proposed', () => {
    expect(
      faultsOf([{ name: 'a', remove: ['beam'] }], { ...tenNumbers(), site: { wind: -5, exposure: 'C' } }),
    ).toContain('out-of-bounds #/plan/site/wind');
    expect(faultsOf([])).toEqual(['missing #/proposals']);
    expect(faultsOf([{ name: 'a' }])).toEqual(['missing #/proposals/0']);
    expect(faultsOf([5])).toEqual(['wrong-type #/proposals/0']);
    expect(faultsOf([{ name: 'a', rid: ['beam'] }])).toContain('unknown-field #/proposals/0/rid');
    expect(faultsOf(Array.from({ length: 41 }, (_, index) => ({ name: `${index}`, remove: ['beam'] })))).toEqual([
      'too-many #/proposals',
    ]);
    const twice = [
      { name: 'a', remove: ['beam'] },
      { name: 'a', remove: ['beam'] },
    ];
    expect(faultsOf(twice)).toEqual(['name-not-unique #/proposals/1/name']);
    expect(readAdditionsRequest(null).ok).toBe(false);
    expect(readAdditionsRequest({ plan: tenNumbers(), proposals: [{ name: 'a', remove: ['beam'] }], more: 1 }).ok).toBe(
      false,
    );
  });
});
