/** What can be read in the kit and can hardly be so: coefficients in the wrong order or direction, shading that rises, a serial twice. */

import { CHECK } from "../../core/findings/check.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { DISTORTION_TERMS } from "../../optics/convention.ts";
import { canonicalDistortion } from "../../optics/distortion/canonical.ts";
import { distortionPercentAt } from "../../optics/distortion/percent.ts";
import type { SensorArea } from "../../optics/radius.ts";
import { isRefused } from "../../optics/refused.ts";
import { shadingProblem } from "../../optics/shading-plausible.ts";
import type { CalibrationPoint, CalibrationTable, Kit, Lens } from "../records.ts";
import type { CheckLimits } from "../show/check-limits.ts";

/** Distortion of less than this at the corner, in percent, is too little to tell a sign from. */
const SIGN_PERCENT = 0.5;
/** A lens is wide when its focal length is below this share of the area's diagonal (more than 64 degrees across it). */
const WIDE = 0.8;
/** From this many distances on, equal coefficients were not measured. */
const FEWEST_DISTANCES = 3;

/** Tells of each table and of lenses that share a serial number. At most one finding of a kind for a table, at its first row. */
export function tellOfPlausibility(kit: Kit, limits: CheckLimits, found: FindingCollector): void {
  tellOfSerials(kit.lenses, found);
  for (const table of kit.calibration.values()) {
    const area = areaOf(table, kit);
    if (area === null || table.points.length === 0) continue;
    const corners = table.points.map((point) => ({ point, percent: cornerPercent(table, point, area) }));
    tellOfStrength(table, corners, limits.distortionPercent, found);
    tellOfTangential(table, area, limits.tangentialPercent, found);
    tellOfDirection(table, corners, area, limits.widePincushionPercent, found);
    tellOfStanding(table, found);
    tellOfShading(table, area, found);
  }
}

interface Corner {
  readonly point: CalibrationPoint;
  /** `undefined`: the table is never evaluated; `null`: the coefficients do not reach the corner. */
  readonly percent: number | null | undefined;
}

/** The table's own area, else the kit's first sensor mode. */
function areaOf(table: CalibrationTable, kit: Kit): SensorArea | null {
  const own = table.convention.areaMm;
  if (own !== null) return { widthMm: own.width, heightMm: own.height };
  const [mode] = kit.modes;
  return mode === undefined ? null : { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm };
}

function cornerPercent(table: CalibrationTable, point: CalibrationPoint, area: SensorArea): number | null | undefined {
  const canonical = canonicalDistortion(table.convention, point.coefficients, point.focalMm, 1);
  return isRefused(canonical) ? undefined : (distortionPercentAt(canonical, area)?.corner ?? null);
}

function tellOfStrength(table: CalibrationTable, corners: readonly Corner[], limit: number, found: FindingCollector): void {
  const strong = corners.find(({ percent }) => percent === null || (percent !== undefined && Math.abs(percent) > limit));
  if (strong === undefined) return;
  const { percent, point } = strong;
  found.add(CHECK.distortionStrong, {
    place: point.place,
    field: mainTerm(point),
    message:
      percent === null || percent === undefined
        ? `the coefficients of ${table.lens} at ${stateText(point)} do not define a picture out to the corner`
        : `the coefficients of ${table.lens} at ${stateText(point)} give ${signed(percent)} at the corner; the show looks at more than ${limit} %`,
    hint: `Look at the direction (${table.convention.direction}), the radius (${table.convention.radius}) and the order of the columns. The limit is check.distortion_percent in show.yaml.`,
  });
}

/** What the tangential terms alone do at the corner. */
function tellOfTangential(table: CalibrationTable, area: SensorArea, limit: number, found: FindingCollector): void {
  for (const point of table.points) {
    const { p1, p2, k3 } = point.coefficients;
    if ((p1 ?? 0) === 0 && (p2 ?? 0) === 0) continue;
    const alone = { k1: 0, ...(p1 === undefined ? {} : { p1 }), ...(p2 === undefined ? {} : { p2 }) };
    const canonical = canonicalDistortion(table.convention, alone, point.focalMm, 1);
    if (isRefused(canonical)) return;
    const percent = distortionPercentAt(canonical, area)?.corner ?? Number.POSITIVE_INFINITY;
    if (Math.abs(percent) <= limit) continue;
    found.add(CHECK.tangentialStrong, {
      place: point.place,
      field: Math.abs(p2 ?? 0) > Math.abs(p1 ?? 0) ? "p2" : "p1",
      message: `p1 and p2 of ${table.lens} (${p1 ?? "blank"}, ${p2 ?? "blank"}) move the corner by ${Number.isFinite(percent) ? signed(percent) : "more than the picture holds"}${k3 === undefined ? "" : `, and k3 is ${k3}`}`,
      hint: "Look at the order of the columns where the numbers come from: k1 k2 p1 p2 k3 is as common as k1 k2 k3 p1 p2.",
    });
    return;
  }
}

