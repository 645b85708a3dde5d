import type { Check, CheckKindName, FallTowards } from '../margins/index.ts';

/** What of a check its words depend on. */
export type NamedCheck = Pick<Check, 'kind' | 'name' | 'withIce' | 'towards'>;

interface CheckWords {
  /** What it is called in a sentence, after "the". */
  readonly name: (check: NamedCheck) => string;
  readonly number: 'one' | 'several';
  /** What its demand is compared with, after "its" or "their". */
  readonly capacity: string;
  /** Where its capacity comes from: what somebody states of it, or its own measures. */
  readonly comparedWith: 'rating' | 'measures';
  /** What its demand is called, where that is not "demand on the …". */
  readonly demand?: string;
  /** What a ratio above 1 means, a sentence. */
  readonly over: string;
  /** What it is called beside its mark on a drawing. */
  readonly drawn: (check: NamedCheck) => string;
}

const called = (name: string) => ({ name: () => name, drawn: () => name });
const iced = (name: string) => (check: NamedCheck) => (check.withIce ? `${name} with ice` : name);
const orIced = (name: string) => ({ name: iced(name), drawn: iced(name) });
const ownName = ({ name = 'antenna' }: NamedCheck) => name;

/** A part of which its manufacturer states what it holds. */
const RATED = {
  number: 'one',
  capacity: 'rated capacity',
  comparedWith: 'rating',
  over: 'That is beyond the manufacturer’s rating, which is not the same as failing.',
} as const;
/** Lifting gear, whose plate states its working load. */
const GEAR = {
  number: 'one',
  capacity: 'working load',
  comparedWith: 'measures',
  over: 'That is beyond the working load of the gear.',
} as const;

const FALL_WORDS = {
  'power-line': 'power line',
  'property-line': 'property line',
  building: 'building',
} as const satisfies Record<FallTowards, string>;

/** What a falling tower could reach. */
export function placeOfFall({ towards }: Pick<Check, 'towards'>): string {
  return towards === undefined ? 'place beside it' : FALL_WORDS[towards];
}

/** The words of every check. */
export const CHECK_WORDS: Readonly<Record<CheckKindName, CheckWords>> = {
  tower: { ...called('tower'), ...RATED },
  'tower-below': { ...called('tower below its highest support'), ...RATED },
  guys: {
    ...called('guys'),
    number: 'several',
    capacity: 'allowable tension',
    comparedWith: 'measures',
    over: 'Their tension is more than the standard allows for such strand.',
  },
  'own-strength': {
    ...called('own strength of the tower'),
    number: 'one',
    capacity: 'allowable capacity',
    comparedWith: 'measures',
    over: 'Its members take more than the allowable force or stress.',
  },
  'tower-top': { ...called('tower top'), ...RATED },
  ice: { ...called('tower with ice'), ...RATED },
  mast: {
    ...orIced('mast'),
    number: 'one',
    capacity: 'allowable capacity',
    comparedWith: 'measures',
    over: 'Its tube is bent beyond the allowable stress.',
  },
  bearing: { ...orIced('bearing'), ...RATED },
  rotator: { ...orIced('rotator'), ...RATED },
  antenna: { name: ownName, drawn: ownName, ...RATED },
  elements: {
    name: (check) => iced(`tubes of the ${ownName(check)}`)(check),
    drawn: (check) => iced(`${ownName(check)} tubes`)(check),
    number: 'several',
    capacity: 'allowable capacity',
    comparedWith: 'measures',
    over: 'One of them is bent beyond the allowable stress.',
  },
  weight: { ...orIced('weight aloft'), ...RATED, demand: 'The weight aloft', capacity: 'rated limit' },
  foundation: {
    ...orIced('footing'),
    number: 'one',
    capacity: 'allowable capacity',
    comparedWith: 'measures',
    over: 'It could tip or press into the soil.',
  },
  raising: { ...called('raising gear'), ...GEAR },
  lying: { ...called('tower lowered flat'), ...RATED },
  hoist: { ...called('hoist'), ...GEAR },
  fall: {
    name: (check) => `distance to the ${placeOfFall(check)}`,
    drawn: (check) => `fall to the ${placeOfFall(check)}`,
    number: 'one',
    capacity: 'distance given',
    comparedWith: 'measures',
    over: 'If it falls, the tower could reach that far.',
  },
};

/** What a check is called in a sentence. */
export function checkName(check: NamedCheck): string {
  return CHECK_WORDS[check.kind].name(check);
}

/** The verb that goes with what a check is called: "holds" or "hold". */
export function verbOf({ kind }: Pick<Check, 'kind'>, one: string, several: string): string {
  return CHECK_WORDS[kind].number === 'several' ? several : one;
}

/** "its rated capacity" or "their allowable capacity". */
export function capacityOf(check: Pick<Check, 'kind'>): string {
  return `${verbOf(check, 'its', 'their')} ${CHECK_WORDS[check.kind].capacity}`;
}

/** "Demand on the tower". */
export function demandOn(check: NamedCheck): string {
  return CHECK_WORDS[check.kind].demand ?? `Demand on the ${checkName(check)}`;
}

/** Beside a mark on a drawing. */
export function drawnName(check: NamedCheck): string {
  return CHECK_WORDS[check.kind].drawn(check);
}
