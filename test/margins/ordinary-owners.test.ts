import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Part, Verdict } from '../../src/margins/index.ts';
import { assessed, type Document } from './any-plan.ts';

/**
 * As typed on the whole form; with what the first visit asks besides and the data sheet states; with the antennas' papers,
 * weights, mast and footing; with the first open question answered besides.
 */
const FORMS = ['typed', 'visit', 'papers', 'asked'] as const;
type Form = (typeof FORMS)[number];

interface Station {
  readonly name: string;
  /** Guyed, bracketed or part of the way up: it may stay open. */
  readonly later?: true;
  readonly typed: Document;
  readonly visit?: unknown;
  readonly papers: unknown;
  readonly asked?: unknown;
  /** What hand work gives for each part: verdict, ratio at worst and at best, or why it is open. */
  readonly hand: Readonly<Partial<Record<Form, readonly string[]>>>;
}

interface ByHand {
  readonly part: string;
  readonly verdict: Verdict;
  readonly ratios: readonly number[];
}

const FOLDER = new URL('ordinary-owners/', import.meta.url);
const STATIONS = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json'))
  .flatMap((file) => JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Station[]);
const NOW = STATIONS.filter(({ later }) => !later);

/** One document with what another adds to it. */
function merged(one: unknown, other: unknown): unknown {
  if (other === undefined) return one;
  if (Array.isArray(one) && Array.isArray(other)) return one.map((each, index) => merged(each, other[index]));
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return other;
  const both = { ...one } as Document;
  for (const [key, value] of Object.entries(other)) both[key] = merged(both[key], value);
  return both;
}

function planOf({ typed, visit, papers, asked }: Station, form: Form): Document {
  if (form === 'typed') return typed;
  if (form === 'visit') return merged(typed, visit) as Document;
  const withPapers = merged(typed, papers);
  return (form === 'papers' ? withPapers : merged(withPapers, asked)) as Document;
}

/** A station with nothing left to ask has its papers as its last form. */
const lastForm = ({ asked }: Station): Form => (asked === undefined ? 'papers' : 'asked');

const LINE = /^([^:]+): ([a-z-]+)((?: [\d.]+)*)/;

function byHand(line: string): ByHand {
  const [, part = '', verdict, ratios = ''] = LINE.exec(line) ?? [];
  return {
    part: part.replace(/^load /, 'load:'),
    verdict: verdict as Verdict,
    ratios: ratios.split(' ').filter(Boolean).map(Number),
  };
}

const CASES = STATIONS.flatMap((station) =>
  FORMS.flatMap((form) => {
    const hand = station.hand[form];
    return hand ? [{ name: station.name, form, plan: planOf(station, form), hand: hand.map(byHand) }] : [];
  }),
);

const partOf = (parts: readonly Part[], id: string): Part => {
  const part = parts.find((each) => each.id === id);
  if (!part) throw new Error(`no ${id} among ${parts.map((each) => each.id)}`);
  return part;
};

const isDecided = (verdict: Verdict | undefined) => verdict !== undefined && verdict !== 'open';
const SHOWN: readonly (Verdict | undefined)[] = ['within', 'low-margin'];

describe('twenty-five stations as ordinary owners type them, worked by hand first', () => {
  it.each(CASES)('$name, $form: each part has the verdict and the ratios of hand work', ({ plan, hand }) => {
    const { parts } = assessed(plan);
    expect(parts.map(({ id }) => id).sort()).toEqual(hand.map(({ part }) => part).sort());
    for (const { part, verdict, ratios } of hand) {
      const { verdict: found, governs } = partOf(parts, part);
      expect([part, found]).toEqual([part, verdict]);
      const [worst, best] = ratios;
      if (worst === undefined) continue;
      const range = governs.result?.ratioRange;
      expect(Math.abs((range?.[1] ?? 0) / worst - 1), `${part} at worst`).toBeLessThan(0.01);
      if (best !== undefined) expect(Math.abs((range?.[0] ?? 0) / best - 1), `${part} at best`).toBeLessThan(0.01);
    }
  });

  it('is within of nothing that hand work leaves open or finds over', () => {
    for (const { name, form, plan, hand } of CASES) {
      const { parts } = assessed(plan);
      for (const { part, verdict } of hand) {
        if (SHOWN.includes(partOf(parts, part).verdict)) expect(SHOWN, `${name} ${form} ${part}`).toContain(verdict);
      }
    }
  });
});

describe('of the twenty that stand free, tilt, slide or stand on a roof', () => {
  const answers = (form: (station: Station) => Form) =>
    NOW.map((station) => ({ name: station.name, ...assessed(planOf(station, form(station))) }));
  const towersDecided = (form: (station: Station) => Form) =>
    answers(form).filter(({ parts }) => isDecided(partOf(parts, 'tower').verdict)).length;
  const wholesDecided = (form: (station: Station) => Form) =>
    answers(form).filter(({ parts }) => parts.every(({ verdict }) => isDecided(verdict))).length;

  it('the tower is decided in thirteen as typed, and in nineteen once one question is answered', () => {
    expect(NOW).toHaveLength(20);
    expect(towersDecided(() => 'typed')).toBeGreaterThanOrEqual(13);
    expect(towersDecided(lastForm)).toBeGreaterThanOrEqual(19);
  });

  it('the tower is decided in seventeen once the first visit has asked for the exposure on the data sheet', () => {
    expect(towersDecided(() => 'visit')).toBeGreaterThanOrEqual(17);
  });

  it('a tower shown as typed is shown with its mast told', () => {
    const shown = (form: Form) =>
      answers(() => form)
        .filter(({ parts }) => SHOWN.includes(partOf(parts, 'tower').verdict))
        .map(({ name }) => name);
    const withMast = shown('papers');
    expect(shown('typed').filter((name) => !withMast.includes(name))).toEqual([]);
  });

  it('every part is decided in twelve with the papers, in sixteen with the exposure, in nineteen with one question', () => {
    expect(wholesDecided(() => 'papers')).toBeGreaterThanOrEqual(12);
    expect(wholesDecided((station) => (station.visit ? 'asked' : 'papers'))).toBeGreaterThanOrEqual(16);
    expect(wholesDecided(lastForm)).toBeGreaterThanOrEqual(19);
  });
});
