/**
 * Coefficients between the points of a calibration table: linear in 1/distance first, then in log2 T, then in focal length.
 * Never beyond the table: the nearest value on that axis is used, and the result says so.
 */
import { type BlendedCell, blendTable } from "./calibration-blend.ts";
import type { CalibrationPointValues, CoefficientConvention, Coefficients } from "./convention.ts";
import { unsaidParts } from "./distortion/canonical.ts";
import { isRefused, type Refused } from "./refused.ts";

/** What {@link coefficientsAt} needs of a table. */
export interface CalibrationSource {
  readonly convention: CoefficientConvention;
  readonly points: readonly CalibrationPointValues[];
}

export interface CalibrationRequest {
  readonly focalMm: number;
  /** 1/m from the image plane; infinity = 0. */
  readonly focusDioptres: number;
  /** `null` or NaN: not known. Coefficients that depend on the stop are then left out. */
  readonly tStop: number | null;
}

/** A place that the table does not reach, in the axis's unit: mm, dioptres or T-stop. */
export interface AxisBeyond {
  readonly axis: "focal" | "focus" | "stop";
  readonly asked: number;
  readonly used: number;
}

/** How the table served. `nearest` with no axes: the request is within the table, at a missing cell of its grid. */
export type CalibrationUse = { readonly kind: "inside" } | { readonly kind: "nearest"; readonly axes: readonly AxisBeyond[] };

export interface CalibrationResult {
  readonly coefficients: Coefficients;
  /** The focal length that the coefficients belong to: the asked one, or the table's nearest. */
  readonly focalMm: number;
  readonly state: CalibrationUse;
  /** Cells of the grid that the table lacks, for which the nearest row was used. */
  readonly missingCells: readonly BlendedCell[];
}

/** Further apart than rounding; a table's 55 and a kit's 55.0000001 are one focal length. */
const SAME = 1e-9;

/**
 * Coefficients for a focal length, focus and stop, in the table's own convention. Distortion terms are multiplied by the focal
 * length before they are blended over it and divided after; the centre, shading and pupil are blended plain.
 *
 * Refused, in words, when the table does not say its model, direction, radius or the area its radius needs; when the focus or
 * the focal length is not known; when the table is empty; when nothing is left without the stop.
 *
 * @source D. C. Brown 1971 (nearly linear in 1/distance); lensfun (k times f over focal length)
 */
export function coefficientsAt(table: CalibrationSource, request: CalibrationRequest): CalibrationResult | Refused {
  const unsaid = unsaidOnce(table.convention);
  if (unsaid !== null) return unsaid;
  if (table.points.length === 0) return { refused: "the calibration table has no rows" };
  if (!(request.focalMm > 0)) return { refused: "the focal length is not known" };
  if (!(request.focusDioptres >= 0)) return { refused: "the focus distance is not known" };

  const stopKnown = request.tStop !== null && request.tStop > 0;
  const blended = stopKnown
    ? blendTable(table.points, {
        focalMm: request.focalMm,
        focusDioptres: request.focusDioptres,
        log2T: Math.log2(request.tStop ?? 1),
      })
    : withoutStop(table.points, request);
  if (isRefused(blended)) return blended;

  const axes: AxisBeyond[] = [];
  const { used } = blended;
  if (differs(request.focalMm, used.focalMm)) axes.push({ axis: "focal", asked: request.focalMm, used: used.focalMm });
  if (differs(request.focusDioptres, used.focusDioptres)) {
    axes.push({ axis: "focus", asked: request.focusDioptres, used: used.focusDioptres });
  }
  if (stopKnown && request.tStop !== null && used.log2T !== null && Math.abs(Math.log2(request.tStop) - used.log2T) > SAME) {
    axes.push({ axis: "stop", asked: request.tStop, used: 2 ** used.log2T });
  }
  const inside = axes.length === 0 && blended.missing.length === 0;
  return {
    coefficients: blended.coefficients,
    focalMm: used.focalMm,
    state: inside ? { kind: "inside" } : { kind: "nearest", axes },
    missingCells: blended.missing,
  };
}

const UNSAID = new WeakMap<CoefficientConvention, Refused | null>();

/** A table is asked once a frame and its convention does not change. */
function unsaidOnce(convention: CoefficientConvention): Refused | null {
  const known = UNSAID.get(convention);
  if (known !== undefined) return known;
  const unsaid = unsaidParts(convention);
  UNSAID.set(convention, unsaid);
  return unsaid;
}

/** Without a stop only what is the same at every stop of the table can be said. */
function withoutStop(
  points: readonly CalibrationPointValues[],
  request: CalibrationRequest,
): ReturnType<typeof blendTable> | Refused {
  const stops = [...new Set(points.map((p) => p.tStop))].filter((t) => t !== null);
  const atStops = (stops.length === 0 ? [1] : stops).map((t) => blendTable(points, { ...request, log2T: Math.log2(t) }));
  const [first, ...others] = atStops;
  if (first === undefined) return { refused: "the calibration table has no rows" };
  const same = Object.entries(first.coefficients).filter(([name, value]) =>
    others.every((o) => Math.abs((o.coefficients[name as keyof Coefficients] ?? Number.NaN) - value) <= SAME * Math.abs(value)),
  );
  if (same.length === 0) return { refused: "the table's coefficients depend on the stop and the stop is not known" };
  return { ...first, coefficients: Object.fromEntries(same), used: { ...first.used, log2T: null } };
}

function differs(asked: number, used: number): boolean {
  return Math.abs(asked - used) > SAME * Math.max(1, Math.abs(asked));
}
