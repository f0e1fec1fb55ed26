/** Scenes and pages of a day: what was scheduled and what became of it. */
import { svg } from "../../chart/svg.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { eighths } from "../../format/pages.ts";
import { minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { DayRecord, ScheduledScene } from "../../ingest/records.ts";
import type { DayTotals } from "../../summary/types.ts";
import { cell, column, num, numOr, type Row, row, type TableModel, table } from "../table.ts";
import { eighthsDrawing } from "./eighths-drawing.ts";

export function scheduledScenes(record: DayRecord, totals: DayTotals): TableModel {
  const scenes = allScenes(record);
  const rows = scenes.map((scene) => sceneRow(scene, record));
  const completed = scenes.filter((s) => record.completed.includes(s.scene)).length;
  const remaining = totals.eighthsScheduled === null ? null : totals.eighthsScheduled - (totals.eighthsCompleted ?? 0);
  const foot = row(cell(plural(scenes.length, "scene")), [
    cell(""),
    numOr(totals.eighthsScheduled === null ? null : eighths(totals.eighthsScheduled), NOT_RECORDED),
    numOr(totals.eighthsCompleted === null ? null : eighths(totals.eighthsCompleted), NOT_RECORDED),
    numOr(remaining === null ? null : eighths(remaining), NOT_RECORDED),
    cell("", { num: true }),
    cell(`${completed} completed`),
  ]);
  return table(
    "scenes-table",
    "Scenes scheduled and completed, pages in eighths",
    [
      column("Scene"),
      column("Pages", { unit: "in eighths" }),
      column("Scheduled", { unit: "pages", num: true }),
      column("Completed", { unit: "pages", num: true }),
      column("Remaining", { unit: "pages", num: true }),
      column("Timed", { unit: "min:s", num: true }),
      column("Status"),
    ],
    rows,
    { foot: rows.length === 0 ? [] : [foot] },
  );
}

/** Scheduled scenes first, then scenes that only the result lists name. */
function allScenes(record: DayRecord): readonly ScheduledScene[] {
  const known = new Set(record.scheduled.map((s) => s.scene));
  const extra = [...record.completed, ...record.part, ...record.notShot].filter((scene) => !known.has(scene));
  return [...record.scheduled, ...[...new Set(extra)].map((scene) => ({ scene, eighths: null, seconds: null }))];
}

function sceneRow(scene: ScheduledScene, record: DayRecord): Row {
  const done = record.completed.includes(scene.scene);
  const completed = done ? scene.eighths : 0;
  const boxes =
    scene.eighths === null ? "" : svg(eighthsDrawing(scene.eighths, completed ?? 0), { idPrefix: "pages", decorative: true });
  const scheduled = record.scheduled.some((s) => s.scene === scene.scene);
  return row(cell(scene.scene, { nb: true }), [
    cell("", { svg: boxes }),
    scheduled ? pagesCell(scene.eighths) : cell("not scheduled", { num: true, absent: true }),
    done ? pagesCell(completed) : num("0"),
    done ? num("0") : pagesCell(scheduled ? scene.eighths : null),
    numOr(scene.seconds === null ? null : minutesSeconds(scene.seconds), NOT_RECORDED),
    statusCell(scene.scene, record),
  ]);
}

/** Pages sort by their eighths: 7/8 is less than 2. */
function pagesCell(count: number | null) {
  return count === null ? numOr(null, NOT_RECORDED) : num(eighths(count), { value: count });
}

function statusCell(scene: string, record: DayRecord) {
  if (record.completed.includes(scene)) return cell("completed");
  if (record.part.includes(scene)) return cell("part");
  return record.notShot.includes(scene) ? cell("not shot") : cell(NOT_RECORDED, { absent: true });
}
