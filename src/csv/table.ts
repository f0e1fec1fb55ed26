import type { Place } from "../core/finding.ts";
import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import { didYouMean, nearestNames } from "../core/nearest-name.ts";
import { type ColumnSpec, namesOf } from "./column-spec.ts";
import { type CsvDocument, type CsvRow, readCsv, shorten } from "./read.ts";

/** One data row of a table whose columns are known. */
export interface TableRow {
  /** The row as a whole: its first cell. */
  readonly place: Place;
  /** Trimmed text of a cell; empty when blank, when the row ends before, and when the table lacks the column. */
  text(column: string): string;
  /** Text of a cell exactly as written. */
  rawText(column: string): string;
  cellPlace(column: string): Place;
}

export interface Table {
  readonly document: CsvDocument;
  /** Names of the columns that the table has. */
  readonly columns: ReadonlySet<string>;
  readonly rows: readonly TableRow[];
}

/**
 * Reads a table with known columns: unknown columns are remarks with the nearest name, columns twice and rows that are too short
 * or too long are errors. `null`, with an error, when a required column is missing or there is no header.
 */
export function readTable(text: string, file: string, specs: readonly ColumnSpec[], found: FindingCollector): Table | null {
  const known = namesOf(specs);
  const document = readCsv(text, file, known);
  found.addAll(document.findings);
  if (document.header === null) {
    found.add(CSV.empty, {
      place: { file, line: null, column: null },
      message: "the file has no header row",
      hint: `Begin with the column names: ${specs
        .map((s) => s.name)
        .slice(0, 6)
        .join(",")}, ...`,
    });
    return null;
  }
  const index = headerIndex(document.header, file, known, found);
  if (!hasRequired(document.header, index, specs, found)) return null;
  const width = document.header.cells.length;
  for (const row of document.rows) tellOfWidth(row, document.header, width, found);
  return { document, columns: new Set(index.keys()), rows: document.rows.map((row) => tableRow(row, index, width)) };
}

function tableRow(row: CsvRow, index: ReadonlyMap<string, number>, width: number): TableRow {
  const rawText = (column: string): string => row.cells[index.get(column) ?? -1] ?? "";
  return {
    place: row.place(0),
    rawText,
    text: (column) => rawText(column).trim(),
    cellPlace: (column) => row.place(index.get(column) ?? width),
  };
}

function headerIndex(header: CsvRow, file: string, known: ReadonlySet<string>, found: FindingCollector): Map<string, number> {
  const index = new Map<string, number>();
  const unknown: { readonly name: string; readonly place: Place }[] = [];
  header.cells.forEach((cell, i) => {
    const name = cell.trim();
    if (name === "") return;
    const first = index.get(name);
    if (first !== undefined) {
      found.addIn(file, CSV.duplicateColumn, () => ({
        place: header.place(i),
        field: name,
        message: `the column "${name}" comes twice, as number ${first + 1} and as number ${i + 1}`,
        hint: "Rename or delete one of them. The first is read.",
      }));
    } else if (known.has(name)) {
      index.set(name, i);
    } else unknown.push({ name, place: header.place(i) });
  });
  for (const { name, place } of unknown) {
    const near = nearestNames(spelt(name), known).find((other) => !index.has(other));
    found.addIn(file, near === undefined ? CSV.unknownColumn : CSV.nearColumn, () => ({
      place,
      field: name,
      message:
        near === undefined
          ? `the column "${name}" is not known and not read`
          : `the column "${name}" is not read, and may be meant as "${near}"`,
      hint:
        near === undefined ? "Leave it, or see `daybook columns` for the names." : `Rename it to ${near} if that is what it holds.`,
    }));
  }
  return index;
}

/** A header with its unit in brackets, as the columns have it: `Close focus (m)` is close_focus_m. */
function spelt(name: string): string {
  return name.replace(/\s*[[(]([^\])]*)[\])]\s*$/, "_$1");
}

function hasRequired(
  header: CsvRow,
  index: ReadonlyMap<string, number>,
  specs: readonly ColumnSpec[],
  found: FindingCollector,
): boolean {
  const missing = specs.filter((spec) => spec.required === true && !index.has(spec.name));
  const written = header.cells.map((cell) => cell.trim()).filter((name) => name !== "" && !index.has(name));
  for (const spec of missing) {
    const near = didYouMean(spec.name, written).replace("Did you mean", "Is it").trim();
    found.add(CSV.missingColumn, {
      place: { ...header.place(0), length: 1 },
      field: spec.name,
      message: `the table has no column ${spec.name}, and no row can be used without it`,
      hint:
        near !== ""
          ? `${near} Rename it to ${spec.name}.`
          : `Add a column named ${spec.name}: ${spec.about.charAt(0).toLowerCase()}${spec.about.slice(1)}.`,
    });
  }
  return missing.length === 0;
}

function tellOfWidth(row: CsvRow, header: CsvRow, width: number, found: FindingCollector): void {
  const count = row.cells.length;
  if (count < width) {
    // A spreadsheet writes delimiters behind the last column that has a name.
    if (header.cells.slice(count).every((cell) => cell.trim() === "")) return;
    found.add(CSV.shortRow, {
      place: row.place(0),
      field: header.cells[count]?.trim() || null,
      message: `the row has ${count} cells, the header ${width}`,
      hint: `The columns from "${header.cells[count]?.trim()}" on count as blank. Complete the row, or add delimiters up to the last column.`,
    });
  } else if (count > width && row.cells.slice(width).some((cell) => cell.trim() !== "")) {
    found.add(CSV.longRow, {
      place: row.place(width),
      message: `the row has ${count} cells, the header ${width}; ${shorten(row.cells.slice(width).join(" "))} is left out`,
      hint: "Put a text that holds the delimiter in quotes.",
    });
  }
}
