import { type Citation, cite, type Known } from '../foundation/index.ts';
import type { SpeedBasis } from '../wind/index.ts';
import type { SiteMethodId } from './method-id.ts';

/** A model building code as a town adopts it, and the standards it sends one to. */
export interface CodeEdition {
  readonly id: string;
  readonly code: 'IBC';
  readonly edition: number;
  /** Of buildings and all else that has no standard of its own; `method` where it is one of ours. */
  readonly wind: { readonly standard: string; readonly method?: SiteMethodId };
  /** Of antenna towers, which the code lets stand for the wind standard. */
  readonly tower: { readonly standard: string; readonly method: SiteMethodId };
  /** What the speeds of its maps are. */
  readonly mapSpeed: SpeedBasis;
  /** By that exception an escarpment counts so many times its height away from its crest. */
  readonly escarpmentReach?: number;
  readonly cite: Citation;
}

const ASCE_98 = { standard: 'ASCE 7-98' } as const;
const ASCE_02 = { standard: 'SEI/ASCE 7-02' } as const;
const ASCE_05 = { standard: 'ASCE/SEI 7-05' } as const;
const ASCE_10 = { standard: 'ASCE/SEI 7-10', method: 'asce7-10' } as const;
const ASCE_16 = { standard: 'ASCE/SEI 7-16', method: 'asce7-16' } as const;
const ASCE_22 = { standard: 'ASCE/SEI 7-22', method: 'asce7-22' } as const;
const TIA_F = { standard: 'TIA/EIA-222-F', method: 'eia222-f' } as const;
const TIA_G = { standard: 'ANSI/TIA-222-G', method: 'tia222-g' } as const;
const TIA_H = { standard: 'ANSI/TIA-222-H', method: 'tia222-h' } as const;

const CLAUSE = '1609.1.1, exception for antenna-supporting structures, and chapter 35';
/** Escarpments of category 2 by the exception of 2009 and later. @source ibc-2018 */
const ESCARPMENT_REACH = 16;

function ibc(
  edition: number,
  wind: CodeEdition['wind'],
  tower: CodeEdition['tower'],
  source: string,
  known: Known = 'memory',
): CodeEdition {
  return {
    id: `ibc-${edition}`,
    code: 'IBC',
    edition,
    wind,
    tower,
    mapSpeed: edition >= 2012 ? 'gust3-strength' : 'gust3-nominal',
    ...(edition >= 2009 ? { escarpmentReach: ESCARPMENT_REACH } : {}),
    cite: cite(source, CLAUSE, known),
  };
}

/** Editions of the International Building Code and the standards they refer to, the newest last. @source ibc-2018 */
export const CODE_EDITIONS: readonly CodeEdition[] = [
  ibc(2000, ASCE_98, TIA_F, 'ibc-2000'),
  ibc(2003, ASCE_02, TIA_F, 'ibc-2003', 'second-hand'),
  ibc(2006, ASCE_05, TIA_F, 'ibc-2003', 'second-hand'),
  ibc(2009, ASCE_05, TIA_G, 'ibc-2003'),
  ibc(2012, ASCE_10, TIA_G, 'ibc-2018'),
  ibc(2015, ASCE_10, TIA_G, 'ibc-2018'),
  ibc(2018, ASCE_16, TIA_H, 'ibc-2018'),
  ibc(2021, ASCE_16, TIA_H, 'ibc-2021', 'second-hand'),
  ibc(2024, ASCE_22, TIA_H, 'ibc-2021'),
];
