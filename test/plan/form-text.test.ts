import { describe, expect, it } from 'vitest';
import { fromFormText } from '../../src/plan/index.ts';
import { read, tenNumbers } from './sample-plans.ts';

type Text = string | Text[] | { [key: string]: Text };

function allText(value: unknown): Text {
  if (Array.isArray(value)) return value.map(allText);
  if (typeof value !== 'object' || value === null) return String(value);
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, allText(member)]));
}

describe('a plan from a form, all text', () => {
  it('reads as the plan it was', () => {
    const fields = fromFormText(allText(tenNumbers()));
    expect(read(fields).inquiry).toEqual(read(tenNumbers()).inquiry);
  });

  it('has its counts, faces, yes and no as a plan has them, and quantities as text', () => {
    expect(
      fromFormText({
        tower: { faces: '3', sides: '8', used: 'no', asDrawn: 'on', top: '48 ft', telescopes: 'perhaps' },
        mast: { bearing: 'false' },
        loads: [{ name: '3', count: '2', turns: 'true', tubes: [{ count: '4' }] }],
        ratings: [{ wind: { speed: '70', year: '1984' } }],
        site: { climate: { returns: [['10', '76']] } },
      }),
    ).toEqual({
      tower: { faces: 3, sides: 8, used: false, asDrawn: true, top: '48 ft', telescopes: 'perhaps' },
      mast: { bearing: false },
      loads: [{ name: '3', count: 2, turns: true, tubes: [{ count: 4 }] }],
      ratings: [{ wind: { speed: '70', year: 1984 } }],
      site: { climate: { returns: [[10, '76']] } },
    });
  });

  it('has nothing where it is blank, and blank rows vanish', () => {
    expect(
      fromFormText({
        title: ' ',
        mast: { outside: '', wall: '' },
        loads: [{ name: '' }, { name: 'beam', weight: '' }, {}],
      }),
    ).toEqual({ loads: [{ name: 'beam' }] });
    expect(fromFormText({ title: '' })).toEqual({});
  });

  it('keeps what fits no field, for the reading to refuse', () => {
    expect(fromFormText({ titel: 'x', tower: 'tall' })).toEqual({ titel: 'x', tower: 'tall' });
    const poisoned = fromFormText(JSON.parse('{"__proto__": {"polluted": "yes"}}')) as object;
    expect(Object.keys(poisoned)).toEqual(['__proto__']);
    expect(Object.getPrototypeOf(poisoned)).toBe(Object.prototype);
  });
});
