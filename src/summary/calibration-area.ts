/** Whether coefficients made on one sensor area were used on another. */
import type { Take } from "../model/types.ts";
import type { CalibrationState } from "./types.ts";

/**
 * The coefficients were made on another area than the take's sensor mode, and were used on it by physical millimetres: a half
 * radius stays that of the area it was made on.
 */
export interface CalibrationArea {
  /** Whose area it is: the table's or the log's. */
  readonly source: "kit" | "logged";
  readonly widthMm: number;
  readonly heightMm: number;
  readonly modeWidthMm: number;
  readonly modeHeightMm: number;
}

const SAME = 0.01;

/** `null` when the sides agree to 1 %, the area is not said, or no coefficients served. Widths are those of the recorded sensor. */
export function calibrationArea(take: Take, state: CalibrationState): CalibrationArea | null {
  const mode = take.sensorMode;
  if (mode === null || state.kind === "none") return null;
  const source = state.kind === "logged" ? "logged" : "kit";
  const convention = source === "logged" ? take.track?.convention : take.calibration?.convention;
  const area = convention?.areaMm ?? null;
  if (area === null) return null;
  // the area of a desqueezed picture is squeezed back, so that both widths are the sensor's
  const widthMm = convention?.squeezeState === "desqueezed" ? area.width / take.squeeze : area.width;
  const { activeWidthMm: modeWidthMm, activeHeightMm: modeHeightMm } = mode;
  const differs = (a: number, b: number): boolean => Math.abs(a / b - 1) > SAME;
  if (!differs(widthMm, modeWidthMm) && !differs(area.height, modeHeightMm)) return null;
  return { source, widthMm, heightMm: area.height, modeWidthMm, modeHeightMm };
}
