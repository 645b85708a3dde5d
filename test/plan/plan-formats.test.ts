import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/margins/index.ts';
import { documentOf, draftOf } from '../../src/page/form/draft.mjs';
import { LISTS, PLACES } from '../../src/page/form/questions.mjs';
import {
  planDocumentSchema,
  planHash,
  readAdditionsRequest,
  readAreasRequest,
  readCell,
  readFormText,
  readPlan,
  readRatingsRequest,
  readStock,
} from '../../src/plan/index.ts';
import { fieldsAt } from '../../src/plan/schema/schema-at.ts';
import { placeInNewest, RENAMED_CHOICES, RENAMED_FIELDS } from '../../src/words/index.ts';
import { answerDocument } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { anyPlan } from '../margins/any-plan.ts';
import { demoPlan, demoPlanBefore } from '../margins/demo-plan.ts';

type Fields = Readonly<Record<string, unknown>>;

const FOLDER = new URL('format-1/', import.meta.url);
const jsonIn = (path: string) => JSON.parse(readFileSync(new URL(path, FOLDER), 'utf8'));

/** The demo plans as version 0.1.0 had them. */
const OLD_PLANS = readdirSync(new URL('plans/', FOLDER)).map((file) => {
  const { id, plan } = jsonIn(`plans/${file}`) as { id: string; plan: Fields };
  return [id, plan] as const;
});

const oldPlan = (id: string): Fields => jsonIn(`plans/${id}.json`).plan;

/** What version 0.1.0 said of these plans: SHA-256 of the document it printed, worked out by that version. */
const HASH_BEFORE: Readonly<Record<string, string>> = {
  'guyed-lattice': '82ce6b684770ac68204d6ce78ee0be1d542d111e6f320d256f216ccd1c69e657',
  'headland-ridge': '4ea736dd0284fad65496f1b149c5f4512b91174b884bc64437fe8e3a38cb5cb2',
  'house-bracket': 'ff9b0768b51c68f468fe396a2d31ee3c6d448976a40d69bedc8aa90a2576eb76',
  'light-mast': 'f006541ea8e3be01dc6f494e636cb4daf32383fe534d2eb4d3f102e5718f05b9',
  'river-bluff': 'd3cd80df8c541aabdbe8f762f4dabf310df28e599d919c6c81ebead5bf5ae22a',
  'ten-numbers': 'a857b5faf08d6467aa5783e2b7713055c03b3bf6ec3ef8e15de48b7a5a3490e9',
};

function read(plan: unknown) {
  const reading = readPlan(plan);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading;
}

function faultsOf(plan: unknown) {
  const reading = readPlan(plan);
  return reading.ok ? [] : reading.faults;
}

type Holder = Record<string, unknown>;
/** What of a plan is renamed, as a plan that was read has it. */
interface OldPlan extends Holder {
  readonly tower?: Holder & { hinge?: { raisedBy?: Holder }; foundation?: Holder };
  readonly mast?: Holder;
  readonly ratings?: (Holder & { withCables?: Holder })[];
  readonly cables?: Holder[];
  readonly site?: { climate?: Holder };
  readonly wanted?: Holder;
}

/** A plan by the names of format 1, which are written here a second time. */
function asFormat1(plan: Fields): Fields {
  const old = structuredClone(plan) as OldPlan;
  const rename = (owner: Holder | undefined, from: string, to: string) => {
    if (owner === undefined || owner[from] === undefined) return;
    owner[to] = owner[from];
    delete owner[from];
  };
  const flat = (owner: Holder | undefined) => {
    if (owner?.['arrangement'] === 'flat') owner['arrangement'] = 'ribbon';
    rename(owner, 'arrangement', 'laid');
  };
  const { tower, mast, ratings = [], cables = [], site, wanted } = old;
  rename(tower, 'base', 'foot');
  rename(tower, 'supportedAt', 'held');
  rename(tower?.hinge?.raisedBy, 'raisingPoleTip', 'over');
  rename(tower?.hinge?.raisedBy, 'workingLoad', 'rating');
  rename(tower?.foundation, 'soilBearing', 'bearing');
  rename(tower?.foundation, 'soilLateral', 'lateral');
  if (tower?.foundation?.['kind'] === 'manufacturer') tower.foundation['kind'] = 'maker';
  rename(mast, 'manufacturerPlates', 'shelf');
  for (const rating of ratings) {
    rename(rating, 'areasBySpeed', 'rows');
    rename(rating, 'furtherAreas', 'also');
    rename(rating, 'breakingStrength', 'breaking');
    rename(rating, 'workingLoad', 'working');
    rename(rating, 'supportedAt', 'held');
    flat(rating.withCables);
  }
  for (const run of cables) flat(run);
  rename(site?.climate, 'returnPeriods', 'returns');
  rename(wanted, 'forecastError', 'forecast');
  rename(old, 'titleBlock', 'sheet');
  return { ...old, format: 1 };
}

