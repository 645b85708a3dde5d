import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type StartedService, somePort, startedService } from '../http/started-service.ts';

const CLIENT = fileURLToPath(new URL('client/', import.meta.url));
const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Runs a program of a package under this Node, in the client's folder. */
async function run(script: string, ...words: string[]): Promise<string> {
  const { stdout } = await promisify(execFile)(process.execPath, [script, ...words], { cwd: CLIENT });
  return stdout;
}

describe('a client generated from the contract by a public generator', () => {
  let service: StartedService;
  beforeAll(async () => {
    const generator = join(CLIENT, 'node_modules/openapi-typescript/bin/cli.js');
    if (!existsSync(generator)) throw new Error('the generator is missing: npm ci --prefix test/system/client');
    await run(generator, join(ROOT, 'openapi/openapi.json'), '-o', 'generated/contract.ts');
    service = await startedService({ port: await somePort() });
  }, 120_000);
  afterAll(() => service?.child.kill('SIGTERM'));

  it.each([
    ['its own compiler', join(CLIENT, 'node_modules/typescript/bin/tsc')],
    ['the compiler of this project', join(ROOT, 'node_modules/typescript/bin/tsc')],
  ])('compiles strictly with %s', async (_, compiler) => {
    expect(await run(compiler, '-p', 'tsconfig.json')).toBe('');
  });

  it('does the main job', async () => {
    const outcome = JSON.parse(await run('main-job.ts', service.origin));
    // The ratio and the pressure as the guide for users prints them.
    expect(outcome).toMatchObject({
      verdict: 'open',
      proposals: 1,
      pressure: '26.2401',
      fault: ['#/site'],
      stock: 0,
    });
    const tower = outcome.checks.find(({ id }: { id: string }) => id === 'tower');
    expect(tower.ratio).toBeCloseTo(1.001, 3);
  });
});
