import { z } from 'zod';
import { component } from '../documents/component.ts';

const number = (description: string) => z.number().meta({ description });
const words = (description: string) => z.string().meta({ description });

export const quantitySchema = component(
  'Quantity',
  z.object({ value: z.number(), unit: z.string() }).meta({ description: 'A number with its unit.' }),
);

const speedWithBasis = component(
  'SpeedWithBasis',
  z
    .object({ value: z.number(), unit: z.string(), basis: words('Which kind of speed.') })
    .meta({ description: 'A speed is never without its kind.' }),
);

const headingSchema = component(
  'Headings',
  z
    .object({
      fixed: z.exactOptional(quantitySchema),
      turning: z.exactOptional(quantitySchema),
    })
    .meta({
      description:
        'Wind heading that is worst for what faces its own way, and heading against the rotator that is worst for what turns; the opposite ones are as bad.',
    }),
);

export const verdictSchema = z
  .enum(['within', 'low-margin', 'over', 'open'])
  .meta({ description: 'within: the wanted margin is left; thin: inside; over: beyond the rating; not-shown.' });

const checkSchema = component(
  'Link',
  z
    .object({
      id: z.string(),
      title: z.string(),
      verdict: verdictSchema,
      says: z.string(),
      because: z.exactOptional(words('Why it is not shown.')),
      needs: z.array(z.string()).meta({ description: 'JSON pointers to what is missing.' }),
      ratio: z.exactOptional(number('Demand over capacity, every open question at its bad end.')),
      ratioRange: z.exactOptional(z.array(z.number()).meta({ description: 'Use at the good and at the bad end.' })),
      margin: z.exactOptional(number('1 − use.')),
      demand: z.exactOptional(z.object({ of: z.string(), value: z.number(), unit: z.string() })),
      capacity: z.exactOptional(quantitySchema),
      where: z.exactOptional(quantitySchema),
      along: z.exactOptional(quantitySchema),
      ratioWithoutWind: z.exactOptional(number('Use without any wind, where that leaves less than the wanted margin.')),
      heading: z.exactOptional(headingSchema),
      over: z.exactOptional(
        z
          .object({
            ratio: z.number(),
            demand: z.object({ of: z.string(), value: z.number(), unit: z.string() }),
            capacity: quantitySchema,
            where: z.exactOptional(quantitySchema),
          })
          .meta({ description: 'Where the verdict is over: what says so, if a larger use elsewhere says less.' }),
      ),
      torque: z.exactOptional(
        z
          .object({
            heldBy: z.enum(['brake', 'turning-torque']),
            turnsWith: z.exactOptional(quantitySchema),
            turnsUpTo: z.exactOptional(quantitySchema),
          })
          .meta({ description: 'Of a rotator: what holds it, and up to which actual gust it can turn.' }),
      ),
      holdsTo: z.exactOptional(
        z
          .object({ gust: quantitySchema, design: speedWithBasis })
          .meta({ description: 'Actual 3-second gust at 10 m in the open, and design speed, at use 1.' }),
      ),
    })
    .meta({ description: 'One thing that could give first.' }),
);

const questionSchema = component(
  'Question',
  z
    .object({
      at: words('JSON pointer to the field that would answer it.'),
      ask: z.string(),
      taken: words('The reading that was taken.'),
      ratioIf: z.record(z.string(), z.number()).meta({ description: 'The tower’s use if only this were answered so.' }),
      says: z.string(),
    })
    .meta({ description: 'Something to find out, ranked by what it would change.' }),
);

export const cautionSchema = component(
  'Caution',
  z.object({
    code: z.string(),
    severity: z.enum(['verdict', 'line', 'standing']),
    says: z.string(),
    action: words('What to do.'),
    at: z.exactOptional(words('JSON pointer to what it is about.')),
  }),
);

export const querySchema = component(
  'Query',
  z
    .object({ pointer: z.string(), code: z.exactOptional(z.string()), says: z.string() })
    .meta({ description: 'Something readable that deserves a second look.' }),
);

