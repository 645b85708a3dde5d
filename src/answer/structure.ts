import { z } from 'zod';
import { ROOM_PLACES } from '../margins/index.ts';
import { type Foundation, HELD_FAILURES, ORIENTATIONS, RAISING_STATES, SOIL_FACTS } from '../structure/index.ts';
import { namedCheckStateSchema, verdictSchema } from './checks.ts';
import {
  checkId,
  forcesSchema,
  headingsSchema,
  maybe,
  number,
  pointer,
  quantityOf,
  quantitySchema,
  words,
} from './quantities.ts';
import type { Described } from './settled.ts';

export const turningCircleSchema = z.object({
  name: z.string(),
  at: pointer('it in the plan.'),
  height: quantitySchema,
  radius: maybe('Absent where its size is not stated.'),
});

export const reactionsSchema = z
  .object({
    says: z.string(),
    allowable: forcesSchema,
    nominal: forcesSchema.meta({ description: 'For footings.' }),
    strength: z.exactOptional(forcesSchema.meta({ description: 'Where the method has a strength level.' })),
    heading: headingsSchema,
    atLargestShear: z
      .object({
        allowable: forcesSchema,
        nominal: forcesSchema,
        strength: z.exactOptional(forcesSchema),
        heading: headingsSchema,
      })
      .meta({
        description: 'The largest shear with its moment; the forces beside it are the largest moment with its shear.',
      }),
    torsion: z
      .object({ allowable: quantitySchema, nominal: quantitySchema, strength: z.exactOptional(quantitySchema) })
      .meta({ description: 'Largest torsion of what is off the axis, each load at its own worst heading.' }),
    withoutWind: forcesSchema.meta({
      description:
        'From wire tension and weight off the axis, within the forces above: once, at strength level 1.2 times (EN 1991-1-4: 1.35).',
    }),
    supportedAbove: z
      .boolean()
      .meta({ description: 'Guys or brackets take part of these forces; they are computed as if nothing did.' }),
    withoutOwnWind: z
      .boolean()
      .meta({ description: 'The wind on the tower itself is not known and not included in these forces.' }),
    weight: maybe('Tower and everything on it; absent where some weight is not given.'),
    legs: z.exactOptional(
      z
        .object({
          uplift: maybe('Uplift with 0.6 of the weight against it; below zero it still presses.'),
          upliftWithoutWeight: quantityOf('Uplift with no weight against it.'),
          push: maybe('Largest compression.'),
          byOutsideWidth: z.exactOptional(
            z.boolean().meta({
              description:
                'true where the thickness of the legs is not given: their true spacing is less than the face width.',
            }),
          ),
        })
        .meta({
          description:
            'Of one leg of a lattice without guys or brackets, nominal level, worst wind direction. Anchor bolts and concrete are not checked.',
        }),
    ),
    bracketPull: maybe(
      'Of a bracketed tower: largest pull on its highest bracket, nominal level, pull of wires included. The building is not checked.',
    ),
    guyed: z.exactOptional(
      z
        .object({
          says: z.string(),
          failure: z.exactOptional(
            z.enum(HELD_FAILURES).meta({ description: 'One or more of the cases tried gave no forces, for this.' }),
          ),
          levels: z.array(
            z.object({
              height: quantitySchema,
              tension: quantityOf('Of the guy that is drawn most, at the tower.'),
              breaking: quantityOf('Breaking strength of its strand; of the weakest grade where that is not given.'),
              anchorLevel: quantityOf('Horizontal force on one anchor.'),
              anchorUp: quantityOf('Uplift on one anchor.'),
            }),
          ),
          thrust: quantityOf('Compression at the base.'),
          shear: quantityOf('Shear at the base.'),
          moment: quantityOf('Moment at the base if it is held there; on a hinge there is none.'),
          movement: quantityOf('Of the top of the tower.'),
        })
        .meta({
          description:
            'Of a tower on guys, nominal level, each figure at its own worst; absent where guys, walls or weights are not all given. Anchors are not checked.',
        }),
    ),
  })
  .meta({
    id: 'Reactions',
    description: 'Forces at the base of the tower: largest moment with its shear, at the headings of the wind loads.',
  });
export type ReactionsAnswer = Described<typeof reactionsSchema>;

