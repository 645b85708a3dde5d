import { request as httpRequest } from 'node:http';
import { describe, expect, it } from 'vitest';
import { requestExamples } from '../../src/http/documents/request-examples.ts';
import fc from '../fast-check.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const FORM = 'application/x-www-form-urlencoded';

type Pair = readonly [name: string, value: string];

/** The fields that a plain page would have for a document. */
function fieldsOf(document: unknown, name = ''): Pair[] {
  if (Array.isArray(document)) return document.flatMap((entry, index) => fieldsOf(entry, `${name}[${index}]`));
  if (typeof document !== 'object' || document === null) return [[name, String(document)]];
  return Object.entries(document).flatMap(([key, value]) => fieldsOf(value, name === '' ? key : `${name}[${key}]`));
}

/** As a browser writes the fields of a form (WHATWG URL standard §5.2). */
const asForm = (pairs: readonly Pair[]) =>
  new URLSearchParams(pairs.map(([name, value]): [string, string] => [name, value])).toString();

const postText = (path: string, body: string | Buffer, type = FORM) =>
  running
    .request()
    .post(path)
    .set('content-type', type)
    // Not superagent's own encoding: the bytes go as they are.
    .serialize((sent) => sent as unknown as string)
    .send(body as string);
const postFields = (path: string, pairs: readonly Pair[]) => postText(path, asForm(pairs));
const postJson = (path: string, body: unknown) =>
  running
    .request()
    .post(path)
    .send(body as object);

const TEN: readonly Pair[] = fieldsOf(demoPlan('ten-numbers')).filter(([name]) => name !== 'title');
const besides = (...more: Pair[]) => [...TEN, ...more];
const without = (name: string) => TEN.filter((pair) => pair[0] !== name);

/** An answer without the plans in it as they were read, and their hash, which hold text where a form gave text. */
function withoutPlans(answer: unknown): unknown {
  return JSON.parse(JSON.stringify(answer, (key, value) => (key === 'plan' || key === 'planHash' ? undefined : value)));
}

interface Fault {
  readonly pointer?: string;
  readonly field?: string;
  readonly code?: string;
  readonly says: string;
}

/** Where the address is not the name of the call. */
const PATHS: Readonly<Record<string, string>> = { check: '/v1/checks', stormCard: '/v1/storm-cards' };

