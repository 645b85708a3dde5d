import { describe, expect, it } from 'vitest';
import { FOOT } from '../../src/foundation/index.ts';
import {
  heightAsRated,
  lowerAsRated,
  moreThanRated,
  shareOfRatedMoment,
  slidAsRated,
} from '../../src/margins/explain-as-rated.ts';
import {
  type Assessment,
  assess,
  type CheckInput,
  loweredOf,
  plausibleRatedHeights,
  type Rating,
  workingOf,
} from '../../src/margins/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, checkInputOf, type Document } from './any-plan.ts';

const POUND_FORCE = 4.4482216152605;

/** The two unit systems' constants and the slices of the product differ from a closed integral by less than this share. */
const CLOSE = 0.004;

/** ASCE 7-16, exposure C: Kz = 2.01·(z/900 ft)^(2/9.5), z not below 15 ft (Table 26.10-1 note 1). */
const POWER = 2 / 9.5;
const kz = (z: number) => 2.01 * (Math.max(15, z) / 900) ** POWER;
/** λ·G·c·Kd·V² without Kz at 90 mph: 0.6·0.85·0.00256·0.85·8100 = 8.989 psf. */
const PER_KZ = 0.6 * 0.85 * 0.00256 * 0.85 * 90 ** 2;
/** ∫Kz·(z − from)^n dz from one height to another, by Simpson's rule on 400 strips [ft]. */
function integral(from: number, to: number, n: 0 | 1, datum = from): number {
  const step = (to - from) / 400;
  let sum = 0;
  for (let index = 0; index <= 400; index += 1) {
    const z = from + step * index;
    const weight = index === 0 || index === 400 ? 1 : index % 2 === 1 ? 4 : 2;
    sum += weight * kz(z) * (z - datum) ** n;
  }
  return (sum * step) / 3;
}

/** A lattice of constant width whose maker tells its drag area: so many square feet for each foot. */
const DRAG = 0.3;
const section = (length: number, more: Document = {}): Document => ({
  length,
  shape: 'lattice',
  faces: 3,
  width: 18,
  members: 'round',
  dragArea: DRAG * length,
  // Of constant width: of one that tapers, or of which it is not told, more heights are compared.
  ...(Array.isArray(more['width']) || 'uniform' in more ? {} : { uniform: true }),
  ...more,
});
const wind = { speed: 90, basis: 'gust3-strength', method: 'asce7-16', exposure: 'C' };
const area = (square: number, more: Document = {}): Document => ({
  of: 'tower',
  area: square,
  areaKind: 'effective',
  wind,
  ...more,
});
const plan = (rating: Document, tower: Document = {}, more: Document = {}): Document => ({
  units: 'us',
  method: 'asce7-16',
  site: { wind: { speed: 90, basis: 'gust3-strength' }, exposure: 'C' },
  tower: { support: 'free', top: 60, frequency: 3, sections: [20, 20, 20].map((length) => section(length)), ...tower },
  loads: [{ name: 'a', height: 60, on: 'tower', area: 4, areaKind: 'effective', weight: 0 }],
  cables: [],
  ratings: [rating],
  ...more,
});

function supposing(document: Document, feet: number): CheckInput {
  const input = checkInputOf(document);
  const ratings = input.ratings.map((rating): Rating => ({ ...rating, supposedTop: feet * FOOT }));
  return { ...input, ratings, assumed: [] };
}
const supposed = (document: Document, feet: number): Assessment => assess(supposing(document, feet));

/** What is proven of a section's lower end [lbf·ft or lbf], at the bad end. */
function shown(answer: Assessment, section: number, of: 'moment' | 'shear', numbered?: number): number {
  const { comparisons, proven, momentClaims, scenarios } = answer.model;
  // The sums by hand have no least pressure.
  const scenario =
    numbered ??
    Math.max(
      0,
      scenarios.findIndex(({ least }) => !least),
    );
  const number = comparisons.findIndex(
    (each) => each.section === section && each.of === of && (each.place === 'base' || each.place === 'joint'),
  );
  const most = Math.max(
    0,
    ...proven.map((each) => each.unfavourable[scenario]?.[number] ?? 0),
    ...momentClaims.map((each) => (each.shares.get(number)?.unfavourable ?? 0) * each.moment.unfavourable),
  );
  return most / POUND_FORCE / (of === 'moment' ? FOOT : 1);
}

