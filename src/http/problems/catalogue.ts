/** A kind of failure: its code never changes its meaning, and has a page of its own at /problems/<code>. */
interface ProblemKind {
  readonly status: number;
  readonly title: string;
  readonly cause: string;
  readonly remedy: string;
}

export const PROBLEM_KINDS = {
  'not-json': {
    status: 400,
    title: 'The body is not JSON',
    cause: 'The body is empty, cut short, or not written as JSON; or it uses the key __proto__, which is never read.',
    remedy: 'Send one JSON object in UTF-8 with the header content-type: application/json.',
  },
  'not-a-form': {
    status: 400,
    title: 'The form cannot be read',
    cause: 'The fields are not in UTF-8, are not percent-encoded as forms are, or there are too many of them.',
    remedy: 'Let a browser send the form, with accept-charset="utf-8"; leave blank rows out.',
  },
  'bad-request': {
    status: 400,
    title: 'The request cannot be read',
    cause: 'The address or the request itself is not well formed.',
    remedy: 'Compare the address with /openapi.json; a per cent sign in an address is written %25.',
  },
  'bad-query': {
    status: 400,
    title: 'The query has errors',
    cause: 'A parameter after the question mark is unknown, or its value is not allowed.',
    remedy: 'Each fault names the parameter, what was given and what is allowed.',
  },
  'plan-faults': {
    status: 422,
    title: 'The plan has errors',
    cause: 'The body can be read, but entries are missing, unknown, out of range or contradictory.',
    remedy:
      'All faults are listed at once. Each has a pointer to the entry, the name of its field in a form, what was given, what is allowed and what to do.',
  },
  refused: {
    status: 422,
    title: 'This cannot be computed',
    cause: 'The entries are well formed, but together they describe something impossible.',
    remedy: 'The fault names the entry and what to change.',
  },
  'too-much-work': {
    status: 422,
    title: 'The answer would take too much computing',
    cause: 'The plan holds so much, or can be read in so many ways, that one answer would hold up others.',
    remedy: 'Each fault names what takes most and what to change. Or ask the operator to raise WORK_LIMIT.',
  },
  'not-found': {
    status: 404,
    title: 'No such address',
    cause: 'The address is misspelt, or what it names does not exist.',
    remedy: 'GET /openapi.json lists every address; GET /v1/demo-plans lists the demo plans.',
  },
  'method-not-allowed': {
    status: 405,
    title: 'HTTP method not allowed',
    cause: 'The address exists, but not with this HTTP method.',
    remedy: 'The allow header names the methods that work.',
  },
  'not-acceptable': {
    status: 406,
    title: 'No such format',
    cause: 'The accept header, or as= in the query, names a format that this address does not have.',
    remedy: 'Ask for one of the formats named in the detail, or leave the header out.',
  },
  'too-large': {
    status: 413,
    title: 'The body is too large',
    cause: 'The body has more bytes than this service accepts.',
    remedy: 'A plan of 300 loads fits in 256 KB. Shorten notes, or ask the operator to raise BODY_LIMIT.',
  },
  'unsupported-media-type': {
    status: 415,
    title: 'Content type not supported',
    cause: 'The content-type header is missing or names a type that this address does not read.',
    remedy:
      'Send JSON with the header content-type: application/json. Or send a form without enctype, as application/x-www-form-urlencoded in UTF-8.',
  },
  'key-required': {
    status: 401,
    title: 'This service requires a key',
    cause: 'The operator gives out keys. The request had none, or an unknown one.',
    remedy:
      'Send the key as the password of any name, as a bearer token, or as key= in an address. Ask the operator for one.',
  },
  'too-many-requests': {
    status: 429,
    title: 'Too many requests',
    cause: 'More requests came from this address within a minute than the service allows.',
    remedy: 'Wait as many seconds as the retry-after header says.',
  },
  'header-too-large': {
    status: 431,
    title: 'The headers are too large',
    cause: 'The header lines of the request are longer in total than the service reads.',
    remedy: 'Send fewer or shorter headers and cookies.',
  },
  timeout: {
    status: 408,
    title: 'The request took too long to arrive',
    cause: 'The request was not complete in time.',
    remedy: 'Send it again.',
  },
  internal: {
    status: 500,
    title: 'The service failed',
    cause: 'An error inside the service; the request did not cause it.',
    remedy: 'Tell the operator the number of the request; the log has the cause under that number.',
  },
  overloaded: {
    status: 503,
    title: 'Service overloaded',
    cause: 'More requests came than the service can answer in time, or memory is short.',
    remedy: 'Wait as many seconds as the retry-after header says, then send the request again.',
  },
  'recalculation-differs': {
    status: 500,
    title: 'Recalculation gave a different result',
    cause: 'Every step of a worksheet is recomputed by a second program. One step differed, so no sheet is made.',
    remedy: 'Tell the operator, with the plan; the detail names the step. as=json has the answer without it.',
  },
  'paper-failed': {
    status: 500,
    title: 'The worksheet could not be printed',
    cause: 'The typesetter failed on this sheet, ended, or took too long; the request did not cause it.',
    remedy: 'Send it again; if it fails again, as=json has the whole answer. The log has the cause.',
  },
  'paper-busy': {
    status: 503,
    title: 'Too many worksheets are being printed',
    cause: 'Worksheets are printed one after the other, and the waiting line is full.',
    remedy: 'Wait as many seconds as the retry-after header says, and send it again.',
  },
  starting: {
    status: 503,
    title: 'The service is starting',
    cause: 'The service has just been started and is not ready to compute.',
    remedy: 'Ask again in a moment.',
  },
  closing: {
    status: 503,
    title: 'The service is stopping',
    cause: 'The service is being stopped or restarted.',
    remedy: 'Send the request again in a moment.',
  },
} as const satisfies Readonly<Record<string, ProblemKind>>;

export type ProblemCode = keyof typeof PROBLEM_KINDS;

export const PROBLEM_CODES = Object.keys(PROBLEM_KINDS) as readonly ProblemCode[];