describe('a plan of format 1', () => {
  it.each(OLD_PLANS)('of the demo plans, %s, gives the same inquiry and the same numbers', (id, plan) => {
    const [then, now] = [read(plan), read({ wanted: { margin: 0.2 }, ...demoPlanBefore(id) })];
    expect(then.input).toEqual(now.input);
    const answer = ({ input, entryWarnings }: typeof then) =>
      answerDocument(assess(input), undefined, entryWarnings, 'full');
    expect(answer(then)).toEqual(answer(now));
  });

  it.each(OLD_PLANS)('of the demo plans, %s, is kept in format 2 with the margin it meant', (id, plan) => {
    const { document } = read(plan);
    expect(document).toMatchObject({ format: 2, wanted: { margin: 0.2 } });
    expect(read(document).document).toEqual(document);
    expect(document).toEqual(read({ ...demoPlanBefore(id), wanted: document.wanted }).document);
  });

  it.each(OLD_PLANS)('%s, has the hash that version 0.1.0 gave it beside the one of format 2', (id, plan) => {
    const hash = planHash(read(plan));
    expect(hash.format1).toBe(HASH_BEFORE[id]);
    expect(hash.format2).toBe(planHash(read(read(plan).document)).format2);
    expect(planHash(read(demoPlan(id)))).not.toHaveProperty('format1');
  });

  it('has a hash that follows the plan and not the order in which it is written', () => {
    const plan = demoPlan('river-bluff');
    const turned = Object.fromEntries(Object.entries(plan).reverse());
    expect(planHash(read(turned))).toEqual(planHash(read(plan)));
    expect(planHash(read({ ...plan, title: 'Another' })).format2).not.toBe(planHash(read(plan)).format2);
    // RFC 8785: members by name, no space between; hashed by another program.
    const tiny = { document: { b: [1, { d: 2, c: 3 }], a: 'x' } };
    expect(planHash(tiny).format2).toBe('4bc2f0faf907fa5fdaedde9cbf7002e3cbf041208b96a4ab4ce6693fbf4bea67');
  });

  it('keeps a margin of its own, and every other wish', () => {
    const plan = { ...oldPlan('guyed-lattice'), wanted: { margin: 0.3, forecast: 0.05, years: 9 } };
    expect(read(plan).document.wanted).toEqual({ margin: 0.3, forecastError: 0.05, years: 9 });
    const without = { ...plan, wanted: { years: 9 } };
    expect(read(without).document.wanted).toEqual({ margin: 0.2, years: 9 });
  });

  it('is known by an old name in its old place where no format stands', () => {
    const { format: _, ...plan } = oldPlan('river-bluff');
    expect(read(plan).documentFormat1).toMatchObject({ format: 1, tower: { foundation: { kind: 'maker' } } });
    const { format: __, ...now } = demoPlanBefore('river-bluff');
    expect(read(now).documentFormat1).toBeUndefined();
    // The same word in another place is no old name.
    expect(read({ ...now, mast: { outside: 2, length: 12, bearing: 48 } }).documentFormat1).toBeUndefined();
  });

  it('reads as its form in format 2 does, whatever is in it', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const before = asFormat1(plan);
        const [then, now] = [readPlan(before), readPlan({ ...plan, format: 2 })];
        expect(then.ok).toBe(now.ok);
        if (!then.ok || !now.ok) return;
        expect(then.input).toEqual({ ...now.input, wanted: { ...now.input.wanted, margin: 0.2 } });
        expect(planHash(then).format2).toBe(planHash(read({ ...then.document })).format2);
        const { format: _, wanted: __, ...rest } = then.document;
        const { format: ___, wanted: ____, ...others } = now.document;
        expect(rest).toEqual(others);
      }),
      { numRuns: 150 },
    );
  });

  it('has its faults told where it was sent, by its own names', () => {
    const river = oldPlan('river-bluff');
    const rows = [
      [80, 10],
      [80, 9],
    ];
    const plan = { ...river, tower: { ...(river['tower'] as Fields), foot: 60 }, ratings: [{ of: 'tower', rows }] };
    expect(faultsOf(plan).map(({ pointer }) => pointer)).toEqual(['#/tower/foot', '#/ratings/0/rows/1']);
  });
});