const stepSchema = component(
  'Step',
  z
    .object({
      about: z.array(z.string()),
      formula: words('Id in /v1/formulas.'),
      title: z.string(),
      symbol: z.string(),
      expression: z.string(),
      inputs: z.array(
        z.object({
          symbol: z.string(),
          meaning: z.string(),
          value: z.union([z.number(), z.array(z.number())]),
          unit: z.string(),
        }),
      ),
      value: z.number(),
      unit: z.string(),
      source: words('Id in /v1/sources.'),
      clause: z.string(),
      known: z.string(),
      knownInWords: z.string(),
      note: z.exactOptional(z.string()),
    })
    .meta({ description: 'One line of the working: it re-evaluates from its inputs.' }),
);
export const workingSchema = z.array(stepSchema).meta({ description: 'Every step behind the answer.' });

const askedAndShown = {
  asked: z.number(),
  shown: z.exactOptional(number('By the rating that shows most there; absent where none does.')),
  ratio: z.exactOptional(number('Asked over shown, every open question at its bad end.')),
  ratioAtBest: z.exactOptional(number('The same at the good end.')),
};

const levelRowSchema = component(
  'Level',
  z
    .object({
      height: z.number(),
      section: z.string(),
      place: z.enum(['foot', 'joint', 'section', 'top-couple']),
      shear: number('Horizontal force of all above; in the couple of the mast that of its bearing.'),
      torsion: number('Of what hangs off the axis.'),
      sideways: z.object({ of: z.enum(['shear', 'braces']), ...askedAndShown }).meta({
        description: 'Shear; or the force in the braces: shear less what sloping legs carry, with the twist.',
      }),
      bending: z.object(askedAndShown),
      byWindRatio: z.boolean().meta({ description: 'The wind on the tower itself, whose drag is not known, decides.' }),
    })
    .meta({ description: 'One level of the tower, in the units of the levels.' }),
);

const windLoadRowSchema = component(
  'LedgerRow',
  z
    .object({
      name: z.string(),
      at: z.string(),
      kind: z.string(),
      low: z.number(),
      high: z.number(),
      front: number('Effective projected area, wind along its heading.'),
      side: number('Effective projected area, wind across its heading.'),
      coefficient: z.number(),
      facing: number('Effective area at the ledger’s heading.'),
      pressure: number('Velocity pressure, mean over its area.'),
      gustEffect: z.number(),
      force: number('level × pressure × gustEffect × facing (× direction factor where the method puts it there).'),
      momentAtBase: z.number(),
      momentAtTop: z.number(),
    })
    .meta({ description: 'One thing the wind touches, in the units of the ledger.' }),
);

const forcesSchema = z.object({ shear: quantitySchema, moment: quantitySchema });

const spreadSchema = component(
  'Spread',
  z
    .object({
      says: z.string(),
      rows: z.array(
        z.object({
          method: z.string(),
          title: z.string(),
          speed: speedWithBasis,
          verdict: verdictSchema.meta({ description: 'Of the tower.' }),
          ratio: z.exactOptional(number('Use of the tower.')),
          ratioRange: z.exactOptional(z.array(z.number()).meta({ description: 'Use at the good and at the bad end.' })),
          holdsToGust: z.exactOptional(quantitySchema),
          largest: z.exactOptional(
            z
              .object({ check: words('Id of the link.'), ratio: z.number() })
              .meta({ description: 'The link with the largest use.' }),
          ),
          moment: quantitySchema,
          factors: z.record(z.string(), z.number()).meta({
            description:
              'Moment at the foot over that by the plan’s own method, as a product of factors at the tower’s top; shapes is what remains.',
          }),
        }),
      ),
      refused: z.array(z.object({ method: z.string(), why: z.string() })),
      cause: z.exactOptional(
        z
          .object({ method: z.string(), factor: z.string(), ratio: z.number() })
          .meta({ description: 'For the method farthest from the plan’s own: the factor that differs most.' }),
      ),
    })
    .meta({ description: 'What differs by convention alone; what differs by gaps in the plan is in useRange.' }),
);

