import { build, stop } from 'esbuild';

/** The form's modules, the words and the libraries they use as one small file, and the map by which a browser shows them as they were written. */
export interface FormScript {
  readonly script: Buffer;
  readonly map: Buffer;
}

/** Made when the service starts: it takes some hundredths of a second in a process of its own that then ends. */
export async function formScript(folder: string, name: string): Promise<FormScript> {
  const { outputFiles } = await build({
    absWorkingDir: folder,
    entryPoints: ['form/start.mjs'],
    outfile: name,
    bundle: true,
    format: 'esm',
    target: 'esnext',
    minify: true,
    sourcemap: 'linked',
    write: false,
    logLevel: 'silent',
  });
  await stop();
  const made = (end: string): Buffer => {
    const file = outputFiles.find(({ path }) => path.endsWith(end));
    if (file === undefined) throw new Error(`no ${end} was made of the modules of the form`);
    return Buffer.from(file.contents);
  };
  return { script: made(name), map: made(`${name}.map`) };
}
