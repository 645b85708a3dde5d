import type { Assessment, WindLoadRow } from '../margins/index.ts';
import type { Load, Section, Station } from '../structure/index.ts';
import { pen } from './ink.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';

/** How far a thing reaches from the axis, in metres. */
export interface Reach {
  readonly left: number;
  readonly right: number;
}

/** A thing's outline in metres from the axis, drawn at a scale with heights upward from the ground. */
export interface Outline extends Reach {
  readonly load: Load;
  /** Nothing of its size is told; a sign stands for it. */
  readonly sizeless: boolean;
  readonly draw: (scale: number) => Svg;
}

const NOMINAL_WIDTH = 0.3;

export function halfWidthAt(station: Station, z: number): number {
  const here = station.tower.sections.find((section) => z >= section.low - 1e-9 && z <= section.high + 1e-9);
  return here ? widthIn(here, z) / 2 : NOMINAL_WIDTH / 2;
}

function widthIn(section: Section, z: number): number {
  const [low, high] = section.shape?.width ?? [NOMINAL_WIDTH, NOMINAL_WIDTH];
  const span = section.high - section.low;
  return span > 0 ? low + ((high - low) * (z - section.low)) / span : low;
}

/** One tower section between two heights, to scale. */
export function sectionOutline(section: Section, scale: number, from: number, to: number): Svg | undefined {
  const low = Math.max(section.low, from);
  const high = Math.min(section.high, to);
  if (high <= low) return undefined;
  const half = (z: number) => (widthIn(section, z) / 2) * scale;
  const left = (z: number): Point => [-half(z), -z * scale];
  const right = (z: number): Point => [half(z), -z * scale];
  const { shape } = section;
  const edges = through([left(low), left(high)]) + through([right(low), right(high)]);
  const joint = through([left(low), right(low)]) + through([left(high), right(high)]);
  if (!shape) {
    return element('path', { d: edges + joint, ...pen({ line: 'ink', width: 1.2, dash: '5 3' }) });
  }
  if (shape.kind === 'pole') {
    const corners = [left(low), left(high), right(high), right(low)];
    return element('path', { d: through(corners, true), ...pen({ line: 'ink', width: 1.2, fill: 'paper-deep' }) });
  }
  const panel = shape.solid.by === 'members' ? shape.solid.panel : (shape.width[0] + shape.width[1]) / 2;
  // Braces closer than the eye can tell are drawn at a multiple of their spacing.
  const step = panel * Math.max(1, Math.ceil(6 / Math.max(panel * scale, 0.05)));
  const braces: Point[] = [];
  for (let count = 0; low + count * step <= high + 1e-9; count += 1) {
    const z = low + count * step;
    braces.push(count % 2 === 0 ? left(z) : right(z));
  }
  return group(
    {},
    element('path', { d: braces.length > 1 ? through(braces) : 'M0 0', ...pen({ line: 'ink', width: 0.7 }) }),
    element('path', { d: edges + joint, ...pen({ line: 'ink', width: 1.6 }) }),
  );
}

/**
 * Every load as it is seen across the worst wind; what turns as it is seen with its boom, or its elements, in the plane of
 * the drawing, where that is asked.
 */
export function outlinesOf({ input, windLoads }: Assessment, turned?: 'boom' | 'elements'): readonly Outline[] {
  const { station } = input;
  return station.loads.map((load) => {
    const row = windLoads.rows.find((each) => each.at === load.at && each.kind === 'load');
    const facing = turned !== undefined && load.turns ? turned === 'boom' : facesWind(row);
    return outlineOf(load, station, facing);
  });
}

/** Whether its front, rather than its side, is to the worst wind. */
function facesWind(row: WindLoadRow | undefined): boolean {
  if (!row) return true;
  return Math.abs(row.facing - row.front) <= Math.abs(row.facing - row.side);
}

