/** Figures of takes, days, lenses and the show. Plain numbers with units in the names; nothing is formatted here. */
import type { Finding, FindingCounts } from "../core/finding.ts";
import type { DistanceM, Source } from "../core/quantity.ts";
import type { Kit, Lens, ShowRecord } from "../ingest/records.ts";
import type { Day, FrameRun, RowCounts, Take } from "../model/types.ts";
import type { BreathingFrom } from "./breathing.ts";
import type { CalibrationArea } from "./calibration-area.ts";
import type { SlateExposure, TakeExposure } from "./exposure.ts";
import type { TakeOverscan } from "./overscan.ts";
import type { SubjectFocus } from "./subject.ts";

export interface PullFigures {
  /** 0-based from timecodeIn: the last held frame before. */
  readonly startFrame: number;
  readonly endFrame: number;
  readonly frames: number;
  readonly fromM: DistanceM;
  readonly toM: DistanceM;
  readonly extentM: DistanceM;
  readonly extentDioptres: number;
  readonly extentDepths: number | null;
  /** At the capture rate. */
  readonly peakDioptresPerSecond: number;
  readonly meanDioptresPerSecond: number;
  /** A slow follow without a hold, longer than three seconds. */
  readonly follow: boolean;
  /** Change of the horizontal angle of view from start to end, percent; `null` when it is not known. */
  readonly breathingPercent: number | null;
  readonly breathingFrom: BreathingFrom | null;
}

export interface DepthFigures {
  /** 0-based frame of the take; `null` when it is calculated from notes. */
  readonly frame: number | null;
  readonly focusM: DistanceM;
  readonly nearM: number;
  readonly farM: DistanceM;
  readonly totalM: DistanceM;
}

export type StopUsed = "f" | "t-times-root-tau" | "t";

/** Values at corner, middle of the side, middle of the top. */
export interface ThreePoints {
  readonly corner: number;
  readonly midSide: number;
  readonly midTop: number;
}

/** Whether the calibration could be used. */
export type CalibrationState =
  | { readonly kind: "logged" }
  | { readonly kind: "inside" }
  /** Beyond the table on these axes: the nearest point was used. */
  | {
      readonly kind: "nearest";
      readonly axes: readonly { readonly axis: "focal" | "focus" | "stop"; readonly asked: number; readonly used: number }[];
    }
  | { readonly kind: "none"; readonly reason: string };

/** Figures on every frame of the take; NaN = not known; Infinity = infinity. Arrays have `durationFrames` entries. */
export interface FrameFigures {
  readonly frames: number;
  readonly logged: Uint8Array;
  /** Dioptres from the image plane, 0 = infinity. */
  readonly focusDioptres: Float64Array;
  readonly tStop: Float64Array;
  readonly fStop: Float64Array;
  readonly focalMm: Float64Array;
  /** Dioptres of the near limit (the larger number) and of the far limit (0 = infinity). */
  readonly nearDioptres: Float64Array;
  readonly farDioptres: Float64Array;
  readonly hyperfocalM: Float64Array;
  readonly angleHorizontalDeg: Float64Array;
  readonly angleVerticalDeg: Float64Array;
}

export interface TakeSummary {
  readonly take: Take;
  readonly timecodeIn: string | null;
  readonly timecodeOut: string | null;
  readonly framesExpected: number;
  readonly framesLogged: number;
  readonly framesMissing: number;
  readonly gaps: readonly (FrameRun & { readonly from: string; readonly to: string; readonly frames: number })[];
  readonly durationSeconds: number;

  readonly focal: { readonly minMm: number; readonly maxMm: number; readonly source: Source } | null;
  readonly tStop: {
    readonly widest: number;
    readonly deepest: number;
    readonly typical: number | null;
    readonly rangeStops: number;
    readonly source: Source;
  } | null;
  readonly focus: {
    readonly nearestM: DistanceM;
    readonly farthestM: DistanceM;
    readonly startM: DistanceM;
    readonly endM: DistanceM;
    readonly reachesInfinity: boolean;
    readonly extentDioptres: number;
    readonly source: Source;
  } | null;
  /** `null`: no log with focus. */
  readonly pulls: readonly PullFigures[] | null;
  readonly depthOfField: { readonly shallowest: DepthFigures | null; readonly stopUsed: StopUsed; readonly source: Source } | null;
  readonly hyperfocalM: { readonly min: number; readonly max: number } | null;
  readonly loggedHyperfocalM: { readonly min: number; readonly max: number } | null;
  readonly angleOfViewDeg: { readonly horizontal: number; readonly vertical: number; readonly diagonal: number } | null;
  /** Index of the take's middle logged frame, the frame that single figures are taken at; `null` without a log. */
  readonly middleFrame: number | null;
  readonly distortionPercent: ThreePoints | null;
  readonly shadingStops: ThreePoints | null;
  readonly calibration: CalibrationState;
  readonly entrancePupilMm: { readonly min: number; readonly max: number; readonly source: Source } | null;

