import { DISH_COEFFICIENT, OPEN_MESH_COEFFICIENT } from '../areas/index.ts';
import { type UnitSystem, withArticle } from '../foundation/index.ts';
import type { Caution, CautionCode, Check } from '../margins/index.ts';
import type { SpeedBasis } from '../wind/index.ts';
import { placeOfFall, verbOf, WORDS_FOR_BASIS } from './choice-words.ts';
import { figures, listed, sentence, standardHeight } from './quantity.ts';

/** A caution, or several of one code that are said in one sentence. */
export interface SaidCaution extends Caution {
  /** What it is about, where it is about several. */
  readonly names?: readonly string[];
}

interface CautionWords {
  readonly says: (caution: SaidCaution, system: UnitSystem) => string;
  readonly action: string | ((caution: SaidCaution, system: UnitSystem) => string);
}

const basis = (caution: Caution) => withArticle(WORDS_FOR_BASIS[caution.word as SpeedBasis]);
const thing = ({ of, names = [of ?? 'it'] }: SaidCaution) => sentence(namesListed(names));
/** A sentence with more names is not read. */
const MOST_NAMES = 12;
const namesListed = (names: readonly string[]) =>
  names.length > MOST_NAMES
    ? `${names.slice(0, MOST_NAMES).join(', ')} and ${names.length - MOST_NAMES} more`
    : listed(names);
const pulled = ({ of = 'the wire', names = [of] }: SaidCaution) => namesListed(names);
/** The words for one thing, or for several. */
const byCount = ({ names = [] }: SaidCaution, one: string, several: string) => (names.length > 1 ? several : one);
/** Links by the first word of their id; what follows it is the owner's name. */
const LINK_NAMES: Readonly<Record<string, string>> = {
  tower: 'tower',
  'tower-top': 'top of the tower',
  ice: 'tower with ice',
  mast: 'mast',
  bearing: 'bearing',
  rotator: 'rotator',
  weight: 'weight aloft',
  foundation: 'footing',
  raising: 'raising gear',
  lying: 'tower lying down',
  hoist: 'hoist',
};
const checkOf = (caution: Caution) => {
  const [kind = '', name] = (caution.of ?? '').split(':');
  const iced = caution.of?.endsWith(':ice') ? ' with ice' : '';
  if (kind === 'antenna') return name;
  if (kind === 'elements') return `tubes of the ${name}${iced}`;
  return `${LINK_NAMES[kind] ?? caution.of}${iced}`;
};
const checkVerb = (caution: Caution, one: string, several: string) =>
  verbOf({ kind: (caution.of ?? '').split(':')[0] as Check['kind'] }, one, several);

/** Links held against their own measures and not a maker's word. */
const byItself = (caution: Caution) =>
  ['mast', 'elements', 'foundation', 'raising', 'hoist'].includes((caution.of ?? '').split(':')[0] ?? '');
export const HILL_REASONS: Readonly<Record<string, string>> = {
  'too-gentle': 'its slope is too gentle',
  'too-low': 'it is lower than the standard counts on this ground',
  'not-isolated': 'it does not stand alone, or is not twice as high as its surroundings',
  'lower-half': 'the tower stands on its lower half',
  'beyond-reach': 'the tower stands beyond its reach',
};

/** Where its supports came from, if from anywhere. */
const SUPPORTS_NOT_GIVEN: Readonly<Record<string, string>> = {
  'rated-guyed':
    'Where the tower is held is not given; it is taken to be as the rating has it. The wind on its guys is not counted.',
  'rated-bracketed': 'Where the tower is held is not given; it is taken to be as the rating has it.',
  'rated-apart':
    'Where the tower is held is not given, and its ratings are for different supports: nothing is compared.',
  untold: 'Where the tower is held is not given, and no rating of it names its supports: nothing is compared.',
};

