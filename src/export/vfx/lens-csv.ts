/** lens.csv: a row per frame of the take, units in the column names. */
import type { TakeSummary } from "../../summary/types.ts";
import { csvText } from "../csv-text.ts";
import { LENS_COLUMNS, lensRow, unknownNames } from "./lens-rows.ts";

/** What the table cannot hold. */
export const losses: readonly string[] = [
  "lens.csv has no columns for the denominator terms k4 k5 k6, for the division model, for even anamorphic terms and for coefficients of the desqueezed picture: its coefficient columns are then empty. The UV maps hold all of them, lens.opentrackio.jsonl the first two.",
  "lens.csv has no columns for a logged hyperfocal distance (the one in it is calculated), for encoders, and for pan, tilt, roll and height.",
];

/** The text: the columns of the contract, then those of the log that nobody knows. */
export function lensCsv(summary: TakeSummary): string {
  const unknown = summary.take.track?.unknown ?? [];
  const rows = Array.from({ length: summary.take.durationFrames }, (_, frame) => {
    const row = lensRow(summary, frame);
    return [...LENS_COLUMNS.map((name) => row[name]), ...unknown.map((column) => column.text(frame))];
  });
  return csvText([...LENS_COLUMNS, ...unknownNames(summary)], rows);
}
