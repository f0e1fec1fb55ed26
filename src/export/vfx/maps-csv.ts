/** maps.csv: which map serves which frames. */
import { csvText } from "../csv-text.ts";
import type { MapPlan } from "./map-plan.ts";

export const MAPS_FIELDS = [
  { name: "frame_from", type: "integer", description: "first frame of the take that the map serves, counted from 0" },
  { name: "frame_to", type: "integer", description: "last frame that it serves" },
  { name: "map", type: "string", description: "file beside this table" },
  {
    name: "overscan",
    type: "number",
    unit: "1",
    description: "data window over display window, the larger side; 1 without overscan",
  },
] as const;

export function mapsCsv(plan: MapPlan): string {
  return csvText(
    MAPS_FIELDS.map(({ name }) => name),
    plan.ranges.map((r) => [r.frameFrom, r.frameTo, r.map, r.overscan]),
  );
}
