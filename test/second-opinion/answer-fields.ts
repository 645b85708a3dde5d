/*
 * The one place of the second opinion that knows the names of an answer's fields; what it gives is in SI.
 */
import { FOOT, PSF, UNITS, type UnitSystem } from './told-station.ts';

interface Quantity {
  readonly value: number;
  readonly unit: string;
}

interface Line {
  readonly demand?: number;
  readonly asked?: number;
  readonly ratio?: number;
}

interface AnswerDocument {
  readonly wind: readonly { readonly height: Quantity; readonly pressure: Quantity }[];
  readonly windLoads: {
    readonly rows: readonly {
      readonly name: string;
      readonly kind: string;
      readonly front: number;
      readonly side: number;
    }[];
    readonly total: { readonly force: number; readonly momentAtBase: number };
  };
  readonly levels: {
    readonly rows: readonly {
      readonly height: number;
      readonly section: string;
      readonly place: string;
      readonly shear: number;
      readonly sideways: Line;
      readonly bending: Line;
    }[];
  };
  readonly reactions: Readonly<Record<'nominal', { readonly shear: Quantity; readonly moment: Quantity }>>;
  readonly mast?: { readonly atBearing?: Quantity; readonly bending?: { readonly moment: Quantity } };
  readonly foundation?: {
    readonly block?: {
      readonly density: Quantity;
      readonly momentAtUnderside: Quantity;
      readonly overturning: number;
      readonly olderOverturning: number;
      readonly toePressure?: Quantity;
    };
  };
  readonly checks: readonly {
    readonly id: string;
    readonly ratio?: number;
    readonly ratioRange?: readonly [number, number];
    readonly verdict: string;
    readonly holdsTo?: { readonly gust: Quantity; readonly design: Quantity };
  }[];
}

const PLACES: Readonly<Record<string, 'base' | 'joint' | 'section' | 'couple'>> = {
  foot: 'base',
  base: 'base',
  joint: 'joint',
  section: 'section',
  'top-couple': 'couple',
};

export interface AnsweredLevel {
  readonly z: number;
  readonly kind: 'base' | 'joint' | 'section' | 'couple';
  /** Of two rows at a joint within the couple, the one of the joint. */
  readonly atJoint: boolean;
  readonly shear: number;
  readonly sideways: number;
  readonly sidewaysRatio: number | undefined;
  readonly moment: number;
  readonly bendingRatio: number | undefined;
}

export interface Answer {
  readonly pressures: readonly { readonly z: number; readonly pressure: number }[];
  readonly areas: readonly {
    readonly name: string;
    readonly kind: string;
    readonly front: number;
    readonly side: number;
  }[];
  readonly total: { readonly force: number; readonly moment: number };
  readonly levels: readonly AnsweredLevel[];
  readonly nominal: { readonly shear: number; readonly moment: number };
  readonly mast: { readonly bending: number; readonly atBearing: number } | undefined;
  readonly block:
    | {
        readonly density: number;
        readonly momentAtUnderside: number;
        readonly overturning: number;
        readonly olderOverturning: number;
        readonly toePressure: number | undefined;
      }
    | undefined;
  readonly check: (
    id: string,
  ) =>
    | { readonly ratio: number | undefined; readonly design: number | undefined; readonly gust: number | undefined }
    | undefined;
}

export function answerOf(body: unknown, system: UnitSystem): Answer {
  const answer = body as AnswerDocument;
  const u = UNITS[system];
  const pressureUnit = system === 'us' ? PSF : 1;
  const soilUnit = { psf: PSF, kPa: 1000, Pa: 1 };
  const demand = (line: Line) => (line.demand ?? line.asked ?? 0) as number;
  const { mast, foundation } = answer;
  const block = foundation?.block;
  return {
    pressures: answer.wind.map(({ height, pressure }) => ({
      z: height.value * u.long,
      pressure: pressure.value * pressureUnit,
    })),
    areas: answer.windLoads.rows.map(({ name, kind, front, side }) => ({
      name,
      kind,
      front: front * u.area,
      side: side * u.area,
    })),
    total: {
      force: answer.windLoads.total.force * u.force,
      moment: answer.windLoads.total.momentAtBase * u.moment,
    },
    levels: answer.levels.rows.map((row, index, rows) => ({
      z: row.height * u.long,
      kind: PLACES[row.place] as 'base',
      atJoint:
        row.place === 'top-couple' && rows[index + 1]?.place === 'top-couple' && rows[index + 1]?.height === row.height,
      shear: row.shear * u.force,
      sideways: demand(row.sideways) * u.force,
      sidewaysRatio: row.sideways.ratio,
      moment: demand(row.bending) * u.moment,
      bendingRatio: row.bending.ratio,
    })),
    nominal: {
      shear: answer.reactions.nominal.shear.value * u.force,
      moment: answer.reactions.nominal.moment.value * u.moment,
    },
    mast:
      mast?.bending === undefined || mast.atBearing === undefined
        ? undefined
        : { bending: mast.bending.moment.value * u.moment, atBearing: mast.atBearing.value * u.force },
    block: block && {
      density: block.density.value * (block.density.unit.includes('lb') ? 0.45359237 / FOOT ** 3 : 1),
      momentAtUnderside: block.momentAtUnderside.value * u.moment,
      overturning: block.overturning,
      olderOverturning: block.olderOverturning,
      toePressure:
        block.toePressure && block.toePressure.value * (soilUnit[block.toePressure.unit as 'psf'] ?? Number.NaN),
    },
    check: (id) => {
      const check = answer.checks.find((each) => each.id === id);
      return (
        check && {
          ratio: check.ratio,
          design: check.holdsTo && check.holdsTo.design.value * u.speed,
          gust: check.holdsTo && check.holdsTo.gust.value * u.speed,
        }
      );
    },
  };
}

/** Ids of the checks that are compared. */
export const CHECK = { tower: 'tower', mast: 'mast', ice: 'ice' } as const;
