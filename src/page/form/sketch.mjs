/** A small sketch of one load, to scale, from what is typed; nothing where too little is known. */

import { html } from './html.mjs';
import { inSi, pairInSi } from './quantity.mjs';

const WIDE = 120;
const TALL = 80;
const EDGE = 6;

/**
 * @typedef {{ x1: number, y1: number, x2: number, y2: number, width: number }} Tube In metres, y upwards.
 * @typedef {{ tubes: Tube[], boxes: { x: number, y: number, wide: number, tall: number }[], rounds: { x: number, y: number, radius: number }[], says: string }} Body
 */

/** @param {any} row @param {import('./quantity.mjs').Units} units @returns {Body | undefined} */
export function bodyOf(row, units) {
  const body = drawn(row, units);
  const numbers = body
    ? [
        ...body.tubes.flatMap((tube) => Object.values(tube)),
        ...body.boxes.flatMap(Object.values),
        ...body.rounds.flatMap(Object.values),
      ]
    : [];
  return numbers.length > 0 && numbers.every((number) => Number.isFinite(number)) ? body : undefined;
}

/** @param {any} row @param {import('./quantity.mjs').Units} units @returns {Body | undefined} */
function drawn(row, units) {
  const none = { tubes: [], boxes: [], rounds: [] };
  switch (row?.shape || 'stated') {
    case 'stated': {
      const area =
        inSi(row?.area, 'area', units) || Math.max(inSi(row?.front, 'area', units), inSi(row?.side, 'area', units));
      const side = Math.sqrt(area);
      return { ...none, boxes: [{ x: -side / 2, y: -side / 2, wide: side, tall: side }], says: 'a square of its area' };
    }
    case 'tube': {
      const [thick] = pairInSi(row.diameter, 'diameter', units);
      const [low, high] = pairInSi(row.height || row.above, 'length', units);
      const long = inSi(row.length, 'length', units) || high - low;
      const level = row.along === 'boom' || row.along === 'element';
      return {
        ...none,
        tubes: [
          level
            ? { x1: -long / 2, y1: 0, x2: long / 2, y2: 0, width: thick }
            : { x1: 0, y1: 0, x2: 0, y2: long, width: thick },
        ],
        says: 'its tube',
      };
    }
    case 'tubes':
      return { ...none, tubes: tubesOf(row.tubes ?? [], units), says: 'its tubes from above' };
    case 'plate': {
      const wide = inSi(row.wide, 'diameter', units);
      const tall = inSi(row.tall, 'diameter', units);
      return { ...none, boxes: [{ x: -wide / 2, y: -tall / 2, wide, tall }], says: 'its front' };
    }
    case 'dish': {
      const [across] = pairInSi(row.diameter, 'diameter', units);
      return { ...none, rounds: [{ x: 0, y: 0, radius: across / 2 }], says: 'its front' };
    }
    case 'wire': {
      const away = inSi(row.to?.distance, 'length', units);
      const [low] = pairInSi(row.height, 'length', units);
      const far = inSi(row.to?.height, 'length', units);
      const drop = Number.isFinite(low) && Number.isFinite(far) ? low - far : 0;
      return { ...none, tubes: [{ x1: 0, y1: drop, x2: away, y2: 0, width: 0 }], says: 'its run' };
    }
    default: {
      const [wide] = pairInSi(row.width, 'diameter', units);
      const [low, high] = pairInSi(row.height || row.above, 'length', units);
      return { ...none, boxes: [{ x: -wide / 2, y: 0, wide, tall: high - low || wide }], says: 'its outline' };
    }
  }
}

/** Booms lie along the page, elements across it, evenly along the longest boom; uprights are seen end-on. @param {any[]} rows @param {import('./quantity.mjs').Units} units */
function tubesOf(rows, units) {
  /** @type {Tube[]} */
  const tubes = [];
  const told = rows
    .filter(Boolean)
    .map((row) => {
      const pieces = (row.taper ?? []).map((/** @type {any} */ piece) => [
        inSi(piece?.[0], 'diameter', units),
        inSi(piece?.[1], 'diameter', units),
      ]);
      const long =
        pieces.length > 0
          ? 2 *
            pieces.reduce(
              (/** @type {number} */ sum, /** @type {number[]} */ piece) => sum + /** @type {number} */ (piece[1]),
              0,
            )
          : inSi(row.length, 'length', units);
      return {
        along: row.along,
        count: Math.min(Number(row.count) || 1, 40),
        long,
        thick: pieces[0]?.[0] ?? inSi(row.diameter, 'diameter', units),
      };
    })
    .filter(({ long }) => Number.isFinite(long) && long > 0);
  const boom = Math.max(0, ...told.filter(({ along }) => along === 'boom').map(({ long }) => long));
  const elements = told.filter(({ along }) => along !== 'boom').reduce((sum, { count }) => sum + count, 0);
  const reach = boom || Math.max(0, ...told.map(({ long }) => long)) * (elements > 1 ? 0.6 : 0);
  let placed = 0;
  for (const { along, count, long, thick } of told) {
    const width = Number.isFinite(thick) ? thick : 0;
    for (let each = 0; each < count; each += 1) {
      if (along === 'boom') {
        const y = count === 1 ? 0 : (each - (count - 1) / 2) * 0.5;
        tubes.push({ x1: -long / 2, y1: y, x2: long / 2, y2: y, width });
        continue;
      }
      const x = elements === 1 ? 0 : -reach / 2 + (reach * placed) / (elements - 1);
      placed += 1;
      if (along === 'upright')
        tubes.push({ x1: x, y1: -width / 2, x2: x, y2: width / 2, width: Math.max(width, 0.02) });
      else tubes.push({ x1: x, y1: -long / 2, x2: x, y2: long / 2, width });
    }
  }
  return tubes;
}

