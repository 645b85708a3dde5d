import { cite, defineFormula, variable } from '../../foundation/index.ts';

export const heldUse = defineFormula({
  id: 'use-of-held-tower',
  title: 'Of a tower on supports: what the wind adds, beside the rated case',
  symbol: 'u',
  unit: 'one',
  expression: 'F_d / F_r',
  variables: [
    variable('F_d', 'what the wind adds, allowable level', 'force', 0, 1e6),
    variable('F_r', 'what the rated wind adds, allowable level', 'force', 1, 1e6),
  ],
  cite: cite('derived', 'plan and rated case in one model, what is there in still air taken off both', 'derived'),
  of: (demand: number, capacity: number) => demand / capacity,
});

export const pushInLeg = defineFormula({
  id: 'push-in-leg',
  title: 'Compression that the wind adds in one leg of a tower on supports, strength level',
  symbol: 'F_s',
  unit: 'force',
  expression: 'k_N * N + M / a_l - P_0',
  variables: [
    variable('k_N', 'share of one leg in the thrust', 'one', 0.2, 1),
    variable('N', 'thrust along the tower', 'force', 0, 1e6),
    variable('M', 'moment', 'moment', 0, 1e6),
    variable('a_l', 'arm of one leg against the others', 'length', 0.1, 5),
    variable('P_0', 'the same in still air', 'force', 0, 1e6),
  ],
  cite: cite('derived', 'three legs: N/3 + M/(0.866·b); four: N/4 + M/(1.414·b)', 'derived'),
  of: (share: number, thrust: number, moment: number, arm: number, still: number) =>
    share * thrust + moment / arm - still,
});

export const guyUse = defineFormula({
  id: 'use-of-guy',
  title: 'Tension of a guy beside what its strand and its ends may bear',
  symbol: 'u',
  unit: 'one',
  expression: 'T / (k_g * e_g * T_b)',
  variables: [
    variable('T', 'tension at the tower', 'force', 0, 1e6),
    variable('k_g', 'share of breaking strength', 'one', 0.5, 0.6),
    variable('e_g', 'share that its ends leave', 'one', 0.8, 1),
    variable('T_b', 'breaking strength of the strand', 'force', 1e3, 1e6),
  ],
  cite: cite('tia222-g', 'strength of guys; 0.6 at strength level, before it 0.5 in the wind of the map', 'memory'),
  of: (tension: number, share: number, ends: number, breaking: number) => tension / (share * ends * breaking),
});
