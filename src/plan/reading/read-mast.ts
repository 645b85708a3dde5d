import { FIT, LOOSEST_FIT, type Mast, type MastTube, type Rotator, type Tower } from '../../structure/index.ts';
import type { MastFields, RotatorFields } from '../schema/tower-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { present } from './present.ts';
import { refuseEarlyRupture, refuseThickWall } from './tube-faults.ts';

/** Two ways to say where the mast's lower end is may differ by this much [m]. @source common-practice */
const SAME_HEIGHT = 0.01;
const ROUNDING = 1e-6;

/** The mast of a plan in SI; where the plan gives the height of the rotator [m], it stands on that. */
export function readMast(
  reader: PlanReader,
  fields: MastFields,
  rotatorHeight: number | undefined,
  tower: Tower,
): Mast {
  const at = '/mast';
  const outside = reader.quantity(fields.outside, at, 'outside');
  const length = reader.quantity(fields.length, at, 'length');
  const wall = reader.perhaps(fields.wall, at, 'wall');
  if (wall !== undefined) refuseThickWall(reader, 'Mast', outside, wall, '/mast/wall');
  const foot = readFoot(reader, fields, length, rotatorHeight, tower);
  const tip = (foot ?? tower.top) + length;
  const yieldStrength = reader.perhaps(fields.yield, at, 'yield');
  const pieces = fields.pieces === undefined ? undefined : readPieces(reader, fields.pieces, length);
  queryOutside(reader, outside, pieces);
  const ultimateStrength = reader.perhaps(fields.ultimate, at, 'ultimate');
  for (const each of [{ yieldStrength }, ...(pieces ?? [])]) {
    refuseEarlyRupture(reader, 'Mast', each.yieldStrength, ultimateStrength, at);
  }
  return present({
    outside,
    length,
    // A stepped mast is weakest where one number for the whole would not show it, so nothing is shown from one number.
    wall: pieces === undefined ? wall : undefined,
    yieldStrength,
    ultimateStrength,
    pieces,
    material: fields.material ?? 'steel',
    foot,
    tip,
    bearing: readBearing(reader, fields, foot, tip, tower),
    shelf: fields.manufacturerPlates ?? false,
  });
}

/** The height of the rotator [m], where the plan gives one. */
export function readRotatorHeight(reader: PlanReader, fields: RotatorFields): number | undefined {
  return reader.perhaps(fields.height, '/rotator', 'height');
}

/** The rotator of a plan in SI. */
export function readRotator(reader: PlanReader, fields: RotatorFields): Rotator {
  return present({ weight: reader.perhaps(fields.weight, '/rotator', 'weight') });
}

function readFoot(
  reader: PlanReader,
  fields: MastFields,
  length: number,
  rotatorHeight: number | undefined,
  tower: Tower,
): number | undefined {
  const inside = reader.perhaps(fields.inside, '/mast', 'inside');
  const say = (value: number) => reader.say(value, 'length');
  if (inside !== undefined && inside > length) {
    const says = `Mast: ${say(inside)} inside the tower is more than its whole length of ${say(length)}. Give the part below the tower's top.`;
    reader.fault('/mast/inside', 'mast-inside-too-long', say(inside), `up to ${say(length)}`, says);
    return Number.NaN;
  }
  const fromInside = inside === undefined ? undefined : tower.top - inside;
  if (fromInside !== undefined && rotatorHeight !== undefined && Math.abs(fromInside - rotatorHeight) > SAME_HEIGHT) {
    const given = say(inside as number);
    const says = `Mast: ${given} inside puts its lower end at ${say(fromInside)}, and the rotator it stands on is at ${say(rotatorHeight)}. Give one, or make them agree.`;
    reader.fault('/mast/inside', 'mast-base-twice', given, say(tower.top - rotatorHeight), says);
    return Number.NaN;
  }
  const foot = fromInside ?? rotatorHeight;
  if (foot !== undefined && foot < tower.foot - ROUNDING) {
    const says = `Mast: its lower end at ${say(foot)} is below the tower's base at ${say(tower.foot)}. Give less inside, or a higher rotator.`;
    const pointer = inside === undefined ? '/rotator/height' : '/mast/inside';
    reader.fault(pointer, 'mast-below-base', say(foot), `${say(tower.foot)} or more`, says);
    return Number.NaN;
  }
  return foot;
}

function readBearing(
  reader: PlanReader,
  fields: MastFields,
  foot: number | undefined,
  tip: number,
  tower: Tower,
): number | undefined {
  if (fields.bearing === false) return undefined;
  const say = (value: number) => reader.say(value, 'length');
  const given = reader.perhaps(fields.bearing, '/mast', 'bearing');
  // A mast that stands on top of the tower, clamped on its rotator, has no bearing unless one is named.
  if (given === undefined && foot !== undefined && foot >= tower.top - ROUNDING) return undefined;
  const bearing = given ?? tower.top;
  if (tip < bearing - ROUNDING) {
    const says = `Mast reaches up to ${say(tip)}, not to its bearing at ${say(bearing)}. Give a longer mast, less inside, or "bearing": false.`;
    reader.fault('/mast/bearing', 'mast-misses-bearing', say(bearing), `up to ${say(tip)}`, says);
  }
  if (foot !== undefined && bearing <= foot + ROUNDING) {
    const says = `Mast bearing at ${say(bearing)} is not above the mast's lower end at ${say(foot)}. Give its height above ground, or false.`;
    reader.fault('/mast/bearing', 'bearing-below-mast', say(bearing), `more than ${say(foot)}`, says);
  }
  if (bearing > tower.top + SAME_HEIGHT) {
    const says = `Mast bearing at ${say(bearing)} is above the tower's top at ${say(tower.top)}: what carries it there is not checked.`;
    reader.query('/mast/bearing', 'bearing-above-top', says);
  }
  return bearing;
}

