/** The day for production on one sheet of paper. */

import { svg } from "../../chart/svg.ts";
import { openFindings } from "../../core/finding.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { fixed } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { stopRange } from "../../format/stop.ts";
import { hoursMinutes, minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { PageModel } from "../context.ts";
import type { DayContext } from "../day/day-context.ts";
import { type DayHead, dayHead, dayTitle, hourFacts } from "../day/day-page.ts";
import { lensMark, lensSeconds, mediaWords } from "../day/day-tables.ts";
import { hoursDrawing, namesAllHours } from "../day/hours-drawing.ts";
import { scenesTable } from "../day/scenes-table.ts";
import type { Fact } from "../facts.ts";
import { type FileLink, fileLinks } from "../files.ts";
import { countWords, type FindingView, findingView, worstFirst } from "../findings/findings.ts";
import { dayPath, hrefTo, SCENES_PATH, SHOW_PRODUCTION_PATH } from "../links.ts";
import { dayShort } from "../names.ts";
import { pageBase } from "../page.ts";
import { cell, classes, column, num, row, type TableModel, table, textOr } from "../table.ts";
import { shareDrawing } from "./eighths-drawing.ts";

/** More questions than fit the sheet go to the findings page. */
const MOST_QUESTIONS = 8;

export interface Sum {
  readonly term: string;
  readonly value: string;
  readonly cls: string;
  readonly small: string;
}

export interface ProductionPage extends PageModel, DayHead {
  readonly hours: readonly Fact[];
  /** `drawn` as well when the drawing lacks none of them. */
  readonly hoursCls: string;
  readonly clock: string;
  readonly hasClock: boolean;
  readonly sums: readonly Sum[];
  readonly scenes: TableModel;
  readonly hasScenes: boolean;
  readonly lensUse: TableModel;
  readonly hasLensUse: boolean;
  readonly questions: readonly FindingView[];
  readonly questionCount: string;
  readonly hasQuestions: boolean;
  readonly moreQuestions: string;
  readonly hasMore: boolean;
  readonly findingsHref: string;
  readonly remarks: string;
  readonly signatures: readonly string[];
  readonly files: readonly FileLink[];
  readonly hasFiles: boolean;
  readonly scenesHref: string;
  readonly toDateHref: string;
}

export function productionPage(day: DayContext): ProductionPage {
  const { summary, site } = day;
  const path = dayPath(summary.date, "production");
  const ref = { date: summary.date, day: summary.day.record.day };
  const hours = hourFacts(day);
  const drawing = hoursDrawing(summary.day.record);
  const questions = worstFirst(openFindings(summary.findings).filter((f) => f.severity !== "remark"));
  const shown = questions.slice(0, MOST_QUESTIONS);
  const files = fileLinks(site, summary.date, path, (name) => name.endsWith("-camera-report.pdf"));
  return {
    ...pageBase(
      {
        path,
        title: `Production, ${dayTitle(day)}`,
        trail: [
          { label: dayShort(ref), path: dayPath(summary.date) },
          { label: "Production", path },
        ],
        styles: ["day.css", "production.css"],
      },
      site,
    ),
    ...dayHead(day),
    hours,
    hoursCls: classes(["hour-facts", namesAllHours(summary.day.record) && hours.every(({ cls }) => cls !== "absent") && "drawn"]),
    clock: drawing === null ? "" : svg(drawing, { idPrefix: "hours" }),
    hasClock: drawing !== null,
    sums: sums(day),
    scenes: scenesTable(day),
    hasScenes: scenesTable(day).rows.length > 0,
    lensUse: lensBars(day),
    hasLensUse: summary.lensUse.length > 0,
    questions: shown.map((f) => findingView(f, { path, date: summary.date, takes: day.names })),
    questionCount: countWords({ ...summary.findingCounts, remark: 0 }),
    hasQuestions: shown.length > 0,
    moreQuestions: `and ${questions.length - shown.length} more on the findings page`,
    hasMore: questions.length > shown.length,
    findingsHref: hrefTo(path, dayPath(summary.date, "findings")),
    remarks: summary.day.record.remarks ?? NOT_RECORDED,
    signatures: ["First assistant camera", "Director of photography", "Production manager"],
    files,
    hasFiles: files.length > 0,
    scenesHref: hrefTo(path, SCENES_PATH),
    toDateHref: hrefTo(path, SHOW_PRODUCTION_PATH),
  };
}

function sums(day: DayContext): readonly Sum[] {
  const { totals, day: data } = day.summary;
  const { call, firstShot, wrap } = data.record;
  const plates = day.slates.filter((s) => s.takes.some((t) => t.take.plate !== null)).length;
  const sum = (term: string, value: string | null, small: string): Sum =>
    value === null ? { term, value: NOT_RECORDED, cls: "absent", small } : { term, value, cls: "figure", small };
  const toFirst =
    call === null || firstShot === null ? "first shot not recorded" : `${hoursMinutes(firstShot - call)} from call to first shot`;
  return [
    sum("Call to wrap", call === null || wrap === null ? null : hoursMinutes(wrap - call), toFirst),
    sum(
      "Pages completed",
      totals.eighthsCompleted === null ? null : eighths(totals.eighthsCompleted),
      totals.eighthsScheduled === null ? "none scheduled in day.yaml" : `of ${eighths(totals.eighthsScheduled)} scheduled`,
    ),
    sum("Set-ups", String(totals.slates), plates === 0 ? "no plates" : `${plates} of them for plates`),
    sum("Takes", String(totals.takes), `${totals.circled} circled, ${plural(totals.clips, "clip")}`),
    sum("Media", minutesSeconds(totals.mediaSeconds), mediaWords(day)),
    sum(
      "Shooting ratio",
      totals.shootingRatio === null ? null : `${fixed(totals.shootingRatio, 1)} : 1`,
      totals.shootingRatio === null
        ? "no circled take"
        : `${minutesSeconds(totals.mediaSeconds)} to ${minutesSeconds(totals.circledSeconds)} circled`,
    ),
  ];
}

function lensBars(day: DayContext): TableModel {
  const uses = [...day.summary.lensUse]
    .map((use) => ({ use, seconds: lensSeconds(day, use.lens) }))
    .sort((a, b) => b.seconds - a.seconds);
  const longest = uses.reduce((max, u) => Math.max(max, u.seconds), 0);
  return table(
    "lens-bars",
    "Lens use, minutes of media on all cameras",
    [
      column("Lens"),
      column("Marked", { unit: "mm" }),
      column("Media", { unit: "min:s", num: true }),
      column("Clips", { num: true }),
      column("Stop"),
    ],
    uses.map(({ use, seconds }) => {
      const bar = longest === 0 ? "" : svg(shareDrawing(seconds / longest), { idPrefix: `bar-${use.lens}`, decorative: true });
      return row(cell(use.lens, { nb: true }), [
        cell(lensMark(day, use.lens), { svg: bar, cls: "bar" }),
        num(minutesSeconds(seconds)),
        num(String(use.takes)),
        textOr(use.tStop === null ? null : stopRange(use.tStop.widest, use.tStop.deepest), NOT_RECORDED, { nb: true }),
      ]);
    }),
  );
}
