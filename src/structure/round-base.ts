/**
 * Largest moment on a round base under a weight at which the pressure under its rim reaches a limit, linear and without
 * tension.
 *
 * (q·A − N)·B/8 while all of it is pressed; else from a chord at R·cos α: N = q·R²·[⅔·sin³α − cos α·(α − sin α·cos α)]/(1 − cos α),
 * M = q·R³·[α/4 − sin(4α)/16 − ⅔·cos α·sin³α]/(1 − cos α)
 *
 * @param diameter [m]
 * @param weight [N]
 * @param limit [Pa]
 * @returns the moment [N·m]; 0 where the weight alone is too much
 * @example momentOnRound(2, 1000, 636.62) // 250
 * @source derived
 */
export function momentOnRound(diameter: number, weight: number, limit: number): number {
  const R = diameter / 2;
  const full = Math.PI * R ** 2 * limit;
  if (weight >= full) return 0;
  if (weight >= full / 2) return ((full - weight) * diameter) / 8;
  const wanted = weight / (limit * R ** 2);
  let [low, high] = [0, Math.PI];
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (low + high) / 2;
    if (pressed(middle) < wanted) low = middle;
    else high = middle;
  }
  const angle = (low + high) / 2;
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const moment = angle / 4 - Math.sin(4 * angle) / 16 - (2 / 3) * cosine * sine ** 3;
  return (limit * R ** 3 * moment) / (1 - cosine);
}

function pressed(angle: number): number {
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  return ((2 / 3) * sine ** 3 - cosine * (angle - sine * cosine)) / (1 - cosine);
}
