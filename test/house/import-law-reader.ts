import { posix } from 'node:path';
import type { ProjectFile } from './source-files.ts';

const DOMAIN = ['foundation', 'wind', 'areas', 'methods', 'structure', 'margins'];
const TO_WORDS = [...DOMAIN, 'words'];

interface Law {
  readonly rooms: readonly string[];
  /** Packages and node modules by name, or any. */
  readonly packages: readonly string[] | 'any';
}

/** Which room may use which; the same law stands as lint rules in .biome.json. */
export const IMPORT_LAW: Readonly<Record<string, Law>> = {
  foundation: { rooms: [], packages: [] },
  wind: { rooms: ['foundation'], packages: [] },
  areas: { rooms: ['foundation', 'wind'], packages: [] },
  methods: { rooms: ['foundation', 'wind', 'areas'], packages: [] },
  structure: { rooms: ['foundation', 'wind', 'areas', 'methods'], packages: [] },
  margins: { rooms: ['foundation', 'wind', 'areas', 'methods', 'structure'], packages: [] },
  words: { rooms: DOMAIN, packages: [] },
  plan: { rooms: TO_WORDS, packages: ['zod', 'mathjs', 'node:module', 'node:crypto'] },
  answer: { rooms: TO_WORDS, packages: ['zod'] },
  worksheet: { rooms: [...TO_WORDS, 'answer'], packages: 'any' },
  drawing: { rooms: [...TO_WORDS, 'answer'], packages: 'any' },
  page: { rooms: ['words', 'answer'], packages: 'any' },
  http: { rooms: [...TO_WORDS, 'answer', 'plan', 'worksheet', 'drawing', 'page'], packages: 'any' },
};

/** The process itself: files directly in src. */
const PROCESS: Law = { rooms: ['http'], packages: 'any' };

/** What a file imports, by every form of import and by require. */
export function importsOf(text: string): string[] {
  const code = text.replaceAll(/\/\*[\s\S]*?\*\//g, '').replaceAll(/^\s*\/\/.*$/gm, '');
  const forms = [
    /^(?:import|export)\b[^;'"]*?\bfrom\s*(['"])([^'"\n]+)\1/gm,
    /^import\s*(['"])([^'"\n]+)\1/gm,
    /\b(?:import|require)\s*\(\s*(['"])([^'"\n]+)\1/g,
  ];
  const found = forms.flatMap((form) => [...code.matchAll(form)]);
  return found.sort((a, b) => a.index - b.index).map((match) => match[2] as string);
}

function roomOf(path: string): string | undefined {
  const parts = path.split('/');
  return parts[0] === 'src' && parts.length > 2 ? parts[1] : undefined;
}

function packageName(target: string): string {
  if (target.startsWith('node:')) return target;
  const parts = target.split('/');
  return target.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] as string);
}

/** The browser reads no types: the page has a door of its own. */
function doorOf(room: string, from: string | undefined): string {
  return `src/${room}/index.${from === 'page' && room === 'words' ? 'mjs' : 'ts'}`;
}

/** Every breach of the import law, each a sentence naming the file. */
export function importLawBreaches(files: readonly ProjectFile[]): string[] {
  const breaches: string[] = [];
  for (const file of files) {
    const room = roomOf(file.path);
    const law = room === undefined ? PROCESS : IMPORT_LAW[room];
    if (law === undefined) {
      breaches.push(`${file.path}: the room ${room} is not in the import law`);
      continue;
    }
    for (const target of importsOf(file.text)) {
      if (!target.startsWith('.')) {
        const name = packageName(target);
        if (law.packages !== 'any' && !law.packages.includes(name)) {
          breaches.push(`${file.path}: the room ${room} may not use ${name}`);
        }
        continue;
      }
      const path = posix.normalize(posix.join(posix.dirname(file.path), target));
      const targetRoom = roomOf(path);
      if (!path.startsWith('src/')) breaches.push(`${file.path}: ${target} lies outside src`);
      else if (targetRoom === room) continue;
      else if (targetRoom === undefined) breaches.push(`${file.path}: a room may not use ${path}`);
      else if (!law.rooms.includes(targetRoom)) {
        breaches.push(`${file.path}: ${room ?? 'the process'} may not use the room ${targetRoom}`);
      } else if (path !== doorOf(targetRoom, room)) {
        breaches.push(
          `${file.path}: ${path} is inside the room ${targetRoom}; use its door, ${doorOf(targetRoom, room)}`,
        );
      }
    }
  }
  return breaches;
}

/** Whatever reaches itself through others, each as a chain. */
function cyclesIn(reaches: ReadonlyMap<string, ReadonlySet<string>>): string[] {
  const cycles: string[] = [];
  const done = new Set<string>();
  const visit = (place: string, chain: readonly string[]) => {
    if (chain.includes(place)) {
      cycles.push([...chain.slice(chain.indexOf(place)), place].join(' → '));
      return;
    }
    if (done.has(place)) return;
    for (const next of reaches.get(place) ?? []) visit(next, [...chain, place]);
    done.add(place);
  };
  for (const place of reaches.keys()) visit(place, []);
  return cycles;
}

/** What each place imports of the others, a place being what `placeOf` makes of a path. */
function reachesOf(files: readonly ProjectFile[], placeOf: (path: string) => string | undefined) {
  const reaches = new Map<string, Set<string>>();
  for (const file of files) {
    const place = placeOf(file.path);
    if (place === undefined) continue;
    const targets = reaches.get(place) ?? new Set<string>();
    reaches.set(place, targets);
    for (const target of importsOf(file.text)) {
      if (!target.startsWith('.')) continue;
      const reached = placeOf(posix.normalize(posix.join(posix.dirname(file.path), target)));
      if (reached !== undefined && reached !== place) targets.add(reached);
    }
  }
  return reaches;
}

/** Rooms that reach themselves through others, each as a chain. */
export function roomCycles(files: readonly ProjectFile[]): string[] {
  return cyclesIn(reachesOf(files, roomOf));
}

/** Files that reach themselves through others, by types too, each as a chain. */
export function fileCycles(files: readonly ProjectFile[]): string[] {
  return cyclesIn(reachesOf(files, (path) => path));
}
