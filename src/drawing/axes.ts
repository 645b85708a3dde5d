import { figures } from '../words/index.ts';
import { lettering, pen } from './ink.ts';
import { element, group, type Svg } from './svg.ts';

/** From a quantity to its place on the sheet. */
export interface Scale {
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
}

/** A linear scale with round ticks, as many as keep the given distance on the sheet. */
export function scaleOf(values: readonly [number, number], places: readonly [number, number], apart: number): Scale {
  const [low, high] = values;
  const span = high > low ? high - low : 1;
  const length = Math.abs(places[1] - places[0]);
  const step = roundStep((span * apart) / length);
  const ticks: number[] = [];
  for (let count = Math.ceil(low / step - 1e-9); count * step <= low + span + 1e-9 * span; count += 1) {
    ticks.push(count * step + 0);
  }
  return { at: (value) => places[0] + ((places[1] - places[0]) * (value - low)) / span, ticks };
}

/** The least of 1, 2, 5, 10, … that is no smaller. */
export function roundStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  const digit = [1, 2, 5].find((each) => each * decade >= least * (1 - 1e-9)) ?? 10;
  return digit * decade;
}

/** An upright axis with its ticks to the left. */
export function uprightAxis(x: number, scale: Scale, top: number, foot: number, unit: string): Svg {
  return group(
    {},
    element('path', { d: `M${x} ${top}V${foot}`, ...pen({ line: 'ink-soft', width: 0.9 }) }),
    scale.ticks.map((tick) => [
      element('path', { d: `M${x - 4} ${scale.at(tick).toFixed(2)}h4`, ...pen({ line: 'ink-soft', width: 0.9 }) }),
      lettering(x - 7, scale.at(tick) + 4.3, figures(tick), { anchor: 'end' }),
    ]),
    unit === '' ? undefined : lettering(x - 7, top - 11, unit, { anchor: 'end', ink: 'ink-soft' }),
  );
}

/** A level axis with its ticks beneath. */
export function levelAxis(y: number, scale: Scale, left: number, right: number): Svg {
  return group(
    {},
    element('path', { d: `M${left} ${y}H${right}`, ...pen({ line: 'ink-soft', width: 0.9 }) }),
    scale.ticks.map((tick) => [
      element('path', { d: `M${scale.at(tick).toFixed(2)} ${y}v4`, ...pen({ line: 'ink-soft', width: 0.9 }) }),
      lettering(scale.at(tick), y + 16, figures(tick), { anchor: 'middle' }),
    ]),
  );
}
