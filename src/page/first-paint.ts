import { renderToString } from 'preact-render-to-string';
import type { Answer } from '../answer/index.ts';
import { assetAddress, FORM_SCRIPTS } from './assets.ts';
import { App } from './form/app.mjs';
import { draftOf } from './form/draft.mjs';
import { html } from './form/html.mjs';
import { type ListedMethod, listMethods } from './form/methods.mjs';
import { answer, emptyDraft, scripted, startWith } from './form/store.mjs';

/** What the sheet is painted from. */
export interface FirstPaint {
  /** Adopted building codes with the method and speed that go with each, as `GET /v1/codes` has them. */
  readonly codes: readonly unknown[];
  /** Standards a plan may go by, in the order of their choice. */
  readonly methods: readonly ListedMethod[];
  readonly plans: readonly { readonly id: string; readonly title: string; readonly says: string }[];
  /** Forms in which a worksheet can be had: html, pdf. */
  readonly worksheets: readonly string[];
  readonly version: string;
  /** Who runs the service, in words, and where they are reached. */
  readonly runBy?: { readonly words: string; readonly href?: string | undefined } | undefined;
  readonly units?: 'us' | 'si' | undefined;
  /** A plan to start from. */
  readonly plan?: unknown;
  /** The answer to it, with the drawings `ladder` and `elevation`. */
  readonly answer?: Answer | undefined;
}

/** JSON that cannot end the element it stands in. */
function dataText(value: unknown): string {
  return JSON.stringify(value)
    .replaceAll('<', '\\u003c')
    .replaceAll('\u2028', '\\u2028')
    .replaceAll('\u2029', '\\u2029');
}

/** The sheet as a page: it can be filled in and posted as it is, and comes to life where script runs. */
export function firstPaint({
  codes,
  methods,
  plans,
  worksheets,
  version,
  runBy,
  units,
  plan,
  answer: answered,
}: FirstPaint): string {
  listMethods(methods);
  const draft = plan === undefined ? emptyDraft(units) : draftOf(plan);
  const start = { codes, methods, plans, worksheets, version, runBy, draft, answer: answered ?? null };
  // One paint at a time: nothing is awaited between setting the state and reading it.
  startWith(draft);
  answer.value = start.answer;
  scripted.value = false;
  const painted = renderToString(html`<${App} start=${start} />`);
  const title =
    typeof draft['title'] === 'string'
      ? `${draft['title']} – Gustworthy`
      : 'Gustworthy: is this tower rated for these antennas?';
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</title>
<link rel="stylesheet" href="${assetAddress('sheet.css')}">
<link rel="stylesheet" href="${assetAddress('form.css')}">
<link rel="icon" href="${assetAddress('mark.svg')}" type="image/svg+xml">
${FORM_SCRIPTS.map((name) => `<link rel="modulepreload" href="${assetAddress(name)}">\n`).join('')}<script type="module" src="${assetAddress('form.mjs')}"></script>
<noscript><link rel="stylesheet" href="${assetAddress('fonts.css')}"></noscript>
</head>
<body>
<form id="form" method="post" action="v1/checks?as=html" novalidate>${painted}</form>
<p id="spoken" class="unseen" role="status"></p>
<script type="application/json" id="start">${dataText(start)}</script>
</body>
</html>
`;
}
