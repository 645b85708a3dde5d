import { describe, expect, it } from 'vitest';
import { INCH } from '../../src/foundation/index.ts';
import {
  bracePush,
  forceInOverlap,
  legPush,
  momentAtTail,
  momentOfLeaning,
  ownWeightOfLattice,
  type Panel,
  useOfMember,
} from '../../src/structure/lattice-strength.ts';
import { allowedPush, columnStress, type Member, memberSection } from '../../src/structure/member-strength.ts';
import { forcesInTruss, type TrussTower } from './space-truss.ts';

const KSI = 6.894757e6;

describe('columns', () => {
  it('of steel carry what the design examples of their standard print', () => {
    // Pipe 10 Std, F_y 35 ksi, 30 ft: printed F_cr 21.4 ksi, 147 kip allowed; A 11.5, r 3.68 in.
    const slenderness = 360 / 3.68;
    const stress = columnStress('steel', 35 * KSI, slenderness) / KSI;
    expect(stress).toBeCloseTo(21.45, 1);
    expect((stress * 11.5) / 1.67 / 147).toBeCloseTo(1, 2);
    // Table 4-22, F_cr/1.67 at 80.
    for (const [grade, printed] of [
      [35, 15.1],
      [42, 16.98],
      [50, 18.75],
    ] as const)
      expect(columnStress('steel', grade * KSI, 80) / KSI / 1.67).toBeCloseTo(printed, 1);
    // Over 150 the grade hardly matters.
    expect(columnStress('steel', 50 * KSI, 150) / KSI / 1.67).toBeCloseTo(6.68, 1);
    expect(columnStress('steel', 35 * KSI, 150) / KSI / 1.67).toBeCloseTo(6.68, 1);
  });

  it('of aluminium carry what the line of their temper gives', () => {
    expect(columnStress('aluminium', 35 * KSI, 80) / KSI).toBeCloseTo(13.2, 0);
    // 39.4 − 0.246 · 20, at 0.85; of soft tempers the line starts higher.
    expect(columnStress('aluminium', 35 * KSI, 20) / KSI / (0.85 * (39.4 - 0.246 * 20))).toBeCloseTo(1, 2);
    expect(columnStress('aluminium', 15 * KSI, 40) / KSI / 11.4).toBeCloseTo(1, 2);
    // At 40 the line of soft tempers is lower than the 25.1 of 6061-T6, and nobody tells the temper.
    expect(columnStress('aluminium', 35 * KSI, 40) / KSI).toBeLessThan(25.1);
    expect(columnStress('aluminium', 35 * KSI, 40) / KSI).toBeGreaterThan(0.95 * 25.1);
  });

  it('have sections as tables of angles print them', () => {
    const angle = (width: number, thick: number): Member => ({
      form: 'angle',
      size: width * INCH,
      wall: thick * INCH,
      material: 'steel',
      yieldStrength: 36 * KSI,
    });
    // L2×2×1/8: 0.484 to 0.491 in², 0.391 in; L3×3×1/4: 1.44 in², 0.585 in. From memory.
    const [small, large] = [angle(2, 0.125), angle(3, 0.25)].map((each) => memberSection(each));
    expect((small?.area ?? 0) / INCH ** 2).toBeCloseTo(0.484, 2);
    expect((small?.gyration ?? 0) / INCH / 0.391).toBeCloseTo(1, 2);
    expect((large?.area ?? 0) / INCH ** 2).toBeCloseTo(1.44, 2);
    expect((large?.gyration ?? 0) / INCH).toBeLessThan(0.592);
    expect((large?.gyration ?? 0) / INCH).toBeGreaterThan(0.57);
  });

  it('are not shown where a wall may buckle first', () => {
    const tube: Member = { form: 'round', size: 0.1, wall: 0.005, material: 'steel', yieldStrength: 250e6 };
    const hold = { length: 1, share: 1 };
    expect(allowedPush(tube, hold, 1)).toBeGreaterThan(0);
    expect(allowedPush({ ...tube, wall: 0.001 }, hold, 1)).toBeUndefined();
    expect(allowedPush({ ...tube, form: 'angle' }, hold, 1)).toBeUndefined();
    expect(allowedPush({ ...tube, material: 'aluminium', wall: 0.0018 }, hold, 1)).toBeUndefined();
    // Pressed off its middle a brace of 40 counts as one of 80.
    const angle: Member = { ...tube, form: 'angle', size: 0.06, wall: 0.006 };
    const { gyration } = memberSection(angle);
    const off = allowedPush(angle, { length: 40 * gyration, share: 1, offCentre: true }, 1);
    expect(off).toBeCloseTo(allowedPush(angle, { length: 80 * gyration, share: 1 }, 1) as number, 6);
    expect(useOfMember.of(off as number, 2 * (off as number))).toBeCloseTo(0.5, 9);
  });
});

const PANEL: Panel = { faces: 3, pattern: 'zigzag', width: 0.45, height: 0.4 };
const NONE = { moment: 0, weight: 0, braced: 0, torsion: 0 };

