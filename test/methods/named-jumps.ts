import type { MethodId } from '../../src/methods/index.ts';
import type { FoundJump } from './method-sweeps.ts';

/**
 * A jump that its standard has. Every figure is of the standard's own text or worked out by hand from it, to the digits
 * written.
 */
export interface NamedJump {
  readonly methods: readonly MethodId[];
  readonly quantity: string;
  /** Matches the whole of what is held. */
  readonly held: RegExp;
  readonly at?: number;
  readonly from?: number;
  readonly to?: number;
  /** Above over below, where both depend on more than the rule that jumps. */
  readonly ratio?: number;
  readonly why: string;
}

const ASCE = ['asce7-10', 'asce7-16', 'asce7-22'] as const;
const TIA = ['tia222-g', 'tia222-h'] as const;

/** D·√q of 2.5 ft·√psf: 2.5 × 0.3048 × √47.88026 m·√Pa. */
const STEP_ASCE = 5.3;
const ROUND_STEP = 'ASCE 7, chimneys table: above D√q = 2.5 ft·√psf its row of fast flow';
/** C of 32, 64, 39 and 78 mph·ft, each mph·ft being 0.136257792 m²/s. */
const C32 = 4.3602493;
const C64 = 8.7204987;
const C39 = 5.3140539;
const C78 = 10.6281078;

const asceRound: NamedJump[] = [
  ['aspect 1', 0.7, 0.5],
  ['aspect 2.5', 0.725, 0.525],
  ['aspect 7', 0.8, 0.6],
  ['aspect 16', 1, 0.65],
  ['aspect (25|60)', 1.2, 0.7],
].map(([aspect, from, to]) => ({
  methods: ASCE,
  quantity: 'coefficient of a round member by flow',
  held: new RegExp(`capacity, ${aspect}`),
  at: STEP_ASCE,
  from: from as number,
  to: to as number,
  why: ROUND_STEP,
}));

const ascePoles: NamedJump[] = [
  ['aspect 7', 0.8, 0.6],
  ['aspect 60', 1.2, 0.7],
].map(([aspect, from, to]) => ({
  methods: ASCE,
  quantity: 'coefficient of a pole by flow',
  held: new RegExp(`capacity, (0|12|16|18) sides, ${aspect}`),
  at: STEP_ASCE,
  from: from as number,
  to: to as number,
  why: ROUND_STEP,
}));

const asceForces: NamedJump[] = [
  ['force on a slender tube by speed', 'capacity(, actual gust)?'],
  ['force on a slender tube by diameter', 'capacity(, actual gust)?'],
  ['force on a slender pole by speed', 'capacity(, actual gust)?, (0|12|16|18) sides'],
].map(([quantity, held]) => ({
  methods: ASCE,
  quantity: quantity as string,
  held: new RegExp(held as string),
  // 0.7 for 1.2; a demand keeps the force just below the step.
  ratio: 0.583333,
  why: ROUND_STEP,
}));

/** (1 + 0.2·k)² where a hill begins to count by its slope; in B, 60 m long, by its height of 18 m: (1 + 0.3·k)². */
const asceHills: NamedJump[] = (
  [
    ['ridge', 1.5876, 1.6641, 1.7161, 1.9321],
    ['escarpment', 1.3225, 1.3689, 1.4161, 1.500625],
    ['round-hill', 1.4161, 1.4641, 1.5129, 1.651225],
  ] as const
).flatMap(([shape, inB, inC, inD, byHeightInB]): NamedJump[] => {
  const gentle = 'ASCE 7, 26.8.1: a hill counts from H/L_h = 0.2 on';
  const of = (exposure: string) => new RegExp(`${shape}, exposure ${exposure}`);
  const byLength = 'topographic factor by half-length of the hill';
  const byHeight = 'topographic factor by height of the hill';
  return [
    { methods: ASCE, quantity: byLength, held: of('B'), at: 150, from: inB, to: 1, why: gentle },
    { methods: ASCE, quantity: byLength, held: of('C'), at: 150, from: inC, to: 1, why: gentle },
    { methods: ASCE, quantity: byLength, held: of('D'), at: 150, from: inD, to: 1, why: gentle },
    {
      methods: ASCE,
      quantity: byHeight,
      held: of('B'),
      at: 18,
      from: 1,
      to: byHeightInB,
      why: 'ASCE 7, 26.8.1: in exposure B a hill counts from 60 ft (18 m) on',
    },
    { methods: ASCE, quantity: byHeight, held: of('C'), at: 12, from: 1, to: inC, why: gentle },
    { methods: ASCE, quantity: byHeight, held: of('D'), at: 12, from: 1, to: inD, why: gentle },
  ];
});

