/** The figures of one frame of a take with a log, for the readout. */
import type { FrameValues, ReadoutSources } from "../format/readout.ts";
import { listWords } from "../format/words.ts";
import { type LensLookFrames, lensLookFrames } from "../summary/lens-look-frames.ts";
import type { CalibrationState, FrameFigures, TakeSummary } from "../summary/types.ts";

/** `null` for a take without a log. */
export function frameValues(t: TakeSummary, frame: number): FrameValues | null {
  const looks = lensLookFrames(t);
  return t.perFrame === null || looks === null ? null : valuesOf(t, t.perFrame, looks, frame);
}

function valuesOf(t: TakeSummary, f: FrameFigures, looks: LensLookFrames, i: number): FrameValues {
  const at = (values: Float64Array): number => values[i] ?? Number.NaN;
  const state = looks.look(i)?.state ?? null;
  return {
    logged: f.logged[i] === 1,
    focusDioptres: at(f.focusDioptres),
    nearDioptres: at(f.nearDioptres),
    farDioptres: at(f.farDioptres),
    tStop: at(f.tStop),
    focalMm: at(f.focalMm),
    hyperfocalM: at(f.hyperfocalM),
    acrossDeg: at(f.angleHorizontalDeg),
    upDeg: at(f.angleVerticalDeg),
    distortion: [at(looks.distortionPercent.corner), at(looks.distortionPercent.midSide), at(looks.distortionPercent.midTop)],
    shading: [at(looks.shadingStops.corner), at(looks.shadingStops.midSide), at(looks.shadingStops.midTop)],
    pupilMm: at(looks.entrancePupilMm),
    heightM: standing(t.cameraHeightM, t.take.track?.columns.height_m, i),
    tiltDeg: standing(t.tiltDeg, t.take.track?.columns.tilt_deg, i),
    lookSource: state === null ? "" : calibrationWords(state),
    calibration: state === null ? "" : stateWords(state),
  };
}

/** Source words of a take's readout. */
export function readoutSources(t: TakeSummary): ReadoutSources {
  const pupil = t.entrancePupilMm;
  return {
    focus: t.take.track?.focusTable === undefined ? "logged" : "calculated from the encoder table",
    tStop: t.tStop?.source ?? "logged",
    focal: t.focal?.source ?? "logged",
    pupil: pupil === null ? "" : `${pupil.source}, in front of the image plane`,
    height: t.cameraHeightM?.source ?? "",
    tilt: t.tiltDeg?.source ?? "",
  };
}

/** Where the lens look's figures come from, in words. */
export function calibrationWords(state: CalibrationState): string {
  if (state.kind === "logged") return "logged";
  if (state.kind === "inside") return "kit, between points";
  return state.kind === "nearest" ? "kit, nearest point" : "";
}

/** Whether the calibration served, short enough for a cell. */
function stateWords(state: CalibrationState): string {
  if (state.kind === "logged") return "coefficients as logged";
  if (state.kind === "inside") return "inside the table";
  if (state.kind === "none") return `none: ${state.reason}`;
  const axes = state.axes.map(({ axis }) => (axis === "focal" ? "focal length" : axis));
  return axes.length === 0 ? "outside the table" : `outside the table on ${listWords(axes)}`;
}

/** What was noted holds for every frame, what was logged for its own. */
function standing(value: { readonly value: number; readonly source: string } | null, column: Float64Array | undefined, i: number) {
  if (value === null) return Number.NaN;
  return value.source === "logged" ? (column?.[i] ?? Number.NaN) : value.value;
}
