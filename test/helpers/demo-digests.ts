/** Digests of the demo show's days, made in memory from the folder on the disk. */
import { join } from "node:path";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import type { ShowInput } from "../../src/ingest/records.ts";
import { buildDay } from "../../src/model/build-day.ts";
import { summariseDay } from "../../src/summary/day.ts";
import { digestDay } from "../../src/summary/digest.ts";
import type { DayDigest } from "../../src/summary/digest-types.ts";
import { diskFolder } from "./disk-folder.ts";

export function demoDigests(): { readonly show: ShowInput; readonly digests: readonly DayDigest[] } {
  const folder = diskFolder(join(import.meta.dirname, "../../data"));
  const { input: show } = readShow(folder);
  if (show === null) throw new Error("the demo's show.yaml cannot be used");
  const digests = show.dates.map((date) => {
    const { input, findings } = readDay(folder, show, date);
    return digestDay(summariseDay(buildDay(show, input, findings), show.kit), []);
  });
  return { show, digests };
}
