import type { UnitSystem } from '../../foundation/index.ts';
import { fieldAt } from '../../words/index.ts';
import { type EntryWarning, type Fault, type FaultCode, pointerTo, type QueryCode } from '../faults/fault.ts';
import { givenWords } from '../faults/given-words.ts';
import { placeWords } from '../faults/place-words.ts';
import { BOUNDS, type FieldBounds } from '../quantities/field-bounds.ts';
import { type DecimalSign, hasDecimalComma, readingsOf } from '../quantities/number-text.ts';
import { PLAN_UNITS, type PlanDimension, quantityWords, WORDS_FOR_DIMENSION } from '../quantities/plan-dimension.ts';
import { QUANTITY_LENGTH, type QuantityReading, readQuantityText, splitPair } from '../quantities/quantity-text.ts';
import { unitsAllowed } from '../quantities/unit-names.ts';
import type { Quantity, QuantityPair } from '../schema/field-schemas.ts';

/** So that a bound given in another unit is not missed by the last digit of a conversion, and nothing is as good as zero. */
const ROUNDING = 1e-9;

/**
 * Reads the quantities of one plan into SI and gathers what is wrong and what is worth a second look.
 * What is missing or faulty reads as NaN, whose comparisons are all false, so that one fault draws no others after it;
 * the reading counts only when no fault was found, and then it holds no NaN.
 */
export class PlanReader {
  readonly units: UnitSystem;
  readonly faults: Fault[] = [];
  readonly entryWarnings: EntryWarning[] = [];
  readonly #document: unknown;
  readonly #decimal: DecimalSign;

  constructor(document: unknown, units: UnitSystem, decimal: DecimalSign) {
    this.#document = document;
    this.units = units;
    this.#decimal = decimal;
  }

