/** Distortion and shading that a log carries: constant while focus moves, against the kit's table, brighter than the centre. */
import { CHECK } from "../../core/findings/check.ts";
import type { LogColumn } from "../../ingest/log/log-record.ts";
import { coefficientsAt } from "../../optics/calibration.ts";
import type { CoefficientConvention, CoefficientName, Coefficients } from "../../optics/convention.ts";
import { canonicalDistortion } from "../../optics/distortion/canonical.ts";
import { distortionPercentAt } from "../../optics/distortion/percent.ts";
import { isRefused } from "../../optics/refused.ts";
import { shadingProblem } from "../../optics/shading-plausible.ts";
import type { LensTrack } from "../types.ts";
import { loggedTrack, type TakeContext } from "./context.ts";
import { round } from "./words.ts";

const DISTORTION: readonly LogColumn[] = ["k1", "k2", "k3", "k4", "k5", "k6", "lambda"];
const ALL: readonly (LogColumn & CoefficientName)[] = [
  ...(["k1", "k2", "k3", "k4", "k5", "k6", "p1", "p2", "lambda", "cx_mm", "cy_mm", "a1", "a2", "a3"] as const),
];
/** Focus that moves by less than this, in dioptres, need not show in the coefficients. */
const MOVED_DIOPTRES = 0.3;
/** Distortion of less than this at the corner, in percent, is too little to tell a sign from. */
const SIGN_PERCENT = 0.5;

export function checkLoggedLook(context: TakeContext): void {
  const logged = loggedTrack(context);
  if (logged === null) return;
  const { track, log } = logged;
  const used = DISTORTION.filter((name) => track.columns[name]?.some((value) => value !== 0 && !Number.isNaN(value)));
  const [main] = used;
  if (main !== undefined) {
    const first = track.columns[main]?.findIndex((value) => !Number.isNaN(value)) ?? -1;
    const place = log.cell(track.row[first] as number, main).place;
    const from = span(track.columns.focus);
    const still = used.every((name) => span(track.columns[name]) === 0) && (span(track.columns.focal_mm) ?? 0) === 0;
    if (still && from !== null && from > MOVED_DIOPTRES) {
      context.tell(CHECK.coefficientsStand, {
        place,
        field: main,
        message: `Focus moves by ${round(from)} 1/m in this take, and the log's ${used.join(", ")} stay the same throughout.`,
        hint: "Distortion changes with focus. Look whether the recorder had the lens's table, or wrote the value of one distance only.",
      });
    }
    checkAgainstTable(context, track, first, place, main);
  }
  checkShading(context, track);
}

/** The table of the same lens, at the same state, bends the picture the other way. */
function checkAgainstTable(
  { take, tell }: TakeContext,
  track: LensTrack,
  frame: number,
  place: ReturnType<NonNullable<ReturnType<typeof loggedTrack>>["log"]["cell"]>["place"],
  field: string,
): void {
  const focalMm = track.columns.focal_mm?.[frame] ?? take.lens?.focalMm ?? Number.NaN;
  const focusDioptres = track.columns.focus?.[frame] ?? Number.NaN;
  if (take.calibration === null || Number.isNaN(focalMm) || Number.isNaN(focusDioptres)) return;
  const table = coefficientsAt(take.calibration, { focalMm, focusDioptres, tStop: track.columns.t?.[frame] ?? null });
  if (isRefused(table)) return;
  const logs = cornerPercent(take, track.convention, coefficientsOf(track, frame), focalMm);
  const tables = cornerPercent(take, take.calibration.convention, table.coefficients, table.focalMm);
  if (logs === null || tables === null) return;
  if (logs * tables >= 0 || Math.min(Math.abs(logs), Math.abs(tables)) < SIGN_PERCENT) return;
  tell(CHECK.directionDoubtful, {
    place,
    field,
    message: `The log's coefficients give ${percent(logs)} distortion at the corner, the calibration table of lens ${take.lens?.id ?? ""} ${percent(tables)}.`,
    hint: `One of the two has the wrong direction: look at "# direction" in the log and in ${take.calibration.file}.`,
  });
}

function cornerPercent(
  take: TakeContext["take"],
  convention: CoefficientConvention,
  coefficients: Coefficients,
  focalMm: number,
): number | null {
  const mode = take.sensorMode;
  const canonical = canonicalDistortion(convention, coefficients, focalMm, take.squeeze);
  if (mode === null || isRefused(canonical)) return null;
  return distortionPercentAt(canonical, { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm })?.corner ?? null;
}

function checkShading(context: TakeContext, track: LensTrack): void {
  const { take, tell } = context;
  const mode = take.sensorMode;
  const frame = track.columns.a1?.findIndex((value) => !Number.isNaN(value)) ?? -1;
  const log = loggedTrack(context)?.log;
  if (mode === null || frame < 0 || log === undefined) return;
  const focalMm = track.columns.focal_mm?.[frame] ?? take.lens?.focalMm ?? Number.NaN;
  const area = { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm };
  const problem = shadingProblem(track.convention, coefficientsOf(track, frame), focalMm, area, take.squeeze);
  if (problem === null) return;
  tell(CHECK.shadingRises, {
    place: log.cell(track.row[frame] as number, "a1").place,
    field: "a1",
    message: `By the log's shading values ${problem}.`,
    hint: 'Look at "# shading_values" (loss or gain) and "# shading_radius" of the log.',
  });
}

function coefficientsOf(track: LensTrack, frame: number): Coefficients {
  const found: Partial<Record<CoefficientName, number>> = {};
  for (const name of ALL) {
    const value = track.columns[name]?.[frame];
    if (value !== undefined && !Number.isNaN(value)) found[name] = value;
  }
  return found;
}

/** Largest less smallest of the numbers; `null` when there is none. */
function span(values: Float64Array | undefined): number | null {
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (const value of values ?? []) {
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return min <= max ? max - min : null;
}

function percent(value: number): string {
  return `${value < 0 ? "\u2212" : "+"}${Math.abs(value).toFixed(1)} %`;
}
