import { METHOD_BY_ID, SITE_METHODS } from '../../methods/index.ts';
import { FIELD_BY_PLACE, placeOf } from '../../words/index.ts';
import { documentPage, wayToRoot } from '../pages/document-page.ts';
import { type Markup, markup } from '../pages/markup.ts';
import { PROBLEM_KINDS } from './catalogue.ts';
import type { Problem, ProblemFault } from './problem.ts';

/** The fields of a form that did not fit, as it was sent. */
export interface SentFields {
  readonly filled: readonly (readonly [name: string, value: string])[];
}

/** A problem as a page, for who posted a form or opened an address: each fault in words, and where to mend it. */
export function problemPage(problem: Problem, url: string, sent: SentFields | undefined): string {
  const { title, status, cause, remedy } = PROBLEM_KINDS[problem.code];
  const toRoot = wayToRoot(url);
  const main = markup`<div class="title"><p class="note">${status}</p><h1>${title}</h1>
<p class="lead">${problem.message}</p></div>
${faultsOf(problem, sent)}
<section aria-labelledby="about"><h2 class="head" id="about">About this problem</h2>
<p>${cause}</p><p>${remedy}</p>
<p><a href="${toRoot}problems">All problems</a> · <a href="${toRoot === '' ? './' : toRoot}">Start again</a></p></section>`;
  return documentPage({ title, toRoot, main });
}

function faultsOf({ faults }: Problem, sent: SentFields | undefined): Markup | undefined {
  if (faults.length === 0) return undefined;
  const groups = grouped(faults);
  const values = new Map(sent?.filled);
  const shown = groups.filter(({ field }) => field !== undefined && canBeMended(field, groups, values));
  const list = markup`<ol class="faults">
${groups.map((group, index) => faultItem(group, index, shown.includes(group) ? (values.get(group.field ?? '') ?? '') : undefined))}
</ol>`;
  const heading = markup`<h2 class="head" id="mend">To correct <small>${faults.length === 1 ? 'one entry' : `${faults.length} entries`}</small></h2>`;
  if (sent === undefined || shown.length === 0) {
    return markup`<section aria-labelledby="mend">${heading}${list}
<p>Go back in the browser; the entries are still there.</p></section>`;
  }
  const inputs = new Set(shown.map(({ field }) => field));
  const rest = sent.filled.filter(([name]) => !inputs.has(name));
  // Without an action the form goes to the address it was sent to, under whatever base path that is.
  return markup`<section aria-labelledby="mend">${heading}
<form method="post" accept-charset="utf-8">
${list}
${rest.map(([name, value]) => markup`<input type="hidden" name="${name}" value="${value}"/>`)}
<p><button class="act">Ask again with this</button></p>
<p class="note">All other entries are sent again unchanged. Or go back in the browser; they are still there.</p>
</form></section>`;
}

interface FaultGroup {
  readonly field?: string | undefined;
  readonly faults: ProblemFault[];
}

/** Faults of one field stand together. */
function grouped(faults: readonly ProblemFault[]): readonly FaultGroup[] {
  const groups: FaultGroup[] = [];
  for (const fault of faults) {
    const known = fault.field === undefined ? undefined : groups.find(({ field }) => field === fault.field);
    if (known === undefined) groups.push({ field: fault.field, faults: [fault] });
    else known.faults.push(fault);
  }
  return groups;
}

/** A field that was filled in, or one that is missing and holds a single value. */
function canBeMended(field: string, groups: readonly FaultGroup[], values: ReadonlyMap<string, string>): boolean {
  if (values.has(field)) return true;
  const faults = groups.find((group) => group.field === field)?.faults ?? [];
  const single = faults.every(({ code, allowed = '' }) => code === 'missing' && !/^(an object|a list)\b/.test(allowed));
  return single && ![...values.keys()].some((name) => name.startsWith(`${field}[`));
}

type CatalogueField = NonNullable<ReturnType<typeof FIELD_BY_PLACE.get>>;

/** What the catalogue says of a field that is missing. */
function missingField(faults: readonly ProblemFault[]): CatalogueField | undefined {
  const [fault, ...others] = faults;
  if (others.length > 0 || fault?.code !== 'missing' || fault.pointer === undefined) return undefined;
  return FIELD_BY_PLACE.get(placeOf(fault.pointer.replace(/^#/, '')));
}

function wantedSays({ label, hint }: CatalogueField, chosen: boolean): string {
  const where = hint === undefined ? '' : ` (${hint})`;
  return `“${label}” not given. ${chosen ? 'Choose one' : 'Enter it'}${where}.`;
}

/** What may be chosen where nothing was, in words. */
function choicesFor(faults: readonly ProblemFault[]): readonly (readonly [string, string])[] | undefined {
  const field = missingField(faults);
  if (field?.choices !== undefined) return Object.entries(field.choices);
  if (faults[0]?.pointer !== '#/method') return undefined;
  return SITE_METHODS.map((id) => [id, METHOD_BY_ID[id].title] as const);
}

function faultItem({ field, faults }: FaultGroup, index: number, value: string | undefined): Markup {
  const id = `mend-${index}`;
  const where = field ?? faults[0]?.parameter ?? faults[0]?.pointer;
  const place = where === undefined ? undefined : markup` <code>${where}</code>`;
  const wanted = value === undefined ? undefined : missingField(faults);
  const choices = value === undefined || value !== '' ? undefined : choicesFor(faults);
  const says = faults.map(
    (fault, each) =>
      markup`<p class="mend-says" id="${id}-says-${each}">${wanted === undefined ? fault.says : wantedSays(wanted, choices !== undefined)}</p>`,
  );
  const allowed = faults.flatMap((fault) =>
    wanted !== undefined || fault.allowed === undefined || fault.says.includes(fault.allowed)
      ? []
      : [markup`<p class="note">Allowed: ${fault.allowed}.</p>`],
  );
  const given = faults.flatMap((fault) =>
    fault.given === undefined || fault.says.includes(String(fault.given)) || value !== undefined
      ? []
      : [markup`<p class="note">Given: ${String(fault.given)}.</p>`],
  );
  const describedBy = faults.map((_, each) => `${id}-says-${each}`).join(' ');
  const readings = faults.length === 1 ? faults[0]?.readings : undefined;
  const entry =
    value === undefined
      ? undefined
      : choices !== undefined
        ? markup`<p class="mend-entry"><label for="${id}">${place}</label><select id="${id}" name="${field}" required="" aria-invalid="true" aria-describedby="${describedBy}"><option value="">choose</option>${choices.map(
            ([key, words]) => markup`<option value="${key}">${words}</option>`,
          )}</select></p>`
        : readings !== undefined
          ? markup`<div class="mend-entry" role="radiogroup" aria-labelledby="${id}" aria-describedby="${describedBy}"><span id="${id}">${place}</span>
${readings.map((reading) => markup`<label><input type="radio" name="${field}" value="${reading}" required=""/> ${reading}</label>`)}</div>`
          : markup`<p class="mend-entry"><label for="${id}">${place}</label>${
              value.length > 60 || value.includes('\n')
                ? markup`<textarea id="${id}" name="${field}" rows="10" aria-invalid="true" aria-describedby="${describedBy}">
${value}</textarea>`
                : markup`<input id="${id}" name="${field}" value="${value}" autocomplete="off" aria-invalid="true" aria-describedby="${describedBy}"/>`
            }</p>`;
  return markup`<li>${entry ?? markup`<p>${place}</p>`}${says}${given}${allowed}</li>
`;
}
