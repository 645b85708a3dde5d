import type { Wind } from '../methods/index.ts';
import type { Windward } from '../structure/index.ts';
import { type Caution, cautionsOf } from './cautions.ts';
import { type Chances, chancesOf } from './chance.ts';
import { type Gaps, openQuestions } from './gaps.ts';
import { type IceCase, iceCaseOf } from './ice-case.ts';
import type { Inquiry } from './inquiry.ts';
import { type Ledger, ledgerOf } from './ledger.ts';
import { antennaLinks } from './links/antenna-link.ts';
import { elementLinks, icedElementLinks } from './links/element-link.ts';
import { fallLinks } from './links/fall-link.ts';
import { type FoundationAnswer, foundationLink } from './links/foundation-link.ts';
import { hoistLink } from './links/hoist-link.ts';
import type { Link } from './links/link.ts';
import { type MastAnswer, mastAnswer } from './links/mast-holds.ts';
import { icedMastLink, mastLink } from './links/mast-link.ts';
import { type RaisingAnswer, raisingLinks } from './links/raising-link.ts';
import { statedStrengthLinks } from './links/stated-strength-links.ts';
import { iceLink, topLink, towerLink } from './links/tower-link.ts';
import { type LowerAt, lowerAtOf } from './lower-at.ts';
import { type Reactions, reactionsOf } from './reactions.ts';
import { type RoomLeft, roomsLeft } from './room-left.ts';
import { type Demand, demandOf, type SiteSpeed, siteSpeed, type TowerModel, towerModel } from './tower-model.ts';
import { type CheckUse, towerUses } from './tower-use.ts';
import { type Verdict, worstVerdict } from './verdict.ts';

/** Height, factors and wind there. */
export interface WindRow {
  readonly height: number;
  readonly exposureCoefficient: number;
  readonly topographicFactor: number;
  readonly pressure: number;
  /** The site's wind at this height: its speed times the root of the factors [m/s]. */
  readonly speed: number;
}

export interface Assessment {
  readonly inquiry: Inquiry;
  readonly model: TowerModel;
  readonly site: SiteSpeed;
  readonly wind: Wind;
  readonly windRows: readonly WindRow[];
  readonly links: readonly Link[];
  readonly verdict: Verdict;
  readonly soFar?: Verdict;
  readonly weakest?: string;
  readonly questions: Gaps;
  readonly ledger: Ledger;
  readonly reactions: Reactions;
  /** What the mast does to what holds it. */
  readonly mast?: MastAnswer;
  /** How it is raised, where it has a hinge. */
  readonly raising?: RaisingAnswer;
  /** What the footing does, where the plan describes one. */
  readonly foundation?: FoundationAnswer;
  readonly heights: { readonly overall: number; readonly tower: number; readonly mast?: number };
  /** At the top of the tower, and at each height on the mast where something hangs; none where they are not shown. */
  readonly roomLeft: readonly RoomLeft[];
  /** Where the tower can be lowered. */
  readonly lowerAt?: LowerAt;
  /** Where a climate is given. */
  readonly chances?: Chances;
  readonly cautions: readonly Caution[];
  /** The same tower with ice, where ice is given. */
  readonly ice?: IceCase;
  /** What decided the tower's bad end, for the working. */
  readonly bad: Demand;
  readonly uses: readonly CheckUse[];
}
/**
 * The whole answer to a plan, in SI.
 *
 * @param inquiry the plan in SI [-]
 * @returns links, verdict, ledger, open questions, cautions [-]
 * @throws Refusal for what cannot be computed
 * @source derived
 */
