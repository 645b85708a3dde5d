import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { Refusal } from '../../foundation/index.ts';
import type { ProblemCode } from './catalogue.ts';
import { Problem, type ProblemFault, problemOfRefusal } from './problem.ts';

const NO_KIND_READ = 'Send JSON, with content-type: application/json, or a form without enctype.';

const CODE_OF_FRAMEWORK_ERROR: Readonly<Record<string, readonly [ProblemCode, string]>> = {
  FST_ERR_BAD_URL: ['bad-request', 'The address has a per cent sign that encodes no character.'],
  FST_ERR_CTP_EMPTY_JSON_BODY: ['not-json', 'The body is empty; send a JSON object.'],
  FST_ERR_CTP_INVALID_JSON_BODY: ['not-json', 'The body is not JSON.'],
  FST_ERR_CTP_INVALID_MEDIA_TYPE: ['unsupported-media-type', NO_KIND_READ],
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: ['bad-request', 'The content-length header does not match the body.'],
};

const CODE_OF_STATUS: Readonly<Record<number, readonly [ProblemCode, string]>> = {
  404: ['not-found', 'No such address.'],
  414: ['bad-request', 'The address is too long.'],
  415: ['unsupported-media-type', NO_KIND_READ],
  429: ['too-many-requests', 'Too many requests came from this address within a minute.'],
  431: ['header-too-large', 'The headers are too large.'],
};

interface ValidationIssue {
  readonly instancePath: string;
  readonly message?: string;
  readonly params: { readonly keys?: unknown; readonly values?: unknown };
}

function queryFaults(issues: readonly ValidationIssue[]): ProblemFault[] {
  return issues.flatMap(({ instancePath, message, params }): ProblemFault[] => {
    const { keys, values } = params;
    if (Array.isArray(keys)) {
      return keys.map((key) => ({ parameter: String(key), says: `There is no parameter ${key} here. Leave it out.` }));
    }
    const parameter = instancePath.slice(1);
    if (!Array.isArray(values)) return [{ parameter, says: message ?? 'is not allowed' }];
    const allowed = values.join(', ');
    return [{ parameter, allowed, says: `${parameter}: one of ${allowed} allowed. Give it once, or leave it out.` }];
  });
}

/** The request that an error befell. */
interface About {
  readonly id: string;
  readonly bodyLimit: number;
}

/** What the caller is told of an error; whatever was not foreseen says nothing of its inside. */
export function problemOfError(error: unknown, { id, bodyLimit }: About): Problem {
  if (error instanceof Problem) return error;
  if (error instanceof Refusal) return problemOfRefusal(error);
  if (hasZodFastifySchemaValidationErrors(error)) {
    const faults = queryFaults(error.validation as readonly ValidationIssue[]);
    return new Problem('bad-query', 'The query has errors; each is listed.', { faults });
  }
  const { code, statusCode } = (error ?? {}) as { code?: unknown; statusCode?: unknown };
  if (statusCode === 413) {
    const says = `At most ${bodyLimit.toLocaleString('en')} bytes are read of a body.`;
    return new Problem('too-large', says);
  }
  if (typeof code === 'string' && Object.hasOwn(CODE_OF_FRAMEWORK_ERROR, code)) {
    const [problemCode, detail] = CODE_OF_FRAMEWORK_ERROR[code] as readonly [ProblemCode, string];
    return new Problem(problemCode, detail);
  }
  if (typeof statusCode === 'number' && statusCode >= 400 && statusCode < 500) {
    const [problemCode, detail] = CODE_OF_STATUS[statusCode] ?? ['bad-request', 'The request cannot be read.'];
    return new Problem(problemCode, detail);
  }
  if (statusCode === 503) return new Problem('closing', 'The service is stopping; send the request again in a moment.');
  return new Problem('internal', `The service failed. The number of the request is ${id}.`);
}
