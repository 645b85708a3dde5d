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
    expect(result.faults).toEqual([]);
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

  it('sets, removes, swaps, moves and adds in this order, by the name a load has then', () => {
    const all = applied({
      add: [{ name: 'beam', above: 9, area: 1 }],
      move: [{ load: 'NEW', height: 20 }],
      swap: [{ load: 'dish', with: { name: 'new', area: 4 } }],
      remove: ['beam'],
      set: {
        loads: [
          { name: 'dish', above: 1, area: 3, on: 'tower', offset: 2 },
          { name: 'beam', above: 2, area: 1 },
        ],
      },
    });
    expect(all.plan['loads']).toEqual([
      { name: 'new', area: 4, on: 'tower', offset: 2, height: 20 },
      { name: 'beam', above: 9, area: 1 },
    ]);
    // The place moved to, the load swapped in, the load added, a field the plan kept.
    expect(all.placed('#/loads/0/height').pointer).toBe('#/proposals/0/move/0/height');
    expect(all.placed('#/loads/0/area').pointer).toBe('#/proposals/0/swap/0/with/area');
    expect(all.placed('#/loads/1/area').pointer).toBe('#/proposals/0/add/0/area');
    expect(all.placed('#/tower/top')).toEqual({ pointer: '#/plan/tower/top', ofPlan: true });
  });

  it('tells what a patch says from what it leaves', () => {
    const { placed } = applied({ set: { tower: { top: 38, supportedAt: [{ height: 30 }] }, mast: null, 'a/b': 1 } });
    expect(placed('#/tower/top').pointer).toBe('#/proposals/0/set/tower/top');
    expect(placed('#/tower/supportedAt/0/height').pointer).toBe('#/proposals/0/set/tower/supportedAt/0/height');
    expect(placed('#/mast').pointer).toBe('#/proposals/0/set/mast');
    expect(placed('#/a~1b').pointer).toBe('#/proposals/0/set/a~1b');
    expect(placed('#/tower/width')).toEqual({ pointer: '#/plan/tower/width', ofPlan: true });
    expect(placed('#/loads/1/area')).toEqual({ pointer: '#/plan/loads/1/area', ofPlan: true });
    expect(placed('#')).toEqual({ pointer: '#/plan', ofPlan: true });
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

  it('is told of plan and proposals at once, and of the plan but once', () => {
    const plan = { ...tenNumbers(), site: { wind: -5, exposure: 'C' } };
    expect(
      faultsOf(
        [
          { name: 'a', add: [{ name: 'new', above: 5, area: -1 }, 5] },
          { name: 'b', remove: ['dish'], move: [{ load: 'beam', hight: 3 }] },
          { name: 'c', set: { loads: [{ name: 'x', above: 1, area: -3 }] } },
        ],
        plan,
      ),
    ).toEqual([
      'unknown-field #/proposals/1/move/0/hight',
      'out-of-bounds #/plan/site/wind',
      'wrong-type #/proposals/0/add/1',
      'out-of-bounds #/proposals/0/add/0/area',
      'unknown-load #/proposals/1/remove/0',
      'out-of-bounds #/proposals/2/set/loads/0/area',
    ]);
  });

  it('is laid to the proposal that spoils what it does not name', () => {
    const plan = { ...tenNumbers(), mast: { outside: 2, length: 9, inside: 4 } };
    const reading = readAdditionsRequest({
      plan,
      proposals: [
        { name: 'short', set: { mast: { length: 5 } } },
        { name: 'both', set: { mast: { length: 5 } }, add: [{ name: 'low', height: 20, area: 1 }] },
      ],
    });
    const faults = reading.ok ? [] : reading.faults;
    expect(faults.map(({ code, pointer }) => `${code} ${pointer}`)).toEqual([
      'load-above-mast #/proposals/0/set',
      'load-above-mast #/proposals/1',
    ]);
    expect(faults[0]?.says).toBe(
      'short: with it the rest of the plan does not fit (#/plan/loads/0/above). beam begins at 50 ft, and the mast ends at 49 ft. Give a lower height or a longer mast.',
    );
  });

  it.each([
    [
      'moved twice',
      {
        move: [
          { load: 'beam', above: 1 },
          { load: 'Beam', above: 9 },
        ],
      },
      'name-not-unique',
      'move/1/load',
    ],
    [
      'swapped twice',
      {
        swap: [
          { load: 'beam', with: { area: 1 } },
          { load: 'beam', with: { area: 9 } },
        ],
      },
      'name-not-unique',
      'swap/1/load',
    ],
    ['taken away, then moved', { remove: ['beam'], move: [{ load: 'beam', above: 1 }] }, 'unknown-load', 'move/0/load'],
    ['in other units', { set: { units: 'si' } }, 'not-a-choice', 'set/units'],
    ['without what a plan needs', { set: { site: null } }, 'missing', 'set/site'],
    ['with a list for a plan part', { set: { loads: { a: 1 } }, remove: ['beam'] }, 'wrong-type', 'set/loads'],
    [
      'with more than a proposal may hold',
      { add: Array.from({ length: 61 }, (_, index) => ({ name: `${index}`, above: 1, area: 0.1 })) },
      'too-many',
      'add',
    ],
    ['without the name of what goes', { swap: [{ with: { area: 3 } }] }, 'missing', 'swap/0/load'],
    ['with no height', { move: [{ load: 'beam' }] }, 'height-or-above', 'move/0'],
    ['with a height that is none', { move: [{ load: 'beam', height: {} }] }, 'wrong-type', 'move/0/height'],
  ])('is told of a plan %s', (_, change, code, at) => {
    expect(faultsOf([{ name: 'a', ...change }])).toEqual([`${code} #/proposals/0/${at}`]);
  });

  it('is told of several alike that one is to replace', () => {
    const plan = { ...tenNumbers(), loads: [{ name: 'beams', above: 2, area: 2, count: 2 }] };
    expect(faultsOf([{ name: 'a', swap: [{ load: 'beams', with: { area: 3 } }] }], plan)).toEqual([
      'missing #/proposals/0/swap/0/with/count',
    ]);
    expect(faultsOf([{ name: 'a', swap: [{ load: 'beams', with: { area: 3, count: 1 } }] }], plan)).toEqual([]);
  });

  it('is told of a patch deeper than any plan, and of an empty one', () => {
    let deep: object = {};
    for (let level = 0; level < 40_000; level += 1) deep = { deep };
    expect(faultsOf([{ name: 'a', set: deep }])).toEqual(['wrong-type #/proposals/0/set']);
    expect(faultsOf([{ name: 'a', set: {} }])).toEqual(['missing #/proposals/0']);
    expect(faultsOf([{ name: 'a', remove: [] }])).toEqual(['too-few #/proposals/0/remove']);
  });

  it('names the loads there are', () => {
    const reading = readAdditionsRequest({ plan: tenNumbers(), proposals: [{ name: 'a', remove: ['dish'] }] });
    expect(reading.ok ? '' : reading.faults[0]?.says).toBe('a: no load is called "dish". There is: beam.');
  });

  it('is told of the plan itself, of the form and of nothing proposed', () => {
    expect(
      faultsOf([{ name: 'a', remove: ['beam'] }], { ...tenNumbers(), site: { wind: -5, exposure: 'C' } }),
    ).toContain('out-of-bounds #/plan/site/wind');
    expect(faultsOf([])).toEqual(['too-few #/proposals']);
    expect(faultsOf(undefined)).toEqual(['missing #/proposals']);
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