/** One sentence, and what to do, for every caution. */
export const CAUTION_WORDS: Readonly<Record<CautionCode, CautionWords>> = {
  'engineer-and-local-code': {
    says: () =>
      'This compares numbers you typed with ratings you typed. The local building code and a licensed engineer decide.',
    action: 'Take it to the building department and, where there is doubt, to an engineer.',
  },
  climbing: { says: () => 'Climbing kills.', action: 'Climb only trained, tied off at all times, and never alone.' },
  'power-lines': {
    says: () => 'A tower, mast or wire that touches a power line kills everyone who holds it.',
    action: 'Keep every part, falling or lowered, farther from power lines than its own full length.',
  },
  'corrosion-and-age': {
    says: () =>
      'Ratings assume sound, correctly built, undamaged steel on the maker’s footing; a used tower may have lost some of it.',
    action: 'Look inside the legs and at every weld and bolt before you trust a rating.',
  },
  over: {
    says: (caution) =>
      byItself(caution)
        ? `The ${checkOf(caution)} ${checkVerb(caution, 'is asked for more than it takes', 'are asked for more than they take')}.`
        : `The ${checkOf(caution)} is asked for more than its rating shows: beyond what the maker stands behind, which is not the same as failing.`,
    action: 'Hang less, lower, or ask the maker.',
  },
  'within-its-fall': {
    says: (caution) => `Falling, it may reach the ${placeOfFall({ id: caution.of ?? '' })}.`,
    action: 'Set it farther off, keep it lower, or let what spreads far hang lower.',
  },
  'low-margin': {
    says: (caution) =>
      `The ${checkOf(caution)} ${checkVerb(caution, 'is', 'are')} inside ${byItself(caution) ? checkVerb(caution, 'what it takes', 'what they take') : 'its rating'}, but not by the margin you wanted.`,
    action: 'Hang less, lower, or accept the margin knowingly.',
  },
  'basis-assumed': {
    says: (caution) => `The speed was read as ${basis(caution)}, the kind on this code’s own maps.`,
    action: 'Check the words beside the speed on the map or the county’s page.',
  },
  'basis-converted': {
    says: (caution) =>
      `The speed was turned into ${basis(caution)}, which this code takes; conversions differ by some per cent.`,
    action: 'Take the speed from the code’s own map if you can.',
  },
  'risk-category-assumed': {
    says: () => 'No risk category is given; read as II.',
    action: 'Ask the building department for the category of an antenna tower.',
  },
  'topography-not-given': {
    says: () => 'No hill is given; read as level ground.',
    action: (_, system) =>
      `If the ground falls away steeply within ${system === 'us' ? 'half a mile' : '800 m'}, give the hill: it can raise the pressure by half and more.`,
  },
  'topography-not-applied': {
    says: (caution, system) =>
      `The hill does not count by this standard: ${HILL_REASONS[caution.word ?? ''] ?? 'a condition fails'}. Its factor at ${standardHeight(system)} would be ${figures(caution.value ?? 1)}.`,
    action: 'Measure the hill again if it looks steeper than that.',
  },
  'topography-not-in-method': {
    says: () => 'This standard knows no hills: the one you gave is not counted.',
    action: 'Compare with a later standard.',
  },
  'topography-large': {
    says: (caution) => `The hill multiplies the pressure by ${figures(caution.value ?? 1)} near the ground.`,
    action: 'Get site-specific advice: a rule of thumb does not know your slope.',
  },
  'roof-speed-up': {
    says: () => 'Wind speeds up over a roof edge; that is not counted, nor is the roof checked.',
    action: 'Have an engineer look at the roof and at the wind over it.',
  },
  'least-pressure': {
    says: () => 'The code’s least pressure decides for some parts; the wind this holds to is worked out without it.',
    action: 'Nothing to do; it matters in weak winds only.',
  },
  'own-drag-missing': {
    says: () =>
      'The tower’s own wind is unknown: the larger of loads over rating and your wind over the rated wind stands for it.',
    action: 'Measure the width of a face, legs and braces.',
  },
  'own-drag-not-rated': {
    says: () => 'The rating names no standard, so it proves none of the wind on the tower itself.',
    action: 'Ask the maker by which standard the tower is rated.',
  },
  'members-unknown': {
    says: () =>
      'Nothing is said of legs and braces: a tenth to a third of a face was taken as solid, the worse at each level.',
    action: 'Measure a leg, a brace and the height of a panel.',
  },
  'area-kind-unknown': {
    says: (caution) =>
      caution.of
        ? `The area of ${caution.of} is of unsaid kind: read as up to 1.8 times as stated (2.0 with slender flats among its members). Areas averaged over heading may be worse still.`
        : 'The rated area is of unsaid kind: read as effective, which credits the tower least.',
    action: 'Ask the maker whether drag is counted in it.',
  },
  'rating-without-speed': {
    says: () => 'A rated area without a speed proves nothing.',
    action: 'Ask the maker for the wind of the rating.',
  },
  'rating-standard-unknown': {
    says: () =>
      'The rating names no standard: it was read by every one its kind of speed and its year allow, the least counting.',
    action: 'Ask the maker by which standard, and in which year.',
  },
  'rating-old-standard': {
    says: (caution) =>
      `The rating is by ${caution.word}: it was brought to today’s level by three quarters, since its steel stresses were raised by one third.`,
    action: 'Ask the maker for a rating by a current standard.',
  },
  'partial-factor': {
    says: () =>
      'Recommended values, no national annex: wind force with the partial factor 1.5. EN 1993-3-1 has 1.2 to 1.6 for towers, by reliability class.',
    action: 'Ask the engineer for the class of the tower and the values of your country’s annex.',
  },
  'rating-exposure-assumed': {
    says: ({ word }) =>
      word === 'IV'
        ? 'Your rating names no terrain. Read as IV, which credits the tower least.'
        : 'Your rating names no ground exposure. Read as B, which credits the tower least.',
    action: 'Ask the maker for which ground the tower is rated.',
  },
  'rating-class-assumed': {
    says: () => 'Your rating names no class of structure. Read as I, which credits the tower least.',
    action: 'Ask the maker for which class the tower is rated.',
  },
  'rating-height-assumed': {
    says: () =>
      'Your rating does not say how high its area or force stood. Read as at the tower’s top, which credits the tower least.',
    action: 'Ask the maker how far above the top it is meant.',
  },
  'rating-lines-assumed': {
    says: () =>
      'Your rating does not say how the lines it allows for lay. Read as a bundle, which credits the tower least.',
    action: 'Ask the maker how he laid them.',
  },
  'rating-supports-assumed': {
    says: () =>
      'Your rating does not say where the tower it is for is held. It was taken to be for this one, held as it stands.',
    action: 'Ask the maker at which heights guys or brackets hold the tower he rates.',
  },
  'rating-fits-no-standard': {
    says: () => 'No standard known here goes with the rating’s kind of speed and its year, so it proves nothing.',
    action: 'Ask the maker by which standard the tower is rated, and name that.',
  },
  'rating-basis-assumed': {
    says: (caution) => `The rated speed was read as ${basis(caution)}, the kind its standard goes by.`,
    action: 'Check the words beside the speed: one meant as another kind proves less, or more.',
  },
  'rating-basis-converted': {
    says: (caution) => `The rated speed was turned into ${basis(caution)}, which its standard takes.`,
    action: 'Ask the maker for the speed in the standard’s own kind.',
  },
  'rating-level-assumed': {
    says: () =>
      'A rating does not say whether it is an allowable load or its strength. Read as strength: 0.6 of it counts.',
    action: 'Ask the maker which it is.',
  },
  'uneven-gusts': {
    says: () =>
      'Only what hangs off the axis turns the rotator here. Uneven gusts twist a balanced antenna too, and its weight in motion more so when it stops; no rule for either is known to us.',
    action: 'Keep well under what the rotator holds, and let it start and stop gently.',
  },
  'rating-for-other-height': {
    says: () => 'A rating for another height or other supports says nothing of this tower; it is left out.',
    action: 'Ask the maker for the rating of the tower as it stands.',
  },
  'top-couple': {
    says: () =>
      'The mast hands its load to the top of the tower as a couple, larger than its force; a rating by area does not show that place for certain.',
    action: ({ word }) =>
      word === 'told'
        ? 'Let the mast reach farther inside; ask the maker what he allows there.'
        : 'Give the mast, how far it reaches inside, and its bearing; let it reach farther inside.',
  },
  'side-load': {
    says: (caution) => {
      const hang = `${thing(caution)} ${byCount(caution, 'hangs', 'hang')} on the side of the tower`;
      return caution.word === 'pole'
        ? `${hang}: how far ${byCount(caution, 'it bends', 'they bend')} the wall of the pole where ${byCount(caution, 'it is', 'they are')} fixed is not checked.`
        : `${hang}: bending of the leg ${byCount(caution, 'it hangs on', 'they hang on')} is not checked.`;
    },
    action: (caution) =>
      caution.word === 'pole'
        ? `Clamp ${byCount(caution, 'it', 'each')} round the pole at two places, well apart.`
        : `Fix ${byCount(caution, 'it', 'each')} at two points near the ends of a panel.`,
  },
  torsion: {
    says: (caution) =>
      `${thing(caution)} ${byCount(caution, 'hangs off the axis and twists', 'hang off the axis and twist')} the tower; on a lattice the twist is added to the braces, on a pole it is not checked.${caution.word === 'outside-width' ? ' The legs were taken as far apart as the face is wide; they stand closer by their thickness, which is not told, so that the twist takes more of the braces.' : ''}`,
    action: (caution) => `Bring ${byCount(caution, 'it', 'them')} nearer to the axis.`,
  },
  'weights-not-counted': {
    says: () => 'Some weights are not given, so they are not counted.',
    action: 'Give the weight of each load and line.',
  },
  'wire-pull': {
    says: (caution) =>
      caution.word === 'untold'
        ? `The pull of ${pulled(caution)} is not given, so it is not counted.`
        : `The pull of ${pulled(caution)} is taken as you gave it; wind and ice on a wire raise it.`,
    action: 'Give the greatest pull you expect, or let a weight or spring limit it.',
  },
  'slender-dynamic': {
    says: (caution) =>
      caution.word === 'at-most'
        ? swingsAtMost(caution.value ?? 0)
        : caution.value === undefined
          ? 'A slender pole or an extended telescope may swing with the gusts; its frequency is not given, so the ordinary gust factor stands.'
          : `The tower swings at ${figures(caution.value)} Hz, below 1 Hz: the gust factor of a flexible structure was worked out. Its rating is read by the ordinary one, since nothing says that its maker counted on it.`,
    action: 'Ask the maker for the lowest natural frequency and the damping.',
  },
  'frequency-not-used': {
    says: (caution) =>
      `The tower swings at ${figures(caution.value ?? 0)} Hz, below 1 Hz; this standard’s gust factor takes no account of it.`,
    action: 'Compare with a standard that does.',
  },
  vortex: {
    says: (caution) =>
      `${thing(caution)} ${byCount(caution, 'has', 'have')} long tubes, which may sing and tire in a steady light wind.`,
    action: 'Put a loose rope inside long tubes.',
  },
  'guyed-not-analysed': {
    says: () => 'Forces in guys, and in the tower below the highest of them, are not worked out.',
    action: 'Keep the maker’s guy plan; for anything else ask an engineer.',
  },
  'supports-not-given': {
    says: ({ word }) => SUPPORTS_NOT_GIVEN[word ?? ''] ?? 'Where the tower is held is not given.',
    action: 'Give the heights of guys or brackets.',
  },
  'bracket-not-checked': {
    says: ({ word }) =>
      word === 'untold'
        ? 'The pull on the house is not shown, since nothing tells where it holds the tower; the house is not checked.'
        : 'The pull on the house is shown, the house is not checked; below the bracket nothing is compared.',
    action: 'Have the wall and its fixing looked at.',
  },
  'lowered-state': {
    says: ({ word }) =>
      word === 'hinge'
        ? 'Half-way, the tower hangs on its hinge and its gear; lying flat, on what props it. Only the pull of the gear, and bending of the lying tower as far as its rating shows it, are looked at here.'
        : 'Half-way, its sections overlap otherwise and hang on their lines: another structure, not checked here.',
    action: 'Never leave it half-way; lash it down where it rests.',
  },
  'raise-in-calm': {
    says: () => 'Raising and lowering is for still air.',
    action: 'Raise it in calm air, with a second person, and nobody under it.',
  },
  'hoist-by-section': {
    says: () =>
      'The hoist’s pull holds for a tower in which each section lifts the next by a single line to the drum; friction, and a section that jams, come on top.',
    action: 'Compare with the maker’s words on how the lines run, and keep well under what the gear may pull.',
  },
  'hoist-not-checked': {
    says: () => 'The pull on the hoist of your telescoping tower is not checked: nothing tells what its gear may pull.',
    action: 'Give the weight of each section and a rating of the gear, its working load or what its line breaks at.',
  },
  'reaches-guys': {
    says: (caution) =>
      byCount(
        caution,
        `${thing(caution)} reaches farther out than the guys are at its height: it may meet them.`,
        `${thing(caution)} reach farther out than the guys are at their heights: they may meet them.`,
      ),
    action: (caution) =>
      `Hang ${byCount(caution, 'it', 'each')} above the guys, or see on a drawing, from above, that it turns clear of each.`,
  },
  'building-in-reach': {
    says: () => 'Falling, the tower or what hangs on it may reach your building.',
    action: 'Weigh that against the margin of the links above; people sleep under roofs.',
  },
  'dish-shape-assumed': {
    says: (caution) => {
      const { value = DISH_COEFFICIENT } = caution;
      const full = value === DISH_COEFFICIENT;
      const mesh = full ? '' : `, which is ${OPEN_MESH_COEFFICIENT} of its solid share`;
      const iced = caution.word === 'iced' && !full ? ` Ice closes it: then ${DISH_COEFFICIENT}.` : '';
      return `${thing(caution)} is taken as an ordinary ${full ? '' : 'mesh '}dish: ${figures(value)} of its rim at its worst angle, 50° to 60° off its axis${mesh}, a quarter of its diameter deep.${iced}`;
    },
    action: 'Use the maker’s wind forces if he gives them.',
  },
  'metal-assumed': {
    says: (caution) =>
      `What the tubes of ${caution.of} are made of is not said. Read as aluminium, in strength and in weight; steel is nearly three times as heavy.`,
    action: 'Say what they are made of.',
  },
  'rupture-not-given': {
    says: (caution) =>
      `What the aluminium of ${caution.of ? `the tubes of ${caution.of}` : 'the mast'} breaks at is not given. Read as no more than its yield, so that 1/1.95 of that is allowed and not 1/1.67.`,
    action: 'Give its strength at rupture; the mill sheet of the alloy and temper has it.',
  },
  'weight-on-boom': {
    says: (caution) =>
      `Where elements and fittings sit on the boom of ${caution.of} is not told. Half of their weight was taken at each end of it, which bends it most; at best, none.`,
    action: 'Compare with its maker’s words on the boom; a truss above it is not counted.',
  },
  'ice-not-checked': {
    says: () => 'Ice is not in this answer: no thickness given.',
    action: 'Ask the building department whether ice counts with you.',
  },
  'climate-short-record': {
    says: (caution) =>
      `${caution.value} years of one station say little of rare winds: even thirty years carry a wide band.`,
    action: 'Look for a longer record, or for a chart made from many stations.',
  },
  'climate-tells-no-law': {
    says: ({ word }) =>
      word === 'too-short'
        ? 'Fewer than ten years of one station tell no law of rare winds: no chance is given.'
        : 'The strongest gusts of your years hardly differ, as those of no place do: no chance is given.',
    action: 'Look for a longer record, and check that each value is the strongest gust of its own year.',
  },
  'climate-units': {
    says: ({ word }) =>
      `On the average the strongest gusts of your years are ${word === 'low' ? 'lower' : 'higher'} than those of nearly every place: they may be in another unit or of another kind.`,
    action: 'Check the unit, and whether they are gusts or means.',
  },
  'climate-not-gumbel': {
    says: () =>
      'Your yearly maxima do not follow Gumbel’s law (Anderson and Darling’s test at 5 %, critical value from memory): it stands beside the band, not in it.',
    action: 'See whether the highest came from another kind of storm, and whether they were measured alike.',
  },
  'climate-two-values': {
    says: () => 'Two chart values allow one line only: how far the chance may be off is not known from them.',
    action: 'Read a third value off the chart, for more years.',
  },
  'climate-chart-band': {
    says: () =>
      'The bands of the chances are how far your chart values disagree; how far the chart itself is off is not in them.',
    action: 'Take the chances as an order of size.',
  },
  'climate-converted': {
    says: (caution) =>
      `The winds of your climate were turned from ${basis(caution)} into 3-second gusts; conversions differ by some per cent, and the chance by much more.`,
    action: 'Take gusts, if the station or the chart gives them.',
  },
  'foundation-not-checked': {
    says: () => 'The footing and the soil are not checked.',
    action: 'Build the maker’s footing in soil no worse than he names, or ask an engineer.',
  },
  'rotator-not-checked': {
    says: () => 'What the rotator takes is not given, so it is not checked.',
    action:
      'Ask its maker what force sideways, weight and torque it takes, and what moment where no bearing holds the mast.',
  },
  'bearing-not-checked': {
    says: () => 'What the bearing of the mast takes is not given, so it is not checked.',
    action:
      'Ask its maker what force sideways it takes; the mast presses on it with more than the wind on all it carries.',
  },
  'anchor-bolts-not-checked': {
    says: () => 'Anchor bolts and base plates are not checked.',
    action: 'Use the maker’s.',
  },
  'deflection-not-checked': {
    says: () => 'How far the top moves is not checked.',
    action: 'Leave slack in the lines.',
  },
  'p-delta-not-included': {
    says: () => 'The extra moment of a leaning tower’s own weight is not included.',
    action: 'It is small for stiff towers; ask for it where the tower visibly bends.',
  },
  'method-from-memory': {
    says: ({ word = '', names = [word] }) => `Parts of ${listed(names)} are from memory: check them against your copy.`,
    action: 'The worksheet lists them under its sources.',
  },
};

