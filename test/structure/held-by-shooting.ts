import type { Guy, HeldCase, HeldTower } from '../../src/structure/index.ts';

/**
 * A second way to a tower on guys, in one plane: its bent axis integrated upwards step by step by Runge and Kutta, the guys as
 * exact elastic catenaries, the three unknowns at the foot by shooting. No elements, no parabola. The wind and everything else
 * must be alike on both sides of the plane of north and south; what pushes, pushes north where positive.
 *
 * @param rises whether the attachment of a guy rises and sinks as the tower leans
 */
export function heldByShooting(tower: HeldTower, held: HeldCase, rises: boolean) {
  const foot = tower.stretches[0]?.low ?? 0;
  const top = tower.stretches.at(-1)?.high ?? 0;
  const bending = tower.stretches[0]?.bending ?? 0;
  const spread = held.loads.filter(({ low, high }) => high > low);
  const points = held.loads.filter(({ low, high }) => high === low);
  const heights = [
    ...new Set([
      ...tower.guys.map((guy) => guy.height),
      ...points.map(({ low }) => low),
      ...tower.brackets.map((b) => b.height),
    ]),
  ].sort((a, b) => a - b);
  type State = [u: number, lean: number, moment: number, level: number, push: number];
  const change = (z: number, [, lean, moment, level, push]: State): State => {
    let [wind, weight] = [0, 0];
    for (const load of spread) {
      if (z < load.low || z > load.high) continue;
      wind += load.north / (load.high - load.low);
      weight += load.weight / (load.high - load.low);
    }
    return [lean, moment / bending, -level - push * lean, -wind, -weight];
  };
  const ahead = (a: State, b: State, by: number) => a.map((each, index) => each + by * (b[index] as number)) as State;
  const upTo = (state: State, low: number, high: number): State => {
    const steps = Math.max(1, Math.ceil((high - low) / 0.02));
    const h = (high - low) / steps;
    let now = state;
    for (let step = 0; step < steps; step += 1) {
      const z = low + step * h + 1e-12;
      const k1 = change(z, now);
      const k2 = change(z + h / 2, ahead(now, k1, h / 2));
      const k3 = change(z + h / 2, ahead(now, k2, h / 2));
      const k4 = change(z + h - 2e-12, ahead(now, k3, h));
      now = now.map((each, index) => {
        const [a, b, c, d] = [k1[index], k2[index], k3[index], k4[index]] as [number, number, number, number];
        return each + (h / 6) * (a + 2 * b + 2 * c + d);
      }) as State;
    }
    return now;
  };
  const shot = (start: readonly number[]) => {
    let state: State = [
      0,
      tower.footHeld ? 0 : (start[0] as number),
      tower.footHeld ? (start[0] as number) * 1e5 : 0,
      (start[1] as number) * 1e3,
      (start[2] as number) * 1e4,
    ];
    const foundAt: { z: number; below: State; above: State }[] = [];
    const ends: { atTower: number; atAnchor: number }[] = [];
    let z = foot;
    for (const height of heights) {
      state = upTo(state, z, height);
      const below = state;
      let [moment, level, push] = [state[2], state[3], state[4]];
      for (const guy of tower.guys.filter((each) => each.height === height)) {
        const pull = catenary(guy, held, state[0], rises ? state[1] : 0);
        ends.push({ atTower: Math.hypot(...pull.onTower), atAnchor: pull.atAnchor });
        level -= pull.onTower[1];
        push += pull.onTower[2];
        moment += pull.onTower[2] * guy.offset * Math.cos(guy.heading);
      }
      for (const bracket of tower.brackets.filter((each) => each.height === height))
        level += bracket.stiffness * state[0];
      for (const point of points.filter(({ low }) => low === height)) {
        level -= point.north;
        push -= point.weight;
      }
      state = [state[0], state[1], moment, level, push];
      foundAt.push({ z: height, below, above: state });
      z = height;
    }
    state = upTo(state, z, top);
    return { left: [state[2] / 1e3, state[3] / 1e3, state[4] / 1e4], foundAt, ends, start, tip: state[0] };
  };
  let start = [0, 0.3, 1];
  for (let step = 0; step < 60; step += 1) {
    const { left } = shot(start);
    if (Math.hypot(...left) < 1e-10) break;
    const columns = start.map((_, index) => {
      const moved = start.map((each, other) => (other === index ? each + 1e-7 : each));
      return shot(moved).left.map((each, row) => (each - (left[row] as number)) / 1e-7);
    });
    const by = solved(columns, left);
    const slower = Math.min(1, 0.02 / Math.max(1e-12, Math.abs(by[0] as number)));
    start = start.map((each, index) => each - slower * (by[index] as number));
  }
  return shot(start);
}

