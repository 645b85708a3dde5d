import underPressure from '@fastify/under-pressure';
import type { FastifyInstance } from 'fastify';
import type { Configuration } from '../configuration.ts';
import { Problem } from '../problems/problem.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Answered even while requests are sent away. */
    readonly underPressureToo?: boolean;
  }
}

/** Short, so that the door opens again soon after a rush [ms]. */
const SAMPLE_EVERY = 250;

/** Seconds after which to come again; spread, so that those sent away do not come back all at once. */
const comeBackIn = () => String(1 + Math.floor(Math.random() * 4));

/** Sends requests away with 503, before they cost anything, while work waits too long or memory runs out. */
export async function sendAwayUnderPressure(
  app: FastifyInstance,
  { pressureLimit, memoryLimit }: Pick<Configuration, 'pressureLimit' | 'memoryLimit'>,
): Promise<void> {
  await app.register(underPressure, {
    sampleInterval: SAMPLE_EVERY,
    maxEventLoopDelay: pressureLimit,
    maxRssBytes: memoryLimit * 1024 * 1024,
    pressureHandler: (request, _reply, type) => {
      if (request.routeOptions.config.underPressureToo) return;
      app.metrics.sentAway(type === 'rssBytes' ? 'memory' : 'delay');
      throw new Problem(
        'overloaded',
        'More requests came than the service can answer in good time; none is kept waiting.',
        {
          headers: { 'retry-after': comeBackIn() },
        },
      );
    },
  });
}
