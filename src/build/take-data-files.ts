/** The scripts with every frame of a take, beside the pages of a day. */
import type { DaySummary } from "../summary/types.ts";
import type { StillFiles } from "../view/context.ts";
import type { Distances } from "../view/names.ts";
import { takeDataScript } from "../view/take/take-data.ts";

/**
 * One a take with a log; not for a row whose address an earlier row has. Paths are below the output folder. They come one at a
 * time: those of a whole day together are large.
 */
export function* takeDataFiles(
  { date, takes }: DaySummary,
  distances: Distances,
  stills: ReadonlyMap<string, StillFiles>,
): Generator<{ readonly path: string; readonly bytes: Uint8Array }> {
  for (const t of takes) {
    const script = t.take.duplicate ? null : takeDataScript(date, t, distances, stills.get(t.take.address));
    if (script !== null) yield { path: script.path, bytes: Buffer.from(script.text) };
  }
}
