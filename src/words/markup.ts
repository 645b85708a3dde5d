/** Marks that mean something in markup, and how they are written there as letters. */
export const MARKS_IN_MARKUP = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' } as const;

/** Text as it may stand in markup, between tags and in attributes. */
export function escapedMarks(text: string): string {
  return text.replace(/[&<>"']/g, (mark) => MARKS_IN_MARKUP[mark as keyof typeof MARKS_IN_MARKUP]);
}
