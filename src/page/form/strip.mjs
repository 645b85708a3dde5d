/** Half of a tapering tube from the boom outward: lengths to scale, diameters six times as thick, a tape above. */
import { html } from './html.mjs';
import { inSi, UNITS } from './quantity.mjs';

const WIDE = 440;
const TALL = 96;
const MIDDLE = 58;
const THICKER = 6;

/** @param {{ rows: readonly (readonly string[] | undefined)[], units: import('./quantity.mjs').Units }} props */
export function Strip({ rows, units }) {
  const tubes = rows
    .map((row) => ({ thick: inSi(row?.[0], 'diameter', units), long: inSi(row?.[1], 'diameter', units) }))
    .filter(({ thick, long }) => thick > 0 && long > 0 && Number.isFinite(thick + long));
  if (tubes.length === 0) return null;
  const whole = tubes.reduce((sum, { long }) => sum + long, 0);
  const scale = Math.min((WIDE - 24) / whole, 44 / (THICKER * Math.max(...tubes.map(({ thick }) => thick))) || 1, 4000);
  const unit = UNITS.diameter[units];
  const step =
    [1, 2, 5, 10, 12, 20, 24, 50, 60, 100, 200, 250, 500, 1000, 2000, 5000].find(
      (each) => whole / unit.inSi / each <= 12,
    ) ?? 10000;
  const marks = Array.from({ length: Math.floor(whole / unit.inSi / step) + 1 }, (_, index) => index * step);
  const width = (/** @type {number} */ metres) => Math.round(metres * scale * 100) / 100;
  let from = 0;
  return html`<svg class="strip" viewBox=${`0 0 ${WIDE} ${TALL}`} role="img"
      aria-label=${`Half of it, from the boom outward: ${tubes.map(({ thick, long }) => `${tidy(long / unit.inSi)} ${unit.label} of ${tidy(thick / unit.inSi)} ${unit.label}`).join(', ')}`}>
    <path class="tape" d=${`${marks.map((mark) => `M${12 + width(mark * unit.inSi)} 18v6`).join('')}M12 24h${width(whole)}`} />
    ${marks.map((mark) => html`<text x=${12 + width(mark * unit.inSi)} y="14" text-anchor="middle">${mark}</text>`)}
    <path class="centre" d=${`M12 ${MIDDLE - 30}v60`} />
    ${tubes.map(({ thick, long }, index) => {
      const x = 12 + width(from);
      from += long;
      const tall = Math.max(thick * scale * THICKER, 2);
      const next = tubes[index + 1];
      return html`<rect class="tube" x=${x} y=${MIDDLE - tall / 2} width=${width(long)} height=${tall} />
        ${next && html`<path class="hidden" d=${`M${x + width(long)} ${MIDDLE - (next.thick * scale * THICKER) / 2}h${-Math.min(width(long) / 3, 14)}v${next.thick * scale * THICKER}h${Math.min(width(long) / 3, 14)}`} />`}`;
    })}
  </svg>
  <p class="note">Half of it, lengths to scale, diameters six times as thick; tip to tip ${tidy((2 * whole) / UNITS.length[units].inSi)} ${UNITS.length[units].label}.</p>`;
}

/** @param {number} value */
const tidy = (value) => Number(value.toPrecision(4));
