import { describe, expect, it } from 'vitest';
import { additionsFieldsSchema, fromFormText, pressuresRequestSchema, readFormText } from '../../src/plan/index.ts';
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
    expect(read(fields).input).toEqual(read(tenNumbers()).input);
  });

  it('has its counts, faces, yes and no as a plan has them, and quantities as text', () => {
    expect(
      fromFormText({
        tower: { faces: '3', sides: '8', used: 'no', asDrawn: 'on', top: '48 ft', telescopes: 'perhaps' },
        mast: { bearing: 'false' },
        loads: [{ name: '3', count: '2', turns: 'true', tubes: [{ count: '4' }] }],
        ratings: [{ wind: { speed: '70', year: '1984' } }],
        site: { climate: { returnPeriods: [['10', '76']] } },
      }),
    ).toEqual({
      tower: { faces: 3, sides: 8, used: false, asDrawn: true, top: '48 ft', telescopes: 'perhaps' },
      mast: { bearing: false },
      loads: [{ name: '3', count: 2, turns: true, tubes: [{ count: 4 }] }],
      ratings: [{ wind: { speed: '70', year: 1984 } }],
      site: { climate: { returnPeriods: [[10, '76']] } },
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

  it('keeps the places of what has a meaning by its place, and leaves out blanks at its end', () => {
    const tubes = (taper: string[]) => ({ loads: [{ name: 'beam', tubes: [{ taper: [taper, ['', '', '']] }] }] });
    expect(fromFormText(tubes(['1', '', '0.1']))).toEqual({
      loads: [{ name: 'beam', tubes: [{ taper: [['1', '', '0.1']] }] }],
    });
    expect(fromFormText(tubes(['1', '48', '']))).toEqual({
      loads: [{ name: 'beam', tubes: [{ taper: [['1', '48']] }] }],
    });
    expect(fromFormText({ loads: [{ height: ['', '58'] }] })).toEqual({ loads: [{ height: ['', '58'] }] });
  });

  it('reads counts with the decimal sign of the form', () => {
    const years = (text: string, decimal: 'point' | 'comma') =>
      readFormText({ site: { climate: { returnPeriods: [[text, '76']] } } }, { decimal }).document;
    const read = (value: unknown) => ({ site: { climate: { returnPeriods: [[value, '76']] } } });
    expect(years('1,5', 'point')).toEqual(read('1,5'));
    expect(years('1,5', 'comma')).toEqual(read(1.5));
    expect(years('1,250', 'point')).toEqual(read('1,250'));
    expect(years('1.250', 'comma')).toEqual(read('1.250'));
    expect(years('1.5', 'comma')).toEqual(read(1.5));
  });

  it('reads what else may be posted by the schema of that', () => {
    const fields = {
      heights: '10; 20\r\n\r\n30',
      site: { climate: { yearlyMax: '50;42' } },
      titleBlock: { drawings: 'A; B\nC' },
    };
    expect(readFormText(fields, { schema: pressuresRequestSchema }).document).toEqual({
      heights: ['10', '20', '30'],
      site: { climate: { yearlyMax: ['50', '42'] } },
      titleBlock: { drawings: ['A; B', 'C'] },
    });
    const proposals = [{ name: '2', set: { tower: { faces: '4' } }, swap: [{ load: '3', with: { count: '2' } }] }];
    expect(readFormText({ proposals }, { schema: additionsFieldsSchema }).document).toEqual({
      proposals: [{ name: '2', set: { tower: { faces: 4 } }, swap: [{ load: '3', with: { count: 2 } }] }],
    });
  });

  it('finds the way back to the field', () => {
    const loads: unknown[] = [];
    loads[4] = {
      name: 'beam',
      tubes: [
        { along: '' },
        {
          along: 'boom',
          taper: [
            ['', ''],
            ['1', '2'],
          ],
        },
      ],
    };
    const { document, nameOf } = readFormText({ loads, titleBlock: { drawings: 'A\nB' }, 'a/b~c': 'x' });
    expect(document).toMatchObject({ loads: [{ tubes: [{ along: 'boom' }] }], 'a/b~c': 'x' });
    expect(nameOf('#/loads/0/tubes/0/taper/0/1')).toBe('loads[4][tubes][1][taper][1][1]');
    expect(nameOf('#/loads/0/area')).toBe('loads[4][area]');
    expect(nameOf('#/titleBlock/drawings/1')).toBe('titleBlock[drawings]');
    expect(nameOf('#/a~1b~0c')).toBe('a/b~c');
    expect(nameOf('#/tower/top')).toBe('tower[top]');
    expect(nameOf('#')).toBeUndefined();
  });
});
