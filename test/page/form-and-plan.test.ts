import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { CHECK_KINDS, type CheckKindName } from '../../src/margins/index.ts';
import { listedMethods } from '../../src/methods/index.ts';
import { documentOf, draftInUnits, draftOf, unshownIn } from '../../src/page/form/draft.mjs';
import { listMethods } from '../../src/page/form/methods.mjs';
import { inOtherUnits, inSi, numberOf, UNITS } from '../../src/page/form/quantity.mjs';
import { LISTS, PART_OF_CHECK, PARTS, PLACES } from '../../src/page/form/questions.mjs';
import * as store from '../../src/page/form/store.mjs';
import { PLAN_UNITS } from '../../src/plan/quantities/plan-dimension.ts';
import { readQuantityText } from '../../src/plan/quantities/quantity-text.ts';
import { planDocumentSchema } from '../../src/plan/schema/plan-document.ts';
import { figures, ratioFigures } from '../../src/words/index.mjs';
import { demoPlans } from '../margins/demo-plan.ts';

/** Every place of the schema where a value stands, '*' for a place in a list, with what may stand there. */
function placesOf(schema: z.core.$ZodType, at = ''): Map<string, z.core.$ZodType[]> {
  const places = new Map<string, z.core.$ZodType[]>();
  const enter = (place: string, found: z.core.$ZodType) => places.set(place, [...(places.get(place) ?? []), found]);
  const merge = (more: Map<string, z.core.$ZodType[]>) => {
    for (const [place, found] of more) for (const each of found) enter(place, each);
  };
  if (schema instanceof z.ZodExactOptional || schema instanceof z.ZodOptional) return placesOf(schema.unwrap(), at);
  if (schema instanceof z.ZodObject) {
    for (const [key, member] of Object.entries(schema.shape))
      merge(placesOf(member as z.core.$ZodType, `${at}/${key}`));
  } else if (schema instanceof z.ZodArray) merge(placesOf(schema.element, `${at}/*`));
  else if (schema instanceof z.ZodUnion) for (const option of schema.options) merge(placesOf(option, at));
  else if (schema instanceof z.ZodTuple) {
    schema.def.items.forEach((item, index) => {
      merge(placesOf(item, `${at}/${index}`));
    });
  } else enter(at, schema);
  return places;
}

const places = placesOf(planDocumentSchema);
listMethods(listedMethods());
/** Not asked: what the form itself says, and forms of an answer that another entry holds as text. */
const HELD_OTHERWISE = new Set(['/format', '/units', '/site/wind', '/ratings/*/wind', '/loads/*/ratedWind']);
const isPairEnd = (place: string) => PLACES.get(place.replace(/\/[01]$/, ''))?.kind === 'pair';

/** A kind of check of which nobody says where the form asks for it does not compile. */
// @ts-expect-error the place of the anchor bolts is missing
const WITHOUT_PLACE: Readonly<Record<CheckKindName | 'anchor-bolts', string | undefined>> = PART_OF_CHECK;

