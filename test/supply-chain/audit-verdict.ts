export type AuditVerdict =
  | { readonly verdict: 'clean' }
  | { readonly verdict: 'findings'; readonly lines: readonly string[] }
  | { readonly verdict: 'no-answer'; readonly why: string };

interface Report {
  readonly error?: { readonly summary?: string; readonly code?: string };
  readonly message?: string;
  readonly vulnerabilities?: Readonly<Record<string, { readonly severity?: string; readonly range?: string }>>;
  readonly metadata?: { readonly vulnerabilities?: { readonly total?: number } };
}

/** What `npm audit --json` says: a registry that does not answer is told apart from one that knows of something. */
export function auditVerdict(output: string): AuditVerdict {
  let report: Report;
  try {
    report = JSON.parse(output) as Report;
  } catch {
    return { verdict: 'no-answer', why: 'what npm wrote is not JSON' };
  }
  const total = report.metadata?.vulnerabilities?.total;
  if (report.error !== undefined || typeof total !== 'number') {
    return { verdict: 'no-answer', why: report.error?.summary || report.error?.code || report.message || 'no report' };
  }
  if (total === 0) return { verdict: 'clean' };
  const lines = Object.entries(report.vulnerabilities ?? {}).map(
    ([name, { severity = 'unknown', range = '' }]) => `${name} ${range}: ${severity}`,
  );
  return { verdict: 'findings', lines };
}
