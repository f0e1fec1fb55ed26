/** A lens log as read: columns of numbers, and the place of every cell. Nothing is joined yet. */
import type { Place } from "../../core/finding.ts";
import type { CoefficientConvention } from "../../optics/convention.ts";
import type { FrameRate } from "../../time/frame-rate.ts";

/** Numeric columns of a log in canonical units. `focus` is in dioptres (1/m, infinity = 0) from where `distanceFrom` says. */
export const LOG_COLUMNS = [
  "focus",
  "t",
  "f",
  "focal_mm",
  "hyperfocal_m",
  "k1",
  "k2",
  "k3",
  "k4",
  "k5",
  "k6",
  "p1",
  "p2",
  "lambda",
  "cx_mm",
  "cy_mm",
  "a1",
  "a2",
  "a3",
  "entrance_pupil_mm",
  "squeeze",
  "pan_deg",
  "tilt_deg",
  "roll_deg",
  "height_m",
  "encoder_focus",
  "encoder_iris",
  "encoder_zoom",
] as const;
export type LogColumn = (typeof LOG_COLUMNS)[number];

/** How the rows of a log say when they were. */
export type LogTiming =
  /** `label`: frame of the day at the log's rate, per row; -1 when the row was rejected. */
  | { readonly kind: "timecode"; readonly frames: Int32Array }
  /** 0-based frame count from `start`, else from the take's tc_in. */
  | { readonly kind: "frame"; readonly frames: Int32Array; readonly start: number | null }
  /** Seconds from `start`, else from the take's tc_in. */
  | { readonly kind: "time"; readonly seconds: Float64Array; readonly start: number | null };

/** What the key lines (or a field map's `set`, or the samples) say for the whole log. */
export interface LogKeys {
  readonly camera: string | null;
  readonly clip: string | null;
  readonly slate: string | null;
  readonly take: string | null;
  readonly lens: string | null;
  /** Serial number of the lens when the log names it so (OpenTrackIO). */
  readonly lensSerial: string | null;
  readonly date: string | null;
  /** `null`: the log does not say; the show's rate holds. */
  readonly rate: FrameRate | null;
  readonly dropFrame: boolean | null;
  readonly distanceFrom: "image-plane" | "front";
  readonly convention: CoefficientConvention;
  readonly clockOffsetFrames: number;
  readonly startTimecode: string | null;
}

export interface LensLog {
  readonly file: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly keys: LogKeys;
  /** Place of a key line, for findings. */
  keyPlace(key: string): Place;
  /** Number of data rows, rejected ones included. All arrays have this length. */
  readonly rows: number;
  readonly timing: LogTiming;
  /** The rate and the drop flag that `timing` was read with. */
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  /** 1 = the row cannot be used (its finding exists already), such as a row without a readable timecode or a repeated one. */
  readonly rejected: Uint8Array;
  /** NaN = not logged. A column that the log lacks is absent. */
  readonly columns: Readonly<Partial<Record<LogColumn, Float64Array>>>;
  /** Header of the distance column as written in canonical names, such as `focus_ft`; `null` without one. */
  readonly focusField: string | null;
  /** Per-row text of identity columns when the log has them as columns (a clip column, a slate column ...). */
  readonly rowKeys: Readonly<Partial<Record<"camera" | "clip" | "slate" | "take" | "lens", (row: number) => string>>>;
  /** Columns that nobody knows, word for word. */
  readonly unknown: readonly { readonly name: string; text(row: number): string }[];
  /** Physical line of a row. */
  lineOf(row: number): number;
  /** Place of a row's cell by canonical column (`focus`, `t`, `timecode`, ...), with its exact text. */
  cell(row: number, column: string): { readonly place: Place; readonly text: string };
}
