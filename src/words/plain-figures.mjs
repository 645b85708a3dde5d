/**
 * A number to so many significant figures, with commas for thousands and a real minus, never in powers of ten.
 *
 * @param {number} value
 * @param {number} [significant]
 */
export function figures(value, significant = 3) {
  if (!Number.isFinite(value)) return 'beyond measure';
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.max(0, significant - 1 - magnitude);
  const [whole = '', fraction = ''] = Math.abs(value).toFixed(Math.min(decimals, 12)).split('.');
  const told = fraction.replace(/0+$/, '');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${value < 0 ? '−' : ''}${grouped}${told === '' ? '' : `.${told}`}`;
}

/**
 * A ratio: three figures, from 1 up two decimals of them; more where they would hide that it is not 1.
 *
 * @param {number} ratio
 */
export function ratioFigures(ratio) {
  if (!Number.isFinite(ratio)) return 'open';
  if (ratio < 1) {
    const text = ratio.toPrecision(3);
    return Number(text) >= 1 ? besideOne(ratio, 4) : Number(text).toString();
  }
  if (ratio >= 10) return figures(ratio);
  const text = ratio.toFixed(2);
  return text === '1.00' && ratio > 1 ? besideOne(ratio, 3) : text;
}

/** Nearer to 1 than a hundred thousandth a ratio is 1. @param {number} ratio @param {number} decimals */
function besideOne(ratio, decimals) {
  const text = ratio.toFixed(decimals);
  return Number(text) === 1 && Math.abs(ratio - 1) > 1e-5 ? ratio.toFixed(5).replace(/0+$/, '') : text;
}
