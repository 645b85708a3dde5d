import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import {
  additionsSchema,
  answerSchema,
  areasSchema,
  pressuresSchema,
  ratingsSchema,
  requirementsSchema,
  stormCardSchema,
} from '../../src/answer/index.ts';
import { DRAWING_NAMES } from '../../src/drawing/index.ts';
import { requestExamples } from '../../src/http/documents/request-examples.ts';
import { VERSION } from '../../src/http/version.ts';
import { textOf, wellFormed } from '../drawing/well-formed.ts';
import { demoPlan, demoPlanBefore, demoPlans } from '../margins/demo-plan.ts';
import { isSaid } from '../worksheet/caution-said.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const post = (path: string, body: unknown) =>
  running
    .request()
    .post(path)
    .send(body as object);

/** Refuses fields that the contract does not name. */
function strict<S extends z.ZodType>(schema: S): z.ZodType {
  const document = z.toJSONSchema(schema, {
    override: ({ jsonSchema }) => {
      if (jsonSchema.type === 'object' && jsonSchema.properties) jsonSchema.additionalProperties = false;
    },
  });
  return z.fromJSONSchema(document as Parameters<typeof z.fromJSONSchema>[0]);
}

const PATHS: Readonly<Record<string, readonly [string, z.ZodType]>> = {
  additions: ['/v1/additions', additionsSchema],
  check: ['/v1/checks', answerSchema],
  areas: ['/v1/areas', areasSchema],
  pressures: ['/v1/pressures', pressuresSchema],
  ratings: ['/v1/ratings', ratingsSchema],
  requirements: ['/v1/requirements', requirementsSchema],
  stormCard: ['/v1/storm-cards', stormCardSchema],
};

describe('the examples of the contract', () => {
  it.each(requestExamples().map((example) => [`${example.operationId} ${example.name}`, example] as const))(
    '%s is answered as the contract says, and by nothing more',
    async (_, { operationId, body }) => {
      const [path, schema] = PATHS[operationId] as readonly [string, z.ZodType];
      const answer = await post(path, body)
        .expect(200)
        .expect('content-type', /application\/json/);
      expect(strict(schema).safeParse(answer.body).error?.issues ?? []).toEqual([]);
    },
  );

  it('have one for every operation that takes a body', () => {
    const spoken = new Set(requestExamples().map((example) => example.operationId));
    expect([...spoken].sort()).toEqual(Object.keys(PATHS).sort());
  });
});