const sensitivitySchema = component(
  'Sensitivity',
  z
    .object({
      says: z.string(),
      ofCheck: words('Which link.'),
      ratio: number('Its use with nothing changed.'),
      rows: z
        .array(
          z.object({
            of: words(
              'speed, gust-effect, ground, hill, load-height, or the open question that is answered: rating-method, rating-exposure, rating-terrain, rating-class, rating-area-kind, load-area-kind, tower-members.',
            ),
            at: words('JSON pointer of what is changed.'),
            says: z.string(),
            times: z.exactOptional(number('speed, gust-effect: times what it is.')),
            to: z.exactOptional(words('ground, hill, open questions: what it is changed to.')),
            by: z.exactOptional(quantitySchema.meta({ description: 'load-height: how far it is moved, upwards.' })),
            ratio: number('Use with this change alone.'),
            difference: number('Use with this change less use without.'),
            elasticity: z.exactOptional(number('Per cent of use for each per cent of change, for small changes.')),
          }),
        )
        .meta({ description: 'Those that move the use most first.' }),
    })
    .meta({ description: 'What the use of the weakest link hangs on; absent where there is no use to move.' }),
);

const remedyOutcome = {
  says: z.string(),
  by: z.exactOptional(quantitySchema.meta({ description: 'load-lower, mast-shorter: how far.' })),
  times: z.exactOptional(number('load-smaller: share of its area or force.')),
  laid: z.exactOptional(words('lines-laid: how.')),
  tube: z.exactOptional(
    z.object({
      nominal: words('Trade name of the size, in inches.'),
      schedule: z.number(),
      outside: quantitySchema,
      wall: quantitySchema,
    }),
  ),
  ratio: z.exactOptional(number('Use of the link with this change; absent where the link went with its load.')),
  verdict: z.exactOptional(verdictSchema.meta({ description: 'Of the link with this change.' })),
  holdsToGust: z.exactOptional(quantitySchema.meta({ description: 'Actual gust to which the link then holds.' })),
  next: z.exactOptional(
    z
      .object({ check: words('Id of the link.'), gust: quantitySchema })
      .meta({ description: 'The link that then holds to the lowest gust.' }),
  ),
  planVerdict: verdictSchema.meta({ description: 'Of the whole changed plan.' }),
  onlyMoves: z.boolean().meta({ description: 'Another link then holds to hardly more than the weakest did before.' }),
};

const remediesSchema = component(
  'Remedies',
  z
    .object({
      says: z.string(),
      ofCheck: words('Which link.'),
      ratio: number('Its use as it is.'),
      verdict: verdictSchema.meta({ description: 'Of the link as it is.' }),
      holdsToGust: z.exactOptional(quantitySchema.meta({ description: 'Actual gust to which it holds as it is.' })),
      canBeLowered: z.boolean().meta({ description: 'It has a hinge or telescopes.' }),
      rows: z
        .array(
          z.object({
            of: words(
              'load-lower, load-off, load-to-axis, load-smaller, mast-shorter, mast-larger, lines-laid, line-off: what is changed.',
            ),
            at: z.array(z.string()).meta({ description: 'JSON pointers of what is changed.' }),
            ...remedyOutcome,
            also: z
              .array(z.object(remedyOutcome))
              .meta({ description: 'load-lower: less far or farther; mast-larger: the lightest tube that is within.' }),
          }),
        )
        .meta({
          description: 'At most three, each of another kind, the best first; each is the answer to the changed plan.',
        }),
    })
    .meta({ description: 'What would help the weakest link; absent where no link has a proven use.' }),
);

