import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { RequirementsAnswer } from '../../src/answer/index.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { forbiddenIn, ownersWords } from '../words/forbidden-patterns.ts';
import { textOfMarkup } from '../words/readers-texts.ts';
import { sentencesOf } from '../words/sentence-reader.ts';
import { runningApp } from './running-app.ts';

type Document = Record<string, unknown>;

const running = runningApp();
const post = (query: string, body: unknown) =>
  running
    .request()
    .post(`/v1/requirements${query}`)
    .send(body as object);
const example = JSON.parse(
  readFileSync(new URL('../../openapi/examples/requirements.tower-to-order.json', import.meta.url), 'utf8'),
) as Document & { plan: Document; candidates: (Document & { tower: Document; ratings?: Document[] })[] };
const { plan, candidates } = example;
const [known, paperless] = candidates as [(typeof candidates)[number], (typeof candidates)[number]];
const answered = async (body: unknown) => (await post('', body).expect(200)).body as RequirementsAnswer;
const faultsOf = async (body: unknown) => (await post('', body).expect(422)).body.faults;
const withLoads = (loads: readonly Document[]) => ({ plan: { ...plan, loads } });
const beam = { name: 'beam', above: 3, area: 8, areaKind: 'effective', weight: 45 };

describe('POST /v1/requirements', () => {
  it('gives each set of loads and each wind its own figures, the more there is the more', async () => {
    const { cases } = await answered(example);
    expect(cases.map(({ wind, loads }) => `${wind} ${loads}`)).toEqual([
      'site now',
      'site with-later',
      'wished now',
      'wished with-later',
    ]);
    const [now, later, wished] = cases.map(({ quotes }) => quotes[0]?.area?.value?.value ?? Number.NaN);
    expect(later).toBeGreaterThan(now as number);
    expect(wished).toBeGreaterThan(now as number);
  });

  it('asks for what it is asked for: winds, height, and no more', async () => {
    const quotes = [{ method: 'tia222-g', speed: '145 km/h', exposure: 'C', riskCategory: 'II' }];
    const { cases, above } = await answered({ plan, quotes, above: 1.5 });
    expect(above.value).toBeCloseTo(1.5, 9);
    expect(cases[0]?.quotes).toHaveLength(1);
    expect(cases[0]?.quotes[0]?.speed.value).toBeCloseTo(145 / 1.609344, 6);
  });

  it('lets a reader redo an area from its steps', async () => {
    const { cases, margin } = await answered({ plan: demoPlan('river-bluff') });
    for (const { area } of cases[0]?.quotes ?? []) {
      const { demand, own, perArea, arm } = area?.steps ?? {};
      if (!demand || !own || !perArea || arm === undefined) throw new Error('no steps');
      const byHand = (demand.value / (1 - margin) - own.value) / (perArea.value * arm);
      expect(byHand / (area?.value?.value ?? 0)).toBeCloseTo(1, 6);
    }
  });

  it('states no figure in words that is less than it needs', async () => {
    const { cases } = await answered({ plan: demoPlan('river-bluff') });
    for (const { area, says } of cases[0]?.quotes ?? []) {
      const said = Number(/at least ([\d.,]+) ft²/.exec(says)?.[1]?.replaceAll(',', ''));
      expect(said).toBeGreaterThanOrEqual((area?.value?.value ?? Number.NaN) * (1 - 1e-9));
      expect(said).toBeLessThan((area?.value?.value ?? Number.NaN) * 1.01);
    }
  });
});

