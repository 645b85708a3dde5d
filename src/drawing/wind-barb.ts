import { KNOT } from '../foundation/index.ts';
import { pen } from './ink.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';

/**
 * A wind barb after the WMO: the staff points to where the wind comes from, here the left; half feather 5 kn, feather
 * 10 kn, pennant 50 kn, rounded to 5 kn.
 */
export function windBarb(x: number, y: number, length: number, speed: number): Svg {
  const marks = barbMarks(speed);
  const pennants: Svg[] = [];
  const feathers: string[] = [];
  let at = x;
  for (let count = 0; count < marks.pennants; count += 1) {
    const corners: Point[] = [
      [at, y],
      [at, y - 10],
      [at + 7, y],
    ];
    pennants.push(element('path', { d: through(corners, true), ...pen({ line: 'wind', width: 0.8, fill: 'wind' }) }));
    at += 7.5;
  }
  if (marks.pennants > 0) at += 2.5;
  const feather = (share: number) => {
    feathers.push(
      through([
        [at, y],
        [at - 3.5 * share, y - 10 * share],
      ]),
    );
    at += 4;
  };
  for (let count = 0; count < marks.feathers; count += 1) feather(1);
  // A half feather alone stands in from the end, so that it is not taken for a whole one.
  if (marks.half && marks.pennants + marks.feathers === 0) at += 4;
  if (marks.half) feather(0.55);
  const end = Math.max(x + length, at + 3);
  return group(
    {},
    element('path', {
      d: `M${x} ${y.toFixed(2)}H${end.toFixed(2)}${feathers.join('')}`,
      ...pen({ line: 'wind', width: 1.2 }),
    }),
    pennants,
    element('circle', { cx: end, cy: y, r: 1.8, ...pen({ fill: 'wind' }) }),
  );
}

/** How many of each mark a speed in m/s takes. */
export function barbMarks(speed: number): {
  readonly pennants: number;
  readonly feathers: number;
  readonly half: boolean;
} {
  const fives = Math.round(speed / KNOT / 5);
  return { pennants: Math.floor(fives / 10), feathers: Math.floor((fives % 10) / 2), half: fives % 2 === 1 };
}
