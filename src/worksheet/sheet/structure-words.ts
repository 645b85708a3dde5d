import type { UnitSystem } from '../../foundation/index.ts';
import type { Rating } from '../../margins/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import type { Foundation, Mast, Section } from '../../structure/index.ts';
import type { SpeedBasis } from '../../wind/index.ts';
import { AREA_WORDS, FIELDS, GROUND_WORDS, inWords, listed, SPEED_WORDS } from '../../words/index.ts';

import { RECKONED } from './printed.ts';

/** "lattice of 3 faces, 18 in wide, round members". */
export function sectionWords({ shape }: Section, system: UnitSystem): string {
  if (!shape) return 'shape not given';
  const [low, high] = shape.width;
  const wide =
    low === high
      ? `${inWords(low, 'diameter', system, RECKONED)} wide`
      : `${inWords(low, 'diameter', system, RECKONED)} to ${inWords(high, 'diameter', system, RECKONED)} wide`;
  if (shape.kind === 'lattice') return `lattice of ${shape.faces} faces, ${wide}, ${shape.members} members`;
  return `${shape.sides === 0 ? 'round' : `${shape.sides}-sided`} pole, ${wide}`;
}

/** Metal of a section as given: "steel, wall 0.280 in, yield 35.0 ksi"; nothing where none is. */
export function metalWords({ tubing, shape }: Section, system: UnitSystem): string {
  if (tubing === undefined) return '';
  const { material, wall, braceWall, legFree, yieldStrength, ultimateStrength } = tubing;
  const size = (value: number) => inWords(value, 'diameter', system, RECKONED);
  const strength = (value: number) => inWords(value, 'stress', system, RECKONED);
  const solid = shape?.kind === 'lattice' && shape.solid.by === 'members' ? shape.solid : undefined;
  return [
    material,
    ...(solid ? [`legs ${size(solid.leg)}`, `braces ${size(solid.brace)}`, `panel ${size(solid.panel)}`] : []),
    `${solid ? 'leg wall' : 'wall'} ${size(wall)}`,
    ...(braceWall === undefined ? [] : [`brace wall ${size(braceWall)}`]),
    ...(legFree === undefined ? [] : [`legs free over ${size(legFree)}`]),
    yieldStrength === undefined ? 'yield not given' : `yield ${strength(yieldStrength)}`,
    ...(ultimateStrength === undefined ? [] : [`ultimate ${strength(ultimateStrength)}`]),
  ].join(', ');
}

export function mastWords(
  { outside, wall, length, yieldStrength, pieces, material }: Mast,
  system: UnitSystem,
): string {
  const long = `${inWords(length, 'length', system, RECKONED)} long`;
  if (pieces) return `${material}, ${pieces.length} tubes, ${long}`;
  const tube = `${inWords(outside, 'diameter', system, RECKONED)} outside`;
  const thick = wall === undefined ? 'wall not given' : `wall ${inWords(wall, 'diameter', system, RECKONED)}`;
  const grade =
    yieldStrength === undefined ? 'yield not given' : `yield ${inWords(yieldStrength, 'stress', system, RECKONED)}`;
  return `${material}, ${tube}, ${thick}, ${long}, ${grade}`;
}

export function foundationWords(foundation: Foundation | undefined, system: UnitSystem): string {
  const long = (value: number) => inWords(value, 'length', system, RECKONED);
  switch (foundation?.kind) {
    case undefined:
      return 'not given';
    case 'manufacturer':
      return FIELDS.foundation.kind.choices.manufacturer;
    case 'block':
      return `block ${long(foundation.length)} by ${long(foundation.width)}, ${long(foundation.depth)} deep${soilWords(foundation, system)}`;
    case 'pier':
      return `round pier ${long(foundation.diameter)} across, ${long(foundation.depth)} deep${foundation.constrained ? ', held by a slab' : ''}${soilWords(foundation, system)}`;
  }
}

function soilWords(
  { density, bearing, lateral, bearingNet, isolatedPole, bothAccepted }: Exclude<Foundation, { kind: 'manufacturer' }>,
  system: UnitSystem,
): string {
  const net = bearingNet === undefined ? '' : bearingNet ? ' net' : ' gross';
  return [
    ...(density === undefined ? [] : [`concrete of ${inWords(density, 'density', system, RECKONED)}`]),
    ...(bearing === undefined
      ? []
      : [`allowable soil bearing ${inWords(bearing, 'soil-pressure', system, RECKONED)}${net}`]),
    ...(lateral === undefined
      ? []
      : [`allowable lateral soil bearing ${inWords(lateral, 'soil-pressure-per-depth', system, RECKONED)}`]),
    ...(isolatedPole ? ['counted twice as of an isolated pole (IBC 1806.3.4)'] : []),
    ...(bothAccepted ? ['soil at sides and base accepted together'] : []),
  ]
    .map((each) => `, ${each}`)
    .join('');
}

