/**
 * How many single-letter insertions, deletions, replacements or swaps of neighbours turn one word into another.
 * @source common-practice
 */
export function editDistance(one: string, other: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, column) => column);
  for (let row = 1; row <= one.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= other.length; column += 1) {
      const same = one[row - 1] === other[column - 1];
      let edits = Math.min(
        (last[column] as number) + 1,
        (current[column - 1] as number) + 1,
        (last[column - 1] as number) + (same ? 0 : 1),
      );
      if (row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1]) {
        edits = Math.min(edits, (beforeLast[column - 2] as number) + 1);
      }
      current.push(edits);
    }
    beforeLast = last;
    last = current;
  }
  return last[other.length] as number;
}

/** The known name that somebody most likely meant, or undefined when none is near enough to be meant. */
export function nearestName(given: string, known: readonly string[]): string | undefined {
  const written = given.slice(0, 40).toLowerCase();
  let nearest: string | undefined;
  let fewest = Math.max(2, Math.floor(written.length / 2)) + 0.5;
  for (const name of known) {
    const word = name.toLowerCase();
    const starts = written.length >= 3 && (word.startsWith(written) || written.startsWith(word));
    const edits = Math.min(editDistance(written, word), starts ? 1.5 : Number.POSITIVE_INFINITY);
    if (edits < fewest) {
      fewest = edits;
      nearest = name;
    }
  }
  return nearest;
}
