import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FONT_STYLE, FONTS } from './fonts.ts';
import { formScript, smallStyles } from './form-script.ts';

/** One file a page asks for. */
export interface Asset {
  /** Its place under the versioned address, 'sheet.css' or 'fonts/serif-latin.woff2'. */
  readonly name: string;
  readonly type: string;
  readonly content: Buffer;
}

const TYPES: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  map: 'application/json; charset=utf-8',
  mjs: 'text/javascript; charset=utf-8',
  svg: 'image/svg+xml; charset=utf-8',
  woff2: 'font/woff2',
};

const HERE = dirname(fileURLToPath(import.meta.url));

function packageFile(path: string): Buffer {
  const parts = path.split('/');
  const name = path.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] as string);
  return readFileSync(join(packageFolder(name), ...parts.slice(name.split('/').length)));
}

/** Where a package lies, found as Node finds it, from this folder upwards. */
function packageFolder(name: string): string {
  for (let folder = HERE; ; folder = dirname(folder)) {
    const candidate = join(folder, 'node_modules', name);
    try {
      readFileSync(join(candidate, 'package.json'));
      return candidate;
    } catch (error) {
      if (dirname(folder) === folder) throw new Error(`the package ${name} is not installed`, { cause: error });
    }
  }
}

function asset(name: string, content: Buffer): Asset {
  const type = TYPES[name.split('.').at(-1) as string];
  if (type === undefined) throw new Error(`${name} is of no kind a page asks for`);
  return { name, type, content };
}

function filesOf(folder: string): Asset[] {
  return readdirSync(join(HERE, folder))
    .filter((name) => !name.startsWith('.') && (name.split('.').at(-1) as string) in TYPES)
    .sort()
    .map((name) => asset(name, readFileSync(join(HERE, folder, name))));
}

const files = filesOf('assets');
const isStyle = ({ name }: Asset) => name.endsWith('.css');
const styles = await smallStyles(files.filter(isStyle).map(({ content }) => content.toString('utf8')));
const FORM_SCRIPT = 'form.mjs';
const { files: scripts, atOnce } = await formScript(HERE, FORM_SCRIPT);
/** What the form's script needs before it can run, so that a page may ask for it at once. */
export const FORM_SCRIPTS: readonly string[] = atOnce;

/** Every file of every page: style sheets in `assets/`, the form's script, fonts from their packages. */
export const ASSETS: ReadonlyMap<string, Asset> = new Map(
  [
    ...files.filter((file) => !isStyle(file)),
    ...files.filter(isStyle).map(({ name }, index) => asset(name, styles[index] as Buffer)),
    ...scripts.map(({ name, content }) => asset(name, content)),
    asset('fonts.css', Buffer.from(FONT_STYLE)),
    ...FONTS.map(([name, path]) => asset(name, packageFile(path))),
  ].map((each) => [each.name, each]),
);

/** Changes with any byte of any file, so that a browser may keep what it has for ever. */
export const ASSETS_VERSION = (() => {
  const hash = createHash('sha256');
  for (const { name, content } of ASSETS.values()) hash.update(`${name}\n${content.length}\n`).update(content);
  return hash.digest('hex').slice(0, 12);
})();

/**
 * The address of a file, relative to the page that asks for it, so that it holds under any base path.
 *
 * @param toRoot the way from the page's folder up to the root of the service: '' for / and /docs, '../' for /v1/checks [-]
 */
export function assetAddress(name: string, toRoot = ''): string {
  if (!ASSETS.has(name)) throw new Error(`there is no asset ${name}`);
  return `${toRoot}assets/${ASSETS_VERSION}/${name}`;
}

/** A text as a content policy names it. */
export function policyHash(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}