/** A manufacturer's rating, as entered. */
export function ratingWords(rating: Rating, system: UnitSystem): { readonly states: string; readonly wind: string } {
  return { states: `${claimWords(rating, system)}${placeWords(rating, system)}`, wind: ratedWindWords(rating, system) };
}

function claimWords({ claim }: Rating, system: UnitSystem): string {
  const force = (value: number) => inWords(value, 'force', system, RECKONED);
  const moment = (value: number) => inWords(value, 'moment', system, RECKONED);
  const level = (claimed: { level: string; levelGiven: boolean }) =>
    `, ${claimed.level} level${claimed.levelGiven ? '' : ' (not stated, assumed)'}`;
  switch (claim.kind) {
    case 'area': {
      const rows = claim.rows.map(({ area, speed }) => {
        const at = speed === undefined ? '' : ` at ${inWords(speed, 'speed', system, RECKONED)}`;
        return `${inWords(area, 'area', system, RECKONED)}${at}`;
      });
      const also = claim.also.map(
        ({ area, height }) =>
          ` and ${inWords(area, 'area', system, RECKONED)} at ${inWords(height, 'length', system, RECKONED)}`,
      );
      return `${rows.join('; ')}${also.join('')}, ${AREA_WORDS[claim.areaKind]}`;
    }
    case 'force':
      return `${force(claim.force)}${level(claim)}`;
    case 'moment':
      return `${moment(claim.moment)}${level(claim)}`;
    case 'wind':
      return FIELDS.rating.kind.choices.wind;
    case 'weight':
      return inWords(claim.weight, 'weight', system, RECKONED);
    case 'torque':
      return [
        ...(claim.torque === undefined ? [] : [`turning torque ${moment(claim.torque)}`]),
        ...(claim.brake === undefined ? [] : [`braking torque ${moment(claim.brake)}`]),
      ].join(', ');
    case 'gear':
      return [
        ...(claim.working === undefined ? [] : [`working load ${force(claim.working)}`]),
        ...(claim.breaking === undefined ? [] : [`breaking strength ${force(claim.breaking)}`]),
      ].join(', ');
  }
}

function placeWords({ height, top, held, withCables }: Rating, system: UnitSystem): string {
  const long = (value: number) => inWords(value, 'length', system, RECKONED);
  return [
    ...(height === undefined ? [] : [`, at ${long(height)}`]),
    ...(top === undefined ? [] : [`, for a top at ${long(top)}`]),
    ...(held === undefined || held.length === 0 ? [] : [`, supports at ${listed(held.map(long))}`]),
    ...(withCables === undefined
      ? []
      : [`, with ${withCables.count} lines of ${inWords(withCables.diameter, 'diameter', system, RECKONED)}`]),
  ].join('');
}

/** The wind that an antenna is rated for, and what is assumed where its type is not stated. */
export function ownRatedWindWords(
  { speed, basis }: { readonly speed: number; readonly basis?: SpeedBasis },
  system: UnitSystem,
): string {
  const kind =
    basis === undefined
      ? 'type not stated; strength-level gust assumed, which gives the lowest capacity'
      : SPEED_WORDS[basis];
  return `${inWords(speed, 'speed', system, RECKONED)} (${kind})`;
}

function ratedWindWords({ wind, claim }: Rating, system: UnitSystem): string {
  if (!wind) return claim.kind === 'area' && claim.rows.every(({ speed }) => speed !== undefined) ? '' : 'not stated';
  const { speed, basis, method, exposure, riskCategory, year } = wind;
  const kind = basis === undefined ? 'type not stated' : SPEED_WORDS[basis];
  return [
    ...(speed === undefined ? [] : [`${inWords(speed, 'speed', system, RECKONED)} (${kind})`]),
    ...(method === undefined ? ['standard not stated'] : [`by ${METHOD_BY_ID[method].title}`]),
    ...(exposure === undefined ? ['exposure not stated'] : [`${exposure}, ${GROUND_WORDS[exposure]}`]),
    ...(riskCategory === undefined ? [] : [`class ${riskCategory}`]),
    ...(year === undefined ? [] : [`data sheet of ${year}`]),
  ].join(', ');
}
