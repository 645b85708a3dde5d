import type { Assessment } from '../margins/index.ts';
import { elevation } from './elevation.ts';
import { linkLadder } from './link-ladder.ts';
import { momentWithHeight } from './moment-with-height.ts';
import { pressureWithHeight } from './pressure-with-height.ts';
import { rose } from './rose.ts';
import { useAgainstGust } from './use-against-gust.ts';

export { elevation } from './elevation.ts';
export { DRAWING_STYLE } from './ink.ts';
export { linkLadder, siteGust } from './link-ladder.ts';
export { demandByHeight, momentWithHeight } from './moment-with-height.ts';
export { pressureWithHeight } from './pressure-with-height.ts';
export { groupsOf, rose } from './rose.ts';
export { useAgainstGust, useCurves } from './use-against-gust.ts';

export const DRAWING_NAMES = ['elevation', 'rose', 'pressure', 'moment', 'use', 'ladder'] as const;

export type DrawingName = (typeof DRAWING_NAMES)[number];

/** Every drawing of an answer, by name. */
export const DRAWINGS: Readonly<Record<DrawingName, (assessment: Assessment) => string>> = {
  elevation,
  rose,
  pressure: pressureWithHeight,
  moment: momentWithHeight,
  use: useAgainstGust,
  ladder: linkLadder,
};