export const swaySchema = z
  .object({
    says: z.string(),
    gust: quantityOf('Actual gust in which it moves so far.'),
    movement: quantityOf('Of the top of the tower.'),
    lean: number('Of the top, in radians.'),
    leaning: number(
      'What the weight as it leans adds to the moment at the base, as a share of it; not included in the checks.',
    ),
  })
  .meta({
    id: 'Sway',
    description: 'Of a tower that stands by itself, where walls and weights are all given. Not checked.',
  });

export const iceSchema = z
  .object({
    says: z.string(),
    level: number('Share of the weight of ice that counts at the allowable level.'),
    weight: quantityOf('Of all ice, as it lies.'),
    byHeight: z
      .array(
        z.object({
          height: quantitySchema,
          thickness: quantitySchema,
          weightAbove: quantityOf('Of all ice above that height.'),
        }),
      )
      .meta({ description: 'From the top down.' }),
    rows: z
      .array(
        z.object({
          name: z.string(),
          at: pointer('it in the plan.'),
          low: quantitySchema,
          high: quantitySchema,
          thickness: quantityOf('In its middle.'),
          weight: quantitySchema,
        }),
      )
      .meta({ description: 'By what it lies on.' }),
    notGiven: z.array(z.string()).meta({ description: 'Pointers to weights with ice that only the plan could tell.' }),
  })
  .meta({ id: 'Ice', description: 'Thickness and weight of ice, where ice is given and the standard has a rule.' });
export type IceReport = Described<typeof iceSchema>;

export const mastSchema = z
  .object({
    force: quantitySchema,
    atBearing: z.exactOptional(quantitySchema),
    atLowerEnd: quantitySchema,
    clampMoment: maybe('Without a bearing: the moment at its lower end, all of it on what supports it there.'),
    torque: quantitySchema,
    bending: z.exactOptional(z.object({ moment: quantitySchema, height: quantitySchema })),
    tipMovement: z.exactOptional(quantitySchema),
    weight: z.exactOptional(quantitySchema),
  })
  .meta({ id: 'Mast', description: 'Forces of the mast on its supports, allowable level.' });
export type MastForces = Described<typeof mastSchema>;

/** What a footing may be. */
const FOUNDATION_KINDS = ['block', 'pier', 'manufacturer'] as const satisfies readonly Foundation['kind'][];

export const foundationSchema = z
  .object({
    kind: z.enum(FOUNDATION_KINDS),
    says: z.string(),
    shear: quantitySchema,
    moment: quantitySchema,
    weight: z.exactOptional(quantitySchema),
    leastWeight: maybe('Where some weights are not given: those that are, which resist overturning.'),
    block: z.exactOptional(
      z.object({
        weight: quantitySchema,
        density: quantitySchema,
        momentAtUnderside: quantitySchema,
        overturning: number('Moment over 0.6 of the righting moment of the dead load: 0.6D + 0.6W.'),
        olderOverturning: number('1.5 times the moment over the righting moment.'),
        toePressure: z.exactOptional(quantitySchema),
        contactShare: z.exactOptional(number('Share of the underside in contact.')),
        toePressureRatio: z.exactOptional(number('Largest pressure over the bearing capacity of the soil.')),
      }),
    ),
    pier: z.exactOptional(z.object({ required: quantitySchema, given: quantitySchema, depthCapped: z.boolean() })),
    soil: z
      .object({
        base: z.exactOptional(number('Ratio by the soil under the base alone.')),
        sides: z.exactOptional(number('Ratio by the soil at the sides alone.')),
        both: z.exactOptional(number('Ratio by both together, where that counts.')),
        ratioIf: z
          .array(z.object({ fact: z.enum(SOIL_FACTS), ratio: z.number() }))
          .meta({ description: 'The ratio if one fact alone were answered in favour of the footing.' }),
      })
      .meta({ description: 'By what the concrete holds, with what is open answered against it.' }),
    notChecked: z.array(z.string()),
  })
  .meta({ id: 'Foundation', description: 'The footing under the nominal load at the base.' });
export type FoundationReport = Described<typeof foundationSchema>;

