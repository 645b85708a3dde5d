import { describe, expect, it } from 'vitest';
import { FOOT, POUND, POUND_FORCE } from '../../src/foundation/index.ts';
import { iceLumps, iceMassAbove } from '../../src/structure/index.ts';
import { assessed, type Document } from '../margins/any-plan.ts';
import { demoPlan } from '../margins/demo-plan.ts';

describe('the wind on guys', () => {
  const plan = demoPlan('guyed-lattice');
  const held = (count: number): Document[] => [
    { height: 33, by: 'guys', count, diameter: 0.1875, radius: 50 },
    { height: 65, by: 'guys' },
  ];
  const withGuys = (count: number) =>
    assessed({ ...plan, tower: { ...(plan['tower'] as Document), supportedAt: held(count) } });

  it('is that of their upper halves, as far as they cross it, by pencil', () => {
    // l = √(33² + 50²) = 59.908 ft; three evenly spread cross it by 1 − (50/59.908)²/2 = 0.65172: 3·0.65172·0.1875/12·59.908/2
    // = 0.91506 ft² of shadow, × 1.2; q at 33 ft: 0.00256·2.41(33/2460)^(2/9.8)·0.96795·108².
    const row = withGuys(3).windLoads.rows.find(({ kind }) => kind === 'guys');
    const q = 0.00256 * 2.41 * (32.967 / 2460) ** (2 / 9.8) * Math.exp(-0.0000362 * 900) * 108 ** 2;
    expect((row?.frontArea ?? 0) / FOOT ** 2).toBeCloseTo(0.91506, 4);
    expect((row?.force ?? 0) / POUND_FORCE).toBeCloseTo(0.6 * 0.85 * q * 0.85 * 1.2 * 0.91506, 2);
  });

  it('counts two in full, for they may both stand across it', () => {
    const row = withGuys(2).windLoads.rows.find(({ kind }) => kind === 'guys');
    expect((row?.frontArea ?? 0) / FOOT ** 2).toBeCloseTo((2 * (0.1875 / 12) * 59.908) / 2, 4);
  });

  it('changes nothing that is compared above the highest of them', () => {
    const [before] = assessed(plan).checks;
    const [after] = withGuys(3).checks;
    expect(after?.result?.ratio).toBeCloseTo(before?.result?.ratio ?? 0, 9);
    expect(assessed(plan).windLoads.rows.some(({ kind }) => kind === 'guys')).toBe(false);
  });

  it('weigh on the tower with half of their ice, by pencil', () => {
    // 3 · 59.908/2 ft of 3/16 in with 1/2 in of ice: 56 lb/ft³ · π · 0.5 · (0.1875 + 0.5)/144 a foot.
    const { station } = withGuys(3).model.input;
    const bare = { ...station, tower: { ...station.tower, held: [] } };
    const at = station.tower.held.map(({ height }) => ({ z: height - 0.01, zone: 'plain' }) as const);
    const iced = iceMassAbove(
      iceLumps(station, () => (0.5 * FOOT) / 12),
      at,
    );
    const without = iceMassAbove(
      iceLumps(bare, () => (0.5 * FOOT) / 12),
      at,
    );
    const pounds = (((3 * 59.908) / 2) * 56 * Math.PI * 0.5 * 0.6875) / 144;
    expect(((iced[0] as number) - (without[0] as number)) / POUND).toBeCloseTo(pounds, 3);
    expect((iced[1] as number) - (without[1] as number)).toBe(0);
  });
});
