import { describe, expect, it } from 'vitest';
import { ConfigurationError, readConfiguration } from '../../src/http/index.ts';

describe('the configuration', () => {
  it('has a value for every setting', () => {
    expect(readConfiguration({})).toEqual({
      host: '127.0.0.1',
      port: 8080,
      logLevel: 'info',
      bodyLimit: 262_144,
      rateLimit: 300,
      cellRateLimit: 1200,
      trustedProxies: [],
      corsOrigins: [],
    });
  });

  it('reads every setting', () => {
    const environment = {
      HOST: '0.0.0.0',
      PORT: '9000',
      LOG_LEVEL: 'warn',
      BODY_LIMIT: '65536',
      RATE_LIMIT: '50',
      CELL_RATE_LIMIT: '500',
      TRUSTED_PROXIES: '127.0.0.1, 10.0.0.0/8',
      CORS_ORIGINS: 'https://club.example, http://localhost:3000',
      SOMETHING_ELSE: 'x',
    };
    expect(readConfiguration(environment)).toEqual({
      host: '0.0.0.0',
      port: 9000,
      logLevel: 'warn',
      bodyLimit: 65_536,
      rateLimit: 50,
      cellRateLimit: 500,
      trustedProxies: ['127.0.0.1', '10.0.0.0/8'],
      corsOrigins: ['https://club.example', 'http://localhost:3000'],
    });
  });

  it('names all faults at once', () => {
    const read = () =>
      readConfiguration({
        PORT: '80a',
        LOG_LEVEL: 'loud',
        BODY_LIMIT: '1',
        RATE_LIMIT: '',
        TRUSTED_PROXIES: 'anyone',
        CORS_ORIGINS: 'club.example',
      });
    expect(read).toThrow(ConfigurationError);
    for (const name of [
      'PORT 80a',
      'LOG_LEVEL loud',
      'BODY_LIMIT 1',
      'RATE_LIMIT',
      'TRUSTED_PROXIES',
      'CORS_ORIGINS',
    ]) {
      expect(read).toThrow(name);
    }
  });

  it.each(['https://club.example/', 'HTTPS://club.example', 'https://club.example:443', 'null', 'file:///page.html'])(
    'takes no origin that no browser sends: %s',
    (origin) => {
      expect(() => readConfiguration({ CORS_ORIGINS: `https://club.example,${origin}` })).toThrow('CORS_ORIGINS give');
    },
  );

  it('takes all origins by a star', () => {
    expect(readConfiguration({ CORS_ORIGINS: '*' }).corsOrigins).toEqual(['*']);
  });
});
