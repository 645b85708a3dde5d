import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { answerText } from '../../src/worksheet/index.ts';

type Document = Record<string, unknown>;

const CRANK_UPS = JSON.parse(
  readFileSync(new URL('../margins/ordinary-owners/crank-up.json', import.meta.url), 'utf8'),
) as { name: string; typed: Document }[];
const typed = CRANK_UPS.find(({ name }) => name === 'crank-up-f')?.typed as Document;
const [rating] = typed['ratings'] as [Document];
const [load] = typed['loads'] as [Document];
const tower = typed['tower'] as Document;

/** What the owner reads: every fault, or the whole answer. */
function readByOwner(plan: unknown): string {
  const reading = readPlan(plan);
  if (!reading.ok) return reading.faults.map(({ says }) => says).join('\n');
  return answerText(assess(reading.input), reading.entryWarnings);
}

const WRONG: readonly (readonly [string, Document, RegExp])[] = [
  [
    'an area without a speed',
    { ratings: [{ of: 'tower', area: 18, top: 55 }] },
    /states no wind speed\. An area without/,
  ],
  [
    'area and speed swapped',
    { ratings: [{ ...rating, area: 70, wind: { speed: 18, method: 'eia222-f' } }] },
    /rated wind of 18 mph is slower than data sheets state\. Check its unit, and that area and speed/,
  ],
  ['metres a second typed as miles an hour', { site: { wind: 25, exposure: 'B' } }, /25 mph is low for its type/],
  ['feet and miles typed into si', { units: 'si' }, /18 m² is more than small towers are rated for\. Check its unit/],
  ['two loads of one name', { loads: [load, load] }, /Loads 1 and 2 are both called "beam"/],
  ['a load without an area', { loads: [{ name: 'beam', above: 1 }] }, /beam has no area: give "area"/],
  ['no wind', { site: { wind: 0, exposure: 'B' } }, /Site wind: 0 mph given, more than 0 mph allowed/],
  [
    'a 300 ft tower',
    { tower: { ...tower, top: 300 }, ratings: [{ ...rating, top: 300 }] },
    /Open: the tower is at 1\.\d+ of its rated capacity at worst/,
  ],
  [
    'a rating for the nested tower',
    { ratings: [{ ...rating, top: 22 }] },
    /rating is for a top at 22 ft; this one is at 55/,
  ],
  ['a nested height above the top', { tower: { ...tower, nested: 60 } }, /nested at 60 ft is not between/],
  [
    'a load below the top, off the axis, without its weight',
    { loads: [{ ...load, above: -1 }] },
    /Weight of beam not given; use a scale or the data sheet/,
  ],
];

describe('what is typed wrong', () => {
  it.each(WRONG)('%s is answered in words', (_, change, words) => {
    expect(readByOwner(typed)).not.toMatch(words);
    expect(readByOwner({ ...typed, ...change })).toMatch(words);
  });

  it.each(['x'.repeat(200), 'هوائي التلفزيون'])('a name such as %s is kept whole', (name) => {
    expect(readByOwner({ ...typed, loads: [{ ...load, name }] })).toContain(`${name}, mast and footing.`);
  });

  it('a name of 201 letters is a fault that says how long it may be', () => {
    expect(readByOwner({ ...typed, loads: [{ ...load, name: 'x'.repeat(201) }] })).toContain('200');
  });
});
