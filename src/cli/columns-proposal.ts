/** A proposed field map as text for people, and as objects for programs. */
import { namesOf } from "../csv/column-spec.ts";
import { TIMING_COLUMNS } from "../csv/columns.ts";
import type { Delimiter } from "../csv/delimiter.ts";
import type { MapProposal } from "../ingest/columns/propose-map.ts";
import type { JsonLine } from "./json-lines.ts";

const TIMING = namesOf(TIMING_COLUMNS);
const DELIMITER_WORDS: Readonly<Record<Delimiter, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars" };

/** The whole answer to `daybook columns FILE`. */
export function proposalText(proposal: MapProposal): string {
  const { file, rows, decimalFrom, decimal, columns, yaml, preview, findings } = proposal;
  const sign = decimalFrom === null ? "" : `, decimal ${decimal === "," ? "comma" : "point"} (${decimalFrom})`;
  const parts = [
    `${file}: ${rows} ${rows === 1 ? "row" : "rows"}, ${DELIMITER_WORDS[proposal.delimiter]} between cells${sign}`,
    table(columns.map(({ header, column, reasons }) => [header, column ?? "kept word for word", reasons.join("; ")])),
    ...doubts(proposal),
  ];
  if (columns.every(({ column }) => column === null))
    parts.push(
      "No column looks like anything that a lens log has, so there is no map to propose. `daybook columns` lists the names.",
    );
  else if (yaml === null) parts.push("No map is needed: the log has the known names.");
  else parts.push(`Add to kit/columns.yaml, if this is right (nothing is guessed when a report is built):\n\n${yaml.trimEnd()}`);
  if (yaml !== null && !columns.some(({ column }) => TIMING.has(column ?? "")))
    parts.push(
      "No column gives the time, and no row can be used without it: log a timecode, a frame count or seconds from the start.",
    );
  if (preview.rows.length > 0) parts.push(`The first rows as they would be read:\n${table([preview.columns, ...preview.rows])}`);
  const problems = findings.filter((finding) => finding.severity === "error");
  const more = problems.length > 5 ? [`  and ${problems.length - 5} more`] : [];
  if (problems.length > 0) {
    const lines = problems.slice(0, 5).map((f) => `  line ${f.line ?? "-"}: ${f.message} ${f.hint}`);
    parts.push(["What would not be read:", ...lines, ...more].join("\n"));
  }
  return `${parts.join("\n\n")}\n`;
}

/** One object for the layout, one a column, one for the map, one a row of the preview. */
export function proposalObjects(proposal: MapProposal): readonly JsonLine[] {
  const { file, rows, delimiter, decimal, columns, yaml, preview } = proposal;
  return [
    { type: "layout", file, rows, delimiter, decimal },
    ...columns.map(({ header, column, reasons, doubt }) => ({ type: "guess", header, column, reasons, doubt })),
    { type: "map", yaml },
    ...preview.rows.map((cells) => ({
      type: "row",
      ...Object.fromEntries(preview.columns.map((name, i) => [name, cells[i] ?? ""])),
    })),
  ];
}

function doubts({ columns }: MapProposal): readonly string[] {
  const open = columns.filter(({ doubt }) => doubt !== null);
  return open.length === 0 ? [] : [["To decide:", ...open.map(({ header, doubt }) => `  ${header}: ${doubt}.`)].join("\n")];
}

function table(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => [...(row[i] ?? "")].length)));
  const line = (row: readonly string[]): string =>
    row.map((cell, i) => cell + " ".repeat(Math.max(0, (widths[i] ?? 0) - [...cell].length))).join("   ");
  return rows.map((row) => `  ${line(row)}`.trimEnd()).join("\n");
}
