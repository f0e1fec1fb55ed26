/** The joined day: takes with the log frames that belong to them. Still raw values; figures are computed in `summary`. */
import type { Finding } from "../core/finding.ts";
import type { DistanceM } from "../core/quantity.ts";
import type { LogColumn } from "../ingest/log/log-record.ts";
import type {
  CalibrationTable,
  DayRecord,
  Lens,
  NoteRow,
  PlateKind,
  SensorMode,
  ShowRecord,
  Still,
  TakeStatus,
} from "../ingest/records.ts";
import type { CoefficientConvention } from "../optics/convention.ts";
import type { FrameRate } from "../time/frame-rate.ts";

/** A run of frames of a take, both ends included, 0-based from timecodeIn. */
export interface FrameRun {
  readonly first: number;
  readonly last: number;
}

/**
 * One take's log on the take's own frames: index 0 is `timecodeIn`, the length is `durationFrames`.
 * Arrays are NaN where not logged. `focus` is dioptres from the image plane.
 */
export interface LensTrack {
  readonly frames: number;
  /** 1 where a log row fell on the frame. */
  readonly logged: Uint8Array;
  readonly framesLogged: number;
  readonly columns: Readonly<Partial<Record<LogColumn, Float64Array>>>;
  /** Source row of each frame (index into the log `log`), -1 where not logged. */
  readonly row: Int32Array;
  /** Coefficients as the log writes them are in this convention. */
  readonly convention: CoefficientConvention;
  /** Columns nobody knows, by frame; empty text where not logged. */
  readonly unknown: readonly { readonly name: string; text(frame: number): string }[];
  /** True when distances were measured from the front and could not be converted: focus is then absent. */
  readonly focusUnconverted: boolean;
  /** The encoder table that `focus` was made with, since the log has encoder readings and no distances; absent where it has them. */
  readonly focusTable?: { readonly lens: string; readonly file: string };
  /** Smallest difference between neighbouring written focus values in dioptres (0 when unknown); floor of the pull detector. */
  readonly focusQuantisation: number;
}

export interface Take {
  /** `<camera>-<slate>-<take>` folded; unique but for a duplicate address (see `duplicate`). */
  readonly address: string;
  /** A later row with the address of an earlier one: it is in day.json, has no page and counts in no total. */
  readonly duplicate: boolean;
  readonly slate: string;
  readonly take: string;
  readonly camera: string;
  readonly scene: string | null;
  readonly roll: string | null;
  readonly clip: string | null;
  readonly circled: boolean;
  readonly status: TakeStatus | null;
  readonly sound: "sync" | "mos" | null;
  readonly plate: PlateKind | null;
  readonly plateOf: string | null;
  /** `null` for a take that only a log knows. */
  readonly note: NoteRow | null;

  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  /** Frame of the day, 0-based, at `rate`; `null` when neither notes nor log give an extent. */
  readonly inFrame: number | null;
  /** 0 when there is no extent. */
  readonly durationFrames: number;
  /** Position in shooting order: frames since the day's call (or its largest gap). */
  readonly order: number;
  readonly captureFps: number;
  readonly captureFpsNoted: boolean;

  /** Id of the lens that served (log before note), even when the kit lacks it. */
  readonly lensId: string | null;
  readonly lensSource: "logged" | "noted" | null;
  readonly lens: Lens | null;
  readonly calibration: CalibrationTable | null;
  readonly sensorMode: SensorMode | null;
  /** One number: the log's, else the lens's, else the mode's. */
  readonly squeeze: number;
  readonly circleOfConfusionMm: number | null;

  readonly logFiles: readonly string[];
  /** First and last physical line of the rows used, per file in `logFiles`. */
  readonly logLines: readonly {
    readonly file: string;
    readonly first: number;
    readonly last: number;
    readonly used: number;
    readonly sha256: string;
    readonly matchedBy: string;
  }[];
  readonly track: LensTrack | null;
  readonly gaps: readonly FrameRun[];
  readonly still: Still | null;
}

export interface RowCounts {
  readonly read: number;
  readonly used: number;
  readonly unmatched: number;
  readonly rejected: number;
}

export interface Day {
  readonly show: ShowRecord;
  readonly date: string;
  readonly record: DayRecord;
  /** In shooting order, then by camera. */
  readonly takes: readonly Take[];
  readonly rows: RowCounts;
  /** Per log file: what became of its rows. */
  readonly logs: readonly (RowCounts & { readonly file: string; readonly sha256: string; readonly bytes: number })[];
  readonly findings: readonly Finding[];
  readonly files: readonly { readonly file: string; readonly sha256: string; readonly bytes: number }[];
}

export type { DistanceM };