function near(value: number, wanted: number): void {
  expect(value / wanted).toBeGreaterThan(1 - CLOSE);
  expect(value / wanted).toBeLessThan(1 + CLOSE);
}

describe('a rating supposed to be for a shorter tower of the series', () => {
  const answer = supposed(plan(area(10)), 40);

  it('blows on the shorter tower, and what it proves at its foot counts on below', () => {
    // Kz(40) = 1.0436: F = 8.989·1.0436·10 = 93.8 lbf; 93.8·40 = 3,752 lbf·ft, and the tower's own 0.3 ft²/ft over 40 ft.
    expect(PER_KZ * kz(40) * 10).toBeCloseTo(93.8, 1);
    const force = PER_KZ * kz(40) * 10;
    const base = force * 40 + PER_KZ * DRAG * integral(0, 40, 1);
    near(shown(answer, 0, 'moment'), base);
    near(shown(answer, 1, 'moment'), base);
    near(shown(answer, 0, 'shear'), force + PER_KZ * DRAG * integral(0, 40, 0));
  });

  it('counts at the same depth below the top', () => {
    near(shown(answer, 2, 'moment'), PER_KZ * (kz(40) * 10 * 20 + DRAG * integral(20, 40, 1)));
    near(shown(answer, 2, 'shear'), PER_KZ * (kz(40) * 10 + DRAG * integral(20, 40, 0)));
  });

  it('moves its load, its further areas and its lines with it', () => {
    const rating = area(10, {
      height: 62,
      furtherAreas: [
        { area: 5, height: 45 },
        { area: 5, height: 10 },
      ],
      withCables: { count: 2, diameter: 1, arrangement: 'single' },
    });
    // 62 ft becomes 42, 45 becomes 25, and what was at 10 ft would be below the foot. Two lines of 1 in, coefficient 1.2 below
    // D√q = 2.5, from the foot to 40 ft: 0.2 ft²/ft.
    const own = (DRAG + (2 * 1.2) / 12) * integral(0, 40, 1);
    near(shown(supposed(plan(rating), 40), 0, 'moment'), PER_KZ * (kz(42) * 10 * 42 + kz(25) * 5 * 25 + own));
  });

  it('takes the couple of the mast at the same depth', () => {
    // Held at the top and 4 ft below it: there the rated case has its force, at 42 ft, and the wind on the tower from 36 ft up.
    const mast = { outside: 2, length: 10, inside: 4, bearing: 60, wall: 0.25, yield: 50 };
    const { model } = supposed(plan(area(10, { height: 62 }), {}, { mast }), 40);
    const bare = model.scenarios.findIndex(({ least }) => !least);
    const couple = (of: 'moment' | 'shear') =>
      Math.max(
        ...model.comparisons.flatMap((each, number) =>
          each.of === of &&
          each.place === 'top-couple' &&
          Math.abs((model.levels[each.level]?.z ?? 0) - 56 * FOOT) < 1e-6
            ? [model.proven[0]?.unfavourable[bare]?.[number] ?? 0]
            : [],
        ),
      );
    near(couple('shear') / POUND_FORCE, PER_KZ * (kz(42) * 10 + DRAG * integral(36, 40, 0)));
    // The section is alike from end to end: what it takes at its lower end, 20 ft of the shorter tower, it takes here.
    near(couple('moment') / POUND_FORCE / FOOT, PER_KZ * (kz(42) * 10 * 22 + DRAG * integral(20, 40, 1)));
  });

  it('is by the gust factor of its own height where the standard has one by height', () => {
    // EIA-222-F: GH = 0.65 + 0.60/(h/33)^(1/7), pressure 0.00256·Kz·V², Kz = (z/33)^(2/7) at least 1, level 3/4.
    const rating = area(10, { wind: { speed: 70, method: 'eia222-f' } });
    const gust = 0.65 + 0.6 / (40 / 33) ** (1 / 7);
    const pressure = (z: number) => 0.75 * gust * 0.00256 * 70 ** 2 * Math.max(1, (z / 33) ** (2 / 7));
    let own = 0;
    for (let z = 0.05; z < 40; z += 0.1) own += pressure(z) * DRAG * 0.1 * z;
    near(shown(supposed(plan(rating), 40), 0, 'moment'), pressure(40) * 10 * 40 + own);
  });

  it('takes the braces of a tapering section as they are where its foot is', () => {
    // Legs from 36 in at 20 ft to 27 in at 40 ft meet at 40 + 27·20/9 = 100 ft, that is at 80 ft when 20 ft lower.
    const widths = [
      [45, 36],
      [36, 27],
      [27, 18],
    ];
    const tower = { sections: widths.map((width) => section(20, { width })) };
    const tapering = supposed(plan(area(10), tower), 40);
    const shear = PER_KZ * (kz(40) * 10 + DRAG * integral(0, 40, 0));
    const moment = PER_KZ * (kz(40) * 10 * 40 + DRAG * integral(0, 40, 1));
    near(shown(tapering, 1, 'shear'), Math.abs(shear - moment / 80));
    near(shown(tapering, 0, 'shear'), Math.abs(shear - moment / 80));
  });
});

