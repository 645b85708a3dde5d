import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { readStockFile } from '../../src/http/stock/stock-file.ts';
import { runningApp } from './running-app.ts';

const SAMPLES = new URL('../../deploy/stock/', import.meta.url);
const folder = mkdtempSync(join(tmpdir(), 'gustworthy-stock-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Stock {
  readonly entries: readonly { id: string; kind: string; units: string; title: string; fragment: object }[];
  readonly faults: readonly { file: string; at?: string; says: string }[];
}

function write(name: string, content: unknown): void {
  const text = typeof content === 'string' ? content : JSON.stringify(content);
  writeFileSync(join(folder, `.${name}`), text);
  renameSync(join(folder, `.${name}`), join(folder, name));
}

const load = (name: string, area: number | string = 5) => ({
  units: 'us',
  source: 'invented',
  loads: [{ name, area }],
});

describe('the sample of stock', () => {
  it('can be read, and names the source of every figure', () => {
    const files = readdirSync(SAMPLES).filter((name) => /\.(json|csv)$/.test(name));
    expect(files.length).toBeGreaterThan(1);
    for (const file of files) {
      const reading = readStockFile(file, readFileSync(new URL(file, SAMPLES), 'utf8'));
      expect(reading).toMatchObject({ ok: true });
      for (const entry of reading.ok ? reading.entries : []) expect(entry.source).toContain('invented');
    }
  });
});

describe('a table of stock', () => {
  const says = (file: string, text: string) => {
    const reading = readStockFile(file, text);
    return reading.ok ? [] : reading.faults.map(({ at = '', says: words }) => `${at}: ${words}`);
  };

  it('has its units in its name', () => {
    expect(says('loads.csv', 'name,area,source\nbeam,5,sheet')[0]).toContain('.us.csv or .si.csv');
    expect(readStockFile('loads.si.csv', 'name;area;source\nbeam;0,5;sheet')).toMatchObject({
      entries: [{ units: 'si', title: 'beam' }],
    });
  });

  it('says row and column of what is wrong', () => {
    const faults = says('loads.us.csv', 'name,area,source\nbeam,5,sheet\npanel,wide,\n');
    expect(faults.map((fault) => fault.split(':')[0])).toEqual(['row 2, area', 'row 2, source']);
    expect(says('loads.us.csv', 'name,aera,source\nbeam,5,x')[0]).toContain('did you mean "area"?');
    expect(says('loads.us.csv', 'name,area,source\n"beam,5,x')[0]).toContain('quote');
  });
});

const logged: string[] = [];
const log = new PassThrough();
log.on('data', (chunk) => logged.push(String(chunk)));

describe('GET /v1/stock', () => {
  write('beam.json', load('beam', 5.5));
  const running = runningApp({ stockFolder: folder, logLevel: 'info', logTo: log, lookEvery: 20 });
  const stock = async (query = '') => (await running.request().get(`/v1/stock${query}`).expect(200)).body as Stock;
  const until = async (fits: (state: Stock) => boolean): Promise<Stock> => {
    let state = await stock();
    for (let tries = 0; tries < 200 && !fits(state); tries += 1) {
      await setTimeout(20);
      state = await stock();
    }
    expect(fits(state), JSON.stringify(state)).toBe(true);
    return state;
  };
  const titles = ({ entries }: Stock) => entries.map(({ title }) => title).join(' ');

  it('offers what the folder holds', async () => {
    const fragment = { loads: [{ name: 'beam', area: 5.5, source: 'invented' }] };
    expect(await stock()).toEqual({
      entries: [{ id: 'beam/beam', kind: 'load', title: 'beam', units: 'us', source: 'invented', fragment }],
      faults: [],
    });
  });

  it('writes units where the plan has others', async () => {
    expect((await stock('?units=us')).entries[0]?.fragment).toMatchObject({ loads: [{ area: 5.5 }] });
    expect((await stock('?units=si')).entries[0]?.fragment).toMatchObject({ loads: [{ area: '5.5 ft²' }] });
    expect((await running.request().get('/v1/stock?units=both')).status).toBe(400);
  });

  it('takes up new, changed and removed files', async () => {
    write('panel.json', load('panel'));
    await until((state) => titles(state) === 'beam panel');
    write('beam.json', load('better beam'));
    await until((state) => titles(state) === 'better beam panel');
    rmSync(join(folder, 'panel.json'));
    await until((state) => titles(state) === 'better beam');
    write('beam.json', load('beam'));
    await until((state) => titles(state) === 'beam');
  });

  it('reports a file that goes bad, with its place, and keeps what it held', async () => {
    write('beam.json', load('beam', 'five'));
    const { entries, faults } = await until((state) => state.faults.length > 0);
    expect(entries.map(({ title }) => title)).toEqual(['beam']);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ file: 'beam.json', at: '/loads/0/area' });
    expect(logged.some((line) => line.includes('stock does not fit') && line.includes('beam.json'))).toBe(true);
    write('beam.json', '{"units":"us",');
    const cut = await until((state) => state.faults[0]?.says.includes('not JSON') === true);
    expect(titles(cut)).toBe('beam');
    write('beam.json', load('beam'));
    await until((state) => state.faults.length === 0);
  });

  it.each([
    ['a folder with the name of a file', () => mkdirSync(join(folder, 'odd.json')), 'is a folder'],
    ['a link to itself', () => symlinkSync('odd.json', join(folder, 'odd.json')), 'leads back to itself'],
    ['a link to nothing', () => symlinkSync('nothing', join(folder, 'odd.json')), 'is not there'],
    ['bytes that are no text', () => writeFileSync(join(folder, 'odd.json'), Buffer.from([0xff, 0xfe, 0])), 'not JSON'],
    ['a field twice', () => write('odd.json', '{"units":"us","units":"si"}'), 'more than once'],
    ['too many bytes', () => write('odd.json', ' '.repeat(1_000_001)), '1000001 bytes'],
  ])('lives with %s', async (_, make, says) => {
    make();
    const state = await until(({ faults }) => faults.length > 0);
    expect(state.faults[0]?.file).toBe('odd.json');
    expect(state.faults[0]?.says).toContain(says);
    expect(state.faults[0]?.says).not.toContain(folder);
    expect(titles(state)).toBe('beam');
    rmSync(join(folder, 'odd.json'), { recursive: true });
    await until(({ faults }) => faults.length === 0);
  });

  it('leaves hidden files and files of other kinds alone', async () => {
    writeFileSync(join(folder, '.beam.json.swp'), 'x');
    writeFileSync(join(folder, '.hidden.json'), 'x');
    writeFileSync(join(folder, 'notes.txt'), 'x');
    await setTimeout(100);
    expect((await stock()).faults).toEqual([]);
  });

  it('gives two things of one name two ids', async () => {
    write('b e a m.json', load('beam'));
    const state = await until(({ entries }) => entries.length === 2);
    expect(new Set(state.entries.map(({ id }) => id)).size).toBe(2);
    rmSync(join(folder, 'b e a m.json'));
    await until(({ entries }) => entries.length === 1);
  });

  it('answers every request while the folder changes under it', async () => {
    let ends = false;
    const statuses = new Set<number>();
    const asking = (async () => {
      while (!ends) statuses.add((await running.request().get('/v1/stock')).status);
    })();
    for (let count = 0; count < 30; count += 1) {
      write('beam.json', count % 3 === 1 ? '{' : load(`beam ${count}`));
      await setTimeout(10);
    }
    write('beam.json', load('beam'));
    await until((state) => titles(state) === 'beam' && state.faults.length === 0);
    ends = true;
    await asking;
    expect([...statuses]).toEqual([200]);
  });

  it('keeps the last good state when the folder goes, and takes it up when it comes back', async () => {
    renameSync(folder, `${folder}-gone`);
    // A look may fall between the file's going and the folder's.
    const state = await until(({ faults }) => faults.some(({ file }) => file === ''));
    expect(state.faults).toEqual([{ file: '', says: 'The folder of stock is not there.' }]);
    expect(titles(state)).toBe('beam');
    writeFileSync(folder, 'not a folder');
    await until(({ faults }) => faults[0]?.says === 'The folder of stock is no folder.');
    rmSync(folder);
    renameSync(`${folder}-gone`, folder);
    await until(({ faults, entries }) => faults.length === 0 && entries.length === 1);
  });
});

describe('a service without stock', () => {
  const running = runningApp();

  it('offers none', async () => {
    expect((await running.request().get('/v1/stock').expect(200)).body).toEqual({ entries: [], faults: [] });
  });
});

describe('a service whose folder of stock was never there', () => {
  const running = runningApp({ stockFolder: join(folder, 'never', 'there') });

  it('starts all the same and says so', async () => {
    const { body } = await running.request().get('/v1/stock').expect(200);
    expect(body).toEqual({ entries: [], faults: [{ file: '', says: 'The folder of stock is not there.' }] });
  });
});
