import { CELL_IDS, CELLS, type CellId, readCell } from '../../plan/index.ts';
import { cellBody } from '../cells/answer-cell.ts';
import { documentPage } from '../pages/document-page.ts';
import { type Markup, markup } from '../pages/markup.ts';
import { PROBLEM_CODES, PROBLEM_KINDS } from '../problems/catalogue.ts';
import { objectsIn, referredName, type Schema, schemaWords } from './schema-words.ts';

interface Parameter {
  readonly name: string;
  readonly in: string;
  readonly required?: boolean;
  readonly description?: string;
  readonly schema: Schema;
}

interface MediaType {
  readonly schema?: Schema;
  readonly examples?: Readonly<Record<string, { readonly value: unknown }>>;
}

interface Response {
  readonly description: string;
  readonly content?: Readonly<Record<string, MediaType>>;
}

interface Operation {
  readonly operationId: string;
  readonly summary: string;
  readonly description?: string;
  readonly tags: readonly string[];
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: { readonly content: Readonly<Record<string, MediaType>> };
  readonly responses: Readonly<Record<string, Response>>;
}

/** What is read here of the OpenAPI document. */
export interface Contract {
  readonly info: { readonly summary?: string; readonly description?: string };
  readonly tags: readonly { readonly name: string; readonly description: string }[];
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
}

interface Call {
  readonly method: string;
  readonly path: string;
  readonly operation: Operation;
}

const JSON_TYPE = 'application/json';
const PROBLEM_TYPE = 'application/problem+json';

/** The contract as a page: every call with its parameters and an example to copy, every schema, every refusal. */
export function docsPage(contract: Contract, origin: string): string {
  const calls: Call[] = Object.entries(contract.paths).flatMap(([path, operations]) =>
    Object.entries(operations).map(([method, operation]) => ({ method: method.toUpperCase(), path, operation })),
  );
  const groups = contract.tags.map((tag) => ({
    ...tag,
    calls: calls.filter(({ operation }) => operation.tags.includes(tag.name)),
  }));
  const { Plan = {}, ...others } = contract.components.schemas;
  const schemas: (readonly [string, Schema])[] = [['Plan', Plan], ...Object.entries(others)];
  const main = markup`<div class="title"><h1>Calls</h1>
<p class="lead">${contract.info.summary} ${contract.info.description}</p>
<p class="note">For programs: <a href="openapi.json">openapi.json</a>, OpenAPI 3.1.</p>
<p class="note"><a href="v1/changes">What changed</a>, by version. <a href="v1/clauses">Clauses of the standards</a>, each with its formulas and tests. <a href="v1/formulas">Formulas</a>. <a href="v1/sources">Sources</a>. <a href="problems">Problems</a>.</p></div>
<nav class="contents" aria-label="On this page">
${groups.map(
  ({ name, description, calls: own }) => markup`<div><h2><a href="#group-${name}">${description}</a></h2>
<ul>${own.map(({ method, path, operation }) => markup`<li><a href="#${operation.operationId}"><code>${method} ${path}</code></a></li>`)}</ul></div>
`,
)}<div class="wide"><h2><a href="#schemas">Schemas</a></h2>
<ul>${schemas.map(([name]) => markup`<li><a href="#schema-${name}">${name}</a></li>`)}</ul></div>
<div class="wide"><h2><a href="#refusals">Problems</a></h2>
<ul>${PROBLEM_CODES.map((code) => markup`<li><a href="#problem-${code}">${PROBLEM_KINDS[code].title}</a></li>`)}</ul></div>
</nav>
${formsSection(origin)}
${groups.map(
  ({ name, description, calls: own }) => markup`<section aria-labelledby="group-${name}">
<h2 class="head" id="group-${name}">${description}</h2>
${name === 'cells' ? cellsIntroduction(origin) : undefined}
${own.map((call) => callArticle(call, origin))}
</section>
`,
)}
<section aria-labelledby="schemas"><h2 class="head" id="schemas">Schemas</h2>
<p>Plain numbers are in the units of the plan; text may include a unit. A field without <b>required</b> may be left out, but not be null.</p>
${schemas.map(([name, schema]) => schemaArticle(name, schema, Plan))}
</section>
${refusalsSection()}`;
  return documentPage({ title: 'Calls', toRoot: '', main });
}

