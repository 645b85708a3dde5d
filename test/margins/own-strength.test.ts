import { describe, expect, it } from 'vitest';
import { INCH, POUND_FORCE } from '../../src/foundation/index.ts';
import { workingOf } from '../../src/margins/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { inquiriesDocument } from '../../src/worksheet/inquiries-document.ts';
import fc from '../fast-check.ts';
import { assessed, type Document } from './any-plan.ts';
import { latticeOfRods, poleOfEightSides, weldedTube } from './own-strength-stations.ts';

const ownOf = (plan: Document) => assessed(plan).checks.find(({ kind }) => kind === 'own-strength');
const towerOf = (plan: Document) => assessed(plan).parts.find(({ kind }) => kind === 'tower');
const ratioOf = (plan: Document) => ownOf(plan)?.result?.ratio as number;
const rated = (area: number, speed = 120): Document => ({
  ratings: [{ of: 'tower', area, areaKind: 'effective', wind: { speed, method: 'tia222-h', exposure: 'C' }, top: 40 }],
});
const POUND_FEET = POUND_FORCE * 12 * INCH;

/*
 * Worked by hand beforehand from the standards alone: TIA-222-H wind in thin slices, exposure C, 110 mph; lattices 0.85 · 0.85, the
 * visible members of a face; poles 0.95 · 1.10. Columns by AISC 360 E3, shares 0.6 · 0.9 · 1.67 of TIA-222-H, the weight of all of it
 * above its foot, aloft and 0.32 of its own where it leans.
 */
describe('towers that tell all of their members', () => {
  it('of rods take in legs and braces what statics and columns give', () => {
    // 255.98 lbf and 6344.2 lbf·ft at the foot. Brace 229.08 of 822.56 lbf, K·L/r 179.9.
    const thin = ownOf(latticeOfRods());
    expect(thin?.result?.of).toBe('brace');
    expect((thin?.result?.demand ?? 0) / POUND_FORCE / 229.084).toBeCloseTo(1, 2.3);
    expect((thin?.result?.capacity ?? 0) / POUND_FORCE / 822.557).toBeCloseTo(1, 2.3);
    expect(thin?.verdict).toBe('within');
    // Braces of 0.75 in: the leg decides, 5877.6 of 21,131 lbf.
    const thick = ownOf(latticeOfRods({ brace: 0.75, braceWall: 0.375 }, {}, { weight: 800 }));
    expect(thick?.result?.of).toBe('leg');
    expect((thick?.result?.demand ?? 0) / POUND_FORCE / 5877.57).toBeCloseTo(1, 2.3);
    expect((thick?.result?.capacity ?? 0) / POUND_FORCE / 21_131.45).toBeCloseTo(1, 2.3);
  });

  it('of eight flat sides take the moment that their flats leave', () => {
    // Flats of 41.1 walls: 57.4 of 65 ksi. 32,178.9 of 33,525.6 lbf·ft.
    const { demand = 0, capacity = 0, height } = ownOf(poleOfEightSides())?.result ?? {};
    expect(demand / POUND_FEET / 32_178.9).toBeCloseTo(1, 2.3);
    expect(capacity / POUND_FEET / 33_525.6).toBeCloseTo(1, 2.3);
    expect(height).toBe(0);
    expect(towerOf(poleOfEightSides())?.verdict).toBe('low-margin');
  });

  it('of welded aluminium take what the metal at the weld bears', () => {
    // 15/1.67 against 24/1.95 ksi; 3522.4 of 4076.3 lbf·ft.
    const { demand = 0, capacity = 0 } = ownOf(weldedTube())?.result ?? {};
    expect(demand / POUND_FEET / 3522.42).toBeCloseTo(1, 2.3);
    expect(capacity / POUND_FEET / 4076.3).toBeCloseTo(1, 2.3);
    expect(towerOf(weldedTube())?.verdict).toBe('within');
  });
});