describe('the form', () => {
  it('knows of every kind of check whether a folded part of it leaves it open', () => {
    expect(Object.keys(WITHOUT_PLACE).sort()).toEqual([...CHECK_KINDS].sort());
    const folded = PARTS.filter((part) => part.folded).map(({ id }) => id);
    const named = Object.values(PART_OF_CHECK).filter((id) => id !== undefined);
    expect(named.length).toBeGreaterThan(3);
    expect(named.filter((id) => !folded.includes(id))).toEqual([]);
  });

  it('waits for no ground that the standard does not use', () => {
    const site = { wind: { speed: '80' } };
    const tower = { support: 'free', top: '40' };
    for (const { id, ground, asksGround } of listedMethods().filter(({ ofSites }) => ofSites)) {
      store.startWith({ units: 'us', method: id, site, tower });
      expect(store.wanted.value, id).toEqual(asksGround ? [`/site/${ground}`] : []);
    }
  });

  it('asks for every place of a plan', () => {
    const missing = [...places.keys()].filter(
      (place) => !PLACES.has(place) && !HELD_OTHERWISE.has(place) && !isPairEnd(place),
    );
    expect(missing).toEqual([]);
    expect(places.size).toBeGreaterThan(200);
  });

  it('asks for nothing a plan has no place for', () => {
    expect([...PLACES.keys()].filter((place) => !places.has(place))).toEqual([]);
    const lists = new Set(
      [...places.keys()].flatMap((place) => [...place.matchAll(/\/\*/g)].map(({ index }) => place.slice(0, index))),
    );
    expect([...LISTS.keys()].filter((place) => !lists.has(place))).toEqual([]);
  });

  it('offers the very choices the plan allows', () => {
    for (const [place, question] of PLACES) {
      if (question.choices === undefined) continue;
      const allowed = (places.get(place) ?? []).flatMap((schema) =>
        schema instanceof z.ZodEnum
          ? schema.options.map(String)
          : schema instanceof z.ZodLiteral
            ? [...schema.values].map(String)
            : schema instanceof z.ZodBoolean
              ? ['true', 'false']
              : [],
      );
      expect([...question.choices.map(([key]: readonly [string, string]) => key)].sort(), place).toEqual(
        [...allowed].sort(),
      );
    }
  });

  it('takes every answer for the kind of quantity it is in the plan', () => {
    for (const [place, question] of PLACES) {
      if (question.of === undefined) continue;
      const { us, si } = UNITS[question.of as keyof typeof UNITS];
      const described = (places.get(place) ?? []).length > 0;
      expect(described, place).toBe(true);
      const { us: ofPlan, si: siOfPlan } = PLAN_UNITS[question.of as keyof typeof PLAN_UNITS];
      expect(us.label, place).toBe(ofPlan.label);
      expect(si.label, place).toBe(siOfPlan.label);
      expect(us.inSi / ofPlan.inSi, place).toBeCloseTo(1, 14);
      expect(si.inSi / siOfPlan.inSi, place).toBeCloseTo(1, 14);
    }
  });

  it('names the unit that stands in the schema', () => {
    const checked: string[] = [];
    const walk = (schema: z.core.$ZodType, at: string): void => {
      const description = (schema as z.ZodType).meta?.()?.['description'] as string | undefined;
      const unit = /\[us ([^,\]]+), si ([^\]]+)\]/.exec(description ?? '');
      const question = PLACES.get(at);
      if (unit && question?.of) {
        expect(UNITS[question.of as keyof typeof UNITS].us.label, at).toBe(unit[1]);
        expect(UNITS[question.of as keyof typeof UNITS].si.label, at).toBe(unit[2]);
        checked.push(at);
      }
      if (schema instanceof z.ZodExactOptional) walk(schema.unwrap(), at);
      else if (schema instanceof z.ZodObject)
        for (const [key, member] of Object.entries(schema.shape)) walk(member as z.core.$ZodType, `${at}/${key}`);
      else if (schema instanceof z.ZodArray) walk(schema.element, `${at}/*`);
      else if (schema instanceof z.ZodUnion) for (const option of schema.options) walk(option, at);
      else if (schema instanceof z.ZodTuple)
        schema.def.items.forEach((item, index) => {
          walk(item, `${at}/${index}`);
        });
    };
    walk(planDocumentSchema, '');
    expect(new Set(checked).size).toBeGreaterThan(90);
  });
});