describe('a rating supposed to be for a taller tower of the series', () => {
  it('is of its upper part', () => {
    // What is at 20 ft of the taller tower is the foot of this one.
    const answer = supposed(plan(area(10)), 80);
    near(shown(answer, 0, 'moment'), PER_KZ * (kz(80) * 10 * 60 + DRAG * integral(20, 80, 1)));
    near(shown(answer, 0, 'shear'), PER_KZ * (kz(80) * 10 + DRAG * integral(20, 80, 0)));
  });
});

describe('claims of every kind, supposed to be for another height', () => {
  it('a moment at the foot counts below the foot of a shorter tower, and by the cube of lengths in a taller one', () => {
    const rating = { of: 'tower', kind: 'moment', moment: 10_000, level: 'allowable' };
    const shorter = supposed(plan(rating), 40);
    expect(shown(shorter, 0, 'moment')).toBeCloseTo(10_000, 6);
    expect(shown(shorter, 1, 'moment')).toBeCloseTo(10_000, 6);
    expect(shown(shorter, 2, 'moment')).toBe(0);
    // (60/80)³ = 0.4219.
    expect(shown(supposed(plan(rating), 80), 0, 'moment')).toBeCloseTo(4218.75, 6);
  });

  it('a moment at a height moves with its place', () => {
    const rating = { of: 'tower', kind: 'moment', moment: 10_000, level: 'allowable', height: 40 };
    for (const feet of [30, 50, 80]) {
      const answer = supposed(plan(rating), feet);
      expect(shown(answer, 2, 'moment')).toBeCloseTo(10_000, 6);
      expect(shown(answer, 1, 'moment')).toBe(0);
    }
  });

  it('a force keeps its size and loses its lever', () => {
    const rating = { of: 'tower', kind: 'force', force: 500, level: 'allowable' };
    const answer = supposed(plan(rating), 40);
    expect(shown(answer, 0, 'moment')).toBeCloseTo(20_000, 6);
    expect(shown(answer, 0, 'shear')).toBeCloseTo(500, 6);
  });

  it('a bare wind proves the wind on the shorter tower', () => {
    const answer = supposed(plan({ of: 'tower', kind: 'wind', wind }), 40);
    near(shown(answer, 0, 'moment'), PER_KZ * DRAG * integral(0, 40, 1));
  });

  it('a table is supposed row by row', () => {
    const rows = area(0, {
      area: undefined,
      areasBySpeed: [
        [90, 10],
        [70, 14],
      ],
      wind: { ...wind, speed: undefined },
    });
    const answer = supposed(plan(JSON.parse(JSON.stringify(rows)) as Document), 40);
    expect(answer.model.proven).toHaveLength(2);
    near(shown(answer, 0, 'moment'), PER_KZ * (kz(40) * 10 * 40 + DRAG * integral(0, 40, 1)));
  });

  it('of a tower whose own wind is unknown, more of it is above a level than was rated', () => {
    const tower = { sections: [20, 20, 20].map((length) => ({ length, uniform: true })) };
    const ratioOf = (answer: Assessment) => answer.model.proven[0]?.windRatio.unfavourable[0] ?? Number.NaN;
    const told = ratioOf(supposed(plan(area(10), tower), 60));
    // At the foot, by the cube of 60/40, with the same pressure there on both sides.
    expect(ratioOf(supposed(plan(area(10), tower), 40)) / told).toBeCloseTo(1.5 ** 3, 6);
  });
});

