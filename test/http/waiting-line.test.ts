import { setImmediate } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { WaitingLine } from '../../src/http/upkeep/waiting-line.ts';

describe('the line in which requests wait', () => {
  const turns = async (count: number) => {
    for (let turn = 0; turn < count; turn += 1) await setImmediate();
  };

  it('lets who comes when nobody waits straight in', async () => {
    const line = new WaitingLine();
    const waits: number[] = [];
    const enter = (waited: number) => waits.push(waited) > 0;
    line.join(enter);
    expect(waits).toEqual([0]);
    await turns(10);
    line.join(enter);
    expect(waits).toEqual([0, 0]);
  });

  it('lets the others in one after the other, in their order, with turns of the loop between', async () => {
    const line = new WaitingLine();
    const entered: string[] = [];
    let turn = 0;
    for (const name of ['a', 'b', 'c']) {
      line.join(() => {
        entered.push(`${name} ${turn}`);
        return true;
      });
    }
    for (; turn < 30; turn += 1) await turns(1);
    expect(entered.map((each) => each[0])).toEqual(['a', 'b', 'c']);
    const [first, second, third] = entered.map((each) => Number(each.slice(2))) as [number, number, number];
    expect(second - first).toBeGreaterThan(1);
    expect(third - second).toBeGreaterThan(1);
  });

  it('sees to all that are sent away before the next one enters', async () => {
    const line = new WaitingLine();
    const seen: string[] = [];
    const comes = (name: string, isLetIn: boolean) => () => {
      seen.push(name);
      return isLetIn;
    };
    line.join(comes('first', true));
    for (const name of ['b', 'c', 'd']) line.join(comes(name, false));
    line.join(comes('e', true));
    line.join(comes('f', true));
    while (seen.length < 2) await turns(1);
    expect(seen).toEqual(['first', 'b', 'c', 'd', 'e']);
    await turns(10);
    expect(seen.at(-1)).toBe('f');
  });

  it('tells each how long it waited', async () => {
    const line = new WaitingLine();
    let told = 0;
    line.join(() => true);
    line.join((waited) => {
      told = waited;
      return true;
    });
    const until = performance.now() + 30;
    while (performance.now() < until);
    await turns(10);
    expect(told).toBeGreaterThanOrEqual(30);
  });
});
