import type { Assessment } from '../margins/index.ts';
import { checkLadder } from './check-ladder.ts';
import { elevation } from './elevation.ts';
import { momentWithHeight } from './moment-with-height.ts';
import { pressureWithHeight } from './pressure-with-height.ts';
import { ratioAgainstGust } from './ratio-against-gust.ts';
import { rose } from './rose.ts';

export { siteGust } from './check-ladder.ts';
export { elevation } from './elevation.ts';
export { DRAWING_STYLE } from './ink.ts';
export { demandByHeight } from './moment-with-height.ts';
export { ratioCurves } from './ratio-against-gust.ts';
export { groupsOf, rose } from './rose.ts';

export const DRAWING_NAMES = ['elevation', 'rose', 'pressure', 'moment', 'ratio', 'ladder'] as const;

export type DrawingName = (typeof DRAWING_NAMES)[number];

/** Every drawing of an answer, by name. */
export const DRAWINGS: Readonly<Record<DrawingName, (assessment: Assessment) => string>> = {
  elevation,
  rose,
  pressure: pressureWithHeight,
  moment: momentWithHeight,
  ratio: ratioAgainstGust,
  ladder: checkLadder,
};