/** An estimate that errs to the high side says most when it is low. */
function swingsAtMost(frequency: number): string {
  const estimate = `on a rigid foot, with rigid bracing and none but the weights you gave, the tower would swing at ${figures(frequency, 2)} Hz, and it swings no faster than that`;
  return frequency < 1
    ? `By an estimate from its walls, ${estimate}: under 1 Hz gusts shake it more than the ordinary gust factor says, which stands all the same.`
    : `A slender pole may swing with the gusts, and its frequency is not given. By an estimate from its walls, ${estimate}; the ordinary gust factor stands.`;
}

/** What no answer ever covers. */
export const NOT_COVERED: readonly string[] = [
  'earthquake',
  'joints and welds',
  'guy and anchor forces',
  'examination of the soil',
  'grounding',
  'aviation and zoning notices',
];

/** Cautions that are the same of every thing they are about. */
const GATHERED: readonly CautionCode[] = [
  'side-load',
  'torsion',
  'wire-pull',
  'vortex',
  'reaches-guys',
  'method-from-memory',
];

/** For who reads them all: those of one code in one sentence that names every thing, in the place of the first. */
export function gathered(cautions: readonly Caution[]): readonly SaidCaution[] {
  const found = new Map<string, SaidCaution & { names: string[] }>();
  return cautions.flatMap((caution): SaidCaution[] => {
    const { code, of, word } = caution;
    if (!GATHERED.includes(code)) return [caution];
    const name = of ?? word ?? '';
    const key = `${code} ${of === undefined ? '' : (word ?? '')}`;
    const first = found.get(key);
    if (first) {
      if (!first.names.includes(name)) first.names.push(name);
      return [];
    }
    const gathering = { ...caution, names: [name] };
    found.set(key, gathering);
    return [gathering];
  });
}
