/** The things that checks are about, from what is aloft down. */
export const PART_KINDS = [
  'load',
  'mast',
  'bearing',
  'rotator',
  'tower-top',
  'tower',
  'guys',
  'tower-with-ice',
  'weight-aloft',
  'footing',
  'raising-gear',
  'tower-lowered',
  'fall',
] as const;
export type PartKind = (typeof PART_KINDS)[number];
