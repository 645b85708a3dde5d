import { monitorEventLoopDelay } from 'node:perf_hooks';
import type { FastifyInstance } from 'fastify';
import { Counter, Gauge, Histogram, Registry } from 'prom-client';
import { VERSION } from '../version.ts';

declare module 'fastify' {
  interface FastifyInstance {
    readonly metrics: Metrics;
  }
}

/** Upper ends of the classes of answer times [s]. */
const TIMES = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10];
const RESOLUTION = 10;

/** What can be counted of a running service, in the text form of Prometheus. It holds no plan and no caller. */
export class Metrics {
  readonly #registry = new Registry();
  readonly #delay = monitorEventLoopDelay({ resolution: RESOLUTION });
  readonly #answers: Histogram<'method' | 'route' | 'status'>;
  readonly #verdicts: Counter<'call' | 'verdict'>;
  readonly #sentAway: Counter<'cause'>;
  readonly #aborted: Counter;
  readonly #underWay: Gauge;

  constructor() {
    const registers = [this.#registry];
    this.#answers = new Histogram({
      name: 'gustworthy_answer_seconds',
      help: 'Time from a request to its answer.',
      labelNames: ['method', 'route', 'status'],
      buckets: TIMES,
      registers,
    });
    this.#verdicts = new Counter({
      name: 'gustworthy_verdicts_total',
      help: 'Verdicts on whole stations.',
      labelNames: ['call', 'verdict'],
      registers,
    });
    this.#sentAway = new Counter({
      name: 'gustworthy_sent_away_total',
      help: 'Requests answered 503 because of long waiting or low memory.',
      labelNames: ['cause'],
      registers,
    });
    this.#aborted = new Counter({
      name: 'gustworthy_aborted_total',
      help: 'Requests whose caller disconnected before the answer.',
      registers,
    });
    this.#underWay = new Gauge({ name: 'gustworthy_under_way', help: 'Requests being answered.', registers });
    this.#describeProcess(registers);
    this.#delay.enable();
  }

  #describeProcess(registers: Registry[]): void {
    const delay = this.#delay;
    new Gauge({
      name: 'gustworthy_event_loop_delay_seconds',
      help: 'Waiting time of work since the last scrape: 0.5 and 0.99 quantile, and longest (1).',
      labelNames: ['quantile'],
      registers,
      collect() {
        const seconds = (nanoseconds: number) => Math.max(0, nanoseconds / 1e9 - RESOLUTION / 1000);
        this.set({ quantile: '0.5' }, seconds(delay.percentile(50)));
        this.set({ quantile: '0.99' }, seconds(delay.percentile(99)));
        this.set({ quantile: '1' }, seconds(delay.max));
        delay.reset();
      },
    });
    this.watch('process_resident_memory_bytes', 'Resident memory.', () => process.memoryUsage.rss());
    this.watch('nodejs_heap_size_used_bytes', 'Heap in use.', () => process.memoryUsage().heapUsed);
    new Counter({
      name: 'process_cpu_seconds_total',
      help: 'Processor time used.',
      registers,
      collect() {
        const { user, system } = process.cpuUsage();
        this.reset();
        this.inc((user + system) / 1e6);
      },
    });
    new Gauge({ name: 'process_start_time_seconds', help: 'When the process started.', registers }).set(
      Math.round(performance.timeOrigin / 1000),
    );
    new Gauge({
      name: 'gustworthy_version_info',
      help: 'Version of the service and of Node.',
      labelNames: ['version', 'node'],
      registers,
    }).set({ version: VERSION, node: process.version }, 1);
  }

  /** A number that is asked for at each look. */
  watch(name: string, help: string, value: () => number): void {
    new Gauge({
      name,
      help,
      registers: [this.#registry],
      collect() {
        this.set(value());
      },
    });
  }

  begun(): void {
    this.#underWay.inc();
  }

  ended(): void {
    this.#underWay.dec();
  }

  answered(method: string, route: string, status: number, seconds: number): void {
    this.#answers.observe({ method, route, status }, seconds);
  }

  verdict(call: 'check' | 'addition' | 'cell', verdict: 'within' | 'low-margin' | 'over' | 'open'): void {
    this.#verdicts.inc({ call, verdict });
  }

  sentAway(cause: 'delay' | 'memory'): void {
    this.#sentAway.inc({ cause });
  }

  aborted(): void {
    this.#aborted.inc();
  }

  get contentType(): string {
    return this.#registry.contentType;
  }

  text(): Promise<string> {
    return this.#registry.metrics();
  }

  close(): void {
    this.#delay.disable();
  }
}

/** Counts every request of an app. */
export function countRequests(app: FastifyInstance): void {
  const metrics = new Metrics();
  app.decorate('metrics', metrics);
  app.addHook('onRequest', (_request, reply, done) => {
    metrics.begun();
    // Unlike the end of an answer, this comes when the caller goes away, too.
    reply.raw.once('close', () => metrics.ended());
    done();
  });
  app.addHook('onResponse', (request, reply, done) => {
    metrics.answered(request.method, request.routeOptions.url ?? 'none', reply.statusCode, reply.elapsedTime / 1000);
    done();
  });
  app.addHook('onRequestAbort', (_request, done) => {
    metrics.aborted();
    done();
  });
  app.addHook('onClose', (_instance, done) => {
    metrics.close();
    done();
  });
}
