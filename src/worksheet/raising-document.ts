import { type RaisingReport, type RaisingRowReport, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { RaisingAnswer } from '../margins/index.ts';
import type { Handling, LaidTower, RaisingRow } from '../structure/index.ts';
import { figures, inWords, listed, REASON_WORDS } from '../words/index.ts';
import { quantity } from './quantity.ts';

/** Raising and lowering, in the reader's units. */
export function raisingDocument(answer: RaisingAnswer, system: UnitSystem): RaisingReport {
  const { raising, gust, gustsAt, lyingWind, handling, nestedTop } = answer;
  const angle = (value: number | undefined) => quantity(value, 'angle', system);
  const row = (each: RaisingRow) =>
    told<RaisingRowReport>({
      angle: quantity(each.angle, 'angle', system),
      state: each.state,
      force: quantity(each.force, 'force', system),
      hinge: quantity(each.hinge?.force, 'force', system),
      length: quantity(each.length, 'length', system),
    });
  const gustDocument = (each: NonNullable<RaisingAnswer['gust']>) => ({
    gust: quantity(each.gust, 'speed', system),
    angle: quantity(each.angle, 'angle', system),
  });
  const holdBack = raising?.holdBack;
  return told<RaisingReport>({
    says: raisingSays(answer, system),
    rows: raising?.rows.map(row) ?? [],
    worst: raising?.worst && row(raising.worst),
    worstHinge: raising?.worstHinge && row(raising.worstHinge),
    balance: angle(raising?.balance),
    deadPoint: angle(raising?.deadPoint),
    holdBack: holdBack && {
      angle: quantity(holdBack.angle, 'angle', system),
      moment: quantity(holdBack.moment, 'moment', system),
    },
    rise: quantity(raising?.rise, 'length', system),
    work: quantity(raising?.work, 'moment', system),
    workingLoad: quantity(raising?.workingLoad, 'force', system),
    gust: gust && gustDocument(gust),
    gustsAt: gustsAt?.map(gustDocument),
    lyingWind:
      lyingWind &&
      told<NonNullable<RaisingReport['lyingWind']>>({
        gust: quantity(lyingWind.gust, 'speed', system),
        where: quantity(lyingWind.height, 'length', system),
        forecast: quantity(lyingWind.forecast, 'speed', system),
      }),
    handling: handling && handlingDocument(handling, system),
    nestedTop: quantity(nestedTop, 'length', system),
  });
}

function handlingDocument(handling: Handling, system: UnitSystem): RaisingReport['handling'] | undefined {
  const laid = bestOf(handling);
  const length = (value: number) => quantity(value, 'length', system);
  if (laid.antennas.length === 0) return undefined;
  return {
    best: handling.best,
    mastAtLeast: length(laid.mastAtLeast),
    clearance: length(laid.clearance),
    antennas: laid.antennas.map(({ name, clearance }, index) => ({
      name,
      clearance: length(clearance),
      workingHeight: length(laid.workingHeights[index] as number),
    })),
  };
}

function bestOf({ orientations, best }: Handling): LaidTower {
  return orientations.find(({ orientation }) => orientation === best) ?? orientations[0];
}

/** A gust so small is no wind at all: there the gear stands in line with the hinge [m/s]. */
const NO_ARM = 2;

/** Raising and lowering in a few sentences. */
export function raisingSays(
  { raising, gust, gustsAt = [], lyingWind, handling, nestedTop }: RaisingAnswer,
  system: UnitSystem,
): string {
  const degrees = (value: number) => `${figures((value * 180) / Math.PI, 2)}°`;
  const said: string[] = [];
  if (nestedTop !== undefined) {
    said.push(
      `Raised and laid down nested, its top at ${inWords(nestedTop, 'length', system)}; crank it up once upright.`,
    );
  }
  if (raising?.worst) {
    const { force, angle } = raising.worst;
    said.push(
      `Largest ${force >= 0 ? 'pull' : 'push'} on the raising gear: ${inWords(Math.abs(force), 'force', system)}, with the tower at ${degrees(angle)}. Friction and jerks add to it.`,
    );
  }
  if (raising?.unbounded) said.push(REASON_WORDS['no-hold']);
  if (raising?.holdBack) {
    const { from } = raising.pieces.find(({ state }) => state === 'falls-on') ?? { from: raising.holdBack.angle };
    said.push(
      `Past ${degrees(from)} it moves on by itself and a line goes slack. Hold it back there with a second line.`,
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
