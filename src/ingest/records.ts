/**
 * What reading the show folder yields: records that still know the place of every cell, and nothing joined yet.
 * `null` = not recorded. Every record carries the place it was written at, so that later findings can point at it.
 */
import type { Place } from "../core/finding.ts";
import type { CalibrationPointValues, CoefficientConvention } from "../optics/convention.ts";
import type { FrameRate } from "../time/frame-rate.ts";

/** One value read from a cell: the value in canonical units, the exact text, and where the text stands. */
export interface Cell<T> {
  readonly value: T;
  readonly text: string;
  readonly place: Place;
}

/** A written range or single value, in the order written (`from` = `to` for a single value). */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A written stop: the number as written (`label`) and the exact series value (2.8 is 2.828...; 2.1, no label, is 2.1). */
export interface StopSpan {
  readonly from: number;
  readonly to: number;
  /** Whether a letter said T or f; `null` when none did (then it is a T-stop). */
  readonly kind: "t" | "f" | null;
}

/** A written focus: dioptres (1/m from the image plane, infinity = 0), in the order written. */
export interface FocusSpan {
  readonly fromDioptres: number;
  readonly toDioptres: number;
}

// ---------------------------------------------------------------------------------------------------- show.yaml

export interface CheckLimits {
  readonly stopDifference: number;
  readonly focusDifferenceFraction: number;
  readonly logCoverage: number;
  readonly clockDriftFrames: number;
  readonly widerThanLensStops: number;
}

export interface ShowRecord {
  readonly title: string;
  readonly code: string;
  readonly production: string | null;
  readonly unit: string;
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  readonly distances: "metric" | "imperial" | "both";
  readonly paper: "A4" | "Letter";
  readonly timeZone: string | null;
  readonly timecodeOut: "exclusive" | "inclusive";
  /** One number for all modes, a map from sensor mode to number, or `null`: active diagonal / 1500. */
  readonly circleOfConfusionMm: number | ReadonlyMap<string, number> | null;
  readonly limits: CheckLimits;
}

// ---------------------------------------------------------------------------------------------------- kit

export interface SensorMode {
  readonly camera: string;
  readonly body: string | null;
  readonly serial: string | null;
  readonly sensorMode: string;
  readonly activeWidthMm: number;
  readonly activeHeightMm: number;
  readonly resolutionX: number | null;
  readonly resolutionY: number | null;
  /** `null` when the cell is blank; 1 is then assumed by the model. */
  readonly squeeze: number | null;
  readonly place: Place;
}

export interface Lens {
  readonly id: string;
  readonly maker: string | null;
  readonly series: string | null;
  readonly serial: string | null;
  readonly kind: "prime" | "zoom";
  /** Marked focal length of a prime; `null` for a zoom. */
  readonly focalMm: number | null;
  readonly focalMinMm: number | null;
  readonly focalMaxMm: number | null;
  /** Exact series values (formats.md 3: labels from notes and kit count as exact). */
  readonly widestT: number | null;
  readonly widestF: number | null;
  /** tau, 0..1; from the kit, else (f/T)^2 when both widest stops are known, else `null`. */
  readonly transmittance: number | null;
  readonly closeFocusM: number | null;
  readonly frontDiameterMm: number | null;
  readonly massG: number | null;
  readonly lengthMm: number | null;
  readonly mount: string | null;
  /** `null` when the cell is blank: the sensor mode's holds, else 1. */
  readonly squeeze: number | null;
  /** From the image plane toward the object. */
  readonly entrancePupilMm: number | null;
  readonly frontToImageMm: number | null;
  readonly imageCircleMm: number | null;
  readonly remarks: string | null;
  readonly place: Place;
}

/** Coefficient words belong to optics; they are repeated here so that readers of records need one import. */
export type {
  CoefficientConvention,
  CoefficientName,
  Coefficients,
  Direction,
  DistortionModel,
  RadiusUnit,
} from "../optics/convention.ts";
export { COEFFICIENTS } from "../optics/convention.ts";

/** One row of a calibration table. */
export interface CalibrationPoint extends CalibrationPointValues {
  readonly place: Place;
}

export interface CalibrationTable {
  readonly lens: string;
  readonly file: string;
  readonly sha256: string;
  readonly convention: CoefficientConvention;
  readonly madeOn: string | null;
  readonly madeBy: string | null;
  readonly source: string | null;
  readonly points: readonly CalibrationPoint[];
}

export interface Kit {
  /** In file order; the first row of a camera is its default mode. */
  readonly modes: readonly SensorMode[];
  readonly lenses: readonly Lens[];
  /** By lens id. */
  readonly calibration: ReadonlyMap<string, CalibrationTable>;
}

