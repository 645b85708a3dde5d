import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Citation, type Formula, formulas, type Known } from '../../src/foundation/index.ts';
import { sourceIdsOf } from './docblock-reader.ts';
import type { ComputedExamples } from './example-recorder.ts';
import { PROJECT_ROOT, type ProjectFile, projectFiles } from './source-files.ts';

/** A table of reference/tables stands by one clause. */
export interface TableClause {
  readonly standard: string;
  readonly clause: string;
  readonly known: Known;
  /** The document in which the figures were read, where it is not the standard itself. */
  readonly readIn?: string;
}

export interface Clause {
  readonly clause: string;
  readonly known: Known;
  /** Documents in which the figures were read, where they are not the standard itself. */
  readonly readIn?: string[];
  readonly formulas: string[];
  readonly tables: string[];
  readonly constants: string[];
  readonly examples: { readonly id: string; readonly known: Known }[];
  readonly tests: string[];
}

export interface StandardInIndex {
  readonly standard: string;
  readonly title: string;
  readonly kind: string;
  readonly clauses: readonly Clause[];
  /** Constants whose comment names the standard but no clause. */
  readonly constants: readonly { readonly name: string; readonly says: string; readonly tests: readonly string[] }[];
}

export interface ClauseIndex {
  readonly standards: readonly StandardInIndex[];
  /** What cites a clause and has no test or computed example of its own. */
  readonly withoutTest: readonly { readonly standard: string; readonly clause: string }[];
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

interface Declaration {
  readonly file: string;
  readonly name: string;
  readonly exported: boolean;
  readonly text: string;
}

interface ReferenceExample {
  readonly id: string;
  readonly source: string;
  readonly where: string;
  readonly known: Known;
}

interface Source {
  readonly id: string;
  readonly title: string;
  readonly kind: string;
}

const ROOMS = ['foundation', 'wind', 'areas', 'methods', 'structure', 'margins'];
const TABLES_TEST = 'test/published/tables.test.ts';

/** Documents: what stands for no document has no clauses that somebody could look up in it. */
const NO_DOCUMENT = new Set(['derived', 'project-rule', 'common-practice', 'memory']);

/** From the strongest to the weakest. */
const KNOWN: readonly Known[] = ['published', 'derived', 'second-hand', 'common-practice', 'memory'];

export function weakest(all: readonly Known[]): Known {
  return KNOWN[Math.max(...all.map((known) => KNOWN.indexOf(known)))] as Known;
}

function referenceJson<T>(path: string): T {
  return JSON.parse(readFileSync(join(PROJECT_ROOT, 'reference', path), 'utf8')) as T;
}

/** The clauses of every table: reference/tables/index.json. */
export const tableClauses = (): Readonly<Record<string, readonly TableClause[]>> => referenceJson('tables/index.json');

export const referenceExamples = (): readonly ReferenceExample[] =>
  projectFiles('reference/examples', /\.json$/).flatMap(
    ({ text }) => (JSON.parse(text) as { examples: ReferenceExample[] }).examples,
  );

/** What stands at the left edge of a file, each with its text to the next. */
function declarationsOf({ path, text }: ProjectFile): Declaration[] {
  return text.split(/^(?=[a-z/])/m).flatMap((statement) => {
    const [, exported, name] = /^(export )?(?:async )?(?:const|function\*?|class) (\w+)/.exec(statement) ?? [];
    return name === undefined ? [] : [{ file: path, name, exported: exported !== undefined, text: statement }];
  });
}

const wordsOf = (text: string) => new Set(text.match(/\b[A-Za-z_]\w*\b/g));

/** The words of a text and of all in the same file that it names, and so on. */
function reachedFrom(text: string, own: ReadonlyMap<string, string>): ReadonlySet<string> {
  const reached = new Set<string>();
  const waiting = [...wordsOf(text)];
  for (let word = waiting.pop(); word !== undefined; word = waiting.pop()) {
    if (reached.has(word)) continue;
    reached.add(word);
    const further = own.get(word);
    if (further !== undefined) waiting.push(...wordsOf(further));
  }
  return reached;
}

const byName = (declarations: readonly Declaration[]) => new Map(declarations.map(({ name, text }) => [name, text]));

/** Names that a test imports from the project. */
function importedNames(text: string): ReadonlySet<string> {
  const lists = [...text.matchAll(/^import (?:type )?\{([^}]*)\} from '[^']*\/src\//gm)];
  return new Set(lists.flatMap(([, list = '']) => list.match(/\b[A-Za-z_]\w*\b/g) ?? []));
}

/** Which names of the project lead to which others, and which tests import them. */
class Readers {
  readonly declarations: readonly Declaration[] = ROOMS.flatMap((room) =>
    projectFiles(`src/${room}`, /\.ts$/).flatMap(declarationsOf),
  );
  readonly #reached = new Map<Declaration, ReadonlySet<string>>();
  readonly #tests = projectFiles('test', /\.test\.ts$/)
    .filter(({ path }) => !path.startsWith('test/house/'))
    .map(({ path, text }) => ({ path, names: importedNames(text) }));