describe('a plan posted as the fields of a form', () => {
  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))(
    'is answered as the same plan in JSON: %s',
    async (_, plan) => {
      const byJson = (await postJson('/v1/checks', plan).expect(200)).body;
      const byForm = (await postFields('/v1/checks', fieldsOf(plan)).expect(200)).body;
      expect(withoutPlans(byForm)).toEqual(withoutPlans(byJson));
      expect(byForm.plan.units).toBe(plan['units']);
      const text = await postFields('/v1/checks?as=text', fieldsOf(plan)).expect(200);
      expect(text.text).toContain(byJson.says);
    },
  );

  it.each(requestExamples().map((example) => [`${example.operationId} ${example.name}`, example] as const))(
    'goes for every call with a body: %s',
    async (_, { operationId, body }) => {
      const path = PATHS[operationId] ?? `/v1/${operationId}`;
      const byJson = (await postJson(path, body).expect(200)).body;
      const byForm = (await postFields(path, fieldsOf(body)).expect(200)).body;
      expect(withoutPlans(byForm)).toEqual(withoutPlans(byJson));
    },
  );

  it('has its drawings and its ledger too', async () => {
    const plan = demoPlan('river-bluff');
    for (const query of ['as=svg&drawing=rose', 'as=csv']) {
      const byForm = await postFields(`/v1/checks?${query}`, fieldsOf(plan)).expect(200);
      const byJson = await postJson(`/v1/checks?${query}`, plan).expect(200);
      expect(byForm.body).toEqual(byJson.body);
      expect(byForm.text).toBe(byJson.text);
    }
  });

  it('may be blank where nothing is given, and blank rows vanish', async () => {
    const answer = await postFields(
      '/v1/checks',
      besides(
        ['title', ''],
        ['mast[outside]', ' '],
        ['loads[1][name]', ''],
        ['loads[1][area]', ''],
        ['loads[7][name]', 'whip'],
        ['loads[7][height]', '30 ft'],
        ['loads[7][shape]', 'tube'],
        ['loads[7][diameter]', '1 1/4 in'],
        ['loads[7][length]', '8'],
        ['loads[7][turns]', 'on'],
        ['tower[used]', 'no'],
      ),
    ).expect(200);
    expect(answer.body.plan.loads).toEqual([
      expect.objectContaining({ name: 'beam' }),
      { name: 'whip', height: '30 ft', shape: 'tube', diameter: '1 1/4 in', length: '8', turns: true },
    ]);
    expect(answer.body.plan).not.toHaveProperty('title');
    expect(answer.body.plan).not.toHaveProperty('mast');
    expect(answer.body.plan.tower.used).toBe(false);
  });

  it('keeps the places of a blank inside a row whose places have a meaning', async () => {
    const { body } = await postFields(
      '/v1/checks',
      besides(['site[climate][basis]', 'fastest-mile'], ['site[climate][returnPeriods][0][1]', '76']),
    ).expect(422);
    const fields = body.faults.map(({ field }: Fault) => field);
    expect(fields).toContain('site[climate][returnPeriods][0][0]');
  });

  it('reads a decimal comma, and asks where it can mean two numbers', async () => {
    const withComma = TEN.map(([name, value]): Pair => [name, value.replace('.', ',')]);
    const byPoint = (await postFields('/v1/checks', TEN).expect(200)).body;
    const byComma = (await postFields('/v1/checks?decimal=comma', withComma).expect(200)).body;
    expect(withoutPlans(byComma)).toEqual(withoutPlans(byPoint));

    const asked = [...without('loads[0][area]'), ['loads[0][area]', '1,250'] as Pair];
    const { body } = await postFields('/v1/checks', asked).expect(422);
    expect(body.faults).toHaveLength(1);
    expect(body.faults[0]).toMatchObject({
      code: 'ambiguous-comma',
      field: 'loads[0][area]',
      pointer: '#/loads/0/area',
    });
  });

  it('takes a list of single values from rows, from [] or from one field', async () => {
    const wind = without('loads[0][name]').filter(([name]) => /^(units|method|site)/.test(name));
    const heights = async (...more: Pair[]) =>
      (await postFields('/v1/pressures', [...wind, ...more]).expect(200)).body.heights;
    const rows = await heights(['heights[0]', '10'], ['heights[1]', '33 ft'], ['heights[2]', ''], ['heights[9]', '50']);
    expect(rows).toHaveLength(3);
    expect(await heights(['heights[]', '10'], ['heights[]', '33 ft'], ['heights[]', '50'])).toEqual(rows);
    expect(await heights(['heights', '10; 33 ft\r\n50\r\n'])).toEqual(rows);
    const { body } = await postFields('/v1/pressures', [...wind, ['heights', '10; tall; 50']]).expect(422);
    expect(body.faults[0]).toMatchObject({ pointer: '#/heights/1', field: 'heights' });
  });

  it('may come as JSON in the one field plan', async () => {
    const plan = demoPlan('house-bracket');
    const byForm = await postFields('/v1/checks', [
      ['plan', JSON.stringify(plan, null, 2)],
      ['title', ''],
    ]).expect(200);
    expect(byForm.body).toEqual((await postJson('/v1/checks', plan).expect(200)).body);

    const wrong = JSON.stringify({ ...plan, loads: [{ name: 'x', above: 2, area: -1 }] });
    const { body } = await postFields('/v1/checks', [['plan', wrong]]).expect(422);
    expect(body.faults[0]).toMatchObject({ pointer: '#/loads/0/area', field: 'plan' });

    const both = await postFields('/v1/checks', [
      ['plan', '{}'],
      ['title', 'x'],
      ['proposals', '[]'],
    ]).expect(422);
    expect(both.body.faults.map(({ field }: Fault) => field)).toEqual(['title', 'proposals']);

    const broken = await postFields('/v1/checks', [['plan', '{"units": ']]).expect(400);
    expect(broken.body.type).toBe('/problems/not-json');
    expect(broken.body.faults[0].field).toBe('plan');
    const poisoned = await postFields('/v1/checks', [['plan', '{"__proto__": {"units": "us"}}']]).expect(400);
    expect(poisoned.body.type).toBe('/problems/not-json');
    const twice = await postFields('/v1/checks', [['plan', '{"units": "us", "units": "si"}']]).expect(422);
    expect(twice.body.faults[0]).toMatchObject({ code: 'repeated-field', pointer: '#/units', field: 'plan' });
  });

  it('may hold a plan as JSON and the proposals as fields', async () => {
    const plan = demoPlan('ten-numbers');
    const proposals = [
      { name: 'four-face', set: { tower: { faces: 4 } } },
      { name: 'other beam', swap: [{ load: 'beam', with: { area: 4, count: 2 } }] },
      { name: 'bare', remove: ['beam'] },
    ];
    const byJson = (await postJson('/v1/additions', { plan, proposals }).expect(200)).body;
    const mixed: Pair[] = [['plan', JSON.stringify(plan)], ...fieldsOf({ proposals })];
    expect(withoutPlans((await postFields('/v1/additions', mixed).expect(200)).body)).toEqual(withoutPlans(byJson));
    const both: Pair[] = [
      ['plan', JSON.stringify(plan)],
      ['proposals', JSON.stringify(proposals)],
    ];
    expect((await postFields('/v1/additions', both).expect(200)).body).toEqual(byJson);
    const twice: Pair[] = [['plan', '{"site": {"wind": 1, "wind": 2}}'], ...fieldsOf({ proposals })];
    const { body } = await postFields('/v1/additions', twice).expect(422);
    expect(body.faults[0]).toMatchObject({ pointer: '#/plan/site/wind', field: 'plan' });
    const { body: unknown } = await postFields('/v1/checks', besides(['proposals', '[]'])).expect(422);
    expect(unknown.faults[0]).toMatchObject({ code: 'unknown-field', field: 'proposals' });
  });
});

