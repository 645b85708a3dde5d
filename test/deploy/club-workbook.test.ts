import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { STATIONS } from '../../deploy/spreadsheets/club-stations.ts';
import { clubWorkbook } from '../../deploy/spreadsheets/club-workbook.ts';
import { CELLS } from '../../src/plan/index.ts';

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
