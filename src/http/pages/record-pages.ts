import { WORDS_FOR_KNOWN } from '../../foundation/index.ts';
import type { Changes, Clauses } from '../schemas/record-schemas.ts';
import { documentPage } from './document-page.ts';
import { contents, type Entry, entryList } from './entries.ts';
import { type Markup, markup } from './markup.ts';

/** These answers stand at /v1/…, one folder below the root. */
const TO_ROOT = '../';

/** What changed as a page, version by version. */
export function changesPage({ versions, changes, renames }: Changes): string {
  const sections = versions.map(({ version, says }) => {
    const isOf = (each: { readonly version: string }) => each.version === version;
    const changed = changes.filter(isOf).map(({ what, from, to, side, where, date }) => ({
      name: markup`${what}`,
      says: markup`Before: ${from}<br/>Now: ${to}<br/><span class="note"><b>${side}</b> · ${where.join(', ')} · ${date}</span>`,
    }));
    const renamed = renames.filter(isOf).map(({ document, kind, at, from, to }) => ({
      name: markup`<code>${from}</code> → <code>${to}</code>`,
      says: markup`${kind} of ${document}${at === '' ? undefined : markup`, at <code>${at}</code>`}`,
    }));
    return markup`<section aria-labelledby="v${version}"><h2 class="head" id="v${version}">${version}</h2>
<p>${says}</p>
${entryList(changed)}
${renamed.length === 0 ? undefined : markup`<h3>New names</h3>\n${entryList(renamed)}`}</section>
`;
  });
  const main = markup`<div class="title"><h1>What changed</h1>
<p class="lead">Stricter means higher ratios or fewer parts within. Milder means the opposite. Wording moves no number.</p></div>
${sections}`;
  return documentPage({ title: 'What changed', toRoot: TO_ROOT, main });
}

function heldBy(tests: readonly string[]): Markup {
  if (tests.length === 0) return markup`no test of its own`;
  return markup`${tests.map((test, index) => markup`${index === 0 ? '' : ', '}<code>${test}</code>`)}`;
}

const named = (kind: string, names: readonly string[]) =>
  names.length === 0 ? [] : [`${kind}${names.length === 1 ? '' : 's'} ${names.join(', ')}`];

function citing({ clauses, constants }: Clauses['standards'][number]): readonly Entry[] {
  const cited = clauses.map(({ clause, known, readIn = [], formulas, tables, constants: own, examples, tests }) => {
    const by = [
      ...named('formula', formulas),
      ...named('table', tables),
      ...named('constant', own),
      ...named(
        'example',
        examples.map(({ id }) => id),
      ),
    ];
    const read = readIn.length === 0 ? '' : `; read in ${readIn.join(', ')}`;
    return {
      name: markup`${clause} <span class="note">${WORDS_FOR_KNOWN[known]}${read}</span>`,
      says: markup`${by.join('; ')}<br/><span class="note">Held by: ${heldBy(tests)}</span>`,
    };
  });
  const bare = constants.map(({ name, says, tests }) => ({
    name: markup`constant ${name} <span class="note">clause not given</span>`,
    says: markup`${says}<br/><span class="note">Held by: ${heldBy(tests)}</span>`,
  }));
  return [...cited, ...bare];
}

/** The clause index as a page, standard by standard. */
export function clausesPage({ standards }: Clauses): string {
  const main = markup`<div class="title"><h1>Clauses</h1>
<p class="lead">Each clause, how it is known, what cites it, and the tests that hold it.</p>
<p class="note">Beyond these tests, every formula is compared with its own expression over its range.</p></div>
${standards.length > 1 ? contents(standards.map(({ standard, title }) => [standard, title])) : undefined}
${standards.map(
  (each) => markup`<section aria-labelledby="${each.standard}"><h2 class="head" id="${each.standard}">${each.title}</h2>
${entryList(citing(each))}</section>
`,
)}`;
  return documentPage({ title: 'Clauses', toRoot: TO_ROOT, main });
}
