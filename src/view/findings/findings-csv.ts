/** All findings of the show as a table for a spreadsheet. */
import { csvRows } from "../../core/sheet-text.ts";
import { settled } from "../../format/units.ts";
import type { DatedFinding } from "./finding-filters.ts";

/** The columns of a day's findings.csv in its order, the day before them and why it was accepted after. */
const HEAD = ["date", "code", "severity", "file", "line", "column", "field", "message", "hint", "take", "accepted"];

/** A row a finding, in the order given; a place that a finding has not is blank. */
export function findingsCsv(findings: readonly DatedFinding[]): string {
  const text = (value: string | number | null): string => (value === null ? "" : settled(String(value)));
  return csvRows([
    HEAD,
    ...findings.map(({ finding: f, date }) =>
      [date, f.code, f.severity, f.file, f.line, f.column, f.field, f.message, f.hint, f.take, f.accepted ?? null].map(text),
    ),
  ]);
}
