import type { z } from 'zod';
import type { CheckInput } from '../margins/index.ts';
import { formatOf, hasOldName, inNewestFormat, type PlanHash, placeAsSent, renamed } from '../words/index.ts';
import { documentFaults } from './faults/document-faults.ts';
import { type EntryWarning, type Fault, inPlan, isObject } from './faults/fault.ts';
import { givenWords } from './faults/given-words.ts';
import { planHash } from './plan-hash.ts';
import { applyProposal, deeperThan, type PlaceInRequest, type ProposalFields } from './proposals.ts';
import { type PlanOptions, readPlan } from './read-plan.ts';
import { additionsFormSchema } from './schema/additions-request.ts';

/** One proposal carried out and read. */
export interface ReadProposal {
  readonly name: string;
  readonly input: CheckInput;
  /** The plan as it would be. */
  readonly plan: unknown;
  /** What deserves a second look once it is carried out. */
  readonly entryWarnings: readonly EntryWarning[];
  readonly planHash: PlanHash;
  /** Turns a pointer into the changed plan into one into the request. */
  readonly placed: (pointer: string) => PlaceInRequest;
}

export type AdditionsReading =
  | {
      readonly ok: true;
      readonly before: CheckInput;
      readonly planHash: PlanHash;
      readonly entryWarnings: readonly EntryWarning[];
      readonly after: readonly ReadProposal[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

type Fields = Readonly<Record<string, unknown>>;

/** No plan goes deeper. */
const DEPTH_AT_MOST = 12;

/**
 * Reads a plan and ways to change it: the plan itself, and the plan as each proposal leaves it, or everything that is wrong
 * with any of them.
 *
 * @param document anything, as parsed from JSON: a plan and a list of proposals
 * @returns the inquiries in SI, or the faults, each pointing into the request
 * @example readAdditionsRequest(5).ok // false
 */
export function readAdditionsRequest(document: unknown, options: PlanOptions = {}): AdditionsReading {
  if (!isObject(document)) {
    const given = givenWords(document);
    const says = `A plan and its proposals are one object; ${given} was given.`;
    return { ok: false, faults: [{ pointer: '#', code: 'wrong-type', given, allowed: 'an object', says }] };
  }
  const request = inFormat2(document);
  const reading = readRequest(request, options);
  if (reading.ok || request === document) return reading;
  const placed = ({ pointer }: Fault) => `#${placeAsSent(pointer.slice(1), document)}`;
  return { ok: false, faults: reading.faults.map((fault) => ({ ...fault, pointer: placed(fault) })) };
}

/** A request whose plan, or whose patches of it, are of format 1 as one of format 2. */
function inFormat2(document: Fields): Fields {
  const plan = document['plan'];
  const proposals: readonly unknown[] = Array.isArray(document['proposals']) ? document['proposals'] : [];
  const patches = proposals.map((proposal) => (isObject(proposal) ? proposal['set'] : undefined));
  const notGiven = isObject(plan) && plan['format'] === undefined;
  if (formatOf(plan) !== 1 && !(notGiven && patches.some((patch) => hasOldName(patch)))) return document;
  const patched = proposals.map((proposal) =>
    isObject(proposal) && 'set' in proposal ? { ...proposal, set: renamed(proposal['set']) } : proposal,
  );
  return { ...document, plan: inNewestFormat(plan, 1), ...(proposals.length > 0 ? { proposals: patched } : {}) };
}

function readRequest(document: Fields, options: PlanOptions): AdditionsReading {
  const { faults: ofForm, proposals } = formOf(document);
  const reading = readPlan(document['plan'], options);
  const faults: Fault[] = [...ofForm];
  if (!reading.ok && !ofForm.some(({ pointer }) => pointer === '#/plan')) {
    faults.push(...reading.faults.map(inPlan));
  }
  const plan = isObject(document['plan']) ? document['plan'] : undefined;
  const after: ReadProposal[] = [];
  proposals.forEach((proposal, index) => {
    const at = `/proposals/${index}`;
    if (!isObject(proposal) || ofForm.some(({ pointer }) => pointer === `#${at}` || pointer === `#${at}/set`)) return;
    const form = {
      ...proposal,
      name: typeof proposal['name'] === 'string' ? proposal['name'] : `Proposal ${index + 1}`,
    };
    const own = ofForm.some(({ pointer }) => pointer.startsWith(`#${at}/`)) ? [] : proposalFaults(form, at, plan);
    faults.push(...own);
    if (!plan || own.length > 0) return;
    const applied = applyProposal(plan, form, at);
    faults.push(...applied.faults);
    const changed = readPlan(applied.plan, options);
    if (changed.ok) {
      const { input, entryWarnings } = changed;
      const { plan: asChanged, placed } = applied;
      after.push({ name: form.name, input, plan: asChanged, entryWarnings, planHash: planHash(changed), placed });
      return;
    }
    for (const fault of changed.faults) {
      const { pointer, ofPlan } = applied.placed(fault.pointer);
      // What is absent only because its form was wrong is told of the form.
      if (ofForm.some((known) => known.pointer.startsWith(`${pointer}/`))) continue;
      if (!ofPlan) faults.push({ ...fault, pointer, says: `${form.name}: ${fault.says}` });
      // What the plan has by itself is told once, of the plan.
      else if (reading.ok) faults.push({ ...fault, pointer: culprit(form, at), says: besides(form, fault, pointer) });
    }
  });
  if (faults.length > 0 || !reading.ok) return { ok: false, faults };
  const entryWarnings = reading.entryWarnings.map(inPlan);
  return { ok: true, before: reading.input, planHash: planHash(reading), entryWarnings, after };
}

/** What does not fit the form of a request, and the proposals as far as they do. */
function formOf(document: Fields): { readonly faults: readonly Fault[]; readonly proposals: readonly unknown[] } {
  const parsed = additionsFormSchema.safeParse(document);
  if (parsed.success) return { faults: namesTwice(parsed.data.proposals), proposals: parsed.data.proposals };
  // The rest may lack what the form wants; what is there has it.
  const { faults, rest } = documentFaults<Partial<z.output<typeof additionsFormSchema>>>(
    document,
    parsed.error.issues,
    additionsFormSchema,
  );
  return { faults: [...faults, ...namesTwice(rest?.proposals ?? [])], proposals: rest?.proposals ?? [] };
}

function namesTwice(proposals: readonly { readonly name?: unknown }[]): readonly Fault[] {
  const names = new Map<string, number>();
  return proposals.flatMap(({ name }, index) => {
    if (typeof name !== 'string') return [];
    const first = names.get(name);
    if (first === undefined) {
      names.set(name, index);
      return [];
    }
    const says = `Proposals ${first + 1} and ${index + 1} are both called "${name}": give each a name of its own.`;
    const pointer = `#/proposals/${index}/name`;
    return [{ pointer, code: 'name-not-unique' as const, given: name, allowed: 'a name of its own', says }];
  });
}

/** What makes a proposal one that cannot be carried out at all. */
function proposalFaults(proposal: ProposalFields, at: string, plan: Fields | undefined): readonly Fault[] {
  const { set } = proposal;
  if (changesOf(proposal).length === 0) {
    const says = `${proposal.name} changes nothing: give set, remove, swap, move or add.`;
    return [{ pointer: `#${at}`, code: 'missing', given: 'no change', allowed: 'set, remove, swap, move, add', says }];
  }
  if (deeperThan(set, DEPTH_AT_MOST)) {
    const says = `${proposal.name}: set goes deeper than any plan; give only fields a plan has.`;
    return [{ pointer: `#${at}/set`, code: 'wrong-type', given: 'an object', allowed: 'a part of a plan', says }];
  }
  const units = set?.['units'];
  if (plan && typeof units === 'string' && units !== plan['units']) {
    const given = givenWords(units);
    const says = `${proposal.name}: ${given} would turn every number of the plan into another one. Keep the plan's units; a quantity may be text with its unit.`;
    return [{ pointer: `#${at}/set/units`, code: 'not-a-choice', given, allowed: givenWords(plan['units']), says }];
  }
  return [];
}

function changesOf(proposal: ProposalFields): readonly string[] {
  return (['set', 'remove', 'swap', 'move', 'add'] as const).filter(
    (key) => proposal[key] !== undefined && Object.keys(proposal[key]).length > 0,
  );
}

/** Where a proposal spoils something it does not name: the one kind of change it makes, or all of it. */
function culprit(proposal: ProposalFields, at: string): string {
  const [only, ...others] = changesOf(proposal);
  return others.length > 0 || only === undefined ? `#${at}` : `#${at}/${only}`;
}

function besides({ name }: ProposalFields, { says }: Fault, pointer: string): string {
  return `${name}: with it the rest of the plan does not fit (${pointer}). ${says}`;
}
