/** What a lens's calibration table says over focus and over the picture, read as the report reads it everywhere else. */
import type { CalibrationTable, Lens, SensorMode } from "../ingest/records.ts";
import { coefficientsAt } from "../optics/calibration.ts";
import { type CanonicalDistortion, canonicalDistortion } from "../optics/distortion/canonical.ts";
import { distortionPercent, distortionPercentAt } from "../optics/distortion/percent.ts";
import { breathingPercent } from "../optics/field-of-view.ts";
import type { SensorArea } from "../optics/radius.ts";
import { isRefused } from "../optics/refused.ts";
import { canonicalShading, shadingStopsAt } from "../optics/shading.ts";

/** One line of a plot over focus. */
export interface FocusCurve {
  readonly focalMm: number;
  /** Stop that the table is read at; `null` where every stop is alike. */
  readonly tStop: number | null;
  /** From infinity (0 dioptres) to the nearest distance. */
  readonly points: readonly { readonly focusDioptres: number; readonly value: number }[];
}

export interface LensCurves {
  /** Area whose corner the figures are for, in mm on the recorded sensor, and whose area it is. */
  readonly area: SensorArea;
  readonly areaFrom: "table" | "mode";
  /** Percent at the corner, a line a focal length of the table; negative is barrel. */
  readonly distortion: readonly FocusCurve[];
  /** Stops at the corner: a prime's at every stop of the table, a zoom's at each focal length and the table's widest stop. */
  readonly shading: readonly FocusCurve[];
  /** Change of the horizontal angle of view against infinity, percent, as if the whole lens moved to focus: an estimate. */
  readonly breathing: readonly FocusCurve[];
}

/** One line of a plot over the picture, from the middle (share 0) to the lower right corner (share 1). */
export interface RadialCurve {
  readonly focalMm: number;
  readonly focusDioptres: number;
  readonly points: readonly { readonly share: number; readonly percent: number }[];
}

export interface RadialCurves {
  readonly lens: string;
  /** The picture as it is seen: desqueezed. */
  readonly area: SensorArea;
  readonly curves: readonly RadialCurve[];
}

const STEPS = 24;
/** More focal lengths than this are thinned to the ends and what lies evenly between. */
const MOST_LINES = 5;

/** `null` when neither the table nor a sensor mode says an area. */
export function lensCurves(lens: Lens, table: CalibrationTable | null, mode: SensorMode | null): LensCurves | null {
  const where = curveArea(lens, table, mode);
  if (where === null) return null;
  const { area, areaFrom, squeeze } = where;
  const focals = table === null ? [] : thinned(sortedSet(table.points.map((p) => p.focalMm)));
  const stops = table === null ? [] : sortedSet(table.points.flatMap((p) => p.tStop ?? []));
  const widest = stops[0] ?? null;
  const near = table === null ? 0 : Math.max(0, ...table.points.map((p) => p.focusDioptres));
  const curve = (focalMm: number, tStop: number | null, to: number, at: (focusDioptres: number) => number | null): FocusCurve => ({
    focalMm,
    tStop,
    points: sampled(to, table).flatMap((focusDioptres) => {
      const value = at(focusDioptres);
      return value === null || !Number.isFinite(value) ? [] : [{ focusDioptres, value }];
    }),
  });
  const corner = (focalMm: number, tStop: number | null) => (focusDioptres: number) => {
    const d = table === null ? null : tableDistortion(table, { focalMm, focusDioptres, tStop }, squeeze);
    return d === null ? null : (distortionPercentAt(d, area)?.corner ?? null);
  };
  const shade = (focalMm: number, tStop: number | null) => (focusDioptres: number) =>
    table === null ? null : tableShading(table, { focalMm, focusDioptres, tStop }, squeeze, area);
  const isPrime = focals.length === 1;
  const shadingLines = isPrime
    ? (stops.length === 0 ? [null] : thinned(stops)).map((t) => [focals[0] ?? 0, t] as const)
    : focals.map((f) => [f, widest] as const);
  const closest = lens.closeFocusM === null ? near : Math.max(near, 1 / lens.closeFocusM);
  return {
    area,
    areaFrom,
    distortion: drawn(focals.map((f) => curve(f, widest, near, corner(f, widest)))),
    shading: drawn(shadingLines.map(([f, t]) => curve(f, t, near, shade(f, t)))),
    breathing: drawn(
      breathingFocals(lens, focals).map((f) =>
        curve(f, null, closest, (d) =>
          breathingPercent({
            sideMm: area.widthMm * squeeze,
            focalMm: f,
            imagePlaneMm: d <= 0 ? Number.POSITIVE_INFINITY : 1000 / d,
          }),
        ),
      ),
    ),
  };
}

