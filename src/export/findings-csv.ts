/** findings.csv: one row per finding, in the order of day.json. */
import type { Finding } from "../core/finding.ts";
import { csvText } from "./csv-text.ts";

export const FINDINGS_COLUMNS = ["code", "severity", "file", "line", "column", "field", "message", "hint", "take"] as const;

/** The text of findings.csv, header included; what a finding does not say is an empty cell. */
export function findingsCsv(findings: readonly Finding[]): string {
  return csvText(
    FINDINGS_COLUMNS,
    findings.map((f) => [f.code, f.severity, f.file, f.line, f.column, f.field, f.message, f.hint, f.take]),
  );
}
