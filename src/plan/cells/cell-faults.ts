import type { Fault } from '../faults/fault.ts';
import { placeWords } from '../faults/place-words.ts';
import { CELLS, type CellId } from './cell-definitions.ts';

/** What does not fit in the address of a cell, by parameter. */
export interface CellFault {
  readonly parameter?: string;
  readonly code: string;
  readonly given: string;
  readonly allowed: string;
  readonly says: string;
}

const OF_BOUNDS: ReadonlySet<Fault['code']> = new Set<Fault['code']>(['out-of-bounds', 'not-a-choice', 'wrong-type']);

/** A fault of a cell's document in the words of its address; by parameter, where one is to blame. */
export function cellFault(id: CellId, given: ReadonlyMap<string, string>, document: unknown, fault: Fault): CellFault {
  const parameter = blamed(id, given, fault.pointer.slice(1));
  const { code, given: shown, allowed } = fault;
  return {
    ...(parameter === undefined ? {} : { parameter }),
    code,
    given: shown,
    allowed,
    says: parameter === undefined ? fault.says : saysOf(fault, parameter, document),
  };
}

function saysOf(fault: Fault, parameter: string, document: unknown): string {
  if (fault.code === 'missing') return `${parameter} is missing: give ${fault.allowed}.`;
  if (OF_BOUNDS.has(fault.code)) {
    const meant = /Did you mean .*$/.exec(fault.says)?.[0];
    return `${parameter}: ${fault.given} given, ${fault.allowed} allowed.${meant === undefined ? '' : ` ${meant}`}`;
  }
  const path = fault.pointer
    .slice(2)
    .split('/')
    .map((part) => (/^\d+$/.test(part) ? Number(part) : part));
  for (const words of [placeWords(document, path), placeWords(document, path.slice(0, -1))]) {
    const rest = fault.says.startsWith(words) ? fault.says.slice(words.length) : undefined;
    if (rest !== undefined && /^[ :]/.test(rest)) return `${parameter}${rest}`;
  }
  return `${parameter}: ${fault.says}`;
}

/** The parameter whose text stands where the fault is: there, inside or around it; one that was given before one that was not. */
function blamed(id: CellId, given: ReadonlyMap<string, string>, pointer: string): string | undefined {
  const parameters = Object.entries(CELLS[id].parameters);
  const fits: readonly ((at: string) => boolean)[] = [
    (at) => at === pointer,
    (at) => pointer.startsWith(`${at}/`),
    (at) => at.startsWith(`${pointer}/`),
  ];
  for (const fit of fits) {
    const names = parameters.filter(([, { at }]) => at.some(fit)).map(([name]) => name);
    const named = names.findLast((name) => given.has(name)) ?? names[0];
    if (named !== undefined && (fit !== fits[2] || names.length === 1)) return named;
  }
  return undefined;
}