/**
 * Distortion from the middle to the corner: a prime at infinity and at the table's nearest distance, a zoom at infinity at its
 * shortest, middle and longest focal length. `null` without a table that can be read.
 */
export function radialCurves(lens: Lens, table: CalibrationTable | null, mode: SensorMode | null): RadialCurves | null {
  const where = curveArea(lens, table, mode);
  if (where === null || table === null || table.points.length === 0) return null;
  const focals = sortedSet(table.points.map((p) => p.focalMm));
  const near = Math.max(...table.points.map((p) => p.focusDioptres));
  const far = Math.min(...table.points.map((p) => p.focusDioptres));
  const tStop = sortedSet(table.points.flatMap((p) => p.tStop ?? []))[0] ?? null;
  const middle = focals[Math.floor((focals.length - 1) / 2)] ?? 0;
  const states =
    focals.length === 1
      ? sortedSet([far, near]).map((focusDioptres) => ({ focalMm: middle, focusDioptres }))
      : sortedSet([focals[0] ?? 0, middle, focals.at(-1) ?? 0]).map((focalMm) => ({ focalMm, focusDioptres: far }));
  const curves = states.flatMap((state) => {
    const d = tableDistortion(table, { ...state, tStop }, where.squeeze);
    if (d === null) return [];
    const points = Array.from({ length: STEPS + 1 }, (_, i) => {
      const share = i / STEPS;
      return { share, percent: distortionPercent(d, (share * where.area.widthMm) / 2, (share * where.area.heightMm) / 2) };
    });
    return points.some((p) => p.percent === null)
      ? []
      : [{ ...state, points: points.map((p) => ({ ...p, percent: p.percent ?? 0 })) }];
  });
  const area = { widthMm: where.area.widthMm * where.squeeze, heightMm: where.area.heightMm };
  return curves.length === 0 ? null : { lens: lens.id, area, curves };
}

/** The table's own area, squeezed back where it was made on the desqueezed picture; else the mode's. */
function curveArea(lens: Lens, table: CalibrationTable | null, mode: SensorMode | null) {
  const squeeze = lens.squeeze ?? mode?.squeeze ?? 1;
  const own = table?.convention.areaMm ?? null;
  if (own !== null) {
    const widthMm = table?.convention.squeezeState === "desqueezed" ? own.width / squeeze : own.width;
    return { area: { widthMm, heightMm: own.height }, areaFrom: "table" as const, squeeze };
  }
  if (mode === null) return null;
  return { area: { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm }, areaFrom: "mode" as const, squeeze };
}

type State = { readonly focalMm: number; readonly focusDioptres: number; readonly tStop: number | null };

function tableDistortion(table: CalibrationTable, state: State, squeeze: number): CanonicalDistortion | null {
  const found = coefficientsAt(table, state);
  if (isRefused(found)) return null;
  const d = canonicalDistortion(table.convention, found.coefficients, found.focalMm, squeeze);
  return isRefused(d) ? null : d;
}

function tableShading(table: CalibrationTable, state: State, squeeze: number, area: SensorArea): number | null {
  const found = coefficientsAt(table, state);
  if (isRefused(found)) return null;
  const s = canonicalShading(table.convention, found.coefficients, found.focalMm, squeeze);
  return isRefused(s) ? null : (shadingStopsAt(s, area)?.corner ?? null);
}

/** Even steps of focus and the table's own points, far first. */
function sampled(near: number, table: CalibrationTable | null): readonly number[] {
  const even = Array.from({ length: STEPS + 1 }, (_, i) => (near * i) / STEPS);
  return sortedSet([...even, ...(table?.points.map((p) => p.focusDioptres) ?? [])]).filter((d) => d <= near);
}

function breathingFocals(lens: Lens, focals: readonly number[]): readonly number[] {
  if (lens.focalMm !== null) return [lens.focalMm];
  if (focals.length > 0) return focals;
  return sortedSet([lens.focalMinMm, lens.focalMaxMm].filter((mm) => mm !== null));
}

function sortedSet(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

function thinned(values: readonly number[]): readonly number[] {
  if (values.length <= MOST_LINES) return values;
  const last = values.length - 1;
  return Array.from({ length: MOST_LINES }, (_, i) => values[Math.round((i * last) / (MOST_LINES - 1))] ?? 0);
}

function drawn(curves: readonly FocusCurve[]): readonly FocusCurve[] {
  return curves.filter((curve) => curve.points.length > 1);
}
