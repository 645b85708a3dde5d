import type { AreaKind } from '../areas/index.ts';
import type { Check, Verdict } from '../margins/index.ts';
import { METHOD_BY_ID, type MethodId } from '../methods/index.ts';
import { type Ground, isTerrain, type SpeedBasis } from '../wind/index.ts';

/** Choices as the page says them; the identifiers stand in the working only. */
export const WORDS_FOR_BASIS: Readonly<Record<SpeedBasis, string>> = {
  'gust3-strength': 'strength-level gust',
  'gust3-nominal': 'nominal gust',
  'fastest-mile': 'fastest mile',
  'mean-1min': '1-minute mean',
  'mean-10min': '10-minute mean',
  'mean-hour': 'hourly mean',
};

export const WORDS_FOR_GROUND: Readonly<Record<Ground, string>> = {
  B: 'houses or trees all round',
  C: 'open country',
  D: 'open water or flats upwind',
  '0': 'open sea upwind',
  I: 'a lake or bare flats upwind',
  II: 'open country with single obstacles',
  III: 'villages, suburbs or forest',
  IV: 'a town with tall houses',
};

export const WORDS_FOR_AREA: Readonly<Record<AreaKind, string>> = {
  effective: 'drag already counted',
  'projected-round': 'the shadow of round tubes',
  'projected-flat': 'the shadow of flat faces',
  'flat-plate': 'a flat plate of equal force',
  unknown: 'of unsaid kind',
};

export const WORDS_FOR_VERDICT: Readonly<Record<Verdict, string>> = {
  within: 'within',
  'low-margin': 'low margin',
  over: 'over',
  open: 'not shown',
};

/** What a check is called in a sentence. */
export function checkName(check: Pick<Check, 'id' | 'kind' | 'name' | 'withIce'>): string {
  switch (check.kind) {
    case 'tower':
      return 'tower';
    case 'tower-top':
      return 'top of the tower';
    case 'ice':
      return 'tower with ice';
    case 'mast':
      return check.withIce ? 'mast with ice' : 'mast';
    case 'antenna':
      return check.name ?? 'antenna';
    case 'elements':
      return `tubes of the ${check.name ?? 'antenna'}${check.withIce ? ' with ice' : ''}`;
    case 'bearing':
      return 'bearing';
    case 'rotator':
      return 'rotator';
    case 'weight':
      return 'weight aloft';
    case 'raising':
      return 'raising gear';
    case 'hoist':
      return 'hoist';
    case 'lying':
      return 'tower lying down';
    case 'fall':
      return `distance to the ${placeOfFall(check)}`;
    case 'foundation':
      return 'footing';
  }
}

/** Whether what a check is called is more than one. */
export function isPlural({ kind }: Pick<Check, 'kind'>): boolean {
  return kind === 'elements';
}

/** The verb that goes with what a check is called: "takes" or "take". */
export function verbOf(check: Pick<Check, 'kind'>, one: string, several: string): string {
  return isPlural(check) ? several : one;
}

/** What a falling tower may reach: power line, property line. */
export function placeOfFall({ id }: Pick<Check, 'id'>): string {
  return id.replace(/^fall:/, '').replace('-', ' ');
}

/** A ground under the name that its standard has for such. */
export function groundNamed(ground: Ground): { readonly exposure?: string; readonly terrain?: string } {
  return isTerrain(ground) ? { terrain: ground } : { exposure: ground };
}

/** A method's printed name. */
export function methodName(id: MethodId): string {
  return METHOD_BY_ID[id].title;
}