describe('names of two formats', () => {
  it.each(RENAMED_FIELDS)('$from at "$at" is a fault in format 2, which tells of $to', ({ at, from, to }) => {
    const holder = at
      .split('/')
      .slice(1)
      .reduceRight<unknown>((inner, key) => (key === '*' ? [inner] : { [key]: inner }), { [from]: 1 }) as Fields;
    const fault = faultsOf({ ...holder, format: 2 }).find(({ pointer }) => pointer.endsWith(`/${from}`));
    expect(fault).toMatchObject({ code: 'unknown-field' });
    expect(fault?.says).toContain(`has no field "${from}": since format 2 it is called "${to}".`);
  });

  it.each(RENAMED_FIELDS)('$from at "$at" is where a plan has $to now', ({ at, to }) => {
    const path = at
      .split('/')
      .slice(1)
      .map((key) => (key === '*' ? 0 : key));
    expect(fieldsAt(planDocumentSchema, path)).toContain(to);
    const place = `${at}/${to}`;
    const asked = [...PLACES.keys(), ...LISTS.keys()];
    expect(asked.some((each) => each === place || each.startsWith(`${place}/`))).toBe(true);
  });

  it('are a fault together, in either format', () => {
    for (const format of [1, 2, undefined]) {
      const plan: Fields = {
        ...demoPlan('ten-numbers'),
        cables: [{ count: 3, diameter: 0.4, laid: 'single', arrangement: 'flat' }],
      };
      const fault = faultsOf({ ...plan, ...(format === undefined ? {} : { format }) })[0];
      expect(fault).toMatchObject({ pointer: '#/cables/0/laid', code: 'unknown-field' });
      expect(fault?.says).toBe('Cable run 1 has "laid" and "arrangement", its name since format 2. Leave "laid" out.');
    }
  });

  it.each(RENAMED_CHOICES)('a choice of $from at "$at" is a fault in format 2, which tells of $to', ({ from, to }) => {
    const plan = {
      ...demoPlan('ten-numbers'),
      format: 2,
      ...(from === 'maker'
        ? { tower: { ...(demoPlan('ten-numbers')['tower'] as Fields), foundation: { kind: from } } }
        : { cables: [{ count: 3, diameter: 0.4, arrangement: from }] }),
    };
    expect(faultsOf(plan)[0]?.says).toContain(`Did you mean ${to}?`);
  });

  it('are both known to the nearest name', () => {
    const plan = { ...demoPlan('ten-numbers'), format: 2, cables: [{ count: 3, diameter: 0.4, layd: 'single' }] };
    expect(faultsOf(plan)[0]?.says).toContain('Did you mean "arrangement"?');
  });

  it('of a format to come are a fault that tells which formats are read', () => {
    const faults = faultsOf({ format: 3, other: 'things' });
    expect(faults).toMatchObject([{ pointer: '#/format', code: 'newer-format', given: '3', allowed: '1 and 2' }]);
    expect(faults[0]?.says).toContain('formats 1 and 2 are read');
  });
});