const text = (words: string) => words.replaceAll("'", '’');
const sentence = (words: string) => text(words.endsWith('.') ? words : `${words}.`);

function callArticle({ method, path, operation }: Call, origin: string): Markup {
  const { operationId, summary, description, parameters = [], requestBody, responses } = operation;
  const examples = examplesOf({ method, path, operation }, origin);
  const cell = CELL_IDS.find((id) => path === `/v1/cells/${id}`);
  return markup`<article class="call" aria-labelledby="${operationId}">
<div><h3 id="${operationId}"><code>${method} ${path}</code></h3>
<p>${sentence(summary)}</p>
${description === undefined ? undefined : markup`<p>${sentence(cell === undefined ? description : CELLS[cell].gives)}</p>`}
${parameters.length === 0 ? undefined : markup`<h4>Parameters</h4>${fieldList(parameters.map(parameterRow))}`}
${requestBody === undefined ? undefined : markup`<h4>Body</h4>${fieldList(bodyRows(requestBody.content))}`}
<h4>Answers</h4>${fieldList(responseRows(responses))}</div>
<div class="examples">${cell === undefined ? undefined : cellFormula(cell, origin)}${examples}</div>
</article>
`;
}

interface Row {
  readonly name: Markup;
  readonly kind: Markup | undefined;
  readonly says: string | undefined;
}

function fieldList(rows: readonly Row[]): Markup {
  return markup`<dl class="fields">
${rows.map(
  ({
    name,
    kind,
    says,
  }) => markup`<div><dt>${name}</dt><dd>${kind}${says === undefined ? undefined : markup` <span class="note">${text(says)}</span>`}</dd></div>
`,
)}</dl>
`;
}

const required = (is: boolean | undefined) => (is ? markup` <b>required</b>` : undefined);

function parameterRow({ name, in: place, required: wanted, description, schema }: Parameter): Row {
  const where = place === 'path' ? markup` <span class="note">in the address</span>` : undefined;
  const { maxLength: _, ...kind } = schema;
  return {
    name: markup`<code>${name}</code>${where}${required(wanted && place !== 'path')}`,
    kind: schemaWords(kind),
    says: description ?? schema.description,
  };
}

function bodyRows(content: Readonly<Record<string, MediaType>>): Row[] {
  return Object.entries(content).map(([type, { schema = {} }]) => ({
    name: markup`<code>${type}</code>`,
    kind: referredName(schema) === undefined ? markup`<a href="#forms">fields of a form</a>` : schemaWords(schema),
    says: undefined,
  }));
}

function responseRows(responses: Readonly<Record<string, Response>>): Row[] {
  const isRefusal = ([, { content = {} }]: readonly [string, Response]) => Object.hasOwn(content, PROBLEM_TYPE);
  const refusals = Object.entries(responses).filter(isRefusal);
  const answers = Object.entries(responses).filter((response) => !isRefusal(response));
  return [
    ...answers.map(answerRow),
    ...(refusals.length === 0 ? [] : [refusalRow(refusals.map(([status]) => status))]),
  ];
}

function refusalRow(statuses: readonly string[]): Row {
  const kind = markup`${statuses.map((status, index) => markup`${index === 0 ? '' : ', '}<code>${status}</code>`)} as <code>${PROBLEM_TYPE}</code> <a href="#schema-Problem">Problem</a>, or as a page`;
  return { name: markup`<a href="#refusals">Problems</a>`, kind, says: undefined };
}

function answerRow([status, { description, content = {} }]: readonly [string, Response]): Row {
  const forms = Object.entries(content).map(([type, { schema = {} }], index) => {
    const of = type === JSON_TYPE ? markup` ${schemaWords(schema)}` : undefined;
    return markup`${index === 0 ? '' : ', '}<code>${type}</code>${of}`;
  });
  return { name: markup`<code>${status}</code> ${description}`, kind: markup`${forms}`, says: undefined };
}