/** (1 + k/6)² at half-way down, 60 m from the crest, of the ground of exposures B, C, D. */
const asceLowerHalf: NamedJump[] = (
  [
    ['ridge', [-60, 60], 1.480278, 1.541736, 1.583403],
    ['escarpment', [-60], 1.265625, 1.303403, 1.341736],
    ['round-hill', [-60, 60], 1.341736, 1.380625, 1.420069],
  ] as const
).flatMap(([shape, places, ...factors]) =>
  places.flatMap((at) =>
    factors.map((factor, index): NamedJump => {
      const [from, to] = at < 0 ? [1, factor] : [factor, 1];
      return {
        methods: ASCE,
        quantity: 'topographic factor by distance',
        held: new RegExp(`${shape}, exposure ${'BCD'[index]}`),
        at,
        from,
        to,
        why: 'ASCE 7, 26.8.1: a hill counts on its upper half, or near the crest of an escarpment',
      };
    }),
  ),
);

const asceGust: NamedJump = {
  methods: ASCE,
  quantity: 'gust effect by frequency',
  held: /(lattice|guyed lattice|round pole|octagonal pole), exposure [BCD]/,
  at: 1,
  to: 0.85,
  why: 'ASCE 7, 26.2: from 1 Hz on a structure is rigid, for which 0.85 is permitted',
};

/** (1 + K_c·K_t)² at the ground of exposures B, C, D. */
const tiaHills: NamedJump[] = (
  [
    ['ridge', 60, 2.715904, 2.9584, 3.211264],
    ['escarpment', 240, 1.923769, 2.0449, 2.169729],
    ['round-hill', 60, 2.181529, 2.3409, 2.505889],
  ] as const
).flatMap(([shape, reach, ...factors]) =>
  factors.flatMap((factor, index): NamedJump[] => {
    const held = new RegExp(`${shape}, exposure ${'BCD'[index]}`);
    const quantity = 'topographic factor by distance';
    return [
      {
        methods: TIA,
        quantity,
        held,
        at: -60,
        from: 1,
        to: factor,
        why: 'TIA-222, 2.6.6: the lower half of a slope is category 1',
      },
      {
        methods: TIA,
        quantity,
        held,
        at: reach,
        from: factor,
        to: 1,
        why: 'TIA-222, 2.6.6: the lower half, or 8 heights behind the edge of an escarpment, is category 1',
      },
    ];
  }),
);

const ROUNDED = 'TIA-222: the constants of its power law are rounded, so that its ends miss the table by a little';

interface Ends {
  readonly slow: readonly [number, number];
  readonly fast: readonly [number, number];
}

const tiaEnds = (
  methods: NamedJump['methods'],
  [slowAt, fastAt]: readonly [number, number],
  quantity: string,
  held: RegExp,
  { slow, fast }: Ends,
): NamedJump[] => [
  { methods, quantity, held, at: slowAt, from: slow[0], to: slow[1], why: ROUNDED },
  { methods, quantity, held, at: fastAt, from: fast[0], to: fast[1], why: ROUNDED },
];

const tiaRoundEnds = (method: MethodId, limits: readonly [number, number], ends: Readonly<Record<string, Ends>>) =>
  Object.entries(ends).flatMap(([aspect, each]) =>
    tiaEnds(
      [method],
      limits,
      'coefficient of a round member by flow',
      new RegExp(`(demand|capacity), aspect ${aspect}`),
      each,
    ),
  );

