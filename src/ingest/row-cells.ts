import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import type { FindingKind } from "../core/findings/kind.ts";
import { type ColumnSpec, limitProblem } from "../csv/column-spec.ts";
import type { TableRow } from "../csv/table.ts";
import type { Cell } from "./records.ts";
import { readNumber } from "./written/number.ts";
import type { Reading } from "./written/reading.ts";

/** Reads the cells of one row; a refused cell is an error at its place and `null`. */
export interface RowCells {
  /** Text of a cell, `null` when blank. */
  text(column: string): string | null;
  textCell(column: string): Cell<string> | null;
  /** Number within the limits of the column. */
  number(column: string): number | null;
  numberCell(column: string): Cell<number> | null;
  /** A written form; `kind` is the kind of finding when it is refused. */
  cell<T>(column: string, kind: FindingKind, reader: (text: string) => Reading<T>): Cell<T> | null;
}

export function rowCells(row: TableRow, specs: readonly ColumnSpec[], found: FindingCollector): RowCells {
  const cell = <T>(column: string, kind: FindingKind, reader: (text: string) => Reading<T>): Cell<T> | null => {
    const text = row.text(column);
    if (text === "") return null;
    const reading = reader(text);
    const place = row.cellPlace(column);
    if (reading.ok) return { value: reading.value, text, place };
    found.add(kind, { place, field: column, message: reading.problem, hint: reading.hint });
    return null;
  };
  const textCell = (column: string): Cell<string> | null => {
    const text = row.text(column);
    return text === "" ? null : { value: text, text, place: row.cellPlace(column) };
  };
  const numberCell = (column: string): Cell<number> | null => {
    const spec = specs.find((s) => s.name === column);
    const number = cell(column, CSV.notANumber, (text) => readNumber(text, ".", spec?.unit));
    const problem = number === null || spec === undefined ? null : limitProblem(spec, number.value);
    if (number === null || problem === null) return number;
    found.add(CSV.outOfRange, {
      place: number.place,
      field: column,
      message: `${column} is ${number.text}: it ${problem}`,
      hint: `Mend the number${spec?.unit === undefined ? "" : ` (${spec.unit})`}, or leave the cell blank.`,
    });
    return null;
  };
  return {
    cell,
    textCell,
    numberCell,
    text: (column) => textCell(column)?.value ?? null,
    number: (column) => numberCell(column)?.value ?? null,
  };
}

/** True when every required column has text; otherwise one error for each blank one. */
export function hasRequiredCells(row: TableRow, specs: readonly ColumnSpec[], kind: FindingKind, found: FindingCollector): boolean {
  const blank = specs.filter((spec) => spec.required === true && row.text(spec.name) === "");
  for (const spec of blank) {
    found.add(kind, {
      place: row.cellPlace(spec.name),
      field: spec.name,
      message: `${spec.name} is blank`,
      hint: `Fill it in (${spec.about.charAt(0).toLowerCase()}${spec.about.slice(1)}); the row is left out until then.`,
    });
  }
  return blank.length === 0;
}
