import type { DragRule, LatticeFace, Role, WindDirection } from '../../src/areas/index.ts';
import type { Method, Wind, WindConditions, WindStructure } from '../../src/methods/index.ts';
import { type Exposure, type Hill, iceThickness } from '../../src/wind/index.ts';
import { type Jump, jumpsOf, type Swept } from './jump-finder.ts';

/** One quantity of a method over one thing that changes, all else held. */
export interface Sweep extends Swept {
  readonly quantity: string;
  /** What is held, in words; empty where nothing else matters. */
  readonly held: string;
  readonly value: (x: number) => number;
}

export interface FoundJump extends Jump {
  readonly quantity: string;
  readonly held: string;
}

const EXPOSURES: readonly Exposure[] = ['B', 'C', 'D'];
const ROLES: readonly Role[] = ['demand', 'capacity'];
const DIRECTIONS: readonly WindDirection[] = ['face', 'corner'];
const SIDES = [0, 8, 12, 16, 18] as const;
const HILL_SHAPES = ['ridge', 'escarpment', 'round-hill'] as const;

const LATTICE: WindStructure = { kind: 'lattice', sides: 0, guyed: false, height: 20, width: 0.4 };
const POLE: WindStructure = { kind: 'pole', sides: 0, guyed: false, height: 20, width: 0.2 };
const STRUCTURES: Readonly<Record<string, WindStructure>> = {
  lattice: LATTICE,
  'guyed lattice': { ...LATTICE, guyed: true },
  'round pole': POLE,
  'octagonal pole': { ...POLE, sides: 8 },
};

const OPEN: WindConditions = {
  units: 'si',
  speed: 50,
  speedLevel: 'own',
  actual: false,
  exposure: 'C',
  riskCategory: 'II',
  groundElevation: 0,
  windStructure: LATTICE,
};
/** The crest of a hill 30 m high whose upper half is 60 m long. */
const CREST = { height: 30, halfLength: 60, distance: 0, side: 'upwind' } as const;
/** Slow, between and fast by every method's own flow measure. */
const FLOWS = [0.5, 4.8, 7, 20];
const ASPECTS = [1, 2.5, 7, 16, 25, 60];

/** Every quantity a method gives, over everything that changes it. */
export function sweepsOf(method: Method): Sweep[] {
  return [...groundSweeps(method), ...hillSweeps(method), ...gustSweeps(method), ...coefficientSweeps(method)].concat(
    forceSweeps(method),
    speedSweeps(method),
  );
}

/** The jumps of all its quantities, or of one. */
export function foundJumps(method: Method, of?: string): FoundJump[] {
  const sweeps = sweepsOf(method).filter(({ quantity }) => of === undefined || quantity === of);
  return sweeps.flatMap((sweep) => {
    const { quantity, held } = sweep;
    try {
      return jumpsOf(sweep.value, sweep).map((jump) => ({ quantity, held, ...jump }));
    } catch (cause) {
      throw new Error(`${method.id}, ${quantity}, ${held}`, { cause });
    }
  });
}

function groundSweeps(method: Method): Sweep[] {
  const heights = { low: 0, high: 700 };
  const byExposure = EXPOSURES.flatMap((exposure): Sweep[] => {
    const wind = method.wind({ ...OPEN, exposure });
    const held = `exposure ${exposure}`;
    return [
      { quantity: 'exposure coefficient by height', held, ...heights, value: (z) => wind.exposureCoefficient(z) },
      { quantity: 'pressure by height', held, ...heights, value: (z) => wind.pressure(z) },
      { quantity: 'pressure over speed squared by height', held, ...heights, value: wind.pressurePerSpeedSquared },
      { quantity: 'flow by height', held, ...heights, value: (z) => wind.flow(z, 0.1) },
      { quantity: 'flow over speed by height', held, ...heights, value: wind.flowPerSpeed },
    ];
  });
  const elevations = { low: -400, high: 5000, held: '' };
  const at = (groundElevation: number) => method.wind({ ...OPEN, groundElevation });
  const { ice } = method;
  return [
    ...byExposure,
    { quantity: 'elevation factor by ground elevation', ...elevations, value: (E) => at(E).elevationFactor },
    { quantity: 'pressure by ground elevation', ...elevations, value: (E) => at(E).pressure(10) },
    ...(ice
      ? [
          {
            quantity: 'ice by height',
            held: '',
            low: 0.01,
            high: 700,
            value: (z: number) => iceThickness(ice, 0.02, 'II', z, 1),
          },
          {
            quantity: 'ice by topographic factor',
            held: '',
            low: 1,
            high: 3.5,
            value: (Kzt: number) => iceThickness(ice, 0.02, 'II', 10, Kzt),
          },
        ]
      : []),
  ];
}

