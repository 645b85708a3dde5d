import { cite, defineFormula, FOOT, variable } from '../foundation/index.ts';

/** Decay of air density with ground elevation [1/m]: 0.0000362 per ft. @source asce7-16 */
export const ELEVATION_DECAY_HEIGHT = FOOT / 0.0000362;

export const groundElevationFactor = defineFormula({
  id: 'ke-ground-elevation',
  title: 'Ground elevation factor; 1.0 is always permitted',
  symbol: 'K_e',
  unit: 'one',
  expression: 'exp(-E / E_0)',
  variables: [
    variable('E', 'height of the ground above the sea', 'length', 0, 4000),
    variable('E_0', 'one over 0.0000362 per ft', 'length', 8419.889502762431, 8419.889502762431),
  ],
  cite: cite('asce7-16', '26.9, Table 26.9-1 note 2', 'second-hand'),
  of: (elevation: number, decay: number) => Math.exp(-elevation / decay),
});
