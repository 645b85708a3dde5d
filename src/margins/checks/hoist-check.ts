import { nth, under } from '../../foundation/index.ts';
import {
  appurtenanceMasses,
  hoistPull,
  sectionCarrying,
  weightsNotGiven,
  workingLoadOf,
} from '../../structure/index.ts';
import type { TowerModel } from '../model.ts';
import { type Check, judged, openCheck, settled } from './check.ts';
import type { CheckKind } from './check-kind.ts';
import { ratedGear } from './gear-rating.ts';

/** The pull of the hoist of a telescoping tower against what its gear may pull, where the plan tells of either. */
export const hoistKind: CheckKind<'hoist'> = {
  kind: 'hoist',
  part: 'raising-gear',
  assess: ({ model }) => hoistCheck(model),
  explain: ({ model }, checks, trace) => {
    if (!checks.some(({ result }) => result)) return;
    under(trace, 'hoist', () => {
      hoistPull(liftedMasses(model), trace);
      workingLoadOf(ratedGear(model.input.ratings) ?? {}, trace);
    });
  },
  loadedBy: 'gear',
  room: undefined,
};

function hoistCheck(model: TowerModel): readonly Check[] {
  const { tower } = model.input.station;
  const rated = workingLoadOf(ratedGear(model.input.ratings) ?? {});
  const told = rated !== undefined || tower.sections.some((section) => section.weight !== undefined);
  if (!tower.telescopes || !told) return [];
  const of = { id: 'hoist', kind: 'hoist', at: '/tower/telescopes' } as const;
  const needs = [...weightNeeds(model), ...(rated === undefined ? ['/ratings'] : [])];
  if (rated === undefined || needs.length > 0) return [openCheck(of, 'missing', needs)];
  const demand = hoistPull(liftedMasses(model));
  const result = settled({ ratio: demand / rated, of: 'pull', demand, capacity: rated });
  return [judged(of, result, { margin: model.input.wanted.margin })];
}

/** Each section with what rides on it, from the foot up: on the mast and above the tower with the uppermost. */
function liftedMasses({ input: { station } }: TowerModel): readonly number[] {
  const { sections } = station.tower;
  const masses = sections.map((section) => section.weight ?? 0);
  for (const { mass, high, carriedAt, onMast } of appurtenanceMasses(station)) {
    // A load at a rim may be on the section that is lifted; what runs up to a rim is held below it.
    const carrier = onMast
      ? sections.length - 1
      : sectionCarrying(sections, carriedAt ?? high, carriedAt === undefined ? 'outer' : 'inner');
    masses[carrier] = nth(masses, carrier) + mass;
  }
  return masses;
}

function weightNeeds({ input: { station } }: TowerModel): readonly string[] {
  // What the fixed section weighs is not lifted.
  const lifted = station.tower.sections.slice(1);
  const needs = lifted.filter((section) => section.weight === undefined).map((section) => `${section.at}/weight`);
  return [...new Set([...needs, ...weightsNotGiven(station)])];
}
