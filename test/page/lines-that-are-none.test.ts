import { describe, expect, it } from 'vitest';
import { documentOf, draftInUnits, draftOf, unshownIn } from '../../src/page/form/draft.mjs';
import { stillTold } from '../../src/page/form/still-told.mjs';
import { putInto } from '../../src/page/form/stock.mjs';
import * as store from '../../src/page/form/store.mjs';
import { fromFormText, readPlan } from '../../src/plan/index.ts';
import { demoPlan } from '../margins/demo-plan.ts';

const linesOf = (draft: unknown) => documentOf(draft).document['cables'];

describe('that no lines run up the tower', () => {
  it('is a plan with an empty list, which a draft holds as "no" and gives back', () => {
    const plan = { ...demoPlan('ten-numbers'), cables: [] };
    const draft = draftOf(plan);
    expect(draft['cables']).toBe('no');
    expect(linesOf(draft)).toEqual([]);
    expect(unshownIn(draft)).toEqual([]);
    expect(stillTold(draft)).toEqual([]);
    expect(linesOf(draftInUnits(draft, 'si', new Map()).draft)).toEqual([]);
    // What a browser keeps is read as a draft again.
    expect(draftOf(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
  });

  it('is not said by a list without rows, or with blank ones', () => {
    for (const cables of [undefined, [], [{}], [{ count: '', diameter: ' ' }], [{}, {}]]) {
      expect('cables' in documentOf({ units: 'us', cables }).document).toBe(false);
    }
    // Other lists have no such thing to say: a plan with an empty one has nothing there.
    expect(draftOf({ loads: [] })['loads']).toEqual([]);
    expect('loads' in documentOf({ loads: 'no' }).document && documentOf({ loads: 'no' }).document['loads']).toBe('no');
  });

  it('is said by its own entry alone: the last row left out leaves it open, and rows come back', () => {
    store.startWith({ units: 'us', cables: [{ count: '3', diameter: '0.405' }] });
    store.removeRow('/cables/0');
    expect(store.isNone('/cables')).toBe(false);
    expect('cables' in store.plan.value.document).toBe(false);
    store.undo();
    store.sayNone('/cables', true);
    expect(store.plan.value.document['cables']).toEqual([]);
    expect(store.firstNumbers.value.find(([at]) => at.startsWith('/cables'))?.[2]).toBe(true);
    store.sayNone('/cables', false);
    expect(store.plan.value.document['cables']).toEqual([{ count: 3, diameter: 0.405 }]);
    store.sayNone('/cables', true);
    store.addRow('/cables');
    expect(store.draft.value['cables']).toEqual([{}]);
    expect('cables' in store.plan.value.document).toBe(false);
  });

  it('gives way to lines put in from the stock, and comes with stock that has none', () => {
    const brought = Object.fromEntries(putInto({ cables: 'no' }, { cables: [{ name: 'feed', diameter: 0.4 }] }));
    expect(brought['/cables']).toEqual([{ name: 'feed', diameter: '0.4' }]);
    expect(putInto({ cables: [{}] }, { cables: [] })).toEqual([['/cables', 'no']]);
    expect(putInto({ cables: [{ count: '1' }] }, { cables: [] })).toEqual([]);
  });

  it('is posted by a form without script as one field, and a blank one says nothing', () => {
    expect(fromFormText({ cables: 'no' })).toEqual({ cables: [] });
    expect(fromFormText({ cables: '' })).toEqual({});
    expect(fromFormText({ cables: [{ count: '' }] })).toEqual({});
    const plan = { ...demoPlan('ten-numbers'), cables: 'no' };
    const reading = readPlan(fromFormText(plan));
    expect(reading.ok && reading.input.station.cables).toEqual([]);
    expect(readPlan(plan).ok).toBe(false);
  });
});