describe('forces in a lattice', () => {
  it('are those of its statics', () => {
    expect(legPush(PANEL, { ...NONE, moment: 4800 })).toBeCloseTo(12_317, 0);
    expect(bracePush(PANEL, { ...NONE, braced: 1000 })).toBeCloseTo(892, 0);
    // 300 N·m of twist: √3·t/b in the braces.
    expect(bracePush(PANEL, { ...NONE, braced: (Math.sqrt(3) * 300) / 0.45 })).toBeCloseTo(1030, 0);
    expect(legPush(PANEL, { ...NONE, torsion: 300 })).toBeCloseTo(684, 0);
    const square: Panel = { ...PANEL, faces: 4 };
    expect(legPush(square, { ...NONE, moment: 1000, weight: 400 })).toBeCloseTo(1000 / (Math.SQRT2 * 0.45) + 100, 6);
    expect(legPush(square, { ...NONE, torsion: 300 })).toBeCloseTo((300 * 0.4) / (2 * 0.45 ** 2), 6);
  });

  it('are larger where one section slides in another', () => {
    // 800 N at 11.5 m, the rim at 6 and the lower end at 2.75 m: 1353.8 N there, 2153.8 at the rim.
    expect(forceInOverlap.of(4400, 3.25, 0)).toBeCloseTo(1353.8, 1);
    expect(forceInOverlap.of(4400, 3.25, 800)).toBeCloseTo(2153.8, 1);
    expect(momentAtTail.of(4400, 800, 3.25)).toBeCloseTo(800 * (11.5 - 2.75), 9);
  });

  it('weigh what a panel of them weighs', () => {
    // Three legs of 1 cm² and, in each face, one brace of 0.2 cm² and 5 m for every 4 m of height.
    expect(ownWeightOfLattice.of(7850, 3, 1e-4, 1, 2e-5, 3, 4)).toBeCloseTo(7850 * 3 * (1e-4 + 2.5e-5), 9);
    expect(momentOfLeaning.of(1.1, 1000)).toBeCloseTo(1100, 9);
  });

  /** 14 panels, pushed at the top. */
  const tower = (faces: 3 | 4, pattern: 'zigzag' | 'cross'): TrussTower => ({
    faces,
    pattern,
    width: 0.45,
    height: 0.4,
    panels: 14,
    legArea: 4e-4,
    braceArea: 1e-4,
  });

  it.each([
    [3, [1, 0]],
    [3, [0, 1]],
    [3, [-1, 0]],
    [4, [1, 0]],
    [4, [Math.SQRT1_2, Math.SQRT1_2]],
  ] as const)('of %i faces, pushed along %j, are no less than in a space truss, single diagonals', (faces, [x, y]) => {
    const of = tower(faces, 'zigzag');
    const found = forcesInTruss(of, { force: [1000 * x, 1000 * y, 0], torque: 0 });
    for (let panel = 3; panel < of.panels - 2; panel += 1) {
      const panelOf: Panel = { faces, pattern: 'zigzag', width: of.width, height: of.height };
      const moment = 1000 * (of.panels - panel) * of.height;
      const leg = legPush(panelOf, { ...NONE, moment });
      const above = legPush(panelOf, { ...NONE, moment: moment - 1000 * of.height });
      const brace = bracePush(panelOf, { ...NONE, braced: 1000 });
      expect(found.legs(panel)).toBeLessThanOrEqual(leg * 1.000001);
      expect(found.braces(panel)).toBeLessThanOrEqual(brace * 1.001);
      // In its own worst wind it is between that of the upper and the lower end of the panel.
      if (x === 1) expect(found.legs(panel)).toBeGreaterThan(above * 0.95);
    }
  });

  it.each([3, 4] as const)('of %i faces by a torque are those of a space truss', (faces) => {
    const of = tower(faces, 'zigzag');
    const found = forcesInTruss(of, { force: [0, 0, 0], torque: 300 });
    const panelOf: Panel = { faces, pattern: 'zigzag', width: of.width, height: of.height };
    const braced = ((faces === 3 ? Math.sqrt(3) : 1) * 300) / of.width;
    // The level members of a square hold its shape and take a thousandth of it.
    expect(found.braces(6) / bracePush(panelOf, { ...NONE, braced })).toBeCloseTo(1, faces === 3 ? 6 : 2);
    expect(found.legs(6)).toBeLessThanOrEqual(legPush(panelOf, { ...NONE, torsion: 300 }) * 1.005);
  });

  it.each([
    [3, [1, 0]],
    [3, [-1, 0]],
    [3, [0, 1]],
    [4, [1, 0]],
    [4, [Math.SQRT1_2, Math.SQRT1_2]],
  ] as const)(
    'of %i faces with crossed braces and level members, pushed along %j, are no less than in a space truss',
    (faces, [x, y]) => {
      for (const [braceArea, height] of [
        [1e-4, 0.4],
        [2e-4, 0.3],
        [5e-5, 0.6],
      ] as const) {
        const of = { ...tower(faces, 'cross'), braceArea, height };
        const panelOf: Panel = { faces, pattern: 'cross', width: of.width, height };
        const found = forcesInTruss(of, { force: [1000 * x, 1000 * y, 0], torque: 0 });
        for (let panel = 3; panel < of.panels - 2; panel += 1) {
          const moment = 1000 * (of.panels - panel) * height;
          const push = legPush(panelOf, { ...NONE, moment });
          const strained = { legPush: push, legArea: of.legArea, braceArea };
          expect(found.legs(panel)).toBeLessThanOrEqual(push);
          expect(found.braces(panel)).toBeLessThanOrEqual(bracePush(panelOf, { ...NONE, braced: 1000 }, strained));
          expect(found.braces(panel)).toBeGreaterThan(bracePush(panelOf, { ...NONE, braced: 700 }));
        }
      }
    },
  );
});
