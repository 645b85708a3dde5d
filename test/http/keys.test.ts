import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { nameOfKey, readKeys } from '../../src/http/keys/keys-file.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const KEY = 'kittiwake-7f3c2a9d10e4b856';
const OTHER = 'dunlin-91b4c07de2a5f368aa';
const LATER = 'plover-55d0e1f2a3b4c5d6e7';

describe('a file of keys', () => {
  it('holds a name and a key a line', () => {
    const { keys, faults } = readKeys(`# the committee\r\n\r\ncommittee ${KEY}\r\n  yard\t${OTHER}  \n`);
    expect(faults).toEqual([]);
    expect(keys.map(({ name }) => name)).toEqual(['committee', 'yard']);
    expect(nameOfKey(keys, KEY)).toBe('committee');
    expect(nameOfKey(keys, OTHER)).toBe('yard');
    for (const wrong of ['', KEY.slice(1), `${KEY} `, KEY.toUpperCase(), 'committee']) {
      expect(nameOfKey(keys, wrong)).toBeUndefined();
    }
  });

  it('keeps no key, only what tells it again', () => {
    const { keys } = readKeys(`committee ${KEY}`);
    expect(JSON.stringify(keys)).not.toContain(KEY);
  });

  it.each([
    ['', 'holds no key'],
    ['# nothing\n', 'holds no key'],
    [`committee ${KEY} more`, 'line 1: give a name, a space and the key'],
    ['committee', 'line 1: give a name, a space and the key'],
    [`com/mittee ${KEY}`, 'line 1: a name has'],
    ['committee short', 'line 1: a key has 20 to 200'],
    [`a ${KEY}\nb ${KEY}`, 'line 2: the key of b is that of another'],
    [`a ${KEY}\na ${OTHER}`, 'line 2: the name a stands there twice'],
  ])('that holds %j is refused without showing a key', (text, says) => {
    const { faults } = readKeys(text);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toContain(says);
    expect(faults[0]).not.toContain(KEY);
  });
});

const folder = mkdtempSync(join(tmpdir(), 'gustworthy-keys-'));
afterAll(() => rmSync(folder, { recursive: true }));
const keysFile = join(folder, 'keys');

function write(text: string): void {
  writeFileSync(`${keysFile}.new`, text);
  renameSync(`${keysFile}.new`, keysFile);
}

const logged: string[] = [];
const log = new PassThrough();
log.on('data', (chunk) => logged.push(String(chunk)));
const CELL = '/v1/cells/bundle-width?count=5&diameter=0.405';

describe('a service with keys', () => {
  write(`committee ${KEY}\n`);
  const running = runningApp({ keysFile, openEndpoints: ['background'], logLevel: 'debug', logTo: log, lookEvery: 20 });
  const check = () => running.request().post('/v1/checks').send(demoPlan('ten-numbers'));

  it('sends away who has none, and says how to send one', async () => {
    const { status, body, headers } = await check();
    expect(status).toBe(401);
    expect(headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(headers['www-authenticate']).toMatch(/^Basic realm="Gustworthy".*Bearer/);
    expect(body.type).toBe('/problems/key-required');
    expect((await running.request().get('/')).status).toBe(401);
    expect((await running.request().get('/metrics')).status).toBe(401);
    expect((await running.request().get('/openapi.json')).status).toBe(401);
  });

  it('takes a key as a bearer token, as a password, and in an address', async () => {
    const basic = (name: string, key: string) => `Basic ${Buffer.from(`${name}:${key}`).toString('base64')}`;
    for (const header of [`Bearer ${KEY}`, `bearer ${KEY}`, basic('anyone', KEY), basic('', KEY)]) {
      expect((await check().set('authorization', header)).status, header).toBe(200);
    }
    expect((await running.request().get(`${CELL}&key=${KEY}`).expect(200)).text).toBe('1.09403');
    expect((await running.request().get(`/openapi.json?key=${KEY}`)).status).toBe(200);
  });

  it('takes no other, in no other place', async () => {
    const basic = (text: string) => `Basic ${Buffer.from(text).toString('base64')}`;
    for (const header of [`Bearer ${KEY}x`, `Bearer ${OTHER}`, basic(KEY), basic(`${KEY}:`), `Digest ${KEY}`, KEY]) {
      expect((await check().set('authorization', header)).status, header).toBe(401);
    }
    const posted = running.request().post(`/v1/checks?key=${KEY}`).send(demoPlan('ten-numbers'));
    expect((await posted).status).toBe(401);
    expect((await running.request().get(`/openapi.json?key=${KEY}&key=${KEY}`)).status).toBe(401);
  });

  it('says in the cell what is wrong, since sheets hide the body of a failing status', async () => {
    const missing = await running.request().get(CELL).expect(200);
    expect(missing.text).toMatch(/^\? This service requires a key/);
    expect(missing.headers['cache-control']).toBe('no-store');
    expect((await running.request().get(`${CELL}&key=${OTHER}`).expect(200)).text).toMatch(/^\? Unknown key\./);
    expect((await running.request().get(`${CELL}&as=csv`).expect(200)).headers['content-type']).toMatch(/^text\/csv/);
    expect((await running.request().get(`${CELL}&strict=1`)).status).toBe(401);
  });

  it('lets no cache between hand on what a key opened', async () => {
    const { headers } = await running.request().get(`${CELL}&key=${KEY}`).expect(200);
    expect(headers['cache-control']).toBe('private, max-age=3600');
  });

  it('leaves health, readiness, the pages of problems and what is set open to all', async () => {
    for (const path of ['/healthz', '/readyz', '/problems/key-required', '/v1/sources', '/v1/demo-plans']) {
      expect((await running.request().get(path)).status, path).toBe(200);
    }
    expect((await running.request().get('/nowhere')).status).toBe(404);
    expect((await running.request().options('/v1/cells/pressure')).status).toBe(204);
  });

  it('writes names and no key into the log', () => {
    const text = logged.join('');
    expect(text).toContain('"key":"committee"');
    expect(text).not.toContain(KEY);
    expect(text).not.toContain(OTHER);
  });

  it('reads the file anew when it changes, and keeps the last good keys when it goes bad', async () => {
    const statusWith = async (key: string) => (await check().set('authorization', `Bearer ${key}`)).status;
    const until = async (key: string, wanted: number) => {
      for (let tries = 0; tries < 200; tries += 1) {
        if ((await statusWith(key)) === wanted) return;
        await setTimeout(20);
      }
      expect(await statusWith(key)).toBe(wanted);
    };
    write(`yard ${OTHER}\n`);
    await until(OTHER, 200);
    expect(await statusWith(KEY)).toBe(401);

    const lines = logged.length;
    write('yard short\n');
    const told = () => logged.slice(lines).some((line) => line.includes('the keys read before stay'));
    for (let tries = 0; tries < 200 && !told(); tries += 1) await setTimeout(20);
    expect(told()).toBe(true);
    expect(await statusWith(OTHER)).toBe(200);

    rmSync(keysFile);
    await setTimeout(100);
    expect(await statusWith(OTHER)).toBe(200);
    write(`later ${LATER}\n`);
    await until(LATER, 200);
  });
});

describe('a service without keys', () => {
  const running = runningApp();

  it('takes what it is given for no key', async () => {
    expect((await running.request().get(`${CELL}&key=${KEY}`)).text).toMatch(/^\? There is no parameter "key"/);
    expect((await running.request().get(CELL).set('authorization', `Bearer ${KEY}`)).text).toBe('1.09403');
  });
});
