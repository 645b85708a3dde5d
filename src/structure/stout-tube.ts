import { MATERIALS } from './first-mode.ts';
import type { Section, Tower } from './station.ts';

/** Diameter over wall up to which a round tube yields in shear before it buckles. @source aisc-360 */
const STOUT_UP_TO = 70;

/**
 * Whether a section is a round tube stout enough for shear to yield it before it buckles: by its wall, or by the wall that its
 * weight, or that of the whole tower, leaves it in steel.
 *
 * D/t ≤ 70
 *
 * @example isStoutTube({ low: 0, high: 3, shape: { kind: 'pole', sides: 0, width: [0.1, 0.1] }, weight: 20 }, { sections: [] }) // true
 * @source aisc-360
 */
export function isStoutTube(
  section: Pick<Section, 'low' | 'high' | 'shape' | 'tubing' | 'notGiven' | 'weight'>,
  tower: Pick<Tower, 'sections' | 'weight'>,
): boolean {
  const { shape, tubing } = section;
  if (shape?.kind !== 'pole' || shape.sides !== 0 || section.notGiven?.includes('sides')) return false;
  const wall = tubing?.wall ?? wallByWeight(section, tower);
  return wall !== undefined && Math.max(...shape.width) <= STOUT_UP_TO * wall * (1 + 1e-9);
}

/** In steel: of lighter metal the same weight has more wall. */
function wallByWeight(
  section: Pick<Section, 'low' | 'high' | 'shape' | 'weight'>,
  tower: Pick<Tower, 'sections' | 'weight'>,
): number | undefined {
  const weighed = section.weight === undefined ? tower.sections : [section];
  const weight = section.weight ?? tower.weight;
  const tubes = weighed.flatMap(({ shape, low, high }) =>
    shape?.kind === 'pole' && shape.sides === 0
      ? [{ width: (shape.width[0] + shape.width[1]) / 2, length: high - low }]
      : [],
  );
  if (weight === undefined || tubes.length === 0 || tubes.length < weighed.length) return undefined;
  // Of n tubes of one wall: Σπ(D − t)·t·L·ρ = W.
  const length = tubes.reduce((sum, tube) => sum + tube.length, 0);
  const width = tubes.reduce((sum, tube) => sum + tube.width * tube.length, 0) / length;
  const under = width ** 2 - (4 * weight) / (Math.PI * MATERIALS.steel.density * length);
  return under < 0 ? width / 2 : (width - Math.sqrt(under)) / 2;
}
