/** How a page writes distances: by the show's setting, with the unit in the column head or after the figure. */
import type { DistanceM } from "../core/quantity.ts";
import { distance, distanceNumber, distanceRange, distanceUnit as unitOf } from "../format/length.ts";
import type { Distances } from "./names.ts";

/** Unit for the head of a distance column: metres stand bare under it, feet carry their marks. */
export function distanceUnit(system: Distances): string {
  return system === "both" ? "m (ft in)" : unitOf(system);
}

/** A distance in a column headed by `distanceUnit`. */
export function distanceInColumn(metres: DistanceM, system: Distances): string {
  return system === "both" ? distance(metres, system) : distanceNumber(metres, system);
}

/** "1.76 to ∞" in a column headed by `distanceUnit`; one figure when both ends read alike. */
export function rangeInColumn(near: DistanceM, far: DistanceM, system: Distances): string {
  if (system === "both") return distanceRange(near, far, system);
  const from = distanceNumber(near, system);
  const to = distanceNumber(far, system);
  return from === to ? from : `${from} to ${to}`;
}