const chanceSchema = component(
  'Chance',
  z
    .object({
      ofCheck: words('Which link.'),
      gust: quantitySchema,
      years: number('For how many years.'),
      perYear: z.array(z.number()).meta({ description: 'Lowest and highest chance in a year.' }),
      overYears: z.array(z.number()).meta({ description: 'Lowest and highest chance in all the years.' }),
      counted: z.exactOptional(
        z
          .object({ reached: z.number(), years: z.number() })
          .meta({ description: 'In how many years of the record the gust was reached.' }),
      ),
      byMethod: z.array(
        z.object({
          method: words('gumbel, heavier-tail, two-kinds; likelihood, moments; chart-line, chart-pair.'),
          through: z.exactOptional(
            z.array(z.number()).meta({ description: 'Of a line through two values of the chart: their years.' }),
          ),
          location: z.exactOptional(quantitySchema),
          scale: z.exactOptional(quantitySchema),
          shape: z.exactOptional(z.number().meta({ description: 'Above 0 the tail is heavier than Gumbel’s.' })),
          fiftyYears: z.exactOptional(quantitySchema),
          fiftyYearsError: z.exactOptional(quantitySchema),
          perYear: z.array(z.number()).meta({ description: 'Lowest and highest chance in a year by this method.' }),
          inBand: z.boolean().meta({ description: 'The band counts it; else it stands for comparison.' }),
        }),
      ),
      says: z.string(),
    })
    .meta({
      description:
        'Chance of the actual gust a link holds to, from whatever direction: a 90 % band of yearly maxima, or how far a chart disagrees.',
    }),
);

const hillSchema = component(
  'Hill',
  z
    .object({
      says: z.string(),
      counts: z.boolean(),
      factor: number('On the pressure at the top of the tower, as used.'),
      wouldBe: number('The same if the hill counted.'),
      height: quantitySchema,
      conditions: z.array(
        z.object({
          condition: words(
            'too-gentle, too-low, not-isolated, lower-half, beyond-reach: what it is called when it fails.',
          ),
          holds: z.exactOptional(z.boolean()),
          says: z.string(),
        }),
      ),
      profile: z
        .array(z.object({ distance: quantitySchema, factor: z.number(), here: z.boolean() }))
        .meta({ description: 'Along the slope, upwind of the crest negative.' }),
    })
    .meta({ description: 'What the hill is to the method.' }),
);

const foundationSchema = component(
  'Foundation',
  z
    .object({
      kind: z.string(),
      says: z.string(),
      shear: quantitySchema,
      moment: quantitySchema,
      weight: z.exactOptional(quantitySchema),
      block: z.exactOptional(
        z.object({
          weight: quantitySchema,
          density: quantitySchema,
          momentAtUnderside: quantitySchema,
          overturning: number('Moment over 0.6 of what holds: 0.6D + 0.6W.'),
          olderOverturning: number('1.5 times the moment over what holds.'),
          toePressure: z.exactOptional(quantitySchema),
          contactShare: z.exactOptional(number('Share of the underside that is pressed.')),
          bearing: z.exactOptional(number('Largest pressure over what the soil may carry.')),
        }),
      ),
      pier: z.exactOptional(z.object({ required: quantitySchema, given: quantitySchema, depthCapped: z.boolean() })),
      notChecked: z.array(z.string()),
    })
    .meta({ description: 'What the footing does under the nominal load at the foot.' }),
);

const raisingRow = z.object({
  angle: quantitySchema,
  state: words('pull, push, balanced, falls-on, cannot-hold, dead-point.'),
  force: z.exactOptional(quantitySchema),
  hinge: z.exactOptional(quantitySchema),
  length: quantitySchema,
});

const gustOnTheWay = z
  .object({ gust: quantitySchema, angle: quantitySchema })
  .meta({ description: 'Actual gust that brings the gear to its working load, and the angle of the tower.' });

const raisingSchema = component(
  'Raising',
  z
    .object({
      says: z.string(),
      rows: z.array(raisingRow),
      worst: z.exactOptional(raisingRow),
      worstHinge: z.exactOptional(raisingRow),
      balance: z.exactOptional(quantitySchema),
      deadPoint: z.exactOptional(quantitySchema),
      holdBack: z.exactOptional(z.object({ angle: quantitySchema, moment: quantitySchema })),
      rise: z.exactOptional(quantitySchema),
      work: z.exactOptional(quantitySchema),
      workingLoad: z.exactOptional(quantitySchema),
      gust: z.exactOptional(gustOnTheWay),
      gustsAt: z.exactOptional(z.array(gustOnTheWay).meta({ description: 'Just off the ground, and half-way.' })),
      lyingWind: z.exactOptional(
        z.object({ gust: quantitySchema, where: quantitySchema, forecast: z.exactOptional(quantitySchema) }).meta({
          description:
            'Actual gust across the lying tower that, with its own weight, its rating shows; what decides; and the forecast gust that leaves the wanted margin.',
        }),
      ),
      handling: z.exactOptional(
        z.object({
          best: z.string(),
          mastAtLeast: quantitySchema,
          clearance: quantitySchema,
          antennas: z.array(z.object({ name: z.string(), clearance: quantitySchema, workingHeight: quantitySchema })),
        }),
      ),
    })
    .meta({ description: 'Raising and lowering of a hinged tower, and what lies how high above the ground then.' }),
);

