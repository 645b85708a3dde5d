/**
 * Numbers and units as people write them, for what the page draws and converts itself; the service reads them anew.
 *
 * @typedef {'us' | 'si'} Units
 * @typedef {import('../../words/index.mjs').FieldDimension} Dimension
 */

const FOOT = 0.3048;
const INCH = 0.0254;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;
const RADIAN = 180 / Math.PI;

/** @type {Record<Dimension, Record<Units, { label: string, inSi: number }>>} */
export const UNITS = {
  length: { us: { label: 'ft', inSi: FOOT }, si: { label: 'm', inSi: 1 } },
  diameter: { us: { label: 'in', inSi: INCH }, si: { label: 'mm', inSi: 0.001 } },
  area: { us: { label: 'ft²', inSi: FOOT ** 2 }, si: { label: 'm²', inSi: 1 } },
  speed: { us: { label: 'mph', inSi: 0.44704 }, si: { label: 'm/s', inSi: 1 } },
  force: { us: { label: 'lbf', inSi: POUND_FORCE }, si: { label: 'N', inSi: 1 } },
  weight: { us: { label: 'lb', inSi: POUND }, si: { label: 'kg', inSi: 1 } },
  'weight-per-length': { us: { label: 'lb/ft', inSi: POUND / FOOT }, si: { label: 'kg/m', inSi: 1 } },
  moment: { us: { label: 'lbf·ft', inSi: POUND_FORCE * FOOT }, si: { label: 'N·m', inSi: 1 } },
  stress: { us: { label: 'ksi', inSi: (1000 * POUND_FORCE) / INCH ** 2 }, si: { label: 'MPa', inSi: 1e6 } },
  'soil-pressure': { us: { label: 'psf', inSi: POUND_FORCE / FOOT ** 2 }, si: { label: 'kPa', inSi: 1000 } },
  'soil-pressure-per-depth': {
    us: { label: 'psf/ft', inSi: POUND_FORCE / FOOT ** 3 },
    si: { label: 'kPa/m', inSi: 1000 },
  },
  density: { us: { label: 'lb/ft³', inSi: POUND / FOOT ** 3 }, si: { label: 'kg/m³', inSi: 1 } },
  angle: { us: { label: '°', inSi: 1 / RADIAN }, si: { label: '°', inSi: 1 / RADIAN } },
  frequency: { us: { label: 'Hz', inSi: 1 }, si: { label: 'Hz', inSi: 1 } },
  share: { us: { label: '', inSi: 1 }, si: { label: '', inSi: 1 } },
};

/** @type {Record<string, number>} Lengths people write in place of the plan's own, in metres. */
const LENGTHS = {
  ft: FOOT,
  feet: FOOT,
  foot: FOOT,
  "'": FOOT,
  in: INCH,
  inch: INCH,
  inches: INCH,
  '"': INCH,
  yd: 3 * FOOT,
  mm: 0.001,
  cm: 0.01,
  m: 1,
  metre: 1,
  metres: 1,
  meter: 1,
  meters: 1,
};
/** @type {Record<string, number>} */
const AREAS = { 'ft²': FOOT ** 2, ft2: FOOT ** 2, 'ft^2': FOOT ** 2, sqft: FOOT ** 2, 'm²': 1, m2: 1, 'm^2': 1 };

/** @type {Record<string, string>} */
const FRACTIONS = { '¼': '1/4', '½': '1/2', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };

