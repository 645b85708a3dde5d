import { nth } from '../foundation/index.ts';
import { rimOf } from './overlap.ts';
import type { Section, Tower } from './station.ts';

/** A telescoping tower with its top at another height. */
export interface Posture {
  readonly sections: readonly Section[];
  /** How far lower each section then stands, below zero where higher [m], from the foot up. */
  readonly drops: readonly number[];
}

/** Heights may be written this far apart [m]. */
const SAME_HEIGHT = 0.01;

/** Heights that are worked out are one within this much [m]. */
const SAME_END = 1e-6;

/**
 * How a telescoping tower may stand with its top at another height: all its sections moved alike, as one cable moves them;
 * lowered part of the way, also with the uppermost let down first, and with the lowest. Which, nobody tells.
 *
 * d_k = (k − 1)/(n − 1)·(H − H'); one by one: each as far as it slides, then the next
 *
 * @param top height of the top there [m]
 * @returns the postures; none where its sections are not told, would come apart or sink below the foot, or the top would be
 *   lower than nested, or where it is held above its fixed section
 * @example posturesAt({ support: 'free', foot: 0, top: 16, telescopes: true, sectionsGiven: true, held: [], heldGiven: false, asDrawn: false, used: true, sections: [{ low: 0, high: 6 }, { low: 5, high: 11 }, { low: 10, high: 16 }] }, 17).map(({ drops }) => drops) // [[0, -0.5, -1]]
 * @source common-practice
 */
export function posturesAt(tower: Tower, top: number): readonly Posture[] {
  const { drops: now } = tower;
  if (now === undefined) return posturesFrom(tower, top);
  return posturesFrom(drawnOut(tower), top).map(({ sections, drops }) => ({
    sections,
    drops: drops.map((drop, index) => drop - nth(now, index)),
  }));
}

/**
 * A telescoping tower with its top as high as its plan tells it.
 *
 * z + d_k
 *
 * @param tower as it stands, let down or not
 * @returns the tower drawn out
 * @example drawnOut({ support: 'free', foot: 0, top: 8, drops: [0, 3], telescopes: true, sectionsGiven: true, held: [], heldGiven: false, asDrawn: false, used: true, sections: [{ low: 0, high: 6 }, { low: 2, high: 8 }] }).top // 11
 */
export function drawnOut(tower: Tower): Tower {
  const { drops, ...standing } = tower;
  if (drops === undefined) return tower;
  const sections = tower.sections.map((section, index) => ({
    ...section,
    low: section.low + nth(drops, index),
    high: section.high + nth(drops, index),
  }));
  return { ...standing, sections, top: tower.top + nth(drops, drops.length - 1) };
}

function posturesFrom(tower: Tower, top: number): readonly Posture[] {
  const { sections, foot } = tower;
  const fixed = sections[0];
  if (!tower.telescopes || !tower.sectionsGiven || !fixed || sections.length < 2) return [];
  if (tower.held.some(({ height, by }) => by === 'guys' || height > fixed.high)) return [];
  if (tower.nestedTop !== undefined && top < tower.nestedTop - SAME_HEIGHT) return [];
  return slidesTo(tower, top).flatMap((slides): Posture[] => {
    let sunk = 0;
    const drops = [0, ...slides.map((slide) => (sunk += slide))];
    const moved = sections.map((section, index) => {
      const drop = drops[index] as number;
      const high = section.high - drop;
      // Rims that come to the top are the top: nothing stands out there.
      return { ...section, low: section.low - drop, high: Math.abs(high - top) < SAME_END ? top : high };
    });
    const stands = moved.every(({ low, high }, index) => {
      const below = moved[index - 1];
      return low > foot - SAME_HEIGHT && high > foot && (!below || low < below.high - SAME_HEIGHT);
    });
    return stands ? [{ sections: moved, drops }] : [];
  });
}

/** How far each section but the fixed one sinks into the one below it, one row for each way to do it. */
function slidesTo({ sections, top: now, nestedTop }: Tower, top: number): readonly (readonly number[])[] {
  const sliding = sections.slice(1);
  const down = now - top;
  const alike = sliding.map(() => down / sliding.length);
  if (down <= 0 || sliding.length < 2) return [alike];
  // Each as far as it goes: to where the nested tower has it, or to the foot of the section below.
  const most = sliding.map(({ low }, index) =>
    nestedTop === undefined ? low - (sections[index] as Section).low : (now - nestedTop) / sliding.length,
  );
  const inTurn = (lengths: readonly number[]) => {
    let left = down;
    return lengths.map((length) => {
      const slide = Math.min(length, left);
      left -= slide;
      return slide;
    });
  };
  const [lowestFirst, uppermostFirst] = [inTurn(most), inTurn([...most].reverse()).reverse()];
  const differs = (slides: readonly number[]) =>
    slides.some((slide, index) => Math.abs(slide - (alike[index] as number)) > SAME_HEIGHT);
  return [alike, ...[lowestFirst, uppermostFirst].filter(differs)];
}

/**
 * The heights between which the top of a telescoping tower can stand as far as its sections tell: nested, and drawn out until
 * each is held by a share of its length.
 *
 * H_n; H + Σ(s − a·l)
 *
 * @param share of its length by which a section stays in the one below [-]
 * @returns the heights [m]; the tower's own top at least and at most
 * @source common-practice
 */
export function topsOf(tower: Tower, share: number): { readonly nested: number; readonly extended: number } {
  const { sections, foot, top } = tower;
  const drawnOut = sections.reduce((sum, { low, high }, index) => {
    const below = sections[index - 1];
    return below ? sum + Math.max(0, below.high - low - share * (high - low)) : sum;
  }, 0);
  const longest = Math.max(...sections.map(({ low, high }) => high - low));
  const nested = tower.nestedTop ?? Math.min(top, foot + longest);
  return { nested, extended: tower.sectionsGiven ? top + drawnOut : top };
}

/**
 * How deep a section stands in those below it.
 *
 * z_rim − z_low
 *
 * @param number of the section [-]
 * @returns the length [m]; 0 where it stands on the one below, or on the ground
 * @example overlapUnder([{ low: 0, high: 6 }, { low: 5, high: 11 }], 1) // 1
 */
export function overlapUnder(sections: readonly Pick<Section, 'low' | 'high'>[], number: number): number {
  return rimOf(sections, number) - (sections[number] as Section).low;
}
