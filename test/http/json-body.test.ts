import { describe, expect, it } from 'vitest';
import { repeatedFields } from '../../src/http/json-body.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();

describe('a body', () => {
  it('is refused where a field is given twice, and told where', async () => {
    const { status, body } = await running
      .request()
      .post('/v1/checks')
      .set('content-type', 'application/json')
      .send('{"units":"us","site":{"wind":80,"exposure":"C","wind":120},"loads":[{"name":"a"},{"area":1,"area":2}]}');
    expect(status).toBe(422);
    expect(body.faults.map((fault: { pointer: string }) => fault.pointer)).toEqual(['#/site/wind', '#/loads/1/area']);
    expect(body.detail).toBe('2 fields are given twice.');
  });

  it('is refused as no JSON where there is none', async () => {
    const { status, body } = await running.request().post('/v1/checks');
    expect(status).toBe(400);
    expect(body.type).toBe('/problems/not-json');
  });

  it.each([
    ['{"units": "us",\n "title": }', '"title": }'],
    ['{"units": "us"', 'line 1, column 15'],
    ['[1,', 'ends too early'],
    ['{"units": "us",\n  title: 1}', 'line 2, column 3'],
  ])('is refused with the place where %j stops being JSON', async (text, place) => {
    const asked = running.request().post('/v1/checks').set('content-type', 'application/json');
    const { body } = await asked.send(text).expect(400);
    expect(body.detail).toContain(place);
  });

  it.each([
    [{ 'content-type': 'text/plain' }, 'Send JSON'],
    [{ 'content-type': 'application/json; charset=utf-16' }, 'not in utf-16'],
    [{ 'content-type': 'application/json', 'content-encoding': 'gzip' }, 'not unpacked'],
  ])('is refused with the headers %j', async (headers, words) => {
    const { status, body } = await running.request().post('/v1/checks').set(headers).send('{"units":"us"}');
    expect(status).toBe(415);
    expect(body.detail).toContain(words);
  });

  it('is refused where it is too large, with what is allowed', async () => {
    const { body } = await running
      .request()
      .post('/v1/checks')
      .send({ title: 'x'.repeat(270_000) })
      .expect(413);
    expect(body.detail).toContain('262,144 bytes');
  });

  it.each([
    ['{"a":1,"b":{"a":2},"c":[{"a":3},{"a":4}]}', []],
    ['{"a":"{\\"a\\":1,\\"a\\":2}","b":"a\\":"}', []],
    ['{"a":1,"\\u0061":2}', ['#/a']],
    ['{"a":[],"b":[1,{"c/d":1,"c/d":2}]}', ['#/b/1/c~1d']],
    ['[]', []],
    ['"a"', []],
  ])('names the fields given twice in %s', (text, pointers) => {
    expect(() => JSON.parse(text)).not.toThrow();
    expect(repeatedFields(text).map(({ pointer }) => pointer)).toEqual(pointers);
  });
});