  readonly cameraHeightM: { readonly value: number; readonly source: Source } | null;
  readonly tiltDeg: { readonly value: number; readonly source: Source } | null;
  readonly rollDeg: { readonly value: number; readonly source: Source } | null;
  readonly filters: string | null;
  readonly ndStops: number | null;
  readonly shutterDeg: number | null;
  readonly ei: number | null;
  readonly whiteBalanceK: number | null;
  readonly subjectM: number | null;
  readonly remarks: string | null;

  /** `null` without a log. */
  readonly perFrame: FrameFigures | null;
  readonly findings: readonly Finding[];
  readonly exposure: TakeExposure;
  /** While a subject distance is noted and the take has a log. */
  readonly subject: SubjectFocus | null;
  /** Set when the coefficients that served were made on another sensor area. */
  readonly calibrationArea: CalibrationArea | null;
  readonly overscan: TakeOverscan | null;
  /** Why there is no overscan, none in one direction, or none for some frames. */
  readonly overscanReason: string | null;
  /** Stops that cos^4 alone takes from the corner at the shortest focal length: an estimate, only where shading is not measured and nothing is squeezed. */
  readonly naturalFallOffStops: number | null;
}

export interface DayTotals {
  readonly slates: number;
  readonly takes: number;
  readonly clips: number;
  readonly circled: number;
  readonly eighthsScheduled: number | null;
  readonly eighthsCompleted: number | null;
  /** Camera letter to frames, in letter order. */
  readonly mediaFrames: Readonly<Record<string, number>>;
  readonly mediaSeconds: number;
  readonly circledSeconds: number;
  readonly shootingRatio: number | null;
  readonly framesExpected: number;
  readonly framesLogged: number;
}

export interface LensUse {
  readonly lens: string;
  /** Clips of the lens that served. */
  readonly takes: number;
  readonly frames: number;
  readonly focalMm: { readonly min: number; readonly max: number } | null;
  readonly tStop: { readonly widest: number; readonly deepest: number } | null;
  readonly focus: { readonly nearestM: DistanceM; readonly farthestM: DistanceM } | null;
}

export interface DaySummary {
  readonly show: ShowRecord;
  readonly kit: Kit;
  readonly day: Day;
  readonly date: string;
  readonly takes: readonly TakeSummary[];
  readonly totals: DayTotals;
  readonly lensUse: readonly LensUse[];
  readonly findings: readonly Finding[];
  readonly findingCounts: FindingCounts;
  readonly rows: RowCounts;
  /** In order of each slate's first take. */
  readonly slateExposure: readonly SlateExposure[];
}

/** The lens set compared: what does not match between lenses of one kit. */
export interface SetConsistency {
  readonly lenses: readonly Lens[];
  readonly widestT: {
    readonly fastest: number;
    readonly slowest: number;
    readonly spreadStops: number;
    readonly lightRatio: number;
  } | null;
  /** Diameters in mm with the ids that have them. */
  readonly fronts: readonly { readonly diameterMm: number; readonly lenses: readonly string[] }[];
  readonly massG: {
    readonly lightest: number;
    readonly heaviest: number;
    readonly largestStep: { readonly from: string; readonly to: string; readonly grams: number } | null;
  } | null;
  readonly closeFocusM: { readonly nearest: number; readonly farthest: number } | null;
  readonly squeezes: readonly number[];
  readonly mounts: readonly string[];
  /** Smallest image circle against the largest active diagonal of the cameras; `null` when either is not known. */
  readonly imageCircle: {
    readonly smallestMm: number;
    readonly largestDiagonalMm: number;
    readonly tooSmall: readonly string[];
  } | null;
}
