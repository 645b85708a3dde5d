import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formulas } from '../../src/foundation/index.ts';
// The rooms define their formulas when they are loaded.
import '../../src/margins/index.ts';
import { tableNames, tableRows } from '../published/table-reader.ts';
import { type ClauseIndex, exportedNamesAbout, referenceExamples, tableClauses, weakest } from './clause-index.ts';
import { PROJECT_ROOT } from './source-files.ts';

const text = readFileSync(join(PROJECT_ROOT, 'openapi/clauses.json'), 'utf8');
const index = JSON.parse(text) as ClauseIndex;
const clauses = index.standards.flatMap(({ standard, clauses: own }) => own.map((clause) => ({ standard, ...clause })));
const at = (standard: string, clause: string) =>
  clauses.find((each) => each.standard === standard && each.clause === clause);

/**
 * Clauses that no test holds by name, each looked at: what is from memory waits for the standard, the rest is reached
 * by the sweeps over methods and formulas, by the witness, or is an example that is not computed.
 */
const WITHOUT_TEST: Readonly<Record<string, readonly string[]>> = {
  'asce7-10': ['29.5, Eq. 29.5-1', 'wind maps by risk category, chapter 26'],
  'asce7-16': ['29.4, Eq. 29.4-1; least pressure 29.7', 'wind maps by risk category, chapter 26'],
  'asce7-22': [
    '26.10.2, Eq. 26.10-1',
    '29.4, Eq. 29.4-1, with the direction factor; least pressure 29.7',
    'wind maps by risk category, chapter 26',
  ],
  'asce7-commentary': ['form of Peterka and Shahid'],
  'tia222-g': ['2.3.2', '2.6.9.2', 'Annex C, paraboloid without radome, resultant at 50° to 60°; mesh derived'],
  'tia222-h': ['2.6.11; in -G 2.6.9'],
  'eia222-f': ['2.3.2', '2.3.4.4, structure mounted on another'],
  'rs222-c': ['wind pressure on the projected area'],
  'en1991-1-4': [
    '5.3(2), Eq. (5.3)',
    '7.6 to 7.9, Eqs. (7.9), (7.11), (7.13), (7.19)',
    '7.9.1, Eq. (7.15)',
    '7.9.1, Fig. 7.28 note',
    '7.9.2, Fig. 7.28',
  ],
  'wmo-beaufort': ['public tables'],
  'hoerner-1965': ['cross-flow principle; closed form derived here'],
  'dnv-rp-c205': ['2025-04, drag curve of a smooth circular cylinder, digitised'],
  'engineers-data-book': ['Fig. 5.13(b), p. 95'],
  'iso-2533': ['public table of relative density by elevation'],
  'gumbel-1958': ['first asymptotic law of the largest value'],
  gere: ['Example 11.2, p. 774'],
  'cengel-cimbala': ['Example 11-4, p. 609'],
  'beer-johnston': ['Example 7.9, p. 349', 'Example 7.10, p. 350'],
  theraja: [
    'Example 41.52, p. 1666',
    'Example 41.54, p. 1667; the same in Principles of Power System, Example 8.19, p. 191',
    'Example 41.55, p. 1667',
  ],
  derived: [
    'a drag area holds its coefficients already; the least its faces and two thirds give',
    'a storm that has come spares no direction',
    'cross-flow on a sloping round member, summed over evenly spread headings',
    'EN 1991-1-4 Eqs. (4.3), (4.7), (4.8), with and without the hill',
    'EN 1991-1-4, √c_e at 10 m in terrain II',
    'force grows with the square of the speed',
    'forces go with the square of the speed',
    'formula',
    'from expressions 4.3 to 4.8',
    'level of the statement',
    'proof envelope',
    'proof envelope: the same tower on both sides',
    'statics of a torsion tube of three or four faces',
    'the same tower on both sides, each by its own standard',
    'the wind of the pressure formula, without direction and gust factor',
    'with rotation free the maxima add',
  ],
  'common-practice': ['a forecast errs by about a tenth'],
};

describe('the clause index', () => {
  it('is the one committed; if it is not, run "npm run clauses" and look at the difference', () => {
    const arguments_ = ['--import', './src/required-node.mjs', 'test/house/write-clause-index.ts', '--print'];
    const made = execFileSync(process.execPath, arguments_, { cwd: PROJECT_ROOT, encoding: 'utf8', maxBuffer: 1e7 });
    expect(JSON.parse(made)).toEqual(index);
    expect(made).toBe(text);
  });

  it('has the citation of every formula', () => {
    expect(formulas().length).toBeGreaterThan(200);
    for (const { id, cite } of formulas()) {
      expect(at(cite.source, cite.clause)?.formulas, `${id}: ${cite.source}, ${cite.clause}`).toContain(id);
    }
  });

  it('has every table and every example', () => {
    for (const table of tableNames()) {
      expect(
        clauses.some(({ tables }) => tables.includes(table)),
        table,
      ).toBe(true);
    }
    for (const { id, source, where } of referenceExamples()) {
      expect(at(source, where)?.examples.map((example) => example.id)).toContain(id);
    }
  });

  it('names tests that are there and that name what they hold', () => {
    const read = new Map<string, string>();
    const testText = (path: string) => {
      expect(existsSync(join(PROJECT_ROOT, path)), path).toBe(true);
      const found = read.get(path) ?? readFileSync(join(PROJECT_ROOT, path), 'utf8');
      read.set(path, found);
      return found;
    };
    for (const { standard, clause, tests, formulas: ids, tables, constants, examples } of clauses) {
      const about = [
        ...ids.flatMap(exportedNamesAbout),
        ...constants.flatMap(exportedNamesAbout),
        ...tables,
        ...examples.map(({ id }) => id),
      ];
      for (const path of tests) {
        const words = new Set(testText(path).match(/[\w-]+/g));
        expect(
          about.some((name) => words.has(name)),
          `${path} for ${standard}, ${clause}`,
        ).toBe(true);
      }
    }
  });

  it('has no clause without a test but those looked at', () => {
    const listed = Object.entries(WITHOUT_TEST).flatMap(([standard, own]) =>
      own.map((clause) => ({ standard, clause })),
    );
    expect(index.withoutTest).toEqual(listed);
    expect(
      clauses.filter(({ tests }) => tests.length === 0).map(({ standard, clause }) => ({ standard, clause })),
    ).toEqual(listed);
  });
});

describe('the clauses of the tables', () => {
  it('stand beside every table, and no other', () => {
    expect(Object.keys(tableClauses())).toEqual(tableNames().sort());
  });

  it('name the sources of the rows, as they are known there', () => {
    for (const [table, places] of Object.entries(tableClauses())) {
      const rows = tableRows(table);
      const readFrom = ({ standard, readIn }: (typeof places)[number]) => readIn ?? standard;
      const sources = [...new Set(rows.map((row) => row['source'] as string))];
      // What reprints a table has a clause of its own beside that of the standard.
      expect([...new Set(places.map(readFrom))].sort(), table).toEqual(sources.sort());
      for (const source of sources) {
        const known = rows
          .filter((row) => row['source'] === source)
          .flatMap((row) =>
            Object.keys(row)
              .filter((head) => head.endsWith('known'))
              .map((head) => row[head]),
          )
          .filter((word) => word !== '');
        const stated = places.filter((place) => readFrom(place) === source).map((place) => place.known);
        expect(weakest(stated), `${table}, ${source}`).toBe(weakest(known as typeof stated));
      }
    }
  });
});
