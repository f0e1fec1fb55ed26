/**
 * What reading the show folder yields: records that still know the place of every cell, and nothing joined yet.
 * `null` = not recorded. Every record carries the place it was written at, so that later findings can point at it.
 */
import type { Place } from "../core/finding.ts";
import type { ShowAcceptance } from "../core/findings/accepted.ts";
import type { CalibrationPointValues, CoefficientConvention } from "../optics/convention.ts";
import type { FrameRate } from "../time/frame-rate.ts";
import type { EncoderTable } from "./log/encoder-table.ts";
import type { LensLog } from "./log/log-record.ts";
import type { StillData } from "./pictures/still-lens.ts";
import type { CheckLimits } from "./show/check-limits.ts";
import type { FocusSpan, Span, StopSpan } from "./written/spans.ts";

/** One value read from a cell: the value in canonical units, the exact text, and where the text stands. */
export interface Cell<T> {
  readonly value: T;
  readonly text: string;
  readonly place: Place;
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
  readonly accepted: readonly ShowAcceptance[];
}

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
  /** Exact values of the series of stops: marks in notes and kit count as exact. */
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
  readonly pupilMagnification: number | null;
  readonly frontToImageMm: number | null;
  readonly imageCircleMm: number | null;
  readonly remarks: string | null;
  readonly place: Place;
}

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
  /** By lens id; absent where the kit has none. */
  readonly encoders?: ReadonlyMap<string, EncoderTable>;
}

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
  readonly accepted: readonly Acceptance[];
}

/** A finding that somebody has looked at and leaves as it is (day.yaml `accepted`). */
export interface Acceptance {
  readonly code: string;
  /** Address of the take, such as `a-24b-3`; `null`: every finding of the code on this day. */
  readonly take: string | null;
  readonly reason: string;
  readonly place: Place;
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

export interface Still {
  /** Relative to the show folder. */
  readonly file: string;
  readonly name: string;
  readonly sha256: string;
  readonly bytes: number;
  /** What its header says; absent where nobody looked. */
  readonly data?: StillData;
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
