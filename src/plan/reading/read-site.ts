import { METHOD_BY_ID, type SiteMethodId, siteMethodsWith } from '../../methods/index.ts';
import {
  type Climate,
  GROUND_FIELDS,
  type GroundField,
  type Hill,
  type Site,
  type SiteDistances,
  type SpeedBasis,
} from '../../wind/index.ts';
import { FIELDS } from '../../words/index.ts';
import { LOW_SPEED } from '../quantities/field-bounds.ts';
import type { SiteFields } from '../schema/site-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { present } from './present.ts';

/** The site of a plan in SI; the maps of the plan's method give the basis nobody named. */
export function readSite(reader: PlanReader, fields: SiteFields, method: SiteMethodId | undefined): Site {
  const wind = readWind(reader, fields, method);
  const hill = fields.hill === undefined ? undefined : readHill(reader, fields.hill);
  if (fields.hill !== undefined && fields.topographicFactor !== undefined) {
    const says = 'Site has a hill and a topographic factor: give one; the factor replaces the hill.';
    reader.fault('/site/topographicFactor', 'one-of', 'hill and topographicFactor', 'one of them', says);
  }
  const basis = wind.basis ?? (method === undefined ? undefined : METHOD_BY_ID[method].basis);
  // 90 mph is the commonest nominal gust of the US, and at strength level as low as maps go.
  if (basis !== undefined && wind.speed <= LOW_SPEED[basis] * (1 + 1e-9)) {
    const speed = reader.say(wind.speed, 'speed');
    const from = reader.say(LOW_SPEED[basis], 'speed');
    const says = `${speed} is low for its type, ${FIELDS.wind.basis.choices[basis]}. Such values are seldom ${from} or less. Ask which type of speed it is.`;
    reader.query('/site/wind', 'speed-low', says);
  }
  return present({
    speed: wind.speed,
    basis: wind.basis,
    returnYears: wind.years,
    ...readGround(reader, fields, method),
    riskCategory: fields.riskCategory,
    groundElevation: reader.perhaps(fields.groundElevation, '/site', 'groundElevation') ?? 0,
    hill,
    ice:
      fields.ice === undefined
        ? undefined
        : {
            thickness: reader.quantity(fields.ice.thickness, '/site/ice', 'thickness'),
            gust: reader.quantity(fields.ice.gust, '/site/ice', 'gust'),
          },
    topographicFactor: reader.perhaps(fields.topographicFactor, '/site', 'topographicFactor'),
    distances: fields.distances === undefined ? undefined : readDistances(reader, fields.distances),
    climate: fields.climate === undefined ? undefined : readClimate(reader, fields.climate),
  });
}

interface SiteWind {
  readonly speed: number;
  readonly basis: SpeedBasis | undefined;
  readonly years: number | undefined;
}

function readWind(reader: PlanReader, fields: SiteFields, method: SiteMethodId | undefined): SiteWind {
  const { wind } = fields;
  if (typeof wind !== 'object') {
    return { speed: reader.quantity(wind, '/site', 'wind'), basis: undefined, years: undefined };
  }
  const { years, basis } = wind;
  if (years !== undefined && method !== undefined && !METHOD_BY_ID[method].returnPeriod.asked) {
    const owners = siteMethodsWith(({ returnPeriod }) => returnPeriod.asked);
    const says = `Site wind years: ${METHOD_BY_ID[method].title} has its return period in its maps. Leave the years out; they belong to ${owners}.`;
    reader.fault('/site/wind/years', 'goes-with', String(years), `with method ${owners}`, says);
  }
  return { speed: reader.quantity(wind.speed, '/site/wind', 'speed'), basis, years };
}

const OTHER_FIELD: Readonly<Record<GroundField, GroundField>> = { exposure: 'terrain', terrain: 'exposure' };

/** Each family of standards has its own words for the ground; those of the other are refused, not translated. */
function readGround(
  reader: PlanReader,
  fields: SiteFields,
  method: SiteMethodId | undefined,
): Pick<Site, 'exposure' | 'groundNotGiven'> {
  const named = fields.exposure === undefined ? 'terrain' : 'exposure';
  const wanted = method === undefined ? named : METHOD_BY_ID[method].ground.field;
  const other = OTHER_FIELD[wanted];
  const owner = method === undefined ? 'The method' : METHOD_BY_ID[method].title;
  if (fields[other] !== undefined && method !== undefined) {
    const says = `Site ${other} ${fields[other]}: ${owner} uses ${wanted}; give that instead.`;
    reader.fault(`/site/${other}`, 'goes-with', fields[other], wanted, says);
  }
  const given = fields[wanted];
  if (given !== undefined) return { exposure: given };
  const { usual } = GROUND_FIELDS[wanted];
  if (method !== undefined && !METHOD_BY_ID[method].ground.counts) return { exposure: usual, groundNotGiven: true };
  // Without a method nobody knows which of the two it needs.
  if (method !== undefined) {
    const allowed = GROUND_FIELDS[wanted].kinds.join(', ');
    reader.fault(
      `/site/${wanted}`,
      'missing',
      'nothing',
      allowed,
      `Site ${wanted} is missing: give one of ${allowed}.`,
    );
  }
  return { exposure: usual };
}