const tiaRound: NamedJump[] = [
  // 3.76/32^0.485, 3.76/64^0.485; 3.37/32^0.415, 3.37/64^0.415; half of the latter at aspect 16, 38.4/C being exact.
  ...tiaRoundEnds('tia222-g', [C32, C64], {
    '(1|2.5)': { slow: [0.7, 0.70015], fast: [0.50025, 0.5] },
    '7': { slow: [0.8, 0.79982], fast: [0.59988, 0.6] },
    '16': { slow: [1, 0.99991], fast: [0.59994, 0.6] },
  }),
  // 4.14/39^0.485, 4.14/78^0.485; 3.66/39^0.415, 3.66/78^0.415; 46.8/C is exact.
  ...tiaRoundEnds('tia222-h', [C39, C78], {
    '(1|2.5)': { slow: [0.7, 0.70038], fast: [0.50042, 0.5] },
    '7': { slow: [0.8, 0.80018], fast: [0.60015, 0.6] },
    '16': { slow: [1, 1.00009], fast: [0.60007, 0.6] },
  }),
];

/** 25.8/C^0.885, 12.6/C^0.678 and 2.99/C^0.263 at 32 and 64; -H has the same at 39 and 78. */
const tiaPoles: NamedJump[] = (
  [
    [18, 1.20105, 0.65036, 0.65, 1.00088, 0.99945],
    [16, 1.20193, 0.75124, 0.75, 1.00161, 0.99835],
    [12, 1.20176, 1.00149, 1, 1.00147, 0.99851],
  ] as const
).flatMap(([sides, slowEnd, fastEnd, fast, slowRatio, fastRatio]): NamedJump[] => {
  const held = new RegExp(`(demand|capacity), ${sides} sides, aspect (7|60)`);
  const ends: Ends = { slow: [1.2, slowEnd], fast: [fastEnd, fast] };
  const force = {
    methods: TIA,
    quantity: 'force on a slender pole by speed',
    held: new RegExp(`(demand|capacity)(, actual gust)?, ${sides} sides`),
    why: ROUNDED,
  };
  return [
    ...tiaEnds(['tia222-g'], [C32, C64], 'coefficient of a pole by flow', held, ends),
    ...tiaEnds(['tia222-h'], [C39, C78], 'coefficient of a pole by flow', held, ends),
    { ...force, ratio: slowRatio },
    { ...force, ratio: fastRatio },
  ];
});

const eiaPoles: NamedJump[] = (() => {
  const rises = 'TIA/EIA-222-F, Table 1: 1.2 up to C = 32, then 130/C^1.3, which there is 1.436';
  const ends = 'TIA/EIA-222-F, Table 1: 130/C^1.3 is 0.583 at C = 64, then 0.59';
  const methods = ['eia222-f'] as const;
  const round = {
    methods,
    quantity: 'coefficient of a pole by flow',
    held: /(demand|capacity), 0 sides, aspect (7|60)/,
  };
  const sided = { ...round, held: /capacity, (8|12|16|18) sides, aspect (7|60)/ };
  const force = { methods, quantity: 'force on a slender pole by speed' };
  const roundForce = { ...force, held: /(demand|capacity)(, actual gust)?, 0 sides/ };
  const sidedForce = { ...force, held: /capacity(, actual gust)?, (8|12|16|18) sides/ };
  return [
    { ...round, at: C32, from: 1.2, to: 1.43631, why: rises },
    { ...round, at: C64, from: 0.58332, to: 0.59, why: ends },
    { ...sided, at: C64, from: 0.58332, to: 0.59, why: ends },
    { ...roundForce, ratio: 1.19693, why: rises },
    { ...roundForce, ratio: 1.01145, why: ends },
    { ...sidedForce, ratio: 1.01145, why: ends },
  ];
})();

const EN = ['en1991-1-4'] as const;
const REACH_EN =
  'EN 1991-1-4, A.3: its curves end at z/L_e = 2, x/L_u = 1.5, x/L_d = 2 and, behind a cliff, x/L_e = 3.5';
const GENTLE_EN = 'EN 1991-1-4, A.3: a slope counts from 0.05 on';

/**
 * K_o = c_o²(1 + 7I/c_oh)/(1 + 7I) in terrains III, II, I, c_oh at 5, 2 and 1 m, for a hill 30 m high and 120 m from foot to
 * crest: 240 m above its crest; at the ground 180 m before, 240 m behind it, 420 m behind the edge of a cliff; at a slope of
 * 0.05, by its height of 6 m and by its length of 600 m.
 */