describe('what it is read from', () => {
  const bearing = (more: Document) => ({ plan: { ...plan, loads: [beam], ...more } });
  const warned = async (body: unknown) =>
    (await answered(body)).entryWarnings.map(({ pointer, code }) => `${code} ${pointer}`);

  it('names what is assumed in place of what is left out, in every form', async () => {
    const { assumed } = await answered(bearing({}));
    expect(assumed).toEqual([
      'Mast not given. Assumed in the wind: a tube of 2 in from 4 ft below the top to the highest load; at best none.',
    ]);
    for (const as of ['text', 'html']) expect((await post(`?as=${as}`, bearing({}))).text).toContain('Mast not given.');
    const mast = { outside: 2, length: 8, inside: 4, wall: 0.15, bearing: 45 };
    expect((await answered(bearing({ mast }))).assumed).toEqual([]);
  });

  it('names every weight that the weight aloft lacks', async () => {
    const mast = { outside: 2, length: 8, inside: 4, bearing: 45 };
    const loads = [{ ...beam, weight: undefined, turns: true }];
    const [first] = (await answered(bearing({ mast, loads: JSON.parse(JSON.stringify(loads)) }))).cases;
    expect(first?.weightNotGiven).toEqual(['the mast', 'the rotator', 'beam', 'cable run 1']);
    expect((await post('?as=html', bearing({}))).text).toContain('Weight not given, so not included: cable run 1.');
  });

  it('says where a rating acts in whole sentences, at the top too', async () => {
    expect((await answered({ plan, above: 0 })).says).toContain('It acts at a 45 ft top and includes 5 lines');
    expect((await answered({ plan: { ...plan, cables: [] }, above: 2 })).says).toContain(
      'It acts 2 ft above a 45 ft top.',
    );
  });

  it('asks about a wished wind that is weaker than that of the site, whatever its type', async () => {
    // 115 mph at strength level is 89.1 mph nominal.
    expect(await warned({ plan, wished: { speed: 89 } })).toEqual(['wished-weaker #/wished/speed']);
    expect(await warned({ plan, wished: { speed: 114, basis: 'gust3-strength' } })).toEqual([
      'wished-weaker #/wished/speed',
    ]);
    expect(await warned({ plan, wished: { speed: 89.2 } })).toEqual([]);
  });

  it('says that a rating of the plan’s own tower is left out', async () => {
    const ratings = [{ of: 'tower', area: 20, wind: { speed: 90 } }];
    expect(await warned(bearing({ ratings }))).toEqual(['rating-left-out #/plan/ratings/0']);
  });

  it('asks about an area of nothing and a tower higher than small ones are', async () => {
    expect(await warned(bearing({ loads: [{ ...beam, area: 0 }] }))).toEqual(['area-of-nothing #/plan/loads/0/area']);
    const tower = { support: 'free', top: 300 };
    expect(await warned(bearing({ tower }))).toEqual(['top-of-no-small-tower #/plan/tower/top']);
    expect(await warned(bearing({ tower: { ...tower, top: 200 } }))).toEqual([]);
  });

  it('warns of a force where legs lean', async () => {
    const section = { shape: 'lattice', faces: 4, members: 'flat', solidity: 0.2 };
    const sections = [{ length: 45, ...section, width: [24, 12] }];
    const leaning = await answered(bearing({ tower: { support: 'free', top: 45, sections } }));
    expect(leaning.cases[0]?.says).toContain('Leaning legs take most of a force near their apex');
    const upright = await answered(bearing({ tower: { support: 'free', top: 45, ...section, width: 18 } }));
    expect(upright.cases[0]?.says).not.toContain('Leaning');
  });

  it('needs no ground where the standard of the plan uses none', async () => {
    const site = { wind: 80 };
    const byF = bearing({ method: 'eia222-f', site });
    const { says, cases } = await answered(byF);
    expect(says).toContain('At 80 mph fastest mile, TIA/EIA-222-F: ');
    const told = await answered({ plan: { ...byF.plan, site: { ...site, exposure: 'D' } } });
    expect(cases).toEqual(told.cases);
  });
});

describe('towers side by side', () => {
  it('never puts first what is not known', async () => {
    const { candidates: ranked = [] } = await answered({ plan, candidates: [paperless, known] });
    expect(ranked.map(({ name, rank }) => [name, rank])).toEqual([
      ['without papers', 2],
      ['lattice 18 in', 1],
    ]);
    const open = ranked[0]?.cases.at(-1)?.toFindOut.join(' ');
    expect(open).toContain('No rating of the tower given');
  });

  it('says of each whose top is not that of the plan, in every form', async () => {
    const low = { ...paperless, name: 'low one', tower: { support: 'free', top: 30 } };
    const says = 'low one ends at 30 ft, the tower of the plan at 45 ft. Loads given above the top move with it.';
    const { candidates: [first, second] = [] } = await answered({ plan, candidates: [known, low] });
    expect(first?.entryWarnings).toEqual([]);
    expect(second?.entryWarnings).toEqual([{ pointer: '#/candidates/1/tower/top', code: 'top-differs', says }]);
    for (const as of ['text', 'html']) {
      expect((await post(`?as=${as}`, { plan, candidates: [known, low] })).text).toContain(says);
    }
  });

  it('gives a tower the answer that its own plan has', async () => {
    const { candidates: [tower] = [] } = await answered({ plan, candidates: [known] });
    const own = { ...plan, tower: known.tower, ratings: known.ratings };
    const { body } = await running.request().post('/v1/checks').send(own).expect(200);
    const now = tower?.cases[0];
    expect(now?.parts).toEqual(body.parts);
    expect(now?.says).toBe(body.says);
    expect(now?.roomLeft).toEqual(body.roomLeft);
    expect(tower?.planHash).toEqual(body.planHash);
  });

  it('checks the same tower within once it is rated as asked', async () => {
    const shaped = { ...plan, tower: known.tower };
    const { height, cases } = await answered({ plan: shaped });
    const { method, speed, exposure, area } = cases[1]?.quotes[0] ?? {};
    const rating = {
      of: 'tower',
      area: area?.value?.value,
      areaKind: 'effective',
      height: height.value,
      top: 45,
      wind: { method, exposure, speed: speed?.value },
      withCables: { count: 5, diameter: 0.4, arrangement: 'bundle' },
    };
    const asked = { name: 'as asked', tower: known.tower, ratings: [rating] };
    const { candidates: [tower] = [] } = await answered({ plan, candidates: [asked] });
    const parts = tower?.cases.map(({ parts: all }) => all.find(({ kind }) => kind === 'tower'));
    expect(parts?.[0]?.verdict).toBe('within');
    expect(parts?.[1]?.ratio).toBeCloseTo(0.9, 6);
  });
});