/** @param {{ row: any, units: import('./quantity.mjs').Units, name: string }} props */
export function Sketch({ row, units, name }) {
  const body = bodyOf(row, units);
  if (!body)
    return html`<svg class="sketch" viewBox="0 0 120 80" aria-hidden="true"><path class="ghost" d="M30 40h60M60 18v44" /></svg>`;
  const xs = [
    ...body.tubes.flatMap(({ x1, x2 }) => [x1, x2]),
    ...body.boxes.flatMap(({ x, wide }) => [x, x + wide]),
    ...body.rounds.flatMap(({ x, radius }) => [x - radius, x + radius]),
  ];
  const ys = [
    ...body.tubes.flatMap(({ y1, y2 }) => [y1, y2]),
    ...body.boxes.flatMap(({ y, tall }) => [y, y + tall]),
    ...body.rounds.flatMap(({ y, radius }) => [y - radius, y + radius]),
  ];
  const across = Math.max(...xs) - Math.min(...xs);
  const up = Math.max(...ys) - Math.min(...ys);
  const bar = scaleBar(Math.max(across, up), units);
  const scale = Math.min(
    (WIDE - 2 * EDGE) / Math.max(across, bar.length, 1e-6),
    (TALL - 2 * EDGE - 14) / Math.max(up, 1e-6),
  );
  const x = (/** @type {number} */ value) =>
    round(WIDE / 2 + (value - (Math.max(...xs) + Math.min(...xs)) / 2) * scale);
  const y = (/** @type {number} */ value) =>
    round((TALL - 14) / 2 - (value - (Math.max(...ys) + Math.min(...ys)) / 2) * scale);
  const size = (/** @type {number} */ value) => round(value * scale);
  return html`<svg class="sketch" viewBox="0 0 120 80" role="img" aria-label=${`${name}: ${body.says}, to scale; the bar is ${bar.label}`}>
    ${body.boxes.map((box) => html`<rect class="solid" x=${x(box.x)} y=${y(box.y + box.tall)} width=${Math.max(size(box.wide), 1)} height=${Math.max(size(box.tall), 1)} />`)}
    ${body.rounds.map((circle) => html`<circle class="solid" cx=${x(circle.x)} cy=${y(circle.y)} r=${size(circle.radius)} />`)}
    ${body.tubes.map((tube) => html`<line x1=${x(tube.x1)} y1=${y(tube.y1)} x2=${x(tube.x2)} y2=${y(tube.y2)} stroke-width=${Math.max(size(tube.width), 1.1)} />`)}
    <path class="bar" d=${`M${WIDE - EDGE - size(bar.length)} ${TALL - 3}h${size(bar.length)}`} />
    <text x=${WIDE - EDGE - size(bar.length) - 4} y=${TALL - 1} text-anchor="end">${bar.label}</text>
  </svg>`;
}

/** @param {number} value */
const round = (value) => Math.round(value * 100) / 100;

/** A round length of about a third of what is shown. @param {number} extent @param {import('./quantity.mjs').Units} units */
function scaleBar(extent, units) {
  const steps =
    units === 'us'
      ? [
          [1, 'in'],
          [3, 'in'],
          [6, 'in'],
          [12, 'in'],
          [3, 'ft'],
          [5, 'ft'],
          [10, 'ft'],
          [20, 'ft'],
          [50, 'ft'],
        ]
      : [
          [20, 'mm'],
          [50, 'mm'],
          [100, 'mm'],
          [200, 'mm'],
          [500, 'mm'],
          [1, 'm'],
          [2, 'm'],
          [5, 'm'],
          [10, 'm'],
          [20, 'm'],
        ];
  const inMetres = { in: 0.0254, ft: 0.3048, mm: 0.001, m: 1 };
  const lengths = steps.map(([count, unit]) => ({
    length: Number(count) * inMetres[/** @type {keyof typeof inMetres} */ (unit)],
    label: count === 12 && unit === 'in' ? '1 ft' : `${count} ${unit}`,
  }));
  return (
    lengths.findLast(({ length }) => length <= extent * 0.5) ??
    /** @type {{ length: number, label: string }} */ (lengths[0])
  );
}
