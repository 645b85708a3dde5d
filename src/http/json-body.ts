import type { FastifyInstance, FastifyRequest } from 'fastify';
import { Problem, type ProblemFault } from './problems/problem.ts';

/** Reads JSON and refuses a field that is given twice, of which the parser would quietly keep the last. */
export function jsonReader(app: FastifyInstance): (text: string, request: FastifyRequest) => unknown {
  const parsed = app.getDefaultJsonParser('error', 'error');
  return (text, request) => {
    let read: { readonly error: Error | null; readonly body?: unknown } | undefined;
    parsed(request, text, (error, body) => {
      read = { error, body };
    });
    if (read === undefined) throw new Error('the parser of JSON has not answered at once');
    if (read.error) throw placeOf(text) ?? read.error;
    const faults = repeatedFields(text);
    if (faults.length === 0) return read.body;
    const detail = faults.length === 1 ? 'One field is given twice.' : `${faults.length} fields are given twice.`;
    throw new Problem('plan-faults', detail, { faults });
  };
}

/** Where a text stops being JSON, as far as the engine tells. */
function placeOf(text: string): Problem | undefined {
  if (text.trim() === '') return undefined;
  try {
    JSON.parse(text);
    return undefined;
  } catch (error) {
    const { message } = error as Error;
    const [, line, column] = /line (\d+) column (\d+)/.exec(message) ?? [];
    // Of a sign that fits nowhere the engine tells what stands around it, at times over several lines.
    const around = /, (?:\.\.\.)?"(.*?)"(?:\.\.\.)? is not valid JSON$/s.exec(message)?.[1]?.replaceAll(/\s+/g, ' ');
    const near = around === undefined ? 'it ends too early' : `see ${around}`;
    const place = line === undefined ? near : `see line ${line}, column ${column}`;
    return new Problem('not-json', `The body is not JSON: ${place}.`);
  }
}

/** Reads JSON bodies, and no text that names no kind. */
export function readJsonBodies(app: FastifyInstance): void {
  const read = jsonReader(app);
  app.removeContentTypeParser('text/plain');
  app.addHook('onRequest', (request, _reply, done) => done(unreadable(request)));
  app.addContentTypeParser('application/json', { parseAs: 'string' }, (request, text: string, done) => {
    done(null, read(text, request));
  });
}

/** A body in another encoding than the one that is read; it is not unpacked, and not guessed at. */
function unreadable({ headers }: FastifyRequest): Problem | undefined {
  const coding = headers['content-encoding']?.trim().toLowerCase() ?? '';
  if (coding !== '' && coding !== 'identity') {
    const says = 'Bodies are not unpacked here. Send it as it is, without content-encoding.';
    return new Problem('unsupported-media-type', says, { headers: { 'accept-encoding': 'identity' } });
  }
  const type = headers['content-type'] ?? '';
  const charset = /^application\/json\b.*;\s*charset="?([\w.:-]+)/i.exec(type)?.[1]?.toLowerCase();
  if (charset === undefined || charset === 'utf-8' || charset === 'utf8' || charset === 'us-ascii') return undefined;
  return new Problem('unsupported-media-type', `JSON is read in UTF-8, not in ${charset.slice(0, 40)}.`);
}

/** A string, or one sign of structure; what stands between is no concern here. */
const TOKENS = /"[^"\\]*(?:\\.[^"\\]*)*"|[{}[\],:]/g;

/** Every field given more than once in an object of a text that is well-formed JSON. */
export function repeatedFields(text: string): ProblemFault[] {
  const faults: ProblemFault[] = [];
  const open: { readonly fields?: Set<string>; at: string | number }[] = [];
  let last = '';
  for (const [token] of text.matchAll(TOKENS)) {
    const inside = open.at(-1);
    if (token === '{') open.push({ fields: new Set(), at: '' });
    else if (token === '[') open.push({ at: 0 });
    else if (token === '}' || token === ']') open.pop();
    else if (token === ',' && typeof inside?.at === 'number') inside.at += 1;
    else if (token === ':' && inside?.fields) {
      const field: string = JSON.parse(last);
      inside.at = field;
      if (inside.fields.has(field)) {
        const path = open.map(({ at }) => encodeURI(String(at).replaceAll('~', '~0').replaceAll('/', '~1')));
        faults.push({
          pointer: `#/${path.join('/')}`,
          code: 'repeated-field',
          given: field,
          allowed: 'each field once',
          says: `The field "${field}" is given more than once here: leave one.`,
        });
      }
      inside.fields.add(field);
    }
    last = token;
  }
  return faults;
}