function readPieces(
  reader: PlanReader,
  pieces: NonNullable<MastFields['pieces']>,
  length: number,
): readonly MastTube[] {
  const tubes = pieces.map((piece, index): MastTube => {
    const at = `/mast/pieces/${index}`;
    const outside = reader.quantity(piece.outside, at, 'outside');
    const wall = reader.quantity(piece.wall, at, 'wall');
    refuseThickWall(reader, reader.words(at), outside, wall, `${at}/wall`);
    const from = reader.quantity(piece.from, at, 'from');
    const to = reader.quantity(piece.to, at, 'to');
    const yieldStrength = reader.perhaps(piece.yield, at, 'yield');
    if (from >= to || to > length + SAME_HEIGHT) {
      const given = `${reader.say(from, 'length')} to ${reader.say(to, 'length')}`;
      const allowed = `0 to ${reader.say(length, 'length')}`;
      const says = `${reader.words(at)} from ${given} does not lie on a mast of ${reader.say(length, 'length')}. Give both ends from the mast's lower end, the lower first.`;
      reader.fault(at, 'piece-off-mast', given, allowed, says);
    }
    return present({ outside, wall, from, to, yieldStrength });
  });
  refuseGaps(reader, tubes, length);
  queryLoose(reader, tubes);
  return meeting(tubes, length);
}

/** Ends written a hair apart are the same end: neither a gap in the mast nor an overlap. */
function meeting(tubes: readonly MastTube[], length: number): readonly MastTube[] {
  const near = (end: number, others: readonly number[]) =>
    others.find((other) => Math.abs(other - end) <= SAME_HEIGHT) ?? end;
  const ends = tubes.map(({ to }) => near(to, [length]));
  return tubes.map((tube, index) => ({
    ...tube,
    from: near(tube.from, [0, ...ends.filter((_, other) => other !== index)]),
    to: ends[index] as number,
  }));
}

/** Wind, weight and strength go by the pieces; an outside that is none of theirs was meant otherwise, or is a slip. */
function queryOutside(reader: PlanReader, outside: number, pieces: readonly MastTube[] | undefined): void {
  if (!pieces || pieces.some((piece) => !(Math.abs(piece.outside - outside) > FIT))) return;
  const say = (value: number) => reader.say(value, 'diameter');
  const widest = Math.max(...pieces.map((piece) => piece.outside));
  const says = `Mast: ${say(outside)} outside is that of none of its pieces, the widest of which has ${say(widest)}. Wind, ice, weight and strength go by the pieces.`;
  reader.query('/mast/outside', 'mast-outside-differs', says);
}

/** Of tubes inside each other, those with more play than a fit. */
function queryLoose(reader: PlanReader, tubes: readonly MastTube[]): void {
  const say = (value: number) => reader.say(value, 'diameter');
  const bore = ({ outside, wall }: MastTube) => outside - 2 * wall;
  tubes.forEach((outer, index) => {
    tubes.forEach((inner, place) => {
      const from = Math.max(outer.from, inner.from);
      const to = Math.min(outer.to, inner.to);
      const question = bore(outer) - inner.outside;
      if (place === index || !(to - from > SAME_HEIGHT && question > LOOSEST_FIT)) return;
      // A tube all along between them may fit into the one and around the other.
      const between = (tube: MastTube) =>
        tube !== inner && tube.outside <= bore(outer) + FIT && bore(tube) + FIT >= inner.outside;
      if (tubes.some((tube) => between(tube) && tube.from <= from + SAME_HEIGHT && tube.to >= to - SAME_HEIGHT)) return;
      const says = `Mast piece ${place + 1} is loose in piece ${index + 1}: ${say(question)} of play, more than a fit has (2 mm, 5/64 in). Neither is counted on to help the other: where they overlap the weaker stands alone. Shim it tight all along, and give the size of the bore that is left.`;
      reader.query(`/mast/pieces/${place}`, 'pieces-loose', says);
    });
  });
}

/** Every height of the mast has a tube, and of two at one height one goes into the other. */
function refuseGaps(reader: PlanReader, tubes: readonly MastTube[], length: number): void {
  if (tubes.some(({ from, to }) => !(from < to && to <= length + SAME_HEIGHT))) return;
  const say = (value: number) => reader.say(value, 'length');
  let reached = 0;
  for (const { from, to } of tubes.toSorted((a, b) => a.from - b.from)) {
    if (from > reached + SAME_HEIGHT) break;
    reached = Math.max(reached, to);
  }
  if (reached < length - SAME_HEIGHT) {
    const says = `Mast pieces: nothing stands right above ${say(reached)}, and the mast is ${say(length)} long. Give pieces that meet or overlap from lower end to tip.`;
    reader.fault('/mast/pieces', 'pieces-leave-a-gap', say(reached), say(length), says);
  }
  tubes.forEach((tube, index) => {
    const loose = tubes.findIndex(
      (other, place) =>
        place > index &&
        other.from < tube.to - SAME_HEIGHT &&
        other.to > tube.from + SAME_HEIGHT &&
        other.outside > tube.outside - 2 * tube.wall + FIT &&
        tube.outside > other.outside - 2 * other.wall + FIT,
    );
    if (loose < 0) return;
    const says = `Mast pieces ${index + 1} and ${loose + 1} overlap, and neither goes into the other. Check their outside, wall and ends.`;
    const [given, inner] = [reader.say(tube.outside, 'diameter'), reader.say(tubes[loose]?.outside ?? 0, 'diameter')];
    reader.fault(`/mast/pieces/${loose}`, 'pieces-do-not-nest', `${given}, ${inner}`, 'one inside the other', says);
  });
}