/** @param {string} text */
const plain = (text) =>
  text
    .replaceAll(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTIONS[sign]}`)
    .replaceAll(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .replaceAll(/[’′]/g, "'")
    .replaceAll(/[”″]/g, '"')
    .replaceAll('−', '-')
    .trim();

/** What a unit is written with that has a decimal point. */
const US_UNIT = /^(ft|feet|foot|'|in|inch|inches|"|yd|sqft)/i;

/**
 * A bare number as the service would read it, or NaN where it would not, or could read it in two ways.
 *
 * @param {string} written
 * @param {Units} units
 */
export function numberOf(written, units) {
  const text = plain(written);
  const negative = text.startsWith('-');
  const size = sizeOf(text.replace(/^[+-]\s*/, ''), units);
  return negative ? -size : size;
}

/** @param {string} text @param {Units} units */
function sizeOf(text, units) {
  const mixed = /^(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)$/.exec(text);
  if (mixed) return Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3]);
  if (/^\d{1,3}(,\d{3})+\.\d+$/.test(text) || /^[1-9]\d{0,2}(,\d{3}){2,}$/.test(text)) {
    return Number(text.replaceAll(',', ''));
  }
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) return Number.NaN;
  if (units === 'us' && /^\d*[1-9]\d*,\d+$/.test(text)) return Number.NaN;
  if (/^\d*,\d+$/.test(text)) return Number(text.replace(',', '.'));
  return /^(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
}

/**
 * A length or area in SI, whatever unit it was written with; NaN where the page cannot tell.
 *
 * @param {unknown} written
 * @param {Dimension} dimension
 * @param {Units} units
 */
export function inSi(written, dimension, units) {
  if (typeof written !== 'string') return Number.NaN;
  const bare = numberOf(written, units);
  if (!Number.isNaN(bare)) return bare * UNITS[dimension][units].inSi;
  const text = plain(written);
  const feet = /^(\d+)\s*(?:ft|feet|foot|')\.?[\s,-]*(.+?)\s*(?:in|inch|inches|")\.?$/i.exec(text);
  if (feet && dimension !== 'area')
    return Number(feet[1]) * FOOT + numberOf(/** @type {string} */ (feet[2]), 'us') * INCH;
  const parts = /^([\d\s.,/-]*\d)\s*([^\d\s.,/-].*)$/.exec(text);
  const names = dimension === 'area' ? AREAS : LENGTHS;
  const unit = parts ? names[/** @type {string} */ (parts[2]).toLowerCase().replaceAll(' ', '')] : undefined;
  if (!parts || !unit) return Number.NaN;
  const [, number, name] = /** @type {[string, string, string]} */ (/** @type {unknown} */ (parts));
  return numberOf(number, US_UNIT.test(name) ? 'us' : 'si') * unit;
}

/**
 * Lower and upper end of "56 to 65", or the one value twice, in SI.
 *
 * @param {unknown} written
 * @param {Dimension} dimension
 * @param {Units} units
 * @returns {[number, number]}
 */
export function pairInSi(written, dimension, units) {
  const ends = typeof written === 'string' ? splitPair(written) : undefined;
  if (!ends) {
    const one = inSi(written, dimension, units);
    return [one, one];
  }
  const unit = /[a-z"'].*$/i.exec(ends[1])?.[0];
  const low = /[a-z"']/i.test(ends[0]) || !unit ? ends[0] : `${ends[0]} ${unit}`;
  return [inSi(low, dimension, units), inSi(ends[1], dimension, units)];
}

/**
 * The two ends of a text such as "48 to 58", as written.
 *
 * @param {string} text
 * @returns {[string, string] | undefined}
 */
export function splitPair(text) {
  const ends = /^(.*\S)\s+to\s+(\S.*)$/i.exec(text.trim());
  return ends ? [/** @type {string} */ (ends[1]), /** @type {string} */ (ends[2])] : undefined;
}

/**
 * A bare number in other units, with as many figures as bring it back to the same; text with its own unit stays.
 *
 * @param {string} written
 * @param {Dimension} dimension
 * @param {Units} from
 * @param {Units} to
 * @returns {string}
 */
export function inOtherUnits(written, dimension, from, to) {
  const ends = splitPair(written);
  if (ends) {
    const [low, high] = ends.map((end) => inOtherUnits(end, dimension, from, to));
    return /[a-z"']/i.test(ends[1]) ? written : `${low} to ${high}`;
  }
  const value = numberOf(written, from);
  if (Number.isNaN(value)) return written;
  const ratio = UNITS[dimension][from].inSi / UNITS[dimension][to].inSi;
  if (ratio === 1) return written;
  const exact = value * ratio;
  for (let figures = 1; figures <= 15; figures += 1) {
    const short = Number(exact.toPrecision(figures));
    if (Math.abs(short - exact) <= Math.abs(exact) * 2e-8) return String(short);
  }
  return String(exact);
}
