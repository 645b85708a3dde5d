import { describe, expect, it } from 'vitest';
import { fileCycles, importLawBreaches, importsOf, roomCycles } from './import-law-reader.ts';
import { projectFiles } from './source-files.ts';

const sources = projectFiles('src', /\.(ts|mjs)$/);

describe('the import law', () => {
  it('has files to look at', () => {
    expect(sources.map((file) => file.path)).toContain('src/foundation/index.ts');
  });

  it('is kept by every file', () => {
    expect(importLawBreaches(sources)).toEqual([]);
  });

  it('leaves no cycle between rooms', () => {
    expect(roomCycles(sources)).toEqual([]);
  });

  it('leaves no circle of files inside a room, by types neither', () => {
    expect(fileCycles(sources)).toEqual([]);
  });

  it('lets random tests draw from the one seed alone', () => {
    const drawing = projectFiles('test', /\.ts$/).filter(({ text }) => importsOf(text).includes('fast-check'));
    expect(drawing.map(({ path }) => path)).toEqual(['test/fast-check.ts']);
  });
});

describe('the reader of the import law', () => {
  const breach = (path: string, text: string) => importLawBreaches([{ path, text }]);

  it('has a door of plain modules for the browser', () => {
    expect(breach('src/page/form/a.mjs', "import '../../words/index.mjs';")).toEqual([]);
    expect(breach('src/page/form/a.mjs', "import '../../words/fields.mjs';")[0]).toContain('src/words/index.mjs');
    expect(breach('src/plan/a.ts', "import '../words/index.mjs';")[0]).toContain('src/words/index.ts');
  });

  it('sees every form of import', () => {
    const text = [
      "import './a.ts';",
      "import type { B } from './b.ts';",
      "export * from './c.ts';",
      "const d = await import('./d.ts');",
      "const e = require('e');",
      "// import './f.ts';",
      "/* import './g.ts'; */",
      "import {\n  h,\n} from './h.ts';",
      "const i = text.from ?? far('from', 'i');",
    ].join('\n');
    expect(importsOf(text)).toEqual(['./a.ts', './b.ts', './c.ts', './d.ts', 'e', './h.ts']);
  });

  it('refuses a room above', () => {
    expect(breach('src/wind/gust.ts', "import { x } from '../margins/index.ts';")).toHaveLength(1);
    expect(breach('src/foundation/units.ts', "import { x } from '../wind/index.ts';")).toHaveLength(1);
    expect(breach('src/margins/use.ts', "import { x } from '../plan/index.ts';")).toHaveLength(1);
  });

  it('allows a room below, at its door only', () => {
    expect(breach('src/wind/gust.ts', "import { x } from '../foundation/index.ts';")).toEqual([]);
    expect(breach('src/wind/gust.ts', "import { x } from '../foundation/units.ts';")).toHaveLength(1);
    expect(breach('src/server.ts', "import { x } from './http/app.ts';")).toHaveLength(1);
    expect(breach('src/server.ts', "import { x } from './http/index.ts';")).toEqual([]);
  });

  it('refuses packages and node modules in the domain, and unknown rooms', () => {
    expect(breach('src/wind/gust.ts', "import { x } from 'node:fs';")).toHaveLength(1);
    expect(breach('src/areas/tube.ts', "import { z } from 'zod';")).toHaveLength(1);
    expect(breach('src/plan/schema.ts', "import { z } from 'zod';")).toEqual([]);
    expect(breach('src/plan/schema.ts', "import fastify from 'fastify';")).toHaveLength(1);
    expect(breach('src/attic/thing.ts', '')).toHaveLength(1);
  });

  it('finds a cycle', () => {
    const files = [
      { path: 'src/wind/a.ts', text: "import { x } from '../areas/index.ts';" },
      { path: 'src/areas/b.ts', text: "import { x } from '../wind/index.ts';" },
    ];
    expect(roomCycles(files)).toContain('wind → areas → wind');
    const inside = [
      { path: 'src/wind/a.ts', text: "import './b.ts';" },
      { path: 'src/wind/b.ts', text: "import type { C } from './deep/c.ts';" },
      { path: 'src/wind/deep/c.ts', text: "export * from '../a.ts';" },
      { path: 'src/wind/d.ts', text: "import './a.ts';" },
    ];
    expect(roomCycles(inside)).toEqual([]);
    expect(fileCycles(inside)).toEqual(['src/wind/a.ts → src/wind/b.ts → src/wind/deep/c.ts → src/wind/a.ts']);
  });
});
