import type { Inquiry } from '../margins/index.ts';
import type { Fault } from './faults/fault.ts';
import { givenWords } from './faults/given-words.ts';
import { applyProposal, type ProposalFields } from './proposals.ts';
import { type PlanOptions, readPlan } from './read-plan.ts';
import { additionsRequestSchema, PROPOSALS_AT_MOST } from './schema/additions-request.ts';

/** One proposal carried out and read. */
export interface ReadProposal {
  readonly name: string;
  readonly inquiry: Inquiry;
  /** The plan as it would be. */
  readonly plan: unknown;
}

export type AdditionsReading =
  | { readonly ok: true; readonly before: Inquiry; readonly after: readonly ReadProposal[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const proposalSchema = additionsRequestSchema.shape.proposals.element;

/**
 * Reads a plan and ways to change it: the plan itself, and the plan as each proposal leaves it, or everything that is wrong
 * with any of them.
 *
 * @param document anything, as parsed from JSON: a plan and a list of proposals [-]
 * @param options how commas are read [-]
 * @returns the inquiries in SI, or the faults, each pointing into the request [-]
 * @example readAdditionsRequest(5).ok // false
 * @source derived
 */
export function readAdditionsRequest(document: unknown, options: PlanOptions = {}): AdditionsReading {
  if (!isFields(document)) return refused('#', 'wrong-type', document, 'an object', 'Give a plan and its proposals.');
  const faults: Fault[] = [];
  for (const key of Object.keys(document)) {
    if (key === 'plan' || key === 'proposals') continue;
    const says = `There is no field "${key.slice(0, 60)}" here: give plan and proposals.`;
    faults.push({
      pointer: `#/${key}`,
      code: 'unknown-field',
      given: key.slice(0, 60),
      allowed: 'plan, proposals',
      says,
    });
  }
  const reading = readPlan(document['plan'], options);
  if (!reading.ok) faults.push(...reading.faults.map((fault) => ({ ...fault, pointer: inPlan(fault.pointer) })));
  const { proposals } = document;
  if (!Array.isArray(proposals) || proposals.length === 0 || proposals.length > PROPOSALS_AT_MOST) {
    const says = `Give 1 to ${PROPOSALS_AT_MOST} proposals, as a list.`;
    faults.push({
      pointer: '#/proposals',
      code: Array.isArray(proposals) && proposals.length > 0 ? 'too-many' : 'missing',
      given: Array.isArray(proposals) ? `${proposals.length} proposals` : givenWords(proposals),
      allowed: `1 to ${PROPOSALS_AT_MOST}`,
      says,
    });
    return { ok: false, faults };
  }
  const forms = proposals.map((proposal, index) => formOf(proposal, index, faults));
  const names = new Map<string, number>();
  forms.forEach((form, index) => {
    if (!form) return;
    const first = names.get(form.name);
    if (first === undefined) names.set(form.name, index);
    else {
      const says = `Two proposals are called "${form.name}": give each a name of its own.`;
      faults.push({
        pointer: `#/proposals/${index}/name`,
        code: 'name-not-unique',
        given: form.name,
        allowed: 'another name',
        says,
      });
    }
  });
  const after: ReadProposal[] = [];
  if (reading.ok) {
    forms.forEach((form, index) => {
      if (!form) return;
      const applied = applyProposal(document['plan'] as Fields, form, `/proposals/${index}`);
      if (!applied.ok) {
        faults.push(...applied.faults);
        return;
      }
      const changed = readPlan(applied.plan, options);
      if (changed.ok) after.push({ name: form.name, inquiry: changed.inquiry, plan: applied.plan });
      else faults.push(...changed.faults.map((fault) => ({ ...fault, pointer: applied.placed(fault.pointer) })));
    });
  }
  if (faults.length > 0 || !reading.ok) return { ok: false, faults };
  return { ok: true, before: reading.inquiry, after };
}

function inPlan(pointer: string): string {
  return `#/plan${pointer.slice(1)}`;
}

function refused(
  pointer: string,
  code: Fault['code'],
  given: unknown,
  allowed: string,
  says: string,
): AdditionsReading {
  return { ok: false, faults: [{ pointer, code, given: givenWords(given), allowed, says }] };
}

/** The form of a proposal; what its loads hold is read with the changed plan. */
function formOf(proposal: unknown, index: number, faults: Fault[]): ProposalFields | undefined {
  const at = `#/proposals/${index}`;
  if (!isFields(proposal)) {
    const says = `Proposal ${index + 1} is an object with its name and what it changes.`;
    faults.push({ pointer: at, code: 'wrong-type', given: givenWords(proposal), allowed: 'an object', says });
    return undefined;
  }
  const { add, ...rest } = proposal;
  const parsed = proposalSchema.omit({ add: true }).safeParse(rest);
  const found = faults.length;
  if (!parsed.success) {
    for (const issue of parsed.error.issues) {
      const keys = issue.code === 'unrecognized_keys' ? issue.keys : [undefined];
      for (const key of keys) {
        const path = [...issue.path, ...(key === undefined ? [] : [key])];
        const pointer = `${at}${path.map((part) => `/${String(part)}`).join('')}`;
        const given = givenWords(
          path.reduce<unknown>(
            (value, part) => (isFields(value) || Array.isArray(value) ? (value as Fields)[String(part)] : undefined),
            rest,
          ),
        );
        const says =
          key === undefined
            ? `Proposal ${index + 1}: ${issue.message}.`
            : `Proposal ${index + 1} has no field "${key.slice(0, 60)}". It may have: name, set, remove, swap, move, add.`;
        faults.push({
          pointer,
          code: key === undefined ? 'wrong-type' : 'unknown-field',
          given,
          allowed: 'what the contract names',
          says,
        });
      }
    }
  }
  if (add !== undefined && (!Array.isArray(add) || add.length === 0 || !add.every(isFields))) {
    const says = `Proposal ${index + 1}: add is a list of loads.`;
    faults.push({ pointer: `${at}/add`, code: 'wrong-type', given: givenWords(add), allowed: 'a list of loads', says });
  }
  if (faults.length > found) return undefined;
  const form = { ...rest, ...(add === undefined ? {} : { add }) } as unknown as ProposalFields;
  if (!['set', 'remove', 'swap', 'move', 'add'].some((key) => key in proposal)) {
    const says = `Proposal ${index + 1} changes nothing: give set, remove, swap, move or add.`;
    faults.push({ pointer: at, code: 'missing', given: 'a name alone', allowed: 'set, remove, swap, move, add', says });
    return undefined;
  }
  return form;
}
