import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request as plainRequest } from 'node:http';
import { request as tlsRequest } from 'node:https';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';

const HOST = 'tower.example.org';
const EXAMPLES = new URL('../../deploy/proxy/', import.meta.url);

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

interface Asking {
  readonly method?: string;
  readonly body?: string;
  readonly headers?: Readonly<Record<string, string>>;
  /** Which of the machine's own addresses asks. */
  readonly from?: string;
}

export interface RunningProxy {
  /** Asks by https, as a caller who trusts the certificate and was told the name. */
  ask(path: string, asking?: Asking): Promise<Answer>;
  /** Asks by plain http. */
  askPlainly(path: string): Promise<Answer>;
  /** What it wrote into its log of requests. */
  log(): string;
  stop(): Promise<void>;
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('no port');
  return address.port;
}

async function listening(port: number, child: ChildProcess, output: () => string): Promise<void> {
  for (let attempt = 0; attempt < 200; attempt += 1) {
    if (child.exitCode !== null) throw new Error(`the proxy ended with ${child.exitCode}:\n${output()}`);
    const socket = connect(port, '127.0.0.1');
    const open = await once(socket, 'connect').then(
      () => true,
      () => false,
    );
    socket.destroy();
    if (open) return;
    await setTimeout(50);
  }
  throw new Error(`the proxy does not listen:\n${output()}`);
}

/** Puts the adapted text in place of each example; every one must be there, or the example has changed. */
function adapted(text: string, changes: readonly (readonly [example: string, here: string])[]): string {
  let result = text;
  for (const [example, here] of changes) {
    if (!result.includes(example)) throw new Error(`the example no longer holds "${example}"`);
    result = result.replaceAll(example, here);
  }
  return result;
}

interface Places {
  readonly folder: string;
  readonly tlsPort: number;
  readonly plainPort: number;
  readonly servicePort: number;
}

/** nginx with the example, changed in ports and paths only. */
function nginx({ folder, tlsPort, plainPort, servicePort }: Places): readonly [string, string[]] {
  const site = adapted(readFileSync(new URL('nginx.conf', EXAMPLES), 'utf8'), [
    ['listen 80;', `listen 127.0.0.1:${plainPort};`],
    ['    listen [::]:80;\n', ''],
    ['listen 443 ssl', `listen 127.0.0.1:${tlsPort} ssl`],
    ['    listen [::]:443 ssl http2;\n', ''],
    ['server 127.0.0.1:8080;', `server 127.0.0.1:${servicePort};`],
    ['/etc/letsencrypt/live/tower.example.org/fullchain.pem', join(folder, 'certificate.pem')],
    ['/etc/letsencrypt/live/tower.example.org/privkey.pem', join(folder, 'key.pem')],
    ['/var/log/nginx/gustworthy.log', join(folder, 'access.log')],
  ]);
  writeFileSync(join(folder, 'site.conf'), site);
  const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map(
    (kind) => `${kind}_temp_path ${join(folder, kind)};`,
  );
  const main = [
    // Started by root, its workers are to reach the folder of the test; started by anyone else it keeps its user.
    ...(process.getuid?.() === 0 ? ['user root;'] : []),
    'daemon off;',
    'worker_processes 1;',
    `pid ${join(folder, 'nginx.pid')};`,
    `error_log ${join(folder, 'error.log')};`,
    'events { worker_connections 128; }',
    `http { ${temporary.join(' ')} include ${join(folder, 'site.conf')}; }`,
  ];
  writeFileSync(join(folder, 'nginx.conf'), `${main.join('\n')}\n`);
  return ['/usr/sbin/nginx', ['-p', folder, '-c', join(folder, 'nginx.conf'), '-e', join(folder, 'error.log')]];
}

/** Caddy with the example, changed in ports and certificate only. */
function caddy({ folder, tlsPort, plainPort, servicePort }: Places): readonly [string, string[]] {
  const site = adapted(readFileSync(new URL('Caddyfile', EXAMPLES), 'utf8'), [
    [
      '\ntower.example.org {',
      `\ntower.example.org:${tlsPort} {\n\ttls ${join(folder, 'certificate.pem')} ${join(folder, 'key.pem')}`,
    ],
    ['reverse_proxy 127.0.0.1:8080', `reverse_proxy 127.0.0.1:${servicePort}`],
  ]);
  const options = ['{', '\tadmin off', `\thttp_port ${plainPort}`, `\thttps_port ${tlsPort}`, '}'];
  writeFileSync(join(folder, 'Caddyfile'), `${options.join('\n')}\n${site}`);
  return ['caddy', ['run', '--adapter', 'caddyfile', '--config', join(folder, 'Caddyfile')]];
}

const PROXIES = { nginx, caddy } as const;
export type ProxyKind = keyof typeof PROXIES;

/** Starts a proxy by its example before a service on this machine. */
export async function startedProxy(kind: ProxyKind, servicePort: number): Promise<RunningProxy> {
  const folder = mkdtempSync(join(tmpdir(), `gustworthy-${kind}-`));
  const places = { folder, servicePort, tlsPort: await freePort(), plainPort: await freePort() };
  execFileSync(
    'openssl',
    [
      ...['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes', '-days', '2'],
      ...['-subj', `/CN=${HOST}`, '-addext', `subjectAltName=DNS:${HOST}`],
      ...['-keyout', join(folder, 'key.pem'), '-out', join(folder, 'certificate.pem')],
    ],
    { stdio: 'pipe' },
  );
  const ca = readFileSync(join(folder, 'certificate.pem'));
  const [program, given] = PROXIES[kind](places);
  const home = join(folder, 'home');
  mkdirSync(home);
  const child = spawn(program, given, { env: { PATH: process.env['PATH'], HOME: home, XDG_DATA_HOME: home } });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk) => {
      output += String(chunk);
    });
  }
  const stop = async () => {
    if (child.exitCode === null && child.signalCode === null) {
      child.kill('SIGTERM');
      await Promise.race([once(child, 'exit'), setTimeout(5_000).then(() => child.kill('SIGKILL'))]);
    }
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    await listening(places.tlsPort, child, () => output);
  } catch (error) {
    await stop();
    throw error;
  }

  const asked = (secure: boolean, path: string, { method = 'GET', body, headers, from = '127.0.0.1' }: Asking) =>
    new Promise<Answer>((resolve, reject) => {
      const options = {
        method,
        path,
        host: '127.0.0.1',
        port: secure ? places.tlsPort : places.plainPort,
        localAddress: from,
        agent: false as const,
        headers: {
          host: HOST,
          ...headers,
          ...(body === undefined ? {} : { 'content-length': Buffer.byteLength(body) }),
        },
      };
      const outgoing = secure ? tlsRequest({ ...options, ca, servername: HOST }) : plainRequest(options);
      let answered = false;
      outgoing.on('response', (response) => {
        answered = true;
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (chunk: string) => {
          text += chunk;
        });
        response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
        response.on('error', reject);
      });
      // A body that is refused early may break off while it is still being sent.
      outgoing.on('error', (error) => {
        if (!answered) reject(error);
      });
      outgoing.end(body);
    });

  return {
    ask: (path, asking = {}) => asked(true, path, asking),
    askPlainly: (path) => asked(false, path, {}),
    log: () => readFileSync(join(folder, 'access.log'), 'utf8'),
    stop,
  };
}
