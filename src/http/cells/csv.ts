/** How a decimal sign is written; a comma needs semicolons between the cells. */
export type DecimalSign = 'point' | 'comma';

/** What stands in one cell of a sheet: a number, or text. */
export type SheetCell = number | string | undefined;

const MARK = '\uFEFF';

/** Signs with which a sheet begins a formula. */
const BEGINS_FORMULA = /^[=+\-@\t\r]/;

/** A number in plain digits, six significant figures, never in powers of ten. */
export function sheetNumber(value: number, decimal: DecimalSign): string {
  if (value === 0) return '0';
  const decimals = Math.min(100, Math.max(0, 5 - Math.floor(Math.log10(Math.abs(value)))));
  const digits = Number(value.toPrecision(6)).toFixed(decimals);
  const plain = digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits;
  return decimal === 'comma' ? plain.replace('.', ',') : plain;
}

/** A text that no sheet takes for a formula. */
export function guarded(text: string): string {
  return BEGINS_FORMULA.test(text) ? `'${text}` : text;
}

/** Rows as CSV (RFC 4180): UTF-8 with its mark; with a decimal comma, semicolons between the cells. */
export function csv(rows: readonly (readonly SheetCell[])[], decimal: DecimalSign): string {
  const separator = decimal === 'comma' ? ';' : ',';
  const written = (cell: SheetCell) => {
    if (cell === undefined) return '';
    if (typeof cell === 'number') return sheetNumber(cell, decimal);
    const text = guarded(cell);
    return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return `${MARK}${rows.map((row) => `${row.map(written).join(separator)}\r\n`).join('')}`;
}