describe('a rating supposed to be for the very height of the tower', () => {
  it('changes nothing at all', () => {
    const said = (input: CheckInput) => {
      const { checks, cautions, reactions } = assess(input);
      return JSON.stringify({ checks, cautions, reactions, working: workingOf(assess(input)) });
    };
    const crankUp = { top: 56, telescopes: true, sections: [20, 20, 20].map((length) => section(length)) };
    for (const document of [
      plan(area(10)),
      plan({ of: 'tower', kind: 'moment', moment: 9000 }),
      plan(area(10), crankUp),
    ]) {
      const feet = (document['tower'] as { top: number }).top;
      expect(said(supposing(document, feet))).toBe(said({ ...checkInputOf(document), assumed: [] }));
    }
  });
});

/** A site in which the least pressure of 16 psf decides nowhere. */
const FASTER = { wind: { speed: 110, basis: 'gust3-strength' }, exposure: 'C' };

/** Two sections of 20 ft: 38 ft high with 2 ft of overlap, 28 ft with 12 ft. */
const two = (top: number, rating: Document, more: Document = {}) =>
  plan(
    rating,
    { top, telescopes: true, sections: [section(20, more), section(20, { width: 14, ...more })] },
    { loads: [{ name: 'a', height: top, on: 'tower', area: 4, areaKind: 'effective', weight: 0 }] },
  );

