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
    title: 'The query does not fit',
    cause: 'A parameter behind the question mark is unknown or has a value that is not allowed.',
    remedy: 'Each fault names the parameter, what was given and what is allowed.',
  },
  'plan-faults': {
    status: 422,
    title: 'The plan does not fit',
    cause:
      'The body is JSON or a form, but some of its entries are missing, unknown, out of range or at odds with each other.',
    remedy:
      'All faults are listed at once: each with a pointer to the entry, and the name of its field in a form, what was given, what is allowed, what to do.',
  },
  refused: {
    status: 422,
    title: 'This cannot be computed',
    cause: 'The entries are well formed, but together they describe something that cannot be or has no meaning.',
    remedy: 'The fault names the entry and what to change.',
  },
  'not-found': {
    status: 404,
    title: 'Nothing stands at this address',
    cause: 'The address is misspelt, or what it names does not exist.',
    remedy: 'GET /openapi.json lists every address; GET /v1/demo-plans lists the demo plans.',
  },
  'method-not-allowed': {
    status: 405,
    title: 'This address is not used that way',
    cause: 'The address exists, but not with this HTTP method.',
    remedy: 'The allow header names the methods that work.',
  },
  'not-acceptable': {
    status: 406,
    title: 'No such form of the answer',
    cause: 'The accept header, or as= in the query, asks for a form that this address does not have.',
    remedy: 'Ask for one of the forms that the detail names, or leave the header out.',
  },
  'too-large': {
    status: 413,
    title: 'The body is too large',
    cause: 'The body has more bytes than this service takes.',
    remedy: 'A plan of 300 loads fits in 256 KB. Shorten notes, or ask whoever runs the service to raise BODY_LIMIT.',
  },
  'unsupported-media-type': {
    status: 415,
    title: 'The body is of a kind that is not read here',
    cause: 'The content-type header is missing or names a kind other than those the address reads.',
    remedy:
      'Send JSON with the header content-type: application/json, or a form without enctype, whose fields come as application/x-www-form-urlencoded in UTF-8.',
  },
  'key-required': {
    status: 401,
    title: 'This service wants a key',
    cause: 'Whoever runs the service gives keys to those who may use it, and none, or none that is known, came along.',
    remedy:
      'Send the key as the password of any name, as a bearer token, or in an address as key=; ask whoever runs the service for one.',
  },
  'too-many-requests': {
    status: 429,
    title: 'Too many requests',
    cause: 'More requests came from your address within a minute than this service allows.',
    remedy: 'Wait as many seconds as the retry-after header says.',
  },
  'header-too-large': {
    status: 431,
    title: 'The headers are too large',
    cause: 'The header lines of the request together are longer than the service reads.',
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
    cause: 'Something went wrong inside the service; it is not the fault of your request.',
    remedy: 'Tell whoever runs the service, with the number of the request: its log holds the cause under that number.',
  },
  overloaded: {
    status: 503,
    title: 'Too much is asked at once',
    cause: 'More requests came than the service can answer in good time, or its memory runs short.',
    remedy: 'Wait as many seconds as the retry-after header says, then send the request again.',
  },
  'recalculation-differs': {
    status: 500,
    title: 'A step of the working does not come out twice',
    cause:
      'Every step of a worksheet is worked out once more by a second program, and one came out otherwise: no sheet is made of it.',
    remedy:
      'Tell whoever runs the service, with the plan; the detail names the step. as=json has the answer without it.',
  },
  'paper-failed': {
    status: 500,
    title: 'The worksheet could not be printed',
    cause: 'The typesetter failed at this sheet, ended, or took too long over it; it is not the fault of your request.',
    remedy: 'Send it again; if it fails again, as=json has the whole answer. The log has the cause.',
  },
  'paper-busy': {
    status: 503,
    title: 'Too many worksheets are being printed',
    cause: 'Worksheets are printed one after the other, and as many wait already as may wait.',
    remedy: 'Wait as many seconds as the retry-after header says, and send it again.',
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