export const answerSchema = component(
  'Check',
  z
    .object({
      verdict: verdictSchema,
      soFar: z.exactOptional(verdictSchema),
      weakest: z.exactOptional(words('Id of the link that holds to the lowest gust.')),
      says: z.string(),
      checks: z.array(checkSchema),
      toFindOut: z.array(questionSchema),
      alsoOpen: number('Loads of unsaid kind that are not asked about one by one.'),
      cautions: z.array(cautionSchema),
      notCovered: z.array(z.string()),
      design: z.object({
        method: z.string(),
        title: z.string(),
        speed: speedWithBasis,
        exposure: z.exactOptional(words('Ground upwind; terrain by EN 1991-1-4.')),
        terrain: z.exactOptional(words('Ground upwind by EN 1991-1-4.')),
        speedLevels: z.exactOptional(
          z.object({ strength: quantitySchema, nominal: quantitySchema }).meta({
            description: 'The same wind as a 3-second gust at both levels; none where the method takes a mean.',
          }),
        ),
        riskCategory: words('As given, or II where the plan does not say.'),
        directionFactor: z.number(),
        directionFactorInForce: number(
          'The direction factor where it stands in the force, not in the pressure; else 1.',
        ),
        importance: z.number(),
        elevationFactor: z.number(),
        gustEffect: z.number(),
        level: number('Brings every force to the allowable level.'),
      }),
      windLoads: z.object({
        units: z.object({
          height: z.string(),
          area: z.string(),
          pressure: z.string(),
          force: z.string(),
          moment: z.string(),
        }),
        rows: z.array(windLoadRowSchema),
        total: z.object({ force: z.number(), momentAtBase: z.number(), momentAtTop: z.number() }),
        heading: headingSchema,
        direction: z.exactOptional(words('face or corner: how the wind meets the tower itself, where that matters.')),
      }),
      levels: z
        .object({
          units: z.object({ height: z.string(), force: z.string(), moment: z.string() }),
          rows: z.array(levelRowSchema),
        })
        .meta({ description: 'Every level at which the tower is compared, from the top down.' }),
      wind: z.array(
        z.object({
          height: quantitySchema,
          exposureCoefficient: z.number(),
          topographicFactor: z.number(),
          pressure: quantitySchema,
          speed: quantitySchema,
        }),
      ),
      hill: z.exactOptional(hillSchema),
      heights: z.object({ overall: quantitySchema, tower: quantitySchema, mast: z.exactOptional(quantitySchema) }),
      turning: z
        .array(
          z.object({
            name: z.string(),
            at: words('JSON pointer to it.'),
            height: quantitySchema,
            radius: z.exactOptional(quantitySchema),
          }),
        )
        .meta({ description: 'Circles swept by what turns; without a radius where its size is not told.' }),
      reactions: z.object({
        allowable: forcesSchema,
        nominal: forcesSchema,
        strength: z.exactOptional(forcesSchema),
        steady: forcesSchema.meta({
          description:
            'Pull of wires and weight off the axis, within the forces above: once, at strength level 1.2 times (EN 1991-1-4: 1.35).',
        }),
        supportedAbove: z
          .boolean()
          .meta({ description: 'Guys or brackets take part of these forces; they are given as if nothing did.' }),
        weight: z.exactOptional(quantitySchema),
        legs: z.exactOptional(
          z
            .object({
              uplift: z.exactOptional(quantitySchema),
              upliftWithoutWeight: quantitySchema,
              push: z.exactOptional(quantitySchema),
              byOutsideWidth: z.exactOptional(z.boolean()).meta({
                description:
                  'true where the thickness of the legs is not told: they stand closer than the face is wide.',
              }),
            })
            .meta({
              description:
                'Of one leg of a lattice that stands by itself, at the nominal load of foundations, worst heading: its pull with 0.6 of the weight against it (below zero it still presses), with none, and its push. Shown; bolts and concrete are not checked.',
            }),
        ),
        bracketPull: z.exactOptional(quantitySchema).meta({
          description:
            'Of a bracketed tower: pull on its highest bracket, at most, at the nominal load of foundations, pull of wires included. Shown; the house is not checked.',
        }),
      }),
      mast: z.exactOptional(
        z
          .object({
            force: quantitySchema,
            atBearing: z.exactOptional(quantitySchema),
            atFoot: quantitySchema,
            clampMoment: z.exactOptional(quantitySchema).meta({
              description: 'Without a bearing: the moment at its foot, which what holds it there takes alone.',
            }),
            torque: quantitySchema,
            bending: z.exactOptional(z.object({ moment: quantitySchema, height: quantitySchema })),
            tipMovement: z.exactOptional(quantitySchema),
            weight: z.exactOptional(quantitySchema),
          })
          .meta({ description: 'What the mast does to what holds it, allowable level.' }),
      ),
      foundation: z.exactOptional(foundationSchema),
      raising: z.exactOptional(raisingSchema),
      lowerAt: z.exactOptional(
        z
          .object({
            gust: z.exactOptional(quantitySchema),
            ofCheck: z.string(),
            ratioWithoutWind: z.exactOptional(
              number('Its use without any wind, where that leaves less than the wanted margin.'),
            ),
            without: z.array(z.string()),
            withoutIce: z.boolean(),
            says: z.string(),
          })
          .meta({
            description:
              'Forecast gust at which to lower a tower that can be lowered; none where the margin is gone without any wind.',
          }),
      ),
      lowered: z.exactOptional(
        z
          .object({
            says: z.string(),
            top: quantitySchema,
            verdict: verdictSchema,
            clashes: z.array(z.string()),
            keepsTo: z.exactOptional(
              z.object({ gust: quantitySchema, ofCheck: z.string(), without: z.array(z.string()) }).meta({
                description: 'The forecast gust up to which it keeps the wanted margin so.',
              }),
            ),
            checks: z.array(
              z.object({
                id: z.string(),
                title: z.string(),
                verdict: verdictSchema,
                ratio: z.exactOptional(z.number()),
                holdsTo: z.exactOptional(quantitySchema),
              }),
            ),
          })
          .meta({ description: 'A tower whose sections slide, let down.' }),
      ),
      roomLeft: z.array(
        z.object({
          height: quantitySchema,
          area: quantitySchema,
          on: words('tower or mast.'),
          decidedBy: words('Id of the link that reaches the wanted margin first.'),
          of: z.array(z.string()).meta({ description: 'Ids of the links looked at.' }),
          without: z.array(z.string()).meta({ description: 'Ids of links that it would load and that are not shown.' }),
          says: z.string(),
        }),
      ),
      chance: z.exactOptional(
        z
          .array(chanceSchema)
          .meta({ description: 'Of every link that shows what it holds to; where a climate is given.' }),
      ),
      entryWarnings: z.array(querySchema),
      plan: z.unknown().meta({ description: 'The plan as read.' }),
      drawings: z.exactOptional(
        z.record(z.string(), z.string()).meta({ description: 'SVG by name; where `drawings` asks for them.' }),
      ),
      working: z.exactOptional(workingSchema),
      spread: z.exactOptional(spreadSchema),
      sensitivity: z.exactOptional(sensitivitySchema),
      remedies: z.exactOptional(remediesSchema),
      standardTubes: z.exactOptional(
        z
          .array(
            z.object({
              nominal: z.string(),
              schedule: z.number(),
              outside: quantitySchema,
              wall: quantitySchema,
              weight: quantitySchema,
              ratio: z.number(),
            }),
          )
          .meta({ description: 'With remedies: standard tubes that would do for the mast, the lightest first.' }),
      ),
    })
    .meta({ description: 'The whole answer to a plan.' }),
);
