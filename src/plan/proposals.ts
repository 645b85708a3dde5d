import type { Fault } from './faults/fault.ts';
import { pointerTo } from './faults/fault.ts';

type Json = unknown;
type Fields = Readonly<Record<string, Json>>;

/** What someone would like to change of a plan, as it came by JSON and fits the schema. */
export interface ProposalFields {
  readonly name: string;
  readonly set?: Fields | undefined;
  readonly remove?: readonly string[] | undefined;
  readonly swap?: readonly { readonly load: string; readonly with: Fields }[] | undefined;
  readonly move?: readonly { readonly load: string; readonly height?: Json; readonly above?: Json }[] | undefined;
  readonly add?: readonly Fields[] | undefined;
}

/** Where a part of the changed plan came from in the proposal. */
interface Origin {
  readonly index: number;
  readonly pointer: string;
}

export type AppliedProposal =
  | {
      readonly ok: true;
      readonly plan: Fields;
      /** Turns a pointer into the changed plan into one into the request. */
      readonly placed: (pointer: string) => string;
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const isFields = (value: Json): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * A document changed by a merge patch, RFC 7396: members of the patch replace or join, null takes a member away, a list
 * stands for the whole list.
 *
 * @param target the document [-]
 * @param patch the patch [-]
 * @returns a new document [-]
 * @example JSON.stringify(mergePatch({ a: 'b', c: { d: 'e', f: 'g' } }, { a: 'z', c: { f: null } })) // '{"a":"z","c":{"d":"e"}}'
 * @source rfc7396
 */
export function mergePatch(target: Json, patch: Json): Json {
  if (!isFields(patch)) return patch;
  const merged: Record<string, Json> = isFields(target) ? { ...target } : {};
  for (const [key, value] of Object.entries(patch)) {
    if (value === null) delete merged[key];
    else {
      Object.defineProperty(merged, key, {
        value: mergePatch(Object.hasOwn(merged, key) ? merged[key] : undefined, value),
        enumerable: true,
        configurable: true,
        writable: true,
      });
    }
  }
  return merged;
}

/** Fields of an old load that a new one in its place keeps, unless it says otherwise. */
const KEPT = ['height', 'above', 'turns', 'heading', 'on', 'offset'] as const;

/**
 * A plan with one proposal carried out: first what it sets, then what it removes, swaps, moves and adds.
 *
 * @param plan the plan as written [-]
 * @param proposal what is proposed [-]
 * @param at pointer of the proposal in the request [-]
 * @returns the changed plan, or what is wrong with the proposal [-]
 * @example applyProposal({ loads: [{ name: 'beam', above: 2, area: 5 }] }, { name: 'bare', remove: ['beam'] }, '/proposals/0').ok // true
 * @source derived
 */
export function applyProposal(plan: Fields, proposal: ProposalFields, at: string): AppliedProposal {
  const faults: Fault[] = [];
  const changed = (proposal.set === undefined ? plan : mergePatch(plan, proposal.set)) as Fields;
  const before = Array.isArray(changed['loads']) ? (changed['loads'] as Json[]) : [];
  const loads = before.map((load, index) => ({ load, origin: undefined as string | undefined, was: index }));
  const named = (name: string, pointer: string) => {
    const index = loads.findIndex(({ load }) => isFields(load) && load['name'] === name);
    if (index >= 0) return index;
    const names = loads.flatMap(({ load }) => (isFields(load) ? [String(load['name'])] : []));
    const allowed = names.length > 0 ? names.join(', ') : 'no load';
    faults.push({
      pointer: `#${pointer}`,
      code: 'unknown-load',
      given: name,
      allowed,
      says: `${proposal.name}: no load is called "${name}". There is: ${allowed}.`,
    });
    return -1;
  };
  (proposal.remove ?? []).forEach((name, index) => {
    const found = named(name, `${at}/remove/${index}`);
    if (found >= 0) loads.splice(found, 1);
  });
  (proposal.swap ?? []).forEach(({ load: name, with: other }, index) => {
    const pointer = `${at}/swap/${index}`;
    const found = named(name, `${pointer}/load`);
    const place = loads[found];
    if (!place) return;
    const old = place.load as Fields;
    const kept: Record<string, Json> = {};
    for (const key of KEPT) {
      const placedAnew = (key === 'height' || key === 'above') && ('height' in other || 'above' in other);
      if (old[key] !== undefined && !placedAnew) kept[key] = old[key];
    }
    loads[found] = { ...place, load: { name, ...kept, ...other }, origin: `${pointer}/with` };
  });
  (proposal.move ?? []).forEach(({ load: name, height, above }, index) => {
    const pointer = `${at}/move/${index}`;
    const found = named(name, `${pointer}/load`);
    const place = loads[found];
    if (!place) return;
    const { height: _, above: __, ...rest } = place.load as Record<string, Json>;
    const moved = { ...rest, ...(height === undefined ? {} : { height }), ...(above === undefined ? {} : { above }) };
    loads[found] = { ...place, load: moved, origin: pointer };
  });
  (proposal.add ?? []).forEach((load, index) => {
    loads.push({ load, origin: `${at}/add/${index}`, was: -1 });
  });
  if (faults.length > 0) return { ok: false, faults };
  const touched = loads.length > 0 || before.length > 0;
  const next = touched ? { ...changed, loads: loads.map(({ load }) => load) } : changed;
  const origins = loads.map(({ origin, was }, index): Origin => ({ index, pointer: origin ?? `/plan/loads/${was}` }));
  return { ok: true, plan: next, placed: (pointer) => placedIn(pointer, origins, proposal, at) };
}

/** A pointer into the changed plan as one into the request: a load's origin, what was set, else the plan itself. */
function placedIn(pointer: string, origins: readonly Origin[], proposal: ProposalFields, at: string): string {
  const path = pointer.startsWith('#') ? pointer.slice(1) : pointer;
  const ofLoad = /^\/loads\/(\d+)(.*)$/.exec(path);
  if (ofLoad) {
    const origin = origins[Number(ofLoad[1])];
    if (origin) return `#${origin.pointer}${ofLoad[2] ?? ''}`;
  }
  const [, first = ''] = path.split('/');
  const set = proposal.set;
  if (set && Object.hasOwn(set, first)) return `#${pointerTo(`${at}/set`, first)}${path.slice(first.length + 1)}`;
  return `#/plan${path}`;
}
