import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import { type ColumnSpec, limitProblem } from "../csv/column-spec.ts";
import type { LogTable } from "../csv/log-table.ts";
import type { LogLayout } from "./log-layout.ts";
import { readNumber } from "./written/number.ts";

const INFINITY = /^\+?(?:inf|infinity|\u221e)$/i;

/** What a factor turns a distance column into metres with. */
const METRES: Readonly<Record<string, number>> = {
  focus_m: 1,
  focus_mm: 1e-3,
  focus_cm: 1e-2,
  focus_ft: 0.3048,
  focus_in: 0.0254,
};

/**
 * Reads the number cells that are not plain (signs, exponents, `inf`), tells of those that are no numbers, and of numbers outside the
 * limits of their column. Afterwards a column holds good numbers and NaN; a focus column holds `Infinity` for infinity.
 */
export function settleNumbers(table: LogTable, layout: LogLayout, decimal: "." | ",", file: string, found: FindingCollector): void {
  const specs = new Map<number, ColumnSpec>(layout.readings.map(({ spec, column }) => [column, spec]));
  if (layout.focus !== null) specs.set(layout.focus.column, layout.focus.spec);
  for (const { row, column } of table.odd) {
    const spec = specs.get(column);
    const values = table.numbers[column];
    if (spec === undefined || values === null || values === undefined) continue;
    const text = table.cell(row, column).text.trim();
    if (spec === layout.focus?.spec && INFINITY.test(text)) {
      values[row] = spec.name === "focus_dpt" ? 0 : Number.POSITIVE_INFINITY;
      continue;
    }
    const number = readNumber(text, decimal);
    if (number.ok) values[row] = number.value;
    else {
      found.addIn(file, CSV.notANumber, () => ({
        place: table.cell(row, column).place,
        field: spec.name,
        message: `${spec.name} is ${number.problem}`,
        hint: spec.unit === undefined ? number.hint : `${number.hint} The column is in ${spec.unit}.`,
      }));
    }
  }
  for (const [column, spec] of specs) keepWithinLimits(table, column, focusLimits(spec), file, found);
}

/** Distances are greater than 0, dioptres at least 0. */
function focusLimits(spec: ColumnSpec): ColumnSpec {
  if (spec.holds !== "distance") return spec;
  return spec.name === "focus_dpt" ? { ...spec, from: 0 } : { ...spec, above: 0 };
}

function keepWithinLimits(table: LogTable, column: number, spec: ColumnSpec, file: string, found: FindingCollector): void {
  const values = table.numbers[column];
  if (values === null || values === undefined) return;
  if (spec.above === undefined && spec.from === undefined && spec.upTo === undefined) return;
  for (let row = 0; row < values.length; row++) {
    const value = values[row] as number;
    if (Number.isNaN(value)) continue;
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
  const factor = METRES[name] ?? 1;
  const result = new Float64Array(values.length);
  for (let row = 0; row < values.length; row++) result[row] = 1 / ((values[row] as number) * factor);
  return result;
}
