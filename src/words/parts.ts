import type { Part, PartKind } from '../margins/index.ts';

const PART_NAMES: Readonly<Record<PartKind, string>> = {
  load: 'antenna',
  mast: 'mast',
  bearing: 'bearing',
  rotator: 'rotator',
  'tower-top': 'tower top',
  tower: 'tower',
  guys: 'guys',
  'tower-with-ice': 'tower with ice',
  'weight-aloft': 'weight aloft',
  footing: 'footing',
  'raising-gear': 'raising gear',
  'tower-lowered': 'tower lowered flat',
  fall: 'reach of a fall',
};

/** What a part is called in a sentence, after "the". */
export function partName({ kind, name }: Pick<Part, 'kind' | 'name'>): string {
  return kind === 'load' && name !== undefined ? name : PART_NAMES[kind];
}
