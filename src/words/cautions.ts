import { DISH_COEFFICIENT, OPEN_MESH_COEFFICIENT } from '../areas/index.ts';
import { type UnitSystem, withArticle } from '../foundation/index.ts';
import type { AssumedName, Caution, CautionCode, Lacking } from '../margins/index.ts';
import type { HillExclusion, SpeedBasis } from '../wind/index.ts';
import { ASSUMPTION_WORDS } from './assumption-words.ts';
import { CHECK_WORDS, checkName, demandOn, placeOfFall, verbOf } from './checks.ts';
import { SPEED_WORDS } from './choices.ts';
import { inWords, listed, sentence, standardHeight } from './figures.ts';
import { figures } from './plain-figures.mjs';
import { HILL_REASONS } from './reasons.ts';

/** A caution, or several of one code that are said in one sentence. */
export interface SaidCaution extends Caution {
  /** What it is about, where it is about several. */
  readonly names?: readonly string[];
}

interface CautionWords {
  readonly says: (caution: SaidCaution, system: UnitSystem) => string;
  readonly action: string | ((caution: SaidCaution, system: UnitSystem) => string);
}

const basis = (caution: Caution) => SPEED_WORDS[caution.word as SpeedBasis];
const thing = ({ of, names = [of ?? 'it'] }: SaidCaution) => sentence(namesListed(names));
/** A sentence with more names is not read. */
const MOST_NAMES = 12;
const namesListed = (names: readonly string[]) =>
  names.length > MOST_NAMES
    ? `${names.slice(0, MOST_NAMES).join(', ')} and ${names.length - MOST_NAMES} more`
    : listed(names);
const pulled = ({ of = 'the wire', names = [of] }: SaidCaution) => namesListed(names);
/** What counts where nobody gives a yield strength, by metal. */
const YIELD_ASSUMED: Readonly<Record<string, string>> = {
  steel: 'Its yield strength is not given: 207 to 345 MPa (30 to 50 ksi) assumed.',
  aluminium: 'Its yield strength is not given: 55 to 240 MPa (8 to 35 ksi) assumed, welds included.',
};

/** The words for one thing, or for several. */
const byCount = ({ names = [] }: SaidCaution, one: string, several: string) => (names.length > 1 ? several : one);
const checkOf = ({ check }: Caution) => (check === undefined ? 'part' : checkName(check));
const demandOnCheck = ({ check }: Caution) => (check === undefined ? 'Demand' : demandOn(check));
const checkVerb = ({ check }: Caution, one: string, several: string) =>
  check === undefined ? one : verbOf(check, one, several);
const capacityOfCheck = ({ check }: Caution) => (check === undefined ? 'capacity' : CHECK_WORDS[check.kind].capacity);
const isRated = ({ check }: Caution) => check === undefined || CHECK_WORDS[check.kind].comparedWith === 'rating';

/** Where its supports came from, if from anywhere. */
const SUPPORTS_NOT_GIVEN: Readonly<Record<string, string>> = {
  'rated-guyed': 'Supports of the tower not given. Those of its rating are assumed; wind on guys is not included.',
  'rated-bracketed': 'Supports of the tower not given. Those of its rating are assumed.',
  'rated-apart': 'Supports of the tower not given, and its ratings name different ones. Nothing is compared.',
  'not-given': 'Supports of the tower not given, and no rating of it names any. Nothing is compared.',
};

/** What the model of a tower on guys or brackets lacks. */
const LACKING_WORDS: Readonly<Record<Lacking, string>> = {
  supports: 'the guys in full',
  shape: 'the tower’s shape',
  walls: 'leg walls',
  weights: 'all weights',
  pulls: 'wire tensions',
};

