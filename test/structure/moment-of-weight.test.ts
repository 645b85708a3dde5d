import { describe, expect, it } from 'vitest';
import { momentOfWeight, type Section, type SectionShape } from '../../src/structure/index.ts';

const section = (shape: SectionShape): Section => ({ name: '', at: '', low: 0, high: 3, uniform: false, shape });
const members = { by: 'members', leg: 0.03, brace: 0.01, panel: 0.4, pattern: 'zigzag' } as const;
const lattice = (faces: 3 | 4, solid: Extract<SectionShape, { kind: 'lattice' }>['solid']) =>
  section({ kind: 'lattice', faces, members: 'round', width: [0.6, 0.45], solid });

describe('the moment that fills the legs as a weight above does', () => {
  // By hand: leg force W/3 = M/(0.866·b), so M = 0.289·W·b; W/4 = M/(2·0.707·b), so 0.354·W·b, rounded up to 0.36;
  // b from axis to axis: half-way up (0.6 + 0.45)/2 − 0.03 = 0.495 m.
  it.each([
    [3, 0, 0.29 * 1000 * 0.57],
    [3, 1.5, 0.29 * 1000 * 0.495],
    [4, 1.5, 0.36 * 1000 * 0.495],
  ] as const)('of %s legs at %s m', (faces, z, expected) => {
    expect(momentOfWeight(lattice(faces, members), 1000, z)).toBeCloseTo(expected, 9);
  });

  it('takes the outside width where the legs are not told', () => {
    expect(momentOfWeight(lattice(3, { by: 'solidity', solidity: 0.2 }), 1000, 3)).toBeCloseTo(0.29 * 1000 * 0.45, 9);
  });

  it('takes the diameter of a pole there', () => {
    const pole = section({ kind: 'pole', sides: 0, width: [0.2, 0.1] });
    expect(momentOfWeight(pole, 1000, 1.5)).toBeCloseTo(0.25 * 1000 * 0.15, 9);
  });
});
