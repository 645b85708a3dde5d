import { describe, expect, it } from 'vitest';
import {
  creditedPieces,
  LOOSEST_FIT,
  type Mast,
  type MastPiece,
  outsideAlong,
  sharedBending,
  tubesThatFit,
} from '../../src/structure/index.ts';

const steel = (low: number, high: number, outside: number, wall: number, yieldStrength?: number): MastPiece => ({
  low,
  high,
  outside,
  wall,
  material: 'steel',
  ...(yieldStrength === undefined ? {} : { yieldStrength }),
});
const mast = (pieces?: Mast['pieces']): Mast => ({
  outside: 0.05,
  length: 4,
  material: 'steel',
  foot: 10,
  tip: 14,
  shelf: false,
  ...(pieces ? { pieces } : {}),
});

describe('the outside of a mast', () => {
  it('is one from foot to tip, or that of the outermost tube at each height', () => {
    expect(outsideAlong(mast(), 10)).toEqual([{ low: 10, high: 14, outside: 0.05 }]);
    const stepped = mast([
      { outside: 0.06, wall: 0.004, from: 0, to: 2 },
      { outside: 0.05, wall: 0.004, from: 1, to: 3 },
      { outside: 0.05, wall: 0.003, from: 3, to: 4 },
      { outside: 0.03, wall: 0.003, from: 0, to: 4 },
    ]);
    expect(outsideAlong(stepped, 10)).toEqual([
      { low: 10, high: 12, outside: 0.06 },
      { low: 12, high: 14, outside: 0.05 },
    ]);
  });

  it('ends at the tip', () => {
    const [only, ...more] = outsideAlong(mast([{ outside: 0.06, wall: 0.004, from: 0, to: 4.005 }]), 10);
    expect([only, more.length]).toEqual([{ low: 10, high: 14, outside: 0.06 }, 0]);
  });
});

describe('tubes inside each other', () => {
  it('fit where there is no more play than a fit has', () => {
    const outer = { outside: 0.06, wall: 0.004 };
    const inner = (play: number) => ({ outside: 0.052 - play, wall: 0.003 });
    expect(tubesThatFit([outer, inner(LOOSEST_FIT - 1e-6)])).toHaveLength(1);
    expect(tubesThatFit([inner(LOOSEST_FIT + 1e-6), outer])).toEqual([[outer], [inner(LOOSEST_FIT + 1e-6)]]);
    // 60.3 × 5 around 48.3 mm is a fit; 2 in pipe of schedule 40 (bore 52.5) around 1½ in pipe (48.3) is none.
    const small = { outside: 0.0483, wall: 0.0037 };
    expect(tubesThatFit([{ outside: 0.0603, wall: 0.005 }, small])).toHaveLength(1);
    expect(tubesThatFit([{ outside: 0.0603, wall: 0.0039 }, small])).toHaveLength(2);
  });
});

describe('the tubes of a mast that count', () => {
  it('are all of them where they fit', () => {
    const pieces = [steel(0, 4, 0.05, 0.004, 240e6), steel(0, 2, 0.0415, 0.004, 240e6)];
    expect(creditedPieces(pieces)).toBe(pieces);
  });

  it('are the weaker alone, as far as a loose one reaches', () => {
    const through = steel(0, 4, 0.05, 0.005, 240e6);
    const sleeve = steel(1, 2, 0.08, 0.004, 240e6);
    expect(creditedPieces([through, sleeve])).toEqual([
      { ...through, high: 1 },
      { ...through, low: 1, high: 2 },
      { ...through, low: 2 },
    ]);
    // Of 60 MPa the sleeve has 60·S = 60·18,800 mm³ against 240·7,245 mm³.
    const weak = { ...sleeve, yieldStrength: 60e6 };
    expect(creditedPieces([through, weak])[1]).toEqual({ ...weak });
  });

  it('are what fits together within what is loose', () => {
    const inner = [steel(0, 2, 0.05, 0.005, 240e6), steel(0, 2, 0.0395, 0.004, 240e6)];
    const pieces = [...inner, steel(0, 2, 0.1, 0.004, 240e6)];
    expect(creditedPieces(pieces)).toEqual(inner);
    const [together, alone] = [inner, inner.slice(0, 1)].map((tubes) => sharedBending(tubes).allowed?.surely ?? 0);
    expect(together).toBeGreaterThan(alone as number);
  });

  it('hold one of unknown strength, so that nothing is shown there', () => {
    const unknown = steel(0, 4, 0.08, 0.004);
    const [only] = creditedPieces([steel(0, 4, 0.05, 0.005, 240e6), unknown]);
    expect(only).toEqual(unknown);
    expect(sharedBending([only as MastPiece]).allowed).toBeUndefined();
  });
});
