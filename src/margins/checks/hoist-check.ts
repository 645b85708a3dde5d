import type { Trace } from '../../foundation/index.ts';
import { appurtenanceMasses, hoistPull, sectionCarrying, untoldWeights, workingLoadOf } from '../../structure/index.ts';
import type { TowerModel } from '../tower-model.ts';
import { verdictOf } from '../verdict.ts';
import type { Check } from './check.ts';
import { ratedGear } from './gear-rating.ts';

/**
 * The pull of the hoist of a telescoping tower against what its gear may pull, where the plan tells of either.
 *
 * u = Σ(k − 1)·W_k / F_work
 *
 * @param model the tower [-]
 * @returns the check; nothing for a tower that does not telescope or of whose hoist the plan says nothing [-]
 * @source derived
 */
export function hoistCheck(model: TowerModel): readonly Check[] {
  const { tower } = model.input.station;
  const rated = workingLoadOf(ratedGear(model.input.ratings) ?? {});
  const told = rated !== undefined || tower.sections.some((section) => section.weight !== undefined);
  if (!tower.telescopes || !told) return [];
  const base = { id: 'hoist', kind: 'hoist' } as const;
  const needs = [...weightNeeds(model), ...(rated === undefined ? ['/ratings'] : [])];
  if (rated === undefined || needs.length > 0) return [{ ...base, verdict: 'open', because: 'missing', needs }];
  const pull = hoistPull(liftedMasses(model));
  const ratio = pull / rated;
  return [
    {
      ...base,
      verdict: verdictOf(ratio, ratio, model.input.wanted.margin),
      needs: [],
      result: { ratio, of: 'pull', demand: pull, capacity: rated, ratioRange: [ratio, ratio], headings: {} },
    },
  ];
}

/**
 * The working of the hoist's pull.
 *
 * @param model the tower [-]
 * @param trace the working [-]
 * @returns nothing [-]
 * @source derived
 */
export function explainHoist(model: TowerModel, trace: Trace): void {
  const check = hoistCheck(model)[0];
  if (!check?.result) return;
  hoistPull(liftedMasses(model), trace);
  workingLoadOf(ratedGear(model.input.ratings) ?? {}, trace);
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
    masses[carrier] = (masses[carrier] as number) + mass;
  }
  return masses;
}

function weightNeeds({ input: { station } }: TowerModel): readonly string[] {
  // What the fixed section weighs is not lifted.
  const lifted = station.tower.sections.slice(1);
  const needs = lifted.filter((section) => section.weight === undefined).map((section) => `${section.at}/weight`);
  return [...new Set([...needs, ...untoldWeights(station)])];
}