function readHill(reader: PlanReader, fields: NonNullable<SiteFields['hill']>): Hill {
  const at = '/site/hill';
  const run = reader.perhaps(fields.run, at, 'run');
  const half = reader.perhaps(fields.halfLength, at, 'halfLength');
  if ((run === undefined) === (half === undefined)) {
    const given = run === undefined ? 'neither run nor halfLength' : 'run and halfLength';
    const says = `Site hill: ${given} given. Give one: run from the foot of the hill to the crest, or halfLength from the crest to half-way down.`;
    reader.fault(at, 'one-of', given, 'run or halfLength', says);
  }
  return present({
    shape: fields.shape,
    height: reader.quantity(fields.height, at, 'height'),
    halfLength: half ?? (run ?? Number.NaN) / 2,
    distance: reader.quantity(fields.distance, at, 'distance'),
    side: fields.side,
    isolated: fields.isolated,
  });
}

function readDistances(reader: PlanReader, fields: NonNullable<SiteFields['distances']>): SiteDistances {
  const at = '/site/distances';
  return present({
    powerLine: reader.perhaps(fields.powerLine, at, 'powerLine'),
    propertyLine: reader.perhaps(fields.propertyLine, at, 'propertyLine'),
    building: reader.perhaps(fields.building, at, 'building'),
  });
}

function readClimate(reader: PlanReader, fields: NonNullable<SiteFields['climate']>): Climate | undefined {
  const at = '/site/climate';
  const { returnPeriods, yearlyMax, basis } = fields;
  if (basis === 'gust3-strength') {
    const says =
      'Site climate: a strength-level gust is a figure of design, no wind that blows. A chart for 300 years and more shows actual gusts, each with its own years: give them as gust3-nominal, as printed, not times √0.6.';
    reader.fault(`${at}/basis`, 'not-a-choice', basis, 'the basis in which the winds were measured', says);
  }
  if ((returnPeriods === undefined) === (yearlyMax === undefined)) {
    const given = returnPeriods === undefined ? 'neither returnPeriods nor yearlyMax' : 'returnPeriods and yearlyMax';
    const says = `Site climate: ${given} given. Give one of the two.`;
    reader.fault(at, 'one-of', given, 'returnPeriods or yearlyMax', says);
  }
  const values = (returnPeriods ?? []).map(([years, speed], index) => ({
    years,
    speed: reader.quantity(speed, `${at}/returnPeriods/${index}`, 1),
  }));
  const maxima = (yearlyMax ?? []).map((speed, index) => reader.quantity(speed, `${at}/yearlyMax`, index));
  const inOrder = values.toSorted((a, b) => a.years - b.years);
  for (const [index, value] of inOrder.entries()) {
    const before = inOrder[index - 1];
    if (before && (value.years === before.years || value.speed <= before.speed)) {
      const given = `${reader.say(before.speed, 'speed')} for ${before.years} years, ${reader.say(value.speed, 'speed')} for ${value.years}`;
      const says = `Site climate: ${given}. Give each number of years once, with a higher speed for more years.`;
      reader.fault(`${at}/returnPeriods`, 'return-periods-do-not-rise', given, 'a higher speed for more years', says);
      break;
    }
  }
  if (yearlyMax !== undefined && maxima.every((speed) => speed === maxima[0])) {
    const given = `${maxima.length} years of ${reader.say(maxima[0] as number, 'speed')}`;
    const says = `Site climate: ${given}. Years that are all alike tell nothing of rarer winds: give each year its own speed.`;
    reader.fault(`${at}/yearlyMax`, 'maxima-all-alike', given, 'speeds that differ', says);
  }
  if (basis === 'gust3-strength') return undefined;
  if (returnPeriods !== undefined) return { kind: 'chart', basis, returns: inOrder };
  return yearlyMax === undefined ? undefined : { kind: 'record', basis, yearlyMax: maxima };
}

/** What this version checks and keeps, but does not compute. */
