import { describe, expect, it } from 'vitest';
import { type LatticeShape, solidityOf } from '../../src/areas/index.ts';
import { METHOD_BY_ID, type Method } from '../../src/methods/index.ts';
import { convertSpeed, SPEED_BASES } from '../../src/wind/index.ts';
import { jumpsOf } from './jump-finder.ts';
import { type FoundJump, foundJumps, sweepsOf } from './method-sweeps.ts';
import { isNamed, NAMED_JUMPS, type NamedJump } from './named-jumps.ts';

const said = ({ quantity, held, at, from, to }: FoundJump) => `${quantity}, ${held}: at ${at} from ${from} to ${to}`;
const namedOf = (method: Method) => NAMED_JUMPS.filter(({ methods }) => methods.includes(method.id));
const unnamed = (found: readonly FoundJump[], named: readonly NamedJump[]) =>
  found.filter((jump) => named.filter((each) => isNamed(jump, each)).length !== 1).map(said);

describe.each(Object.values(METHOD_BY_ID).map((method) => [method.title, method] as const))('%s', (_, method) => {
  it('jumps where its standard does and nowhere else', () => {
    const found = foundJumps(method);
    const named = namedOf(method);
    expect(unnamed(found, named)).toEqual([]);
    const missing = named.filter((each) => !found.some((jump) => isNamed(jump, each)));
    expect(missing.map(({ quantity, held, why }) => `${quantity}, ${held.source}: ${why}`)).toEqual([]);
  });

  it('gives, swept, what changes at all', () => {
    const moved = new Set(
      sweepsOf(method)
        .filter(({ value, low, high }) => value(low) !== value((low + high) / 3))
        .map(({ quantity }) => quantity),
    );
    // The least that every method has: the wind grows with the speed, a lattice's area counts by its members.
    expect([...moved]).toEqual(
      expect.arrayContaining(['pressure by speed', 'coefficient of a lattice by round share', 'actual gust by speed']),
    );
  });
});

describe('other rules that every method shares', () => {
  it('turn speeds from one basis into another without a jump', () => {
    for (const from of SPEED_BASES) {
      for (const to of SPEED_BASES) {
        for (const role of ['site', 'rating'] as const) {
          // From just over the 3-second gust of 10.5 mph, which has no fastest mile.
          const found = jumpsOf((speed) => convertSpeed(speed, from, to, role), { low: 6.1, high: 150 });
          expect(found, `${from} to ${to}`).toEqual([]);
        }
      }
    }
  });

  it('give the solid share of a lattice without a jump', () => {
    const members = { leg: 0.03, brace: 0.012, panel: 0.4, pattern: 'zigzag' };
    for (const pattern of ['zigzag', 'cross', 'rungs'] as const) {
      const solidity = (
        changed: Partial<typeof members & { leg: number; brace: number; panel: number }>,
        width = 0.5,
      ) => {
        const solid = { by: 'members', ...members, ...changed, pattern } as const;
        const shape: LatticeShape = { kind: 'lattice', faces: 3, width: [width, width], members: 'round', solid };
        return solidityOf(shape, width, 3, 0.2);
      };
      expect(jumpsOf((leg) => solidity({ leg }), { low: 0.001, high: 0.2 })).toEqual([]);
      expect(jumpsOf((brace) => solidity({ brace }), { low: 0.001, high: 0.1 })).toEqual([]);
      expect(jumpsOf((panel) => solidity({ panel }), { low: 0.05, high: 3 })).toEqual([]);
      expect(jumpsOf((width) => solidity({}, width), { low: 0.1, high: 4 })).toEqual([]);
    }
  });
});

describe('the finder of jumps', () => {
  const unit = { low: 0, high: 1 };

  it('sees a small jump on a steep slope, up or down', () => {
    for (const by of [1e-5, -1e-5]) {
      const found = jumpsOf((x) => 1 + x + (x > 0.4321 ? by : 0), unit);
      expect(found).toHaveLength(1);
      expect(found[0]?.at).toBeCloseTo(0.4321, 10);
      expect((found[0]?.to ?? 0) - (found[0]?.from ?? 0)).toBeCloseTo(by, 9);
    }
  });

  it('sees two jumps a thousandth of a step apart, and one at a first point', () => {
    const close = (x: number) => (x > 0.3 ? 1 : 0) + (x > 0.300004 ? 1 : 0);
    expect(jumpsOf(close, unit)).toHaveLength(2);
    expect(jumpsOf((x) => (x < 0.5 ? 1 : 2), { low: 0, high: 1 })).toHaveLength(1);
    expect(jumpsOf((x) => (x < 10 ? 1 : 2), { low: 0.1, high: 1000, byRatio: true })).toHaveLength(1);
  });

  it('takes bends and steep places for what they are', () => {
    expect(jumpsOf((x) => Math.abs(x - 0.3), unit)).toEqual([]);
    expect(jumpsOf((x) => Math.min(1, Math.max(0, 1e4 * (x - 0.5))), unit)).toEqual([]);
    expect(jumpsOf((x) => Math.atan(1e4 * (x - 0.7)), unit)).toEqual([]);
    expect(jumpsOf((x) => x ** 0.75, unit)).toEqual([]);
  });

  it('does not take what is no number', () => {
    expect(() => jumpsOf((x) => (x > 0.5 ? Number.NaN : 1), unit)).toThrow('no number');
  });
});

describe('the list of named jumps', () => {
  const method = METHOD_BY_ID['eia222-f'];
  const planted = (factor: (z: number) => number): Method => ({
    ...method,
    wind: (conditions) => {
      const wind = method.wind(conditions);
      return { ...wind, pressure: (z) => factor(z) * wind.pressure(z) };
    },
  });

  it('does not hold a jump that someone plants', () => {
    const found = foundJumps(
      planted((z) => (z > 40 ? 1.00001 : 1)),
      'pressure by height',
    );
    expect(unnamed(found, namedOf(method))).toEqual(
      expect.arrayContaining([expect.stringMatching(/^pressure by height, exposure B: at 40(\.0|$)|at 39\.9999/)]),
    );
    expect(
      unnamed(
        foundJumps(
          planted(() => 1),
          'pressure by height',
        ),
        namedOf(method),
      ),
    ).toEqual([]);
  });

  it('does not take a jump of another size or place for the named one', () => {
    const [jump] = foundJumps(method, 'coefficient of a pole by flow');
    const found = jump as FoundJump;
    expect(unnamed([found], namedOf(method))).toEqual([]);
    expect(unnamed([{ ...found, to: found.to + 1e-4 }], namedOf(method))).toHaveLength(1);
    expect(unnamed([{ ...found, at: found.at * 1.0001 }], namedOf(method))).toHaveLength(1);
  });
});
