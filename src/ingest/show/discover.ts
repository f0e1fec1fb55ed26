import type { FindingCollector } from "../../core/findings/collect.ts";
import { SHOW } from "../../core/findings/show.ts";
import { wholeFile } from "../../csv/decode.ts";
import type { Opener } from "../open-file.ts";
import { readDate } from "../written/clock.ts";

export const DAYS = "days";

/** Dates of the day folders in order. A folder that is named by no date is a check; so is a show without any. */
export function discoverDays(open: Opener, found: FindingCollector): readonly string[] {
  const dates: string[] = [];
  for (const entry of open.list(DAYS)) {
    const date = readDate(entry.name);
    if (date.ok && entry.kind === "folder") {
      dates.push(entry.name);
      continue;
    }
    found.add(SHOW.dayName, {
      place: wholeFile(`${DAYS}/${entry.name}`),
      message: date.ok ? `days/${entry.name} is not a folder` : `days/${entry.name} is left out: ${date.problem}`,
      hint: "Name the folder of a shooting day by its date, such as days/2026-03-14.",
    });
  }
  if (dates.length === 0) {
    found.add(SHOW.noDays, {
      place: wholeFile(DAYS),
      message: "the show has no shooting day",
      hint: "Make a folder such as days/2026-03-14 with notes.csv or a log in logs/.",
    });
  }
  return dates.sort();
}
