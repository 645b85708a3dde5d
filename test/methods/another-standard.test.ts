import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { METHOD_BY_ID, type Method } from '../../src/methods/index.ts';
import fc from '../fast-check.ts';
import { anyPlan } from '../margins/any-plan.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';

const DOOR = '../../src/methods/index.ts';
const PLANS: readonly (readonly [string, unknown])[] = [
  ...demoPlans().map(({ id, plan }) => [id, plan] as const),
  ...fc.sample(anyPlan, { seed: 11, numRuns: 300 }).map((plan, number) => [`random ${number}`, plan] as const),
];

/** A standard of nowhere, as fit to be meant by a silent rating as its like: of any year, and in the same words. */
function invented(like: Method, meantUnnamedIn: 'every-place' | readonly string[]) {
  const id = 'invented-1';
  return {
    ...like,
    id,
    title: 'Invented Standard 1',
    place: 'nowhere',
    since: 1900,
    meantUnnamedIn,
    wind: (conditions: Parameters<Method['wind']>[0]) => ({ ...like.wind(conditions), method: id }),
  };
}

/** The service as it answers with one more standard, or as it is. */
async function serviceWith(standard?: ReturnType<typeof invented>) {
  vi.resetModules();
  if (standard) {
    vi.doMock(DOOR, async (original) => {
      const door = await original<typeof import('../../src/methods/index.ts')>();
      return {
        ...door,
        SITE_METHODS: [...door.SITE_METHODS, standard.id],
        METHODS: [...door.METHODS, standard.id],
        METHOD_BY_ID: { ...door.METHOD_BY_ID, [standard.id]: standard },
      };
    });
  }
  const { readPlan } = await import('../../src/plan/index.ts');
  const { assess, remediesOf, sensitivityOf, spreadOf } = await import('../../src/margins/index.ts');
  const { answerDocument, answerText } = await import('../../src/worksheet/index.ts');
  const read = (plan: unknown) => {
    const reading = readPlan(plan);
    if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
    return { ...reading, assessment: assess(reading.input) };
  };
  return {
    /** All that is answered, the working too, to the last byte. */
    answerTo: (plan: unknown, besides: boolean) => {
      const { assessment, document, entryWarnings } = read(plan);
      const more = besides
        ? { sensitivity: sensitivityOf(assessment), remedies: remediesOf(assessment) }
        : ({} as const);
      const answer = answerDocument(assessment, document, entryWarnings, 'full', more);
      return `${JSON.stringify(answer)}\n${answerText(assessment, entryWarnings, more)}`;
    },
    methodsOfSpread: (plan: unknown) => {
      const { rows, refused } = spreadOf(read(plan).assessment);
      return [...rows, ...refused].map(({ method }): string => method);
    },
  };
}

afterEach(() => {
  vi.doUnmock(DOOR);
  vi.resetModules();
});

const DEMOS = demoPlans().length;
let answers: readonly string[] = [];

beforeAll(async () => {
  const { answerTo } = await serviceWith();
  answers = PLANS.map(([, plan], number) => answerTo(plan, number < DEMOS));
}, 120_000);

/** One that goes by exposure and gusts, one that goes by terrain and means. */
describe.each(['tia222-g', 'en1991-1-4'] as const)('one more standard, like %s', (like) => {
  const standard = invented(METHOD_BY_ID[like], ['nowhere']);

  it('changes no byte of any answer', async () => {
    const { answerTo } = await serviceWith(standard);
    const changed = PLANS.filter(([, plan], number) => answerTo(plan, number < DEMOS) !== answers[number]);
    expect(changed.map(([name]) => name)).toEqual([]);
  });

  it('is one of those that a plan can go by, and stands in the spread', async () => {
    const { answerTo, methodsOfSpread } = await serviceWith(standard);
    const bluff = demoPlan('river-bluff');
    expect(methodsOfSpread(bluff)).toContain(standard.id);
    const { exposure, ...site } = bluff['site'] as Record<string, unknown>;
    const ground = standard.ground.field === 'terrain' ? { terrain: 'II' } : { exposure };
    const own = answerTo({ ...bluff, method: standard.id, site: { ...site, ...ground } }, false);
    expect(own).toContain(standard.title);
  });
});

describe('a standard that says it may be meant everywhere', () => {
  it('does change answers, which is what its record decides', async () => {
    const silent = demoPlans().map(({ plan }) => {
      const ratings = (plan['ratings'] ?? []) as readonly Record<string, unknown>[];
      const unnamed = ratings.map((rating) => {
        const { wind } = rating;
        return wind !== null && typeof wind === 'object' ? { ...rating, wind: { ...wind, method: undefined } } : rating;
      });
      return JSON.parse(JSON.stringify({ ...plan, ratings: unnamed })) as unknown;
    });
    const before = await serviceWith();
    const asBefore = silent.map((plan) => before.answerTo(plan, false));
    const meant = await serviceWith(invented(METHOD_BY_ID['rs222-c'], 'every-place'));
    expect(silent.filter((plan, number) => meant.answerTo(plan, false) !== asBefore[number]).length).toBeGreaterThan(2);
    const notMeant = await serviceWith(invented(METHOD_BY_ID['rs222-c'], ['nowhere']));
    expect(silent.map((plan) => notMeant.answerTo(plan, false))).toEqual(asBefore);
  });
});
