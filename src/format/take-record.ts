/** What a take's data script holds, and how it is read. Written by the builder, read by the page in the browser. */
import { type PackedColumn, unpackColumn } from "../core/packed-column.ts";
import { formatTimecode } from "../time/timecode.ts";
import type { DistanceSystem } from "./length.ts";
import type { FrameValues, ReadoutSources } from "./readout.ts";

/** Columns with an entry a frame. Distances are dioptres; each holds what prints like the builder's own value. */
export const FRAME_COLUMNS = [
  "near",
  "far",
  "tStop",
  "focalMm",
  "hyperfocal",
  "acrossDeg",
  "upDeg",
  "distortionC",
  "distortionS",
  "distortionT",
  "shadingC",
  "shadingS",
  "shadingT",
  "pupilMm",
  "heightM",
  "tiltDeg",
] as const;
export type FrameColumn = (typeof FRAME_COLUMNS)[number];

/** The lens look's coefficients, mm on the sensor times `scaleMm` to the power of their radius. */
export interface LookRecord {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Recorded pixels, `null` when the kit does not say. */
  readonly pixels: readonly [number, number] | null;
  readonly squeeze: number;
  readonly scaleMm: number;
  /** Equations that frames use; `equation` is an index into them, NaN where the frame has no distortion. */
  readonly equations: readonly { readonly model: string; readonly direction: string; readonly squeeze: number }[];
  readonly equation: PackedColumn;
  readonly terms: Readonly<Record<string, PackedColumn>>;
  readonly shading: { readonly squeeze: number; readonly terms: Readonly<Record<string, PackedColumn>> } | null;
}

export interface TakeRecord {
  readonly address: string;
  readonly name: string;
  readonly scene: string | null;
  readonly roll: string | null;
  readonly clip: string | null;
  readonly lens: string | null;
  readonly rate: { readonly num: number; readonly denom: number };
  readonly dropFrame: boolean;
  readonly inFrame: number | null;
  readonly frames: number;
  readonly middle: number;
  readonly distances: DistanceSystem;
  readonly sources: ReadoutSources;
  /** 1 on frames that were logged. */
  readonly logged: PackedColumn;
  /** Focus as metres times `by`, 0 for infinity: logs are written in metres, so that nothing is lost. */
  readonly focus: PackedColumn;
  /** A column that is all empty is left out. */
  readonly columns: Readonly<Partial<Record<FrameColumn, PackedColumn>>>;
  /** Source word and state of the calibration; `calibration` is an index into them. */
  readonly calibrations: readonly { readonly source: string; readonly words: string }[];
  readonly calibration: PackedColumn;
  readonly look: LookRecord | null;
  /** Script with the take's still, from the take's page; `null` without one. */
  readonly still: string | null;
}

export interface OpenTake {
  readonly record: TakeRecord;
  /** Dioptres, 0 for infinity, NaN where not logged. */
  readonly focusDioptres: Float64Array;
  readonly logged: Float64Array;
  valuesAt(frame: number): FrameValues;
  /** The frame's timecode; `null` for a take without one. */
  timecodeAt(frame: number): string | null;
}

/** Unpacks a take's record. */
export function openTake(record: TakeRecord): OpenTake {
  const { frames } = record;
  const nothing = new Float64Array(frames).fill(Number.NaN);
  const columns = Object.fromEntries(
    FRAME_COLUMNS.map((name) => {
      const packed = record.columns[name];
      return [name, packed === undefined ? nothing : unpackColumn(packed, frames)];
    }),
  ) as Record<FrameColumn, Float64Array>;
  const focusDioptres = unpackColumn(record.focus, frames).map((metres) => (metres === 0 ? 0 : 1 / metres));
  const logged = unpackColumn(record.logged, frames);
  const calibration = unpackColumn(record.calibration, frames);
  const at = (name: FrameColumn, frame: number): number => columns[name][frame] ?? Number.NaN;
  return {
    record,
    focusDioptres,
    logged,
    valuesAt(frame) {
      const state = record.calibrations[calibration[frame] ?? Number.NaN];
      return {
        logged: logged[frame] === 1,
        focusDioptres: focusDioptres[frame] ?? Number.NaN,
        nearDioptres: at("near", frame),
        farDioptres: at("far", frame),
        tStop: at("tStop", frame),
        focalMm: at("focalMm", frame),
        hyperfocalM: 1 / at("hyperfocal", frame),
        acrossDeg: at("acrossDeg", frame),
        upDeg: at("upDeg", frame),
        distortion: [at("distortionC", frame), at("distortionS", frame), at("distortionT", frame)],
        shading: [at("shadingC", frame), at("shadingS", frame), at("shadingT", frame)],
        pupilMm: at("pupilMm", frame),
        heightM: at("heightM", frame),
        tiltDeg: at("tiltDeg", frame),
        lookSource: state?.source ?? "",
        calibration: state?.words ?? "",
      };
    },
    timecodeAt: (frame) => (record.inFrame === null ? null : formatTimecode(record.inFrame + frame, record.rate, record.dropFrame)),
  };
}
