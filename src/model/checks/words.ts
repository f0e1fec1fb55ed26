/** Words and values that several rules use. */
import type { Take } from "../types.ts";

/** Logged values of a column in ascending order. */
export function sortedValues(take: Take, column: "t" | "f" | "focus" | "focal_mm"): Float64Array {
  const values = take.track?.columns[column];
  return values === undefined ? new Float64Array() : values.filter((value) => !Number.isNaN(value)).sort();
}

export function also(count: number): string {
  return count === 1 ? "" : ` (and ${count - 1} more rows)`;
}

export function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}

export function metres(dioptres: number): string {
  return dioptres <= 0 ? "infinity" : `${round(1 / dioptres)} m`;
}
