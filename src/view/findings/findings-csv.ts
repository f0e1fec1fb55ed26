/** All findings of the show as a table for a spreadsheet. */
import { csvRows } from "../../core/sheet-text.ts";
import { settled } from "../../format/units.ts";
import type { DatedFinding } from "./finding-filters.ts";

const HEAD = ["severity", "code", "date", "take", "file", "line", "column", "message", "hint", "accepted"];

/** A row a finding, in the order given; a place that a finding has not is blank. */
export function findingsCsv(findings: readonly DatedFinding[]): string {
  const text = (value: string | number | null): string => (value === null ? "" : settled(String(value)));
  return csvRows([
    HEAD,
    ...findings.map(({ finding: f, date }) =>
      [f.severity, f.code, date, f.take, f.file, f.line, f.column, f.message, f.hint, f.accepted ?? null].map(text),
    ),
  ]);
}
