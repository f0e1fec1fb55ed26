/** CSV as the pack writes it: UTF-8, LF, comma, quotes where needed, and no cell that a spreadsheet would run. */
import { csvField } from "../core/sheet-text.ts";
import type { FrameRate } from "../time/frame-rate.ts";
import { tidy } from "./vfx/units.ts";

export type CsvCell = string | number | boolean | null;

/** Text of a table with its header row; `null` is an empty cell. */
export function csvText(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [header, ...rows].map((row) => `${row.map(csvCell).join(",")}\n`).join("");
}

/** One cell. Numbers have twelve significant digits at most. Text that begins with `= + - @` and is no number gets a leading apostrophe. */
export function csvCell(value: CsvCell): string {
  if (value === null) return "";
  if (typeof value === "number") return String(tidy(value) + 0);
  if (typeof value === "boolean") return String(value);
  return csvField(value);
}

/** A timecode rate: `24`, `24000/1001`. */
export function rateCell({ num, denom }: FrameRate): string {
  return denom === 1 ? String(num) : `${num}/${denom}`;
}