export function assess(inquiry: Inquiry): Assessment {
  const model = towerModel(inquiry);
  const site = siteSpeed(inquiry);
  const wind = (model.hungWind[0] as Windward).wind;
  const bad = demandOf(model, model.hungWind, model.ownWind, site.speed, 'bad', true);
  const readTwoWays = model.hungWind.some((cut) => cut.readTwoWays);
  const good = readTwoWays ? demandOf(model, model.hungWind, model.ownWind, site.speed, 'good', true) : bad;
  const withoutLeast = bad.leastDecides
    ? demandOf(model, model.hungWind, model.ownWind, site.speed, 'bad', false)
    : bad;
  const uses = towerUses(model, bad, good);
  const ice = iceCaseOf(model);
  const ledger = ledgerOf(model, site.speed, bad);
  const reactions = reactionsOf(model, wind, ledger);
  const mast = mastAnswer(model);
  const footing = { model, uses, bad, withoutLeast, reactions };
  const foundation = foundationLink(footing);
  const raised = raisingLinks(model);
  const links = [
    towerLink(model, uses, withoutLeast),
    ...topLink(model, uses, withoutLeast),
    ...iceLink(model, ice),
    ...mastLink(model),
    ...icedMastLink(model, ice),
    ...statedStrengthLinks(model, mast),
    ...antennaLinks(model),
    ...elementLinks(model),
    ...icedElementLinks(model, ice),
    foundation.link,
    ...raised.links,
    ...hoistLink(model),
    ...fallLinks(model),
  ];
  const shown = links.filter((link) => link.verdict !== 'not-shown').map((link) => link.verdict);
  const soFar = worstVerdict(shown);
  const weakest = weakestOf(links);
  const chances = chancesOf(inquiry, links);
  const lower = lowerAtOf(inquiry, links);
  const questions = openQuestions(model, bad, site.speed);
  return {
    inquiry,
    model,
    site,
    wind,
    windRows: windRows(inquiry, wind),
    links,
    verdict: worstVerdict(links.map((link) => link.verdict)) as Verdict,
    ...(soFar === undefined ? {} : { soFar }),
    ...(weakest === undefined ? {} : { weakest }),
    questions,
    ledger,
    reactions,
    ...(mast === undefined ? {} : { mast }),
    ...(raised.answer === undefined ? {} : { raising: raised.answer }),
    ...(foundation.answer === undefined ? {} : { foundation: foundation.answer }),
    heights: heightsOf(inquiry),
    roomLeft: roomsLeft({ model, bad, links, footing }),
    ...(lower === undefined ? {} : { lowerAt: lower }),
    ...(chances === undefined ? {} : { chances }),
    cautions: cautionsOf(model, site, wind, links, uses, bad),
    ...(ice === undefined ? {} : { ice }),
    bad,
    uses,
  };
}
/** The link that holds to the lowest gust; what is over without any wind holds to none. */
function weakestOf(links: readonly Link[]): string | undefined {
  let weakest: Link | undefined;
  for (const link of links) if (isWeaker(link, weakest)) weakest = link;
  return weakest?.id;
}

function isWeaker({ result }: Link, other: Link | undefined): boolean {
  const [calm, most] = [result?.inCalm ?? 0, other?.result?.inCalm ?? 0];
  if (calm > 1 || most > 1) return calm > most;
  const gust = result?.holdsTo?.gust;
  return gust !== undefined && gust < (other?.result?.holdsTo?.gust ?? Number.POSITIVE_INFINITY);
}

/** Spacing of the wind table: ten feet or three metres. */
const WIND_SPACING = { us: 3.048, si: 3 } as const;

function windRows(inquiry: Inquiry, wind: Wind): readonly WindRow[] {
  const { station } = inquiry;
  const { overall } = heightsOf(inquiry);
  const spacing = WIND_SPACING[station.units];
  const heights = new Set<number>([overall, station.tower.top]);
  const base = Math.ceil((station.tower.foot + 1e-9) / spacing) * spacing;
  for (let z = base; z < overall; z += spacing) {
    // The same height comes out a last digit apart by another way of reckoning.
    if ([...heights].every((height) => Math.abs(height - z) > 1e-6)) heights.add(z);
  }
  return [...heights].sort((a, b) => b - a).map((height) => windAt(wind, height));
}

/**
 * The site's wind at one height.
 *
 * v(z) = V·√(Kz·Kzt); thin air takes from the pressure, not from the speed
 *
 * @param wind the wind [-]
 * @param height above ground [m]
 * @returns factors, pressure [Pa] and speed [m/s]
 * @source derived
 */
export function windAt(wind: Wind, height: number): WindRow {
  const exposureCoefficient = wind.exposureCoefficient(height);
  const topographicFactor = wind.topographicFactor(height);
  return {
    height,
    exposureCoefficient,
    topographicFactor,
    pressure: wind.pressure(height),
    speed: wind.conditions.speed * Math.sqrt(exposureCoefficient * topographicFactor),
  };
}

function heightsOf(inquiry: Inquiry): Assessment['heights'] {
  const { tower, mast, loads } = inquiry.station;
  const overall = loads.reduce((highest, load) => Math.max(highest, load.high), Math.max(tower.top, mast?.tip ?? 0));
  return { overall, tower: tower.top, ...(mast ? { mast: mast.tip } : {}) };
}
