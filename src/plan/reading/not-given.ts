import type { NotGiven } from '../../margins/index.ts';
import { type Station, weightsNotGiven } from '../../structure/index.ts';
import type { Site } from '../../wind/index.ts';
import type { PlanDocument } from '../schema/plan-document.ts';

/** What a plan leaves out that has a reading and a caution, in a fixed order. */
export function notGivenIn(document: PlanDocument, site: Site, station: Station): NotGiven[] {
  const { tower, mast, loads } = station;
  const above = loads.some((load) => load.high > tower.top);
  const leansOn = tower.support === 'guyed' || tower.support === 'bracketed';
  const says: Readonly<Record<NotGiven, boolean>> = {
    'speed-basis': site.basis === undefined,
    'risk-category': site.riskCategory === undefined,
    hill: site.hill === undefined && site.topographicFactor === undefined,
    ice: document.site.ice === undefined,
    supports: leansOn && !tower.heldGiven,
    mast: above && mast === undefined,
    'mast-inside': mast !== undefined && mast.foot === undefined,
    weights: weightsNotGiven(station).length > 0,
    frequency: tower.frequency === undefined,
  };
  return (Object.keys(says) as NotGiven[]).filter((notGiven) => says[notGiven]);
}