function hillSweeps(method: Method): Sweep[] {
  return HILL_SHAPES.flatMap((shape) =>
    EXPOSURES.flatMap((exposure): Sweep[] => {
      const held = `${shape}, exposure ${exposure}`;
      const wind = (hill: Partial<Hill>) => method.wind({ ...OPEN, exposure, hill: { shape, ...CREST, ...hill } });
      /** At the ground, where a hill counts most. */
      const factor = (hill: Partial<Hill>) => wind(hill).topographicFactor(0);
      const onCrest = wind({});
      return [
        {
          quantity: 'topographic factor by height',
          held,
          low: 0,
          high: 700,
          value: (z) => onCrest.topographicFactor(z),
        },
        { quantity: 'pressure by height on a hill', held, low: 0, high: 700, value: (z) => onCrest.pressure(z) },
        {
          // Upwind of the crest counts as negative.
          quantity: 'topographic factor by distance',
          held,
          low: -900,
          high: 900,
          value: (x) => factor({ distance: Math.abs(x), side: x < 0 ? 'upwind' : 'downwind' }),
        },
        {
          quantity: 'topographic factor by height of the hill',
          held,
          low: 0.5,
          high: 400,
          value: (height) => factor({ height }),
        },
        {
          quantity: 'topographic factor by half-length of the hill',
          held,
          low: 1,
          high: 900,
          value: (halfLength) => factor({ halfLength }),
        },
      ];
    }),
  );
}

function gustSweeps(method: Method): Sweep[] {
  return Object.entries(STRUCTURES).flatMap(([structure, windStructure]) =>
    EXPOSURES.flatMap((exposure): Sweep[] => {
      const held = `${structure}, exposure ${exposure}`;
      const gust = (changed: Partial<WindStructure>, speed = OPEN.speed) =>
        method.wind({ ...OPEN, exposure, speed, windStructure: { ...windStructure, ...changed } }).gustEffect();
      const swaying = method.wind({ ...OPEN, exposure, windStructure: { ...windStructure, frequency: 0.6 } });
      return [
        {
          quantity: 'gust effect by frequency',
          held,
          low: 0.05,
          high: 4,
          byRatio: true,
          value: (frequency) => gust({ frequency }),
        },
        {
          quantity: 'gust effect by damping',
          held,
          low: 0.002,
          high: 0.1,
          value: (damping) => gust({ frequency: 0.6, damping }),
        },
        {
          quantity: 'gust effect by height of the structure',
          held,
          low: 1,
          high: 600,
          value: (h) => gust({ height: h }),
        },
        {
          quantity: 'gust effect by height of a swaying structure',
          held,
          low: 1,
          high: 600,
          value: (height) => gust({ height, frequency: 0.6 }),
        },
        {
          quantity: 'gust effect by width of a swaying structure',
          held,
          low: 0.05,
          high: 5,
          value: (width) => gust({ width, frequency: 0.6 }),
        },
        {
          quantity: 'gust effect by speed',
          held,
          low: 2,
          high: 150,
          value: (speed) => gust({ frequency: 0.6 }, speed),
        },
        { quantity: 'gust effect asked at a speed', held, low: 2, high: 150, value: (V) => swaying.gustEffect(V) },
      ];
    }),
  );
}

