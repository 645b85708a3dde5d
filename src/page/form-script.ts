import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { build, type Plugin, stop, transform } from 'esbuild';

/** The form's modules, the words and the libraries they use in few small files, with the maps by which a browser shows them as they were written. */
export interface FormScript {
  readonly files: readonly { readonly name: string; readonly content: Buffer }[];
  /** Files that the first one needs at once; what a view used later needs comes when it is opened. */
  readonly atOnce: readonly string[];
}

/** Made when the service starts: it takes some hundredths of a second in a process of its own that then ends. */
export async function formScript(folder: string, name: string): Promise<FormScript> {
  const { outputFiles, metafile } = await build({
    absWorkingDir: folder,
    entryPoints: [{ in: 'form/start.mjs', out: basename(name, '.mjs') }],
    outdir: '.',
    outExtension: { '.js': '.mjs' },
    chunkNames: '[name]-[hash]',
    bundle: true,
    splitting: true,
    format: 'esm',
    target: 'esnext',
    minify: true,
    sourcemap: 'linked',
    metafile: true,
    write: false,
    logLevel: 'silent',
    plugins: [asAsked],
  });
  await stop();
  const first = metafile.outputs[name];
  if (first === undefined) throw new Error(`no ${name} was made of the modules of the form`);
  return {
    files: outputFiles.map(({ path, contents }) => ({ name: basename(path), content: Buffer.from(contents) })),
    atOnce: first.imports.filter(({ kind }) => kind === 'import-statement').map(({ path }) => path),
  };
}

/** The words of the fields as the form asks for them: what describes each to a program stays in the contract. */
const asAsked: Plugin = {
  name: 'fields-as-asked',
  setup({ onLoad }) {
    onLoad({ filter: /[/\\]words[/\\]fields\.mjs$/ }, ({ path }) => ({
      contents: undescribed(readFileSync(path, 'utf8')),
    }));
  },
};

const TEXT = String.raw`(?:'(?:[^'\\]|\\.)*'|"(?:[^"\\]|\\.)*")`;
/** How many texts come before the description, by what makes a field. */
const BEFORE = { quantity: 2, plain: 1, choice: 1, list: 3 } as const;

function undescribed(source: string): string {
  return Object.entries(BEFORE).reduce((so, [of, before]) => {
    const call = new RegExp(String.raw`(\b${of}\((?:\s*${TEXT},){${before}})\s*${TEXT}`, 'g');
    return so.replace(call, "$1''");
  }, source);
}

/** Style sheets without their remarks and blanks. */
export async function smallStyles(texts: readonly string[]): Promise<readonly Buffer[]> {
  const small = await Promise.all(texts.map((text) => transform(text, { loader: 'css', minify: true })));
  await stop();
  return small.map(({ code }) => Buffer.from(code));
}
