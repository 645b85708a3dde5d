interface Caution {
  readonly code: string;
  readonly says: string;
  readonly action: string;
}

/** What is the same of several things is said in one sentence: the name of the thing, and what is said of it. */
const TOGETHER: Readonly<Record<string, RegExp>> = {
  'loads-later': /^(.+?) is (marked later and not included in this check\.)/,
  'side-load': /^(.+?) is (mounted beside the tower)/,
  torsion: /^(.+?) is (off the axis)/,
  'wire-pull': /^The tension of (.+?) is (as entered)/,
  vortex: /^(.+?) has (long tubes\.)/,
  'reaches-guys': /^(.+?) reaches (farther out than the guys)/,
  'method-from-memory': /^Parts of (.+?) are (from memory: check them)/,
};

/** What of a caution must stand in one line of a text, by itself or with others of its code. */
export function wordsOfCaution({ code, says, action }: Caution): readonly string[] {
  const [, name, what] = TOGETHER[code]?.exec(says) ?? [];
  return name === undefined || what === undefined ? [says, action] : [name, what];
}

export function isSaid(caution: Caution, lines: readonly string[], written = (text: string) => text): boolean {
  const wanted = wordsOfCaution(caution).map((words) => written(words).toLowerCase());
  return lines.some((line) => wanted.every((words) => line.toLowerCase().includes(words)));
}
