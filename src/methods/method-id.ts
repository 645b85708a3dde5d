export const SITE_METHODS = [
  'asce7-10',
  'asce7-16',
  'asce7-22',
  'tia222-g',
  'tia222-h',
  'eia222-f',
  'en1991-1-4',
] as const;
/** Methods a site can be designed by. */
export type SiteMethodId = (typeof SITE_METHODS)[number];

export const METHODS = [...SITE_METHODS, 'rs222-c'] as const;
/** Methods a rating can be stated by. */
export type MethodId = (typeof METHODS)[number];