describe('POST /v1/checks', () => {
  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))('answers the demo plan %s', async (_, plan) => {
    const { body } = await post('/v1/checks', plan).expect(200);
    expect(['within', 'low-margin', 'over', 'open']).toContain(body.verdict);
    expect(['tower', 'own-strength']).toContain(body.checks[0].id);
    expect(body.cautions.map((caution: { code: string }) => caution.code)).toContain('engineer-and-local-code');
    expect(body.notCovered).toContain('earthquake');
    expect(body.plan).toEqual({ format: 2, ...plan });
    expect(body.working).toBeUndefined();
  });

  it('says in the head of every form which version answered, and to which plan', async () => {
    const plan = demoPlan('river-bluff');
    const { planHash } = (await post('/v1/checks', plan).expect(200)).body;
    expect(planHash.format2).toMatch(/^[0-9a-f]{64}$/);
    for (const form of ['json', 'text', 'html', 'csv', 'svg&drawing=elevation']) {
      const { headers } = await post(`/v1/checks?as=${form}`, plan).expect(200);
      expect([form, headers['gustworthy-version'], headers['gustworthy-plan']]).toEqual([
        form,
        VERSION,
        planHash.format2,
      ]);
    }
    const table = await post('/v1/checks?as=csv', plan).expect(200);
    expect(table.headers['content-disposition']).toBe(
      `inline; filename="wind-loads-${planHash.format2.slice(0, 8)}.csv"`,
    );
    const other = await post('/v1/checks?as=csv', { ...plan, title: 'another' }).expect(200);
    expect(other.headers['gustworthy-plan']).not.toBe(planHash.format2);
  });

  it('answers a plan of format 1 with the same numbers, the plan in format 2, and the hash of both', async () => {
    const folder = new URL('../plan/format-1/plans/', import.meta.url);
    const { plan } = JSON.parse(readFileSync(new URL('river-bluff.json', folder), 'utf8'));
    const before = (await post('/v1/checks', plan).expect(200)).body;
    const now = (await post('/v1/checks', demoPlanBefore('river-bluff')).expect(200)).body;
    expect(before.plan).toEqual(now.plan);
    expect(before.planHash).toMatchObject({
      format2: now.planHash.format2,
      format1: expect.stringMatching(/^d3cd80df8c54/),
    });
    expect({ ...before, planHash: now.planHash }).toEqual(now);
    const { text } = await post('/v1/checks?as=html', plan).expect(200);
    expect(text).toContain(', plan format 2, plan ');
    expect(text).toContain('(in format 1, d3cd 80df)');
  });

  it('says the same in text as in JSON', async () => {
    for (const { plan } of demoPlans()) {
      const { body } = await post('/v1/checks', plan).expect(200);
      const { text } = await post('/v1/checks?as=text', plan)
        .expect(200)
        .expect('content-type', /text\/plain/);
      expect(text).toContain(body.says);
      for (const check of body.checks) expect(text).toContain(check.says);
      for (const caution of body.cautions) expect(isSaid(caution, text.split('\n')), caution.says).toBe(true);
      for (const question of body.toFindOut) expect(text).toContain(question.ask);
      for (const what of body.notCovered) expect(text).toContain(what);
    }
  });

  it('goes by the accept header where the query says nothing', async () => {
    const [first] = demoPlans();
    await post('/v1/checks', first?.plan)
      .set('accept', 'text/plain')
      .expect('content-type', /text\/plain/);
    await post('/v1/checks', first?.plan).set('accept', 'image/png').expect(406);
  });

  it.each(DRAWING_NAMES)('answers as the drawing %s', async (drawing) => {
    const plan = demoPlan('river-bluff');
    const { body } = await post(`/v1/checks?as=svg&drawing=${drawing}`, plan)
      .expect(200)
      .expect('content-type', 'image/svg+xml; charset=utf-8');
    const drawn = wellFormed((body as Buffer).toString('utf8'));
    expect(textOf(drawn)).toContain('Heron Bluff');
    const byHeader = await post(`/v1/checks?drawing=${drawing}`, plan).set('accept', 'image/svg+xml').expect(200);
    expect(byHeader.body).toEqual(body);
  });

  it.each([
    ['as=svg', 'one of elevation, rose'],
    ['drawing=rose', 'as=svg'],
    ['as=text&drawing=rose', 'as=svg'],
    ['as=svg&drawing=sketch', 'one of elevation, rose'],
    ['as=svg&drawing=rose&drawing=ratio', 'one of elevation, rose'],
  ])('refuses ?%s and says why', async (query, why) => {
    const { body } = await post(`/v1/checks?${query}`, demoPlan('ten-numbers'))
      .expect(400)
      .expect('content-type', /problem\+json/);
    expect(body.type).toBe('/problems/bad-query');
    expect(body.faults).toHaveLength(1);
    expect(body.faults[0].parameter).toBe('drawing');
    expect(body.faults[0].says).toContain(why);
  });

  it('draws nothing of a plan with faults', async () => {
    await post('/v1/checks?as=svg&drawing=elevation', { title: 'x' })
      .expect(422)
      .expect('content-type', /problem\+json/);
  });

  it('shows the spread and the sensitivity when asked, and only then', async () => {
    const plan = demoPlan('river-bluff');
    const asked = await post('/v1/checks?spread=full&sensitivity=full', plan).expect(200);
    expect(strict(answerSchema).safeParse(asked.body).error?.issues ?? []).toEqual([]);
    expect(asked.body.spread.rows).toHaveLength(7);
    expect(asked.body.sensitivity).toMatchObject({ ofCheck: 'tower', ratio: asked.body.checks[0].ratio });
    expect(asked.body.sensitivity.rows.map((row: { of: string }) => row.of)).toEqual(
      expect.arrayContaining(['speed', 'gust-effect', 'ground', 'hill', 'load-height', 'rating-exposure']),
    );
    const plain = await post('/v1/checks', plan).expect(200);
    expect(plain.body).not.toHaveProperty('sensitivity');
    expect(plain.body).not.toHaveProperty('spread');
    const text = await post('/v1/checks?as=text&sensitivity=full', plan).expect(200);
    expect(text.text).toContain(`\nWhat changes the result most:\n${asked.body.sensitivity.says}\n`);
    await post('/v1/checks?sensitivity=all', plan).expect(400);
  });

  it('shows the working when asked, in the units of the plan', async () => {
    const bluff = demoPlans().find(({ id }) => id === 'river-bluff');
    const { body } = await post('/v1/checks?working=full', bluff?.plan).expect(200);
    expect(body.working.length).toBeGreaterThan(100);
    expect(body.working.map((step: { unit: string }) => step.unit)).toContain('psf');
  });

  it.each([
    [
      'a chart',
      {
        basis: 'gust3-nominal',
        returnPeriods: [
          [10, 76],
          [50, 90],
          [100, 96],
        ],
      },
    ],
    ['years of record', { basis: 'fastest-mile', yearlyMax: [50, 42, 58, 44, 53, 61, 47, 55, 49, 52] }],
  ])('adds the chance where %s gives a climate, as the contract says', async (_, climate) => {
    const plan = demoPlan('river-bluff');
    const { body } = await post('/v1/checks?working=full', {
      ...plan,
      site: { ...(plan['site'] as object), climate },
    }).expect(200);
    expect(strict(answerSchema).safeParse(body).error?.issues ?? []).toEqual([]);
    expect(body.chance.map((each: { ofCheck: string }) => each.ofCheck)).toEqual([
      'tower',
      'tower-top',
      'mast',
      'foundation',
    ]);
    expect(body.entryWarnings).toEqual([]);
  });

  it('lists all faults at once, each with its pointer', async () => {
    const { body } = await post('/v1/checks', {
      units: 'us',
      method: 'asce7-16',
      site: { wind: 1200, exposure: 'E' },
      tower: { support: 'free', top: 48, shapes: 'lattice' },
      loads: [{ name: 'beam', above: 2, area: '5,5 acres' }],
      cables: [],
    }).expect(422);
    expect(body.type).toBe('/problems/plan-faults');
    expect(body.faults.map((fault: { pointer: string }) => fault.pointer).sort()).toEqual([
      '#/loads/0/area',
      '#/site/exposure',
      '#/site/wind',
      '#/tower/shapes',
    ]);
    const unknown = body.faults.find((fault: { pointer: string }) => fault.pointer === '#/tower/shapes');
    expect(unknown.says).toContain('shape');
  });

  it('answers a plan of 300 loads', async () => {
    const loads = Array.from({ length: 300 }, (_, index) => ({
      name: `load ${index}`,
      height: 1 + (index % 47),
      area: 0.05,
      offset: 0,
    }));
    const bluff = demoPlans().find(({ id }) => id === 'ten-numbers')?.plan;
    const { body } = await post('/v1/checks', { ...bluff, loads }).expect(200);
    expect(body.windLoads.rows.length).toBeGreaterThan(300);
    expect(body.alsoOpen).toBe(288);
  });

  it('answers a bare tower', async () => {
    const { body } = await post('/v1/checks', {
      units: 'si',
      method: 'tia222-h',
      site: { wind: 50, exposure: 'C' },
      tower: { support: 'free', top: 12 },
      cables: [],
    }).expect(200);
    expect(body.verdict).toBe('open');
    expect(body.checks[0].needs).toContain('/ratings');
  });
});

