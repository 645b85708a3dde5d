import { cite, defineFormula, variable } from '../foundation/index.ts';

export const vortexSpeed = defineFormula({
  id: 'vortex-speed',
  title: 'Wind in which eddies shed in time with a tube',
  symbol: 'v_cr',
  unit: 'speed',
  expression: 'b * n / St',
  variables: [
    variable('b', 'outside width', 'length', 0.01, 2),
    variable('n', 'frequency', 'frequency', 0.1, 30),
    variable('St', 'Strouhal number', 'one', 0.1, 0.22),
  ],
  cite: cite('en1991-1-4', 'Annex E, Eq. (E.2), Table E.1', 'memory'),
  of: (width: number, frequency: number, strouhal: number) => (width * frequency) / strouhal,
});

/** Of a round tube, from memory. @source en1991-1-4 */
export const STROUHAL_OF_ROUND = 0.18;

/** Second over first frequency of a bare cantilever of one section. @source derived */
export const SECOND_MODE = 6.27;
