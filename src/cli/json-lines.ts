/** `--json`: one object a line on standard output, and nothing else there. */
import type { DayReport } from "../build/effects.ts";
import type { Finding, FindingCounts } from "../core/finding.ts";

const LINES_SCHEMA = "lens-daybook/lines/1";

export function findingLine(finding: Finding): string {
  const { code, severity, file, line, column, field, message, hint, take, accepted } = finding;
  return jsonLine({
    type: "finding",
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
  return jsonLine({ type: "day", date, day, state, reason, takes, milliseconds: Math.round(milliseconds) });
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
  return jsonLine({ type: "summary", ...summary, milliseconds: Math.round(summary.milliseconds) });
}

/** What a line holds; `type` says which kind it is. */
export interface JsonLine {
  readonly type: string;
  readonly [key: string]: unknown;
}

/** Any object as a line. Its kind and the schema that describes it (docs/schema/cli-line.schema.json) come first. */
export function jsonLine({ type, ...rest }: JsonLine): string {
  return `${JSON.stringify({ type, schema: LINES_SCHEMA, ...rest })}\n`;
}