describe('a plan in the form', () => {
  it('comes out as it went in', () => {
    for (const { id, plan } of demoPlans()) {
      const draft = draftOf(plan);
      const unshown = unshownIn(draft);
      const site = plan['site'] as { wind: unknown };
      const wind = typeof site.wind === 'object' ? site.wind : { speed: site.wind };
      expect(documentOf(draft).document, id).toEqual({ ...plan, site: { ...site, wind } });
      expect(unshown, id).toEqual([]);
    }
  });

  it('comes back from other units as it was typed, and means the same there', () => {
    for (const { id, plan } of demoPlans()) {
      const draft = draftOf(plan);
      const other = plan['units'] === 'us' ? 'si' : 'us';
      const there = draftInUnits(draft, other, new Map());
      const back = draftInUnits(there.draft, plan['units'] as 'us' | 'si', there.remembered);
      expect(documentOf(back.draft).document, id).toEqual(documentOf(draft).document);
    }
  });

  it('drops blank rows and says where the rest then stands', () => {
    const draft = {
      loads: [{}, { name: 'a', area: '1 ' }, { name: '' }, { name: 'b', note: '105' }],
      ratings: [{ of: 'tower' }],
    };
    const { document, draftPlace } = documentOf(draft);
    expect(document).toEqual({
      loads: [
        { name: 'a', area: 1 },
        { name: 'b', note: '105' },
      ],
    });
    expect(draftPlace('/loads/0/area')).toBe('/loads/1/area');
    expect(draftPlace('/loads/1')).toBe('/loads/3');
  });
});

describe('a number in the form', () => {
  it('is read as the service reads it', () => {
    for (const text of [
      '48',
      '0.405',
      '.5',
      '1/4',
      '1 1/4',
      '1-1/4',
      '1¼',
      '0,405',
      '1,250.5',
      '1,250',
      '1,05',
      '12,5 mm',
      '12,5 in',
      '1,2345',
      '1,250,000',
      '48 ft 6 in',
      '48\' 6"',
      '12 in',
      '25 mm',
      '1 1/4 in',
      '3 m',
      'x',
      '',
      '1e3',
      '-4',
    ]) {
      for (const units of ['us', 'si'] as const) {
        const theirs = readQuantityText(text, 'length', units);
        const ours = inSi(text, 'length', units);
        if (typeof theirs === 'number') expect(ours, text).toBeCloseTo(theirs, 12);
        else expect(ours, text).toBeNaN();
      }
    }
    expect(numberOf('1,250', 'si')).toBeNaN();
    expect(numberOf('1,05', 'us')).toBeNaN();
    expect(numberOf('1,05', 'si')).toBe(1.05);
  });

  it('is written by the rounding that the worksheet has', () => {
    const written = [
      [0, '0', '0'],
      [0.057, '0.057', '0.057'],
      [0.9999, '1', '0.9999'],
      [0.99951, '1', '0.9995'],
      [1, '1', '1.00'],
      [1.0004, '1', '1.0004'],
      [1.003, '1', '1.003'],
      [1.118, '1.12', '1.12'],
      [12.34, '12.3', '12.3'],
      [590.28, '590', '590'],
      [19_515.9, '19,516', '19,516'],
      [1_234_567, '1,234,567', '1,234,567'],
      [0.000123, '0.000123', '0.000123'],
    ] as const;
    for (const [value, figure, ratio] of written) {
      expect([figures(value), ratioFigures(value)], String(value)).toEqual([figure, ratio]);
    }
    expect(figures(-5.669)).toBe('−5.67');
  });

  it('changes units by exact factors, and leaves text with a unit of its own', () => {
    expect(inOtherUnits('48', 'length', 'us', 'si')).toBe('14.6304');
    expect(inOtherUnits('1 1/4', 'diameter', 'us', 'si')).toBe('31.75');
    expect(inOtherUnits('56 to 65', 'length', 'us', 'si')).toBe('17.0688 to 19.812');
    expect(inOtherUnits('160 km/h', 'speed', 'us', 'si')).toBe('160 km/h');
    expect(inOtherUnits('20', 'share', 'us', 'si')).toBe('20');
    expect(Number(inOtherUnits('46', 'stress', 'us', 'si'))).toBeCloseTo(317.158836, 4);
  });
});
