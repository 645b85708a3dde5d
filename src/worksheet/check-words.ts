import type { Dimension } from '../foundation/index.ts';
import type { Check, Compared } from '../margins/index.ts';

/** The unit in which each comparison is told. */
export const DIMENSION_OF_COMPARED: Readonly<Record<Compared['of'], Dimension>> = {
  moment: 'moment',
  shear: 'force',
  braces: 'force',
  'wind-ratio': 'force',
  bending: 'moment',
  'side-force': 'force',
  'clamp-moment': 'moment',
  torque: 'moment',
  gust: 'speed',
  weight: 'weight',
  overturning: 'moment',
  'toe-pressure': 'soil-pressure',
  embedment: 'moment',
  distance: 'length',
  pull: 'force',
  area: 'area',
};

/** "most in shear", before the place. */
export const WORDS_FOR_COMPARED: Readonly<Record<Exclude<Compared['of'], 'wind-ratio'>, string>> = {
  moment: 'most in bending',
  shear: 'most in shear',
  braces: 'most in its braces',
  bending: 'in bending of its tube',
  'side-force': 'by the force sideways',
  'clamp-moment': 'by the moment at the foot of the mast, which it holds alone,',
  torque: 'by the wind turning it',
  gust: 'by the square of the gust',
  weight: 'by weight',
  overturning: 'against tipping over',
  'toe-pressure': 'by the pressure under it',
  embedment: 'by the soil at its sides',
  distance: 'by the distance it may fall',
  pull: 'by the pull on its gear',
  area: 'by area alone',
};

/** What its demand is held against, in a sentence: "takes 0.8 of what its tube is allowed". */
export function ofWhat(check: Pick<Check, 'kind'>): string {
  switch (check.kind) {
    case 'tower':
    case 'tower-top':
    case 'ice':
      return 'what its rating shows';
    case 'mast':
      return 'what its tube is allowed';
    case 'elements':
      return 'what they are allowed';
    case 'bearing':
    case 'rotator':
    case 'weight':
      return 'what its maker states';
    case 'antenna':
      return 'what its maker rates it for';
    case 'foundation':
      return 'what it holds';
    case 'raising':
    case 'hoist':
      return 'what its gear may pull';
    case 'lying':
      return 'what its rating shows';
    case 'fall':
      return 'the distance there is';
  }
}

/** What more than 1 means: only a maker's silence, or more than the part has by its own measures. */
export function beyondInWords(check: Pick<Check, 'kind'>): string {
  switch (check.kind) {
    case 'elements':
      return ': one of them is bent beyond what is allowed';
    case 'mast':
      return ': its tube is bent beyond what is allowed';
    case 'foundation':
      return ': it may tip or press into the soil';
    case 'raising':
    case 'hoist':
      return ': its gear is not made for this pull';
    default:
      return ': beyond what the maker stands behind, which is not the same as failing';
  }
}