const inShell = (word: string) => `'${word.replaceAll("'", `'\\''`)}'`;

function examplesOf({ method, path, operation }: Call, origin: string): Markup {
  const address = path.replaceAll(/\{(\w+)\}/g, (_, name: string) => {
    const schema = operation.parameters?.find((parameter) => parameter.name === name)?.schema;
    return encodeURIComponent(String(schema?.example ?? name));
  });
  if (method === 'GET') {
    const cell = CELL_IDS.find((id) => path === `/v1/cells/${id}`);
    const query = cell === undefined ? '' : `?${CELLS[cell].example}`;
    return shell('In a shell', `curl -s ${inShell(`${origin}${address}${query}`)}`);
  }
  const examples = Object.entries(operation.requestBody?.content[JSON_TYPE]?.examples ?? {});
  examples.sort(([, one], [, other]) => JSON.stringify(one).length - JSON.stringify(other).length);
  return markup`${examples.map(([name, { value }]) =>
    shell(
      `In a shell: ${name.replaceAll('-', ' ')}`,
      `curl -s -H 'content-type: application/json' ${inShell(`${origin}${address}`)} -d ${inShell(compactJson(value))}`,
    ),
  )}`;
}

function shell(title: string, command: string): Markup {
  return markup`<figure><figcaption class="note">${title}</figcaption><pre class="wrap">${command}</pre></figure>
`;
}

/** JSON of which small objects stand in one line. */
function compactJson(value: unknown, indent = ''): string {
  const line = JSON.stringify(value, null, 1).replaceAll(/\n\s*/g, ' ');
  if (line.length + indent.length <= 76 || typeof value !== 'object' || value === null) return line;
  const inner = `${indent}  `;
  const members = Array.isArray(value)
    ? value.map((entry) => inner + compactJson(entry, inner))
    : Object.entries(value).map(([key, entry]) => `${inner}${JSON.stringify(key)}: ${compactJson(entry, inner)}`);
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  return `${open}\n${members.join(',\n')}\n${indent}${close}`;
}

function formsSection(origin: string): Markup {
  const page = `<form method="post" accept-charset="utf-8" action="${origin}/v1/checks">
  <input type="hidden" name="units" value="us">
  <input name="site[wind]"> <input name="tower[top]">
  <input name="loads[0][name]"> <input name="loads[0][above]"> …
  <button>Check</button>
</form>`;
  return markup`<section aria-labelledby="forms"><h2 class="head" id="forms">From a plain page</h2>
<article class="call"><div><p>Every call with a body reads JSON or the fields of a form, so a page on another site needs no script. Each field is named by its path in the document, <code>tower[top]</code>, <code>loads[0][above]</code>. All values are text; a ticked box sends <code>on</code>. Blank means not given, and blank rows are dropped. A list of single values may be in one field, separated by semicolons or line ends. Or one field <code>plan</code> holds the whole document as JSON.</p>
<p>Errors come back as a page with each fault beside its field, or as <a href="#schema-Problem">Problem</a> where JSON is accepted. Scripts on other sites may read answers where the setting <code>CORS_ORIGINS</code> names the site.</p></div>
<div class="examples"><figure><figcaption class="note">In a page</figcaption><pre class="wrap">${page}</pre></figure></div></article></section>`;
}

function cellsIntroduction(origin: string): Markup {
  const separate = '=NUMBERVALUE(WEBSERVICE($B$1&"/v1/cells/pressure?speed="&B2&"…"),".")';
  return markup`<p>Each address answers with one number as text, for a cell of a sheet. <code>WEBSERVICE</code> returns text, which <code>NUMBERVALUE</code> turns into a number with any decimal sign. Sheets that separate arguments by semicolons need them here too. Build the address from cells: <code>${separate}</code>, with ${origin} in <code>B1</code>. Where there is no <code>WEBSERVICE</code>, <code>=IMPORTDATA("…")</code> asks from the servers of the sheet’s provider, so the service needs a public https address.</p>
