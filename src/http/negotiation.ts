import { Problem } from './problems/problem.ts';

export const PAGE_TYPE = 'text/html; charset=utf-8';
export const JSON_TYPE = 'application/json; charset=utf-8';

interface Wish {
  readonly type: string;
  readonly quality: number;
}

function wishesOf(accept: string): Wish[] {
  return accept.split(',').flatMap((part) => {
    const [type = '', ...parameters] = part.split(';').map((piece) => piece.trim().toLowerCase());
    if (type === '') return [];
    const quality = parameters.find((parameter) => parameter.startsWith('q='))?.slice(2);
    const value = quality === undefined ? 1 : Number(quality);
    return [{ type, quality: Number.isFinite(value) ? value : 0 }];
  });
}

/** How much an accept header wants a media type: the closest match counts (RFC 9110 §12.5.1). */
function qualityFor(wishes: readonly Wish[], mediaType: string): number {
  const family = `${mediaType.split('/')[0]}/*`;
  for (const candidate of [mediaType, family, '*/*']) {
    const wish = wishes.find(({ type }) => type === candidate);
    if (wish !== undefined) return wish.quality;
  }
  return 0;
}

/**
 * Which of the offered forms to answer in: `as` in the query first, then the accept header; of equals the first
 * offered. Throws a problem where none fits.
 */
export function chosenForm<Form extends string>(
  offered: Readonly<Record<Form, string>>,
  as: Form | undefined,
  accept: string | undefined,
): Form {
  if (as !== undefined) return as;
  const forms = Object.keys(offered) as Form[];
  const wishes = accept === undefined || accept.trim() === '' ? [{ type: '*/*', quality: 1 }] : wishesOf(accept);
  let best: Form | undefined;
  let bestQuality = 0;
  for (const form of forms) {
    const quality = qualityFor(wishes, offered[form]);
    if (quality > bestQuality) [best, bestQuality] = [form, quality];
  }
  if (best === undefined) {
    throw new Problem('not-acceptable', `This address answers as ${Object.values(offered).join(' or ')}.`);
  }
  return best;
}

/** Whether an accept header wants a page more than JSON, as that of a browser does. */
export function prefersPage(accept: string | undefined): boolean {
  if (accept === undefined) return false;
  const wishes = wishesOf(accept);
  const json = ['application/problem+json', 'application/json'].map((type) => qualityFor(wishes, type));
  return qualityFor(wishes, 'text/html') > Math.max(...json);
}
