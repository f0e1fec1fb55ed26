/** What hangs on the units of distance is drawn once for each choice that the page's reader has. */
import type { DistanceSystem, PageDistances } from "../format/units.ts";
import type { ForUnits } from "./drawing.ts";

export interface UnitsDrawn<S extends DistanceSystem> {
  readonly system: S;
  /** The readers that the drawn item is for. */
  readonly units: ForUnits;
}

/** Where there is room for an axis in both units. */
export function unitsDrawn(distances: PageDistances): readonly UnitsDrawn<DistanceSystem>[] {
  if (distances === "metric" || distances === "imperial" || distances === "both") return [{ system: distances, units: {} }];
  const choices: readonly DistanceSystem[] = distances === "reader-both" ? ["metric", "imperial", "both"] : ["metric", "imperial"];
  return choices.map((system) => ({ system, units: { units: [system] } }));
}

/** Where there is room for one: who wants both gets metres. */
export function oneUnitDrawn(distances: PageDistances): readonly UnitsDrawn<"metric" | "imperial">[] {
  if (distances === "imperial") return [{ system: "imperial", units: {} }];
  if (distances === "metric" || distances === "both") return [{ system: "metric", units: {} }];
  return [
    { system: "metric", units: { units: ["metric", "both"] } },
    { system: "imperial", units: { units: ["imperial"] } },
  ];
}