/** A·x = b by Cramer's rule, from the columns of A. */
function solved(columns: number[][], b: number[]): number[] {
  const determinant = (m: number[][]) => {
    const [x, y, w] = m as [number[], number[], number[]];
    const [a, d, g] = x as [number, number, number];
    const [e, f, h] = y as [number, number, number];
    const [i, j, k] = w as [number, number, number];
    return a * (f * k - h * j) - e * (d * k - g * j) + i * (d * h - g * f);
  };
  const whole = determinant(columns);
  return columns.map((_, index) => determinant(columns.map((each, other) => (other === index ? b : each))) / whole);
}

/** Pull of a guy whose tower has moved and leans, as an elastic catenary under weight and wind together. */
export function catenary(guy: Guy, held: HeldCase, moved: number, lean: number) {
  const [east, north] = [Math.sin(guy.heading), Math.cos(guy.heading)];
  const level = guy.radius - guy.offset;
  const rest = Math.hypot(level, guy.height - guy.anchorHeight);
  const across = (guy.weight * level) / rest;
  const s0 = (rest * (1 + (across * rest) ** 2 / (24 * guy.tension ** 2))) / (1 + guy.tension / guy.stiffness);
  const span = [level * east, level * north - moved, guy.anchorHeight - guy.height + guy.offset * north * lean];
  const chord = Math.hypot(...span);
  const t = span.map((each) => each / chord);
  const wind = [Math.sin(held.windTo), Math.cos(held.windTo), 0];
  const dot = (a: number[], b: number[]) => a.reduce((sum, each, index) => sum + each * (b[index] as number), 0);
  const crosswind = wind.map((each, index) => each - dot(wind, t) * (t[index] as number));
  const push = guy.drag * Number(held.onGuys) * Math.hypot(...crosswind);
  const load = crosswind.map((each, index) => push * each - (index === 2 ? guy.weight : 0));
  const q = Math.hypot(...load);
  const down = load.map((each) => each / q);
  // In the plane of chord and load: against the load, and across it towards the anchor.
  const fall = dot(span, down);
  const level1 = span.map((each, index) => each - fall * (down[index] as number));
  const x = Math.hypot(...level1);
  const out = level1.map((each) => each / x);
  const EA = guy.stiffness;
  const ends = (H: number, V: number) => [
    (H / q) * (Math.asinh(V / H) - Math.asinh((V - q * s0) / H)) + (H * s0) / EA - x,
    (H / q) * (Math.hypot(1, V / H) - Math.hypot(1, (V - q * s0) / H)) + (V * s0 - (q * s0 ** 2) / 2) / EA - fall,
  ];
  const stretched = Math.max(0.02 * guy.tension, ((chord - s0) * EA) / s0);
  let [H, V] = [(stretched * x) / chord, (stretched * fall) / chord + (q * s0) / 2];
  for (let step = 0; step < 200; step += 1) {
    const [a, b] = ends(H, V) as [number, number];
    if (Math.hypot(a, b) < 1e-11) break;
    const d = 1e-5 * Math.max(1, Math.abs(H));
    const [ah, bh] = ends(H + d, V) as [number, number];
    const [av, bv] = ends(H, V + d) as [number, number];
    const [p, r, s, u] = [(ah - a) / d, (av - a) / d, (bh - b) / d, (bv - b) / d];
    const whole = p * u - r * s;
    const [stepH, stepV] = [(a * u - r * b) / whole, (p * b - s * a) / whole];
    const share = Math.min(1, stepH > 0 ? (0.5 * H) / stepH : 1);
    H -= share * stepH;
    V -= share * stepV;
  }
  const onTower = [0, 1, 2].map((index) => H * (out[index] as number) + V * (down[index] as number)) as [
    number,
    number,
    number,
  ];
  return { H, V, onTower, atAnchor: Math.hypot(H, V - q * s0), unstrained: s0 };
}
