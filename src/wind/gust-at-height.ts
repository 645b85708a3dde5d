import { cite, defineFormula, variable } from '../foundation/index.ts';

export const gustAtAntenna = defineFormula({
  id: 'gust-at-antenna',
  title: 'Nominal gust at the height of an antenna',
  symbol: 'v_a',
  unit: 'speed',
  expression: 'V * sqrt(K_z * K_zt * K_e)',
  variables: [
    variable('V', 'nominal 3-second gust of the site', 'speed', 0, 150),
    variable('K_z', 'height and ground', 'one', 0.5, 2.58),
    variable('K_zt', 'hill', 'one', 1, 3),
    variable('K_e', 'ground elevation', 'one', 0.6, 1),
  ],
  cite: cite('derived', 'the wind of the pressure formula, without direction and gust factor', 'derived'),
  of: (V: number, Kz: number, Kzt: number, Ke: number) => V * Math.sqrt(Kz * Kzt * Ke),
});

export const gustAtAntennaEn = defineFormula({
  id: 'gust-at-antenna-en1991',
  title: 'Peak wind at the height of an antenna, EN 1991-1-4',
  symbol: 'v_a',
  unit: 'speed',
  expression: 'sqrt(2 * q_p / rho)',
  variables: [
    variable('q_p', 'peak velocity pressure', 'pressure', 0, 8000),
    variable('rho', 'density of air', 'density', 1.25, 1.25),
  ],
  cite: cite('en1991-1-4', '7.9.1, Fig. 7.28 note', 'memory'),
  of: (qp: number, rho: number) => Math.sqrt((2 * qp) / rho),
});