describe('what does not fit', () => {
  it.each<[string, unknown, string, string]>([
    ['no loads at all', withLoads([]), 'missing', '#/plan/loads'],
    [
      '31 loads',
      withLoads(Array.from({ length: 31 }, (_, index) => ({ ...beam, name: `${index}` }))),
      'too-many',
      '#/plan/loads',
    ],
    ['no plan', {}, 'missing', '#/plan'],
    [
      'a rated area without a speed',
      { plan, candidates: [{ ...paperless, ratings: [{ of: 'tower', area: 18, wind: {} }] }] },
      '',
      '',
    ],
    ['an unknown standard', { plan, quotes: [{ method: 'mine', speed: 90 }] }, 'not-a-choice', '#/quotes/0/method'],
    ['a wind without a speed', { plan, quotes: [{ method: 'tia222-g' }] }, 'missing', '#/quotes/0/speed'],
    ['a wind of no speed', { plan, quotes: [{ method: 'tia222-g', speed: 0 }] }, 'out-of-bounds', '#/quotes/0/speed'],
    [
      'a terrain by a standard of exposures',
      { plan, quotes: [{ method: 'tia222-g', speed: 90, terrain: 'II' }] },
      'goes-with',
      '#/quotes/0/terrain',
    ],
    [
      'ground by a standard that uses none',
      { plan, quotes: [{ method: 'eia222-f', speed: 70, exposure: 'C' }] },
      'goes-with',
      '#/quotes/0/exposure',
    ],
    ['no ground', { plan, quotes: [{ method: 'tia222-h', speed: 90 }] }, 'missing', '#/quotes/0/exposure'],
    [
      'no class',
      { plan, quotes: [{ method: 'tia222-g', speed: 90, exposure: 'C' }] },
      'missing',
      '#/quotes/0/riskCategory',
    ],
    ['a wished wind that is a weight', { plan, wished: { speed: '40 kg' } }, 'unknown-unit', '#/wished/speed'],
    ['a wished wind of nothing', { plan, wished: { speed: 0 } }, 'out-of-bounds', '#/wished/speed'],
    ['a height no rating has', { plan, above: 300 }, 'out-of-bounds', '#/above'],
    ['two towers of one name', { plan, candidates: [known, known] }, 'name-not-unique', '#/candidates/1/name'],
    [
      'a tower without a height',
      { plan, candidates: [{ name: 'x', tower: { support: 'free' } }] },
      'missing',
      '#/candidates/0/tower/top',
    ],
    [
      'a rating that is none',
      { plan, candidates: [{ ...known, ratings: [{ of: 'tower', area: 'much' }] }] },
      'unreadable',
      '#/candidates/0/ratings/0/area',
    ],
    [
      'eleven towers',
      { plan, candidates: Array.from({ length: 11 }, (_, index) => ({ ...known, name: `${index}` })) },
      'too-many',
      '#/candidates',
    ],
    ['a field too many', { plan, budget: 900 }, 'unknown-field', '#/budget'],
  ])('is told: %s', async (_, body, code, pointer) => {
    if (code === '') {
      const { candidates: [tower] = [] } = await answered(body);
      expect(tower?.cases[0]?.toFindOut.join(' ')).toContain('The rating states no wind speed');
      return;
    }
    expect(await faultsOf(body)).toMatchObject([{ code, pointer }]);
  });

  it('calls a wind a wind, and a long name by its beginning', async () => {
    const [slow] = await faultsOf({ plan, quotes: [{ method: 'tia222-g', speed: 0 }] });
    expect(slow.says).toMatch(/^Wind 1 speed: 0 mph given/);
    const [long] = await faultsOf(withLoads([{ ...beam, name: 'W'.repeat(201) }]));
    expect(long.says).toMatch(/^W{59}… name has 201 characters/);
  });

  it('names the tower with which the rest of the plan does not fit', async () => {
    const low = { name: 'low one', tower: { support: 'free', top: 20, base: 10 } };
    const under = { ...beam, above: undefined, height: 5 };
    const [fault] = await faultsOf({
      ...withLoads([JSON.parse(JSON.stringify(under)) as Document]),
      candidates: [low],
    });
    expect(fault.pointer).toBe('#/candidates/0');
    expect(fault.says).toContain('low one: with it the rest of the plan does not fit (#/plan/loads/0)');
  });

  it('answers where all is to come later, and says so', async () => {
    const { cases, loads } = await answered(withLoads([{ ...beam, later: true }]));
    expect(cases.map(({ loads: which }) => which)).toEqual(['with-later']);
    expect(loads).toMatchObject([{ name: 'beam', later: true }]);
  });

  it('answers for a tower of 300 ft', async () => {
    const { cases } = await answered({ plan: { ...plan, tower: { support: 'free', top: 300 } } });
    expect(cases[0]?.quotes[0]?.area?.value?.value).toBeGreaterThan(0);
  });

  it('asks for the supports of a guyed tower, and for no area without them', async () => {
    const { says, cases } = await answered({ plan: { ...plan, tower: { support: 'guyed', top: 60 } } });
    expect(says).toContain('No area can be asked for');
    expect(says).toContain('guys');
    expect(cases[0]?.quotes.every(({ area }) => area === undefined)).toBe(true);
  });
});