  /**
   * A quantity that must be there, in SI; NaN where it is missing or faulty. What is no field of a plan brings its bounds,
   * one end of a pair the whole text.
   */
  quantity(
    given: Quantity | undefined,
    at: string,
    key: PropertyKey,
    boundedBy?: FieldBounds,
    whole: Quantity | undefined = given,
  ): number {
    if (given === undefined) return Number.NaN;
    const bounds = boundedBy ?? boundsAt(pointerTo(at, key));
    const value =
      typeof given === 'number'
        ? given * PLAN_UNITS[bounds.dimension][this.units].inSi
        : readQuantityText(given, bounds.dimension, this.units, this.#decimal);
    if (typeof value !== 'number') return this.#unreadable(value, given, whole, bounds.dimension, at, key);
    if (typeof given === 'string' && this.#decimal === 'point' && hasDecimalComma(given)) {
      const taken = readingsOf(given, 'point')[0];
      const says = `${this.words(pointerTo(at, key))}: "${given}" taken as ${taken}, its comma as the decimal sign.`;
      this.query(pointerTo(at, key), 'decimal-comma', says);
    }
    const slack = ROUNDING * Math.max(Math.abs(bounds.low), Math.abs(bounds.high));
    // Zero is the same in every unit: what is below it by the least is below the ground.
    const tooLow = bounds.aboveLow ? value <= bounds.low + slack : value < bounds.low - ROUNDING * Math.abs(bounds.low);
    if (value > bounds.high + slack || tooLow) {
      return this.#outOfBounds(given, value, bounds, at, key);
    }
    return value;
  }

  /** A quantity that may be absent. */
  perhaps(given: Quantity | undefined, at: string, key: PropertyKey): number | undefined {
    return given === undefined ? undefined : this.quantity(given, at, key);
  }

  /** One value for both ends, or [low, high]. */
  pair(given: QuantityPair | undefined, at: string, key: string): [number, number] {
    if (typeof given === 'object') {
      const inner = pointerTo(at, key);
      return [this.quantity(given[0], inner, 0), this.quantity(given[1], inner, 1)];
    }
    const ends = typeof given === 'string' ? splitPair(given) : undefined;
    if (ends !== undefined) {
      const end = (text: string) => this.quantity(text, at, key, undefined, given);
      return [end(ends[0]), end(ends[1])];
    }
    const value = this.quantity(given, at, key);
    return [value, value];
  }

  /** A quantity in the plan's units, in words. */
  say(value: number, dimension: PlanDimension): string {
    return quantityWords(value, dimension, this.units);
  }

  /** A place in the owner's words. */
  words(pointer: string): string {
    return placeWords(this.#document, pathOf(pointer));
  }

  fault(
    pointer: string,
    code: FaultCode,
    given: string,
    allowed: string,
    says: string,
    readings?: readonly string[],
  ): void {
    const choice = readings === undefined ? {} : { readings };
    this.faults.push({ pointer: `#${pointer}`, code, given, allowed, says, ...choice });
  }

  query(pointer: string, code: QueryCode, says: string): void {
    // A name keeps the letters its owner gave it, but for the first of a sentence.
    const whole = `${says.charAt(0).toUpperCase()}${says.slice(1)}`;
    this.entryWarnings.push({ pointer: `#${pointer}`, code, says: whole });
  }

  #unreadable(
    why: Exclude<QuantityReading, number>,
    given: Quantity,
    whole: Quantity | undefined,
    dimension: PlanDimension,
    at: string,
    key: PropertyKey,
  ): number {
    const pointer = pointerTo(at, key);
    const place = this.words(pointer);
    const shown = givenWords(given);
    const plain = PLAN_UNITS[dimension][this.units].label;
    const allowed =
      why === 'too-long'
        ? `at most ${QUANTITY_LENGTH} characters`
        : `a number${plain === '' ? '' : ` in ${plain}`}, or text with ${unitsAllowed(dimension)}`;
    const readings = why === 'ambiguous-comma' ? readingsOf(String(whole), this.#decimal) : undefined;
    const says: Record<typeof why, string> = {
      unreadable: `${place}: ${shown} is not ${WORDS_FOR_DIMENSION[dimension]}. Give ${allowed}.`,
      'ambiguous-comma': `${place}: ${shown} can mean two numbers. Write ${readings?.join(' or ')}.`,
      'unknown-unit': `${place}: ${shown} names no unit known for ${WORDS_FOR_DIMENSION[dimension]}. Give ${allowed}.`,
      'too-long': `${place} has more than ${QUANTITY_LENGTH} characters: give a number and its unit only.`,
    };
    this.fault(pointer, why, shown, allowed, says[why], readings);
    return Number.NaN;
  }

  #outOfBounds(given: Quantity, value: number, bounds: FieldBounds, at: string, key: PropertyKey): number {
    const pointer = pointerTo(at, key);
    const unit = PLAN_UNITS[bounds.dimension][this.units].label;
    const bare = typeof given === 'number' || /^[\d\s.,/e+-]+$/i.test(given);
    const shown = (bare ? `${given} ${unit}` : String(given)).trim();
    const low = Number((bounds.low / PLAN_UNITS[bounds.dimension][this.units].inSi).toPrecision(4));
    const high = this.say(bounds.high, bounds.dimension);
    const allowed = bounds.aboveLow && value < bounds.high ? `more than ${low} ${unit}`.trim() : `${low} to ${high}`;
    this.fault(pointer, 'out-of-bounds', shown, allowed, `${this.words(pointer)}: ${shown} given, ${allowed} allowed.`);
    return Number.NaN;
  }
}

/** Between which values the field at a place must be, as the catalogue says. */
function boundsAt(pointer: string): FieldBounds {
  const name = fieldAt(pointer)?.bounds;
  if (name === undefined) throw new Error(`no bounds are known at ${pointer}`);
  return BOUNDS[name];
}

/** A pointer's members; those that are digits stand for places in a list. */
function pathOf(pointer: string): PropertyKey[] {
  return pointer
    .split('/')
    .slice(1)
    .map((part) => (/^\d+$/.test(part) ? Number(part) : part.replaceAll('~1', '/').replaceAll('~0', '~')));
}