describe('what does not fit in a form', () => {
  it('is told of each field by its name, all at once, whatever rows were blank before it', async () => {
    const { body } = await postFields('/v1/checks', [
      ...without('site[exposure]'),
      ['site[exposure]', 'E'],
      ['loads[1][name]', ''],
      ['loads[2][name]', 'whip'],
      ['loads[2][height]', 'tall'],
      ['loads[2][area]', '2'],
      ['loads[3][arae]', '2'],
      ['tower[telescopes]', 'perhaps'],
      ['titel', 'x'],
    ]).expect(422);
    const named = Object.fromEntries(body.faults.map((fault: Fault) => [fault.field, fault]));
    expect(Object.keys(named).sort()).toEqual([
      'loads[2][height]',
      'loads[3][arae]',
      'site[exposure]',
      'titel',
      'tower[telescopes]',
    ]);
    expect(named['loads[2][height]'].pointer).toBe('#/loads/1/height');
    expect(named['loads[3][arae]'].says).toContain('Did you mean "area"?');
    expect(named['titel'].says).toContain('Did you mean "title"?');
    expect(named['tower[telescopes]'].says).toContain('true or false');
  });

  it('is told of the place where it was written for', async () => {
    const { body } = await postFields('/v1/ratings', [
      ['units', 'us'],
      ['top', '48'],
      ['ratings[4][of]', 'tower'],
      ['ratings[4][area]', 'much'],
      ['to[wind][speed]', '5000'],
    ]).expect(422);
    expect(body.faults.map(({ field }: Fault) => field).sort()).toEqual(['ratings[4][area]', 'to[wind][speed]']);
  });

  it.each<[string, string, string]>([
    ['a name given twice', 'loads[0][name]=a&loads[0][name]=b', 'repeated-field'],
    ['a row beyond all plans', 'loads[999999][name]=beam', 'too-many'],
    ['a row numbered oddly', 'loads[007][name]=beam', 'too-many'],
    ['a name fifty deep', `a${'[b]'.repeat(50)}=1`, 'unreadable'],
    ['a bracket that is not closed', 'loads[0=1', 'unreadable'],
    ['a bracket in a bracket', 'loads[[0]]=1', 'unreadable'],
    ['a name that is blank', '=1', 'unreadable'],
    ['rows without a number', 'loads[][name]=a', 'unreadable'],
    ['a field and its own part', 'site[wind]=105&site[wind][speed]=90', 'one-of'],
    ['the name of a prototype', '__proto__[units]=us', 'unknown-field'],
    ['the name of a prototype further in', 'tower[__proto__][top]=48', 'unknown-field'],
    ['names of the prototype chain', 'constructor[prototype][x]=1', 'unknown-field'],
    ['a method of objects', 'toString=1', 'unknown-field'],
    ['an object where a list is due', 'loads[first][name]=beam', 'wrong-type'],
    ['text where a list is due', 'loads=beam', 'wrong-type'],
    ['a list where an object is due', 'tower[0]=48', 'wrong-type'],
    ['a list where text is due', 'title[0]=a', 'wrong-type'],
    ['text where an object is due', 'tower=tall', 'wrong-type'],
    ['a value of great length', `title=${'x'.repeat(5000)}`, 'too-long'],
    ['a number of great length', `site[wind]=${'9'.repeat(5000)}`, 'too-long'],
    ['a number beyond all numbers', 'site[wind]=1e999', 'unreadable'],
    ['a button with a name', 'as=html', 'unknown-field'],
  ])('is refused in words: %s', async (_, text, code) => {
    const rest = asForm(TEN.filter(([name]) => !text.startsWith(name.split('[')[0] as string)));
    const { body, status } = await postText('/v1/checks', `${rest}&${text}`);
    expect(status).toBe(422);
    expect(body.type).toBe('/problems/plan-faults');
    expect(body.faults.map((fault: Fault) => fault.code)).toContain(code);
    for (const fault of body.faults as Fault[]) expect(fault.says.length).toBeGreaterThan(20);
    expect(({} as Record<string, unknown>)['units']).toBeUndefined();
  });

  it('is refused where it is no form at all', async () => {
    const many = Array.from({ length: 10_000 }, (_, index) => `a${index}=1`).join('&');
    for (const body of [many, 'title=%zz', 'title=%E9t%E9', Buffer.from([0x74, 0x3d, 0xe9])]) {
      const answer = await postText('/v1/checks', body);
      expect(answer.status).toBe(400);
      expect(answer.body.type).toBe('/problems/not-a-form');
    }
  });

  it('is refused in another charset, and says which', async () => {
    for (const [body, type] of [
      ['title=x', `${FORM}; charset=iso-8859-1`],
      ['title=x&_charset_=windows-1252', FORM],
    ] as const) {
      const answer = await postText('/v1/checks', body, type);
      expect(answer.status).toBe(415);
      expect(answer.body.detail).toMatch(/iso-8859-1|windows-1252/);
    }
    const utf8 = asForm(besides(['_charset_', 'UTF-8'], ['title', 'Höhe ½ 北']));
    const { body } = await postText('/v1/checks', utf8, `${FORM}; charset="UTF-8"`).expect(200);
    expect(body.plan.title).toBe('Höhe ½ 北');
  });

  it('is refused as multipart, and says how to send it', async () => {
    const answer = await running.request().post('/v1/checks').field('units', 'us');
    expect(answer.status).toBe(415);
    expect(answer.body.detail).toContain('form without enctype');
  });

  it('is refused where nothing was filled in, field by field', async () => {
    const { body } = await postText('/v1/checks', '').expect(422);
    expect(body.faults.map(({ field }: Fault) => field).sort()).toEqual([
      'method',
      'site[wind]',
      'tower[support]',
      'tower[top]',
      'units',
    ]);
    await postText('/v1/checks', 'units=&method=+&&').expect(422);
  });

  it('never breaks the service, whatever the fields are', async () => {
    const part = fc.constantFrom(
      'loads',
      'tower',
      'site',
      'wind',
      '0',
      '1',
      '998',
      '',
      'taper',
      '__proto__',
      'é',
      ']',
      '[',
    );
    const name = fc
      .array(part, { minLength: 1, maxLength: 6 })
      .map(([first, ...rest]) => `${first}${rest.map((each) => `[${each}]`).join('')}`);
    const value = fc.oneof(fc.constantFrom('', '1', 'on', '{}', '48 to 58', '1,250'), fc.string({ unit: 'grapheme' }));
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(name, value), { maxLength: 30 }), async (pairs) => {
        const { status, body } = await postFields('/v1/checks', pairs);
        expect([400, 422]).toContain(status);
        expect(body.detail.length).toBeGreaterThan(10);
      }),
      { numRuns: 150 },
    );
  });
});

describe('a form posted to a service with limits', () => {
  const small = runningApp({ bodyLimit: 2048 });

  it('is refused where it is too large', async () => {
    const { port } = new URL(small.origin);
    const body = `title=${'x'.repeat(4000)}`;
    const status = await new Promise<number | undefined>((resolve, reject) => {
      const sent = httpRequest(
        { port, method: 'POST', path: '/v1/checks', headers: { 'content-type': FORM, 'content-length': body.length } },
        (answer) => {
          answer.resume();
          resolve(answer.statusCode);
        },
      );
      sent.on('error', reject);
      sent.end(body);
    });
    expect(status).toBe(413);
  });
});
