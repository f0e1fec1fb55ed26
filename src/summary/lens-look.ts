/** Distortion, shading and entrance pupil of a take: logged coefficients before the calibration table, and why when there is neither. */
import { type Finding, finding } from "../core/finding.ts";
import type { Source } from "../core/quantity.ts";
import type { Take } from "../model/types.ts";
import { coefficientsAt } from "../optics/calibration.ts";
import type { CoefficientName, Coefficients } from "../optics/convention.ts";
import { canonicalDistortion } from "../optics/distortion/canonical.ts";
import { distortionPercentAt } from "../optics/distortion/percent.ts";
import { isRefused } from "../optics/refused.ts";
import { canonicalShading, shadingStopsAt } from "../optics/shading.ts";
import type { CalibrationState, FrameFigures, ThreePoints } from "./types.ts";

export interface LensLook {
  readonly distortionPercent: ThreePoints | null;
  readonly shadingStops: ThreePoints | null;
  readonly state: CalibrationState;
  readonly entrancePupilMm: { readonly min: number; readonly max: number; readonly source: Source } | null;
  readonly findings: readonly Finding[];
}

const LOGGED_DISTORTION: readonly CoefficientName[] = ["k1", "k2", "k3", "k4", "k5", "k6", "p1", "p2", "lambda"];
const LOGGED_SHADING: readonly CoefficientName[] = ["a1", "a2", "a3"];

/** The lens look at the take's middle logged frame, and the entrance pupil over all its frames. */
export function lensLook(take: Take, frames: FrameFigures | null, middle: number | null): LensLook {
  const none = (reason: string): CalibrationState => ({ kind: "none", reason });
  const entrancePupilMm = entrancePupil(take, frames);
  const empty = { distortionPercent: null, shadingStops: null, entrancePupilMm, findings: [] };
  if (frames === null || middle === null) return { ...empty, state: none("the take has no log") };
  const mode = take.sensorMode;
  if (mode === null) return { ...empty, state: none("the sensor mode is not known") };
  const area = { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm };
  const focalMm = frames.focalMm[middle] as number;

  const logged = loggedCoefficients(take, middle);
  const table = fromTable(take, frames, middle);
  const findings: Finding[] = [];
  let state: CalibrationState = table.state;

  let distortionPercent: ThreePoints | null = null;
  if (hasAny(logged, LOGGED_DISTORTION) && take.track !== null) {
    const canonical = canonicalDistortion(take.track.convention, logged, focalMm, take.squeeze);
    if (isRefused(canonical)) state = none(`the log's coefficients were not evaluated: ${canonical.refused}`);
    else {
      distortionPercent = distortionPercentAt(canonical, area);
      state = distortionPercent === null ? none("the log's coefficients are not defined out to the corner") : { kind: "logged" };
    }
  } else if (table.coefficients !== null && take.calibration !== null) {
    const canonical = canonicalDistortion(take.calibration.convention, table.coefficients, table.focalMm, take.squeeze);
    if (isRefused(canonical)) state = none(canonical.refused);
    else {
      distortionPercent = distortionPercentAt(canonical, area);
      if (distortionPercent === null) state = none("the coefficients are not defined out to the corner of this sensor mode");
    }
  }

  let shadingStops: ThreePoints | null = null;
  const shadingFrom = hasAny(logged, LOGGED_SHADING)
    ? { convention: take.track?.convention, coefficients: logged, focalMm }
    : { convention: take.calibration?.convention, coefficients: table.coefficients, focalMm: table.focalMm };
  if (shadingFrom.convention !== undefined && shadingFrom.coefficients !== null) {
    const shading = canonicalShading(shadingFrom.convention, shadingFrom.coefficients, shadingFrom.focalMm, take.squeeze);
    if (!isRefused(shading)) shadingStops = shadingStopsAt(shading, area);
  }
  if (distortionPercent === null && shadingStops !== null && state.kind === "none")
    state = table.coefficients === null ? { kind: "logged" } : table.state;

  if (state.kind === "nearest" && state.axes.length > 0) findings.push(beyondTable(take, state));
  return { distortionPercent, shadingStops, state, entrancePupilMm, findings };
}

function fromTable(
  take: Take,
  frames: FrameFigures,
  frame: number,
): { coefficients: Coefficients | null; focalMm: number; state: CalibrationState } {
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
  for (const name of [...LOGGED_DISTORTION, ...LOGGED_SHADING, "cx_mm", "cy_mm"] as const) {
    const value = take.track?.columns[name as keyof typeof take.track.columns]?.[frame];
    if (value !== undefined && !Number.isNaN(value)) found[name] = value;
  }
  return found;
}

function hasAny(coefficients: Coefficients, names: readonly CoefficientName[]): boolean {
  return names.some((name) => coefficients[name] !== undefined);
}

/** Smallest and largest over the take: log, else calibration table, else kit. Never estimated. */
function entrancePupil(take: Take, frames: FrameFigures | null): LensLook["entrancePupilMm"] {
  const logged = range(take.track?.columns.entrance_pupil_mm ?? []);
  if (logged !== null) return { ...logged, source: "logged" };
  if (frames !== null && (take.calibration?.points.some((point) => point.coefficients.entrance_pupil_mm !== undefined) ?? false)) {
    const values: number[] = [];
    const seen = new Set<string>();
    for (let i = 0; i < frames.frames; i++) {
      if (frames.logged[i] !== 1) continue;
      const state = `${frames.focalMm[i]} ${frames.focusDioptres[i]} ${frames.tStop[i]}`;
      if (seen.has(state)) continue; // a held lens has one state for many frames
      seen.add(state);
      const pupil = fromTable(take, frames, i).coefficients?.entrance_pupil_mm;
      if (pupil !== undefined) values.push(pupil);
    }
    const tabled = range(values);
    if (tabled !== null) return { ...tabled, source: "kit" };
  }
  const marked = take.lens?.entrancePupilMm ?? null;
  return marked === null ? null : { min: marked, max: marked, source: "kit" };
}

function range(values: Iterable<number>): { min: number; max: number } | null {
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return min <= max ? { min, max } : null;
}

function beyondTable(take: Take, state: Extract<CalibrationState, { kind: "nearest" }>): Finding {
  const words = state.axes.map(({ axis, asked, used }) =>
    axis === "focus"
      ? `focus at ${metres(asked)}, table to ${metres(used)}`
      : axis === "focal"
        ? `${round(asked)} mm, table to ${round(used)} mm`
        : `T${round(asked)}, table to T${round(used)}`,
  );
  return finding({
    code: "CHECK715",
    severity: "remark",
    place: { file: take.calibration?.file ?? "", line: null, column: null },
    message: `${take.address} was shot beyond the calibration of lens ${take.lens?.id ?? ""} (${words.join("; ")}); the nearest point of the table is used.`,
    hint: "Measure the lens at this setting before it goes back, if the plate matters.",
    take: take.address,
  });
}

function metres(dioptres: number): string {
  return dioptres <= 0 ? "infinity" : `${round(1 / dioptres)} m`;
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}