  constructor() {
    const files = Map.groupBy(this.declarations, ({ file }) => file);
    for (const own of files.values()) {
      const texts = byName(own);
      for (const each of own) this.#reached.set(each, reachedFrom(each.text, texts));
    }
  }

  /** The name itself, and what in its own file is exported and leads to it. */
  inItsFile(name: string, file: string): readonly string[] {
    const leading = this.declarations.filter(
      (each) => each.exported && each.file === file && this.#reached.get(each)?.has(name),
    );
    return [name, ...leading.map((each) => each.name)];
  }

  /** Tests that import the name; if none does, those that import what leads to it in its file. */
  testsOf(name: string, file: string): readonly string[] {
    for (const wanted of [[name], this.inItsFile(name, file)]) {
      const found = this.#tests.filter((test) => wanted.some((each) => test.names.has(each)));
      if (found.length > 0) return found.map(({ path }) => path);
    }
    return [];
  }
}

interface NamedCitation {
  readonly name: string;
  readonly file: string;
  readonly cite: Citation;
}

const isCitation = (value: object): value is Citation => 'source' in value && 'clause' in value && 'known' in value;

/** Every citation inside what a file exports; those of formulas stand by the formula. */
async function citedConstants(files: readonly ProjectFile[]): Promise<readonly NamedCitation[]> {
  const cited: NamedCitation[] = [];
  for (const { path } of files) {
    const exported: Record<string, unknown> = await import(pathToFileURL(join(PROJECT_ROOT, path)).href);
    const look = (name: string, value: unknown, depth: number): void => {
      if (typeof value !== 'object' || value === null || depth > 3 || 'expression' in value) return;
      if (isCitation(value)) cited.push({ name, file: path, cite: value });
      else for (const each of Object.values(value)) look(name, each, depth + 1);
    };
    if (!path.endsWith('/index.ts')) for (const [name, value] of Object.entries(exported)) look(name, value, 0);
  }
  return cited;
}

const FIRST_SENTENCE = /^([\s\S]*?)(?:@source|$)/;

/** Exported constants whose comment names a document. */
function sourcedConstants(files: readonly ProjectFile[]) {
  return files.flatMap(({ path, text }) =>
    [...text.matchAll(/^\/\*\*((?:(?!\*\/)[\s\S])*?)\*\/\nexport const (\w+)\b/gm)].flatMap(
      ([, comment = '', name = '']) => {
        const says = (FIRST_SENTENCE.exec(comment.replaceAll(/\s*\n \*\s?/g, ' ').trim())?.[1] ?? '').trim();
        return comment.includes('@returns')
          ? []
          : sourceIdsOf(comment).map((source) => ({ source, name, file: path, says }));
      },
    ),
  );
}

function formulaNames(declarations: readonly Declaration[]): ReadonlyMap<string, Declaration> {
  return new Map(
    declarations.flatMap((each) => {
      const id = /= defineFormula\(\{\s*id: '([^']+)'/.exec(each.text)?.[1];
      return id === undefined ? [] : [[id, each] as const];
    }),
  );
}

/** The constant of a formula, or a constant itself, and what its file exports that leads to it. */
export function exportedNamesAbout(idOrName: string): readonly string[] {
  const readers = sharedReaders();
  const declared =
    formulaNames(readers.declarations).get(idOrName) ?? readers.declarations.find(({ name }) => name === idOrName);
  return declared === undefined ? [] : readers.inItsFile(declared.name, declared.file);
}

let shared: Readers | undefined;
function sharedReaders(): Readers {
  shared ??= new Readers();
  return shared;
}

const sorted = (all: Iterable<string>) => [...new Set(all)].sort();

/** The index as text, a line for each clause. */
export function clauseIndexText({ standards, withoutTest }: ClauseIndex): string {
  const lines = (all: readonly unknown[]) =>
    all.length === 0 ? '[]' : `[\n${all.map((each) => `      ${JSON.stringify(each)}`).join(',\n')}\n    ]`;
  const of = ({ standard, title, kind, clauses, constants }: StandardInIndex) =>
    `    {"standard": ${JSON.stringify(standard)}, "title": ${JSON.stringify(title)}, "kind": ${JSON.stringify(kind)},\n    "clauses": ${lines(clauses)},\n    "constants": ${lines(constants)}}`;
  return `{\n  "standards": [\n${standards.map(of).join(',\n')}\n  ],\n  "withoutTest": ${lines(withoutTest)}\n}\n`;
}

/** Every clause of every document that a formula, table, constant or example cites, with what holds it. */
export async function clauseIndex(computed: ComputedExamples): Promise<ClauseIndex> {
  const files = ROOMS.flatMap((room) => projectFiles(`src/${room}`, /\.ts$/));
  const constants = await citedConstants(files);
  const readers = sharedReaders();
  const examples = referenceExamples();
  const { sources } = referenceJson<{ sources: Source[] }>('sources.json');
  const standards = new Map(sources.map(({ id }) => [id, new Map<string, Writable<Clause>>()]));

  const clauseOf = (source: string, clause: string, known: Known): Writable<Clause> => {
    const clauses = standards.get(source);
    if (clauses === undefined) throw new Error(`${source} is not in reference/sources.json`);
    const found = clauses.get(clause) ?? {
      clause,
      known,
      formulas: [],
      tables: [],
      constants: [],
      examples: [],
      tests: [],
    };
    found.known = weakest([found.known, known]);
    clauses.set(clause, found);
    return found;
  };
  const addExample = (to: Clause, { id, known }: ReferenceExample) => {
    if (to.examples.every((each) => each.id !== id)) to.examples.push({ id, known });
    const test = computed.get(id)?.test;
    if (test !== undefined) to.tests.push(test);
  };

  const names = formulaNames(readers.declarations);
  for (const { id, cite } of formulas() as readonly Formula[]) {
    const declared = names.get(id);
    if (declared === undefined) throw new Error(`where is the formula ${id} defined?`);
    const clause = clauseOf(cite.source, cite.clause, cite.known);
    clause.formulas.push(id);
    clause.tests.push(...readers.testsOf(declared.name, declared.file));
    for (const example of examples) {
      if (computed.get(example.id)?.formulas.has(id)) addExample(clause, example);
    }
  }
  const compared = new Set(
    [...readFileSync(join(PROJECT_ROOT, TABLES_TEST), 'utf8').matchAll(/^everyRow\(\s*'([a-z0-9-]+)'/gm)].map(
      ([, table]) => table,
    ),
  );
  for (const [table, places] of Object.entries(tableClauses())) {
    for (const { standard, clause, known, readIn } of places) {
      const found = clauseOf(standard, clause, known);
      if (readIn !== undefined) found.readIn = [...new Set([...(found.readIn ?? []), readIn])];
      if (!found.tables.includes(table)) found.tables.push(table);
      if (compared.has(table)) found.tests.push(TABLES_TEST);
    }
  }
  for (const { name, file, cite } of constants) {
    const found = clauseOf(cite.source, cite.clause, cite.known);
    if (found.constants.includes(name)) continue;
    found.constants.push(name);
    found.tests.push(...readers.testsOf(name, file));
  }
  for (const example of examples) addExample(clauseOf(example.source, example.where, example.known), example);

  const withComments = sourcedConstants(files);
  const listed = sources.map(({ id, title, kind }) => ({
    standard: id,
    title,
    kind,
    clauses: [...(standards.get(id)?.values() ?? [])]
      .map((clause) => ({ ...clause, tests: sorted(clause.tests) }))
      .sort((one, other) => one.clause.localeCompare(other.clause, 'en', { numeric: true })),
    constants: NO_DOCUMENT.has(id)
      ? []
      : withComments
          .filter(({ source }) => source === id)
          .map(({ name, file, says }) => ({ name, says, tests: sorted(readers.testsOf(name, file)) })),
  }));
  return {
    standards: listed.filter(({ clauses, constants: named }) => clauses.length + named.length > 0),
    withoutTest: listed.flatMap(({ standard, clauses }) =>
      clauses.filter(({ tests }) => tests.length === 0).map(({ clause }) => ({ standard, clause })),
    ),
  };
}
