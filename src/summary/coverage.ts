/** What was shot with each lens against what is calibrated, and the charts that are still worth shooting. */
import { type DistanceM, metresFromDioptres } from "../core/quantity.ts";
import type { CalibrationTable, Kit, Lens } from "../ingest/records.ts";
import { unsaidParts } from "../optics/distortion/canonical.ts";
import { stopValue } from "../optics/exposure.ts";
import { chooseSetups, isCovered, type MissingState } from "./chart-setups.ts";
import {
  CORNER_TOLERANCE_PX,
  type CoverageAxis,
  type CoveragePicture,
  FOCAL_RATIO_STEP,
  FOCUS_STEP,
  plainReach,
  type Reach,
  SHADING_TOLERANCE_STOPS,
  STOP_STEP,
  tableReach,
} from "./coverage-reach.ts";
import { beyondAxes, gapAround, type Region, type ShotRegion, shotRegion, tableRegion } from "./coverage-region.ts";
import { type CountedState, countedStates, type LensStates } from "./state-histogram.ts";

/** A chart to shoot. Frames are those of plates that it covers beside what stands before it in the list. */
export interface ChartSetup {
  readonly lens: string;
  readonly focalMm: number;
  readonly focusDioptres: number;
  readonly focusM: DistanceM;
  /** `null`: any stop. */
  readonly tStop: number | null;
  readonly frames: number;
}

/** By what rule the set-ups were chosen. */
export type CoverageRule =
  | {
      /** Expected error at the corner between neighbouring points, told from this lens's own table, on this sensor mode. */
      readonly kind: "corner-error";
      readonly cornerPx: number;
      readonly shadingStops: number;
      readonly camera: string;
      readonly sensorMode: string;
      readonly widthPx: number;
      readonly heightPx: number;
      /** Widest gap between neighbouring points; `null`: any. */
      readonly between: {
        readonly focalRatio: number | null;
        readonly focusDioptres: number | null;
        readonly stops: number | null;
      };
      /** Axes on which the table has too few points to tell, so that the plain step is used. */
      readonly untested: readonly CoverageAxis[];
    }
  | {
      /** Plain steps: how the corner changes is not known. */
      readonly kind: "steps";
      readonly reason: string;
      readonly focalRatio: number;
      readonly focusDioptres: number;
      readonly stops: number;
    };

export interface LensCoverage {
  readonly lens: string;
  /** The table's file and region; `null` without a table. `refused` says why it is not read. */
  readonly table: { readonly file: string; readonly region: Region | null; readonly refused: string | null } | null;
  /** `null` when the lens was not logged on a plate, or on any take. */
  readonly plates: ShotRegion | null;
  readonly all: ShotRegion | null;
  /** Frames of plates that lie further from the table's points than the rule allows. */
  readonly framesMissing: number;
  /** Those of them that a grid served which was shot on the day (takes with plate `grid`); the set-ups cover all the others. */
  readonly framesOnGrids: number;
  /** Most frames first. */
  readonly setups: readonly ChartSetup[];
  readonly rule: CoverageRule;
}

/** The part of a day's digest that coverage needs. A digest that an earlier version left has no states. */
export interface CoverageDigest {
  readonly lensStates?: readonly LensStates[];
}

/**
 * Calibration coverage of the kit's lenses, in the kit's order, over the days given. States are those of the digests'
 * histograms; a state that is beyond a table's end by less than half a step of the histogram counts as inside.
 */
export function calibrationCoverage(kit: Kit, digests: readonly CoverageDigest[]): LensCoverage[] {
  return kit.lenses.map((lens) => {
    const states = digests.flatMap((digest) => (digest.lensStates ?? []).filter((entry) => entry.lens === lens.id));
    return lensCoverage(kit, lens, states);
  });
}

