/** Where a lens was used, in focus and stop, against what it can do and what is calibrated. */
import type { CalibrationTable, Lens } from "../ingest/records.ts";
import { countedStates, type LensStates } from "./state-histogram.ts";

/** Bounds of the focus bands in metres, far first: the first band reaches to infinity, the last one to the lens. */
export const FOCUS_BANDS_M = [
  20, 10, 7, 5, 4, 3, 2.5, 2, 1.75, 1.5, 1.25, 1.1, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.45, 0.4, 0.35, 0.3, 0.25, 0.2,
] as const;

/** Frames in a focus band and a third of a stop. */
export interface UsedCell {
  /** Index of the band: it runs from bound `band - 1` (infinity for 0) to bound `band` (the lens for the last). */
  readonly band: number;
  /** Thirds of a stop from T1: 9 is T2.8. */
  readonly thirds: number;
  readonly frames: number;
  /** Whether the middle of the cell lies outside the calibration table's range; false without a table. */
  readonly outside: boolean;
}

export interface LensMap {
  /** Far bands first, wide stops first. */
  readonly cells: readonly UsedCell[];
  /** Frames with focus, stop and focal length known; frames without. */
  readonly frames: number;
  readonly framesUnknown: number;
  readonly closeFocusDioptres: number | null;
  /** Stops from T1. */
  readonly widestStops: number | null;
  /** Ranges of the table; `stops` is `null` where its rows serve every stop. */
  readonly calibrated: {
    readonly farDioptres: number;
    readonly nearDioptres: number;
    readonly stops: { readonly from: number; readonly to: number } | null;
    readonly points: readonly { readonly focusDioptres: number; readonly stops: number | null }[];
  } | null;
}

/** Dioptres between which a band lies; the last one ends at infinity many. */
export function bandEdges(band: number): { readonly far: number; readonly near: number } {
  const far = band === 0 ? 0 : 1 / (FOCUS_BANDS_M[band - 1] ?? 1);
  const near = FOCUS_BANDS_M[band];
  return { far, near: near === undefined ? Number.POSITIVE_INFINITY : 1 / near };
}

/** The map of a lens over the days given. A focus on a bound belongs to the nearer band. */
export function lensMap(lens: Lens, table: CalibrationTable | null, states: readonly LensStates[]): LensMap {
  const cells = new Map<string, { band: number; thirds: number; frames: number }>();
  let frames = 0;
  let unknown = states.reduce((sum, one) => sum + one.allUnknown, 0);
  for (const state of countedStates(states.map((one) => one.all))) {
    if (state.stops === null) {
      unknown += state.frames;
      continue;
    }
    frames += state.frames;
    const band = bandOf(state.focusDioptres);
    const thirds = Math.round(state.stops * 3);
    const key = `${band} ${thirds}`;
    const cell = cells.get(key) ?? { band, thirds, frames: 0 };
    cell.frames += state.frames;
    cells.set(key, cell);
  }
  const calibrated = calibratedPart(table);
  return {
    cells: [...cells.values()]
      .sort((a, b) => a.band - b.band || a.thirds - b.thirds)
      .map((cell) => ({ ...cell, outside: isOutside(cell, calibrated) })),
    frames,
    framesUnknown: unknown,
    closeFocusDioptres: lens.closeFocusM === null ? null : 1 / lens.closeFocusM,
    widestStops: lens.widestT === null ? null : 2 * Math.log2(lens.widestT),
    calibrated,
  };
}

function bandOf(dioptres: number): number {
  const found = FOCUS_BANDS_M.findIndex((m) => dioptres < 1 / m - 1e-9);
  return found < 0 ? FOCUS_BANDS_M.length : found;
}

function calibratedPart(table: CalibrationTable | null): LensMap["calibrated"] {
  if (table === null || table.points.length === 0) return null;
  const points = table.points.map((p) => ({
    focusDioptres: p.focusDioptres,
    stops: p.tStop === null ? null : 2 * Math.log2(p.tStop),
  }));
  const stops = points.flatMap((p) => p.stops ?? []);
  const focus = points.map((p) => p.focusDioptres);
  return {
    farDioptres: Math.min(...focus),
    nearDioptres: Math.max(...focus),
    stops: stops.length === 0 ? null : { from: Math.min(...stops), to: Math.max(...stops) },
    points: [...new Map(points.map((p) => [`${p.focusDioptres} ${p.stops}`, p])).values()],
  };
}

/** A sixth of a stop is the cell's own width to either side. */
function isOutside(cell: { readonly band: number; readonly thirds: number }, calibrated: LensMap["calibrated"]): boolean {
  if (calibrated === null) return false;
  const { far, near } = bandEdges(cell.band);
  const stop = cell.thirds / 3;
  const { stops, farDioptres, nearDioptres } = calibrated;
  const byStop = stops !== null && (stop < stops.from - 1 / 6 || stop > stops.to + 1 / 6);
  return byStop || far >= nearDioptres || near <= farDioptres;
}
