import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { STATIONS } from '../../deploy/spreadsheets/club-stations.ts';
import { clubWorkbook } from '../../deploy/spreadsheets/club-workbook.ts';
import { CELLS } from '../../src/plan/index.ts';
import { runningApp } from '../http/running-app.ts';

const COMMITTED = new URL('../../deploy/spreadsheets/club-stations.xlsx', import.meta.url);

describe('the sample workbook', () => {
  it('lies there as its script makes it, "npm run workbook" makes it anew', async () => {
    expect(Buffer.compare(Buffer.from(await clubWorkbook()), readFileSync(COMMITTED))).toBe(0);
  });

  it('names nothing that the cell of a station does not know', () => {
    const known = ['name', ...Object.keys(CELLS.station.parameters)];
    expect(STATIONS.flatMap((station) => Object.keys(station)).filter((name) => !known.includes(name))).toEqual([]);
  });
});

describe('the guide to spreadsheets', () => {
  const running = runningApp();
  const guide = readFileSync(new URL('../../deploy/spreadsheets/README.md', import.meta.url), 'utf8');
  const rows = [...guide.matchAll(/^\| `(\/v1\/cells\/\S+)` \| (.+?) \| .+ \|$/gm)].map(([, address, answer]) => [
    address as string,
    answer as string,
  ]);

  it('shows a number of every common kind', () => {
    expect(rows.length).toBeGreaterThanOrEqual(8);
  });

  it.each(rows)('says what is answered: %s', async (address, answer) => {
    const { text } = await running.request().get(address).expect(200);
    expect(text).toBe(answer);
  });

  it('shows the list as it is answered', async () => {
    const [, address = '', table] = /^(\/v1\/cells\/\S+as=csv)\n\n([^`]+)```/m.exec(guide) ?? [];
    const { text } = await running.request().get(address).expect(200);
    expect(text.replace('\uFEFF', '').replaceAll('\r\n', '\n')).toBe(table);
  });
});
