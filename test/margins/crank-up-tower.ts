import type { Document } from './any-plan.ts';

const section = (width: number): Document => ({
  length: 22,
  shape: 'lattice',
  faces: 3,
  width,
  members: 'round',
  leg: 1,
  brace: 0.375,
  panel: 14,
  pattern: 'zigzag',
});

/** Three sections of 22 ft, 54 ft drawn out and 24 ft nested; invented. */
export const CRANK_UP_TOWER: Document = {
  support: 'free',
  top: 54,
  telescopes: true,
  nested: 24,
  frequency: 3,
  sections: [section(18), section(15), section(12)],
};