describe('a crank-up rated at another height', () => {
  it('half out, bears in each section what it bears drawn out', () => {
    const answer = assess(checkInputOf(two(28, area(12, { top: 38 }))));
    // The wind sees both where they overlap: scenario 0. Drawn out the inner one runs from 18 to 38 ft, its rim at 20.
    const force = PER_KZ * kz(38) * 12;
    near(shown(answer, 1, 'moment'), force * 18 + PER_KZ * DRAG * integral(20, 38, 1));
    near(shown(answer, 1, 'shear'), force + PER_KZ * DRAG * integral(20, 38, 0));
    near(shown(answer, 0, 'moment'), force * 38 + PER_KZ * DRAG * (integral(0, 20, 1) + integral(18, 38, 1, 0)));
    const [tower] = answer.checks;
    expect(tower?.verdict).toBe('within');
    // Asked at the base in 110 mph, above the least pressure of 16 psf: 4 ft² at 28 ft, the own wind of both where they now are.
    const stronger = assess(checkInputOf({ ...two(28, area(12, { top: 38 })), site: FASTER }));
    const asked = (110 / 90) ** 2 * PER_KZ * (kz(28) * 4 * 28 + DRAG * (integral(0, 20, 1) + integral(8, 28, 1, 0)));
    const base = stronger.unfavourable.scenarios[0]?.wind[0] ?? Number.NaN;
    near(base / POUND_FORCE / FOOT, asked);
  });

  it('drawn out, bears little by a rating for half out: the couple over its short overlap is larger', () => {
    const answer = assess(checkInputOf(two(38, area(12, { top: 28 }))));
    // Half out the inner one stands 8 ft above the rim and 12 ft below it; drawn out 2 ft hold it, which take 2/12 of it.
    const atRim = PER_KZ * (kz(28) * 12 * 8 + DRAG * integral(20, 28, 1));
    near(shown(answer, 1, 'moment'), (atRim * 2) / 12);
    expect(answer.checks[0]?.verdict).toBe('over');
    expect(answer.checks[0]?.result?.ratio).toBeGreaterThan(1);
    expect(Number.isFinite(answer.checks[0]?.result?.ratio)).toBe(true);
  });

  it('of sections not uniform, is compared point by point in their own coordinates', () => {
    const uniform = false;
    // The rim of the lower section is 8 ft below the top half out; drawn out those 8 ft of it are from 30 ft up.
    const lowered = assess(checkInputOf(two(28, area(12, { top: 38 }), { uniform })));
    near(shown(lowered, 1, 'moment'), PER_KZ * (kz(38) * 12 * 8 + DRAG * integral(30, 38, 1)));
    // Drawn out its rim is 18 ft below its top; half out that place is in the lower one, at 10 ft, where 2 of 12 ft are left of
    // the moment of its rim at 20 ft; its shear there is the couple. And of that the shorter overlap takes a sixth.
    const raised = assess(checkInputOf(two(38, area(12, { top: 28 }), { uniform })));
    const atRim = PER_KZ * (kz(28) * 12 * 8 + DRAG * integral(20, 28, 1));
    near(shown(raised, 1, 'shear'), atRim / 12);
    const moment = shown(raised, 1, 'moment');
    expect(moment).toBeLessThanOrEqual(((atRim * 2) / 12) * (1 + CLOSE));
    expect(moment).toBeGreaterThan(0);
  });

  it('is tried in every order its sections may slide in, and the least counts', () => {
    const three = (top: number, rated: number, nested = 24): Document =>
      plan(
        area(12, { top: rated }),
        { top, telescopes: true, nested, sections: [20, 20, 20].map((length) => section(length)) },
        { loads: [{ name: 'a', height: top, on: 'tower', area: 4, areaKind: 'effective', weight: 0 }] },
      );
    const between = assess(checkInputOf(three(56, 40)));
    // Each slides 16 ft at most: 8 and 8, or 16 and 0, or 0 and 16.
    const drops = between.model.claims[0]?.cases.map(({ asRated }) =>
      asRated?.cameFrom.reduce((most, { drop }) => Math.max(most, drop), 0),
    );
    expect(new Set(drops?.map((drop) => (drop ?? 0).toFixed(6))).size).toBe(1);
    expect(drops).toHaveLength(3);
    // The uppermost let down first stands 2 ft above the rim at 38 ft, held by 18 ft: of 12 ft² there, 2/18 passes.
    const atRim = PER_KZ * (kz(40) * 12 * 2 + DRAG * integral(38, 40, 1));
    near(shown(between, 2, 'moment'), (atRim * 2) / 18);
    expect(assess(checkInputOf(three(56, 24))).model.claims[0]?.cases).toHaveLength(1);
    expect(assess(checkInputOf(three(40, 56))).model.claims[0]?.cases).toHaveLength(1);
  });

  it('is never over let down with what it is rated for drawn out', () => {
    for (const square of [2, 12, 30]) {
      for (const overlap of [1, 2.5, 4]) {
        const full = 60 - 2 * overlap;
        for (const lower of [0, 0.5, 3, 9, 14]) {
          const top = full - 2 * lower;
          const document = plan(
            area(square, { top: full, wind: { ...wind, speed: 110 } }),
            { top, telescopes: true, sections: [18, 14, 10].map((width) => section(20, { width })) },
            {
              site: FASTER,
              loads: [{ name: 'a', height: top, on: 'tower', area: square, areaKind: 'effective', weight: 0 }],
            },
          );
          const ratio = assess(checkInputOf(document)).checks[0]?.result?.ratio ?? Number.NaN;
          expect(ratio).toBeLessThanOrEqual(1 + 1e-9);
          if (lower === 0) expect(ratio).toBeGreaterThan(1 - 1e-9);
        }
      }
    }
  });

  it('says nothing of what it cannot become, of fixed towers of another height, and of weights', () => {
    const open = (document: Document) => {
      const answer = assess(checkInputOf(document));
      expect(answer.model.claims).toHaveLength(0);
      expect(answer.checks[0]).toMatchObject({ verdict: 'open', needs: ['/ratings/0/top'] });
      expect(answer.cautions.map(({ code }) => code)).toContain('rating-for-other-height');
    };
    open(two(28, area(12, { top: 41 })));
    open(two(28, area(12, { top: 18 })));
    open(plan(area(12, { top: 40 })));
    open(plan(area(12, { top: 80 })));
  });

  it('with sections that nobody tells, says of it let down what it says of the same depth', () => {
    const tower = {
      top: 40,
      telescopes: true,
      sections: undefined,
      shape: 'lattice',
      faces: 3,
      width: 18,
      members: 'round',
    };
    const loads = [{ name: 'a', height: 40, on: 'tower', area: 4, areaKind: 'effective', weight: 0 }];
    const notGiven = (rated: number) => {
      const document = JSON.parse(JSON.stringify(plan(area(12, { top: rated }), tower, { loads }))) as Document;
      return assess(checkInputOf(document));
    };
    expect(notGiven(60).checks[0]?.result?.ratio).toBeLessThan(1);
    expect(notGiven(30).model.claims).toHaveLength(0);
  });

  it('speaks of it let down in the answer of the raised one, as in a plan of it let down', () => {
    const drawnOut = two(38, area(12));
    const raised = assess(checkInputOf({ ...drawnOut, tower: { ...(drawnOut['tower'] as Document), nested: 28 } }));
    const lowered = loweredOf(raised)?.assessment.checks[0]?.result;
    const told = assess(checkInputOf(two(28, area(12, { top: 38 })))).checks[0]?.result;
    expect(lowered?.ratio).toBeCloseTo(told?.ratio ?? Number.NaN, 9);
    expect(lowered?.ratio).toBeLessThan(raised.checks[0]?.result?.ratio ?? Number.NaN);
  });

  it('says that the rating counts through the sections', () => {
    const said = (document: Document) =>
      assess(checkInputOf(document)).cautions.filter(({ code }) => code === 'rating-by-sections');
    expect(said(two(28, area(12, { top: 38 })))).toMatchObject([{ at: '/ratings/0/top', value: 38 * FOOT }]);
    expect(said(two(38, area(12, { top: 38 })))).toEqual([]);
  });
});

