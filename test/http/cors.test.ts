import { describe, expect, it } from 'vitest';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const CLUB = 'https://club.example';
const STRANGER = 'https://stranger.example';

const corsHeaders = (headers: Record<string, string>) =>
  Object.keys(headers).filter((name) => name.startsWith('access-control-'));

describe('without the setting', () => {
  const running = runningApp();

  it('no other site may read an answer by script', async () => {
    const check = await running
      .request()
      .post('/v1/checks')
      .set('origin', CLUB)
      .send(demoPlan('ten-numbers'))
      .expect(200);
    expect(corsHeaders(check.headers)).toEqual([]);
    const preflight = await running
      .request()
      .options('/v1/checks')
      .set('origin', CLUB)
      .set('access-control-request-method', 'POST');
    expect(preflight.status).toBe(405);
    expect(corsHeaders(preflight.headers)).toEqual([]);
  });
});

describe('with origins set', () => {
  const running = runningApp({ corsOrigins: [CLUB, 'http://localhost:3000'] });
  const asked = (origin: string) =>
    running
      .request()
      .options('/v1/checks')
      .set('origin', origin)
      .set('access-control-request-method', 'POST')
      .set('access-control-request-headers', 'content-type');

  it('lets those sites send JSON and read the answer, problems too, never with credentials', async () => {
    const preflight = await asked(CLUB);
    expect(preflight.status).toBe(204);
    expect(preflight.headers).toMatchObject({
      'access-control-allow-origin': CLUB,
      'access-control-allow-methods': 'GET, HEAD, POST',
      'access-control-allow-headers': 'accept, content-type',
    });
    const fine = await running.request().post('/v1/checks').set('origin', CLUB).send(demoPlan('ten-numbers'));
    const faulty = await running.request().post('/v1/checks').set('origin', CLUB).send({});
    expect([fine.status, faulty.status]).toEqual([200, 422]);
    for (const { headers } of [preflight, fine, faulty]) {
      expect(headers['access-control-allow-origin']).toBe(CLUB);
      expect(headers['access-control-allow-credentials']).toBeUndefined();
      expect(headers['vary']?.toLowerCase()).toContain('origin');
    }
    for (const { headers } of [fine, faulty]) expect(headers['vary']?.toLowerCase()).toContain('accept');
  });

  it.each([STRANGER, 'null', 'https://club.example.stranger.example', 'http://club.example', 'http://localhost:3001'])(
    'lets no other: %s',
    async (origin) => {
      const preflight = await asked(origin);
      expect(preflight.headers['access-control-allow-origin']).toBeUndefined();
      const { headers } = await running.request().get('/healthz').set('origin', origin).expect(200);
      expect(headers['access-control-allow-origin']).toBeUndefined();
    },
  );

  it('answers the bare OPTIONS of a sheet', async () => {
    const { status, text } = await running.request().options('/v1/cells/pressure?speed=105');
    expect(status).toBe(204);
    expect(text).toBe('');
    expect((await running.request().options('/healthz')).status).toBe(204);
  });
});

describe('with a star', () => {
  const running = runningApp({ corsOrigins: ['*'] });

  it('lets all read, without credentials', async () => {
    const { headers } = await running
      .request()
      .get('/v1/cells/bundle-width?count=5&diameter=0.405')
      .set('origin', STRANGER);
    expect(headers['access-control-allow-origin']).toBe('*');
    expect(headers['access-control-allow-credentials']).toBeUndefined();
  });
});
