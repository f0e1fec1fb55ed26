/** Where the lens data in a still's file are not those of its take. */

import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { NOTE } from "../core/findings/note.ts";
import type { CheckLimits } from "../ingest/show/check-limits.ts";
import { stopsBetween } from "../optics/exposure.ts";
import { sameName } from "./address.ts";
import type { Take } from "./types.ts";

const FOCAL_FRACTION = 0.05;

interface Range {
  readonly low: number;
  readonly high: number;
  /** Where it is from, in words. */
  readonly from: string;
}

/** At most one remark a take, that names all differences. What either side does not have is not compared. */
export function stillFindings(take: Take, limits: CheckLimits): Finding[] {
  const data = take.still?.data;
  if (take.still === null || data === undefined) return [];
  const { note, track } = take;
  const differences: string[] = [];

  const focal = logged(track?.columns.focal_mm) ?? noted(note?.focalMm?.value) ?? marked(take);
  if (data.focalMm !== null && focal !== null && beyond(data.focalMm, focal, (a, b) => Math.abs(a / b - 1) > FOCAL_FRACTION))
    differences.push(`${shown(data.focalMm)} mm (${focal.from} ${between(focal, shown)} mm)`);

  const stop = logged(track?.columns.t) ?? noted(note?.stop?.value);
  if (
    data.tStop !== null &&
    stop !== null &&
    beyond(data.tStop, stop, (a, b) => Math.abs(stopsBetween(a, b)) > limits.stopDifference)
  )
    differences.push(`T${shown(data.tStop)} (${stop.from} T${between(stop, shown)})`);

  const span = note?.focus?.value;
  const focus =
    logged(track?.columns.focus) ?? (span === undefined ? null : noted({ from: span.fromDioptres, to: span.toDioptres }));
  const far = (a: number, b: number): boolean => Math.abs(a - b) > limits.focusDifferenceFraction * Math.max(a, b);
  if (data.focusDioptres !== null && focus !== null && beyond(data.focusDioptres, focus, far))
    differences.push(`focus ${metres(data.focusDioptres)} (${focus.from} ${between(focus, metres)})`);

  const serial = take.lens?.serial ?? null;
  if (data.lensSerial !== null && serial !== null && sameName(data.lensSerial) !== sameName(serial))
    differences.push(`lens serial ${data.lensSerial} (${take.lensId} in the kit ${serial})`);

  if (differences.length === 0) return [];
  return [
    findingOf(NOTE.stillDiffers, {
      place: note?.still?.place ?? { file: take.still.file, line: null, column: null },
      field: "still",
      message: `the still ${take.still.name} says ${differences.join(", ")}`,
      hint: "Look whether the still is of this take. Its data are shown nowhere else and change no figure.",
      take: take.address,
    }),
  ];
}

function beyond(value: number, range: Range, differs: (a: number, b: number) => boolean): boolean {
  return (value < range.low && differs(value, range.low)) || (value > range.high && differs(value, range.high));
}

function logged(values: Float64Array | undefined): Range | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values ?? []) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low <= high ? { low, high, from: "the log has" } : null;
}

function noted(span: { readonly from: number; readonly to: number } | undefined): Range | null {
  if (span === undefined) return null;
  return { low: Math.min(span.from, span.to), high: Math.max(span.from, span.to), from: "the notes have" };
}

function marked({ lens }: Take): Range | null {
  if (lens === null) return null;
  const low = lens.focalMm ?? lens.focalMinMm;
  const high = lens.focalMm ?? lens.focalMaxMm;
  return low === null || high === null ? null : { low, high, from: "the kit has" };
}

function shown(value: number): string {
  return String(Number(value.toFixed(2)));
}

function metres(dioptres: number): string {
  return dioptres <= 0 ? "infinity" : `${shown(1 / dioptres)} m`;
}

function between({ low, high }: Range, write: (value: number) => string): string {
  const [first, last] = [write(low), write(high)];
  return first === last ? first : `${first} to ${last}`;
}
