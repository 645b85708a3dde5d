/** An object whose members that may be undefined are optional instead. */
export type Present<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** The object without its undefined members, so that what the plan leaves out is absent in the domain too. */
export function present<T extends object>(members: T): Present<T> {
  const kept: Record<string, unknown> = {};
  for (const key in members) if (members[key] !== undefined) kept[key] = members[key];
  return kept as Present<T>;
}
