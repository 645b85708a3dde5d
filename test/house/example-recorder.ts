import { registerHooks } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { formulas } from '../../src/foundation/index.ts';
// The rooms define their formulas when they are loaded.
import '../../src/margins/index.ts';
import { met } from './no-vitest.ts';
import { PROJECT_ROOT, projectFiles } from './source-files.ts';

interface ComputedExample {
  /** The test that computes it. */
  readonly test: string;
  /** Ids of the formulas that its computation calls. */
  readonly formulas: ReadonlySet<string>;
}

export type ComputedExamples = ReadonlyMap<string, ComputedExample>;

/** Runs the computation of every published example outside of the test runner, and notes which formulas it calls. */
export async function recordExamples(ids: ReadonlySet<string>): Promise<ComputedExamples> {
  const found = new Map<string, ComputedExample>();
  let called = new Set<string>();
  for (const formula of formulas()) {
    const { id, of } = formula;
    const noted = (...inputs: readonly unknown[]) => {
      called.add(id);
      return of(...inputs);
    };
    Object.assign(formula, { of: noted });
  }
  registerHooks({
    resolve: (specifier, context, next) =>
      next(specifier === 'vitest' ? new URL('./no-vitest.ts', import.meta.url).href : specifier, context),
  });
  for (const { path } of projectFiles('test/published', /\.test\.ts$/)) {
    met.test = (name, body) => {
      const id = name.split(': ')[0] as string;
      if (!ids.has(id)) return;
      called = new Set();
      body();
      found.set(id, { test: path, formulas: called });
    };
    await import(pathToFileURL(join(PROJECT_ROOT, path)).href);
  }
  return found;
}