describe('what holds a plan of format 1', () => {
  const river = oldPlan('river-bluff');

  it('may be a part of one', () => {
    const cables = [{ count: 3, diameter: 0.405, laid: 'ribbon' }];
    const areas = readAreasRequest({
      units: 'us',
      method: 'asce7-16',
      tower: { support: 'free', top: 40, foot: 2 },
      cables,
    });
    expect(areas).toMatchObject({ ok: true, part: { input: { station: { cables: [{ laid: 'flat' }] } } } });
    const ratings = readRatingsRequest({ units: 'us', top: 48, ratings: [{ of: 'tower', rows: [[90, 12]] }] });
    expect(ratings).toMatchObject({ ok: true });
  });

  it('may be a request for additions, and its patches', () => {
    const proposals = [
      {
        name: 'a footing',
        set: { tower: { foundation: { kind: 'block', length: 6, width: 6, depth: 4, bearing: 3000 } } },
      },
      { name: 'higher', set: { tower: { foot: 1, sections: null, hinge: null } } },
    ];
    const reading = readAdditionsRequest({ plan: river, proposals });
    if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
    expect(reading.before).toEqual(read(demoPlanBefore('river-bluff')).input);
    expect(reading.after.map(({ input }) => input.station.tower.foundation?.kind)).toEqual(['block', 'manufacturer']);
    expect(reading.after[1]?.plan).toMatchObject({ format: 2, tower: { base: 1 } });
  });

  it('may be patches alone, and their faults stand where they were sent', () => {
    const { format: _, ...now } = demoPlanBefore('ten-numbers');
    const refused = readAdditionsRequest({ plan: now, proposals: [{ name: 'sunk', set: { tower: { foot: 90 } } }] });
    expect(refused).toMatchObject({ ok: false, faults: [{ pointer: '#/proposals/0/set/tower/foot' }] });
    const named = { plan: { ...now, format: 2 }, proposals: [{ name: 'sunk', set: { tower: { foot: 1 } } }] };
    const faults = readAdditionsRequest(named);
    expect(faults).toMatchObject({ ok: false, faults: [{ code: 'unknown-field' }] });
  });

  it('may be a form', () => {
    const fields = {
      format: '1',
      units: 'us',
      method: 'asce7-16',
      site: { wind: { speed: '105' }, exposure: 'C' },
      tower: { support: 'guyed', top: '48', held: [{}, { height: '30', by: 'guys', count: '3' }] },
      cables: [{ count: '3', diameter: '0.405', laid: 'single' }],
      sheet: { drawings: 'A\nB' },
      wanted: { margin: '', years: '30' },
    };
    const { document, nameOf } = readFormText(fields);
    const { input, document: plan } = read(document);
    expect(input.station.tower.held).toHaveLength(1);
    expect(plan).toMatchObject({ titleBlock: { drawings: ['A', 'B'] }, wanted: { margin: 0.2, years: 30 } });
    expect(nameOf('#/tower/held/0/height')).toBe('tower[held][1][height]');
  });

  it('may be a draft that a browser kept, with what is not known', () => {
    const kept = jsonIn('draft.json');
    const draft = draftOf(kept.draft);
    const { document } = documentOf(draft);
    expect(read(document).input).toEqual(read(readFormText(kept.draft).document).input);
    expect(read(document).documentFormat1).toBeUndefined();
    expect(draft).toMatchObject({ format: 2, wanted: { margin: '0.2', forecastError: '0.1' } });
    expect(kept.unknown.map(placeInNewest)).toEqual([
      '/tower/foundation/soilLateral',
      '/ratings/0/supportedAt/0',
      '/mast/wall',
    ]);
  });

  it('may be a file of stock', () => {
    const now = JSON.parse(readFileSync(new URL('../../deploy/stock/loan-trailer.json', import.meta.url), 'utf8'));
    const reading = readStock(jsonIn('stock.json'));
    expect(reading.ok).toBe(true);
    expect(reading).toEqual(readStock(now));
    const refused = readStock({ ...jsonIn('stock.json'), tower: { support: 'free', top: 40, foot: 50 } });
    expect(refused).toMatchObject({ ok: false, faults: [{ pointer: '#/tower/foot' }] });
  });

  it('may be the address of a cell', () => {
    const rows = (id: 'chance' | 'lower-at' | 'station', query: Fields) => readCell(id, query).rows;
    expect(rows('chance', { speed: '90', returns: '10:76;50:92' })).toEqual(
      rows('chance', { speed: '90', returnPeriods: '10:76;50:92' }),
    );
    expect(rows('lower-at', { holdsTo: '89', forecast: '0.2' })).toEqual(
      rows('lower-at', { holdsTo: '89', forecastError: '0.2' }),
    );
    const station = { method: 'asce7-16', speed: '105', exposure: 'C', support: 'free', top: '48' };
    expect(rows('station', { ...station, give: 'use' })).toEqual(rows('station', { ...station, give: 'ratio' }));
    const both = rows('lower-at', { holdsTo: '89', forecast: '0.2', forecastError: '0.1' });
    expect(both).toMatchObject([{ ok: false, faults: [{ parameter: 'forecast', code: 'one-of' }] }]);
  });
});
