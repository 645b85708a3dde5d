import { withArticle } from '../../foundation/index.ts';
import { pointerTo } from '../faults/fault.ts';
import type { PlanReader } from './plan-reader.ts';

/** Faults a wall [m] that leaves no tube in an outside diameter [m]. */
export function refuseThickWall(
  reader: PlanReader,
  what: string,
  outside: number,
  wall: number,
  pointer: string,
): void {
  if (!(wall >= outside / 2)) return;
  const [given, tube, most] = [wall, outside, outside / 2].map((value) => reader.say(value, 'diameter'));
  const says = `${what} wall ${given} does not fit in ${withArticle(tube as string)} tube: give less than ${most}.`;
  reader.fault(pointer, 'wall-too-thick', given as string, `less than ${most}`, says);
}

/** Faults a strength at rupture [Pa] below the yield [Pa]. */
export function refuseEarlyRupture(
  reader: PlanReader,
  what: string,
  yieldStrength: number | undefined,
  ultimateStrength: number | undefined,
  at: string,
): void {
  if (yieldStrength === undefined || ultimateStrength === undefined || !(ultimateStrength < yieldStrength)) return;
  const [breaks, yields] = [ultimateStrength, yieldStrength].map((value) => reader.say(value, 'stress'));
  const says = `${what} breaks at ${breaks} and yields at ${yields}: no metal breaks before it yields. Look at both again.`;
  reader.fault(pointerTo(at, 'ultimate'), 'rupture-below-yield', breaks as string, `${yields} or more`, says);
}