describe('a lattice by its own members', () => {
  it('stays open for its joints without a rating, and is over where its members are', () => {
    expect(towerOf(latticeOfRods())?.checks.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['tower', 'open'],
      ['own-strength', 'within'],
    ]);
    expect(answerText(assessed(latticeOfRods()), [])).toContain('Its members take this wind by their measures.');
    expect(towerOf(latticeOfRods({ brace: 0.2, braceWall: 0.1 }))?.verdict).toBe('over');
    expect(answerText(assessed(latticeOfRods({ brace: 0.2, braceWall: 0.1 })), [])).toContain('compression of a brace');
  });

  it('is a witness beside a rating, and a contradiction where both its ends are over', () => {
    const verdicts = (plan: Document) => towerOf(plan)?.checks.map(({ id, verdict }) => [id, verdict]);
    expect(verdicts(latticeOfRods({}, rated(10)))).toEqual([
      ['tower', 'within'],
      ['own-strength', 'within'],
    ]);
    const weak = latticeOfRods({ brace: 0.2, braceWall: 0.1 }, rated(10));
    expect(towerOf(weak)?.verdict).toBe('open');
    expect(ownOf(weak)?.because).toBe('contradicts-rating');
    expect(towerOf(latticeOfRods({}, rated(0.1, 90)))?.verdict).toBe('over');
  });

  it('counts what nobody tells at its worst, and asks for what decides most first', () => {
    const heavy = { loads: [{ ...(latticeOfRods()['loads'] as Document[])[0], area: 30 }] };
    const silent = (more: Document) => latticeOfRods({ brace: 0.75, braceWall: 0.375, ...more }, heavy);
    const untold = ownOf(silent({ yield: undefined, legFree: undefined }));
    expect(untold).toMatchObject({ verdict: 'open', because: 'not-given' });
    // A leg free over two panels loses more than the weakest of plausible steels.
    expect(untold?.needs).toEqual(['/tower/sections/0/legFree', '/tower/sections/0/yield']);
    expect(untold?.result?.ratioRange[1]).toBeCloseTo(ratioOf(silent({ yield: '207 MPa', legFree: 30 })), 9);
    expect(ratioOf(silent({ legFree: 15 }))).toBeLessThan(ratioOf(silent({ legFree: 30 })));
    const text = answerText(assessed(silent({ yield: undefined, legFree: undefined })), []);
    expect(text).toContain('Longest stretch of a leg that no brace holds is not given');
    const told = inquiriesDocument(assessed(silent({ yield: undefined, legFree: undefined })));
    const [leg, grade] = ['Longest stretch of a leg', 'Yield strength of the tower'].map((words) =>
      told?.measure.findIndex((each) => each.startsWith(words)),
    );
    expect(leg).toBeGreaterThan(0);
    expect(grade).toBeGreaterThan(leg as number);
  });

  it('waits for what its members hang on, where no rating speaks', () => {
    expect(ownOf(latticeOfRods({ braceWall: undefined }))).toMatchObject({
      verdict: 'open',
      because: 'missing',
      needs: ['/tower/sections/0/braceWall'],
    });
    expect(ownOf(latticeOfRods({ braceWall: undefined }, rated(10)))).toBeUndefined();
    expect(ownOf(latticeOfRods({ pattern: undefined }))?.needs).toEqual(['/tower/sections/0/pattern']);
    expect(ownOf(latticeOfRods({ pattern: 'rungs', legFree: undefined }))?.because).toBe('not-computed');
    // A wall that may buckle first.
    expect(ownOf(latticeOfRods({ leg: 2, legWall: 0.01 }))?.because).toBe('not-computed');
  });

  it('leaves room for what brings its ratio to the margin', () => {
    for (const plan of [weldedTube, poleOfEightSides].map((each) => each({}, { wanted: { margin: 0 } }))) {
      const [room] = assessed(plan).roomLeft;
      expect(room?.looked).toContain('own-strength');
      const tower = plan['tower'] as Document;
      const more = {
        name: 'more',
        height: tower['top'],
        on: 'tower',
        area: `${room?.area} m^2`,
        areaKind: 'effective',
      };
      const laden = { ...plan, loads: [...(plan['loads'] as Document[]), { ...more, offset: 0, weight: 0.001 }] };
      expect(room?.area).toBeGreaterThan(0);
      expect(ratioOf(laden)).toBeCloseTo(1, 3);
    }
    // Beside a rating the lesser of both counts.
    const both = assessed(latticeOfRods({ brace: 0.4, braceWall: 0.2 }, rated(40, 150))).roomLeft[0];
    expect(both?.check).toBe('own-strength');
    expect(assessed(latticeOfRods({}, rated(6))).roomLeft[0]?.check).toBe('tower');
  });

  it('of sections that slide takes the moment they hand over as well', () => {
    const shape = (latticeOfRods()['tower'] as { sections: Document[] }).sections[0] as Document;
    const cranked = (lowest: number, more: Document = {}) =>
      latticeOfRods(
        {},
        {},
        {
          sections: [
            { ...shape, length: lowest },
            { ...shape, length: 22, width: 15, ...more },
          ],
          telescopes: true,
          top: 40,
          nested: 24,
        },
      );
    // By hand: 156.84 lbf and 2095.3 lbf·ft at the rim, which an overlap of 2 ft hands over; 1083.4 lbf in a brace of the outer section.
    const plan = cranked(20);
    const own = ownOf(plan);
    expect(own?.result?.of).toBe('brace');
    expect((own?.result?.demand ?? 0) / POUND_FORCE / 1083.44).toBeCloseTo(1, 2.3);
    expect(own?.result?.ratio).toBeCloseTo(1.317, 2);
    expect(own?.result?.height).toBeCloseTo(20 * 12 * INCH, 6);
    const steps = workingOf(assessed(plan)).steps.filter(({ about }) => about.includes('own strength'));
    expect(steps.map(({ formula }) => formula.id)).toContain('force-in-overlap');
    expect(steps.at(-1)?.value).toBeCloseTo(ratioOf(plan), 9);
    // A longer overlap hands it over more gently.
    expect(ratioOf(cranked(22))).toBeLessThan(ratioOf(plan));
    expect(towerOf(plan)?.checks[0]?.verdict).toBe('open');
  });

  it('of crossed braces hangs on how they are joined', () => {
    const crossed = ownOf(latticeOfRods({ pattern: 'cross', brace: 0.3, braceWall: 0.15 }));
    expect(crossed).toMatchObject({ verdict: 'open', because: 'brace-ends', needs: [] });
    const text = answerText(assessed(latticeOfRods({ pattern: 'cross', brace: 0.3, braceWall: 0.15 })), []);
    expect(text).toContain('It depends on how its braces are joined at ends and crossings');
  });

  it('of angles is pressed off its middle', () => {
    const angles = { members: 'flat', leg: 2, brace: 1.25, legWall: 0.25, braceWall: 0.125 };
    const check = ownOf(latticeOfRods(angles));
    expect(check?.verdict).toBe('within');
    expect(check?.result?.ratio).toBeGreaterThan(0);
  });

  it('is written down step by step', () => {
    for (const section of [
      {},
      { brace: 0.75, braceWall: 0.375 },
      { pattern: 'cross', brace: 0.35, braceWall: 0.175 },
    ]) {
      const answer = assessed(latticeOfRods(section));
      const steps = workingOf(answer).steps.filter(({ about }) => about.includes('own strength'));
      expect(steps.at(-1)?.value).toBeCloseTo(ratioOf(latticeOfRods(section)), 9);
    }
  });

  it('holds to the wind that brings its ratio to 1', () => {
    const design = ownOf(latticeOfRods())?.result?.holdsTo?.design ?? 0;
    const site = latticeOfRods()['site'] as Document;
    const there = latticeOfRods({}, { site: { ...site, wind: { speed: `${design} m/s`, basis: 'gust3-strength' } } });
    expect(ratioOf(there)).toBeCloseTo(1, 3);
  });
});

