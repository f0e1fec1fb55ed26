/** datapackage.json of a take's VFX files: types, units, provenance and conventions (Frictionless tabular data package). */
import { stableJson } from "../../core/stable-json.ts";
import { lensLookFrames } from "../../summary/lens-look-frames.ts";
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import { brownConrady, lossOf, plainBrownConrady } from "./coefficients.ts";
import { lensFields } from "./lens-fields.ts";
import type { MapPlan } from "./map-plan.ts";
import { MAPS_FIELDS } from "./maps-csv.ts";

/** What the description cannot say. */
export const losses: readonly string[] = [
  "datapackage.json gives the provenance of a whole column of a take; which frames the calibration table served is in the column calibration.",
];

const dialect = { delimiter: ",", lineTerminator: "\n", header: true };

/** Text of the data package of a take. `maps` is `null` where the take has no maps, `noMaps` then says why. */
export function lensDataPackage(day: DaySummary, summary: TakeSummary, maps: MapPlan | null, noMaps: string | null): string {
  const { take } = summary;
  const resource = (name: string, description: string, schema: object) => ({
    ...{ name, path: `${name}.csv`, profile: "tabular-data-resource", format: "csv", mediatype: "text/csv", encoding: "utf-8" },
    ...{ description, dialect, schema },
  });
  const lens = resource("lens", "One row per frame of the take. A frame that was not logged has empty cells.", {
    fields: lensFields(summary),
    missingValues: [""],
    primaryKey: "frame",
  });
  const ranges = resource("maps", "Which map serves which frames; both ends are included, frames as in lens.csv.", {
    fields: MAPS_FIELDS,
    missingValues: [""],
  });
  return stableJson({
    profile: "tabular-data-package",
    name: `${day.show.code.toLowerCase()}-${day.date}-${take.address}`,
    title: `${day.show.title}, ${day.date}, camera ${take.camera}, slate ${take.slate}, take ${take.take}`,
    description: "The lens of one take, frame by frame.",
    resources: maps === null ? [lens] : [lens, ranges],
    conventions: {
      coefficients: coefficientWords(summary),
      sensor: sensorWords(summary),
      distances: "From the image plane of the camera.",
      logs: take.logFiles,
      calibration: take.calibration?.file ?? null,
      ...FILES,
      maps: maps === null ? `None: ${noMaps ?? "not asked for"}.` : mapWords(maps),
    },
  });
}

const FILES = {
  opentrackio:
    "lens.opentrackio.jsonl has one OpenTrackIO 1.0.1 sample a line and frame; the container is this project's own convention. static stands in the first line only. Metres for focusDistance and entrancePupilOffset, mm for the rest, coefficients in mm. A lens at infinity has no focusDistance, as JSON cannot hold it: custom.focusDioptres is then 0. A frame that was not logged has no lens, and custom.logged is false.",
  usd: "camera.usda is on a centimetre stage: focalLength and the apertures in tenths of a unit (mm), focusDistance in units (cm), inf at infinity. Time code 1001 is frame 0. fStop is written only where an f-number was logged. Linear interpolation bridges gaps of the log; customData names them.",
} as const;

/** What millimetres of the coefficients become pixels with; `null` where the sensor mode is not known. */
function sensorWords({ take }: TakeSummary): Readonly<Record<string, string | number | null>> | null {
  const mode = take.sensorMode;
  if (mode === null) return null;
  return {
    mode: mode.sensorMode,
    activeWidthMm: mode.activeWidthMm,
    activeHeightMm: mode.activeHeightMm,
    resolutionX: mode.resolutionX,
    resolutionY: mode.resolutionY,
    squeeze: take.squeeze,
    pixels:
      "x in pixels = (x in mm / activeWidthMm + 0.5) resolutionX, y likewise, from the top left corner of the recorded picture",
  };
}

/** The convention of the coefficient columns in words. */
function coefficientWords(summary: TakeSummary): Readonly<Record<string, string | null>> {
  const looks = loggedLooks(summary);
  const distortions = looks.flatMap(({ distortion }) => (distortion === null ? [] : [distortion]));
  const shadings = looks.flatMap(({ shading }) => (shading === null ? [] : [shading]));
  const directions = [...new Set(distortions.map((d) => d.direction))];
  const first = directions[0];
  const told = {
    undistort: "undistort: with (x, y) the recorded point the equation gives the ideal one",
    distort: "distort: with (x, y) the ideal point the equation gives the recorded one",
  };
  const missing = distortions.some((d) => plainBrownConrady(d) === null)
    ? `Some or all cells are empty: the coefficients (${[...new Set(distortions.map((d) => d.model))].join(", ")}) are no plain Brown-Conrady on the recorded sensor.`
    : null;
  return {
    model:
      "Brown-Conrady: x' = x R + 2 p1 x y + p2 (r^2 + 2 x^2), y' = y R + 2 p2 x y + p1 (r^2 + 2 y^2), R = 1 + k1 r^2 + k2 r^4 + k3 r^6",
    direction: first === undefined ? null : directions.length > 1 ? "both occur" : told[first],
    radius: "mm on the recorded sensor, from (cx_mm, cy_mm); x right, y down",
    shading: "brightness = 1 - (a1 r^2 + a2 r^4 + a3 r^6), r in mm of the recorded point from (cx_mm, cy_mm), or from the middle",
    empty: missing ?? (shadings.some((s) => lossOf(s) === null) ? "Shading of the desqueezed picture has no columns here." : null),
    opentrackio: distortions.some((d) => brownConrady(d) === null) ? "Has no such coefficients either; the maps have them." : null,
  };
}

function loggedLooks(summary: TakeSummary) {
  const look = lensLookFrames(summary);
  if (look === null) return [];
  return look.calibration.flatMap((kind, frame) => (kind === null ? [] : [look.look(frame)])).filter((l) => l !== null);
}

function mapWords(maps: MapPlan): Readonly<Record<string, unknown>> {
  return {
    undistort: "Takes a recorded picture to the ideal one: the output pixel is the ideal position, the value is where to look.",
    redistort: "Takes an ideal picture to the recorded one.",
    shading: "R = G = B = brightness factor at the recorded pixel: divide to take shading off, multiply to put it on.",
    values:
      "FLOAT. R = u = (x + 0.5) / width from the left, G = v from the top, B = 0; 0 to 1 is the display window. -1, -1: not defined.",
    overscan:
      "Where a map is larger than the frame its data window reaches beyond its display window; in maps.csv as a factor. That is the canvas of day.json (overscan), rounded up to whole pixels of the map and a margin of one.",
    width: maps.size.width,
    height: maps.size.height,
    recordedWidth: maps.size.recordedWidth,
    recordedHeight: maps.size.recordedHeight,
    widthChosen: maps.size.reason,
    merged:
      "Lens states share a map while corners and middles of the sides lie within 0.1 px of it at the recorded resolution (shading: 0.01 stop).",
    rounding: `Values are rounded to ${maps.size.step}, under 1/64 px at the recorded resolution; the brightness of shading maps to 1/8192.`,
  };
}