describe('POST /v1/areas and /v1/pressures', () => {
  it('gives the area of a tube, 2 in by 20 ft with 1.2', async () => {
    const { body } = await post('/v1/areas', {
      units: 'us',
      method: 'asce7-16',
      loads: [{ name: 'tube', shape: 'tube', diameter: 2, height: [0, 20], offset: 0 }],
    }).expect(200);
    expect(body.worst.value).toBeCloseTo(4, 9);
    expect(body.notes.map((note: { code: string }) => note.code)).toContain('slow-wind');
  });

  it('gives a square lattice with the wind on a face and on a corner, and counts the larger', async () => {
    // 10 ft of 1 ft, a solid share of 0.15: 1.5 ft²·(4·0.15² − 5.9·0.15 + 4) = 4.8075; on its diagonal × (1 + 0.75·0.15).
    const lattice = { shape: 'lattice', faces: 4, width: 12, members: 'flat', solidity: 0.15 };
    const { body } = await post('/v1/areas', {
      units: 'us',
      method: 'asce7-16',
      tower: { support: 'free', top: 10, sections: [{ length: 10, ...lattice }] },
      loads: [{ name: 'cage', ...lattice, height: [10, 20] }],
    }).expect(200);
    expect(body.items).toHaveLength(2);
    for (const item of body.items) {
      expect(item.byDirection.face).toBeCloseTo(4.8075, 9);
      expect(item.byDirection.corner).toBeCloseTo(5.34834375, 9);
      expect([item.front, item.worst]).toEqual([item.byDirection.corner, item.byDirection.corner]);
    }
    expect(body.worst.value).toBeCloseTo(2 * 5.34834375, 9);
  });

  it.each([
    // 3 m of 0.4 m, solid share 0.2: 0.24 m². EN 1993-3-1 Annex B, flats: 1.76·2.25·(1 − 1.5·0.2 + 0.2²), Kθ = 1 + 0.55·0.2.
    ['en1991-1-4', 0.24 * 1.76 * 2.25 * 0.74, 1.11],
    // TIA-222-H: a square's diagonal 1 + 0.75ε.
    ['tia222-h', 0.24 * (4 * 0.04 - 5.9 * 0.2 + 4), 1.15],
  ])('has the direction factor of %s', async (method, face, factor) => {
    const { body } = await post('/v1/areas', {
      units: 'si',
      method,
      loads: [
        {
          name: 'cage',
          shape: 'lattice',
          faces: 4,
          width: 400,
          members: 'flat',
          solidity: 0.2,
          height: [10, 13],
          offset: 0,
        },
      ],
    }).expect(200);
    expect(body.items[0].byDirection.face).toBeCloseTo(face, 6);
    expect(body.items[0].byDirection.corner / body.items[0].byDirection.face).toBeCloseTo(factor, 6);
  });

  it('leaves a triangle as it is on a face: its other directions ask for less', async () => {
    const { body } = await post('/v1/areas', {
      units: 'us',
      method: 'tia222-h',
      loads: [
        {
          name: 'cage',
          shape: 'lattice',
          faces: 3,
          width: 12,
          members: 'flat',
          solidity: 0.2,
          height: [10, 20],
          offset: 0,
        },
      ],
    }).expect(200);
    // TIA-222-H, flats at 60°: 0.80, from memory.
    expect(body.items[0].byDirection.corner / body.items[0].byDirection.face).toBeCloseTo(0.8, 9);
    expect(body.items[0].worst).toBe(body.items[0].byDirection.face);
  });

  it('gives 26.24 psf at 50 ft for 105 mph on open ground', async () => {
    // 0.00256·2.01·(50/900)^(2/9.5)·0.85·105²
    const { body } = await post('/v1/pressures', {
      units: 'us',
      method: 'asce7-16',
      site: { wind: 105, exposure: 'C' },
      structure: 'lattice',
      heights: [50],
    }).expect(200);
    expect(body.heights[0].pressure.value).toBeCloseTo(26.2401, 4);
    // 0.6·0.85·26.2401·10 ft² is 134 lbf.
    expect(body.heights[0].forcePerArea.value * 10).toBeCloseTo(133.82, 2);
  });

  it('refuses a height above the top of a tower that is not given', async () => {
    const { body } = await post('/v1/areas', {
      units: 'us',
      method: 'asce7-16',
      loads: [{ name: 'beam', above: 2, area: 5 }],
    }).expect(422);
    expect(body.faults[0].pointer).toBe('#/loads/0/above');
  });
});

