/**
 * A finding is data about something the builder noticed. Text for people is made at the edge (cli, view, pdf);
 * nothing throws for bad input.
 */

/** `error`: figures are lost or wrong. `check`: a person should look. `remark`: good to know. */
export type Severity = "error" | "check" | "remark";

/** A place in an input file. `file` is relative to the show folder with `/`; line and column are physical and 1-based. */
export interface Place {
  readonly file: string;
  readonly line: number | null;
  /** Counts characters (code points) of the physical line; the character where the cell begins. */
  readonly column: number | null;
  /** Number of characters to underline, when known. */
  readonly length?: number;
}

export interface Finding {
  /** Stable code such as `CSV122`; explained in the finding catalogue. */
  readonly code: string;
  readonly severity: Severity;
  readonly file: string | null;
  readonly line: number | null;
  readonly column: number | null;
  readonly length: number | null;
  /** Canonical column or key name, such as `focus_m`. */
  readonly field: string | null;
  /** What is wrong, with the value as written. One sentence. */
  readonly message: string;
  /** How to mend it. Never empty. */
  readonly hint: string;
  /** Address of the take it concerns, such as `a-24b-3`. */
  readonly take: string | null;
  /** Why somebody accepted the finding (day.yaml `accepted`); `null` when nobody did. */
  readonly accepted: string | null;
  /** Set where the finding stands for so many others of its code and file that are not listed. */
  readonly more?: number;
}

export interface FindingInput {
  readonly code: string;
  readonly severity: Severity;
  readonly place?: Place | null;
  readonly field?: string | null;
  readonly message: string;
  readonly hint: string;
  readonly take?: string | null;
}

/** Completes a finding: what has no place has `null`. */
export function finding(input: FindingInput): Finding {
  const place = input.place ?? null;
  return Object.freeze({
    code: input.code,
    severity: input.severity,
    file: place?.file ?? null,
    line: place?.line ?? null,
    column: place?.column ?? null,
    length: place?.length ?? null,
    field: input.field ?? null,
    message: sentence(input.message, input.field ?? null),
    hint: sentence(input.hint, null),
    take: input.take ?? null,
    accepted: null,
  });
}

/** Capital letter at the start and full stop at the end; a column's name stays as it is written. */
function sentence(text: string, field: string | null): string {
  const first = /^[a-z]+(?=[\s,]|$)/.exec(text)?.[0] ?? null;
  const capital = first !== null && first !== field ? first.charAt(0).toUpperCase() + text.slice(1) : text;
  return /[.!?:]$/.test(capital) ? capital : `${capital}.`;
}

const SEVERITY_ORDER: Readonly<Record<Severity, number>> = { error: 0, check: 1, remark: 2 };

/** Stable order: by file, line, column, severity, code, message. Places that are `null` come first; "and 12 more" comes last in its file. */
export function sortFindings(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      compareText(a.file ?? "", b.file ?? "") ||
      Number(a.more !== undefined) - Number(b.more !== undefined) ||
      (a.line ?? 0) - (b.line ?? 0) ||
      (a.column ?? 0) - (b.column ?? 0) ||
      SEVERITY_ORDER[a.severity] - SEVERITY_ORDER[b.severity] ||
      compareText(a.code, b.code) ||
      compareText(a.message, b.message),
  );
}

/** Findings that still ask for something: nobody has accepted them. */
export function openFindings(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter((found) => found.accepted == null);
}

/** Number of findings of each severity, those that are not listed one by one among them; accepted ones are not counted. */
export interface FindingCounts {
  readonly error: number;
  readonly check: number;
  readonly remark: number;
}

/** How many findings there are of each severity. Accepted ones are not counted; one that stands for more counts as so many. */
export function countFindings(findings: readonly Finding[]): FindingCounts {
  const counts = { error: 0, check: 0, remark: 0 };
  for (const f of findings) if (f.accepted == null) counts[f.severity] += f.more ?? 1;
  return counts;
}

/** Orders by UTF-16 code units, so that the result never depends on the reader's locale. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
