import type { StrandGrade } from './station.ts';

/** A guy wire of seven zinc-coated steel wires. */
export interface Strand {
  /** Outside [m]. */
  readonly diameter: number;
  /** Of one wire [m]. */
  readonly wire: number;
  /** [kg/m] */
  readonly mass: number;
  /** [N] */
  readonly breaking: Readonly<Record<StrandGrade, number>>;
}

/**
 * Zinc-coated steel strand of seven wires, class A: sizes, weights, breaking strengths. Extra high strength to 5/16 in second
 * hand, all else from memory.
 *
 * @source astm-a475
 */
export const STRANDS: readonly Strand[] = [
  strand(0.0047625, 0.00157, 0.1086, [5120, 8450, 12680, 17750]),
  strand(0.00635, 0.00203, 0.1801, [8450, 14010, 21130, 29580]),
  strand(0.0079375, 0.00264, 0.3051, [14230, 23800, 35590, 49820]),
  strand(0.009525, 0.00305, 0.4063, [18900, 30920, 48040, 68500]),
  strand(0.0127, 0.00419, 0.7694, [32920, 53820, 83630, 119660]),
];

function strand(
  diameter: number,
  wire: number,
  mass: number,
  [common, siemens, high, extra]: readonly [number, number, number, number],
): Strand {
  const breaking = { common, 'siemens-martin': siemens, 'high-strength': high, 'extra-high-strength': extra };
  return { diameter, wire, mass, breaking };
}

/** A guy this near to a strand's size is that strand [m]. */
const SAME_STRAND = 0.0002;

/**
 * The strand of an outside diameter.
 *
 * @param diameter outside [m]
 * @returns the strand; undefined where none of that size is known here
 * @example strandOf(0.00635)?.breaking.common // 8450
 * @source astm-a475
 */
export function strandOf(diameter: number): Strand | undefined {
  return STRANDS.find((each) => Math.abs(each.diameter - diameter) < SAME_STRAND);
}

/**
 * Area of the steel of a strand.
 *
 * 7·π·d²/4
 *
 * @param strand of wires of one diameter [m]
 * @returns the area [m²]
 * @example steelOf({ wire: 0.002 }) // 2.199e-5
 * @source astm-a475
 */
export function steelOf(strand: Pick<Strand, 'wire'>): number {
  return (7 * Math.PI * strand.wire ** 2) / 4;
}
