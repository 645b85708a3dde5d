import type { UnitSystem } from '../foundation/index.ts';
import type { RaisingAnswer } from '../margins/index.ts';
import type { LaidTower } from '../structure/index.ts';
import { figures, inWords, listed, REASON_WORDS } from '../words/index.ts';
import { type Quantity, quantity } from './quantity.ts';

export interface RaisingRowDocument {
  readonly angle: Quantity;
  readonly state: string;
  /** Pull positive, push negative. */
  readonly force?: Quantity;
  readonly hinge?: Quantity;
  readonly length: Quantity;
}

interface GustDocument {
  readonly gust: Quantity;
  readonly angle: Quantity;
}

export interface RaisingDocument {
  readonly says: string;
  readonly rows: readonly RaisingRowDocument[];
  readonly worst?: RaisingRowDocument;
  readonly worstHinge?: RaisingRowDocument;
  readonly balance?: Quantity;
  readonly deadPoint?: Quantity;
  readonly holdBack?: { readonly angle: Quantity; readonly moment: Quantity };
  readonly rise?: Quantity;
  readonly work?: Quantity;
  readonly workingLoad?: Quantity;
  /** The actual gust that, on the way, brings the gear to its working load. */
  readonly gust?: GustDocument;
  /** The same just off the ground and half-way. */
  readonly gustsAt?: readonly GustDocument[];
  /** The actual gust across the tower lowered flat that, with its own weight, its rating covers. */
  readonly lyingWind?: { readonly gust: Quantity; readonly where: Quantity; readonly forecast?: Quantity };
  readonly handling?: {
    readonly best: string;
    readonly mastAtLeast: Quantity;
    readonly clearance: Quantity;
    readonly antennas: readonly {
      readonly name: string;
      readonly clearance: Quantity;
      readonly workingHeight: Quantity;
    }[];
  };
}

/** Raising and lowering, in the reader's units. */
export function raisingDocument(answer: RaisingAnswer, system: UnitSystem): RaisingDocument {
  const { raising, gust, gustsAt, lyingWind, handling } = answer;
  const angle = (value: number) => quantity(value, 'angle', system);
  const row = (each: NonNullable<RaisingAnswer['raising']>['rows'][number]): RaisingRowDocument => ({
    angle: angle(each.angle),
    state: each.state,
    ...(each.force === undefined ? {} : { force: quantity(each.force, 'force', system) }),
    ...(each.hinge === undefined ? {} : { hinge: quantity(each.hinge.force, 'force', system) }),
    length: quantity(each.length, 'length', system),
  });
  const gustDocument = (each: NonNullable<RaisingAnswer['gust']>): GustDocument => ({
    gust: quantity(each.gust, 'speed', system),
    angle: angle(each.angle),
  });
  const laid = handling && bestOf(handling);
  return {
    says: raisingSays(answer, system),
    rows: raising?.rows.map(row) ?? [],
    ...(raising?.worst === undefined ? {} : { worst: row(raising.worst) }),
    ...(raising?.worstHinge === undefined ? {} : { worstHinge: row(raising.worstHinge) }),
    ...(raising?.balance === undefined ? {} : { balance: angle(raising.balance) }),
    ...(raising?.deadPoint === undefined ? {} : { deadPoint: angle(raising.deadPoint) }),
    ...(raising?.holdBack === undefined
      ? {}
      : {
          holdBack: {
            angle: angle(raising.holdBack.angle),
            moment: quantity(raising.holdBack.moment, 'moment', system),
          },
        }),
    ...(raising === undefined
      ? {}
      : { rise: quantity(raising.rise, 'length', system), work: quantity(raising.work, 'moment', system) }),
    ...(raising?.workingLoad === undefined ? {} : { workingLoad: quantity(raising.workingLoad, 'force', system) }),
    ...(gust === undefined ? {} : { gust: gustDocument(gust) }),
    ...(gustsAt === undefined ? {} : { gustsAt: gustsAt.map(gustDocument) }),
    ...(lyingWind === undefined
      ? {}
      : {
          lyingWind: {
            gust: quantity(lyingWind.gust, 'speed', system),
            where: quantity(lyingWind.height, 'length', system),
            ...(lyingWind.forecast === undefined ? {} : { forecast: quantity(lyingWind.forecast, 'speed', system) }),
          },
        }),
    ...(handling === undefined || laid === undefined || laid.antennas.length === 0
      ? {}
      : {
          handling: {
            best: handling.best,
            mastAtLeast: quantity(laid.mastAtLeast, 'length', system),
            clearance: quantity(laid.clearance, 'length', system),
            antennas: laid.antennas.map(({ name, clearance }, index) => ({
              name,
              clearance: quantity(clearance, 'length', system),
              workingHeight: quantity(laid.workingHeights[index] as number, 'length', system),
            })),
          },
        }),
  };
}

