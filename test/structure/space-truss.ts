/** A stack of panels with hinges at all ends of its members, fixed at its foot. */
export interface TrussTower {
  readonly faces: 3 | 4;
  readonly pattern: 'zigzag' | 'cross';
  /** From leg to leg, and of a panel [m]. */
  readonly width: number;
  readonly height: number;
  readonly panels: number;
  /** [m²] */
  readonly legArea: number;
  readonly braceArea: number;
}

type Point = readonly [number, number, number];
type Bar = {
  readonly from: number;
  readonly to: number;
  readonly area: number;
  readonly kind: 'leg' | 'brace' | 'level';
  readonly panel: number;
};

/**
 * Largest forces of its members, panels counted from below, by the stiffness of its bars. Horizontals stand at every level, so that
 * it is no mechanism; with single diagonals all turned one way round they are statics alone.
 */
export function forcesInTruss(tower: TrussTower, top: { readonly force: Point; readonly torque: number }) {
  const { faces, width, height, panels } = tower;
  const radius = faces === 3 ? width / Math.sqrt(3) : width / Math.SQRT2;
  const corner = (number: number, level: number): Point => {
    const angle = (2 * Math.PI * number) / faces;
    return [radius * Math.cos(angle), radius * Math.sin(angle), level * height];
  };
  const node = (number: number, level: number) => level * faces + (((number % faces) + faces) % faces);
  const points = Array.from({ length: (panels + 1) * faces }, (_, index) =>
    corner(index % faces, Math.floor(index / faces)),
  );
  const bars: Bar[] = [];
  for (let panel = 0; panel < panels; panel += 1)
    for (let face = 0; face < faces; face += 1) {
      const add = (kind: Bar['kind'], area: number, from: number, to: number) =>
        bars.push({ kind, area, from, to, panel });
      add('leg', tower.legArea, node(face, panel), node(face, panel + 1));
      add('level', tower.braceArea, node(face, panel + 1), node(face + 1, panel + 1));
      const [up, down] = [
        [node(face, panel), node(face + 1, panel + 1)],
        [node(face + 1, panel), node(face, panel + 1)],
      ] as const;
      if (tower.pattern === 'cross' || panel % 2 === 0) add('brace', tower.braceArea, ...up);
      if (tower.pattern === 'cross' || panel % 2 === 1) add('brace', tower.braceArea, ...down);
    }
  // A square needs a diagonal across its top, and across each level, to keep its shape.
  if (faces === 4)
    for (let level = 1; level <= panels; level += 1)
      bars.push({ kind: 'level', area: tower.braceArea, from: node(0, level), to: node(2, level), panel: level });
  const size = points.length * 3;
  const stiffness = Array.from({ length: size }, () => new Float64Array(size));
  const unit = ({ from, to }: Bar) => {
    const [a, b] = [points[from] as Point, points[to] as Point];
    const along = [0, 1, 2].map((axis) => (b[axis] as number) - (a[axis] as number));
    const length = Math.hypot(...along);
    return { length, direction: along.map((each) => each / length) };
  };
  const YOUNG = 2e11;
  for (const bar of bars) {
    const { length, direction } = unit(bar);
    const k = (YOUNG * bar.area) / length;
    for (let i = 0; i < 3; i += 1)
      for (let j = 0; j < 3; j += 1) {
        const part = k * (direction[i] as number) * (direction[j] as number);
        for (const [one, other, sign] of [
          [bar.from, bar.from, 1],
          [bar.to, bar.to, 1],
          [bar.from, bar.to, -1],
          [bar.to, bar.from, -1],
        ] as const)
          (stiffness[one * 3 + i] as Float64Array)[other * 3 + j] =
            ((stiffness[one * 3 + i] as Float64Array)[other * 3 + j] as number) + sign * part;
      }
  }
  const load = new Float64Array(size);
  for (let number = 0; number < faces; number += 1) {
    const at = node(number, panels) * 3;
    const [x, y] = points[node(number, panels)] as Point;
    const tangential = top.torque / (faces * radius);
    load[at] = top.force[0] / faces - (tangential * y) / radius;
    load[at + 1] = top.force[1] / faces + (tangential * x) / radius;
    load[at + 2] = top.force[2] / faces;
  }
  const free = Array.from({ length: size - faces * 3 }, (_, index) => index + faces * 3);
  const moved = solve(
    free.map((row) => free.map((column) => (stiffness[row] as Float64Array)[column] as number)),
    free.map((row) => load[row] as number),
  );
  const movement = (at: number, axis: number) => (at < faces ? 0 : (moved[(at - faces) * 3 + axis] as number));
  const forceIn = (bar: Bar) => {
    const { length, direction } = unit(bar);
    const longer = direction.reduce(
      (sum, each, axis) => sum + each * (movement(bar.to, axis) - movement(bar.from, axis)),
      0,
    );
    return (YOUNG * bar.area * longer) / length;
  };
  const most = (kind: Bar['kind']) => (panel: number) =>
    Math.max(...bars.filter((bar) => bar.kind === kind && bar.panel === panel).map((bar) => Math.abs(forceIn(bar))));
  return { legs: most('leg'), braces: most('brace') };
}

/** Elimination with pivots. */
function solve(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  for (let column = 0; column < n; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < n; row += 1)
      if (
        Math.abs((matrix[row] as number[])[column] as number) > Math.abs((matrix[pivot] as number[])[column] as number)
      )
        pivot = row;
    [matrix[column], matrix[pivot]] = [matrix[pivot] as number[], matrix[column] as number[]];
    [right[column], right[pivot]] = [right[pivot] as number, right[column] as number];
    const own = matrix[column] as number[];
    for (let row = column + 1; row < n; row += 1) {
      const other = matrix[row] as number[];
      const factor = (other[column] as number) / (own[column] as number);
      if (factor === 0) continue;
      for (let at = column; at < n; at += 1) other[at] = (other[at] as number) - factor * (own[at] as number);
      right[row] = (right[row] as number) - factor * (right[column] as number);
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let row = n - 1; row >= 0; row -= 1) {
    const own = matrix[row] as number[];
    let sum = right[row] as number;
    for (let at = row + 1; at < n; at += 1) sum -= (own[at] as number) * (found[at] as number);
    found[row] = sum / (own[row] as number);
  }
  return found;
}
