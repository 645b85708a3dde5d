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

/** Stands in where a request goes by no method and none can change a figure of its answer. */
export const STAND_IN_METHOD: SiteMethodId = 'asce7-16';

export const METHODS = [...SITE_METHODS, 'rs222-c'] as const;
/** Methods a rating can be stated by. */
export type MethodId = (typeof METHODS)[number];

/** Where towers are designed by a method. */
export const PLACES = ['us', 'europe'] as const;
export type Place = (typeof PLACES)[number];
