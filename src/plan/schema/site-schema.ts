import { z } from 'zod';
import { siteMethodsWith } from '../../methods/index.ts';
import { EXPOSURES, type Hill, type RiskCategory, type SpeedBasis, TERRAINS } from '../../wind/index.ts';
import { choice, optional, quantity, remarks, yesOrNo } from './field-schemas.ts';

export const SPEED_BASES = [
  'gust3-strength',
  'gust3-nominal',
  'fastest-mile',
  'mean-1min',
  'mean-10min',
  'mean-hour',
] as const satisfies readonly SpeedBasis[];
export const RISK_CATEGORIES = ['I', 'II', 'III', 'IV'] as const satisfies readonly RiskCategory[];
const HILL_SHAPES = ['ridge', 'escarpment', 'round-hill'] as const satisfies readonly Hill['shape'][];

export const speedBasis = choice(SPEED_BASES, 'Which kind of speed it is');
export const exposure = choice(EXPOSURES, 'B houses or trees all round, C open country, D open water or flats upwind');
export const terrain = choice(
  TERRAINS,
  '0 sea, I lake or flat without obstacles, II open country, III villages, suburbs, forest, IV towns',
);
export const riskCategory = choice(RISK_CATEGORIES, 'Risk category (structure class)');

const BY_TERRAIN = siteMethodsWith(({ ground }) => ground.field === 'terrain');
const WITH_YEARS = siteMethodsWith(({ returnPeriod }) => returnPeriod.asked);
const ON_SPEED = siteMethodsWith(({ hill }) => hill?.factorOn === 'speed');

export const siteSchema = z
  .strictObject({
    wind: z
      .union([
        z.number(),
        z.string(),
        z.strictObject({
          speed: quantity('speed', 'Design wind speed'),
          basis: optional(speedBasis),
          years: optional(
            whole1to10000().meta({
              description: `${WITH_YEARS}: return period it is to be taken to; 50 when not given`,
            }),
          ),
          ...remarks,
        }),
      ])
      .meta({
        description:
          "Design wind speed [us mph, si m/s], or with its basis; without: the basis of the method's own maps",
      }),
    exposure: optional(exposure.meta({ description: `Ground upwind, for every method but ${BY_TERRAIN}` })),
    terrain: optional(terrain.meta({ description: `Ground upwind, for ${BY_TERRAIN}` })),
    riskCategory: optional(riskCategory),
    groundElevation: optional(quantity('length', 'Height of the ground above the sea')),
    hill: optional(
      z
        .strictObject({
          shape: choice(HILL_SHAPES, 'Shape of the hill'),
          height: quantity('length', 'Crest above the surroundings'),
          run: optional(quantity('length', 'Foot to crest; or halfLength')),
          halfLength: optional(quantity('length', 'Crest to half-way down, upwind; or run')),
          distance: quantity('length', 'From the crest to the tower'),
          side: choice(['upwind', 'downwind'], 'On which side of the crest the tower stands'),
          isolated: optional(
            yesOrNo('It stands alone and is twice as high as the ground within 2 miles; taken as true when not given'),
          ),
          ...remarks,
        })
        .meta({ description: 'A hill, ridge or escarpment; or topographicFactor' }),
    ),
    topographicFactor: optional(
      quantity(
        'share',
        `A topographic factor the county gives, on the pressure (${ON_SPEED}: the orography factor, on the speed); stands for the hill`,
      ),
    ),
    ice: optional(
      z.strictObject({
        thickness: quantity('diameter', 'Thickness of the ice'),
        gust: quantity('speed', 'Gust that goes with the ice, 3 s'),
        ...remarks,
      }),
    ),
    climate: optional(
      z
        .strictObject({
          returns: optional(
            z
              .array(z.tuple([whole1to10000(), quantity('speed', 'Speed')]))
              .min(2)
              .max(20)
              .meta({ description: '[[years, speed], …] from a chart' }),
          ),
          yearlyMax: optional(
            z
              .array(quantity('speed', 'Highest speed of a year'))
              .min(5)
              .max(200)
              .meta({ description: 'Highest speed of each year' }),
          ),
          basis: speedBasis.meta({
            description: 'How the winds were measured; gust3-strength is a figure of design, no wind',
          }),
          ...remarks,
        })
        .meta({
          description:
            'The strongest winds of the place, at 33 ft (10 m) over open ground, for chance; from a chart or from years of record',
        }),
    ),
    distances: optional(
      z.strictObject({
        powerLine: optional(quantity('length', 'Foot of the tower to the power line')),
        propertyLine: optional(quantity('length', 'Foot of the tower to the property line')),
        building: optional(quantity('length', 'Foot of the tower to the building')),
        ...remarks,
      }),
    ),
    ...remarks,
  })
  .meta({ description: 'Where it stands' });

function whole1to10000() {
  return z.number().gt(1).max(10_000).meta({ description: 'Years' });
}

export type SiteFields = z.output<typeof siteSchema>;