const enHills: NamedJump[] = (
  [
    ['B', 1.0495, 1.01243, 1.019143, 1.04238, 1.138702, 1.134332],
    ['C', 1.051512, 1.012935, 1.020058, 1.044353, 1.141776, 1.140133],
    ['D', 1.05296, 1.013417, 1.020851, 1.046099, 1.146436, 1.145673],
  ] as const
).flatMap(([exposure, above, before, behind, behindCliff, gentleByHeight, gentle]) =>
  (['ridge', 'escarpment', 'round-hill'] as const).flatMap((shape): NamedJump[] => {
    const held = new RegExp(`${shape}, exposure ${exposure}`);
    const cliff = shape === 'escarpment';
    const of = { methods: EN, held };
    const reach = { ...of, why: REACH_EN };
    const slope = { ...of, why: GENTLE_EN };
    return [
      { ...reach, quantity: 'topographic factor by height', at: 240, from: above, to: 1 },
      { ...reach, quantity: 'pressure by height on a hill', at: 240, ratio: 1 / above },
      { ...reach, quantity: 'topographic factor by distance', at: -180, from: 1, to: before },
      {
        ...reach,
        quantity: 'topographic factor by distance',
        at: cliff ? 420 : 240,
        from: cliff ? behindCliff : behind,
        to: 1,
      },
      { ...slope, quantity: 'topographic factor by height of the hill', at: 6, from: 1, to: gentleByHeight },
      { ...slope, quantity: 'topographic factor by half-length of the hill', at: 300, from: gentle, to: 1 },
    ];
  }),
);

/** At Re = 4·10⁵, which is 6 m²/s: C_1(1 − C_2·φ) + (C_1 + 0.875)φ² to 1.9 − √((1 − φ)(2.8 − 1.14·C_1 + φ)), times K_θ. */
const enLattices: NamedJump[] = (
  [
    [3, 0.1, 'face|corner', 1.66175, 1.087227],
    [3, 0.3, 'face|corner', 1.35175, 1.091421],
    [3, 0.7, 'face|corner', 1.39775, 1.267386],
    [4, 0.1, 'face', 1.94375, 1.35091],
    [4, 0.3, 'face', 1.51875, 1.288036],
    [4, 0.7, 'face', 1.41875, 1.370377],
    [4, 0.1, 'corner', 2.25475, 1.567055],
    [4, 0.3, 'corner', 1.88325, 1.597165],
    [4, 0.7, 'corner', 1.75925, 1.699268],
  ] as const
).map(([faces, solidity, on, from, to]) => ({
  methods: EN,
  quantity: 'coefficient of a lattice by flow',
  held: new RegExp(`capacity, ${faces} faces, wind on a (${on}), solidity ${solidity}`),
  at: 6,
  from,
  to,
  why: 'EN 1993-3-1, B.2.2: round members in fast wind from Re = 4·10⁵ on',
}));

/** Every jump that a standard has of its own; whatever else jumps is an error of ours. */
export const NAMED_JUMPS: readonly NamedJump[] = [
  ...asceRound,
  ...ascePoles,
  ...asceForces,
  ...asceHills,
  ...asceLowerHalf,
  asceGust,
  ...tiaHills,
  ...tiaRound,
  ...tiaPoles,
  ...eiaPoles,
  ...enHills,
  ...enLattices,
];

/** Half a unit of the last digit written above, and a little for working it out by hand. */
const DIGITS = 1.5e-5;
const near = (found: number, named: number | undefined, within: number) =>
  named === undefined || Math.abs(found - named) <= within;

export function isNamed(found: FoundJump, named: NamedJump): boolean {
  return (
    found.quantity === named.quantity &&
    new RegExp(`^(?:${named.held.source})$`).test(found.held) &&
    near(found.at, named.at, 1e-6 * Math.abs(found.at)) &&
    near(found.from, named.from, DIGITS) &&
    near(found.to, named.to, DIGITS) &&
    near(found.to / found.from, named.ratio, DIGITS)
  );
}
