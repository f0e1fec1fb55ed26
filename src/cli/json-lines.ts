/** `--json`: one object a line on standard output, and nothing else there. */
import type { DayReport } from "../build/effects.ts";
import type { Finding, FindingCounts } from "../core/finding.ts";

export const LINES_SCHEMA = "lens-daybook/lines/1";

export function findingLine(finding: Finding): string {
  const { code, severity, file, line, column, field, message, hint, take, accepted } = finding;
  return jsonLine({
    type: "finding",
    schema: LINES_SCHEMA,
    code,
    severity,
    file,
    line,
    column,
    field,
    message,
    hint,
    take,
    accepted,
  });
}

export function dayLine(report: DayReport): string {
  const { date, day, state, reason, takes, milliseconds } = report;
  return jsonLine({ type: "day", schema: LINES_SCHEMA, date, day, state, reason, takes, milliseconds: Math.round(milliseconds) });
}

export interface SummaryLine {
  readonly command: "build" | "check";
  readonly exit: number;
  readonly days: number;
  readonly built: number;
  readonly unchanged: number;
  readonly takes: number;
  readonly findings: FindingCounts;
  readonly rows: { readonly read: number; readonly used: number; readonly unmatched: number; readonly rejected: number };
  readonly milliseconds: number;
  /** Path of the report's first page; `null` when there is none. */
  readonly open: string | null;
}

export function summaryLine(summary: SummaryLine): string {
  return jsonLine({ type: "summary", schema: LINES_SCHEMA, ...summary, milliseconds: Math.round(summary.milliseconds) });
}

/** Any other object, such as an explanation. */
export function jsonLine(value: object): string {
  return `${JSON.stringify(value)}\n`;
}
