import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CELL_IDS, CELLS } from '../../src/plan/index.ts';
import { demoPlans } from '../margins/demo-plan.ts';
import { Contract, type Operation } from './contract-reader.ts';
import { type RunningApp, runningApp } from './running-app.ts';

const folder = mkdtempSync(join(tmpdir(), 'gustworthy-contract-'));
const keysFile = join(folder, 'keys');
writeFileSync(keysFile, 'committee kittiwake-7f3c2a9d10e4b856\n');
afterAll(() => rmSync(folder, { recursive: true }));

interface Call {
  readonly method?: string;
  readonly target: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** What the contract promises, and which of it was met. */
const met = new Set<string>();
let contract: Contract;

async function ask(running: RunningApp, { method = 'GET', target, headers = {}, body }: Call): Promise<number> {
  const answer = await fetch(`${running.origin}${target}`, {
    method,
    headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
    ...(body === undefined ? {} : { body }),
  });
  const type = answer.headers.get('content-type') ?? '';
  const text = await answer.text();
  const faults = contract.faultsOf({ method, target, status: answer.status, type, body: text });
  expect(faults, `${method} ${target} ${answer.status} ${text.slice(0, 300)}`).toEqual([]);
  const operation = contract.operationOf(method, target);
  if (operation !== undefined) met.add(`${operation.operationId} ${answer.status}`);
  return answer.status;
}

const posted = (target: string, document: unknown): Call => ({
  method: 'POST',
  target,
  body: JSON.stringify(document),
});

const PLANS = demoPlans().map(({ plan }) => plan);
const EVERY_PART = 'working=full&spread=full&sensitivity=full&remedies=full';
const ADDRESSES: Readonly<Record<string, string>> = {
  '/v1/demo-plans/{id}': '/v1/demo-plans/ten-numbers',
  '/problems/{code}': '/problems/not-json',
};

/** Calls that are answered in full. */
function wellFormed({ operationId, method, path, examples }: Operation): Call[] {
  const cell = CELL_IDS.find((id) => path === `/v1/cells/${id}`);
  if (cell !== undefined) {
    const target = `${path}?${CELLS[cell].example}`;
    return ['', '&as=csv', '&units=si&decimal=comma', '&surprise=1'].map((more) => ({ target: `${target}${more}` }));
  }
  const fromExamples = examples.map((example) => posted(path, example));
  if (operationId === 'check') {
    const forms = ['as=text', 'as=csv', 'as=svg&drawing=elevation'];
    const whole = PLANS.flatMap((plan) => [posted(`${path}?${EVERY_PART}`, plan), posted(path, plan)]);
    return [...fromExamples, ...whole, ...forms.map((form) => posted(`${path}?${form}`, PLANS[0]))];
  }
  if (['additions', 'stormCard', 'requirements'].includes(operationId))
    return [...fromExamples, posted(`${path}?as=text`, examples[0])];
  if (method === 'POST') return fromExamples;
  return [{ target: ADDRESSES[path] ?? path }];
}

/** Calls that are refused, by the status they are to have. */
function refused({ path, method, hasBody }: Operation): Readonly<Record<string, Call>> {
  const target = ADDRESSES[path] ?? path;
  if (hasBody) {
    return {
      400: { method, target, body: '{' },
      406: { ...posted(target, PLANS[0]), headers: { accept: 'image/png' } },
      413: posted(target, { note: 'x'.repeat(270_000) }),
      415: { method, target, body: '<plan/>', headers: { 'content-type': 'text/xml' } },
      422: posted(target, {}),
    };
  }
  const cell = path.startsWith('/v1/cells/');
  return {
    400: { target: `${target}?surprise=1${cell ? '&strict=1' : ''}` },
    404: { target: path.replace(/\{\w+\}/, 'nowhere') },
    406: { target: `${target}?strict=1`, headers: { accept: 'image/png' } },
  };
}

describe('every route of the contract', () => {
  const running = runningApp();
  const withKeys = runningApp({ keysFile });
  const limited = runningApp({ rateLimit: 1, ...({ cellRateLimit: 1 } as object) });
  const strained = runningApp({ pressureLimit: -1 });

  beforeAll(async () => {
    const answer = await fetch(`${running.origin}/openapi.json`);
    contract = new Contract(await answer.json());
  });

  it('answers what it says there', { timeout: 120_000 }, async () => {
    for (const operation of contract.operations) {
      for (const call of wellFormed(operation)) expect(await ask(running, call), call.target).toBe(200);
    }
  });

  it('refuses by the problems it says there, and by no other', { timeout: 120_000 }, async () => {
    for (const operation of contract.operations) {
      for (const [status, call] of Object.entries(refused(operation))) {
        if (status in operation.responses)
          expect(`${await ask(running, call)}`, `${call.target} ${status}`).toBe(status);
      }
    }
  });

  it('asks for a key, sends away who asks too much, and who comes in a rush', { timeout: 120_000 }, async () => {
    await setTimeout(800);
    for (const operation of contract.operations) {
      const [call] = wellFormed(operation) as [Call];
      const strict = { ...call, target: `${call.target}${call.target.includes('/cells/') ? '&strict=1' : ''}` };
      await ask(withKeys, strict);
      await ask(strained, call);
      await ask(limited, call);
      await ask(limited, call);
    }
    running.app.draining.begin();
    await ask(running, { target: '/readyz' });
  });

  it('was met in everything it promises', () => {
    const promised = contract.operations.flatMap(({ operationId, responses }) =>
      Object.keys(responses).map((status) => `${operationId} ${status}`),
    );
    // A failure of our own cannot be brought about from outside; what it looks like is tested with the problems.
    const missed = promised.filter((each) => !met.has(each) && !each.endsWith(' 500'));
    expect(missed).toEqual([]);
    expect(met.size).toBeGreaterThan(100);
  });
});

describe('the reader of the contract', () => {
  const reader = new Contract({
    paths: {
      '/a/{id}': {
        get: {
          operationId: 'a',
          responses: {
            200: { content: { 'application/json': { schema: { $ref: '#/components/schemas/A' } } } },
          },
        },
      },
    },
    components: {
      schemas: {
        A: {
          type: 'object',
          required: ['ratio'],
          properties: { ratio: { type: 'number' } },
          additionalProperties: false,
        },
        Problem: { type: 'object', required: ['type'] },
      },
    },
  });
  const answer = (status: number, type: string, body: unknown, target = '/a/1?x=2') =>
    reader.faultsOf({ method: 'GET', target, status, type, body: JSON.stringify(body) });

  it('sees what is not as written', () => {
    expect(answer(200, 'application/json; charset=utf-8', { ratio: 0.5 })).toEqual([]);
    expect(answer(200, 'application/json', { ratio: '0.5' })).toEqual(['/ratio must be number']);
    expect(answer(200, 'application/json', { ratio: 1, more: 1 })).toHaveLength(1);
    expect(answer(200, 'text/html', {})).toEqual(['text/html is not in the contract for 200']);
    expect(answer(500, 'application/json', {})).toEqual(['status 500 is not in the contract']);
    expect(answer(404, 'application/problem+json', {}, '/b')).toHaveLength(1);
    expect(answer(404, 'text/html', {}, '/b')).toHaveLength(1);
  });
});
