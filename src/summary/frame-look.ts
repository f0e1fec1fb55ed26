/** The lens look of one frame: logged coefficients before the calibration table, and why when there is neither. */
import type { Take } from "../model/types.ts";
import { coefficientsAt } from "../optics/calibration.ts";
import type { CoefficientName, Coefficients } from "../optics/convention.ts";
import { type CanonicalDistortion, canonicalDistortion } from "../optics/distortion/canonical.ts";
import { distortionPercentAt } from "../optics/distortion/percent.ts";
import { isRefused } from "../optics/refused.ts";
import { type CanonicalShading, canonicalShading, shadingStopsAt } from "../optics/shading.ts";
import type { CalibrationState, FrameFigures, ThreePoints } from "./types.ts";

/** Distortion and shading in mm on the sensor, their values at three places of the active area, and where they come from. */
export interface FrameLook {
  /** `null` where there are no coefficients, or none that are defined out to the corner. */
  readonly distortion: CanonicalDistortion | null;
  readonly distortionPercent: ThreePoints | null;
  readonly shading: CanonicalShading | null;
  readonly shadingStops: ThreePoints | null;
  /** Entrance pupil that the calibration table has for this state, mm from the image plane toward the object. */
  readonly tablePupilMm: number | null;
  readonly state: CalibrationState;
}

const LOGGED_DISTORTION = ["k1", "k2", "k3", "k4", "k5", "k6", "p1", "p2", "lambda"] as const;
const LOGGED_SHADING = ["a1", "a2", "a3"] as const;
/** Columns of a log that the lens look depends on, beside focal length, focus and stop. */
export const LOGGED_COEFFICIENTS = [...LOGGED_DISTORTION, ...LOGGED_SHADING, "cx_mm", "cy_mm"] as const;

/** The look at a frame of a take with a log. */
export function frameLook(take: Take, frames: FrameFigures, frame: number): FrameLook {
  const none = (reason: string): CalibrationState => ({ kind: "none", reason });
  const table = tableCoefficients(take, frames, frame);
  const tablePupilMm = table.coefficients?.entrance_pupil_mm ?? null;
  const mode = take.sensorMode;
  if (mode === null) {
    const state = none("the sensor mode is not known");
    return { distortion: null, distortionPercent: null, shading: null, shadingStops: null, tablePupilMm, state };
  }
  const area = { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm };
  const focalMm = frames.focalMm[frame] as number;
  const logged = loggedCoefficients(take, frame);
  let state: CalibrationState = table.state;

  let distortion: CanonicalDistortion | null = null;
  let distortionPercent: ThreePoints | null = null;
  if (hasAny(logged, LOGGED_DISTORTION) && take.track !== null) {
    const canonical = canonicalDistortion(take.track.convention, logged, focalMm, take.squeeze);
    if (isRefused(canonical)) state = none(`the log's coefficients were not evaluated: ${canonical.refused}`);
    else {
      distortionPercent = distortionPercentAt(canonical, area);
      distortion = distortionPercent === null ? null : canonical;
      state = distortionPercent === null ? none("the log's coefficients are not defined out to the corner") : { kind: "logged" };
    }
  } else if (table.coefficients !== null && take.calibration !== null) {
    const canonical = canonicalDistortion(take.calibration.convention, table.coefficients, table.focalMm, take.squeeze);
    if (isRefused(canonical)) state = none(canonical.refused);
    else {
      distortionPercent = distortionPercentAt(canonical, area);
      distortion = distortionPercent === null ? null : canonical;
      if (distortionPercent === null) state = none("the coefficients are not defined out to the corner of this sensor mode");
    }
  }

  let shading: CanonicalShading | null = null;
  let shadingStops: ThreePoints | null = null;
  const shadingFrom = hasAny(logged, LOGGED_SHADING)
    ? { convention: take.track?.convention, coefficients: logged, focalMm }
    : { convention: take.calibration?.convention, coefficients: table.coefficients, focalMm: table.focalMm };
  if (shadingFrom.convention !== undefined && shadingFrom.coefficients !== null) {
    const canonical = canonicalShading(shadingFrom.convention, shadingFrom.coefficients, shadingFrom.focalMm, take.squeeze);
    if (!isRefused(canonical)) {
      shadingStops = shadingStopsAt(canonical, area);
      shading = shadingStops === null ? null : canonical;
    }
  }
  if (distortionPercent === null && shadingStops !== null && state.kind === "none")
    state = table.coefficients === null ? { kind: "logged" } : table.state;
  return { distortion, distortionPercent, shading, shadingStops, tablePupilMm, state };
}

/** The calibration table read at the frame's focal length, focus and stop; no coefficients, with the reason, where it cannot be. */
export function tableCoefficients(
  take: Take,
  frames: FrameFigures,
  frame: number,
): { readonly coefficients: Coefficients | null; readonly focalMm: number; readonly state: CalibrationState } {
  const none = (reason: string) => ({ coefficients: null, focalMm: Number.NaN, state: { kind: "none", reason } as const });
  if (take.lens === null) return none("the lens is not in the kit");
  if (take.calibration === null) return none(`lens ${take.lens.id} has no calibration table`);
  const [focalMm, focusDioptres, tStop] = [frames.focalMm[frame], frames.focusDioptres[frame], frames.tStop[frame]] as [
    number,
    number,
    number,
  ];
  if (Number.isNaN(focalMm)) return none("the focal length is not known");
  if (Number.isNaN(focusDioptres)) return none("the focus distance is not logged");
  const found = coefficientsAt(take.calibration, { focalMm, focusDioptres, tStop: Number.isNaN(tStop) ? null : tStop });
  return isRefused(found) ? none(found.refused) : { coefficients: found.coefficients, focalMm: found.focalMm, state: found.state };
}

function loggedCoefficients(take: Take, frame: number): Coefficients {
  const found: Partial<Record<CoefficientName, number>> = {};
  for (const name of LOGGED_COEFFICIENTS) {
    const value = take.track?.columns[name]?.[frame];
    if (value !== undefined && !Number.isNaN(value)) found[name] = value;
  }
  return found;
}

function hasAny(coefficients: Coefficients, names: readonly CoefficientName[]): boolean {
  return names.some((name) => coefficients[name] !== undefined);
}
