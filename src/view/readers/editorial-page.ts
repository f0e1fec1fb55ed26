/** The day for the cutting room: circled takes first, all takes below. */
import { NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { stopRange } from "../../format/stop.ts";
import { minutesSeconds } from "../../format/time.ts";
import { listWords, plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { PageModel } from "../context.ts";
import type { DayContext } from "../day/day-context.ts";
import { type DayHead, dayHead, dayTitle } from "../day/day-page.ts";
import { distanceUnit, rangeInColumn } from "../distances.ts";
import { type FileLink, fileLinks, packFileLink } from "../files.ts";
import { type FilterBar, filterBar, takeFacets } from "../filters.ts";
import { groupedTable } from "../grouped-table.ts";
import { CLIPS_PATH, dayPath, hrefTo, takePath } from "../links.ts";
import { dayShort, remarkWords, takeName, tradeWords } from "../names.ts";
import { pageBase } from "../page.ts";
import { cell, column, num, OF_GROUP, type Row, row, type TableModel, textOr } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";
import { sceneGroups } from "./scene-groups.ts";

export interface EditorialPage extends PageModel, DayHead {
  readonly filters: FilterBar;
  readonly circled: TableModel;
  readonly hasCircled: boolean;
  readonly others: TableModel;
  readonly hasOthers: boolean;
  readonly circledSentence: string;
  readonly files: readonly FileLink[];
  readonly hasFiles: boolean;
  readonly clipsHref: string;
}

export function editorialPage(day: DayContext): EditorialPage {
  const { summary, site } = day;
  const path = dayPath(summary.date, "editorial");
  const ref = { date: summary.date, day: summary.day.record.day };
  const circled = day.takes.filter((t) => t.take.circled);
  const others = day.takes.filter((t) => !t.take.circled);
  const files = fileLinks(
    site,
    summary.date,
    path,
    (name) => name === "takes.csv" || name.endsWith("-editorial.pdf") || name.startsWith("editorial/"),
  );
  const columns = editorialColumns(day);
  const options = {
    cls: "plain editorial-table",
    copyHead: COPY_HEAD,
    order: "order of scenes and slates",
    file: packFileLink(site, summary.date, path, "takes.csv"),
  };
  const byScene = (takes: readonly TakeSummary[], prefix: string) =>
    sceneGroups(takes, prefix).map(({ takes: own, ...group }) => ({ ...group, rows: own.map((t) => editorialRow(t, day, path)) }));
  return {
    ...pageBase(
      {
        path,
        title: `Editorial, ${dayTitle(day.summary.day.record)}`,
        trail: [
          { label: dayShort(ref), path: dayPath(summary.date) },
          { label: "Editorial", path },
        ],
        styles: ["day.css", "wide.css", "long-text.css", "groups.css", "editorial.css"],
        landscape: true,
      },
      site,
    ),
    ...dayHead(day.summary.day.record, site),
    filters: filterBar(day.takes, day),
    circled: groupedTable(
      "circled-table",
      "Circled takes, by scene and slate",
      columns,
      byScene(circled, "circled"),
      "Scenes of the circled takes",
      options,
    ),
    hasCircled: circled.length > 0,
    others: groupedTable(
      "others-table",
      "Other takes, by scene and slate",
      columns,
      byScene(others, "other"),
      "Scenes of the other takes",
      options,
    ),
    hasOthers: others.length > 0,
    circledSentence: `${plural(circled.length, "clip")}, ${minutesSeconds(summary.totals.circledSeconds)} of circled takes on all cameras.`,
    files,
    hasFiles: files.length > 0,
    clipsHref: hrefTo(path, CLIPS_PATH),
  };
}

function editorialColumns(day: DayContext) {
  return [
    column("Take"),
    column("Scene", { ofGroup: true }),
    column("Clip"),
    column("Roll"),
    column("Timecode in"),
    column("Timecode out", { unit: "first frame after" }),
    column("Length", { unit: "min:s", num: true }),
    column("Sound"),
    column("Focal length"),
    column("Stop"),
    column("Focus", { unit: distanceUnit(day.site.show.distances) }),
    column("Inside the take"),
    column("Remark"),
  ];
}

/** A longer name of a take is broken, or it would push the remarks out of sight. */
const LONGEST_NAME = 24;

function editorialRow(t: TakeSummary, day: DayContext, path: string): Row {
  const { take } = t;
  const name = takeName(take);
  const absent = take.track === null ? NOT_RECORDED : NOT_LOGGED;
  return row(
    cell(name, { nb: name.length <= LONGEST_NAME, href: hrefTo(path, takePath(day.summary.date, take.address)) }),
    [
      textOr(take.scene, NOT_RECORDED, { cls: OF_GROUP }),
      textOr(take.clip, NOT_RECORDED, { nb: true, cls: "copy" }),
      textOr(take.roll, NOT_RECORDED, { nb: true }),
      textOr(t.timecodeIn, NOT_RECORDED, { nb: true }),
      textOr(t.timecodeOut, NOT_RECORDED, { nb: true }),
      take.durationFrames === 0 ? cell(NOT_RECORDED, { num: true, absent: true }) : num(minutesSeconds(t.durationSeconds)),
      textOr(take.sound === null ? null : tradeWords(take.sound), NOT_RECORDED),
      textOr(t.focal === null ? null : focalRange(t.focal.minMm, t.focal.maxMm), absent, { nb: true }),
      textOr(t.tStop === null ? null : stopRange(t.tStop.widest, t.tStop.deepest), absent, { nb: true }),
      textOr(t.focus === null ? null : rangeInColumn(t.focus.nearestM, t.focus.farthestM, day.site.show.distances), absent, {
        nb: true,
      }),
      cell(insideWords(t), { cls: "wordy" }),
      textOr(remarkWords(take.status, t.remarks), NOT_RECORDED, { cls: "wordy", fold: true }),
    ],
    "",
    { facets: takeFacets(t), copy: copyCells(t) },
  );
}

/** Columns of a copied row: what an editor's own list has. */
const COPY_HEAD = ["Scene", "Slate", "Take", "Camera", "Clip", "Roll", "TC in", "TC out", "Duration, frames", "Circled", "Remarks"];

function copyCells(t: TakeSummary): readonly string[] {
  const { take } = t;
  const or = (text: string | null) => text ?? NOT_RECORDED;
  return [
    or(take.scene),
    take.slate,
    take.take,
    take.camera,
    or(take.clip),
    or(take.roll),
    or(t.timecodeIn),
    or(t.timecodeOut),
    take.durationFrames === 0 ? NOT_RECORDED : String(take.durationFrames),
    take.circled ? "yes" : "no",
    or(remarkWords(take.status, t.remarks)),
  ];
}

/** What changed inside the take: "4 pulls, stop T4 to T5.6, zoom, 17 frames not logged". */
export function insideWords(t: TakeSummary): string {
  const parts: string[] = [];
  if (t.pulls !== null && t.pulls.length > 0) parts.push(plural(t.pulls.length, "focus pull"));
  if (t.tStop !== null && t.tStop.rangeStops >= 0.1) parts.push("stop pull");
  if (t.focal !== null && t.focal.maxMm - t.focal.minMm >= 0.5) parts.push("zoom");
  if (t.take.captureFpsNoted && Math.abs(t.take.captureFps - t.take.rate.num / t.take.rate.denom) > 0.01) parts.push("off speed");
  if (t.take.track === null) parts.push("no log");
  else if (t.framesMissing > 0) parts.push(`${plural(t.framesMissing, "frame")} not logged`);
  return parts.length === 0 ? "nothing changed" : listWords(parts);
}
