/** Days made of texts for the editorial formats: plain ones, and every name and extent that can go wrong. */
import type { DaySummary } from "../../../src/summary/types.ts";
import { logText, SMALL_KIT, summarise } from "../../helpers/memory-show.ts";

export const TOOL = { name: "Lens Daybook", version: "1.0.0" } as const;
export const DATE = "2031-05-06";

const HEAD = "slate,take,camera,scene,roll,clip,tc_in,tc_out,rate,lens,stop,focus,circled,status,sound,plate,plate_of,remarks";

/** Summary of a day with these rows of notes and files; `show` replaces lines of show.yaml. */
export function dayOf(
  rows: readonly string[],
  files: Record<string, string> = {},
  show = "rate: 24\ncode: SMALL\n",
  title = "Small show",
): DaySummary {
  return summarise(
    {
      ...SMALL_KIT,
      "show.yaml": `title: ${title}\n${show}circle_of_confusion_mm: 0.025\n`,
      [`days/${DATE}/notes.csv`]: `${[HEAD, ...rows].join("\n")}\n`,
      ...files,
    },
    DATE,
  ).summary;
}

/** Ten seconds on slate 24B: held at 4 m, pulled to 2 m from frame 96 to 120, frames 200 to 204 not logged. */
export function pullDay(): DaySummary {
  const log = logText(["camera: A", "clip: A012C003", "lens: P50"], "focus_m,t,focal_mm", "01:00:00:00", 240, (frame) => {
    const way = Math.min(1, Math.max(0, (frame - 96) / 24));
    return `${(1 / (0.25 + 0.25 * way * way * (3 - 2 * way))).toFixed(4)},2.8,50`;
  });
  const missing = log.split("\n").filter((line) => !/^01:00:08:(08|09|10|11|12),/.test(line));
  return dayOf(
    [
      "24B,3,A,24,A012,A012C003,01:00:00:00,01:00:10:00,,P50,2.8,,y,good,sync,hero,,",
      "24B,3,B,24,B012,B012C003,01:00:00:12,01:00:09:12,,P35,2.8,,y,good,sync,clean,24B,",
    ],
    { [`days/${DATE}/logs/a.csv`]: missing.join("\n") },
  );
}

export const LONG = "x".repeat(300);

/** Names that no format is made for: signs of markup, quotes, line ends, emoji, right-to-left letters, 300 characters. */
export function oddDay(): DaySummary {
  return dayOf([
    `"1 & <2> ""A""",1,A,"S & ""T""",A012 R2LO long name,A&<C>,01:00:00:00,01:00:00:01,,P50,,,y,,,,,"= 1 + 1, he said ""no"""`,
    `${LONG},2,A,${LONG},${LONG},${LONG},02:00:00:00,02:00:01:00,,P50,,,,,,hero,,${LONG}`,
    `${LONG}y,2,A,${LONG},${LONG}y,${LONG}y,03:00:00:00,03:00:01:00,,P50,,,,,,,,`,
    "🎬 شوت,3,A,مشهد,🎞️,📹 7,04:00:00:00,04:00:01:00,,P50,,,,,,,,👍",
    "🎥 לקח,3,A,,🎬,,05:00:00:00,05:00:01:00,,P50,,,,,,,,",
    "9A,4,A,9,BL,A012C009,23:59:59:00,00:00:01:00,,P50,,,,,,,,",
    "10,1,A,10,A013,,,,,P50,,,,,,,,",
    "10,1,Ü,10,B001,B001C001,06:00:00:00,06:00:00:01,,P50,,,,,,,,",
    "10,1,u,10,B001,B001C002,06:00:00:00,06:00:00:01,120000/1001,P50,,,,,,,,",
  ]);
}
