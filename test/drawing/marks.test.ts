import { describe, expect, it } from 'vitest';
import { roundStep, scaleOf } from '../../src/drawing/axes.ts';
import { placed } from '../../src/drawing/lane.ts';
import { coordinate, element, escaped } from '../../src/drawing/svg.ts';
import { barbMarks } from '../../src/drawing/wind-barb.ts';
import { widthOf, wrapped } from '../../src/drawing/words.ts';
import { KNOT } from '../../src/foundation/index.ts';
import { figures, ratioFigures } from '../../src/words/index.ts';
import fc from '../fast-check.ts';

describe('a wind barb', () => {
  it.each([
    [0, 0, 0, false],
    [2, 0, 0, false],
    [3, 0, 0, true],
    [12, 0, 1, false],
    [25, 0, 2, true],
    [48, 1, 0, false],
    [65, 1, 1, true],
    [97, 1, 4, true],
    [105, 2, 0, true],
  ])('of %d kn has %d pennants, %d feathers, a half one: %s', (knots, pennants, feathers, half) => {
    expect(barbMarks(knots * KNOT)).toEqual({ pennants, feathers, half });
  });
});

describe('labels in a lane', () => {
  it('stay where they belong when nothing crowds them', () => {
    const wishes = [10, 50, 90].map((anchor) => ({ anchor, height: 15 }));
    expect(placed(wishes, 0, 200)).toEqual([10, 50, 90]);
  });

  it('share the way when two want one place', () => {
    const wishes = [50, 50].map((anchor) => ({ anchor, height: 20 }));
    expect(placed(wishes, 0, 200)).toEqual([40, 60]);
  });

  it('keep their order, never overlap and stay inside, whatever their wishes', () => {
    const wish = fc.record({
      anchor: fc.double({ min: -50, max: 650, noNaN: true }),
      height: fc.integer({ min: 10, max: 40 }),
    });
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 14 }), (any) => {
        const wishes = [...any].sort((one, other) => one.anchor - other.anchor);
        const middles = placed(wishes, 0, 600);
        middles.forEach((middle, index) => {
          const { height } = wishes[index] as (typeof wishes)[number];
          expect(middle - height / 2).toBeGreaterThanOrEqual(-1e-6);
          expect(middle + height / 2).toBeLessThanOrEqual(600 + 1e-6);
          const before = middles[index - 1];
          if (before === undefined) return;
          const apart = (height + (wishes[index - 1]?.height ?? 0)) / 2;
          expect(middle - before).toBeGreaterThanOrEqual(apart - 1e-6);
        });
      }),
    );
  });
});

describe('axes', () => {
  it('have round ticks', () => {
    expect([0.7, 1, 1.1, 2.4, 5.1, 37, 110].map(roundStep)).toEqual([1, 1, 2, 5, 10, 50, 200]);
    const { ticks, at } = scaleOf([0, 65], [500, 60], 34);
    expect(ticks).toEqual([0, 10, 20, 30, 40, 50, 60]);
    expect(at(0)).toBe(500);
    expect(at(65)).toBe(60);
    expect(at(32.5)).toBe(280);
  });
});

describe('markup', () => {
  it('escapes text and attributes', () => {
    expect(escaped(`<a b="c" d='e'>&\u0007\u202e`)).toBe('&lt;a b=&quot;c&quot; d=&#39;e&#39;&gt;&amp;  ');
    expect(element('g', { id: '"<' }, '<').markup).toBe('<g id="&quot;&lt;">&lt;</g>');
  });

  it('holds no place that is no number', () => {
    expect(() => coordinate(Number.NaN)).toThrow('NaN');
    expect(() => element('rect', { x: Number.POSITIVE_INFINITY })).toThrow('Infinity');
    expect(coordinate(-0.001)).toBe('0');
    expect(coordinate(1234.567)).toBe('1234.57');
  });
});

describe('words', () => {
  it('are figures as people write them', () => {
    expect([0.4902, 18.249, 110.4, 1234.5, 0.00256, -3.2759, 0].map((value) => figures(value))).toEqual(
      '0.49 18.2 110 1,235 0.00256 −3.28 0'.split(' '),
    );
    const ratios = [0.8946, 0.9996, 0.99997, 1, 1.0003, 1.004, 1.537, Number.POSITIVE_INFINITY];
    expect(ratios.map(ratioFigures)).toEqual('0.895 0.9996 0.99997 1.00 1.0003 1.004 1.54 open'.split(' '));
  });

  it('are wrapped within their width, and lose nothing unless told how many lines there are', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 120 }), fc.integer({ min: 60, max: 300 }), (text, width) => {
        const lines = wrapped(text, width);
        expect(lines.join('').replaceAll(/\s/gu, '')).toBe(text.replaceAll(/\s/gu, ''));
        for (const line of lines) if ([...line].length > 1) expect(widthOf(line)).toBeLessThanOrEqual(width + 1e-9);
        expect(wrapped(text, width, 2).length).toBeLessThanOrEqual(2);
      }),
    );
    expect(wrapped('one two three four', 60, 1)[0]).toMatch(/…$/);
  });
});