describe('the working of a rating for another height', () => {
  const unknown = { sections: [20, 20, 20].map((length) => ({ length, uniform: true })) };
  const moment = { of: 'tower', kind: 'moment', moment: 90_000 };
  const inside = { uniform: false };
  const halfOut = area(12, { top: 28 });

  it.each([
    ['a shorter tower', supposing(plan(area(10)), 40), [lowerAsRated, heightAsRated]],
    ['a taller tower', supposing(plan(area(10)), 80), [lowerAsRated, heightAsRated]],
    ['a moment at the foot of a taller tower', supposing(plan(moment), 80), [shareOfRatedMoment]],
    ['a tower of unknown shape', supposing(plan(area(40), unknown), 40), [moreThanRated]],
    ['a crank-up drawn out', checkInputOf(two(28, area(12, { top: 38 }))), [slidAsRated, heightAsRated]],
    ['a crank-up half out', checkInputOf(two(38, halfOut)), [slidAsRated, shareOfRatedMoment]],
    ['a crank-up of sections not uniform', checkInputOf(two(38, halfOut, inside)), [slidAsRated, heightAsRated]],
  ])('for %s says for which height it was, and comes out twice', (_, input, formulas) => {
    const working = workingDocument(workingOf(assess(input)).steps, 'us');
    const written = working.map((step) => step.formula);
    for (const { id } of formulas) expect(written).toContain(id);
    expect(witness(working).filter(({ agrees }) => !agrees)).toEqual([]);
  });
});