function outlineOf(load: Load, station: Station, facing: boolean): Outline {
  const { shape } = load;
  const middle = (load.low + load.high) / 2;
  const tower = load.on === 'tower' ? halfWidthAt(station, middle) : 0;
  // Beside a tower it stands clear of it, upwind.
  const axis =
    load.on === 'tower' && load.low < station.tower.top ? -Math.max(load.offset, tower + 0.15) : -load.offset;
  const arm = (scale: number): string =>
    axis < 0 ? `M${(axis * scale).toFixed(2)} ${(-middle * scale).toFixed(2)}H${(-tower * scale).toFixed(2)}` : '';
  const outline = (half: number, draw: Outline['draw'], sizeless = false): Outline => ({
    load,
    left: half - axis,
    right: half + axis,
    sizeless,
    draw: (scale) =>
      group(
        {},
        ...(axis < 0 ? [element('path', { d: arm(scale), ...pen({ line: 'ink', width: 1.2 }) })] : []),
        draw(scale),
      ),
  });
  const beam = (halfBoom: number, halfElement: number, elements: number) =>
    outline(facing ? halfBoom : halfElement, (scale) =>
      beamOutline(axis * scale, -middle * scale, halfBoom * scale, halfElement * scale, elements, facing),
    );
  switch (shape.kind) {
    case 'tube':
      if (shape.along === 'upright')
        return outline(0, (scale) => upright(axis * scale, load.low * scale, load.high * scale));
      return beam(
        shape.along === 'boom' ? shape.length / 2 : 0,
        shape.along === 'element' ? shape.length / 2 : 0,
        shape.along === 'element' ? load.count : 0,
      );
    case 'tubes': {
      const half = (along: string) =>
        Math.max(
          0,
          ...shape.rows
            .filter((row) => row.along === along)
            .map((row) => row.pieces.reduce((sum, each) => sum + each.length, 0) / 2),
        );
      const elements = shape.rows.filter((row) => row.along === 'element').reduce((sum, row) => sum + row.count, 0);
      if (half('boom') + half('element') > 0)
        return beam(Math.max(half('boom'), (load.boom ?? 0) / 2), half('element'), elements);
      return outline(0, (scale) =>
        upright(axis * scale, load.low * scale, Math.max(load.high, load.low + 2 * half('upright')) * scale),
      );
    }
    case 'plate': {
      const wide = facing ? shape.deep : shape.wide;
      return outline(wide / 2, (scale) =>
        element('rect', {
          x: (axis - wide / 2) * scale,
          y: -(middle + shape.tall / 2) * scale,
          width: wide * scale,
          height: shape.tall * scale,
          ...pen({ line: 'ink', width: 1.3, fill: 'paper-deep' }),
        }),
      );
    }
    case 'dish':
      return outline(0.2 * shape.diameter, (scale) => {
        const r = (shape.diameter / 2) * scale;
        const x = axis * scale;
        const y = -middle * scale;
        const bowl = `M${(x - 0.4 * r).toFixed(2)} ${(y - r).toFixed(2)}Q${(x + 0.4 * r).toFixed(2)} ${y.toFixed(2)} ${(x - 0.4 * r).toFixed(2)} ${(y + r).toFixed(2)}`;
        return element('path', { d: `${bowl}Z`, ...pen({ line: 'ink', width: 1.4, fill: 'paper-deep' }) });
      });
    case 'wire':
      return {
        ...outline(0, () => group({})),
        draw: (scale) => wireOutline(scale, middle, shape.rise / shape.distance, shape.distance),
      };
    case 'lattice':
    case 'pole': {
      const half = Math.max(...shape.width) / 2;
      return outline(half, (scale) =>
        element('rect', {
          x: (axis - half) * scale,
          y: -load.high * scale,
          width: 2 * half * scale,
          height: (load.high - load.low) * scale,
          ...pen({ line: 'ink', width: 1.3 }),
        }),
      );
    }
    case 'stated':
    case 'stated-force': {
      const halfBoom = (load.boom ?? 0) / 2;
      const reach = load.reach ?? 0;
      if (halfBoom > 0 || reach > 0) {
        const halfElement = reach > halfBoom ? Math.sqrt(reach ** 2 - halfBoom ** 2) : 0;
        return beam(halfBoom, halfElement, halfElement > 0 ? 2 : 0);
      }
      if (load.high > load.low)
        return outline(0, (scale) => upright(axis * scale, load.low * scale, load.high * scale));
      return outline(0, (scale) => signOf(axis * scale, -middle * scale), true);
    }
  }
}

function upright(x: number, low: number, high: number): Svg {
  return element('path', {
    d: through([
      [x, -low],
      [x, -high],
    ]),
    ...pen({ line: 'ink', width: 1.5 }),
  });
}

/** A beam from its side: boom with its elements end-on as dots; or along it: an element, with the boom end-on. */
function beamOutline(
  x: number,
  y: number,
  halfBoom: number,
  halfElement: number,
  elements: number,
  facing: boolean,
): Svg {
  const half = facing ? halfBoom : halfElement;
  const dots = facing && elements > 0 ? Math.min(elements, 40) : 0;
  return group(
    {},
    element('path', {
      d: through([
        [x - half, y],
        [x + half, y],
      ]),
      ...pen({ line: 'ink', width: facing ? 2.3 : 1.5 }),
    }),
    Array.from({ length: dots }, (_, index) =>
      element('circle', {
        cx: dots === 1 ? x : x - half + (2 * half * index) / (dots - 1),
        cy: y,
        r: 2.6,
        ...pen({ fill: 'ink' }),
      }),
    ),
    ...(facing ? [] : [element('circle', { cx: x, cy: y, r: 3.2, ...pen({ fill: 'ink' }) })]),
  );
}

/** A sign for a thing of which no size is told: it claims none. */
function signOf(x: number, y: number): Svg {
  return group(
    {},
    element('circle', { cx: x, cy: y, r: 7, ...pen({ line: 'ink', width: 1.2, dash: '3 2.5', fill: 'paper' }) }),
    element('circle', { cx: x, cy: y, r: 1.8, ...pen({ fill: 'ink' }) }),
  );
}

/** A wire leaves down the wind and is cut off with a wave. */
function wireOutline(scale: number, middle: number, slope: number, distance: number): Svg {
  const run = Math.min(distance * scale, 56);
  const y = -middle * scale;
  const end: Point = [run, y - slope * run];
  const cut = distance * scale > run ? `M${(end[0] - 2).toFixed(2)} ${(end[1] - 5).toFixed(2)}l4 3l-4 4l4 3` : '';
  return element('path', { d: through([[0, y], end]) + cut, ...pen({ line: 'ink', width: 1 }) });
}
