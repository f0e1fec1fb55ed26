/** Plates: a slate that a plate belongs to, and a clean plate in the lens state of its hero. */
import { CHECK } from "../../core/findings/check.ts";
import { didYouMean } from "../../core/nearest-name.ts";
import { depthOfField, fNumberFor } from "../../optics/depth-of-field.ts";
import { stopsBetween } from "../../optics/exposure.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";
import { metres, round } from "./words.ts";

/** Focal lengths further apart than this, as a share, give a picture of another size. */
const FOCAL_TOLERANCE = 0.02;

interface Range {
  readonly low: number;
  readonly high: number;
}

interface LensState {
  readonly focalMm: Range | null;
  readonly tStop: Range | null;
  readonly dioptres: Range | null;
}

export function checkCleanPlates(context: DayContext): void {
  const { takes, tell } = context;
  for (const take of takes) {
    if (take.plateOf === null) continue;
    const heroes = takes.filter((other) => sameName(other.slate) === sameName(take.plateOf as string));
    if (heroes.length === 0) {
      tell(CHECK.plateOfNobody, {
        place: take.note?.plateOf?.place ?? null,
        field: "plate_of",
        message: `No take of this day has slate ${take.plateOf}, which this plate belongs to.`,
        hint: `Correct plate_of if the slate is wrong.${didYouMean(
          take.plateOf,
          takes.map((other) => other.slate),
        )} If its hero was shot on another day, nothing needs to be done.`,
        take: take.address,
      });
    } else if (take.plate === "clean") compare(take, heroes, context);
  }
}

/** The circled takes of the hero on this camera, else the good ones, else all: the plate has to fit one of them. */
function compare(clean: Take, all: readonly Take[], { show, tell }: DayContext): void {
  const own = all.filter((hero) => sameName(hero.camera) === sameName(clean.camera));
  const circled = own.filter((hero) => hero.circled);
  const good = own.filter((hero) => hero.status === "good");
  const heroes = circled.length > 0 ? circled : good.length > 0 ? good : own;
  const problems = heroes.map((hero) => differences(clean, hero, show.limits.stopDifference));
  const [first] = problems;
  if (first === undefined || problems.some((list) => list.length === 0)) return;
  const hero = heroes[0] as Take;
  tell(CHECK.cleanPlateDiffers, {
    place: clean.note?.plate?.place ?? clean.note?.place ?? null,
    field: "plate",
    message: `This clean plate differs from its hero ${hero.address}: ${first.join("; ")}.`,
    hint: `A clean plate is shot with the hero's lens, focal length, stop and focus. Look at both takes (hero: line ${hero.note?.place.line ?? "?"}), or tell VFX.`,
    take: clean.address,
  });
}

function differences(clean: Take, hero: Take, stopLimit: number): readonly string[] {
  if (clean.lensId !== null && hero.lensId !== null && sameName(clean.lensId) !== sameName(hero.lensId)) {
    return [`lens ${clean.lensId} instead of ${hero.lensId}`];
  }
  const a = lensState(clean);
  const b = lensState(hero);
  const found: string[] = [];
  if (a.focalMm !== null && b.focalMm !== null && outside(a.focalMm, b.focalMm, FOCAL_TOLERANCE)) {
    found.push(`${rangeText(a.focalMm, " mm")} instead of ${rangeText(b.focalMm, " mm")}`);
  }
  if (a.tStop !== null && b.tStop !== null) {
    const apart = Math.max(stopsBetween(a.tStop.low, b.tStop.low), stopsBetween(b.tStop.high, a.tStop.high));
    if (apart > stopLimit) found.push(`T${rangeText(a.tStop, "")} instead of T${rangeText(b.tStop, "")}`);
  }
  if (a.dioptres !== null && b.dioptres !== null) {
    const allowed = depthDioptres(hero, b);
    const apart = Math.max(a.dioptres.high - b.dioptres.high, b.dioptres.low - a.dioptres.low);
    if (allowed !== null && apart > allowed) {
      found.push(`focus ${distances(a.dioptres)} instead of ${distances(b.dioptres)}, beyond the depth of field`);
    }
  }
  return found;
}

/** Logged before noted; focal length also from the kit. */
function lensState(take: Take): LensState {
  const columns = take.track?.columns;
  const note = take.note;
  const focal = rangeOf(columns?.focal_mm) ?? spanOf(note?.focalMm?.value);
  const marked = take.lens?.focalMm ?? null;
  const focus = note?.focus?.value;
  return {
    focalMm: focal ?? (marked === null ? null : { low: marked, high: marked }),
    tStop: mostOf(columns?.t) ?? (note?.stop?.value.kind === "f" ? null : spanOf(note?.stop?.value)),
    dioptres: rangeOf(columns?.focus) ?? (focus === undefined ? null : spanOf({ from: focus.fromDioptres, to: focus.toDioptres })),
  };
}

/** Half of the hero's depth of field at its nearest distance and widest stop, in dioptres; `null` when it cannot be calculated. */
function depthDioptres(hero: Take, state: LensState): number | null {
  const coc = hero.circleOfConfusionMm;
  if (coc === null || state.focalMm === null || state.tStop === null || state.dioptres === null) return null;
  const used = fNumberFor({ fStop: null, tStop: state.tStop.low, transmittance: hero.lens?.transmittance ?? null });
  const imagePlaneMm = state.dioptres.high <= 0 ? Number.POSITIVE_INFINITY : 1000 / state.dioptres.high;
  if (used === null) return null;
  const depth = depthOfField({ focalMm: state.focalMm.high, fNumber: used.fNumber, cocMm: coc, imagePlaneMm });
  return depth === null ? null : (1000 / depth.nearMm - 1000 / depth.farMm) / 2;
}

function outside(a: Range, b: Range, tolerance: number): boolean {
  return a.low < b.low * (1 - tolerance) || a.high > b.high * (1 + tolerance);
}

function rangeOf(values: Float64Array | undefined): Range | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values ?? []) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low <= high ? { low, high } : null;
}

/** The range of nine values in ten: one frame of noise is no other stop. */
function mostOf(values: Float64Array | undefined): Range | null {
  const sorted = values?.filter((value) => !Number.isNaN(value)).sort() ?? new Float64Array();
  const low = sorted[Math.floor(0.05 * (sorted.length - 1))];
  const high = sorted[Math.ceil(0.95 * (sorted.length - 1))];
  return low === undefined || high === undefined ? null : { low, high };
}

function spanOf(span: { readonly from: number; readonly to: number } | undefined): Range | null {
  return span === undefined ? null : { low: Math.min(span.from, span.to), high: Math.max(span.from, span.to) };
}

function rangeText({ low, high }: Range, unit: string): string {
  return round(low) === round(high) ? `${round(low)}${unit}` : `${round(low)} to ${round(high)}${unit}`;
}

function distances({ low, high }: Range): string {
  return metres(low) === metres(high) ? metres(low) : `${metres(low)} to ${metres(high)}`;
}
