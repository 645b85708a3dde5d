import { createHash } from 'node:crypto';
import { type PlanHash, planText } from '../words/index.ts';

/**
 * What tells a plan from every other.
 *
 * @returns the hash of its document, and of the document of format 1 it was read from
 * @example planHash({ document: { units: 'us' } }).format2.length // 64
 * @source rfc8785
 */
export function planHash(reading: { readonly document: unknown; readonly documentFormat1?: unknown }): PlanHash {
  const format2 = digest(JSON.stringify(byName(reading.document)));
  if (reading.documentFormat1 === undefined) return { format2 };
  return { format2, format1: digest(planText(reading.documentFormat1)) };
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** The same value, its members in the order of their names. */
function byName(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(byName);
  if (typeof value !== 'object' || value === null) return value;
  const members = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return Object.fromEntries(members.map(([key, member]) => [key, byName(member)]));
}