// ---------------------------------------------------------------------------------------------------- day

export interface ScheduledScene {
  readonly scene: string;
  /** Pages in eighths (2 3/8 is 19). */
  readonly eighths: number | null;
  readonly seconds: number | null;
}

/** Minutes after 00:00 of the day's date; past midnight counts on (00:40+1 is 1480). */
export type DayMinutes = number;

export interface DayRecord {
  readonly date: string;
  readonly day: number | null;
  readonly of: number | null;
  readonly unit: string | null;
  readonly place: string | null;
  readonly call: DayMinutes | null;
  readonly firstShot: DayMinutes | null;
  readonly meals: readonly { readonly out: DayMinutes; readonly in: DayMinutes | null }[];
  readonly firstAfterMeal: DayMinutes | null;
  readonly wrap: DayMinutes | null;
  readonly scheduled: readonly ScheduledScene[];
  readonly completed: readonly string[];
  readonly part: readonly string[];
  readonly notShot: readonly string[];
  readonly contacts: readonly { readonly role: string; readonly text: string }[];
  readonly remarks: string | null;
  readonly soundRolls: readonly string[];
  /** Per camera: frames to add to a log's timecode to get the picture's, from that timecode of the picture on (`null`: all day). */
  readonly clocks: readonly {
    readonly camera: string;
    readonly offsetFrames: number;
    readonly from: string | null;
    readonly place: Place;
  }[];
}

export type TakeStatus = "good" | "ng" | "incomplete" | "false start" | "tail slate";
export type PlateKind = "hero" | "clean" | "reference" | "element" | "tile" | "grid";

/** One data row of notes.csv. A blank or refused cell is `null`; a refused cell has its finding already. */
export interface NoteRow {
  readonly place: Place;
  readonly slate: Cell<string>;
  readonly take: Cell<string>;
  readonly camera: Cell<string>;
  readonly scene: Cell<string> | null;
  readonly roll: Cell<string> | null;
  readonly clip: Cell<string> | null;
  /** Text only: the model reads it at the take's rate. */
  readonly tcIn: Cell<string> | null;
  readonly tcOut: Cell<string> | null;
  readonly rate: Cell<FrameRate> | null;
  readonly captureFps: Cell<number> | null;
  readonly lens: Cell<string> | null;
  readonly focalMm: Cell<Span> | null;
  readonly stop: Cell<StopSpan> | null;
  readonly focus: Cell<FocusSpan> | null;
  readonly filters: Cell<string> | null;
  readonly ndStops: Cell<number> | null;
  /** Degrees as written, or the exposure time in seconds: the model turns seconds into degrees at the capture rate. */
  readonly shutter: Cell<{ readonly degrees: number } | { readonly seconds: number }> | null;
  readonly ei: Cell<number> | null;
  readonly whiteBalanceK: Cell<number> | null;
  readonly sensorMode: Cell<string> | null;
  readonly heightM: Cell<number> | null;
  readonly tiltDeg: Cell<number> | null;
  readonly rollDeg: Cell<number> | null;
  readonly subjectM: Cell<number> | null;
  readonly circled: boolean;
  readonly status: Cell<TakeStatus> | null;
  readonly sound: Cell<"sync" | "mos"> | null;
  readonly plate: Cell<PlateKind> | null;
  readonly plateOf: Cell<string> | null;
  readonly still: Cell<string> | null;
  readonly remarks: Cell<string> | null;
}

// ---------------------------------------------------------------------------------------------------- logs

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

// ---------------------------------------------------------------------------------------------------- stills

export interface Still {
  /** Relative to the show folder. */
  readonly file: string;
  readonly name: string;
  readonly sha256: string;
  readonly bytes: number;
}

/** Everything of one day folder. */
export interface DayInput {
  readonly date: string;
  /** Folder relative to the show folder, such as `days/2026-03-14`. */
  readonly folder: string;
  readonly record: DayRecord;
  /** Place of a key of day.yaml; a whole-file place where the key is absent. */
  keyPlace(key: string): Place;
  readonly notes: readonly NoteRow[];
  /** `days/<date>/notes.csv` where it exists. */
  readonly notesFile: string | null;
  readonly logs: readonly LensLog[];
  readonly stills: readonly Still[];
  /** Every input file of the day with its hash, in name order. */
  readonly files: readonly { readonly file: string; readonly sha256: string; readonly bytes: number }[];
}

/** Everything outside the day folders. */
export interface ShowInput {
  readonly show: ShowRecord;
  readonly kit: Kit;
  /** Dates of the day folders that exist, in order. */
  readonly dates: readonly string[];
  readonly files: readonly { readonly file: string; readonly sha256: string; readonly bytes: number }[];
}