/** One or two sentences, and what to do, for every caution. */
export const CAUTION_WORDS = {
  'engineer-and-local-code': {
    says: () =>
      'This compares the numbers entered with the ratings entered. The local building code and a licensed engineer decide.',
    action: 'Take it to the building department and, where there is doubt, to an engineer.',
  },
  climbing: { says: () => 'Climbing kills.', action: 'Climb only trained, tied off at all times, and never alone.' },
  'power-lines': {
    says: () => 'A tower, mast or wire that touches a power line kills everyone who holds it.',
    action: 'Keep every part, falling or lowered, farther from power lines than its own full length.',
  },
  'corrosion-and-age': {
    says: () =>
      'Ratings assume sound, correctly built, undamaged steel on the manufacturer’s footing; a used tower may have lost strength.',
    action: 'Look inside the legs and at every weld and bolt before relying on a rating.',
  },
  over: {
    says: (caution) =>
      `${demandOnCheck(caution)} exceeds ${checkVerb(caution, 'its', 'their')} ${capacityOfCheck(caution)}.${isRated(caution) ? ' That is not the same as failing.' : ''}`,
    action: 'Reduce the load, mount it lower, or ask the manufacturer.',
  },
  'within-its-fall': {
    says: (caution) => `If it falls, it could reach the ${placeOfFall(caution.check ?? {})}.`,
    action: 'Move it farther away, keep it lower, or mount long antennas lower.',
  },
  'low-margin': {
    says: (caution) =>
      `The ${checkOf(caution)} ${checkVerb(caution, 'is', 'are')} within ${checkVerb(caution, 'its', 'their')} ${capacityOfCheck(caution)}, but with less than the margin set.`,
    action: 'Reduce the load, mount it lower, or accept the smaller margin.',
  },
  'basis-assumed': {
    says: (caution) => `Type of speed not given. ${sentence(basis(caution))} assumed, as on this standard’s maps.`,
    action: 'Check the wording beside the speed on the map or the county’s page.',
  },
  'basis-converted': {
    says: (caution) =>
      `The speed was converted to ${withArticle(basis(caution))}, as this standard uses. Conversions differ by some per cent.`,
    action: 'Take the speed from the standard’s own map if possible.',
  },
  'risk-category-assumed': {
    says: () => 'Risk category not given. II assumed.',
    action: 'Ask the building department for the category of an antenna tower.',
  },
  'topography-not-given': {
    says: () => 'No hill given. Level ground assumed.',
    action: (_, system) =>
      `If the ground falls away steeply within ${system === 'us' ? 'half a mile' : '800 m'}, give the hill. It can raise the pressure by half and more.`,
  },
  'topography-not-applied': {
    says: (caution, system) =>
      `The hill does not count by this standard: ${HILL_REASONS[caution.word as HillExclusion]}. Its factor at ${standardHeight(system)} would be ${figures(caution.value ?? 1)}.`,
    action: 'Measure the hill again if it looks steeper than that.',
  },
  'topography-not-in-method': {
    says: () => 'This standard has no hill factor. The hill entered is not included.',
    action: 'Compare with a later standard.',
  },
  'topography-large': {
    says: (caution) => `The hill multiplies the pressure by ${figures(caution.value ?? 1)} near the ground.`,
    action: 'Get site-specific advice: a rule of thumb cannot describe such a slope.',
  },
  'roof-speed-up': {
    says: () => 'Wind speeds up over a roof edge. That is not included, and the roof is not checked.',
    action: 'Have an engineer look at the roof and at the wind over it.',
  },
  'least-pressure': {
    says: () => 'The standard’s minimum pressure governs some loads. Gusts held to are computed without it.',
    action: 'No action needed; it matters in weak winds only.',
  },
  'own-drag-missing': {
    says: () =>
      'Wind on the tower itself is unknown. The larger of two ratios is used: loads over rating, site wind over rated wind.',
    action: 'Measure the width of a face, legs and braces.',
  },
  'members-unknown': {
    says: () => 'Legs and braces not given. Solidity 0.10 or 0.35 assumed, the worse at each level.',
    action: 'Measure a leg, a brace and the height of a panel.',
  },
  assumed: {
    says: (caution, system) =>
      ASSUMPTION_WORDS[caution.word as AssumedName].assumed(
        namesListed(caution.names ?? [caution.of ?? 'it']),
        system,
        caution.value,
      ),
    action: (caution) => ASSUMPTION_WORDS[caution.word as AssumedName].action,
  },
  'area-kind-unknown': {
    says: (caution) =>
      caution.of
        ? `Type of area of ${caution.of} not stated. Taken at up to 1.8 times the stated area (2.0 with slender flat members). An area averaged over heading could be worse still.`
        : 'Type of rated area not stated. Effective area assumed, which gives the lowest capacity.',
    action: 'Ask the manufacturer whether drag is included in it.',
  },
  'rating-without-speed': {
    says: () => 'A rated area without a wind speed gives no capacity.',
    action: 'Ask the manufacturer for the wind speed of the rating.',
  },
  'rating-standard-unknown': {
    says: () =>
      'Standard of the rating not stated. All that fit its speed and year were tried; the lowest capacity counts.',
    action: 'Ask the manufacturer by which standard, and in which year.',
  },
  'rating-old-standard': {
    says: (caution) =>
      `The rating is by ${caution.word}. Multiplied by 3/4, because that standard allowed a one-third stress increase under wind.`,
    action: 'Ask the manufacturer for a rating by a current standard.',
  },
  'partial-factor': {
    says: () =>
      'Recommended values, no national annex: wind force with the partial factor 1.5. EN 1993-3-1 has 1.2 to 1.6 for towers, by reliability class.',
    action: 'Ask the engineer for the class of the tower and the values of the national annex.',
  },
  'by-second-standard': {
    says: ({ word }) =>
      `The building codes send antenna structures to ${word}. Mast, bearing and rotator are compared by it too; the worse counts.`,
    action: 'Ask the building department which standard counts for a mast on a tower.',
  },
  'rating-exposure-assumed': {
    says: ({ word }) =>
      word === 'IV'
        ? 'Terrain of the rating not stated. IV assumed, which gives the lowest capacity.'
        : 'Exposure of the rating not stated. B assumed, which gives the lowest capacity.',
    action: ({ word }) =>
      `Ask the manufacturer for which ${word === 'IV' ? 'terrain' : 'exposure'} the tower is rated.`,
  },
  'rating-class-assumed': {
    says: () => 'Structure class of the rating not stated. I assumed, which gives the lowest capacity.',
    action: 'Ask the manufacturer for which class the tower is rated.',
  },
  'rating-height-assumed': {
    says: () => 'Height of the rated load not stated. Tower top assumed, which gives the lowest capacity.',
    action: 'Ask the manufacturer how far above the top it is meant.',
  },
  'rating-lines-assumed': {
    says: () =>
      'Arrangement of the rated lines not stated. A bundle, or inside a pole, assumed, which gives the lowest capacity.',
    action: 'Ask the manufacturer how the lines were arranged.',
  },
  'rating-supports-assumed': {
    says: () => 'Supports of the rated tower not stated. Those of this plan assumed.',
    action: 'Ask the manufacturer for the heights of guys or brackets of the rated tower.',
  },
  'rating-fits-no-standard': {
    says: () => 'No standard known here fits the rating’s type of speed and its year, so it gives no capacity.',
    action: 'Ask the manufacturer by which standard the tower is rated, and name that.',
  },
  'rating-basis-assumed': {
    says: (caution) => `Type of rated speed not stated. ${sentence(basis(caution))} assumed, as its standard uses.`,
    action: 'Check the wording beside the speed. Another type changes the capacity.',
  },
  'rating-basis-converted': {
    says: (caution) => `The rated speed was converted to ${withArticle(basis(caution))}, as its standard uses.`,
    action: 'Ask the manufacturer for the speed of the type its standard uses.',
  },
  'rating-level-assumed': {
    says: () => 'Level of a rating not stated: allowable load or strength. Strength assumed, so that 0.6 of it counts.',
    action: 'Ask the manufacturer which it is.',
  },
  'uneven-gusts': {
    says: () =>
      'Only loads off the axis are counted as torque on the rotator. Uneven gusts twist a balanced antenna too, and its moving weight adds to it when it stops. No rule for either is known here.',
    action: 'Keep well under what the rotator holds, and let it start and stop gently.',
  },
  'rating-for-other-height': {
    says: () => 'A rating for another height or other supports does not apply to this tower. It is not included.',
    action: 'Ask the manufacturer for a rating of this height and these supports.',
  },
  'rating-by-sections': {
    says: ({ value = 0 }, system) =>
      `The rating is for a tower top at ${inWords(value, 'length', system)}. It counts here through the sections that both have.`,
    action: 'Ask the manufacturer for a rating of this height.',
  },
  'top-couple': {
    says: () =>
      'The mast loads the tower top with a couple larger than its wind force. A rating by area does not establish that the top can take it.',
    action: ({ word }) =>
      word === 'told'
        ? 'Let the mast reach farther inside; ask the manufacturer what is allowed there.'
        : 'Give the mast, how far it reaches inside, and its bearing; let it reach farther inside.',
  },
  'loads-later': {
    says: (caution) =>
      `${thing(caution)} ${byCount(caution, 'is', 'are')} marked later and not included in this check.`,
    action: (caution) => `Check again before ${byCount(caution, 'it goes', 'they go')} up.`,
  },
  'side-load': {
    says: (caution) => {
      const mounted = `${thing(caution)} ${byCount(caution, 'is', 'are')} mounted beside the tower.`;
      return caution.word === 'pole'
        ? `${mounted} Bending of the pole’s wall where ${byCount(caution, 'it is', 'they are')} fixed is not checked.`
        : `${mounted} Bending of the leg ${byCount(caution, 'it is', 'they are')} fixed to is not checked.`;
    },
    action: (caution) =>
      caution.word === 'pole'
        ? `Clamp ${byCount(caution, 'it', 'each')} round the pole at two places, well apart.`
        : `Fix ${byCount(caution, 'it', 'each')} at two points near the ends of a panel.`,
  },
  torsion: {
    says: (caution) =>
      `${thing(caution)} ${byCount(caution, 'is off the axis and twists', 'are off the axis and twist')} the tower. On a lattice the twist is added to the braces; on a pole it is not checked.${caution.word === 'outside-width' ? ' Leg spacing is taken as the face width. True spacing is less by the leg thickness (not given), so the twist on the braces is larger.' : ''}`,
    action: (caution) => `Mount ${byCount(caution, 'it', 'them')} nearer to the axis.`,
  },
  'weights-not-counted': {
    says: () => 'Some weights are not given, so they are not included.',
    action: 'Give the weight of each load and line.',
  },
  'wire-pull': {
    says: (caution) =>
      caution.word === 'not-given'
        ? `The tension of ${pulled(caution)} is not given, so it is not included.`
        : `The tension of ${pulled(caution)} in wind is computed between fixed ends. Cold air tightens a wire further.`,
    action: 'Give the tension or sag of a cold day without wind, or let a weight or spring limit it.',
  },
  'strength-as-measured': {
    says: ({ word }) =>
      `The metal of the tower counts as sound, straight and as measured.${word === undefined ? '' : ` ${YIELD_ASSUMED[word] ?? ''}`} Its joints, doors, holes, welds, sliding ends and the fixing of its base are not checked.`,
    action: 'Measure walls and members at the base, look for rust inside, and ask for the grade.',
  },
  'strength-contradicts-rating': {
    says: () => 'By its measures the tower does not bear out its rating.',
    action: 'Measure its walls again, and ask the manufacturer for the grade.',
  },
  'slender-dynamic': {
    says: (caution, system) => {
      if (caution.word === 'at-most') return frequencyAtMost(caution.value ?? 0);
      if (caution.word === 'flexible')
        return `${estimateAtMost(caution.value ?? 0)} The gust factor of a flexible structure is used.`;
      if (caution.word === 'structural-factor')
        return `Structural factor taken as 1. Its standard allows that up to ${inWords(caution.value ?? 0, 'length', system)}, or for a tower shown to be stiff.`;
      return caution.value === undefined
        ? 'Slender towers can sway in gusts. Natural frequency not given; the ordinary gust factor is used.'
        : `Natural frequency ${figures(caution.value)} Hz, below 1 Hz: the gust factor of a flexible structure is used. A rating by a standard that counts it is taken at the same frequency.`;
    },
    action: 'Time ten swings, or ask the manufacturer for the lowest natural frequency and the damping.',
  },
  'frequency-not-used': {
    says: (caution) =>
      `Natural frequency ${figures(caution.value ?? 0)} Hz, below 1 Hz. The gust factor of this standard does not include it.`,
    action: 'Compare with a standard that does.',
  },
  vortex: {
    says: (caution) =>
      `${thing(caution)} ${byCount(caution, 'has', 'have')} long tubes. They can vibrate in steady light wind and crack from fatigue.`,
    action: 'Put a loose rope inside long tubes.',
  },
  'guys-overloaded': {
    says: (caution) =>
      caution.word === 'broken'
        ? 'In the design wind a guy can be drawn beyond the breaking strength of its strand.'
        : 'In the design wind the tower finds no balance on its guys in one or more cases tried.',
    action: 'Do not build it so; ask an engineer.',
  },
  'guyed-not-analysed': {
    says: () => 'Forces in guys, and in the tower below the highest of them, are not checked.',
    action: ({ word }) =>
      word === undefined
        ? 'Keep the manufacturer’s guy plan; for anything else ask an engineer.'
        : `Keep the manufacturer’s guy plan. To have them compared, give ${listed(word.split(' ').map((sort) => LACKING_WORDS[sort as Lacking]))}.`,
  },
  'anchors-not-checked': {
    says: () => 'Anchors, their soil and ice on the guys are not checked.',
    action: 'Keep the manufacturer’s guy plan; for anything else ask an engineer.',
  },
  'supports-not-given': {
    says: ({ word }) => SUPPORTS_NOT_GIVEN[word ?? ''] ?? 'Supports of the tower not given.',
    action: 'Give the heights of guys or brackets.',
  },
  'bracket-not-checked': {
    says: ({ word }) =>
      word === 'not-given'
        ? 'The pull on the house is not computed, since the height of the bracket is not given. The house is not checked.'
        : word === 'compared'
          ? 'The pull on the house is computed; the house is not checked.'
          : 'The pull on the house is computed; the house is not checked. Nothing is compared below the bracket.',
    action: 'Have the wall and its fixing examined.',
  },
  'lowered-state': {
    says: ({ word }) =>
      word === 'hinge'
        ? 'Part-way, the tower is held by its hinge and its gear; lowered flat, by its props. Only the pull of the gear and bending of the tower lowered flat are checked, where rated.'
        : 'Part-way up, the sections are held by their cables or by pawls. Cables and pawls are not checked.',
    action: ({ word }) =>
      word === 'hinge'
        ? 'Never leave it part-way; lash it down where it rests.'
        : 'Leave it on its pawls or pins where it has them, and never go beneath it.',
  },
  'raise-in-calm': {
    says: () => 'Raising and lowering is for still air.',
    action: 'Raise it in calm air, with a second person, and nobody under it.',
  },
  'hoist-by-section': {
    says: () =>
      'The hoist’s pull holds for sections that each lift the next by a single line to the drum. Friction, or a section that jams, adds to it.',
    action: 'Compare with the manufacturer’s drawing of the lines, and keep well under the working load of the gear.',
  },
  'hoist-not-checked': {
    says: () => 'The pull on the hoist is not checked; the rating of its gear is not given.',
    action: 'Give the weight of each section and the working load of the gear, or the breaking strength of its line.',
  },
  'reaches-guys': {
    says: (caution) =>
      `${thing(caution)} ${byCount(caution, 'reaches farther out than the guys at its height', 'reach farther out than the guys at their heights')}, and could strike them.`,
    action: (caution) =>
      `Mount ${byCount(caution, 'it', 'each')} above the guys, or check on a plan view that it turns clear of each.`,
  },
  'building-in-reach': {
    says: () => 'If it falls, the tower or a load on it could reach the building.',
    action: 'People may be inside. Weigh that against the margins above.',
  },
  'dish-shape-assumed': {
    says: (caution) => {
      const { value = DISH_COEFFICIENT } = caution;
      const full = value === DISH_COEFFICIENT;
      const mesh = full ? '' : `, which is ${OPEN_MESH_COEFFICIENT} of its solid share`;
      const iced = caution.word === 'iced' && !full ? ` Ice closes it: then ${DISH_COEFFICIENT}.` : '';
      return `${thing(caution)} is taken as an ordinary ${full ? '' : 'mesh '}dish, a quarter of its diameter deep. Effective area ${figures(value)} of its rim area${mesh}. That is at its worst angle, 50° to 60° off its axis.${iced}`;
    },
    action: 'Use the manufacturer’s wind forces if they are stated.',
  },
  'metal-assumed': {
    says: (caution) =>
      `Material of the tubes of ${caution.of} not given. Aluminium assumed for strength and weight; steel is nearly three times as heavy.`,
    action: 'Give their material.',
  },
  'rupture-not-given': {
    says: (caution) =>
      `Ultimate strength of the aluminium of ${caution.of ? `the tubes of ${caution.of}` : 'the mast'} not given. No more than the yield is assumed, so 1/1.95 of that is allowed and not 1/1.67.`,
    action: 'Give the ultimate strength; the mill certificate of the alloy and temper has it.',
  },
  'weight-on-boom': {
    says: (caution) =>
      `Where elements and fittings sit on the boom of ${caution.of} is not given. At worst half of their weight is at each end of it; at best, none.`,
    action: 'Compare with the manufacturer’s data on the boom; a truss above it is not included.',
  },
  'ice-not-checked': {
    says: () => 'Ice not checked; no thickness given.',
    action: 'Ask the building department whether ice counts at this site.',
  },
  'climate-short-record': {
    says: (caution) =>
      `${caution.value} years of one station give little information on rare winds. Even thirty years leave a wide band.`,
    action: 'Look for a longer record, or for a chart made from many stations.',
  },
  'climate-tells-no-law': {
    says: ({ word }) =>
      word === 'too-short'
        ? 'Fewer than ten years of one station are too few to fit a law. No chance is given.'
        : 'The yearly maxima hardly differ, as at no real place. No chance is given.',
    action: 'Look for a longer record. Check that each value is the strongest gust of its own year.',
  },
  'climate-units': {
    says: ({ word }) =>
      `On average the yearly maxima are ${word === 'low' ? 'lower' : 'higher'} than at nearly every place. They may be in another unit or of another kind.`,
    action: 'Check the unit, and whether they are gusts or means.',
  },
  'climate-not-gumbel': {
    says: () =>
      'The yearly maxima do not follow Gumbel’s law (Anderson–Darling test at 5 %, critical value from memory). It is given beside the band, not in it.',
    action: 'See whether the highest came from another kind of storm, and whether they were measured alike.',
  },
  'climate-two-values': {
    says: () => 'Two chart values allow only one line. The error of the chance cannot be estimated from them.',
    action: 'Take a third value from the chart, for more years.',
  },
  'climate-chart-band': {
    says: () =>
      'The bands of the chances show how far the chart values disagree. The error of the chart itself is not included.',
    action: 'Take the chances as an order of size.',
  },
  'climate-converted': {
    says: (caution) =>
      `The winds of the climate were converted from ${withArticle(basis(caution))} to 3-second gusts. Conversions differ by some per cent, and the chance by much more.`,
    action: 'Use gusts, if the station or the chart gives them.',
  },
  'foundation-not-checked': {
    says: () => 'The footing and the soil are not checked.',
    action: 'Build the manufacturer’s footing in soil at least as good as specified, or ask an engineer.',
  },
  'rotator-not-checked': {
    says: () => 'The rotator is not checked; no rating of it is given.',
    action:
      'Ask the manufacturer for its rated lateral force, weight and torque; without a mast bearing, its rated moment too.',
  },
  'bearing-not-checked': {
    says: () => 'The bearing of the mast is not checked; no rating of it is given.',
    action:
      'Ask the manufacturer for its rated lateral force. By leverage the bearing reaction exceeds the wind force on mast and antennas.',
  },
  'anchor-bolts-not-checked': {
    says: () => 'Anchor bolts and base plates are not checked.',
    action: 'Use the manufacturer’s.',
  },
  'deflection-not-checked': {
    says: () => 'Movement of the tower top is not checked.',
    action: 'Leave slack in the lines.',
  },
  'p-delta-not-included': {
    says: () => 'The added moment of the tower’s weight as it deflects (P-delta) is not included.',
    action: 'It is small for stiff towers; have it computed where the tower visibly bends.',
  },
  'p-delta': {
    says: ({ value = 0, word }) =>
      word === 'beyond'
        ? 'As the tower leans, its weight adds more to the moment at its base than is compared here.'
        : `As the tower leans, its weight adds ${word === 'by-frequency' ? 'up to ' : ''}${figures(value * 100, 2)} % to the moment at its base (P-delta), not included.`,
    action: 'Use a stiffer tower, less weight aloft, or have it computed by an engineer.',
  },
  'vortex-of-pole': {
    says: ({ value = 0 }, units) =>
      `A steady wind from about ${inWords(value, 'speed', units, 2)} can shake the pole in its second way of swinging (from memory).`,
    action: 'Watch it in light wind; a rope or chain inside lessens it.',
  },
  'method-from-memory': {
    says: ({ word = '', names = [word] }) =>
      `Parts of ${listed(names)} are from memory: check them against a copy of the standard.`,
    action: 'The worksheet lists them under its sources.',
  },
} as const satisfies Record<CautionCode, CautionWords>;

