import { GROUND_FIELDS } from '../wind/index.ts';
import type { GroundRule } from './method.ts';

/** Ground in the words of ASCE 7 and TIA-222. */
export const BY_EXPOSURE: GroundRule = { field: 'exposure', ...GROUND_FIELDS.exposure, counts: true };