function bestOf({ orientations, best }: NonNullable<RaisingAnswer['handling']>): LaidTower {
  return orientations.find(({ orientation }) => orientation === best) ?? orientations[0];
}

/** A gust so small is no wind at all: there the gear stands in line with the hinge [m/s]. */
const NO_ARM = 2;

/** Raising and lowering in a few sentences. */
export function raisingSays(
  { raising, gust, gustsAt = [], lyingWind, handling }: RaisingAnswer,
  system: UnitSystem,
): string {
  const degrees = (value: number) => `${figures((value * 180) / Math.PI, 2)}°`;
  const said: string[] = [];
  if (raising?.worst) {
    const { force, angle } = raising.worst;
    said.push(
      `Largest ${force >= 0 ? 'pull' : 'push'} on the raising gear: ${inWords(Math.abs(force), 'force', system)}, with the tower at ${degrees(angle)}. Friction and jerks add to it.`,
    );
  }
  if (raising?.unbounded) said.push(REASON_WORDS['no-hold']);
  if (raising?.holdBack) {
    said.push(
      `Past ${degrees(raising.balance ?? raising.holdBack.angle)} it moves on by itself and a line goes slack. Hold it back there with a second line.`,
    );
  }
  if (gustsAt.length > 0) {
    const each = gustsAt.map(
      (at) =>
        `${inWords(at.gust, 'speed', system)} ${at.angle === 0 ? 'just off the ground' : `at ${degrees(at.angle)}`}`,
    );
    said.push(`A gust of ${each.join(', or of ')}, brings the gear to its working load.`);
  }
  if (gust && gustsAt.every(({ angle }) => angle !== gust.angle)) {
    said.push(
      gust.gust < NO_ARM
        ? `Near ${degrees(gust.angle)} the gear has no arm against the wind. Steady the tower with hand lines until it is pinned.`
        : `With the tower at ${degrees(gust.angle)} a gust of ${inWords(gust.gust, 'speed', system)} brings the gear to its working load.`,
    );
  }
  if (lyingWind) {
    const forecast =
      lyingWind.forecast === undefined
        ? 'That leaves less than the margin set.'
        : `It keeps the margin set up to a forecast of ${inWords(lyingWind.forecast, 'speed', system)}.`;
    said.push(
      `Lowered flat, its rating covers its own weight and a gust of ${inWords(lyingWind.gust, 'speed', system)} across it. ${forecast} Hinge, props and ropes are not checked.`,
    );
  }
  const laid = handling && bestOf(handling);
  if (laid && laid.antennas.length > 0) {
    const touching = laid.antennas.filter(({ clearance }) => clearance < 0).map(({ name }) => name);
    const how = laid.orientation === 'booms-upright' ? 'booms pointing down' : 'elements pointing down';
    const flat = `Lowered flat with the ${how} (the better way)`;
    said.push(
      touching.length > 0
        ? `${flat}, ${listed(touching)} ${touching.length > 1 ? 'touch' : 'touches'} the ground. ${touching.length > 1 ? 'They clear' : 'It clears'} with the mast ${inWords(laid.mastAtLeast, 'length', system)} up.`
        : `${flat}, the clearance to the ground is ${inWords(laid.clearance, 'length', system)}.`,
    );
  }
  return said.join(' ') || 'Raising gear not given.';
}
