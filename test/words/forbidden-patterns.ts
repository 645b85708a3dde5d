/** What no text that a user reads may say: words that are no trade English, promise too much, or speak for somebody. */
export const FORBIDDEN: readonly RegExp[] = [
  /\b(untold|unsaid|unspoken)\b|\bnot told\b|nothing is said/i,
  /\bfalls? well\b|\bhad to read\b|\bread (so|as)\b|credits? (it|the tower) least/i,
  /\b(asked|shown),|\bnot shown\b|\bwhat its rating shows\b|\bprov(es|en)\b/i,
  /\bthin(:| so far)|\buse (is )?[\d.]|\bused to [\d.]|\bused up\b/i,
  /\bwe\b|\bour\b|\b(known|let|tell) (to )?us\b/i,
  /\bh(e|im|is)\b|\bmakers?\b/i,
  /\b(your wind|margin you want(ed)?|(you|as|numbers?|ratings?) typed)\b/i,
  /\bhang(s|ing)? (less|on|off|it|each|here)\b|\bwhat hangs\b/i,
  /\bgoes by\b|\bspeaks? for\b|\bstands? (below|for|bare|by itself at)\b|\btakes hold\b/i,
  /\b(most|least) in (shear|bending)\b|\bdecided by\b|\bknows no\b/i,
  /\bthins no air\b|\bsing and tire\b|\bno worse than\b|\bknowingly\b|\bto mend\b/i,
  /\b(at|of) the foot\b|\bledger\b|\b(this|every|each|weakest|no) links?\b/i,
  /\b(un)?safe(ly)?\b|\bpass(es|ed)?\b|\bcertified\b|\bcompliant\b|\bverified\b|\badequate\b/i,
];

/** What of a text is forbidden, each with a few words round it; owners' own words are left out. */
export function forbiddenIn(text: string, owned: readonly string[] = []): readonly string[] {
  const said = [...owned]
    .sort((one, other) => other.length - one.length)
    .reduce((rest, words) => rest.replaceAll(words, '…'), text);
  return FORBIDDEN.flatMap((pattern) =>
    [...said.matchAll(new RegExp(pattern, 'gi'))].map(
      ({ index, 0: found }) => `${found}: ${said.slice(Math.max(0, index - 60), index + found.length + 40)}`,
    ),
  );
}

/** Fields in which an owner writes words. */
const OWNED = new Set(['title', 'name', 'source', 'note', 'label', 'number', 'author']);

/** Every text of a plan that is its owner's and not of a choice. */
export function ownersWords(plan: unknown, field = ''): readonly string[] {
  if (typeof plan === 'string') return OWNED.has(field) ? [plan] : [];
  if (Array.isArray(plan)) return plan.flatMap((each) => ownersWords(each, field));
  if (typeof plan !== 'object' || plan === null) return [];
  return Object.entries(plan).flatMap(([key, value]) =>
    ['sheet', 'titleBlock'].includes(key) ? leaves(value) : ownersWords(value, key),
  );
}

function leaves(value: unknown): readonly string[] {
  if (typeof value === 'string') return value === '' ? [] : [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(leaves);
}
