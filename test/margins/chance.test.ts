import { describe, expect, it } from 'vitest';
import { answerDocument, answerText } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, assessed, type Document } from './any-plan.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

const withClimate = (plan: Document, climate: Document, wanted?: Document): Document => ({
  ...plan,
  site: { ...(plan['site'] as Document), climate },
  ...(wanted ? { wanted } : {}),
});
const chart = (returns: readonly (readonly number[])[]) => ({ basis: 'gust3-nominal', returnPeriods: returns });
const record = (yearlyMax: readonly number[], basis = 'gust3-nominal') => ({ basis, yearlyMax });

const TWO = [
  [10, 76],
  [50, 92],
];
const THREE = [...TWO, [100, 97]];
const TWELVE = [58, 61, 70, 66, 59, 83, 64, 62, 75, 68, 60, 57];

const documentOf = (plan: Document, working: 'none' | 'full' = 'none') => {
  const assessment = assessed(plan);
  return answerDocument(assessment, plan, [], working);
};
const codes = (plan: Document) => assessed(plan).cautions.map(({ code }) => code);

describe('the chance of the wind a link holds to', () => {
  it('is absent without a climate, and changes nothing else', () => {
    for (const { plan: given } of demoPlans()) {
      const { climate: _, ...site } = given['site'] as Document;
      const plan = { ...given, site };
      const [without, withOne] = [documentOf(plan), documentOf(withClimate(plan, chart(THREE)))];
      expect(without.chance).toBeUndefined();
      expect(without.working).toBeUndefined();
      expect(withOne.checks).toEqual(without.checks);
      expect(withOne.verdict).toBe(without.verdict);
      expect(withOne.windLoads).toEqual(without.windLoads);
    }
  });

  it('stands for every link that shows what it holds to, at that gust', () => {
    for (const { plan } of demoPlans()) {
      const { chance, checks } = documentOf(withClimate(plan, chart(THREE)));
      const holding = checks.filter((check) => check.holdsTo);
      expect(chance?.map(({ ofCheck, gust }) => [ofCheck, gust])).toEqual(
        holding.map((check) => [check.id, check.holdsTo?.gust]),
      );
    }
    expect(documentOf(withClimate(demoPlan('river-bluff'), chart(THREE))).chance?.map((each) => each.ofCheck)).toEqual([
      'tower',
      'tower-top',
      'mast',
      'foundation',
    ]);
  });

  it('is what Gumbel’s law says of that gust, by pencil', () => {
    const { chance, checks } = documentOf(withClimate(demoPlan('ten-numbers'), chart(TWO)));
    // From the chart: beta = 16/(3.901939 - 2.250367) = 9.68774 mph, mu = 76 - 9.68774·2.250367 = 54.1990 mph.
    const gust = checks[0]?.holdsTo?.gust.value as number;
    const inYear = 1 - Math.exp(-Math.exp(-(gust - 54.199) / 9.68774));
    const [of] = chance ?? [];
    expect(of?.years).toBe(30);
    for (const end of [0, 1]) {
      expect((of?.perYear[end] as number) / inYear).toBeCloseTo(1, 4);
      expect((of?.overYears[end] as number) / (1 - (1 - inYear) ** 30)).toBeCloseTo(1, 4);
    }
    expect(of?.byMethod[0]?.scale?.value).toBeCloseTo(9.68774, 4);
    expect(of?.byMethod[0]?.fiftyYears?.value).toBeCloseTo(92, 9);
  });

  it('is for the years the owner wants', () => {
    const of = (years: number) => documentOf(withClimate(demoPlan('ten-numbers'), chart(THREE), { years })).chance?.[0];
    expect(of(1)?.overYears[1]).toBeCloseTo(of(1)?.perYear[1] as number, 12);
    expect(of(5)?.years).toBe(5);
    expect(of(100)?.overYears[0]).toBeGreaterThan(of(5)?.overYears[0] as number);
  });

  it('is said in a sentence with both ends, what was counted, and that it asks no direction', () => {
    const plan = withClimate(demoPlan('ten-numbers'), record(TWELVE));
    const [of] = documentOf(plan).chance ?? [];
    expect(of?.says).toMatch(
      /^Reaching an actual gust of [\d.]+ mph \(tower\): [\d.]+ to [\d.]+ % in a year\. In 30 years: [\d.]+ to (more than )?[\d.]+ %\. 90 % band; wind from whatever direction counts\. Reached in [\w]+ of the 12 years of the record\.$/,
    );
    expect(answerText(assessed(plan), [])).toContain(`\n${of?.says}\n`);
    const [inSi] =
      documentOf(withClimate(demoPlan('light-mast'), record([31, 33, 30, 36, 34, 38, 32, 29, 35, 33]))).chance ?? [];
    expect(inSi?.says).toMatch(/^Reaching an actual gust of [\d.]+ m\/s \(tower\): /);
  });

  it('says what the band of a chart is, and that two values give none', () => {
    const [of] = documentOf(withClimate(demoPlan('ten-numbers'), chart(TWO))).chance ?? [];
    expect(of?.says).toMatch(/: [\d.]+ % in a year\. In 30 years: [\d.]+ %\. Wind from whatever direction counts\.$/);
    const ofChart = (climate: Document) =>
      codes(withClimate(demoPlan('ten-numbers'), climate)).filter((code) => code.startsWith('climate-'));
    expect(ofChart(chart(TWO))).toEqual(['climate-two-values']);
    expect(ofChart(chart(THREE))).toEqual(['climate-chart-band']);
    const text = answerText(assessed(withClimate(demoPlan('river-bluff'), chart(THREE))), []);
    expect(text.match(/The error of the chart itself is not included/g)).toHaveLength(1);
  });

  it('says so where nothing shows what it holds to', () => {
    const { ratings: _, ...unrated } = demoPlan('ten-numbers');
    const plan = withClimate(unrated, chart(THREE));
    expect(documentOf(plan).chance).toEqual([]);
    expect(answerText(assessed(plan), [])).toContain(
      'Chance not computed; no check has a gust it holds to, or the yearly maxima fit no law.',
    );
  });

  it('spends no digits on never and always', () => {
    const slow = [
      [10, 20],
      [50, 22],
    ];
    const fast = [
      [10, 300],
      [50, 320],
    ];
    const says = (returns: number[][]) =>
      documentOf(withClimate(demoPlan('ten-numbers'), chart(returns))).chance?.[0]?.says;
    expect(says(slow)).toContain(': less than 0.01 % in a year. In 30 years: less than 0.01 %');
    expect(says(fast)).toContain(': more than 99 % in a year. In 30 years: more than 99 %');
  });

  it('is cautioned from a short record and from other kinds of speed', () => {
    const plan = demoPlan('ten-numbers');
    const years = (count: number) => Array.from({ length: count }, (_, index) => 55 + ((index * 7) % 19));
    expect(codes(withClimate(plan, record(years(19))))).toContain('climate-short-record');
    expect(codes(withClimate(plan, record(years(20))))).not.toContain('climate-short-record');
    expect(codes(withClimate(plan, record(years(20))))).not.toContain('climate-converted');
    expect(codes(withClimate(plan, record(years(20), 'fastest-mile')))).toContain('climate-converted');
    const text = answerText(assessed(withClimate(plan, record(TWELVE, 'fastest-mile'))), []);
    expect(text).toContain('12 years of one station give little information on rare winds');
    expect(text).toContain('converted from a fastest mile to 3-second gusts');
  });

  it('falls when less hangs on the tower, over plans of every sort', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const loads = plan['loads'] as Document[];
        // The pull of a wire may take back that of another.
        if (loads.at(-1)?.['shape'] === 'wire') return;
        const of = (appurtenances: readonly Document[]) =>
          documentOf(withClimate({ ...plan, loads: appurtenances }, record(TWELVE))).chance?.find(
            ({ ofCheck }) => ofCheck === 'tower',
          );
        const [all, fewer] = [of(loads), of(loads.slice(0, -1))];
        if (!all || !fewer) return;
        // Heights of loads cut the tower's own drag into other slices: a pole's coefficient steps.
        for (const end of [0, 1]) {
          expect(fewer.perYear[end] as number).toBeLessThanOrEqual((all.perYear[end] as number) * 1.05 + 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is withheld, with its reason, from records that tell no law, and asked about where the unit is odd', () => {
    const plan = demoPlan('ten-numbers');
    const odd = withClimate(plan, record([50, 50, 50, 50, 51]));
    expect(documentOf(odd).chance).toEqual([]);
    expect(answerText(assessed(odd), [])).toContain('Chance not computed;');
    expect(codes(odd)).toContain('climate-tells-no-law');
    const low = withClimate(plan, record([26, 28, 30, 31, 33, 36, 27, 29, 30, 34]));
    expect(codes(low)).toContain('climate-units');
    const wild = withClimate(plan, record([...TWELVE, 61, 63, 60, 130]));
    expect(codes(wild)).toContain('climate-not-gumbel');
    for (const each of [TWELVE, [...TWELVE, 72, 69]]) {
      const given = codes(withClimate(plan, record(each)));
      for (const code of ['climate-tells-no-law', 'climate-units', 'climate-not-gumbel'])
        expect(given).not.toContain(code);
    }
  });

  it('is written down in the working, each method under its name', () => {
    const of = (climate: Document) =>
      documentOf(withClimate(demoPlan('ten-numbers'), climate), 'full').working?.filter((step) =>
        step.about[0]?.startsWith('chance of the gust'),
      );
    const steps = of(record(TWELVE, 'fastest-mile'));
    expect([...new Set(steps?.map((step) => step.about[1]))]).toEqual([
      undefined,
      "Gumbel's law, by L-moments and as a band",
      'a law with a tail that may be heavier, by L-moments and as a band',
      'storms of two kinds, as a band',
      "Gumbel's law by maximum likelihood, for comparison",
      "Gumbel's law by moments, for comparison",
    ]);
    const turned = ['speed-nominal-from-fastest-mile', 'speed-gust-from-fastest-mile-by-time'];
    expect(steps?.filter((step) => turned.includes(step.formula))).toHaveLength(TWELVE.length);
    const [chance] = documentOf(withClimate(demoPlan('ten-numbers'), record(TWELVE, 'fastest-mile'))).chance ?? [];
    const over = steps?.filter((step) => step.formula === 'chance-over-years').map((step) => step.value);
    expect(over).toEqual(chance?.overYears);
    expect(of(chart(THREE))?.some((step) => step.formula === 'gumbel-scale-of-line')).toBe(true);
  });
});
