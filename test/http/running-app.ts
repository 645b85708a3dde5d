import type { AddressInfo } from 'node:net';
import supertest from 'supertest';
import { afterAll, beforeAll } from 'vitest';
import { type AppOptions, buildApp, type Configuration, readConfiguration } from '../../src/http/index.ts';

type App = Awaited<ReturnType<typeof buildApp>>;

export interface RunningApp {
  readonly app: App;
  readonly origin: string;
  request(): ReturnType<typeof supertest>;
}

interface Changes extends Partial<Configuration> {
  readonly logTo?: AppOptions['logTo'];
  readonly printing?: AppOptions['printing'];
  /** Adds routes of the test's own before the app listens. */
  readonly prepare?: (app: App) => void;
}

/** Builds the service, listens on a free port while the tests of a describe block run, and closes. */
export function runningApp({ logTo, printing, prepare, ...changes }: Changes = {}): RunningApp {
  let app: App | undefined;
  const present = (): App => {
    if (app === undefined) throw new Error('the app is not built yet');
    return app;
  };
  beforeAll(async () => {
    const configuration = { ...readConfiguration({ LOG_LEVEL: 'silent', RATE_LIMIT: '100000' }), ...changes };
    app = await buildApp({
      configuration,
      ...(logTo === undefined ? {} : { logTo }),
      ...(printing === undefined ? {} : { printing }),
    });
    prepare?.(app);
    await app.listen({ host: '127.0.0.1', port: 0 });
  });
  afterAll(async () => {
    await app?.close();
  });
  return {
    get app() {
      return present();
    },
    get origin() {
      return `http://127.0.0.1:${(present().server.address() as AddressInfo).port}`;
    },
    request: () => supertest(present().server),
  };
}