const estimateAtMost = (frequency: number) =>
  `Estimated natural frequency at most ${figures(frequency, 2)} Hz (rigid base and bracing, weights given only).`;

/** An estimate that errs to the high side says most when it is low. */
function frequencyAtMost(frequency: number): string {
  const estimate = estimateAtMost(frequency);
  return frequency < 1
    ? `${estimate} Below 1 Hz the ordinary gust factor gives too little; it is used all the same.`
    : `Slender towers can sway in gusts; natural frequency not given. ${estimate} The ordinary gust factor is used.`;
}

/** What no answer ever covers. */
export const NOT_COVERED: readonly string[] = [
  'earthquake',
  'joints and welds',
  'anchors of guys',
  'examination of the soil',
  'grounding',
  'aviation and zoning notices',
];

/** Cautions that are the same of every thing they are about. */
const GATHERED: readonly CautionCode[] = [
  'loads-later',
  'side-load',
  'torsion',
  'wire-pull',
  'vortex',
  'reaches-guys',
  'method-from-memory',
  'assumed',
];

/** For who reads them all: those of one code in one sentence that names every thing, in the place of the first. */
export function gathered(cautions: readonly Caution[]): readonly SaidCaution[] {
  const found = new Map<string, SaidCaution & { names: string[] }>();
  return cautions.flatMap((caution): SaidCaution[] => {
    const { code, of, word } = caution;
    if (!GATHERED.includes(code) || (code === 'assumed' && of === undefined)) return [caution];
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