describe('laws of its own strength', () => {
  const section = fc.record({
    faces: fc.constantFrom(3, 4),
    width: fc.constantFrom(14, 18, [24, 14]),
    leg: fc.constantFrom(1, 1.25, 1.5),
    brace: fc.constantFrom(0.375, 0.5, 0.75),
    panel: fc.integer({ min: 10, max: 24 }),
    pattern: fc.constantFrom('zigzag', 'cross'),
    share: fc.constantFrom(0.1, 0.2, 0.5),
    metal: fc.constantFrom('steel', 'aluminium'),
  });
  const plan = fc.tuple(section, fc.integer({ min: 1, max: 20 }));
  const written = ([{ share, metal, ...rest }, area]: readonly [Document, number], more: Document = {}): Document => {
    const [leg, brace] = [Number(rest['leg']), Number(rest['brace'])];
    const loads = [{ ...(latticeOfRods()['loads'] as Document[])[0], area }];
    const walls = { legWall: leg * Number(share), braceWall: brace * Number(share), material: metal };
    const uniform = Array.isArray(rest['width']) ? undefined : true;
    return latticeOfRods({ ...rest, ...walls, uniform, yield: undefined, legFree: undefined, ...more }, { loads });
  };
  const runs = { numRuns: Number(process.env['RANDOM_RUNS'] ?? 30) };

  it('silence about its metal never helps', () => {
    fc.assert(
      fc.property(plan, ([shape, area]) => {
        const silent = ratioOf(written([shape, area]));
        const grades = shape.metal === 'steel' ? ['207 MPa', '250 MPa', '345 MPa'] : ['55 MPa', '103 MPa', '240 MPa'];
        const free = [shape.panel, ...(shape.pattern === 'zigzag' ? [1.5 * shape.panel, 2 * shape.panel] : [])];
        for (const grade of grades)
          for (const legFree of free) {
            const told = written([shape, area], { yield: grade, legFree });
            expect(silent).toBeGreaterThanOrEqual(ratioOf(told) * (1 - 1e-9));
          }
      }),
      runs,
    );
  });

  it('more area never helps, nor does less metal at the same outside', () => {
    fc.assert(
      fc.property(plan, ([shape, area]) => {
        const here = ratioOf(written([shape, area]));
        expect(ratioOf(written([shape, area + 1]))).toBeGreaterThan(here);
        // Its own weight, lighter by as much, is a small part of what its legs take.
        const thin = ratioOf(written([{ ...shape, share: shape.share * 0.9 }, area]));
        expect(thin).toBeGreaterThan(here * 0.999);
      }),
      runs,
    );
  });
});
