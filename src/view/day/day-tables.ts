/** Tables of a day beside its takes: lens use, rows of the logs, totals. */
import { NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { share } from "../../format/percent.ts";
import { stopRange } from "../../format/stop.ts";
import { minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import { cameraSeconds } from "../../summary/camera-seconds.ts";
import { distanceUnit, rangeInColumn } from "../distances.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import { hrefTo } from "../links.ts";
import { lensName } from "../names.ts";
import { cell, column, num, row, type TableModel, table, textOr } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";
import type { DayContext } from "./day-context.ts";

export function lensUseTable(day: DayContext, path: string): TableModel {
  const { summary, site } = day;
  const distances = site.show.distances;
  const rows = summary.lensUse.map((use) => {
    const lens = summary.kit.lenses.find((l) => l.id === use.lens) ?? null;
    const target = day.lensPaths.get(use.lens);
    const name = lens === null ? `${use.lens}, not in the kit` : lensName(lens, use.lens);
    return row(target === undefined ? cell(name, { nb: true }) : cell(name, { nb: true, href: hrefTo(path, target) }), [
      num(thousands(use.takes)),
      num(thousands(use.frames)),
      num(minutesSeconds(lensSeconds(day, use.lens))),
      textOr(use.focalMm === null ? null : focalRange(use.focalMm.min, use.focalMm.max), NOT_RECORDED, { nb: true }),
      textOr(use.tStop === null ? null : stopRange(use.tStop.widest, use.tStop.deepest), NOT_RECORDED, { nb: true }),
      textOr(use.focus === null ? null : rangeInColumn(use.focus.nearestM, use.focus.farthestM, distances), NOT_RECORDED, {
        nb: true,
      }),
    ]);
  });
  return table(
    "lens-use-table",
    "Lens use of the day",
    [
      column("Lens"),
      column("Clips", { num: true }),
      column("Length", { unit: "frames", num: true }),
      column("Length", { unit: "min:s", num: true }),
      column("Focal length"),
      column("Stop"),
      column("Focus", { unit: distanceUnit(distances) }),
    ],
    rows,
  );
}

/** Seconds of all clips that a lens served. */
function lensSeconds(day: DayContext, lens: string): number {
  return day.takes.reduce((sum, t) => (t.take.lensId === lens ? sum + t.durationSeconds : sum), 0);
}

/** What became of every data row of the day's logs. */
export function rowsTable(day: DayContext): TableModel {
  const { rows: sum, day: data, date } = day.summary;
  const folder = `days/${date}/`;
  const counts = (c: { read: number; used: number; unmatched: number; rejected: number }) =>
    [c.read, c.used, c.unmatched, c.rejected].map((count) => cell(thousands(count)));
  return table(
    "rows-table",
    "Rows of the day's logs: read = used + unmatched + rejected",
    [
      column("Log"),
      column("Read", { num: true }),
      column("Used", { num: true }),
      column("Unmatched", { num: true }),
      column("Rejected", { num: true }),
    ],
    data.logs.map((log) => row(cell(log.file.startsWith(folder) ? log.file.slice(folder.length) : log.file), counts(log))),
    { foot: [row(cell("All logs"), counts(sum))], cls: "plain counts" },
  );
}

export function rowsSentence(day: DayContext): string {
  const { read, used, unmatched, rejected } = day.summary.rows;
  if (read === 0) return "No log row was read.";
  return `${thousands(read)} rows read = ${thousands(used)} used + ${thousands(unmatched)} unmatched + ${thousands(rejected)} rejected.`;
}

/** Totals of the day as facts. */
export function totalFacts(day: DayContext): readonly Fact[] {
  const t = day.summary.totals;
  const circled = `${minutesSeconds(t.circledSeconds)}`;
  return [
    fact("Set-ups", plural(t.slates, "slate"), {}),
    fact("Takes", plural(t.takes, "take"), { source: plural(t.clips, "clip") }),
    fact("Circled", plural(t.circled, "take"), { source: `${circled} min:s` }),
    factOr("Pages scheduled", t.eighthsScheduled === null ? null : eighths(t.eighthsScheduled), NOT_RECORDED, { source: "noted" }),
    factOr("Pages completed", t.eighthsCompleted === null ? null : eighths(t.eighthsCompleted), NOT_RECORDED, {
      source: "completed scenes only",
    }),
    fact("Media", minutesSeconds(t.mediaSeconds), { source: mediaWords(cameraSeconds(day.summary)) }),
    factOr("Shooting ratio", t.shootingRatio === null ? null : `${fixed(t.shootingRatio, 1)} : 1`, "no circled take", {
      source: "calculated",
    }),
    factOr("Frames logged", loggedShare(day), NOT_LOGGED, {
      source: `${thousands(t.framesLogged)} of ${thousands(t.framesExpected)}`,
    }),
  ];
}

/** "95.6 %" of the frames shot, `null` when nothing was shot. */
export function loggedShare(day: DayContext): string | null {
  const { framesExpected, framesLogged } = day.summary.totals;
  if (framesExpected === 0) return null;
  return share(framesLogged, framesExpected);
}

/** "A 15:53, B 11:21" from seconds by camera. */
export function mediaWords(seconds: Readonly<Record<string, number>>): string {
  return Object.entries(seconds)
    .map(([letter, value]) => `${letter} ${minutesSeconds(value)}`)
    .join(", ");
}
