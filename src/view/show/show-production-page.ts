/** The show to date for production, on one sheet of paper: each day, and all days so far. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { dateShort, minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import { type DayProgress, progress } from "../../summary/progress.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { SHOW_PRODUCTION_PATH } from "../links.ts";
import { dayInSentence, dayShort } from "../names.ts";
import { pageBase } from "../page.ts";
import type { Sum } from "../readers/production-page.ts";
import { FIXED, type TableModel, table } from "../table.ts";
import { progressColumns, progressRow, sumRow } from "./progress-row.ts";

/** More days than fit the sheet stand in a table of their own below it, and as one row on it. */
const MOST_DAYS = 14;

export interface ShowProductionPage extends PageModel {
  readonly about: string;
  readonly sums: readonly Sum[];
  readonly days: TableModel;
  readonly hasDays: boolean;
  readonly earlier: TableModel;
  readonly hasEarlier: boolean;
}

export function showProductionPage(digests: readonly DayDigest[], context: SiteContext): ShowProductionPage {
  const all = progress(digests);
  const split = Math.max(0, all.length - MOST_DAYS);
  const [earlier, newest] = [all.slice(0, split), all.slice(split)];
  const cameras = [...new Set(digests.flatMap((d) => Object.keys(d.cameraSeconds)))].sort();
  const columns = progressColumns(cameras);
  const rows = newest.map((day) => progressRow(day, cameras));
  return {
    ...pageBase(
      {
        path: SHOW_PRODUCTION_PATH,
        title: "Production to date",
        trail: [{ label: "Production to date", path: SHOW_PRODUCTION_PATH }],
        styles: ["day.css", "production.css", "wide.css", "show.css"],
        landscape: true,
      },
      context,
    ),
    about: aboutWords(all),
    sums: sums(all, digests),
    days: table("days-table", "Each day, and all days so far", columns, split === 0 ? rows : [sumRow(earlier, cameras), ...rows], {
      // a row that sums the earlier days has its place above the newest
      cls: split === 0 ? "plain progress-table" : `${FIXED} progress-table`,
    }),
    hasDays: all.length > 0,
    earlier: table(
      "earlier-table",
      "Earlier days, each with all days until then",
      columns,
      earlier.map((day) => progressRow(day, cameras)),
      { cls: "plain progress-table" },
    ),
    hasEarlier: split > 0,
  };
}

function aboutWords(all: readonly DayProgress[]): string {
  const [first, last] = [all[0], all.at(-1)];
  if (first === undefined || last === undefined) return "No shooting day yet.";
  return all.length === 1 ? `${dayShort(first)}.` : `${dayShort(first)}, to ${dayInSentence(last)}, ${dateShort(last.date)}.`;
}

function sums(all: readonly DayProgress[], digests: readonly DayDigest[]): readonly Sum[] {
  const last = all.at(-1);
  if (last === undefined) return [];
  const { toDate, eighthsRemaining } = last;
  const planned = digests.at(-1)?.record.of ?? null;
  const sum = (term: string, value: string | null, small: string): Sum =>
    value === null ? { term, value: NOT_RECORDED, cls: "absent", small } : { term, value, cls: "figure", small };
  const pages = (count: number | null) => (count === null ? null : eighths(count));
  return [
    sum(
      "Shooting days",
      thousands(all.length),
      planned === null ? "how many are planned is not recorded" : `${planned} planned, as the newest day file says`,
    ),
    sum(
      "Pages completed",
      pages(toDate.eighthsCompleted),
      toDate.eighthsScheduled === null
        ? "none scheduled in the day files"
        : `of ${eighths(toDate.eighthsScheduled)} scheduled so far`,
    ),
    sum("Pages remaining", pages(eighthsRemaining), "scheduled so far and not completed"),
    sum("Set-ups", thousands(toDate.setups), `${plural(toDate.takes, "take")}, ${thousands(toDate.circled)} circled`),
    sum("Media", minutesSeconds(toDate.mediaSeconds), `min:s on all cameras, ${plural(toDate.clips, "clip")}`),
    sum(
      "Shooting ratio",
      toDate.shootingRatio === null ? null : `${fixed(toDate.shootingRatio, 1)} : 1`,
      toDate.shootingRatio === null ? "no circled take" : `${minutesSeconds(toDate.circledSeconds)} circled`,
    ),
  ];
}
