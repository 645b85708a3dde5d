import { describe, expect, it } from 'vitest';
import { FOOT, MILE_PER_HOUR, POUND_FORCE, SQUARE_FOOT } from '../../src/foundation/index.ts';
import { assessed } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

/*
 * Worked out by hand arithmetic, apart from the program:
 *   lattice  one face a panel: 2·1.25·18 in² of legs + 0.4375·√(16.75²+18²)·15.5/16.75 in² of brace over 18·18 in²:
 *            ε = 0.169612; C_f = 2.70063; ASCE round 0.584672, so 0.401723 ft²/ft
 *   bluff    K1 = 0.85·45/180 = 0.2125, K2 = 1 − 120/(4·180) = 0.8333, K3 = e^(−2.5·z/180); Kzt 1.1833 at 50.5 ft
 *   beam     broadside 4·(48·1+48·0.75+40·0.5)·2/144 ft² = 5.7778 ft²·1.2 = 6.9333 ft², 110.027 lbf at 50.5 ft
 *   couple   R_b = ΣF(z − 44)/4 = 311.017 lbf
 *   rated    32 ft² at 49 ft by TIA-222-G, 90 mph, class II, exposure B: 370.960 lbf
 *   with the rated lines (3 of 0.405 in) the capacity at the foot is 590.414/0.943129 = 626.02 lbf
 */
const LEDGER: Readonly<Record<string, readonly [force: number, moment: number]>> = {
  'four-element beam': [110.02660209, 5556.34340538],
  vertical: [18.15694089, 1098.67990449],
  'mast above the top': [25.45957931, 1324.14947817],
  'mast inside the tower': [12.57778086, 578.61486291],
  'link panel': [56.29373399, 1913.98695558],
  'three lines': [85.43163008, 2100.96969382],
};
/**
 * Long things at the two Gauss points of pieces of at most 4 m, cut at joints, load, mast foot and 15 ft, and where the rated
 * Kz leaves its floor: alike to a few parts in a million, with thin steps too.
 */
const SLICES = 5;

describe('the tower on the bluff, as worked out by hand', () => {
  const assessment = assessed(demoPlan('river-bluff'));
  const [tower, top] = assessment.checks;
  const pounds = (value: number | undefined) => (value ?? 0) / POUND_FORCE;

  it.each(Object.entries(LEDGER))('has in its ledger: %s', (name, [force, moment]) => {
    const row = assessment.windLoads.rows.find((each) => each.name === name);
    expect(pounds(row?.force)).toBeCloseTo(force, name === 'three lines' ? 2 : 4);
    expect(pounds(row?.momentAtBase) / FOOT).toBeCloseTo(moment, name === 'three lines' ? 1 : 3);
  });

  it('has the tower’s own drag and the totals', () => {
    const own = assessment.windLoads.rows.filter((row) => row.kind === 'tower');
    const sum = (pick: (row: (typeof own)[number]) => number) => own.reduce((total, row) => total + pick(row), 0);
    expect(sum((row) => row.front) / SQUARE_FOOT).toBeCloseTo(19.282707079, 6);
    expect(pounds(sum((row) => row.force))).toBeCloseTo(282.46795236, 2);
    expect(pounds(sum((row) => row.momentAtBase)) / FOOT).toBeCloseTo(6946.5677622, 0);
    expect(pounds(assessment.reactions.allowable.shear)).toBeCloseTo(590.41422, 2);
    expect(pounds(assessment.reactions.allowable.moment) / FOOT).toBeCloseTo(19519.312, 0);
  });

  it('is worst with the wind from 30° or 210° on what faces its own way', () => {
    expect(((assessment.windLoads.headings.fixed ?? 0) * 180) / Math.PI).toBeCloseTo(30, 6);
    expect(assessment.windLoads.headings.turning).toBeCloseTo(0, 9);
  });

  it('takes 0.943 of what the rating with its lines shows, in shear at the foot', () => {
    expect(tower?.verdict).toBe('low-margin');
    expect(tower?.result?.ratio).toBeCloseTo(0.94312922, SLICES);
    expect(tower?.result?.of).toBe('shear');
    expect(tower?.result?.height).toBe(0);
    expect(tower?.result?.ratioRange[0]).toBeCloseTo(0.6025155, SLICES);
    const ground = assessment.questions.open.find((question) => question.question === 'rating-exposure');
    expect(ground?.ratioIf.find((option) => option.answer === 'C')?.ratio).toBeCloseTo(0.70708406, SLICES);
  });

  it('holds to 105/√0.94313 mph', () => {
    expect((tower?.result?.holdsTo?.design ?? 0) / MILE_PER_HOUR).toBeCloseTo(105 / Math.sqrt(0.94312922), 3);
  });

  it('has the couple of the mast at the top: 343.92 lbf just above its foot', () => {
    expect(top?.kind).toBe('tower-top');
    expect(pounds(top?.result?.demand)).toBeCloseTo(343.9219, 2);
    expect((top?.result?.height ?? 0) / FOOT).toBeCloseTo(44, 9);
  });
});
