import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { LOG } from "../../core/findings/log.ts";
import { type ColumnSpec, limitProblem, limitsOf } from "../../csv/column-spec.ts";
import type { LogTable } from "../../csv/log-table.ts";
import { readNumber } from "../written/number.ts";
import { METRES_PER_FOCUS_UNIT } from "./focus-units.ts";
import type { LogLayout } from "./log-layout.ts";
import { dropSentinels } from "./sentinels.ts";

const INFINITY = /^\+?(?:inf|infinity|\u221e)$/i;

/** What programs write for "no value": NaN in its many spellings, null, dashes. */
export const NO_VALUE =
  /^(?:[+-]?nan(?:\([a-z]*\))?|-?1\.#(?:ind|qnan|snan)\d*|null|nil|none|undefined|#?n\/?a|[-\u2013\u2014]+|\?+)$/i;

/**
 * Reads the number cells of the rows that are not rejected yet and that are not plain (signs, exponents, `inf`), tells of those that are no numbers, of distances that are marks
 * for something else, and of numbers outside the limits of their column. Afterwards a column holds good numbers and NaN; a focus column holds `Infinity` for infinity.
 */
export function settleNumbers(
  table: LogTable,
  layout: LogLayout,
  decimal: "." | ",",
  file: string,
  rejected: Uint8Array,
  found: FindingCollector,
): void {
  const specs = new Map<number, ColumnSpec>(layout.readings.map(({ spec, column }) => [column, spec]));
  if (layout.focus !== null) specs.set(layout.focus.column, layout.focus.spec);
  const noValue: NoValue = { first: null, count: 0, columns: new Set() };
  for (const { row, column } of table.odd) {
    const spec = specs.get(column);
    const values = table.numbers[column];
    if (spec === undefined || values === null || values === undefined || rejected[row] === 1) continue;
    const text = table.cell(row, column).text.trim();
    if (spec === layout.focus?.spec && INFINITY.test(text)) {
      values[row] = spec.name === "focus_dpt" ? 0 : Number.POSITIVE_INFINITY;
      continue;
    }
    const number = readNumber(text, decimal, spec.unit);
    if (number.ok) values[row] = number.value;
    else if (NO_VALUE.test(text)) {
      noValue.first ??= { row, column };
      noValue.count++;
      noValue.columns.add(column);
    } else {
      found.addIn(file, CSV.notANumber, () => ({
        place: table.cell(row, column).place,
        field: spec.name,
        message: `${spec.name} is ${number.problem}`,
        hint:
          spec.unit === undefined || number.hint.includes("The column is in")
            ? number.hint
            : `${number.hint} The column is in ${spec.unit}.`,
      }));
    }
  }
  tellOfNoValue(table, noValue, specs, file, found);
  if (layout.focus !== null) dropMarks(table, layout.focus.column, layout.focus.spec.name, file, found);
  for (const [column, spec] of specs) keepWithinLimits(table, column, focusLimits(spec), file, found);
}

/** The cells with a word for no value: the first, how many, and in which columns. */
interface NoValue {
  first: { readonly row: number; readonly column: number } | null;
  count: number;
  readonly columns: Set<number>;
}

/** One finding for all words such as NaN in a file: a recorder that writes them does so in every row without a reading. */
function tellOfNoValue(
  table: LogTable,
  { first, count, columns }: NoValue,
  specs: ReadonlyMap<number, ColumnSpec>,
  file: string,
  found: FindingCollector,
): void {
  if (first === null) return;
  const { place, text } = table.cell(first.row, first.column);
  const fields = [...columns].map((column) => specs.get(column)?.name ?? "");
  const where = count === 1 ? "" : `, the first of ${count} such cells in ${fields.join(", ")}`;
  found.addIn(file, LOG.noValue, () => ({
    place,
    field: specs.get(first.column)?.name ?? null,
    message: `${specs.get(first.column)?.name} is "${text.trim()}"${where}`,
    hint: "Such cells count as not logged. Leave them empty if the recorder can be told to.",
  }));
}

function dropMarks(table: LogTable, column: number, field: string, file: string, found: FindingCollector): void {
  const values = table.numbers[column];
  if (values === null || values === undefined) return;
  const distances = {
    file,
    field,
    rows: table.rows,
    value: (row: number) => values[row] as number,
    drop: (row: number) => {
      values[row] = Number.NaN;
    },
    cell: (row: number) => table.cell(row, column),
  };
  dropSentinels(distances, found);
}

/** Distances are greater than 0, dioptres at least 0. */
function focusLimits(spec: ColumnSpec): ColumnSpec {
  if (spec.holds !== "distance") return spec;
  return spec.name === "focus_dpt" ? { ...spec, from: 0 } : { ...spec, above: 0 };
}

function keepWithinLimits(table: LogTable, column: number, spec: ColumnSpec, file: string, found: FindingCollector): void {
  const values = table.numbers[column];
  if (values === null || values === undefined) return;
  const { low, high } = limitsOf(spec);
  const infinity = spec.holds === "distance" ? Number.POSITIVE_INFINITY : Number.NaN;
  for (let row = 0; row < values.length; row++) {
    const value = values[row] as number;
    if ((value >= low && value <= high) || Number.isNaN(value) || value === infinity) continue;
    const problem = limitProblem(spec, value);
    if (problem === null) continue;
    values[row] = Number.NaN;
    found.addIn(file, CSV.outOfRange, () => {
      const cell = table.cell(row, column);
      return {
        place: cell.place,
        field: spec.name,
        message: `${spec.name} is ${cell.text.trim()}: it ${problem}`,
        hint: "Leave the cell empty when nothing was logged; infinity is inf.",
      };
    });
  }
}

/** Dioptres from a settled focus column: 1/m, infinity is 0, NaN stays. */
export function dioptresOf(values: Float64Array, name: string): Float64Array {
  if (name === "focus_dpt") return values;
  const factor = METRES_PER_FOCUS_UNIT[name] ?? 1;
  const result = new Float64Array(values.length);
  for (let row = 0; row < values.length; row++) result[row] = 1 / ((values[row] as number) * factor);
  return result;
}
