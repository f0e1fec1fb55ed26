/** A plate against the take it was made for: lens, focal length, stop and focus over both takes, and how far they lie apart. */
import { depthOfField, fNumberFor } from "../optics/depth-of-field.ts";
import { stopsBetween } from "../optics/exposure.ts";
import { sameName } from "./address.ts";
import { type Range, rangeOf } from "./range.ts";
import type { Take } from "./types.ts";

/** Focal lengths further apart than this, as a share, give a picture of another size. */
const FOCAL_TOLERANCE = 0.02;

/** What a lens did over a take; `null` where neither log nor note (nor, for the focal length, the kit) says it. */
export interface LensState {
  readonly focalMm: Range | null;
  readonly tStop: Range | null;
  readonly dioptres: Range | null;
}

/** How a plate lies to its hero. A part is `null` when one of the two does not say it. */
export interface PlateMatch {
  readonly plate: LensState;
  readonly hero: LensState;
  readonly sameLens: boolean | null;
  /** Whether the plate's focal lengths lie outside the hero's by more than 2 %. */
  readonly focalDiffers: boolean | null;
  /** Stops by which the plate lies outside what the hero did; 0 or less is inside. */
  readonly stopsApart: number | null;
  /** The same for focus, in dioptres. */
  readonly dioptresApart: number | null;
  /** Half of the hero's depth of field at its nearest distance and widest stop, in dioptres; `null` when it cannot be calculated. */
  readonly dioptresAllowed: number | null;
}

/** Compares a plate with the take it was made for. */
export function plateMatch(plate: Take, hero: Take): PlateMatch {
  const a = lensState(plate);
  const b = lensState(hero);
  return {
    plate: a,
    hero: b,
    sameLens: plate.lensId === null || hero.lensId === null ? null : sameName(plate.lensId) === sameName(hero.lensId),
    focalDiffers: a.focalMm === null || b.focalMm === null ? null : outside(a.focalMm, b.focalMm, FOCAL_TOLERANCE),
    stopsApart:
      a.tStop === null || b.tStop === null
        ? null
        : Math.max(stopsBetween(a.tStop.low, b.tStop.low), stopsBetween(b.tStop.high, a.tStop.high)),
    dioptresApart:
      a.dioptres === null || b.dioptres === null
        ? null
        : Math.max(a.dioptres.high - b.dioptres.high, b.dioptres.low - a.dioptres.low),
    dioptresAllowed: b.dioptres === null ? null : depthDioptres(hero, b),
  };
}

/** The takes a plate has to fit one of, on its own camera: the circled ones, else the good ones, else all. */
export function heroesFor(plate: Take, takes: readonly Take[]): readonly Take[] {
  const own = takes.filter((hero) => sameName(hero.camera) === sameName(plate.camera));
  const circled = own.filter((hero) => hero.circled);
  const good = own.filter((hero) => hero.status === "good");
  return circled.length > 0 ? circled : good.length > 0 ? good : own;
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
  const pupilMagnification = hero.lens?.pupilMagnification ?? 1;
  const depth = depthOfField({ focalMm: state.focalMm.high, fNumber: used.fNumber, cocMm: coc, imagePlaneMm, pupilMagnification });
  return depth === null ? null : (1000 / depth.nearMm - 1000 / depth.farMm) / 2;
}

function outside(a: Range, b: Range, tolerance: number): boolean {
  return a.low < b.low * (1 - tolerance) || a.high > b.high * (1 + tolerance);
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