/** Wide lenses are barrels; zooms go from barrel to pincushion. The other way round is a table read in the wrong direction. */
function tellOfDirection(
  table: CalibrationTable,
  corners: readonly Corner[],
  area: SensorArea,
  pincushionLimit: number,
  found: FindingCollector,
): void {
  const known = corners.filter(
    (corner): corner is { point: CalibrationPoint; percent: number } => typeof corner.percent === "number",
  );
  const sorted = [...known].sort((a, b) => a.point.focalMm - b.point.focalMm);
  const short = sorted[0];
  const long = sorted.at(-1);
  if (short === undefined || long === undefined) return;
  const zoomBackwards =
    long.point.focalMm > 1.2 * short.point.focalMm && short.percent > SIGN_PERCENT && long.percent < -SIGN_PERCENT;
  const diagonal = Math.hypot(area.widthMm, area.heightMm);
  const wideOnes = known.filter(({ point }) => point.focalMm < WIDE * diagonal);
  const widePincushion = wideOnes.length > 0 && wideOnes.every(({ percent }) => percent > pincushionLimit);
  if (!zoomBackwards && !widePincushion) return;
  found.add(CHECK.directionDoubtful, {
    place: short.point.place,
    field: mainTerm(short.point),
    message: zoomBackwards
      ? `${table.lens} has pincushion distortion at ${short.point.focalMm} mm (${signed(short.percent)} at the corner) and barrel at ${long.point.focalMm} mm (${signed(long.percent)}); zooms go the other way`
      : `${table.lens} is a wide lens of ${short.point.focalMm} mm with pincushion distortion (${signed(short.percent)} at the corner); wide lenses have barrel distortion`,
    hint: `If the table is not ${table.convention.direction === "distort" ? "distort (ideal to recorded)" : "undistort (recorded to ideal)"}, write "# direction: ${table.convention.direction === "distort" ? "undistort" : "distort"}".`,
  });
}

function tellOfStanding(table: CalibrationTable, found: FindingCollector): void {
  for (const focalMm of new Set(table.points.map((point) => point.focalMm))) {
    const own = table.points.filter((point) => point.focalMm === focalMm);
    const distances = new Set(own.map((point) => point.focusDioptres));
    const [first] = own;
    const main = first === undefined ? null : mainTerm(first);
    if (first === undefined || main === null || distances.size < FEWEST_DISTANCES) continue;
    if (new Set(own.map((point) => distortionText(point))).size > 1) continue;
    found.add(CHECK.coefficientsStand, {
      place: first.place,
      field: main,
      message: `${table.lens} has the same distortion at all ${distances.size} distances of ${focalMm} mm`,
      hint: "Distortion changes with focus. Ask whether the lens was measured at one distance only; then one row is enough.",
    });
    return;
  }
}

function tellOfShading(table: CalibrationTable, area: SensorArea, found: FindingCollector): void {
  for (const point of table.points) {
    const problem = shadingProblem(table.convention, point.coefficients, point.focalMm, area, 1);
    if (problem === null) continue;
    const { shadingValues } = table.convention;
    found.add(CHECK.shadingRises, {
      place: point.place,
      field: "a1",
      message: `by the shading values of ${table.lens} at ${stateText(point)} ${problem}`,
      hint: `They are read as ${shadingValues}; if they are ${shadingValues === "loss" ? "gains" : "losses"}, write "# shading_values: ${shadingValues === "loss" ? "gain" : "loss"}". Look at shading_radius too.`,
    });
    return;
  }
}

function tellOfSerials(lenses: readonly Lens[], found: FindingCollector): void {
  const first = new Map<string, Lens>();
  for (const lens of lenses) {
    if (lens.serial === null) continue;
    const key = `${lens.maker ?? ""} ${lens.serial}`.toLowerCase();
    const other = first.get(key);
    if (other === undefined) first.set(key, lens);
    else if (other.focalMm !== lens.focalMm || other.focalMinMm !== lens.focalMinMm) {
      found.add(CHECK.serialTwice, {
        place: lens.place,
        field: "serial",
        message: `the lenses ${other.id} (line ${other.place.line}) and ${lens.id} have one serial number, ${lens.serial}, and different focal lengths`,
        hint: "Read the serial number off the lens and correct the one that is wrong.",
      });
    }
  }
}

/** The first distortion term of a point that is not zero. */
function mainTerm(point: CalibrationPoint): string | null {
  return DISTORTION_TERMS.find((name) => (point.coefficients[name] ?? 0) !== 0) ?? null;
}

function distortionText(point: CalibrationPoint): string {
  return DISTORTION_TERMS.map((name) => point.coefficients[name] ?? "").join(" ");
}

function stateText(point: CalibrationPoint): string {
  const distance = point.focusDioptres === 0 ? "infinity" : `${Number((1 / point.focusDioptres).toFixed(3))} m`;
  return `${point.focalMm} mm, ${distance}`;
}

function signed(percent: number): string {
  return `${percent < 0 ? "\u2212" : "+"}${Math.abs(percent).toFixed(1)} %`;
}
