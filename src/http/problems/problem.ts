import type { Refusal } from '../../foundation/index.ts';
import { PROBLEM_KINDS, type ProblemCode } from './catalogue.ts';

/** One thing that does not fit, and where. */
export interface ProblemFault {
  /** Where in the body, as a JSON pointer in a URI fragment (RFC 6901 §6): `#/loads/0/area`. */
  readonly pointer?: string | undefined;
  /** Which field of a form, by its name: `loads[0][area]`. */
  readonly field?: string | undefined;
  /** Which parameter of the query. */
  readonly parameter?: string | undefined;
  readonly code?: string | undefined;
  readonly given?: unknown;
  readonly allowed?: string | undefined;
  readonly says: string;
  /** What a text may mean that can be read in two ways, each as it can be written instead. */
  readonly readings?: readonly string[] | undefined;
}

interface ProblemDetails {
  readonly faults?: readonly ProblemFault[];
  readonly headers?: Readonly<Record<string, string>>;
}

/** A failure on its way to the caller. */
export class Problem extends Error {
  readonly code: ProblemCode;
  readonly statusCode: number;
  readonly faults: readonly ProblemFault[];
  readonly headers: Readonly<Record<string, string>>;

  constructor(code: ProblemCode, detail: string, { faults = [], headers = {} }: ProblemDetails = {}) {
    super(detail);
    this.name = 'Problem';
    this.code = code;
    this.statusCode = PROBLEM_KINDS[code].status;
    this.faults = faults;
    this.headers = headers;
  }
}

/** What cannot be computed, as its caller is told. */
export function problemOfRefusal({ at, code, message: says }: Refusal): Problem {
  return new Problem('refused', says, { faults: [{ pointer: at === '' ? undefined : `#${at}`, code, says }] });
}

/** The body of a problem response (RFC 9457); its type is the address of a page, under the service's base path. */
export function problemBody(problem: Problem, basePath: string) {
  const { status, title } = PROBLEM_KINDS[problem.code];
  return {
    type: `${basePath}/problems/${problem.code}`,
    title,
    status,
    detail: problem.message,
    ...(problem.faults.length > 0 ? { faults: problem.faults } : {}),
  };
}
