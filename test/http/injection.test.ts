import { Socket } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DRAWING_NAMES } from '../../src/drawing/index.ts';
import { every, wellFormed } from '../drawing/well-formed.ts';
import { projectFiles } from '../house/source-files.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const MARKUP = '<script>alert(1)</script><svg onload="alert(2)">&\'"';

type Plan = Record<string, unknown>;

/** A plan in which every name and text of its owner is another text. */
function worded(text: string): Plan {
  const plan = demoPlan('river-bluff');
  const loads = (plan['loads'] as Plan[]).map((load, index) => ({
    ...load,
    name: `${text}${index}`,
    note: text,
    source: text,
  }));
  return {
    ...plan,
    title: text,
    note: text,
    source: text,
    loads,
    cables: (plan['cables'] as Plan[]).map((run) => ({ ...run, name: text })),
    ratings: (plan['ratings'] as Plan[]).map((rating) => ({ ...rating, source: text })),
    titleBlock: { applicant: text, address: text, drawings: [text] },
  };
}

const check = (query: string, plan: unknown) =>
  running
    .request()
    .post(`/v1/checks${query}`)
    .send(plan as object);

describe('markup in the words of an owner', () => {
  it.each([...DRAWING_NAMES])('stays words in the drawing %s', async (drawing) => {
    const { body, headers } = await check(`?as=svg&drawing=${drawing}`, worded(MARKUP)).buffer(true).expect(200);
    const svg = Buffer.isBuffer(body) ? body.toString('utf8') : '';
    expect(headers['content-type']).toMatch(/^image\/svg\+xml/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(svg).toContain('<svg');
    expect(svg).not.toMatch(/<script|onload="alert|<svg[^>]*onload/);
    const drawn = wellFormed(svg);
    expect(every(drawn, 'script')).toEqual([]);
    expect(
      every(drawn).filter(({ attributes }) => Object.keys(attributes).some((name) => name.startsWith('on'))),
    ).toEqual([]);
  });

  it('comes back from a fault as JSON that no browser takes for a page', async () => {
    const { headers, text } = await check('', { ...worded(MARKUP), [MARKUP]: 1, units: MARKUP }).expect(422);
    expect(headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(text).toContain('script');
  });

  it('is not in the page about an address that is nowhere', async () => {
    const { text } = await running
      .request()
      .get(`/${encodeURIComponent(MARKUP)}?${encodeURIComponent(MARKUP)}`)
      .expect(404);
    expect(text).not.toContain('script');
  });

  it('in the query of a cell stays text', async () => {
    const { text, headers } = await running
      .request()
      .get(`/v1/cells/pressure?method=${encodeURIComponent(MARKUP)}`)
      .expect(200);
    expect(headers['content-type']).toMatch(/^text\/plain/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(text.startsWith('? ')).toBe(true);
  });
});

describe('a formula of a spreadsheet in the words of an owner', () => {
  it.each(['=HYPERLINK("http://a.example")', '+1+1', '-2+3', '@SUM(A1)', '\t=1+1', '\r=1+1', '=1;2', '|cmd'])(
    'begins no cell of the ledger: %j',
    async (formula) => {
      for (const sign of ['point', 'comma']) {
        const { text } = await check(`?as=csv&decimal=${sign}`, worded(formula)).expect(200);
        expect(text.length).toBeGreaterThan(200);
        for (const cell of text.split(sign === 'comma' ? /;|\r\n/ : /,|\r\n/)) {
          expect(cell.replace(/^\uFEFF?"?/, ''), cell).not.toMatch(/^[=+@\t\r]|^-(?![\d.])/);
        }
      }
    },
  );

  it('begins no answer of a cell', async () => {
    for (const address of ['pressure?method==1%2B1', 'station?give==1%2B1', 'area?shape=@SUM(A1)', 'speed?=1=2']) {
      for (const as of ['text', 'csv']) {
        const { text } = await running.request().get(`/v1/cells/${address}&as=${as}`).expect(200);
        for (const line of text.split(/\r?\n/)) expect(line.replace(/^\uFEFF?"?/, '')).not.toMatch(/^[=+@-]/);
      }
    }
  });
});

describe('an expression where a quantity is due', () => {
  it.each([
    '5 ft; import("fs")',
    '5 createUnit("x")',
    '(1+1) ft',
    'sqrt(4) ft',
    '5 ft to in',
    '5 ft + 1 in * 2',
    '2^10 ft',
    'cos(0) m',
    '5 constructor',
    '5 __proto__',
    '0x10 ft',
    '5 ft/s/s',
    'f(x)=x',
    '[48] ft',
    '"48" ft',
    '48 ft\n5 in; evaluate("1")',
  ])('is read by no evaluator: %j', async (top) => {
    const plan = demoPlan('ten-numbers');
    const { body } = await check('', { ...plan, tower: { ...(plan['tower'] as object), top } }).expect(422);
    expect(body.faults.map((fault: { pointer: string }) => fault.pointer)).toContain('#/tower/top');
  });
});

describe('a name of the prototype chain', () => {
  const spoilt = () => Object.keys(Object.prototype).concat(Object.keys(Array.prototype));

  it.each([
    ['/v1/checks', '{"__proto__":{"spoilt":1},"units":"us"}'],
    ['/v1/checks', '{"units":"us","site":{"__proto__":{"spoilt":1}}}'],
    ['/v1/checks', '{"units":"us","constructor":{"prototype":{"spoilt":1}}}'],
    [
      '/v1/additions',
      `{"plan":${JSON.stringify(demoPlan('ten-numbers'))},"proposals":[{"name":"a","set":{"constructor":{"prototype":{"spoilt":1}}}}]}`,
    ],
    [
      '/v1/additions',
      `{"plan":${JSON.stringify(demoPlan('ten-numbers'))},"proposals":[{"name":"a","set":{"tower":{"constructor":{"spoilt":1}}}}]}`,
    ],
    [
      '/v1/additions',
      `{"plan":${JSON.stringify(demoPlan('ten-numbers'))},"proposals":[{"name":"__proto__","set":{"toString":{"spoilt":1}}}]}`,
    ],
    ['/v1/areas', '{"units":"us","loads":[{"name":"__proto__","hasOwnProperty":1}]}'],
  ])('changes nothing but its own answer: %s %s', async (path, body) => {
    const answer = await fetch(`${running.origin}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
    });
    expect([400, 422]).toContain(answer.status);
    expect(spoilt()).toEqual([]);
    expect(({} as Record<string, unknown>)['spoilt']).toBeUndefined();
  });

  it.each([
    '/v1/cells/pressure?__proto__=1&constructor=2&toString=3',
    '/v1/cells/area?shape=constructor',
    '/v1/sources?__proto__=x',
    '/v1/demo-plans/__proto__',
    '/problems/constructor',
  ])('finds nothing behind an address: %s', async (address) => {
    const answer = await fetch(`${running.origin}${address}`);
    const text = await answer.text();
    expect(answer.status === 200 ? text.startsWith('? ') : [400, 404].includes(answer.status), text).toBe(true);
  });

  it('is an ordinary name for a load', async () => {
    const plan = {
      ...demoPlan('ten-numbers'),
      loads: [
        { name: 'constructor', above: 2, area: 5.5 },
        { name: '__proto__', above: 3, area: 1 },
      ],
    };
    const { body } = await check('', plan).expect(200);
    expect(JSON.stringify(body.windLoads)).toContain('constructor');
  });
});

describe('addresses in a plan', () => {
  const reached: string[] = [];
  const connect = Socket.prototype.connect;
  beforeAll(() => {
    Socket.prototype.connect = function (this: Socket, ...words: unknown[]) {
      const [first] = words.flat() as { host?: string }[];
      if (typeof first === 'object') reached.push(String(first?.host));
      return Reflect.apply(connect, this, words);
    } as typeof connect;
  });
  afterAll(() => {
    Socket.prototype.connect = connect;
  });

  it('are words: nothing is fetched for them', async () => {
    for (const address of [
      'http://169.254.169.254/latest',
      'file:///etc/passwd',
      '//a.example/x.svg',
      'url(http://a.example)',
    ]) {
      await check('?working=full&remedies=full', worded(address)).expect(200);
      const { body } = await check('?as=svg&drawing=elevation', worded(address)).buffer(true).expect(200);
      const attributes = every(wellFormed(String(body))).map((drawn) =>
        JSON.stringify({ ...drawn.attributes, xmlns: '' }),
      );
      expect(attributes.length).toBeGreaterThan(20);
      expect(attributes.filter((each) => /a\.example|169\.254|file:/.test(each))).toEqual([]);
    }
    // The test's own calls were seen, and no others.
    expect(reached.length).toBeGreaterThan(0);
    expect(new Set(reached)).toEqual(new Set(['127.0.0.1']));
  });

  it('could not be fetched: no file of the service knows how', () => {
    const caller = /\bfetch\s*\(|from 'node:(https?|net|tls|dgram|dns)'|from 'undici'/;
    const allowed = /import \{ STATUS_CODES \} from 'node:http';|import type \{[^}]*\} from 'node:(http|net)';/g;
    const found = projectFiles('src', /\.ts$/)
      .filter(({ path }) => !path.startsWith('src/page/'))
      .filter(({ text }) => caller.test(text.replaceAll(allowed, '')))
      .map(({ path }) => path);
    expect(found).toEqual([]);
  });
});
