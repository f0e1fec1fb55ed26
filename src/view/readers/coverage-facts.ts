/** Calibration against what was shot with a lens, and the charts that are still worth shooting. */
import type { DistanceM } from "../../core/quantity.ts";
import { metresFromDioptres } from "../../core/quantity.ts";
import { distance } from "../../format/length.ts";
import { fixed, thousands, trimmed } from "../../format/number.ts";
import { share } from "../../format/percent.ts";
import { withUnit } from "../../format/space.ts";
import { stopRange, stops, tStop } from "../../format/stop.ts";
import { listWords, plural } from "../../format/words.ts";
import type { ChartSetup, LensCoverage } from "../../summary/coverage.ts";
import type { Region, ShotRegion } from "../../summary/coverage-region.ts";
import { distanceInColumn, distanceUnit } from "../distances.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import type { Distances } from "../names.ts";
import { cell, column, num, row, type TableModel, table } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";

export interface CoverageView {
  readonly facts: readonly Fact[];
  readonly setups: TableModel;
  readonly hasSetups: boolean;
  /** What the list says, or why there is none. */
  readonly sentence: string;
  /** By which rule set-ups are chosen. */
  readonly rule: string;
}

export function coverageView(coverage: LensCoverage, distances: Distances): CoverageView {
  return {
    facts: coverageFacts(coverage, distances),
    setups: setupsTable([coverage], distances, false),
    hasSetups: coverage.setups.length > 0,
    sentence: setupsSentence(coverage),
    rule: ruleWords(coverage),
  };
}

function coverageFacts({ table: own, plates, all, framesMissing }: LensCoverage, distances: Distances): readonly Fact[] {
  const region = own?.region ?? null;
  return [
    factOr("Calibrated", region === null ? null : regionWords(region, distances), own === null ? "no table" : "no points", {
      source: own?.refused == null ? "kit" : "kit, not evaluated",
    }),
    shotFact("Shot on plates", plates, "on no plate with a log", distances),
    shotFact("Shot on all takes", all, "on no take with a log", distances),
    ...(plates === null || plates.fractionInside === null
      ? []
      : [
          fact("Plates inside the table", share(plates.framesInside, plates.frames), {
            source: `${thousands(plates.framesInside)} of ${thousands(plates.frames)} frames`,
          }),
          ...(plates.beyond.length === 0 ? [] : [fact("Plates beyond it", beyondWords(plates, distances))]),
        ]),
    ...(plates === null ? [] : [fact("Plates not served", framesOrNone(framesMissing), { source: "by the rule below" })]),
  ];
}

function framesOrNone(frames: number): string {
  return frames === 0 ? "none" : plural(frames, "frame");
}

function shotFact(term: string, shot: ShotRegion | null, absent: string, distances: Distances): Fact {
  if (shot === null) return factOr(term, null, absent);
  const unknown = shot.framesUnknown === 0 ? "" : `, ${thousands(shot.framesUnknown)} more without focus or focal length`;
  return fact(term, regionWords(shot, distances), { source: `${plural(shot.frames, "frame")} logged${unknown}` });
}

/** "34 mm, 0.50 m to ∞, T2.1 to T5.6". */
function regionWords(region: Region, distances: Distances): string {
  const { min, max } = region.focusDioptres;
  const near = distance(metresFromDioptres(max), distances);
  const far = distance(metresFromDioptres(min), distances);
  return [
    focalRange(region.focalMm.min, region.focalMm.max),
    near === far ? near : `${near} to ${far}`,
    region.tStop === null ? "any stop" : stopRange(region.tStop.widest, region.tStop.deepest),
  ].join(", ");
}

function beyondWords(plates: ShotRegion, distances: Distances): string {
  const words = plates.beyond.map(({ axis, side, asked, frames }) => {
    const on = plural(frames, "frame");
    if (axis === "focal") return `to ${withUnit(trimmed(asked, 1), "mm")} on ${on}`;
    if (axis === "stop") return `${side === "below" ? "opened" : "stopped down"} to ${tStop(asked)} on ${on}`;
    return `focused to ${distance(metresFromDioptres(asked), distances)} on ${on}`;
  });
  return listWords(words);
}

function setupsSentence({ setups, plates, framesMissing, framesOnGrids }: LensCoverage): string {
  if (plates === null) return "Nothing is worth measuring for plates: this lens shot none that has a log.";
  if (framesMissing === 0) return "Nothing is left to measure: the table serves every logged frame of every plate.";
  const grids = framesOnGrids === 0 ? "" : ` The grids shot on the days serve ${plural(framesOnGrids, "frame")} of them.`;
  if (setups.length === 0) return `The grids shot on the days serve all ${plural(framesMissing, "frame")} that the table does not.`;
  return `${plural(setups.length, "chart set-up")} would serve the ${plural(framesMissing, "frame")} of plates that the table does not.${grids}`;
}

/** Chart set-ups of some lenses, in their order; `withLens` heads the rows with the lens. */
export function setupsTable(coverages: readonly LensCoverage[], distances: Distances, withLens: boolean): TableModel {
  const setups = coverages.flatMap((coverage) => coverage.setups);
  const cells = (setup: ChartSetup) => [
    num(trimmed(setup.focalMm, 1)),
    num(focusWords(setup.focusM, distances)),
    setup.tStop === null ? cell("any", { num: true, absent: true }) : num(tStop(setup.tStop)),
    num(thousands(setup.frames)),
  ];
  return table(
    "setups-table",
    "Chart set-ups that are still worth shooting, most frames of plates first",
    [
      column(withLens ? "Lens" : "Chart"),
      column("Focal length", { unit: "mm", num: true }),
      column("Focus", { unit: distanceUnit(distances), num: true }),
      column("Stop", { num: true }),
      column("Serves", { unit: "frames of plates", num: true }),
    ],
    setups.map((setup, i) => row(cell(withLens ? setup.lens : String(i + 1), { nb: true }), cells(setup))),
  );
}

function focusWords(focusM: DistanceM, distances: Distances): string {
  return distanceInColumn(focusM, distances);
}

/** The tolerance in a sentence. */
function ruleWords({ rule, table: own }: LensCoverage): string {
  if (rule.kind === "steps") {
    return `Neighbouring points may lie ${fixed(100 * (rule.focalRatio - 1), 0)} % of focal length, ${trimmed(rule.focusDioptres, 2)} dioptre and ${stops(rule.stops)} apart, plain steps because ${rule.reason}.`;
  }
  const { between } = rule;
  const region = own?.region ?? null;
  const oneFocal = region !== null && region.focalMm.min === region.focalMm.max;
  const gaps = [
    between.focalRatio === null || oneFocal ? null : `${fixed(100 * (between.focalRatio - 1), 0)} % of focal length`,
    between.focusDioptres === null ? null : `${trimmed(between.focusDioptres, 2)} dioptre`,
    between.stops === null ? null : stops(between.stops),
  ].filter((words) => words !== null);
  const apart = gaps.length === 0 ? "any distance" : listWords(gaps);
  const untested =
    rule.untested.length === 0 ? "" : ` Too few points to tell for ${listWords(rule.untested)}: a plain step is used.`;
  return `Neighbouring points may lie ${apart} apart: the corner is then off by less than ${trimmed(rule.cornerPx, 2)} pixel at ${rule.widthPx} × ${rule.heightPx}, and the shading by less than ${trimmed(rule.shadingStops, 2)} stop, told from this lens's own table.${untested}`;
}
