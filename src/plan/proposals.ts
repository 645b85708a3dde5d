import { type Fault, type FaultCode, isObject, pointerTo } from './faults/fault.ts';
import { givenWords } from './faults/given-words.ts';
import { nearestName } from './faults/nearest-name.ts';
import { loadName } from './reading/read-loads.ts';

type Json = unknown;
type Fields = Readonly<Record<string, Json>>;

/** What someone would like to change of a plan, as it came by JSON; what the loads hold is read with the changed plan. */
export interface ProposalFields {
  readonly name: string;
  readonly set?: Fields | undefined;
  readonly remove?: readonly string[] | undefined;
  readonly swap?: readonly { readonly load: string; readonly with: Fields }[] | undefined;
  readonly move?: readonly { readonly load: string; readonly height?: Json; readonly above?: Json }[] | undefined;
  readonly add?: readonly Json[] | undefined;
}

/** A place in the request for a place in the changed plan. */
export interface PlaceInRequest {
  /** '#/proposals/2/add/0/area', or '#/plan/mast' where the proposal left it as it was. */
  readonly pointer: string;
  readonly ofPlan: boolean;
}

export interface AppliedProposal {
  /** As far as the proposal can be carried out. */
  readonly plan: Fields;
  /** Turns a pointer into the changed plan into one into the request. */
  readonly placed: (pointer: string) => PlaceInRequest;
  readonly faults: readonly Fault[];
}

/** Where a load of the changed plan came from. */
interface Origin {
  /** '/plan/loads/3', '/proposals/0/add/0' or the like. */
  readonly pointer: string;
  readonly moved?: string;
}

interface Place extends Origin {
  readonly load: Json;
}

/**
 * A document changed by a merge patch, RFC 7396: members of the patch replace or join, null takes a member away, a list
 * stands for the whole list.
 *
 * @param patch the patch, no deeper than `deeperThan` lets pass
 * @example JSON.stringify(mergePatch({ a: 'b', c: { d: 'e', f: 'g' } }, { a: 'z', c: { f: null } })) // '{"a":"z","c":{"d":"e"}}'
 * @source rfc7396
 */
export function mergePatch(target: Json, patch: Json): Json {
  if (!isObject(patch)) return patch;
  const merged = new Map<string, Json>(isObject(target) ? Object.entries(target) : []);
  for (const [key, value] of Object.entries(patch)) {
    if (value === null) merged.delete(key);
    else merged.set(key, mergePatch(merged.get(key), value));
  }
  return Object.fromEntries(merged);
}

/** Whether objects stand in objects more than so many deep. */
export function deeperThan(value: Json, levels: number): boolean {
  if (!isObject(value)) return false;
  return levels === 0 || Object.values(value).some((member) => deeperThan(member, levels - 1));
}

/** Fields of an old load that a new one in its place keeps, unless it says otherwise. */
const KEPT = ['height', 'above', 'turns', 'heading', 'on', 'offset'] as const;

/**
 * A plan with one proposal carried out: first what it sets, then what it removes, swaps, moves and adds. A name is that
 * which a load has by then.
 *
 * @param at pointer of the proposal in the request
 * @returns the changed plan, and what of the proposal could not be carried out
 * @example applyProposal({ loads: [{ name: 'beam', above: 2, area: 5 }] }, { name: 'bare', remove: ['beam'] }, '/proposals/0').plan // { loads: [] }
 */
export function applyProposal(plan: Fields, proposal: ProposalFields, at: string): AppliedProposal {
  const faults: Fault[] = [];
  const changed = (proposal.set === undefined ? plan : mergePatch(plan, proposal.set)) as Fields;
  const listed = changed['loads'] === undefined ? [] : changed['loads'];
  const touched = [proposal.remove, proposal.swap, proposal.move, proposal.add].some((list) => list && list.length > 0);
  // What is no list is refused where the plan is read.
  const places = Array.isArray(listed) ? placesOf(listed as Json[], proposal, at) : [];
  if (Array.isArray(listed) && touched) changeLoads(places, proposal, at, faults);
  const next = touched && Array.isArray(listed) ? { ...changed, loads: places.map(({ load }) => load) } : changed;
  return { plan: next, placed: (pointer) => placedIn(pointer, places, proposal, at), faults };
}

function placesOf(loads: readonly Json[], proposal: ProposalFields, at: string): Place[] {
  const home = isObject(proposal.set) && Object.hasOwn(proposal.set, 'loads') ? `${at}/set/loads` : '/plan/loads';
  // What has no name keeps that of its place, whatever is taken away before it.
  return loads.map((load, index) => ({
    load: isObject(load) && load['name'] === undefined ? { ...load, name: loadName(undefined, index) } : load,
    pointer: `${home}/${index}`,
  }));
}

