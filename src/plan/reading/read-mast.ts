import type { Mast, Tower } from '../../structure/index.ts';
import { BOUNDS } from '../quantities/field-bounds.ts';
import type { MastFields, RotatorFields } from '../schema/tower-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { present } from './present.ts';
import { refuseThickWall } from './read-load-shape.ts';

/** Two ways to say where the mast's foot is may differ by this much [m]. @source common-practice */
const SAME_HEIGHT = 0.01;
const ROUNDING = 1e-6;

/**
 * The mast of a plan in SI.
 *
 * @param reader the plan's reader, which takes the faults [-]
 * @param fields the mast as written [-]
 * @param rotatorHeight height of the rotator, on which the mast stands [m], where given
 * @param tower the tower it stands on [-]
 * @returns the mast [-]
 * @example readMast(reader, { outside: 2, length: 10 }, undefined, tower).bearing // tower.top
 * @source derived
 */
export function readMast(
  reader: PlanReader,
  fields: MastFields,
  rotatorHeight: number | undefined,
  tower: Tower,
): Mast {
  const at = '/mast';
  const outside = reader.quantity(fields.outside, BOUNDS.diameter, at, 'outside');
  const length = reader.quantity(fields.length, BOUNDS.extent, at, 'length');
  const wall = reader.perhaps(fields.wall, BOUNDS.wall, at, 'wall');
  if (wall !== undefined) refuseThickWall(reader, 'Mast', outside, wall, '/mast/wall');
  const foot = readFoot(reader, fields, length, rotatorHeight, tower);
  const tip = (foot ?? tower.top) + length;
  const yieldStrength = reader.perhaps(fields.yield, BOUNDS.strength, at, 'yield');
  const stepped = fields.pieces !== undefined && readPieces(reader, fields.pieces, length);
  return present({
    outside,
    length,
    // A stepped mast is weakest where one number for the whole would not show it, so nothing is shown from one number.
    wall: stepped ? undefined : wall,
    yieldStrength: stepped ? undefined : yieldStrength,
    material: fields.material ?? 'steel',
    foot,
    tip,
    bearing: readBearing(reader, fields, foot, tip, tower),
    shelf: fields.shelf ?? false,
  });
}

/**
 * The height of the rotator, where the plan gives one.
 *
 * @param reader the plan's reader, which takes the faults [-]
 * @param fields the rotator as written [-]
 * @returns the height [m], or undefined
 * @example readRotatorHeight(reader, { height: 44 }) // 13.4112
 * @source derived
 */
export function readRotatorHeight(reader: PlanReader, fields: RotatorFields): number | undefined {
  if (fields.weight !== undefined) {
    reader.quantity(fields.weight, BOUNDS.weight, '/rotator', 'weight');
    const says = 'Your rotator’s weight is kept in the plan; weight aloft is not computed with it yet.';
    reader.query('/rotator/weight', 'not-computed-yet', says);
  }
  return reader.perhaps(fields.height, BOUNDS.height, '/rotator', 'height');
}

function readFoot(
  reader: PlanReader,
  fields: MastFields,
  length: number,
  rotatorHeight: number | undefined,
  tower: Tower,
): number | undefined {
  const inside = reader.perhaps(fields.inside, BOUNDS.height, '/mast', 'inside');
  const say = (value: number) => reader.say(value, 'length');
  if (inside !== undefined && inside > length) {
    const says = `Mast: ${say(inside)} inside the tower is more than its whole length of ${say(length)}. Give the part below the tower's top.`;
    reader.fault('/mast/inside', 'mast-inside-too-long', say(inside), `up to ${say(length)}`, says);
    return Number.NaN;
  }
  const fromInside = inside === undefined ? undefined : tower.top - inside;
  if (fromInside !== undefined && rotatorHeight !== undefined && Math.abs(fromInside - rotatorHeight) > SAME_HEIGHT) {
    const given = say(inside as number);
    const says = `Mast: ${given} inside puts its foot at ${say(fromInside)}, and the rotator it stands on is at ${say(rotatorHeight)}. Give one, or make them agree.`;
    reader.fault('/mast/inside', 'mast-foot-twice', given, say(tower.top - rotatorHeight), says);
    return Number.NaN;
  }
  const foot = fromInside ?? rotatorHeight;
  if (foot !== undefined && foot < tower.foot - ROUNDING) {
    const says = `Mast: its foot at ${say(foot)} is below the tower's foot at ${say(tower.foot)}. Give less inside, or a higher rotator.`;
    const pointer = inside === undefined ? '/rotator/height' : '/mast/inside';
    reader.fault(pointer, 'mast-below-foot', say(foot), `${say(tower.foot)} or more`, says);
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
  const given = reader.perhaps(fields.bearing, BOUNDS.height, '/mast', 'bearing');
  // A mast that stands on top of the tower, clamped on its rotator, has no bearing unless one is named.
  if (given === undefined && foot !== undefined && foot >= tower.top - ROUNDING) return undefined;
  const bearing = given ?? tower.top;
  if (tip < bearing - ROUNDING) {
    const says = `Mast reaches up to ${say(tip)}, not to its bearing at ${say(bearing)}. Give a longer mast, less inside, or "bearing": false.`;
    reader.fault('/mast/bearing', 'mast-misses-bearing', say(bearing), `up to ${say(tip)}`, says);
  }
  if (foot !== undefined && bearing <= foot + ROUNDING) {
    const says = `Mast bearing at ${say(bearing)} is not above the mast's foot at ${say(foot)}. Give its height above ground, or false.`;
    reader.fault('/mast/bearing', 'bearing-below-mast', say(bearing), `more than ${say(foot)}`, says);
  }
  if (bearing > tower.top + SAME_HEIGHT) {
    const says = `Mast bearing at ${say(bearing)} is above the tower's top at ${say(tower.top)}: what carries it there is not checked.`;
    reader.query('/mast/bearing', 'bearing-above-top', says);
  }
  return bearing;
}

function readPieces(reader: PlanReader, pieces: NonNullable<MastFields['pieces']>, length: number): true {
  for (const [index, piece] of pieces.entries()) {
    const at = `/mast/pieces/${index}`;
    const outside = reader.quantity(piece.outside, BOUNDS.diameter, at, 'outside');
    const wall = reader.quantity(piece.wall, BOUNDS.wall, at, 'wall');
    refuseThickWall(reader, reader.words(at), outside, wall, `${at}/wall`);
    const from = reader.quantity(piece.from, BOUNDS.height, at, 'from');
    const to = reader.quantity(piece.to, BOUNDS.extent, at, 'to');
    reader.perhaps(piece.yield, BOUNDS.strength, at, 'yield');
    if (from >= to || to > length + SAME_HEIGHT) {
      const given = `${reader.say(from, 'length')} to ${reader.say(to, 'length')}`;
      const allowed = `0 to ${reader.say(length, 'length')}`;
      const says = `${reader.words(at)} from ${given} does not lie on a mast of ${reader.say(length, 'length')}. Give both ends from the mast's foot, the lower first.`;
      reader.fault(at, 'piece-off-mast', given, allowed, says);
    }
  }
  const says =
    'Your mast’s pieces are kept in the plan; a stepped or sleeved mast is not computed yet, so the mast is not shown.';
  reader.query('/mast/pieces', 'not-computed-yet', says);
  return true;
}