function coefficientSweeps(method: Method): Sweep[] {
  const wind = method.wind(OPEN);
  const coefficient = (rule: DragRule, role: Role, direction: WindDirection, flow: number) =>
    wind.forceCoefficient(rule, role, direction).byFlow.at(flow);
  const flows = { low: 0, high: 30 };
  const aspects = { low: 0.3, high: 300, byRatio: true };
  const solidities = { low: 0, high: 1 };
  const face = (changed: Partial<LatticeFace>): DragRule => ({
    of: 'lattice',
    face: { faces: 3, solidity: 0.2, roundShare: 1, thinnest: 0.01, thickest: 0.03, ...changed },
  });
  const sweeps: Sweep[] = [
    {
      quantity: 'coefficient of a flat by tall over wide',
      held: '',
      low: 0.004,
      high: 250,
      byRatio: true,
      value: (tall) => coefficient({ of: 'flat', face: { wide: 1, tall } }, 'demand', 'face', 0),
    },
    {
      quantity: 'coefficient of a dish by solid share',
      held: '',
      ...solidities,
      value: (solidity) => coefficient({ of: 'dish', solidity }, 'demand', 'face', 0),
    },
    {
      quantity: 'area of a stated force by its wind',
      held: '',
      low: 5,
      high: 90,
      value: (speed) => coefficient({ of: 'stated-force', force: 1000, wind: speed }, 'demand', 'face', 0),
    },
  ];
  for (const role of ROLES) {
    for (const aspect of ASPECTS) {
      sweeps.push({
        quantity: 'coefficient of a round member by flow',
        held: `${role}, aspect ${aspect}`,
        ...flows,
        value: (flow) => coefficient({ of: 'round', aspect, diameter: 0.1 }, role, 'face', flow),
      });
    }
    for (const flow of FLOWS) {
      sweeps.push({
        quantity: 'coefficient of a round member by aspect',
        held: `${role}, flow ${flow}`,
        ...aspects,
        value: (aspect) => coefficient({ of: 'round', aspect, diameter: 0.1 }, role, 'face', flow),
      });
    }
    for (const sides of SIDES) {
      for (const aspect of [7, 60]) {
        sweeps.push({
          quantity: 'coefficient of a pole by flow',
          held: `${role}, ${sides} sides, aspect ${aspect}`,
          ...flows,
          value: (flow) => coefficient({ of: 'pole', sides, aspect, width: 0.1 }, role, 'face', flow),
        });
      }
      for (const flow of FLOWS) {
        sweeps.push({
          quantity: 'coefficient of a pole by aspect',
          held: `${role}, ${sides} sides, flow ${flow}`,
          ...aspects,
          value: (aspect) => coefficient({ of: 'pole', sides, aspect, width: 0.1 }, role, 'face', flow),
        });
      }
    }
    for (const direction of DIRECTIONS) {
      for (const faces of [3, 4] as const) {
        const on = `${role}, ${faces} faces, wind on a ${direction}`;
        for (const flow of FLOWS) {
          sweeps.push({
            quantity: 'coefficient of a lattice by round share',
            held: `${on}, flow ${flow}`,
            ...solidities,
            value: (roundShare) => coefficient(face({ faces, roundShare }), role, direction, flow),
          });
          for (const roundShare of [0, 0.5, 1]) {
            sweeps.push({
              quantity: 'coefficient of a lattice by solidity',
              held: `${on}, round share ${roundShare}, flow ${flow}`,
              ...solidities,
              value: (solidity) => coefficient(face({ faces, solidity, roundShare }), role, direction, flow),
            });
          }
        }
        for (const solidity of [0.1, 0.3, 0.7]) {
          sweeps.push({
            quantity: 'coefficient of a lattice by flow',
            held: `${on}, solidity ${solidity}`,
            ...flows,
            value: (flow) => coefficient(face({ faces, solidity }), role, direction, flow),
          });
        }
      }
    }
  }
  return sweeps;
}

/** Force per metre on something slender, as a check adds it up: the rules together, coefficient and flow of one wind. */
function forceSweeps(method: Method): Sweep[] {
  const force = (wind: Wind, rule: DragRule, role: Role, z: number, diameter: number) => {
    const { byFlow } = wind.forceCoefficient(rule, role, 'face');
    const coefficient = byFlow.at(wind.flow(z, diameter));
    return wind.pressure(z) * wind.gustEffect() * wind.forceDirectionFactor * coefficient * diameter;
  };
  const tube = (diameter: number): DragRule => ({ of: 'round', aspect: 60, diameter });
  return ROLES.flatMap((role) =>
    [false, true].flatMap((actual): Sweep[] => {
      const wind = method.wind({ ...OPEN, actual });
      const at = (speed: number) => method.wind({ ...OPEN, actual, speed });
      const held = `${role}${actual ? ', actual gust' : ''}`;
      return [
        {
          quantity: 'force on a slender tube by speed',
          held,
          low: 1,
          high: 120,
          value: (speed) => force(at(speed), tube(0.12), role, 12, 0.12),
        },
        {
          quantity: 'force on a slender tube by diameter',
          held,
          low: 0.005,
          high: 0.6,
          value: (diameter) => force(wind, tube(diameter), role, 12, diameter),
        },
        {
          quantity: 'force on a thick tube by height',
          held,
          low: 0,
          high: 300,
          value: (z) => force(wind, tube(0.3), role, z, 0.3),
        },
        ...SIDES.map((sides): Sweep => {
          const pole = (speed: number) =>
            method.wind({ ...OPEN, actual, speed, windStructure: { ...POLE, sides, frequency: 0.6 } });
          return {
            quantity: 'force on a slender pole by speed',
            held: `${held}, ${sides} sides`,
            low: 2,
            high: 120,
            value: (speed) => force(pole(speed), { of: 'pole', sides, aspect: 60, width: 0.2 }, role, 12, 0.2),
          };
        }),
      ];
    }),
  );
}

function speedSweeps(method: Method): Sweep[] {
  const speeds = { low: 6, high: 150, held: '' };
  const at = (speed: number, changed: Partial<WindConditions> = {}) => method.wind({ ...OPEN, ...changed, speed });
  return [
    { quantity: 'pressure by speed', ...speeds, value: (V) => at(V).pressure(10) },
    { quantity: 'pressure of an actual gust by speed', ...speeds, value: (V) => at(V, { actual: true }).pressure(10) },
    {
      quantity: 'pressure of a strength-level map by speed',
      ...speeds,
      value: (V) => at(V, { speedLevel: 'strength' }).pressure(10),
    },
    { quantity: 'flow by speed', ...speeds, value: (V) => at(V).flow(10, 0.1) },
    { quantity: 'actual gust by speed', ...speeds, value: (V) => method.actualGust(V) },
  ];
}
