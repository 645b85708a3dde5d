import { setTimeout } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const station = () => structuredClone(demoPlan('river-bluff')) as Record<string, unknown>;

/** Rows of tubes by wall and yield, each checked on its own. */
function ofTubes(loads: number, rows: number) {
  const tubes = Array.from({ length: rows }, (_, row) => ({
    along: 'element',
    yield: '35 ksi',
    taper: [
      [0.5, 20 + row * 0.1, 0.058],
      [0.375, 15, 0.058],
    ],
  }));
  const beams = Array.from({ length: loads }, (_, load) => ({
    name: `beam ${load}`,
    above: 1 + (load % 8) * 0.5,
    weight: 20,
    shape: 'tubes',
    tubes,
  }));
  return { ...station(), loads: beams };
}

/** Ratings that say nothing of their wind but its speed. */
function ofRatings(count: number) {
  const ratings = Array.from({ length: count }, (_, index) => ({
    of: 'tower',
    area: 10 + (index % 7),
    wind: { speed: 80 + (index % 5) },
  }));
  return { ...station(), ratings };
}

const ready = (service: ReturnType<typeof runningApp>) =>
  beforeAll(async () => {
    while ((await service.request().get('/readyz')).status !== 200) await setTimeout(20);
  });

describe('answers that are computed in threads', () => {
  const service = runningApp({ workers: 1 });
  const without = runningApp();
  ready(service);

  it('are the same to the last byte in every form', async () => {
    const plan = ofTubes(1, 12);
    for (const query of ['as=json&drawings=elevation', 'as=text', 'as=html', 'as=csv']) {
      const [there, here] = await Promise.all(
        [service, without].map((each) => each.request().post(`/v1/checks?${query}`).send(plan)),
      );
      expect(there?.status).toBe(200);
      expect(there?.text).toBe(here?.text);
      expect(there?.headers['content-type']).toBe(here?.headers['content-type']);
      expect(there?.headers['gustworthy-plan']).toBe(here?.headers['gustworthy-plan']);
    }
  });

  it('leave others to be answered meanwhile', async () => {
    let over = false;
    const dear = service
      .request()
      .post('/v1/checks?spread=full')
      .send(ofTubes(2, 40))
      .then((answer) => {
        over = true;
        return answer;
      });
    let asked = 0;
    while (!over) {
      expect((await service.request().get('/healthz')).status).toBe(200);
      if (!over) asked += 1;
    }
    expect((await dear).status).toBe(200);
    expect(asked).toBeGreaterThan(20);
  });

  it('say what cannot be computed as they would without threads', async () => {
    const plan = { ...ofTubes(1, 40), site: { ...(station()['site'] as object), exposure: 'B' } };
    const body = { plan, proposals: [{ name: 'none', remove: ['beam 9'] }] };
    const [there, here] = await Promise.all(
      [service, without].map((each) => each.request().post('/v1/additions').send(body)),
    );
    expect(there?.status).toBe(422);
    expect(there?.body).toEqual(here?.body);
  });
});

describe('answers that would take too long', () => {
  const service = runningApp({ workers: 1, workLimit: 300 });
  const late = runningApp({ workers: 1, working: { deadline: 60 } });
  ready(service);
  ready(late);

  it('are refused before they are computed, with what takes most', async () => {
    for (const [plan, pointer, words] of [
      [ofTubes(10, 60), '#/loads', '600 rows of tubes'],
      [ofRatings(40), '#/ratings', '3360 ways'],
    ] as const) {
      const { status, body } = await service.request().post('/v1/checks').send(plan);
      expect(status).toBe(422);
      expect(body.type).toBe('/problems/too-much-work');
      expect(body.detail).toMatch(/about [\d,]+ ms of computing\. At most 300 ms/);
      expect(body.faults).toEqual([expect.objectContaining({ pointer, says: expect.stringContaining(words) })]);
    }
  });

  it('are refused for many proposals that are each cheap enough', async () => {
    const body = {
      plan: ofTubes(2, 60),
      proposals: Array.from({ length: 40 }, (_, index) => ({ name: `number ${index}`, remove: ['beam 1'] })),
    };
    const answer = await service.request().post('/v1/additions').send(body);
    expect(answer.status).toBe(422);
    expect(answer.body.faults).toEqual([expect.objectContaining({ pointer: '#/proposals', given: 41 })]);
  });

  it('are given up at the deadline, and the next is answered', async () => {
    const { status, body } = await late.request().post('/v1/checks?spread=full').send(ofTubes(5, 60));
    expect(status).toBe(422);
    expect(body.detail).toMatch(/given up/);
    const next = await late.request().post('/v1/checks').send(station());
    expect(next.status).toBe(200);
  });

  it('end where their caller leaves', async () => {
    const left = new AbortController();
    const body = JSON.stringify(ofTubes(3, 60));
    const headers = { 'content-type': 'application/json' };
    const asked = fetch(`${service.origin}/v1/checks?spread=full`, {
      method: 'POST',
      body,
      headers,
      signal: left.signal,
    });
    await setTimeout(100);
    left.abort();
    await expect(asked).rejects.toThrow();
    const next = await service.request().post('/v1/checks').send(ofTubes(1, 30));
    expect(next.status).toBe(200);
  });
});
