import { assetAddress } from '../../page/index.ts';
import { VERSION } from '../version.ts';
import { type Markup, markup } from './markup.ts';

interface DocumentPage {
  readonly title: string;
  /** The way from the page's folder to the root of the service: '' for /docs, '../' for /v1/checks. */
  readonly toRoot: string;
  readonly main: Markup;
}

/** A page of text in the colours of the sheet, without script. */
export function documentPage({ title, toRoot, main }: DocumentPage): string {
  const page = markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<title>${title} · Gustworthy</title>
<link rel="icon" href="${assetAddress('mark.svg', toRoot)}" type="image/svg+xml"/>
<link rel="stylesheet" href="${assetAddress('fonts.css', toRoot)}"/>
<link rel="stylesheet" href="${assetAddress('sheet.css', toRoot)}"/>
<link rel="stylesheet" href="${assetAddress('document.css', toRoot)}"/>
</head>
<body>
<div class="sheet document">
<header class="masthead"><a class="name" href="${rootOf(toRoot)}">Gustworthy</a>
<nav aria-label="More"><a class="act" href="${rootOf(toRoot)}">Your plan</a><a class="act" href="${toRoot}docs">Calls</a></nav></header>
<main>
${main}
</main>
<footer class="foot"><p class="note">Gustworthy ${VERSION}. It compares the numbers entered with the ratings entered. The local building code and a licensed engineer decide.</p></footer>
</div>
</body>
</html>
`;
  return page.markup;
}

/** Deeper addresses than this are none of ours, and a page about them need not find its style. */
const FOLDERS_AT_MOST = 8;

/** The way from the folder of an address up to the root of the service. */
export function wayToRoot(url: string): string {
  const folders = (url.split(/[?#]/)[0] as string).split('/').length - 2;
  return '../'.repeat(Math.min(Math.max(folders, 0), FOLDERS_AT_MOST));
}

function rootOf(toRoot: string): string {
  return toRoot === '' ? './' : toRoot;
}