describe('POST /v1/ratings', () => {
  it('tells that 12 ft² at 70 mph by the old rules is more than 8 ft² at 110 mph by the new', async () => {
    const example = requestExamples().find(({ operationId }) => operationId === 'ratings');
    const { body } = await post('/v1/ratings?working=full', example?.body).expect(200);
    expect(body.more.at).toBe('/ratings/0');
    expect(body.more.by[0]).toBeCloseTo(1.3166, 3);
    expect(body.ratings[0].force[0].value).toBeCloseTo(154.04, 1);
    expect(body.ratings[1].force[0].value).toBeCloseTo(117, 1);
    expect(body.working.length).toBeGreaterThan(5);
  });

  it('places faults of the wind asked for where it was written', async () => {
    const { body } = await post('/v1/ratings', {
      units: 'us',
      top: 48,
      ratings: [{ of: 'tower', area: 12, wind: { speed: 70 } }],
      to: { wind: { speed: 5000 } },
    }).expect(422);
    expect(body.faults.map((fault: { pointer: string }) => fault.pointer)).toContain('#/to/wind/speed');
  });

  it('refuses a wind asked for that leaves something open', async () => {
    const { body } = await post('/v1/ratings', {
      units: 'us',
      top: 48,
      ratings: [{ of: 'tower', area: 12, wind: { speed: 70, method: 'eia222-f' } }],
      to: { wind: { speed: 100, method: 'asce7-16' } },
    }).expect(422);
    expect(body.type).toBe('/problems/refused');
    expect(body.faults[0].pointer).toBe('#/to');
  });
});