<p>A fault is written in the cell after a question mark; <code>strict=1</code> makes it a problem instead. A list, <code>height=10;20;30</code>, gives a column.</p>`;
}

function cellFormula(id: CellId, origin: string): Markup {
  const { example } = CELLS[id];
  const address = `${origin}/v1/cells/${id}?${example}`;
  const gives = cellBody(id, readCell(id, Object.fromEntries(new URLSearchParams(example))), 'text').trim();
  const isNumber = Number.isFinite(Number(gives));
  const formula = isNumber ? `=NUMBERVALUE(WEBSERVICE("${address}"),".")` : `=WEBSERVICE("${address}")`;
  return markup`<figure><figcaption class="note">In a sheet, gives <b>${gives}</b></figcaption><pre class="wrap">${formula}</pre></figure>
`;
}

function schemaArticle(name: string, schema: Schema, plan: Schema): Markup {
  const known = name === 'Plan' ? new Map<string, string>() : planObjects(plan);
  const like = name === 'Plan' ? [] : likePlan(schema, plan);
  const rest = Object.entries(schema.properties ?? {}).filter(([field]) => !like.includes(field));
  const isKnown = (object: Schema) => known.has(JSON.stringify(object));
  const objects = objectsIn({ ...schema, properties: Object.fromEntries(rest) }, isKnown).filter(
    ({ schema: object }) => Object.keys(object.properties ?? {}).length > 0,
  );
  const fieldsAt = new Map(
    objects.map(({ place, schema: object }) => [object, known.get(JSON.stringify(object)) ?? fieldsId(name, place)]),
  );
  const shown = objects.filter(({ schema: object }) => !isKnown(object));
  return markup`<article class="schema" aria-labelledby="schema-${name}">
<h3 id="schema-${name}">${name}</h3>
${schema.description === undefined ? undefined : markup`<p>${sentence(schema.description)}</p>`}
${like.length === 0 ? undefined : markup`<p>As in <a href="#schema-Plan">Plan</a>: ${like.map((field, index) => markup`${index === 0 ? '' : ', '}<code>${field}</code>`)}.</p>`}
${shown.map(
  ({ place, schema: object }) =>
    markup`${place === '' ? undefined : markup`<h4 id="${fieldsId(name, place)}"><code>${place}</code></h4>`}${fieldList(
      Object.entries(object.properties ?? {}).map(([field, member]) => ({
        name: markup`<code>${field}</code>${required(object.required?.includes(field))}`,
        kind: schemaWords(member, fieldsAt),
        says: member.description,
      })),
    )}`,
)}</article>
`;
}

function fieldsId(name: string, place: string): string {
  return `schema-${name}.${place.replaceAll('[]', '')}`;
}

/** The objects of a plan, as text, and where their fields are shown: what else holds them leads there. */
function planObjects(plan: Schema): ReadonlyMap<string, string> {
  const inner = objectsIn(plan).filter(({ place }) => place !== '');
  return new Map(inner.map(({ place, schema }) => [JSON.stringify(schema), fieldsId('Plan', place)]));
}

/** Fields that a part of a plan has exactly as the plan itself; they are shown there once. */
function likePlan(schema: Schema, { properties = {} }: Schema): readonly string[] {
  const like = Object.entries(schema.properties ?? {}).filter(
    ([field, member]) =>
      Object.hasOwn(properties, field) && JSON.stringify(properties[field]) === JSON.stringify(member),
  );
  return like.length > 2 ? like.map(([field]) => field) : [];
}

function refusalsSection(): Markup {
  return markup`<section aria-labelledby="refusals"><h2 class="head" id="refusals">Problems</h2>
<p>By RFC 9457: <code>type</code> names the problem and never changes its meaning. <code>faults</code> lists all errors at once, each with a pointer into the document, the field of a form, or the parameter.</p>
<dl class="fields">
${PROBLEM_CODES.map((code) => {
  const { status, title, cause, remedy } = PROBLEM_KINDS[code];
  return markup`<div id="problem-${code}"><dt>${title} <code>${status}</code><br/><a href="problems/${code}"><code>/problems/${code}</code></a></dt><dd>${cause} <span class="note">${remedy}</span></dd></div>
`;
})}</dl></section>`;
}
