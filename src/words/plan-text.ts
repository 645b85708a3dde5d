/** Tells one plan from another, by SHA-256 in hexadecimal. */
export interface PlanHash {
  /** Of the plan in format 2, as RFC 8785 writes JSON: members by name, nothing between them. */
  readonly format2: string;
  /** Where the plan came in format 1: of that document, as it was printed then. */
  readonly format1?: string;
}

/** What has no letter of its own stands as JSON escapes it, so that what is printed can be typed in again. */
const UNPRINTED = /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff\ufffe\uffff]/gu;

/**
 * A plan as it is printed.
 *
 * @returns JSON in lines, all of it in letters that print
 * @example planText({ title: 'Bluff' }) // '{\n  "title": "Bluff"\n}'
 */
export function planText(plan: unknown): string {
  return JSON.stringify(plan, null, 2).replace(
    UNPRINTED,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
