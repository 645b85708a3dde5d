import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { ConfigurationError, misspeltSettings, readConfiguration, settingsHelp } from '../../src/http/index.ts';

const folder = mkdtempSync(join(tmpdir(), 'gustworthy-settings-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('the configuration', () => {
  it('has a value for every setting', () => {
    expect(readConfiguration({})).toEqual({
      host: '127.0.0.1',
      port: 8080,
      basePath: '',
      club: { name: '', contact: '' },
      stockFolder: '',
      keysFile: '',
      openEndpoints: [],
      metrics: true,
      rateLimit: 300,
      cellRateLimit: 1200,
      bodyLimit: 262_144,
      connectionLimit: 1000,
      pressureLimit: 250,
      workLimit: 2000,
      workers: 2,
      trustedProxies: [],
      corsOrigins: [],
      stopDelay: 1,
      logLevel: 'info',
      logAddresses: false,
    });
  });

  it('reads every setting', () => {
    const keysFile = join(folder, 'keys');
    writeFileSync(keysFile, 'committee 0123456789abcdefghij\n');
    const environment = {
      HOST: '0.0.0.0',
      PORT: '9000',
      BASE_PATH: '/club/gustworthy/',
      CLUB_NAME: ' The Headland club ',
      CLUB_CONTACT: 'mast@club.example',
      STOCK_FOLDER: './stock',
      KEYS_FILE: keysFile,
      OPEN_ENDPOINTS: 'page, background',
      METRICS: 'off',
      RATE_LIMIT: '50',
      CELL_RATE_LIMIT: '500',
      BODY_LIMIT: '65536',
      CONNECTION_LIMIT: '200',
      PRESSURE_LIMIT: '100',
      WORK_LIMIT: '900',
      WORKERS: '3',
      TRUSTED_PROXIES: '127.0.0.1, 10.0.0.0/8',
      CORS_ORIGINS: 'https://club.example, http://localhost:3000',
      STOP_DELAY: '5',
      LOG_LEVEL: 'warn',
      LOG_ADDRESSES: 'yes',
      SOMETHING_ELSE: 'x',
    };
    expect(readConfiguration(environment)).toEqual({
      host: '0.0.0.0',
      port: 9000,
      basePath: '/club/gustworthy',
      club: { name: 'The Headland club', contact: 'mast@club.example' },
      stockFolder: './stock',
      keysFile,
      openEndpoints: ['page', 'background'],
      metrics: false,
      rateLimit: 50,
      cellRateLimit: 500,
      bodyLimit: 65_536,
      connectionLimit: 200,
      pressureLimit: 100,
      workLimit: 900,
      workers: 3,
      trustedProxies: ['127.0.0.1', '10.0.0.0/8'],
      corsOrigins: ['https://club.example', 'http://localhost:3000'],
      stopDelay: 5,
      logLevel: 'warn',
      logAddresses: true,
    });
  });

  it.each(['gustworthy', '/a//b', '/a b', '/../x', '//evil.example', '/a?b'])('takes %j for no base path', (path) => {
    expect(() => readConfiguration({ BASE_PATH: path })).toThrow('give a path such as /gustworthy');
  });

  it('names all faults at once', () => {
    const keysFile = join(folder, 'bad-keys');
    writeFileSync(keysFile, 'committee short\n');
    const environment = {
      PORT: '80a',
      BASE_PATH: '/v1/',
      CLUB_NAME: 'two\nlines',
      KEYS_FILE: keysFile,
      OPEN_ENDPOINTS: 'page,cellar',
      METRICS: 'maybe',
      RATE_LIMIT: '',
      BODY_LIMIT: '1',
      CONNECTION_LIMIT: '1e3',
      TRUSTED_PROXIES: 'anyone',
      CORS_ORIGINS: 'club.example',
      STOP_DELAY: '61',
      LOG_LEVEL: 'loud',
      LOG_ADDRESSES: 'true',
    };
    const read = () => readConfiguration(environment);
    expect(read).toThrow(ConfigurationError);
    for (const name of Object.keys(environment)) expect(read).toThrow(`\n  ${name} `);
    for (const words of ['PORT 80a', 'cellar: give any of page, plans', 'line 1: a key has 20 to 200 letters']) {
      expect(read).toThrow(words);
    }
    expect(read).not.toThrow('short');
  });
});

describe('the help', () => {
  it('says every setting, what it is when not given, and its bounds', () => {
    const help = settingsHelp();
    const words = help.replaceAll(/\s+/g, ' ');
    for (const name of ['HOST', 'PORT', 'CLUB_NAME', 'KEYS_FILE', 'STOCK_FOLDER', 'STOP_DELAY', 'TRUSTED_PROXIES']) {
      expect(help).toContain(`\n  ${name} `);
    }
    expect(words).toContain('From 0 to 65535. 8080 when not given.');
    expect(words).toContain('One of on, off. on when not given.');
    expect(words).not.toContain('undefined');
    expect(Math.max(...help.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
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

  it('names what looks like a setting and is none', () => {
    const environment = {
      RATE_LIMITS: '5',
      CORS_ORIGIN: '*',
      HOSTNAME: 'x',
      PORTS: '1',
      WORK_LIMIT: '900',
      LOGNAME: 'y',
    };
    expect(misspeltSettings(environment)).toEqual([
      'RATE_LIMITS is no setting; RATE_LIMIT is.',
      'CORS_ORIGIN is no setting; CORS_ORIGINS is.',
    ]);
  });
});
