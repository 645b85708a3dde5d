import type { FastifyInstance } from 'fastify';

declare module 'fastify' {
  interface FastifyInstance {
    readonly draining: Draining;
  }
}

/** Whether the service is about to stop: it still answers everything, and asks each caller to close the connection. */
export class Draining {
  #begun = false;

  begin(): void {
    this.#begun = true;
  }

  get begun(): boolean {
    return this.#begun;
  }
}

export function drainOnRequest(app: FastifyInstance): void {
  const draining = new Draining();
  app.decorate('draining', draining);
  app.addHook('onSend', (_request, reply, _payload, done) => {
    if (draining.begun) reply.header('connection', 'close');
    done();
  });
}
