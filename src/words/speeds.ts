import type { SpeedBasis } from '../wind/index.ts';

/** Types of speed as a sentence says them after the figure: "105 mph strength-level gust". */
export const SPEED_WORDS = {
  'gust3-strength': 'strength-level gust',
  'gust3-nominal': 'nominal gust',
  'fastest-mile': 'fastest mile',
  'mean-1min': '1-minute mean',
  'mean-10min': '10-minute mean',
  'mean-hour': 'hourly mean',
} as const satisfies Record<SpeedBasis, string>;
