/**
 * A number as its exact decimal digits, worked out in whole numbers alone, so that what the service writes is compared
 * with a rounding that shares nothing with it. Halves go away from zero, as by hand.
 */
export function roundedTo(value: number, decimals: number): string {
  const sign = value < 0 ? '-' : '';
  const { top, bottom } = fractionOf(Math.abs(value));
  const scale = 10n ** BigInt(decimals);
  const digits = ((2n * top * scale + bottom) / (2n * bottom)).toString().padStart(decimals + 1, '0');
  const whole = digits.slice(0, digits.length - decimals);
  return decimals === 0 ? `${sign}${whole}` : `${sign}${whole}.${digits.slice(digits.length - decimals)}`;
}

/** A finite number as a fraction of two whole numbers, which a binary number always is. */
function fractionOf(value: number): { readonly top: bigint; readonly bottom: bigint } {
  let bottom = 1n;
  let scaled = value;
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    bottom *= 2n;
  }
  return { top: BigInt(scaled), bottom };
}

/** How many places after the point leave so many figures; whole numbers stay whole. */
function placesFor(value: number, figures: number): number {
  const { top, bottom } = fractionOf(Math.abs(value));
  let places = 0;
  if (top >= bottom) {
    const digits = (top / bottom).toString().length;
    return Math.max(0, figures - digits);
  }
  for (let scaled = top; scaled < bottom; scaled *= 10n) places += 1;
  return figures - 1 + places;
}

/** As a worksheet says a number: so many figures, no zeros at the end, commas between thousands, a real minus. */
export function worksheetFigures(value: number, figures = 3): string {
  if (value === 0) return '0';
  const text = roundedTo(value, placesFor(value, figures));
  const [whole = '', fraction = ''] = text.split('.');
  const told = fraction.replace(/0+$/, '');
  const grouped = whole.replaceAll(/\d(?=(?:\d{3})+$)/g, '$&,');
  return (told === '' ? grouped : `${grouped}.${told}`).replace('-', '−');
}

/** As a worksheet says a use: three figures below 1, two places from 1 up, and never 1 for what is not 1. */
export function worksheetUse(ratio: number): string {
  if (ratio < 1) {
    const text = worksheetFigures(ratio);
    return text === '1' ? roundedTo(ratio, 4) : text;
  }
  const text = roundedTo(ratio, 2);
  return text === '1.00' && ratio > 1 ? roundedTo(ratio, 3) : text;
}

/** As a cell of a sheet has a number: six figures, plain digits. */
export function sheetFigures(value: number): string {
  return worksheetFigures(value, 6).replaceAll(',', '').replace('−', '-');
}
