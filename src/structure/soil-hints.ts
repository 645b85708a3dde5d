import { FOOT, POUND_PER_SQUARE_FOOT } from '../foundation/index.ts';

export interface SoilHint {
  readonly soil: string;
  /** What it may carry upright [Pa]. */
  readonly bearing: number;
  /** What it may press sideways, for each unit of depth [Pa/m]. */
  readonly lateral: number;
}

const hint = (soil: string, psf: number, psfPerFoot: number): SoilHint => ({
  soil,
  bearing: psf * POUND_PER_SQUARE_FOOT,
  lateral: (psfPerFoot * POUND_PER_SQUARE_FOOT) / FOOT,
});

/**
 * Presumed strengths of soils, second hand: a hint to the owner what to ask for, never a value a check takes by itself.
 * Mud, organic silt, peat and fill without compaction have none.
 *
 * @source ibc-2018-soils
 */
export const SOIL_HINTS: readonly SoilHint[] = [
  hint('crystalline bedrock', 12000, 1200),
  hint('sedimentary and foliated rock', 4000, 400),
  hint('gravel and sandy gravel', 3000, 200),
  hint('sand and silty or clayey sand or gravel', 2000, 150),
  hint('clay and sandy or silty clay and silt', 1500, 100),
];