describe('background', () => {
  it('hands out demo plans, formulas and sources', async () => {
    const plans = (await running.request().get('/v1/demo-plans').expect(200)).body;
    expect(plans.length).toBe(demoPlans().length);
    const plan = (await running.request().get(plans[0].href).expect(200)).body;
    await post('/v1/checks', plan).expect(200);
    const formulas = (await running.request().get('/v1/formulas').expect(200)).body;
    const sources = (await running.request().get('/v1/sources').expect(200)).body;
    const ids = new Set(sources.map((source: { id: string }) => source.id));
    for (const formula of formulas) expect(ids).toContain(formula.source);
    const memory = (await running.request().get('/v1/sources?known=memory').expect(200)).body;
    expect(memory.length).toBeGreaterThan(0);
    expect(memory.length).toBeLessThan(sources.length);
  });

  it('tells which method a tower goes by where a code is adopted', async () => {
    const codes = (await running.request().get('/v1/codes').expect(200)).body;
    const of2012 = codes.find((code: { edition: number }) => code.edition === 2012);
    expect(of2012).toMatchObject({
      wind: { standard: 'ASCE/SEI 7-10', method: 'asce7-10' },
      suggests: { method: 'tia222-g', basis: 'gust3-strength' },
      known: 'from memory, check against the document',
    });
    expect(of2012.says).toContain('Give that basis in the plan');
    const of2018 = codes.find((code: { edition: number }) => code.edition === 2018);
    expect(of2018.suggests).toEqual({ method: 'tia222-h', basis: 'gust3-strength' });
    expect(of2018.says).not.toContain('Give that basis');
    for (const { suggests } of codes) {
      const site = { exposure: 'C', wind: { speed: 90, basis: suggests.basis } };
      await post('/v1/checks', { ...demoPlan('river-bluff'), method: suggests.method, site }).expect(200);
    }
  });

  it('paints the form, empty or started from a demo plan with its answer', async () => {
    const empty = await running
      .request()
      .get('/')
      .expect(200)
      .expect('content-type', /text\/html/);
    expect(empty.text).toContain('<form id="form" method="post" action="v1/checks?as=html"');
    expect(empty.text).toContain('name="loads[0][above]"');
    const started = await running.request().get('/?plan=river-bluff').expect(200);
    expect(started.text).toContain('value="four-element beam"');
    expect(started.text).toContain('0.943');
  });

  it('brings drawings along with an answer where they are asked for', async () => {
    const { body } = await post('/v1/checks?as=json&drawings=ladder,rose', demoPlan('river-bluff')).expect(200);
    expect(Object.keys(body.drawings)).toEqual(['ladder', 'rose']);
    const alone = await post('/v1/checks?as=svg&drawing=rose', demoPlan('river-bluff')).expect(200);
    expect(body.drawings.rose).toBe(alone.text ?? alone.body.toString());
    const plain = await post('/v1/checks', demoPlan('river-bluff')).expect(200);
    expect(plain.body.drawings).toBeUndefined();
    for (const query of ['drawings=ladder,portrait', 'as=text&drawings=ladder']) {
      const refused = await post(`/v1/checks?${query}`, demoPlan('river-bluff')).expect(400);
      expect(refused.body.faults[0].parameter).toBe('drawings');
    }
  });
});
