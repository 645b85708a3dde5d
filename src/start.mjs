import './required-node.mjs';

await import('./server.ts');
