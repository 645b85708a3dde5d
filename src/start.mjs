import { fileURLToPath } from 'node:url';
import './required-node.mjs';

const { enableCompileCache, flushCompileCache } = await import('node:module');

// What the engine makes of each file is kept beside the packages, where it may be written: the next start takes a
// fraction of the time and a third less memory. Not in a folder for temporary files, where anyone could lay code down.
enableCompileCache(fileURLToPath(new URL('../node_modules/.cache/gustworthy', import.meta.url)));

await import('./server.ts');
flushCompileCache();
