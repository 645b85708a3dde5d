import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';

/** The name under which pages are also opened, as a machine in a network would be. */
export const OTHER_HOST = 'gust.example';

const packageFolder = folderOf('@sparticuz/chromium');
const { version } = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')) as { version: string };

/** The browser of the package and the libraries it carries, unpacked once for each version. */
async function unpackedBrowser(): Promise<string> {
  const folder = join(tmpdir(), `gustworthy-browser-${version}-with-fonts`);
  if (existsSync(folder)) return folder;
  // It unpacks to the temporary folder and takes whatever lies there; a folder of its own, named when it is whole,
  // keeps out an older browser, and one that another test is still unpacking.
  const own = mkdtempSync(join(tmpdir(), 'gustworthy-browser-'));
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = own;
  try {
    const { default: carried, inflate } = await import('@sparticuz/chromium');
    await carried.executablePath();
    await inflate(join(packageFolder, 'bin', 'al2023.tar.br'));
    // Its own list of font folders names places of cloud functions; without any font the browser shows no text and falls.
    const fonts = join(folder, 'fonts');
    writeFileSync(
      join(own, 'fonts', 'fonts.conf'),
      `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${fonts}</dir><cachedir>${fonts}/cache</cachedir></fontconfig>`,
    );
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
  try {
    renameSync(own, folder);
  } catch (error) {
    if (!existsSync(folder)) throw error;
    rmSync(own, { recursive: true });
  }
  return folder;
}

async function startedBrowser(moreArguments: readonly string[]): Promise<Browser> {
  const folder = await unpackedBrowser();
  return chromium.launch({
    executablePath: join(folder, 'chromium'),
    // Its own list of arguments switches the same-origin rules off and runs all in one process; neither is wanted.
    args: ['--no-sandbox', `--host-resolver-rules=MAP ${OTHER_HOST} 127.0.0.1`, ...moreArguments],
    env: {
      ...(process.env as Record<string, string>),
      LD_LIBRARY_PATH: join(folder, 'al2023', 'lib'),
      FONTCONFIG_PATH: join(folder, 'fonts'),
    },
  });
}

/** The folder of a package, whose own door may not name its package.json. */
function folderOf(name: string): string {
  const wanted = join(...name.split('/'));
  let folder = dirname(createRequire(import.meta.url).resolve(name));
  while (!folder.endsWith(wanted)) {
    if (dirname(folder) === folder) throw new Error(`the folder of the package ${name} is not found`);
    folder = dirname(folder);
  }
  return folder;
}

export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Console messages and errors of the page, one a line. */
  readonly messages: string[];
  /** Every address asked for. */
  readonly requests: string[];
}

export interface RealBrowser {
  open(options?: BrowserContextOptions): Promise<OpenedPage>;
}

/** A real browser for the tests of a describe block; each page opened is closed after its test. */
export function realBrowser(...moreArguments: readonly string[]): RealBrowser {
  let browser: Browser | undefined;
  const contexts: BrowserContext[] = [];
  beforeAll(async () => {
    browser = await startedBrowser(moreArguments);
  }, 120_000);
  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
  });
  afterAll(async () => {
    await browser?.close();
  });
  return {
    async open(options = {}) {
      if (browser === undefined) throw new Error('the browser has not started');
      const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
      contexts.push(context);
      const page = await context.newPage();
      const messages: string[] = [];
      const requests: string[] = [];
      page.on('console', (message) => messages.push(`${message.type()}: ${message.text()}`));
      page.on('pageerror', (error) => messages.push(`error: ${error.message}`));
      page.on('request', (request) => requests.push(request.url()));
      return { page, context, messages, requests };
    },
  };
}
