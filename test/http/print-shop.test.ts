import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, describe, expect, it } from 'vitest';
import { type Printing, PrintShop } from '../../src/http/paper/print-shop.ts';
import type { PaperOrder } from '../../src/worksheet/index.ts';

const program = new URL('pretended-press.ts', import.meta.url);
const shops: PrintShop[] = [];
const logged: string[] = [];

function shopWith(changes: Partial<Printing> = {}): PrintShop {
  const shop = new PrintShop({ error: (about) => logged.push(JSON.stringify(about)) }, { program, ...changes });
  shops.push(shop);
  return shop;
}

const order = (title: string) => ({ title }) as PaperOrder;
const someone = () => new AbortController().signal;
const print = async (shop: PrintShop, title: string) => (await shop.print(order(title), someone()))?.toString();

/** Whether a process still runs. */
function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

async function until(condition: () => boolean): Promise<void> {
  while (!condition()) await wait(10);
}

afterEach(() => {
  for (const shop of shops.splice(0)) shop.close();
  logged.length = 0;
});

describe('the print shop', () => {
  it('starts no press before there is something to print, and prints all with one', async () => {
    const shop = shopWith();
    expect(shop.pid).toBeUndefined();
    expect(await print(shop, 'one')).toBe('%PDF one');
    const first = shop.pid;
    expect(first).toBeTypeOf('number');
    expect(await Promise.all(['two', 'three', 'four'].map((title) => print(shop, title)))).toEqual([
      '%PDF two',
      '%PDF three',
      '%PDF four',
    ]);
    expect(shop.pid).toBe(first);
  });

  it('refuses what would wait too long, and says when to come again', async () => {
    const shop = shopWith({ waiting: 2 });
    const waiting = ['never', 'two', 'three'].map((title) => print(shop, title).catch((problem) => problem));
    await expect(print(shop, 'four')).rejects.toMatchObject({
      code: 'paper-busy',
      statusCode: 503,
      headers: { 'retry-after': '5' },
    });
    shop.close();
    for (const outcome of await Promise.all(waiting)) expect(outcome).toMatchObject({ code: 'closing' });
  });

  it('recovers when its press is killed', async () => {
    const shop = shopWith();
    await print(shop, 'one');
    const first = shop.pid as number;
    process.kill(first, 'SIGKILL');
    await until(() => shop.pid === undefined);
    expect(await print(shop, 'two')).toBe('%PDF two');
    expect(shop.pid).not.toBe(first);
  });

  it('gives up the sheet at which its press dies, and prints the next', async () => {
    const shop = shopWith();
    const outcomes = await Promise.allSettled(['dies', 'two'].map((title) => print(shop, title)));
    expect(outcomes).toMatchObject([
      { status: 'rejected', reason: { code: 'paper-failed', statusCode: 500 } },
      { status: 'fulfilled', value: '%PDF two' },
    ]);
    expect(logged.join()).toContain('code 3');
  });

  it('logs the words of a failure and does not send them', async () => {
    const problem = await print(shopWith(), 'fails').catch((error) => error);
    expect(problem.code).toBe('paper-failed');
    expect(problem.message).not.toContain('ink');
    expect(logged.join()).toContain('the ink ran out');
  });

  it('gives up a sheet that takes too long, and stops its press', async () => {
    const shop = shopWith({ sheetTime: 300 });
    const slow = print(shop, 'never');
    const pid = shop.pid as number;
    await expect(slow).rejects.toMatchObject({ code: 'paper-failed' });
    await until(() => !runs(pid));
    expect(logged.join()).toContain('no sheet within 300 ms');
  });

  it('stops in mid-sheet where nobody waits for it, and goes on with the next', async () => {
    const shop = shopWith();
    const someoneGone = new AbortController();
    const abandoned = shop.print(order('never'), someoneGone.signal);
    const next = print(shop, 'two');
    const pid = shop.pid as number;
    someoneGone.abort();
    expect(await abandoned).toBeUndefined();
    await until(() => !runs(pid));
    expect(await next).toBe('%PDF two');
    expect(logged).toEqual([]);
  });

  it('forgets an order in the queue when its caller goes', async () => {
    const shop = shopWith();
    const slow = print(shop, 'never').catch((problem) => problem.code);
    const someoneGone = new AbortController();
    const waiting = shop.print(order('two'), someoneGone.signal);
    expect(shop.busy).toBe(2);
    someoneGone.abort();
    expect(await waiting).toBeUndefined();
    expect(shop.busy).toBe(1);
    expect(await shop.print(order('three'), AbortSignal.abort())).toBeUndefined();
    shop.close();
    expect(await slow).toBe('closing');
  });

  it('replaces its press after so many sheets, and closes it when it is idle', async () => {
    const shop = shopWith({ sheetsOfAPress: 2, idleTime: 200 });
    await print(shop, 'one');
    const first = shop.pid as number;
    await print(shop, 'two');
    await print(shop, 'three');
    const second = shop.pid as number;
    expect(second).not.toBe(first);
    await until(() => !runs(first) && !runs(second));
    expect(shop.pid).toBeUndefined();
    expect(await print(shop, 'four')).toBe('%PDF four');
  });

  it('takes no order once it is closed, and leaves no process behind', async () => {
    const shop = shopWith();
    await print(shop, 'one');
    const pid = shop.pid as number;
    shop.close();
    await until(() => !runs(pid));
    await expect(print(shop, 'two')).rejects.toMatchObject({ code: 'closing', statusCode: 503 });
  });
});
