import { formulaMathml, loneSymbolMathml, Markup } from '../../worksheet/index.ts';
import type { PROBLEM_KINDS } from '../problems/catalogue.ts';
import type { DescribedFormula, DescribedSource } from '../schemas/background-schemas.ts';
import { documentPage } from './document-page.ts';
import { contents, type Entry, entryList } from './entries.ts';
import { markup } from './markup.ts';

/** What stands at /v1/… is one folder below the root. */
const TO_ROOT = '../';

/** In a contents list and a heading. */
const nameOf = ({ short, title, edition, kind }: DescribedSource) =>
  `${short ?? title}${kind === 'code' ? `, ${edition}` : ''}`;

function formulaEntry(formula: DescribedFormula): Entry {
  const { id, title, symbol, expression, variables, clause, known } = formula;
  const inUnits = ({ us, si }: DescribedFormula['units']) =>
    us === '' ? '' : us === si ? `, ${us}` : `, ${us} or ${si}`;
  const each = [{ symbol, meaning: 'what it gives', units: formula.units }, ...variables];
  return {
    id,
    name: markup`${title}<br/><code>${id}</code>`,
    says: markup`<p class="eq">${new Markup(formulaMathml(symbol, expression))}</p>
<ul class="terms">${each.map(
      (term) => markup`<li>${new Markup(loneSymbolMathml(term.symbol))} ${term.meaning}${inUnits(term.units)}</li>`,
    )}</ul>
<span class="note">${clause} · ${known}</span>`,
  };
}

/** Every formula as a page, source by source. */
export function formulasPage(formulas: readonly DescribedFormula[], sources: readonly DescribedSource[]): string {
  const cited = sources
    .map((source) => ({ source, from: formulas.filter((formula) => formula.source === source.id) }))
    .filter(({ from }) => from.length > 0);
  const main = markup`<div class="title"><h1>Formulas</h1>
<p class="lead">Every formula, by the source it is from. Each holds in any coherent set of units.</p>
<p class="note"><a href="clauses">Clauses</a> and the tests that hold them · <a href="sources">Sources</a></p></div>
${contents(cited.map(({ source }) => [`from-${source.id}`, nameOf(source)]))}
${cited.map(
  ({
    source,
    from,
  }) => markup`<section aria-labelledby="from-${source.id}"><h2 class="head" id="from-${source.id}">${nameOf(source)}</h2>
${entryList(from.map(formulaEntry))}</section>
`,
)}`;
  return documentPage({ title: 'Formulas', toRoot: TO_ROOT, main });
}

/** The sources as a page. */
export function sourcesPage(sources: readonly DescribedSource[]): string {
  const entries = sources.map(
    ({ id, title, edition, publisher, known, seen, used }): Entry => ({
      id,
      name: markup`${title}<br/><span class="note">${edition} · ${publisher}</span><br/><code>${id}</code>`,
      says: markup`${used}<br/><span class="note">${seen}</span><br/><b>${known}</b>`,
    }),
  );
  const main = markup`<div class="title"><h1>Sources</h1>
<p class="lead">Every document that figures and formulas are from, what of it was read, and how it is known.</p>
<p class="note"><a href="formulas">Formulas</a> · <a href="clauses">Clauses</a></p></div>
<section>${entryList(entries)}</section>`;
  return documentPage({ title: 'Sources', toRoot: TO_ROOT, main });
}

type ProblemKind = (typeof PROBLEM_KINDS)[keyof typeof PROBLEM_KINDS] & { readonly code: string };

/** Every kind of problem as a page. */
export function problemKindsPage(kinds: readonly ProblemKind[]): string {
  const entries = kinds.map(
    ({ code, status, title, cause, remedy }): Entry => ({
      id: code,
      name: markup`<a href="problems/${code}">${title}</a><br/><span class="note">${status} · <code>${code}</code></span>`,
      says: markup`<p>${cause}</p><p>${remedy}</p>`,
    }),
  );
  const main = markup`<div class="title"><h1>Problems</h1>
<p class="lead">Every kind of problem this service answers with, its cause, and what to do.</p></div>
<section>${entryList(entries)}</section>`;
  return documentPage({ title: 'Problems', toRoot: '', main });
}

/** One kind of problem as a page. */
export function problemKindPage({ code, status, title, cause, remedy }: ProblemKind): string {
  const main = markup`<div class="title"><p class="note">${status} · <code>${code}</code></p><h1>${title}</h1>
<p class="lead">${cause}</p></div>
<section aria-labelledby="remedy"><h2 class="head" id="remedy">What to do</h2><p>${remedy}</p>
<p><a href="../problems">All problems</a></p></section>`;
  return documentPage({ title, toRoot: TO_ROOT, main });
}
