import { type ChildProcess, type StdioOptions, spawn } from 'node:child_process';
import { once } from 'node:events';
import { type AddressInfo, createServer } from 'node:net';
import { setTimeout } from 'node:timers/promises';

const START = new URL('../../src/start.mjs', import.meta.url).pathname;

export interface StartedService {
  readonly child: ChildProcess;
  readonly origin: string;
  /** What came out so far. */
  readonly output: { out: string; err: string };
  /** Waits for the end; gives exit code and signal. */
  ended(): Promise<readonly [number | null, string | null]>;
}

interface How {
  readonly environment?: Readonly<Record<string, string>>;
  readonly nodeOptions?: readonly string[];
  readonly stdio?: StdioOptions;
  readonly port: number;
}

/** A port that was free a moment ago. */
export async function somePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
}

/** Starts the service as a process of its own and waits until it is ready. */
export async function startedService({
  environment = {},
  nodeOptions = [],
  stdio,
  port,
}: How): Promise<StartedService> {
  const child = spawn(process.execPath, [...nodeOptions, START], {
    env: {
      PATH: process.env['PATH'],
      PORT: String(port),
      RATE_LIMIT: '1000000',
      CELL_RATE_LIMIT: '1000000',
      PRESSURE_LIMIT: '10000',
      WORKERS: '0',
      ...environment,
    },
    ...(stdio === undefined ? {} : { stdio }),
  });
  const output = { out: '', err: '' };
  child.stdout?.on('data', (chunk) => {
    output.out += String(chunk);
  });
  child.stderr?.on('data', (chunk) => {
    output.err += String(chunk);
  });
  const origin = `http://127.0.0.1:${port}`;
  const gone = once(child, 'close') as Promise<[number | null, string | null]>;
  for (let tries = 0; ; tries += 1) {
    if (child.exitCode !== null || tries > 3000)
      throw new Error(`the service did not start: ${output.out}${output.err}`);
    const ready = await fetch(`${origin}/readyz`).catch(() => undefined);
    await ready?.arrayBuffer();
    if (ready?.status === 200) return { child, origin, output, ended: () => gone };
    await setTimeout(10);
  }
}
