/** How far things may differ before a check says so: the key `check` of show.yaml. */
import * as z from "zod";
import { numberWithin } from "../written/setting.ts";
import { written } from "./settings.ts";

const atLeastZero = written(numberWithin({ from: 0 })).optional();

/** Each key with the name of its limit; the order of docs/show-folder.md. */
const KEYS = {
  stop_difference: "stopDifference",
  focus_difference_fraction: "focusDifferenceFraction",
  focal_difference_fraction: "focalDifferenceFraction",
  log_coverage: "logCoverage",
  log_edge_seconds: "logEdgeSeconds",
  stop_jump_stops: "stopJumpStops",
  wider_than_lens_stops: "widerThanLensStops",
  stop_under_f_stops: "stopUnderFStops",
  close_focus_fraction: "closeFocusFraction",
  marked_focal_fraction: "markedFocalFraction",
  unit_ratio_fraction: "unitRatioFraction",
  hyperfocal_fraction: "hyperfocalFraction",
  clock_drift_frames: "clockDriftFrames",
  clock_search_seconds: "clockSearchSeconds",
  speed_slip_fraction: "speedSlipFraction",
  distortion_percent: "distortionPercent",
  tangential_percent: "tangentialPercent",
  wide_pincushion_percent: "widePincushionPercent",
  height_difference_m: "heightDifferenceM",
  highest_height_m: "highestHeightM",
  angle_difference_deg: "angleDifferenceDeg",
  white_balance_mired: "whiteBalanceMired",
  nd_difference_stops: "ndDifferenceStops",
  meal_hours: "mealHours",
  after_wrap_minutes: "afterWrapMinutes",
} as const;

type LimitKey = keyof typeof KEYS;

/** The limits of a show, in the units that their names end with; a fraction is of the value compared with. */
export type CheckLimits = Readonly<Record<(typeof KEYS)[LimitKey], number>>;

const names = Object.keys(KEYS) as readonly LimitKey[];
const shape = Object.fromEntries(names.map((key) => [key, atLeastZero])) as Record<LimitKey, typeof atLeastZero>;

export const CHECK_SHAPE = z.strictObject({
  ...shape,
  log_coverage: written(numberWithin({ from: 0, upTo: 1 })).optional(),
  clock_search_seconds: written(numberWithin({ from: 0, upTo: 600 })).optional(),
});

/** Limits that hold where show.yaml does not say others (docs/show-folder.md lists them). */
export const DEFAULT_LIMITS: CheckLimits = Object.freeze({
  stopDifference: 0.15,
  focusDifferenceFraction: 0.1,
  focalDifferenceFraction: 0.05,
  logCoverage: 0.98,
  logEdgeSeconds: 1,
  stopJumpStops: 1,
  widerThanLensStops: 0.1,
  // rounding of a log with two digits
  stopUnderFStops: 0.02,
  // marks of close focus are rounded to the centimetre or the inch
  closeFocusFraction: 0.02,
  // marked focal lengths are rounded: a 50 may be 49 or 51
  markedFocalFraction: 0.03,
  // notes are rounded to a tenth
  unitRatioFraction: 0.1,
  hyperfocalFraction: 0.02,
  clockDriftFrames: 1,
  clockSearchSeconds: 10,
  speedSlipFraction: 0.05,
  distortionPercent: 20,
  tangentialPercent: 1.5,
  widePincushionPercent: 1,
  heightDifferenceM: 0.05,
  highestHeightM: 60,
  angleDifferenceDeg: 1,
  whiteBalanceMired: 50,
  ndDifferenceStops: 0.1,
  mealHours: 6,
  afterWrapMinutes: 30,
});

/** The limits that show.yaml gives, and for all others the default. */
export function limitsOf(check: Readonly<Partial<Record<LimitKey, number | undefined>>> | undefined): CheckLimits {
  const said = names.flatMap((key) => (check?.[key] === undefined ? [] : [[KEYS[key], check[key]] as const]));
  return { ...DEFAULT_LIMITS, ...Object.fromEntries(said) };
}
