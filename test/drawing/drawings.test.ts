import { describe, expect, it } from 'vitest';
import { DRAWING_NAMES, DRAWINGS, demandByHeight, groupsOf, ratioCurves, siteGust } from '../../src/drawing/index.ts';
import { displayValue } from '../../src/foundation/index.ts';
import { type Assessment, assess } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import fc from '../fast-check.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { type Drawn, every, textOf, wellFormed } from './well-formed.ts';

function assessed(plan: unknown): Assessment {
  const read = readPlan(plan);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return assess(read.input);
}

const ALLOWED = new Set('svg title desc style rect g path circle text tspan'.split(' '));

/** What holds for any drawing, whatever is drawn. */
function sound(markup: string): Drawn {
  const drawn = wellFormed(markup);
  expect(drawn.name).toBe('svg');
  expect(drawn.attributes['role']).toBe('img');
  for (const each of every(drawn)) {
    expect([...ALLOWED], each.name).toContain(each.name);
    for (const [key, value] of Object.entries(each.attributes)) {
      expect(key).not.toMatch(/^on|href$|^src$|^style$/);
      expect(value, key).not.toMatch(/NaN|Infinity|undefined|\[object|url\(/);
      if (['x', 'y', 'cx', 'cy', 'r', 'width', 'height'].includes(key)) expect(value).toMatch(/^-?\d+(\.\d+)?$/);
      if (key === 'd') expect(value).toMatch(/^[MLHVhvlmqQSCZ\d\s.-]+$/);
    }
  }
  const [title, description] = [every(drawn, 'title')[0], every(drawn, 'desc')[0]];
  expect(title && textOf(title).length).toBeGreaterThan(5);
  expect(description && textOf(description).length).toBeGreaterThan(20);
  for (const text of every(drawn, 'text')) expect(textOf(text)).not.toMatch(/NaN|Infinity|undefined|\[object/);
  expect(markup).not.toMatch(/https?:(?!\/\/www\.w3\.org\/2000\/svg")|@import|<script/i);
  return drawn;
}

/** Where lettering stands, by a mean width of letters. */
function boxesOf(drawn: Drawn) {
  return drawn.children
    .flatMap((child) => (typeof child === 'string' ? [] : every(child, 'text')))
    .map((text) => {
      const size = Number(text.attributes['font-size']);
      const words = textOf(text);
      const wide = words.length * size * 0.5;
      const x = Number(text.attributes['x']);
      const anchor = text.attributes['text-anchor'] ?? 'start';
      const left = anchor === 'end' ? x - wide : anchor === 'middle' ? x - wide / 2 : x;
      return { words, left, right: left + wide, y: Number(text.attributes['y']), size };
    });
}

describe.each(demoPlans().map(({ id, plan }) => [id, plan] as const))('drawings of %s', (_, plan) => {
  const assessment = assessed(plan);

  it.each(DRAWING_NAMES)('%s is sound, and names its plan', (name) => {
    const drawn = sound(DRAWINGS[name](assessment));
    const [title] = every(drawn, 'title');
    expect(title && textOf(title)).toContain(assessment.input.title);
  });

  it.each(DRAWING_NAMES)('%s keeps its lettering on the sheet and apart', (name) => {
    const drawn = sound(DRAWINGS[name](assessment));
    const height = Number(drawn.attributes['height']);
    const boxes = boxesOf(drawn);
    for (const { words, left, right, y, size } of boxes) {
      expect(left, words).toBeGreaterThan(-4);
      expect(right, words).toBeLessThan(444);
      expect(y, words).toBeLessThan(height);
      expect(y - size, words).toBeGreaterThan(0);
      expect(size, words).toBeGreaterThanOrEqual(12.5);
    }
    boxes.forEach((one, index) => {
      for (const other of boxes.slice(index + 1)) {
        const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
        const down = one.size - Math.abs(one.y - other.y);
        if (across > 2) expect(down, `${one.words} | ${other.words}`).toBeLessThan(0.3 * one.size);
      }
    });
  });

  it('is in figures what the answer is', () => {
    const worst = assessment.checks[0]?.result;
    const words = textOf(wellFormed(DRAWINGS.moment(assessment)));
    const ladder = textOf(wellFormed(DRAWINGS.ladder(assessment)));
    const { units } = assessment.input.station;
    for (const { result } of assessment.checks) {
      if (!result?.holdsTo) continue;
      const gust = displayValue(result.holdsTo.gust, 'speed', units);
      expect(ladder).toContain(String(Number(gust.toPrecision(3))));
    }
    if (worst)
      expect(words).toContain(worst.ratio < 1 ? String(Number(worst.ratio.toPrecision(3))) : worst.ratio.toFixed(2));
  });

  it('draws as demand what the answer compares', () => {
    const rows = demandByHeight(assessment);
    const { levels } = assessment.model;
    const own = assessment.ratios.filter(
      ({ comparison }) => comparison.check === 'tower' && comparison.apex === Number.POSITIVE_INFINITY,
    );
    expect(own.length).toBeGreaterThan(0);
    const scenario = own.reduce((most, ratio) => (ratio.unfavourable > most.unfavourable ? ratio : most)).scenario;
    const deciding = own.filter((each) => each.scenario === scenario);
    for (const ratio of deciding) {
      const row = rows[ratio.comparison.level];
      expect(row?.z).toBe(levels[ratio.comparison.level]?.z);
      // Where sections overlap both are compared, and the larger demand is drawn.
      const here = deciding.filter(
        ({ comparison }) => comparison.level === ratio.comparison.level && comparison.of === ratio.comparison.of,
      );
      expect(row?.[ratio.comparison.of]).toBeCloseTo(Math.max(...here.map(({ demand }) => demand)), 6);
    }
  });

  it('has use curves that grow, meet the answer at the site, and 1 where the link holds to', () => {
    const { speed } = assessment.input.site;
    for (const { check, points } of ratioCurves(assessment)) {
      const here = points.find((point) => point.speed === speed);
      expect(here?.ratio).toBeCloseTo(check.result?.ratio ?? Number.NaN, 9);
      const design = check.result?.holdsTo?.design ?? 0;
      if (design > 1.05 * speed) {
        const before = points.filter((point) => point.speed < design);
        expect(before.every(({ ratio }) => ratio < 1)).toBe(true);
        expect(points.filter((point) => point.speed > design).every(({ ratio }) => ratio > 1 - 1e-9)).toBe(true);
      }
    }
  });
});

describe('the elevation', () => {
  /** Heights of upright lines in the drawing of what stands, by stroke width. */
  const lengths = (drawn: Drawn, width: string) =>
    every(drawn, 'path')
      .filter((path) => path.attributes['stroke-width'] === width && path.attributes['class'] === 's-ink')
      .map((path) => {
        const [, x1, y1, x2, y2] =
          /^M(-?[\d.]+) (-?[\d.]+)L(-?[\d.]+) (-?[\d.]+)$/.exec(path.attributes['d'] ?? '') ?? [];
        return x1 !== undefined && x1 === x2 ? Math.abs(Number(y1) - Number(y2)) : 0;
      });

  it('is to scale: a mast of 9 ft on a tower of 48 ft', () => {
    const plan = {
      ...demoPlan('ten-numbers'),
      tower: { support: 'free', top: 48, shape: 'pole', width: 18, sides: 0 },
      mast: { outside: 2, length: 9, inside: 0 },
    };
    const drawn = sound(DRAWINGS.elevation(assessed(plan)));
    const mast = Math.max(...lengths(drawn, '2.4'));
    const tower = every(drawn, 'path')
      .filter((path) => path.attributes['class'] === 's-ink f-paper-deep')
      .flatMap((path) => [...(path.attributes['d'] ?? '').matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)]);
    const xs = tower.map((each) => Number(each[1]));
    const ys = tower.map((each) => Number(each[2]));
    const [wide, tall] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    expect(mast / tall).toBeCloseTo(9 / 48, 3);
    expect(wide / tall).toBeCloseTo(1.5 / 48, 3);
  });

  it('draws the axis to the same scale', () => {
    const drawn = sound(DRAWINGS.elevation(assessed(demoPlan('river-bluff'))));
    const place = (figure: string) =>
      Number(
        every(drawn, 'text').find((text) => textOf(text) === figure && text.attributes['text-anchor'] === 'end')
          ?.attributes['y'],
      );
    const perFoot = (place('0') - place('60')) / 60;
    expect(Math.max(...lengths(drawn, '2.4')) / perFoot).toBeCloseTo(12, 1);
    expect(Math.max(...lengths(drawn, '1.5')) / perFoot).toBeCloseTo(9, 1);
  });

  it('shows it lowered where it can be, and only there', () => {
    const words = (id: string) => textOf(wellFormed(DRAWINGS.elevation(assessed(demoPlan(id)))));
    expect(words('river-bluff')).toContain('Lowered flat over its hinge, 8 ft up; it reaches 57 ft out');
    expect(words('house-bracket')).toContain('its top is at 22 ft, 31 ft lower');
    expect(words('ten-numbers')).not.toContain('Lowered');
  });

  it.each([1, 40, 250])('names every one of %i loads', (count) => {
    const plan = demoPlan('river-bluff');
    const loads = Array.from({ length: count }, (_, index) => ({
      name: `rod number ${index}`,
      height: [10 + (index % 30), 14 + (index % 30)],
      shape: 'tube',
      diameter: 1,
      offset: 0,
    }));
    const drawn = sound(DRAWINGS.elevation(assessed({ ...plan, loads })));
    const words = every(drawn, 'text').map(textOf).join(' ');
    for (let index = 0; index < count; index += 1) expect(words).toMatch(new RegExp(`rod number ${index}\\b`));
  });
});

describe('the rose', () => {
  it('adds the groups as the answer does', () => {
    const assessment = assessed(demoPlan('river-bluff'));
    const { turning, fixed, names } = groupsOf(assessment);
    expect(names).toEqual({
      turning: ['four-element beam'],
      fixed: ['link panel'],
      still: ['vertical', 'mast above the top', 'mast inside the tower', 'three lines'],
    });
    // Boom 24 ft of 2 in, elements of 1, 3/4 and 1/2 in: by hand 4·2·(4·1 + 4·0.75 + 40/12·0.5)/12 ft² against 4 ft².
    const front = (4 * 2 * (4 * 1 + 4 * 0.75 + (40 / 12) * 0.5)) / 12;
    const worst = turning.mean + Math.hypot(turning.cosine, turning.sine);
    expect(displayValue(worst, 'area', 'us') / front).toBeGreaterThan(1.1);
    expect(displayValue(worst, 'area', 'us') / front).toBeLessThan(1.3);
    expect(fixed.mean).toBeGreaterThan(0);
    const words = textOf(wellFormed(DRAWINGS.rose(assessment)));
    expect(words).toContain('from 30° or 210°');
  });
});

describe('the ladder', () => {
  it('has the water where the force of the design wind is: 105 mph strength level by √(0.6·0.85)', () => {
    const gust = siteGust(assessed(demoPlan('river-bluff')));
    expect(displayValue(gust, 'speed', 'us')).toBeCloseTo(105 * Math.sqrt(0.6 * 0.85), 2);
  });

  it('marks an antenna whose wind is its own, and breaks the rung of what is over', () => {
    const plan = demoPlan('river-bluff');
    const loads = (plan['loads'] as object[]).map((load, index) =>
      index === 0 ? { ...load, ratedWind: { speed: 70, basis: 'gust3-nominal' } } : load,
    );
    const assessment = assessed({ ...plan, loads });
    const check = assessment.checks.find(({ id }) => id === 'antenna:four-element beam');
    expect(check?.verdict).toBe('over');
    const drawn = sound(DRAWINGS.ladder(assessment));
    expect(textOf(drawn)).toMatch(/four-element beam 1\.\d+ over/);
    expect(textOf(drawn)).toMatch(/mph, against \d+/);
    expect(every(drawn, 'path').filter((path) => path.attributes['class'] === 's-over').length).toBeGreaterThan(1);
  });
});

describe('hostile names', () => {
  const HOSTILE = [
    '</text><script>alert(1)</script>',
    '"><image href="x" onerror="y"/>',
    "' onload='x",
    '&lt;&amp;&#0;&unknown;',
    ']]><!-- ',
    '\u202Egnp.exe \u0000\u001b[31m \uFFFE',
    'W'.repeat(400),
    'many words '.repeat(60),
    '\ud83d\udce1 アンテナ塔の名前がとても長い場合にも',
    '\ud800 half a pair',
  ];

  it.each(HOSTILE)('%j is text, in every drawing', (name) => {
    const bluff = assessed(demoPlan('river-bluff'));
    const { station } = bluff.input;
    // Past the door on purpose: a drawing must not lean on what the reader of plans lets through.
    const assessment = assess({
      ...bluff.input,
      title: name,
      station: {
        ...station,
        loads: station.loads.map((load, index) => ({
          ...load,
          name: `${name}${index}`,
          ratedWind: { speed: 50, basis: 'gust3-nominal' as const },
        })),
        cables: station.cables.map((run) => ({ ...run, name })),
      },
    });
    for (const drawing of DRAWING_NAMES) {
      const markup = DRAWINGS[drawing](assessment);
      const drawn = sound(markup);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
      expect(markup).not.toMatch(/[\u0000-\u001f\u202a-\u202e\u2066-\u2069]/);
      for (const { right, words } of boxesOf(drawn))
        if (/^[\x20-\x7e]+$/.test(words)) expect(right, words).toBeLessThan(560);
    }
  });

  it('any name is text', () => {
    const ten = assessed(demoPlan('ten-numbers'));
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (title) => {
        sound(DRAWINGS.pressure({ ...ten, input: { ...ten.input, title } }));
      }),
      { numRuns: 60 },
    );
  });
});

describe('plans at the edge', () => {
  const tower = { support: 'free', top: 48, shape: 'lattice', faces: 3, width: 18, members: 'round' };
  const site = { wind: 105, exposure: 'C' };
  const plain = { format: 2, title: 'Bare', units: 'us', method: 'asce7-16', site, tower, cables: [] };
  it.each([
    ['nothing but a tower', plain],
    ['no rating', { ...demoPlan('river-bluff'), ratings: [] }],
    ['no shape', { ...demoPlan('ten-numbers'), tower: { support: 'free', top: 48 } }],
    ['fastest mile', { ...demoPlan('ten-numbers'), method: 'eia222-f', site: { wind: 70, exposure: 'C' } }],
    ['a hill of the county', { ...demoPlan('ten-numbers'), site: { ...site, topographicFactor: 1.4 } }],
    ['a roof', { ...demoPlan('ten-numbers'), tower: { ...tower, support: 'roof', base: 20, top: 45 } }],
    [
      'guys of known radius',
      {
        ...demoPlan('guyed-lattice'),
        tower: {
          ...(demoPlan('guyed-lattice')['tower'] as object),
          supportedAt: [{ height: 65, by: 'guys', count: 3, diameter: 0.25, radius: 40 }],
        },
      },
    ],
    [
      'a tapering lattice, a dish, a pole as load',
      {
        ...demoPlan('light-mast'),
        tower: {
          support: 'free',
          top: 9,
          sections: [
            {
              length: 9,
              shape: 'lattice',
              faces: 3,
              width: [600, 200],
              members: 'round',
              leg: 25,
              brace: 10,
              panel: 400,
              pattern: 'zigzag',
            },
          ],
        },
        loads: [
          { name: 'dish', height: 5, shape: 'dish', diameter: 600, heading: 90, offset: 0 },
          { name: 'drum', height: [3, 4], shape: 'pole', width: 200, offset: 0, sides: 0 },
        ],
      },
    ],
    ['no wish for a margin', { ...demoPlan('river-bluff'), wanted: { margin: 0 } }],
    [
      'a footing',
      {
        ...demoPlan('river-bluff'),
        tower: {
          ...(demoPlan('river-bluff')['tower'] as object),
          foundation: { kind: 'block', length: 5, width: 5, depth: 4, soilBearing: 2000 },
        },
      },
    ],
  ])('%s is drawn', (_, plan) => {
    const assessment = assessed(plan);
    for (const name of DRAWING_NAMES) sound(DRAWINGS[name](assessment));
  });
});

describe('an elevation of a plan that says nothing of lines', () => {
  it('draws those that are taken, so that what is drawn adds up', () => {
    const { cables: _, ...plan } = demoPlan('river-bluff');
    const assessment = assessed(plan);
    const lines = assessment.windLoads.rows.filter(({ kind }) => kind === 'lines');
    expect(lines.map(({ name }) => name)).toEqual(['lines, assumed']);
    expect(DRAWINGS.elevation(assessment)).toContain('lines, assumed');
    expect(DRAWINGS.elevation(assessed({ ...plan, cables: [] }))).not.toContain('lines, assumed');
  });
});
