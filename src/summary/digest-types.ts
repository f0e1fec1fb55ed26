/** What a day leaves behind for the show-wide pages and the findings across days, once its frames are dropped. */
import type { Finding, FindingCounts } from "../core/finding.ts";
import type { DistanceM } from "../core/quantity.ts";
import type { DayRecord } from "../ingest/records.ts";
import type { NotedPlace } from "../model/checks/across-days.ts";
import type { RowCounts } from "../model/types.ts";
import type { FrameRate } from "../time/frame-rate.ts";
import type { LensStates } from "./state-histogram.ts";
import type { CalibrationState, DayTotals, LensUse } from "./types.ts";

/** What a take leaves behind for the show-wide pages, after its day was dropped. Small and plain: it is stored in the manifest. */
export interface TakeDigest {
  readonly address: string;
  readonly slate: string;
  readonly take: string;
  readonly camera: string;
  readonly scene: string | null;
  readonly roll: string | null;
  readonly clip: string | null;
  readonly circled: boolean;
  readonly status: string | null;
  readonly plate: string | null;
  readonly plateOf: string | null;
  readonly lens: string | null;
  readonly timecodeIn: string | null;
  readonly timecodeOut: string | null;
  readonly durationFrames: number;
  readonly durationSeconds: number;
  readonly focalMm: { readonly min: number; readonly max: number } | null;
  readonly tStop: { readonly widest: number; readonly deepest: number } | null;
  readonly focus: { readonly nearestM: DistanceM; readonly farthestM: DistanceM } | null;
  readonly pulls: number | null;
  readonly distortionCornerPercent: number | null;
  readonly findings: number;
  readonly remarks: string | null;
  /** Where its note stands, for findings across days; `null` for a take that only a log knows. */
  readonly noted: NotedPlace | null;
  /** Timecode rate. */
  readonly rate: FrameRate;
  /** Relative exposure in stops as in `TakeExposure`. */
  readonly lightStops: number | null;
  readonly beforeNdStops: number | null;
  /** What the page of all plates says beside; `null` for a take that is no plate. */
  readonly plateState: PlateState | null;
}

/** How a plate was shot, as far as other figures of the take do not say it. */
export interface PlateState {
  readonly sensorMode: string | null;
  readonly typicalStop: number | null;
  readonly heightM: number | null;
  readonly tiltDeg: number | null;
  readonly rollDeg: number | null;
  readonly filters: string | null;
  readonly calibration: CalibrationState;
  readonly hasLog: boolean;
  readonly framesMissing: number;
}

/** A file of the input as it was read; `file` is relative to the show folder. */
export interface InputDigest {
  readonly file: string;
  readonly sha256: string;
  readonly bytes: number;
}

export interface DayDigest {
  readonly date: string;
  readonly day: number | null;
  /** What the day file says. */
  readonly record: DayRecord;
  readonly totals: DayTotals;
  readonly lensUse: readonly LensUse[];
  readonly rows: RowCounts;
  readonly findingCounts: FindingCounts;
  readonly findings: readonly Finding[];
  readonly takes: readonly TakeDigest[];
  /** Sizes of the day's pack files in bytes, by name. */
  readonly packFiles: readonly { readonly name: string; readonly bytes: number }[];
  /** For calibration coverage: lens states in steps, by lens. */
  readonly lensStates: readonly LensStates[];
  /** Seconds of all clips of each camera, in letter order. */
  readonly cameraSeconds: Readonly<Record<string, number>>;
  /** Files of the day that were read, in name order. */
  readonly inputs: readonly InputDigest[];
}