const raisingRowSchema = z.object({
  angle: quantitySchema,
  state: z.enum(RAISING_STATES),
  force: maybe('Of the gear: pull positive, push negative.'),
  hinge: z.exactOptional(quantitySchema),
  length: quantitySchema,
});
export type RaisingRowReport = Described<typeof raisingRowSchema>;

const gustOnTheWaySchema = z.object({ gust: quantitySchema, angle: quantitySchema }).meta({
  description: 'Actual gust that brings the gear to its working load, and the angle of the tower.',
});

export const raisingSchema = z
  .object({
    says: z.string(),
    rows: z.array(raisingRowSchema),
    worst: z.exactOptional(raisingRowSchema),
    worstHinge: z.exactOptional(raisingRowSchema),
    balance: z.exactOptional(quantitySchema),
    deadPoint: z.exactOptional(quantitySchema),
    holdBack: z.exactOptional(z.object({ angle: quantitySchema, moment: quantitySchema })),
    rise: z.exactOptional(quantitySchema),
    work: z.exactOptional(quantitySchema),
    workingLoad: z.exactOptional(quantitySchema),
    gust: z.exactOptional(gustOnTheWaySchema),
    gustsAt: z.exactOptional(z.array(gustOnTheWaySchema).meta({ description: 'Just off the ground, and half-way.' })),
    lyingWind: z.exactOptional(
      z
        .object({
          gust: quantitySchema,
          where: quantitySchema,
          forecast: maybe('Forecast gust that leaves the margin set.'),
        })
        .meta({
          description:
            'Actual gust across the tower lowered flat at which, with its own weight, its ratio reaches 1; and the height that governs.',
        }),
    ),
    handling: z.exactOptional(
      z.object({
        best: z.enum(ORIENTATIONS),
        mastAtLeast: quantitySchema,
        clearance: quantitySchema,
        antennas: z.array(z.object({ name: z.string(), clearance: quantitySchema, workingHeight: quantitySchema })),
      }),
    ),
    nestedTop: maybe('Height of its top upright, nested: so a telescoping tower is raised.'),
  })
  .meta({ id: 'Raising', description: 'Raising and lowering of a hinged tower, and heights above ground then.' });
export type RaisingReport = Described<typeof raisingSchema>;

export const lowerAtSchema = z
  .object({
    gust: maybe('Forecast gust; absent where the margin is gone without wind, or no check has a gust.'),
    ofCheck: z.exactOptional(checkId(' that governs, where one has a gust')),
    ratioWithoutWind: z.exactOptional(number('Its ratio without wind, where that is above the target.')),
    without: z.array(z.string()).meta({ description: 'Ids of open checks, which are not included.' }),
    overWithoutGust: z
      .array(z.string())
      .meta({ description: 'Ids of checks above 1, over or open, of which no gust is known: lower before.' }),
    withoutIce: z.boolean(),
    says: z.string(),
  })
  .meta({ id: 'LowerAt', description: 'When to lower a tower that can be lowered.' });

export const loweredSchema = z
  .object({
    says: z.string(),
    top: quantitySchema,
    verdict: verdictSchema,
    clashes: z.array(z.string()),
    keepsTo: z.exactOptional(
      z
        .object({
          gust: quantitySchema,
          ofCheck: z.string(),
          without: z.array(z.string()),
          overWithoutGust: z.array(z.string()),
        })
        .meta({
          description: 'Forecast gust up to which it keeps the margin set.',
        }),
    ),
    checks: z.array(namedCheckStateSchema),
  })
  .meta({ id: 'Lowered', description: 'A telescoping tower, lowered.' });
export type LoweredAnswer = Described<typeof loweredSchema>;

export const roomLeftSchema = z
  .array(
    z.object({
      height: quantitySchema,
      area: quantityOf('Effective area; negative where the margin set is exceeded already.'),
      on: z.enum(ROOM_PLACES),
      decidedBy: checkId(' that reaches the margin set first'),
      of: z.array(z.string()).meta({ description: 'Ids of the checks compared.' }),
      without: z.array(z.string()).meta({ description: 'Ids of open checks that it would load.' }),
      notCovered: z.array(z.string()).meta({
        description:
          'Ids of decided checks that it would load too, such as those with ice. The area does not keep them.',
      }),
      says: words('In a sentence.'),
    }),
  )
  .meta({ description: 'Effective area that can be added with the margin set, by height.' });
