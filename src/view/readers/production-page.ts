/** The day for production on one sheet of paper. */

import { svg } from "../../chart/svg.ts";
import { openFindings } from "../../core/finding.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { hoursMinutes, minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { Kit } from "../../ingest/records.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import type { DayProgress } from "../../summary/progress.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { type DayHead, dayHead, dayTitle, hourFacts } from "../day/day-page.ts";
import { mediaWords } from "../day/day-tables.ts";
import type { Fact } from "../facts.ts";
import { type FileLink, fileLinks } from "../files.ts";
import { countWords, type FindingView, findingView, worstFirst } from "../findings/findings.ts";
import { dayPath, hrefTo, SCENES_PATH, SHOW_PRODUCTION_PATH } from "../links.ts";
import { dayShort, takeName } from "../names.ts";
import { pageBase } from "../page.ts";
import { classes, type TableModel } from "../table.ts";
import { hoursDrawing, namesAllHours } from "./hours-drawing.ts";
import { cameraUse, lensBars, toDateTable } from "./production-tables.ts";
import { scheduledScenes } from "./scheduled-scenes.ts";

/** More questions than fit the sheet go to the findings page; with more than a few, paper leaves out how to mend them. */
const MOST_QUESTIONS = 6;
const FEW_QUESTIONS = 4;
/** More cameras than these are told apart in their table alone. */
const FEW_CAMERAS = 2;
/** With more rows of scenes, lenses and cameras than this the rows stand closer on paper. */
const LOOSE_ROWS = 12;

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
  readonly cameraUse: TableModel;
  readonly hasCameraUse: boolean;
  readonly toDate: TableModel;
  /** How the sheet is fitted onto one piece of paper. */
  readonly fitCls: string;
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

/**
 * Made with the show-wide pages from what the days left behind, since it says how far the show has come.
 * @param days all days of the show; figures to date are those until the digest's day
 */
export function productionPage(digest: DayDigest, days: readonly DayProgress[], kit: Kit, site: SiteContext): ProductionPage {
  const { date, record } = digest;
  const path = dayPath(date, "production");
  const hours = hourFacts(record);
  const drawing = hoursDrawing(record);
  const scenes = scheduledScenes(record, digest.totals);
  const lensUse = lensBars(digest, kit);
  const cameras = cameraUse(digest);
  const takes = new Map(digest.takes.map((take) => [take.address, takeName(take)]));
  const questions = worstFirst(openFindings(digest.findings).filter((f) => f.severity !== "remark"));
  const shown = questions.slice(0, MOST_QUESTIONS);
  const packed = { ...site, packFiles: digest.packFiles };
  const files = fileLinks(packed, date, path, (name) => name.endsWith("-camera-report.pdf"));
  const today = days.find((day) => day.date === date);
  if (today === undefined) throw new Error(`${date} is not among the days of the show`);
  return {
    ...pageBase(
      {
        path,
        title: `Production, ${dayTitle(record)}`,
        trail: [
          { label: dayShort(record), path: dayPath(date) },
          { label: "Production", path },
        ],
        styles: ["day.css", "production.css"],
      },
      site,
    ),
    ...dayHead(record, site),
    hours,
    hoursCls: classes(["hour-facts", namesAllHours(record) && hours.every(({ cls }) => cls !== "absent") && "drawn"]),
    clock: drawing === null ? "" : svg(drawing, { idPrefix: "hours" }),
    hasClock: drawing !== null,
    sums: sums(digest),
    scenes,
    hasScenes: scenes.rows.length > 0,
    lensUse,
    hasLensUse: digest.lensUse.length > 0,
    cameraUse: cameras,
    hasCameraUse: digest.takes.length > 0,
    toDate: toDateTable(days, today),
    fitCls: classes([
      scenes.rows.length + lensUse.rows.length + cameras.rows.length > LOOSE_ROWS && "close",
      shown.length > FEW_QUESTIONS && "brief",
    ]),
    questions: shown.map((f) => findingView(f, { path, date, takes })),
    questionCount: countWords({ ...digest.findingCounts, remark: 0 }),
    hasQuestions: shown.length > 0,
    moreQuestions: `and ${questions.length - shown.length} more on the findings page`,
    hasMore: questions.length > shown.length,
    findingsHref: hrefTo(path, dayPath(date, "findings")),
    remarks: record.remarks ?? NOT_RECORDED,
    signatures: ["First assistant camera", "Director of photography", "Production manager"],
    files,
    hasFiles: files.length > 0,
    scenesHref: hrefTo(path, SCENES_PATH),
    toDateHref: hrefTo(path, SHOW_PRODUCTION_PATH),
  };
}

function sums({ totals, record, takes, cameraSeconds }: DayDigest): readonly Sum[] {
  const { call, firstShot, wrap } = record;
  const plates = new Set(takes.filter((take) => take.plate !== null).map(({ slate }) => slate)).size;
  const cameras = Object.keys(cameraSeconds).length;
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
    sum("Set-ups", thousands(totals.slates), plates === 0 ? "no plates" : `${thousands(plates)} of them for plates`),
    sum("Takes", thousands(totals.takes), `${thousands(totals.circled)} circled, ${plural(totals.clips, "clip")}`),
    sum("Media", minutesSeconds(totals.mediaSeconds), cameras > FEW_CAMERAS ? `on ${cameras} cameras` : mediaWords(cameraSeconds)),
    sum(
      "Shooting ratio",
      totals.shootingRatio === null ? null : `${fixed(totals.shootingRatio, 1)} : 1`,
      totals.shootingRatio === null
        ? "no circled take"
        : `${minutesSeconds(totals.mediaSeconds)} to ${minutesSeconds(totals.circledSeconds)} circled`,
    ),
  ];
}
