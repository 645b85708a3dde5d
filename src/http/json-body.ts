import type { FastifyInstance } from 'fastify';
import { Problem, type ProblemFault } from './problems/problem.ts';

/** Reads JSON bodies and refuses a field that is given twice, of which the parser would quietly keep the last. */
export function readJsonBodies(app: FastifyInstance): void {
  const parsed = app.getDefaultJsonParser('error', 'error');
  app.addContentTypeParser('application/json', { parseAs: 'string' }, (request, text: string, done) => {
    parsed(request, text, (error, body) => {
      if (error) return done(error);
      const faults = repeatedFields(text);
      if (faults.length === 0) return done(null, body);
      const detail = faults.length === 1 ? 'One field is given twice.' : `${faults.length} fields are given twice.`;
      done(new Problem('plan-faults', detail, { faults }));
    });
  });
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