function changeLoads(places: Place[], proposal: ProposalFields, at: string, faults: Fault[]): void {
  const gone: string[] = [];
  const fault = (pointer: string, code: FaultCode, given: string, allowed: string, says: string) =>
    faults.push({ pointer: `#${pointer}`, code, given, allowed, says: `${proposal.name}: ${says}` });
  const find = (name: unknown, pointer: string): number => {
    // What is no name is refused by the form.
    if (typeof name !== 'string') return -1;
    const found = places.findIndex(({ load }) => isObject(load) && alike(load['name'], name));
    if (found >= 0) return found;
    const names = places.flatMap(({ load }) =>
      isObject(load) && typeof load['name'] === 'string' ? [load['name']] : [],
    );
    const allowed = names.length > 0 ? names.join(', ') : 'no load';
    const nearest = nearestName(name, names);
    const taken = gone.some((each) => alike(each, name)) ? ', since this proposal takes it away' : '';
    const advice = nearest === undefined || taken !== '' ? '' : ` Did you mean "${nearest}"?`;
    fault(
      pointer,
      'unknown-load',
      name,
      allowed,
      `no load is called "${name}"${taken}. There is: ${allowed}.${advice}`,
    );
    return -1;
  };
  const twice = (done: Set<Json>, load: Json, name: string, pointer: string, what: string) => {
    if (done.has(load))
      fault(pointer, 'name-not-unique', name, 'each load once', `"${name}" is ${what} twice: do it once.`);
  };
  (proposal.remove ?? []).forEach((name, index) => {
    const found = find(name, `${at}/remove/${index}`);
    if (found < 0) return;
    places.splice(found, 1);
    gone.push(name);
  });
  const swapped = new Set<Json>();
  (proposal.swap ?? []).forEach(({ load: name, with: other }, index) => {
    const pointer = `${at}/swap/${index}`;
    const found = find(name, `${pointer}/load`);
    const place = places[found];
    if (!place || !isObject(other)) return;
    twice(swapped, place.load, name, `${pointer}/load`, 'swapped');
    const old = place.load as Fields;
    const placedAnew = Object.hasOwn(other, 'height') || Object.hasOwn(other, 'above');
    const kept = KEPT.filter((key) => old[key] !== undefined && !(placedAnew && (key === 'height' || key === 'above')));
    if (old['count'] !== undefined && old['count'] !== 1 && other['count'] === undefined) {
      const says = `"${name}" has a count of ${givenWords(old['count'])}: give the count of what replaces it.`;
      fault(`${pointer}/with/count`, 'missing', 'nothing', 'a whole number', says);
    }
    const load = { name: old['name'], ...Object.fromEntries(kept.map((key) => [key, old[key]])), ...other };
    swapped.add(load);
    places[found] = { load, pointer: `${pointer}/with` };
    gone.push(name);
  });
  const moved = new Set<Json>();
  (proposal.move ?? []).forEach((move, index) => {
    const pointer = `${at}/move/${index}`;
    const found = find(move.load, `${pointer}/load`);
    const place = places[found];
    if (!place) return;
    twice(moved, place.load, move.load, `${pointer}/load`, 'moved');
    const { height: _, above: __, ...rest } = place.load as Fields;
    const { height, above } = move;
    const load = { ...rest, ...(height === undefined ? {} : { height }), ...(above === undefined ? {} : { above }) };
    moved.add(load);
    places[found] = { load, pointer: place.pointer, moved: pointer };
  });
  places.push(...(proposal.add ?? []).map((load, index) => ({ load, pointer: `${at}/add/${index}` })));
}

/** A plan tells names apart by no more than this. */
function alike(one: Json, other: string): boolean {
  return typeof one === 'string' && one.trim().toLowerCase() === other.trim().toLowerCase();
}

/** A pointer into the changed plan as one into the request: where a load came from, what was set, else the plan itself. */
function placedIn(pointer: string, places: readonly Origin[], proposal: ProposalFields, at: string): PlaceInRequest {
  const path = pointer.startsWith('#') ? pointer.slice(1) : pointer;
  const ofProposal = (found: string): PlaceInRequest => ({ pointer: `#${found}`, ofPlan: false });
  const [, index = '', rest = ''] = /^\/loads\/(\d+)(.*)$/.exec(path) ?? [];
  const origin = places[Number(index === '' ? Number.NaN : index)];
  if (origin) {
    const ofPlan = origin.pointer.startsWith('/plan/');
    if (origin.moved !== undefined && (ofPlan || rest !== '')) {
      if (rest === '' || /^\/(height|above)(\/|$)/.test(rest)) return ofProposal(`${origin.moved}${rest}`);
    }
    return { pointer: `#${origin.pointer}${rest}`, ofPlan };
  }
  const set = placedInPatch(path, proposal.set, `${at}/set`);
  return set === undefined ? { pointer: `#/plan${path}`, ofPlan: true } : ofProposal(set);
}

/** Where a merge patch says what stands at a path, or undefined where it leaves it as it was. */
function placedInPatch(path: string, patch: Json, at: string): string | undefined {
  if (patch === undefined) return undefined;
  let value: Json = patch;
  let place = at;
  for (const part of path.split('/').slice(1)) {
    // From here on the patch stands for the whole.
    if (!isObject(value)) return `${at}${path}`;
    const key = part.replaceAll('~1', '/').replaceAll('~0', '~');
    if (!Object.hasOwn(value, key)) return undefined;
    value = value[key];
    place = pointerTo(place, key);
  }
  return place === at ? undefined : place;
}
