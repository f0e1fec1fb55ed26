import * as z from "zod";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { SHOW } from "../../core/findings/show.ts";
import { supportsDropFrame } from "../../time/frame-rate.ts";
import type { CheckLimits, ShowRecord } from "../records.ts";
import { oneOf } from "../written/marks.ts";
import { type Reading, read, refuse } from "../written/reading.ts";
import { numberWithin, readBoolean, readRate, readText } from "../written/setting.ts";
import { acceptedPlace, narrowing, readFindingCode } from "./accepted-entry.ts";
import { listOf, type Settings, takeSettings, textOr, written } from "./settings.ts";
import { readYaml, type YamlFile } from "./yaml-text.ts";

/** From a tenth of a micrometre: pixels are larger, and figures stay finite. */
const circle = written(numberWithin({ from: 0.0001, upTo: 1 }));
const positive = written(numberWithin({ from: 0 }));

const SHOW_SHAPE = {
  title: written(readText),
  code: written(readCode),
  production: written(readText),
  unit: written(readText),
  rate: written(readRate),
  drop_frame: written(readBoolean),
  distances: written((text) => oneOf(text, ["metric", "imperial", "both"] as const)),
  paper: written((text) => oneOf(text, ["A4", "Letter"] as const)),
  time_zone: written(readTimeZone),
  timecode_out: written((text) => oneOf(text, ["exclusive", "inclusive"] as const)),
  circle_of_confusion_mm: textOr(circle, z.record(z.string(), circle)),
  check: z.strictObject({
    stop_difference: positive.optional(),
    focus_difference_fraction: positive.optional(),
    log_coverage: written(numberWithin({ from: 0, upTo: 1 })).optional(),
    clock_drift_frames: positive.optional(),
    wider_than_lens_stops: positive.optional(),
    focal_difference_fraction: positive.optional(),
    log_edge_seconds: positive.optional(),
    stop_jump_stops: positive.optional(),
    distortion_percent: positive.optional(),
    meal_hours: positive.optional(),
    height_difference_m: positive.optional(),
    angle_difference_deg: positive.optional(),
    white_balance_mired: positive.optional(),
  }),
  accepted: listOf(z.strictObject({ code: written(readFindingCode), file: narrowing, reason: written(readText) })),
} as const;

const REQUIRED = ["title", "code", "rate"] as const;

/** Reads show.yaml. `null`, with errors, when title, code or rate cannot be read; every other refused key has its default. */
export function readShowFile(text: string, file: string, found: FindingCollector): ShowRecord | null {
  const yaml = readYaml(text, file, found);
  if (yaml === null) return null;
  const taken = takeSettings(yaml, SHOW_SHAPE, found);
  for (const key of REQUIRED) {
    if (yaml.values.has(key)) continue;
    found.add(SHOW.missingKey, {
      place: { file, line: null, column: null },
      field: key,
      message: `${file} has no ${key}`,
      hint: `Add a line such as ${{ title: "title: The Long Field", code: "code: FIELD", rate: "rate: 24" }[key]}.`,
    });
  }
  const { title, code, rate } = taken;
  if (title === undefined || code === undefined || rate === undefined) return null;
  return {
    title,
    code,
    production: taken.production ?? null,
    unit: taken.unit ?? "main",
    rate,
    dropFrame: dropFrameOf(taken, yaml, found),
    distances: taken.distances ?? "metric",
    paper: taken.paper ?? "A4",
    timeZone: taken.time_zone ?? null,
    timecodeOut: taken.timecode_out ?? "exclusive",
    circleOfConfusionMm: circleOf(taken.circle_of_confusion_mm),
    limits: limitsOf(taken.check),
    accepted: (taken.accepted ?? []).map((entry) => ({
      code: entry.code,
      file: entry.file ?? null,
      reason: entry.reason,
      place: acceptedPlace(yaml, "file", entry),
    })),
  };
}

function dropFrameOf(taken: Settings<typeof SHOW_SHAPE>, yaml: YamlFile, found: FindingCollector): boolean {
  if (taken.drop_frame !== true || taken.rate === undefined) return false;
  if (supportsDropFrame(taken.rate)) return true;
  found.add(SHOW.dropRate, {
    place: yaml.place("drop_frame"),
    field: "drop_frame",
    message: `drop_frame is true, and the rate ${taken.rate.num}/${taken.rate.denom} has no drop-frame timecode`,
    hint: "Set drop_frame to false, or the rate to 30000/1001 or 60000/1001.",
  });
  return false;
}

function circleOf(value: number | Readonly<Record<string, number>> | undefined): ShowRecord["circleOfConfusionMm"] {
  if (value === undefined) return null;
  return typeof value === "number" ? value : new Map(Object.entries(value));
}

/** Limits of show.yaml; where it does not say one, the default that docs/show-folder.md lists. */
function limitsOf(check: Settings<typeof SHOW_SHAPE>["check"]): CheckLimits {
  return {
    stopDifference: check?.stop_difference ?? 0.15,
    focusDifferenceFraction: check?.focus_difference_fraction ?? 0.1,
    logCoverage: check?.log_coverage ?? 0.98,
    clockDriftFrames: check?.clock_drift_frames ?? 1,
    widerThanLensStops: check?.wider_than_lens_stops ?? 0.1,
    focalDifferenceFraction: check?.focal_difference_fraction ?? 0.05,
    logEdgeSeconds: check?.log_edge_seconds ?? 1,
    stopJumpStops: check?.stop_jump_stops ?? 1,
    distortionPercent: check?.distortion_percent ?? 20,
    mealHours: check?.meal_hours ?? 6,
    heightDifferenceM: check?.height_difference_m ?? 0.05,
    angleDifferenceDeg: check?.angle_difference_deg ?? 1,
    whiteBalanceMired: check?.white_balance_mired ?? 50,
  };
}

function readCode(text: string): Reading<string> {
  const code = text.trim();
  if (/^[A-Za-z0-9-]{1,24}$/.test(code)) return read(code);
  const meant = code
    .replace(/[^A-Za-z0-9-]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 24);
  return refuse(
    `the code "${code}" cannot be a file name everywhere`,
    `Use 1 to 24 letters without accents, digits and hyphens${meant === "" ? "" : `, such as ${meant}`}.`,
  );
}

/** The form of an IANA name only: whether the zone exists is for the computer that shows it. */
function readTimeZone(text: string): Reading<string> {
  const zone = text.trim();
  if (/^(UTC|[A-Za-z_]+(\/[A-Za-z0-9_+-]+){1,2})$/.test(zone)) return read(zone);
  return refuse(`not a time zone name: "${zone}"`, "Write an IANA name such as Europe/Oslo, or UTC.");
}
