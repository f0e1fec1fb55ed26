import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { LOG } from "../../core/findings/log.ts";
import { METRES_PER_FOCUS_UNIT } from "./focus-units.ts";

/** Numbers that recorders write where there is no distance: rows of nines, round thousands, the largest numbers of 16 and 32 bits. */
const MARKS: ReadonlySet<number> = new Set([
  999, 999.9, 999.99, 999.999, 9999, 9999.9, 9999.99, 99_999, 999_999, 9_999_999, 1000, 10_000, 100_000, 1_000_000, 327.67, 3276.7,
  32_767, 655.35, 6553.5, 65_535, 2_147_483_647, 4_294_967_295,
]);
/** Those that stand out even where the unit makes them a short distance. 1000 mm is too good a distance to be among them. */
const SHORT_MARKS: ReadonlySet<number> = new Set([999, 9999, 32_767, 65_535]);

/** Lens scales end before this distance, and then say infinity. */
const BEYOND_SCALES_M = 60;
/** No lens focuses nearer than a centimetre. */
const NEAREST_DPT = 100;
const HUGE = 1e9;
/** A short mark is a reading after all when another distance lies within this fraction of it. */
const NEIGHBOUR = 0.1;

/** Distances of a log in the unit in which they were written, NaN where there is none. */
export interface WrittenDistances {
  readonly file: string;
  /** Canonical name of the column: its unit. */
  readonly field: string;
  readonly rows: number;
  value(row: number): number;
  /** Takes the distance of a row away. */
  drop(row: number): void;
  cell(row: number): { readonly place: Place; readonly text: string };
}

/**
 * Takes away the distances that are marks for "nothing" or for infinity: 0, -1, 999, 9999, 65535, 1000 m and the like. One check for
 * each mark in a file, at its first row. A mark that the unit makes a short distance (999 mm) counts only where it comes more than
 * once and no other distance is near it.
 */
export function dropSentinels(distances: WrittenDistances, found: FindingCollector): void {
  const { rows, field } = distances;
  const inDioptres = field === "focus_dpt";
  const metresPerUnit = METRES_PER_FOCUS_UNIT[field] ?? 1;
  const isMark = inDioptres ? isDioptreMark : (value: number) => isDistanceMark(value, metresPerUnit);
  const rowsOf = new Map<number, number[]>();
  for (let row = 0; row < rows; row++) {
    const value = distances.value(row);
    if (!Number.isFinite(value) || !isMark(value)) continue;
    const same = rowsOf.get(value);
    if (same === undefined) rowsOf.set(value, [row]);
    else same.push(row);
  }
  for (const [value, same] of rowsOf) {
    const isShort = !inDioptres && value > 0 && value * metresPerUnit < BEYOND_SCALES_M;
    if (isShort && (same.length < 2 || hasNeighbour(distances, value))) continue;
    tell(distances, inDioptres || value <= 0 ? "nothing" : "infinity", same, found);
    for (const row of same) distances.drop(row);
  }
}

function isDioptreMark(value: number): boolean {
  return value === -1 || (value >= NEAREST_DPT && (MARKS.has(value) || value >= HUGE));
}

function isDistanceMark(value: number, metresPerUnit: number): boolean {
  if (value === 0 || value === -1 || value >= HUGE) return true;
  const metres = value * metresPerUnit;
  if (metres < BEYOND_SCALES_M) return SHORT_MARKS.has(value);
  // 1000 m in feet or inches is no round number: to a tenth of a metre.
  return MARKS.has(value) || MARKS.has(Math.round(metres * 10) / 10);
}

function hasNeighbour(distances: WrittenDistances, mark: number): boolean {
  let others = false;
  for (let row = 0; row < distances.rows; row++) {
    const value = distances.value(row);
    if (Number.isNaN(value) || value === mark) continue;
    others = true;
    if (Math.abs(value - mark) <= NEIGHBOUR * mark) return true;
  }
  // A log that has nothing else gives no reason for doubt.
  return !others;
}

function tell(
  distances: WrittenDistances,
  meaning: "nothing" | "infinity",
  rows: readonly number[],
  found: FindingCollector,
): void {
  const { file, field } = distances;
  const first = distances.cell(rows[0] as number);
  const others = rows.length - 1;
  const more = others === 0 ? "" : ` here and in ${others} more ${others === 1 ? "row" : "rows"}`;
  const cells = others === 0 ? "the cell" : "the cells";
  const means = meaning === "nothing" ? "that nothing was measured" : "infinity";
  found.addIn(file, LOG.sentinel, () => ({
    place: first.place,
    field,
    message: `${field} is ${first.text.trim()}${more}, which is no distance and probably means ${means}`,
    hint:
      meaning === "nothing"
        ? `Leave ${cells} empty; for infinity write ${field === "focus_dpt" ? "0 or inf" : "inf"}.`
        : `Write inf if the lens stood at infinity, or leave ${cells} empty. Until then the focus counts as not logged there.`,
  }));
}
