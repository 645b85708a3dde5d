import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';

const START = new URL('../../src/start.mjs', import.meta.url).pathname;
const children: ChildProcess[] = [];

function started(environment: Record<string, string>, ...words: string[]) {
  const child = spawn(process.execPath, [START, ...words], { env: { PATH: process.env['PATH'], ...environment } });
  children.push(child);
  const output = { out: '', err: '' };
  child.stdout.on('data', (chunk) => {
    output.out += String(chunk);
  });
  child.stderr.on('data', (chunk) => {
    output.err += String(chunk);
  });
  return { child, output };
}

afterEach(() => {
  for (const child of children.splice(0)) if (child.exitCode === null) child.kill('SIGKILL');
});

describe('the process', () => {
  it('starts under Node itself, answers, and stops in good order on a signal', { timeout: 20_000 }, async () => {
    const { child, output } = started({ PORT: '0' });
    while (!output.out.includes('Server listening')) await once(child.stdout, 'data');
    const origin = /Server listening at (http:[^"]+)/.exec(output.out)?.[1] as string;
    expect(await (await fetch(`${origin}/healthz`)).json()).toMatchObject({ status: 'running' });
    child.kill('SIGTERM');
    const [code] = await once(child, 'exit');
    expect(code).toBe(0);
    expect(output.err).toBe('');
  });

  it('names every setting that does not fit, and stops', { timeout: 20_000 }, async () => {
    const { child, output } = started({ PORT: 'eighty', BODY_LIMIT: '-1' });
    const [code] = await once(child, 'close');
    expect(code).toBe(1);
    expect(output.err).toContain('PORT eighty: give a whole number');
    expect(output.err).toContain('BODY_LIMIT -1: give a whole number');
    expect(output.err).not.toContain('.ts:');
  });

  it('says its settings when asked, and stops', { timeout: 20_000 }, async () => {
    const { child, output } = started({ PORT: 'eighty' }, '--help');
    expect((await once(child, 'close'))[0]).toBe(0);
    expect(output.out).toContain('\n  RATE_LIMIT ');
    expect(output.err).toBe('');
  });

  it('looks at settings, keys and stock without starting, when asked', { timeout: 20_000 }, async () => {
    const stock = new URL('../../deploy/stock', import.meta.url).pathname;
    const good = started({ STOCK_FOLDER: stock }, '--check');
    expect((await once(good.child, 'close'))[0]).toBe(0);
    expect(good.output.out).toBe('Settings, keys and stock fit.\n');

    const folder = mkdtempSync(join(tmpdir(), 'gustworthy-check-'));
    writeFileSync(join(folder, 'beam.us.csv'), 'name,area,source\nbeam,wide,sheet\n');
    const bad = started({ STOCK_FOLDER: folder }, '--check');
    expect((await once(bad.child, 'close'))[0]).toBe(1);
    expect(bad.output.out).toContain('  beam.us.csv row 1, area: ');
    rmSync(folder, { recursive: true });
  });

  it('says when it cannot listen, and stops', { timeout: 20_000 }, async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const address = other.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    const { child, output } = started({ PORT: String(port) });
    const [code] = await once(child, 'close');
    other.close();
    expect(code).toBe(1);
    expect(output.out).toContain(`cannot listen on 127.0.0.1 port ${port}`);
  });
});
