/**
 * The parts of several plans as rows: each that all have, or of the structure some, by its id; what only some have aloft
 * shares one row, the last.
 *
 * @template {{ readonly id: string, readonly kind: string, readonly title: string }} Part
 * @param {readonly (readonly Part[])[]} plans
 * @returns {readonly { readonly title: string, readonly of: readonly (readonly Part[])[] }[]} with the parts of each plan in that row
 */
export function partsSideBySide(plans) {
  /** @type {Part[]} */
  const all = [];
  for (const parts of plans) {
    let next = 0;
    for (const part of parts) {
      const known = all.findIndex(({ id }) => id === part.id);
      if (known < 0) all.splice(next, 0, part);
      next = (known < 0 ? next : known) + 1;
    }
  }
  const row = (/** @type {string} */ title, /** @type {readonly Part[]} */ of) => ({
    title,
    of: plans.map((parts) => parts.filter(({ id }) => of.some((each) => each.id === id))),
  });
  const inAll = (/** @type {Part} */ { id }) => plans.every((parts) => parts.some((part) => part.id === id));
  const loads = all.filter(({ kind }) => kind === 'load');
  const compared = loads.filter((part) => !inAll(part));
  return [
    ...all.filter(({ kind }) => kind !== 'load').map((part) => row(part.title, [part])),
    ...loads.filter(inAll).map((part) => row(part.title, [part])),
    ...(compared.length > 0 ? [row('loads that differ', compared)] : []),
  ];
}