describe('any plan, with its ratings for another height', () => {
  /** A ratio is a number or absent, and the working comes out. */
  const holdsTogether = (input: CheckInput) => {
    const answer = assess(input);
    for (const { id, result } of answer.checks) if (result) expect(Number.isFinite(result.ratio), id).toBe(true);
    const working = workingDocument(workingOf(answer).steps, input.station.units);
    expect(witness(working).filter(({ agrees }) => !agrees)).toEqual([]);
  };

  it('of a series', () => {
    fc.assert(
      fc.property(anyPlan, fc.double({ min: 0.3, max: 1.8, noNaN: true }), (document, share) => {
        const { foot, top } = checkInputOf(document).station.tower;
        holdsTogether(supposing(document, (foot + share * (top - foot)) / FOOT));
      }),
      { numRuns: 40 },
    );
  });

  it('of a crank-up', () => {
    const overlap = fc.double({ min: 0.05, max: 0.95, noNaN: true });
    const kinds = [{}, { uniform: false }, { dragArea: undefined, leg: 1.25, brace: 0.5, panel: 14 }];
    const generated = fc.record({
      count: fc.integer({ min: 2, max: 5 }),
      overlap,
      rated: overlap,
      kind: fc.constantFrom(...kinds),
      claim: fc.constantFrom({}, { kind: 'force', force: 300 }, { kind: 'moment', moment: 9000 }, { kind: 'wind' }),
    });
    fc.assert(
      fc.property(generated, ({ count, overlap: now, rated, kind, claim }) => {
        const height = (share: number) => 20 + (count - 1) * 20 * (1 - share);
        const sections = Array.from({ length: count }, (_, index) => section(20, { width: 24 - 3 * index, ...kind }));
        const rating = 'kind' in claim ? { of: 'tower', ...claim, ...('moment' in claim ? {} : { wind }) } : area(12);
        const loads = [{ name: 'a', height: height(now), on: 'tower', area: 4, areaKind: 'effective', weight: 0 }];
        const tower = { top: height(now), telescopes: true, sections };
        const document = JSON.stringify(plan({ ...rating, top: height(rated) }, tower, { loads }));
        holdsTogether(checkInputOf(JSON.parse(document)));
      }),
      { numRuns: 40 },
    );
  });
});

describe('the heights of which a maker lists a tower of a kind', () => {
  const heights = (document: Document) => {
    const { shortest, tallest } = plausibleRatedHeights(checkInputOf(document).station.tower);
    return [shortest / FOOT, tallest / FOOT].map((feet) => Math.round(feet * 100) / 100);
  };

  it('are a third off for lattices, less for poles, nested to drawn out for what slides', () => {
    expect(heights(plan(area(10)))).toEqual([40, 80]);
    const pole = { sections: [{ length: 60, shape: 'pole', width: 8, sides: 0 }] };
    expect(heights(plan(area(10), pole))).toEqual([45, 75]);
    // Without a nested height, to the top of its longest section; drawn out until a tenth of 20 ft is left inside.
    expect(heights(two(28, area(12)))).toEqual([20, 38]);
    expect(heights(two(38, area(12)))).toEqual([20, 38]);
    expect(
      heights(plan(area(10), { support: 'roof', base: 20, top: 30, sections: [section(10)] }, { loads: [] })),
    ).toEqual([28, 32]);
  });

  it('lie on both sides of its own', () => {
    for (const support of ['guyed', 'bracketed']) {
      const [shortest, tallest] = heights(plan(area(10), { support }));
      expect(shortest).toBeLessThan(60);
      expect(tallest).toBeGreaterThan(60);
    }
  });
});
