/** Words and values that several rules use. */
import { rationalToNumber } from "../../core/rational.ts";
import type { Take } from "../types.ts";

/** Logged values of a column in ascending order. */
export function sortedValues(take: Take, column: "t" | "f" | "focus" | "focal_mm"): Float64Array {
  const values = take.track?.columns[column];
  return values === undefined ? new Float64Array() : values.filter((value) => !Number.isNaN(value)).sort();
}

export function also(count: number): string {
  return count === 1 ? "" : ` (and ${count - 1} more ${count === 2 ? "row" : "rows"})`;
}

export function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}

export function metres(dioptres: number): string {
  return dioptres <= 0 ? "infinity" : `${round(1 / dioptres)} m`;
}

/** Frames of the take's timecode in a second of real time. */
export function plainPerSecond(take: Take): number {
  return rationalToNumber(take.rate);
}

/** Names without case and spaces; where `marks` do not tell two apart, without those too: `K 34`, `k-34` and `K34` are one lens. */
export function looseName(text: string, marks: "count" | "do not count"): string {
  const plain = text.normalize("NFKC").replace(/\s+/g, "").toLowerCase();
  return marks === "count" ? plain : plain.replace(/[._-]+/g, "");
}
