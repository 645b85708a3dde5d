import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { additionsSchema, answerSchema, areasSchema, pressuresSchema, ratingsSchema } from '../../src/answer/index.ts';
import { Refusal } from '../../src/foundation/index.ts';
import {
  type Assessment,
  additionsOf,
  assess,
  compareRatings,
  remediesOf,
  sensitivityOf,
  spreadOf,
  standardTubesFor,
} from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import {
  additionsDocument,
  answerDocument,
  areasDocument,
  pressuresDocument,
  ratingsDocument,
} from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, type Document } from '../margins/any-plan.ts';
import { demoPlans } from '../margins/demo-plan.ts';

/** Holds a document to a schema by another reader, to which a key that the schema does not know is a fault. */
function strictly(schema: z.ZodType): (document: unknown) => readonly string[] {
  const holds = new Ajv2020({ strict: false, allErrors: true }).compile(z.toJSONSchema(schema, { io: 'output' }));
  return (document) => {
    if (holds(document)) return undefinedIn(document);
    return (holds.errors ?? []).map(({ instancePath, message, params }) =>
      [instancePath, message, JSON.stringify(params)].join(' '),
    );
  };
}

/** A member that is there without a value is no member of JSON. */
function undefinedIn(value: unknown, at = ''): readonly string[] {
  if (typeof value !== 'object' || value === null) return value === undefined ? [`${at} is undefined`] : [];
  return Object.entries(value).flatMap(([key, member]) => undefinedIn(member, `${at}/${key}`));
}

const faultsOfAnswer = strictly(answerSchema);
const faultsOfAdditions = strictly(additionsSchema);
const faultsOfAreas = strictly(areasSchema);
const faultsOfPressures = strictly(pressuresSchema);
const faultsOfRatings = strictly(ratingsSchema);

function read(plan: Document) {
  const reading = readPlan(plan);
  if (!reading.ok) throw new Error(`${JSON.stringify(reading.faults)} in ${JSON.stringify(plan)}`);
  return reading;
}

/** The answer with everything that may stand beside it. */
function wholeAnswer(assessment: Assessment, { document, entryWarnings }: ReturnType<typeof read>) {
  return answerDocument(assessment, document, entryWarnings, 'full', {
    spread: spreadOf(assessment),
    sensitivity: sensitivityOf(assessment),
    remedies: remediesOf(assessment),
    tubes: standardTubesFor(assessment),
    drawings: { ladder: '<svg/>' },
  });
}

/** Every fault of every answer that a plan may have. */
function faultsOf(plan: Document): readonly string[] {
  const reading = read(plan);
  const { input, document, entryWarnings } = reading;
  const assessment = assess(input);
  const without = assess({ ...input, station: { ...input.station, loads: input.station.loads.slice(1) } });
  const additions = additionsOf(assessment, [{ name: 'one load less', assessment: without }]);
  const proposed = [{ plan: document, entryWarnings, placed: (pointer: string) => ({ pointer }) }];
  const units = input.station.units;
  return [
    ...faultsOfAnswer(wholeAnswer(assessment, reading)),
    ...faultsOfAdditions(additionsDocument(additions, entryWarnings, proposed, units)),
    ...faultsOfAreas(areasDocument(input, true, true, entryWarnings)),
    ...faultsOfPressures(pressuresDocument(input, [3, 30], true, entryWarnings)),
    ...faultsOfRatingsOf(reading),
  ];
}

/** Ratings that state no force are refused, which is no answer. */
function faultsOfRatingsOf({ input, entryWarnings }: ReturnType<typeof read>): readonly string[] {
  const { station } = input;
  const stated = input.ratings.filter(({ of, claim, wind }) => of === 'tower' && claim.kind === 'area' && wind);
  try {
    const comparison = compareRatings(station, stated);
    return faultsOfRatings(ratingsDocument(comparison, station.units, 'full', entryWarnings));
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}

describe('every answer is what its schema says, and holds nothing that the schema does not know', () => {
  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))('of the demo plan %s', (_id, plan) => {
    expect(faultsOf(plan)).toEqual([]);
  });

  it('of any plan', { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        expect(faultsOf(plan)).toEqual([]);
      }),
      { numRuns: Number(process.env['RANDOM_RUNS'] ?? 60) },
    );
  });
});

describe('what holds answers to their schemas', () => {
  const reading = read(demoPlans()[0]?.plan as Document);
  const answer = wholeAnswer(assess(reading.input), reading);

  it('sees a key too many, a member without a value and a word that is none of its list', () => {
    const [check] = answer.checks;
    expect(faultsOfAnswer({ ...answer, surplus: 1 })).toHaveLength(1);
    expect(faultsOfAnswer({ ...answer, reactions: { ...answer.reactions, surplus: 1 } })).toHaveLength(1);
    expect(faultsOfAnswer({ ...answer, checks: [{ ...check, because: 'unspoken' }] })).not.toEqual([]);
    expect(faultsOfAnswer({ ...answer, weakest: undefined })).toEqual(['/weakest is undefined']);
  });

  it('sees what is not there', () => {
    const { headline, ...rest } = answer;
    expect(headline.map(({ text }) => text).join('')).toBe(answer.says);
    expect(faultsOfAnswer(rest)).toHaveLength(1);
  });
});