describe('a form', () => {
  it('may hold each part as JSON in a field of its own', async () => {
    const parts = {
      plan,
      quotes: [{ method: 'tia222-h', speed: 100, exposure: 'C' }],
      wished: { speed: 130 },
      candidates,
    };
    const fields = Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, JSON.stringify(part)]));
    const { body } = await running.request().post('/v1/requirements').type('form').send(fields).expect(200);
    expect(body).toEqual(await answered(parts));
    const wrong = { ...fields, wished: '{"speed":0}' };
    const refused = await running.request().post('/v1/requirements').type('form').send(wrong).expect(422);
    expect(refused.body.faults).toMatchObject([{ field: 'wished', pointer: '#/wished/speed' }]);
  });
});

describe('the sheet for manufacturers', () => {
  it.each(demoPlans().map(({ id, plan: each }) => [id, each] as const))('is one page to %s', async (_, each) => {
    for (const paper of ['letter', 'a4']) {
      const { body } = await post(`?as=pdf&paper=${paper}`, { plan: each }).responseType('blob').expect(200);
      expect(body.toString('latin1').match(/\/MediaBox/g)).toHaveLength(1);
    }
  });

  it('has a line of forces for each kind of tower, and one where the plan gives it', async () => {
    const linesOf = async (body: unknown) => {
      const { text } = await post('?as=html', body).expect(200);
      const [, forces = ''] = text.split('The same as forces');
      return (forces.split('</table>')[0] ?? '').match(/<tr/g)?.length;
    };
    const one = { ...plan, loads: [beam] };
    // Beside the line of its heads.
    expect(await linesOf({ plan: one })).toBe(1 + 3);
    expect(await linesOf({ plan: { ...one, tower: known.tower } })).toBe(1 + 1);
  });

  it('has its towers side by side where there are any', async () => {
    const { text } = await post('?as=html', example)
      .expect(200)
      .expect('content-type', /text\/html/);
    expect(text).toContain('Towers side by side');
    const without = await post('?as=html', { plan }).expect(200);
    expect(without.text).not.toContain('Towers side by side');
    await post('?as=json&paper=a4', { plan }).expect(400);
  });
});

describe('the words of it', () => {
  const guyed = { plan: { ...plan, tower: { support: 'guyed', top: 60 } } };
  it.each<[string, unknown]>([
    ['the example', example],
    ['a guyed tower without supports', guyed],
    ...demoPlans().map(({ id, plan: each }): [string, unknown] => [id, { plan: each, wished: { speed: 60 } }]),
  ])('to %s', async (_, body) => {
    const owned = ownersWords(body as Document);
    const { text } = await post('?as=text', body).expect(200);
    const page = await post('?as=html', body).expect(200);
    for (const each of [text, textOfMarkup(page.text)]) expect(forbiddenIn(each, owned)).toEqual([]);
    const { says, cases } = await answered(body);
    const said = [
      says,
      ...cases.flatMap((each) => [each.says, ...each.quotes.flatMap((quote) => [quote.says, quote.top ?? ''])]),
    ];
    expect(said.flatMap((each) => sentencesOf(each, owned)).filter(({ words }) => words > 20)).toEqual([]);
  });
});