function lensCoverage(kit: Kit, lens: Lens, states: readonly LensStates[]): LensCoverage {
  const table = kit.calibration.get(lens.id) ?? null;
  const refused = table === null ? `lens ${lens.id} has no calibration table` : refusedBecause(table);
  const served = refused === null ? table : null;
  const { rule, reach } = coverageRule(kit, lens, served, refused, states);
  const plates = shot(lens, states, "plates");
  const missing = plates.flatMap((state) => missingState(state, served, reach) ?? []);
  const grids = shot(lens, states, "grids");
  const open = missing.filter((state) => !grids.some((grid) => isCovered(state, grid, reach)));
  return {
    lens: lens.id,
    table: table === null ? null : { file: table.file, region: table.points.length === 0 ? null : tableRegion(table), refused },
    plates: shotRegion(plates, served, sum(states.map((entry) => entry.platesUnknown))),
    all: shotRegion(shot(lens, states, "all"), served, sum(states.map((entry) => entry.allUnknown))),
    framesMissing: sum(missing.map((state) => state.frames)),
    framesOnGrids: sum(missing.map((state) => state.frames)) - sum(open.map((state) => state.frames)),
    setups: chooseSetups(open, reach).map(({ state, frames }) => ({
      lens: lens.id,
      focalMm: state.focalMm,
      focusDioptres: state.focusDioptres,
      focusM: metresFromDioptres(state.focusDioptres),
      tStop: state.stops === null || reach.stop.between === Number.POSITIVE_INFINITY ? null : stopValue(state.stops),
      frames,
    })),
    rule,
  };
}

function refusedBecause(table: CalibrationTable): string | null {
  return unsaidParts(table.convention)?.refused ?? (table.points.length === 0 ? "the calibration table has no rows" : null);
}

/** The states of one lens. A prime's focal length is the marked one: a logged one that moves is its breathing. */
function shot(lens: Lens, states: readonly LensStates[], which: "plates" | "grids" | "all"): CountedState[] {
  const counted = countedStates(states.map((entry) => entry[which]));
  const focalMm = lens.kind === "prime" ? lens.focalMm : null;
  return focalMm === null ? counted : counted.map((state) => ({ ...state, focalMm }));
}

function coverageRule(
  kit: Kit,
  lens: Lens,
  table: CalibrationTable | null,
  refused: string | null,
  states: readonly LensStates[],
): { readonly rule: CoverageRule; readonly reach: Reach } {
  const steps = (reason: string) => ({
    rule: { kind: "steps", reason, focalRatio: FOCAL_RATIO_STEP, focusDioptres: FOCUS_STEP, stops: STOP_STEP } as const,
    reach: plainReach(),
  });
  if (table === null) return steps(refused ?? "there is no calibration table");
  const used = states.flatMap((entry) => entry.modes);
  const [mode] = kit.modes
    .filter((mode) => used.some(({ camera, sensorMode }) => camera === mode.camera && sensorMode === mode.sensorMode))
    .filter((mode) => mode.resolutionX !== null && mode.resolutionY !== null)
    .sort((a, b) => (b.resolutionX ?? 0) - (a.resolutionX ?? 0));
  if (mode === undefined) return steps("the recorded resolution of its takes is not known");
  const picture: CoveragePicture = {
    widthMm: mode.activeWidthMm,
    heightMm: mode.activeHeightMm,
    widthPx: mode.resolutionX ?? 0,
    heightPx: mode.resolutionY ?? 0,
    squeeze: lens.squeeze ?? mode.squeeze ?? 1,
  };
  const reach = tableReach(table, picture);
  const orNull = (value: number): number | null => (Number.isFinite(value) ? value : null);
  const axes: readonly CoverageAxis[] = lens.kind === "prime" ? ["focus", "stop"] : ["focal", "focus", "stop"];
  return {
    reach,
    rule: {
      kind: "corner-error",
      cornerPx: CORNER_TOLERANCE_PX,
      shadingStops: SHADING_TOLERANCE_STOPS,
      camera: mode.camera,
      sensorMode: mode.sensorMode,
      widthPx: picture.widthPx,
      heightPx: picture.heightPx,
      between: {
        focalRatio: orNull(Math.exp(reach.focal.between)),
        focusDioptres: orNull(reach.focus.between),
        stops: orNull(reach.stop.between),
      },
      untested: axes.filter((axis) => !reach[axis].tested),
    },
  };
}

/** A state that the table does not serve within the reach; `null` for one that it does. */
function missingState(state: CountedState, table: CalibrationTable | null, reach: Reach): MissingState | null {
  if (table === null) return { ...state, beyond: {} };
  const axes = beyondAxes(state, table);
  if (axes === null) return null;
  const beyond: Partial<Record<CoverageAxis, -1 | 1>> = {};
  let missing = false;
  for (const { axis, side, asked, used, by } of axes) {
    beyond[axis] = side === "above" ? 1 : -1;
    const away = axis === "focal" ? Math.abs(Math.log(asked / used)) : by;
    missing ||= away > reach[axis][side];
  }
  missing ||= (["focal", "focus", "stop"] as const).some((axis) => gapAround(state, table, axis) > reach[axis].between + 1e-9);
  return missing ? { ...state, beyond } : null;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
