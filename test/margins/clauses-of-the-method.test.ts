import { describe, expect, it } from 'vitest';
import { workingOf } from '../../src/margins/index.ts';
import { SITE_METHODS } from '../../src/methods/index.ts';
import { workingDocument } from '../../src/worksheet/working-document.ts';
import { assessed } from './any-plan.ts';

/** What each method's own document is called in the list of sources. */
const OWN = Object.fromEntries(SITE_METHODS.map((method) => [method, method]));

describe('the clause of a force', () => {
  it.each(SITE_METHODS)('is of the standard that made it: %s', (method) => {
    const ground = method === 'en1991-1-4' ? { terrain: 'II' } : { exposure: 'C' };
    const assessment = assessed({
      format: 2,
      units: 'si',
      method,
      site: { wind: { speed: 30 }, ...ground, riskCategory: 'II' },
      tower: { support: 'free', top: 12, shape: 'pole', width: 120, sides: 0 },
      loads: [{ name: 'box', height: 12, area: 0.5, areaKind: 'effective', offset: 0 }],
      ratings: [
        {
          of: 'tower',
          area: 1,
          areaKind: 'effective',
          wind: { speed: 40, method: 'tia222-g', basis: 'gust3-nominal' },
          top: 12,
        },
      ],
      cables: [],
    });
    const steps = workingDocument(workingOf(assessment).steps, 'si').filter(
      ({ formula }) => formula === 'force-of-slice',
    );
    const rated = steps.filter(({ about }) => about.includes('rated wind on the tower itself'));
    const site = steps.filter((step) => !rated.includes(step));
    expect(site.length).toBeGreaterThan(0);
    expect([...new Set(site.map(({ source }) => source))]).toEqual([OWN[method]]);
    expect([...new Set(rated.map(({ source }) => source))]).toEqual(['tia222-g']);
    // The equation of 7-10 is another one from 7-16 on.
    if (method === 'asce7-16' || method === 'asce7-22') expect(site[0]?.clause).toContain('29.4-1');
    if (method === 'asce7-10') expect(site[0]?.clause).toContain('29.5-1');
  });
});
