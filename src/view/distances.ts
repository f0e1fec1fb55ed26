/** How a page writes distances: by the show's setting, with the unit in the column head or after the figure. */
import type { DistanceM } from "../core/quantity.ts";
import { distanceNumber } from "../format/length.ts";
import { inUnits } from "../format/units.ts";
import type { Distances } from "./names.ts";

export { distanceNumber as distanceInColumn, distanceUnit } from "../format/length.ts";

/** "1.76 to ∞" in a column headed by `distanceUnit`; one figure when both ends read alike. */
export function rangeInColumn(near: DistanceM, far: DistanceM, distances: Distances): string {
  return inUnits(distances, (system) => {
    const from = distanceNumber(near, system);
    const to = distanceNumber(far, system);
    return from === to ? from : `${from} to ${to}`;
  });
}

/** "1.76 to 2.40 m": the same with its unit, for a fact. */
export function rangeWithUnit(near: DistanceM, far: DistanceM, distances: Distances): string {
  return inUnits(distances, (system) => `${rangeInColumn(near, far, system)}${system === "metric" ? " m" : ""}`);
}
