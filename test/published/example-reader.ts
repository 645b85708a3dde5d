import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

type Value = number | string | null | readonly Value[];

export interface Example {
  readonly id: string;
  readonly says: string;
  readonly standard: string;
  readonly source: string;
  readonly where: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, Value>>;
  readonly tolerance: Readonly<
    Record<string, { readonly abs?: number; readonly rel?: number; readonly same?: boolean }>
  >;
}

const FOLDER = new URL('../../reference/examples/', import.meta.url);

export function subjects(): string[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.json'))
    .map((file) => file.replace('.json', ''));
}

export function examplesOf(subject: string): readonly Example[] {
  const { examples } = JSON.parse(readFileSync(new URL(`${subject}.json`, FOLDER), 'utf8')) as { examples: Example[] };
  return examples;
}

/** Stands for one expected value of an example that is not computed here, with the reason. */
export class LeftOut {
  readonly reason: string;

  constructor(reason: string) {
    this.reason = reason;
  }
}

/** What our own functions make of an example's inputs, under the names of its expected values. */
export type Computation = (inputs: Example['inputs']) => Readonly<Record<string, Value | LeftOut>>;

function compare(example: Example, name: string, computed: Value | undefined, expected: Value): void {
  const where = `${example.id}, ${name}`;
  if (Array.isArray(expected)) {
    expect(Array.isArray(computed) ? computed.length : computed, where).toBe(expected.length);
    for (const [index, value] of expected.entries()) {
      compare(example, name, (computed as readonly Value[])[index], value as Value);
    }
    return;
  }
  const tolerance = example.tolerance[name];
  if (!tolerance) throw new Error(`${where}: no tolerance`);
  if (tolerance.same || typeof expected !== 'number') {
    expect(computed, where).toEqual(expected);
    return;
  }
  const allowed = tolerance.abs ?? (tolerance.rel as number) * Math.abs(expected);
  expect(Number.isFinite(computed as number), `${where} is ${String(computed)}`).toBe(true);
  expect(
    Math.abs((computed as number) - expected),
    `${where}: ${String(computed)} against ${expected}`,
  ).toBeLessThanOrEqual(allowed * (1 + 1e-9) + 1e-12);
}

/**
 * One test an example of a subject: each is computed, every expected value of it, or stands by name among those not
 * computed, with the reason.
 */
export function publishedExamples(
  subject: string,
  computations: Readonly<Record<string, Computation>>,
  notComputed: Readonly<Record<string, string>> = {},
): void {
  describe(`published: ${subject}`, () => {
    const examples = examplesOf(subject);
    for (const example of examples) {
      const compute = computations[example.id];
      if (!compute) continue;
      it(`${example.id}: ${example.says} [${example.source}, ${example.where}]`, () => {
        const computed = compute(example.inputs);
        let compared = 0;
        for (const [name, expected] of Object.entries(example.expected)) {
          const value = computed[name];
          if (value instanceof LeftOut) continue;
          compare(example, name, value, expected);
          compared += 1;
        }
        expect(compared).toBeGreaterThan(0);
      });
    }

    it('computes every example or says why not', () => {
      const ids = examples.map((example) => example.id);
      const spoken = [...Object.keys(computations), ...Object.keys(notComputed)];
      expect([...new Set(spoken)].sort()).toEqual([...ids].sort());
      expect(spoken.length).toBe(ids.length);
    });
  });
}

export function list(value: unknown): readonly number[] {
  return value as readonly number[];
}
