/** Scenes and pages: what was scheduled, what was completed, what remains; one box is an eighth of a page. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { eighths } from "../../format/pages.ts";
import { minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { DaySummary } from "../../summary/types.ts";
import { headLine } from "../block.ts";
import type { Element } from "../document.ts";
import type { Ink } from "../ink.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { type CellArea, type Column, drawTable, type TableRow } from "../table.ts";
import { element } from "../tags.ts";

type SceneState = "completed" | "part" | "not shot" | null;

interface Scene {
  readonly scene: string;
  readonly scheduled: boolean;
  readonly eighths: number | null;
  readonly seconds: number | null;
  readonly state: SceneState;
}

/** More scenes than fit beside the rest of the first page are summed up there and listed in full later. */
export const SCENES_ON_FIRST_PAGE = 9;

/** Draws the table with at most `limit` scenes; says whether all are shown. */
export function scenesAndPages(report: Report, parent: Element, limit: number): boolean {
  const { doc, flow, summary } = report;
  const scenes = scenesOf(summary);
  const section = element(doc, parent, "Sect");
  flow.y = headLine(
    report,
    section,
    "H2",
    "Scenes and pages",
    "One box is an eighth of a page; filled is completed.",
    flow.sheet.left,
    flow.sheet.width,
    flow.y,
  );
  const { width } = flow.sheet;
  const columns: readonly Column[] = [
    { head: "Scene", width: 46 },
    { head: "Pages in eighths", width: width - 46 - 4 * 50 - 66 - 6 * 7 },
    { head: "Script, min:s", width: 50, align: "end" },
    { head: "Scheduled", width: 50, align: "end" },
    { head: "Completed", width: 50, align: "end" },
    { head: "Remaining", width: 50, align: "end" },
    { head: "Status", width: 66 },
  ];
  const shown = scenes.slice(0, limit);
  const rest = scenes.length - shown.length;
  const rows: TableRow[] = shown.map((scene) => sceneRow(scene));
  if (scenes.length === 0) rows.push({ group: true, cells: [{ text: `Scenes ${NOT_RECORDED}.`, style: TYPE.table }] });
  if (rest > 0) rows.push({ cells: [`${rest} more`, "see Scenes and pages, all", "", "", "", "", ""] });
  if (scenes.length > 0) rows.push(totalRow(summary, scenes));
  drawTable(report, section, { columns, rows, pad: 2 });
  return rest === 0;
}

export function scenesOf(summary: DaySummary): readonly Scene[] {
  const { scheduled, completed, part, notShot } = summary.day.record;
  const state = (scene: string): SceneState =>
    completed.includes(scene) ? "completed" : part.includes(scene) ? "part" : notShot.includes(scene) ? "not shot" : null;
  const planned = scheduled.map((s) => ({ ...s, scheduled: true, state: state(s.scene) }));
  const names = new Set(scheduled.map((s) => s.scene));
  const unplanned = [...new Set([...completed, ...part, ...notShot])].filter((scene) => !names.has(scene));
  return [
    ...planned,
    ...unplanned.map((scene) => ({ scene, scheduled: false, eighths: null, seconds: null, state: state(scene) })),
  ];
}

function sceneRow(scene: Scene): TableRow {
  const pages = scene.eighths;
  const done = scene.state === "completed";
  const open = scene.state === "part" ? "not counted" : scene.state === null ? NOT_RECORDED : "0";
  return {
    cells: [
      scene.scene,
      {
        text: pages === null ? (scene.scheduled ? NOT_RECORDED : "not scheduled") : "",
        art: (ink, area) => drawBoxes(ink, pages ?? 0, done, area),
      },
      scene.seconds === null ? "" : minutesSeconds(scene.seconds),
      pages === null ? "" : eighths(pages),
      pages === null ? "" : done ? eighths(pages) : open,
      pages === null ? "" : done ? "0" : eighths(pages),
      scene.state ?? NOT_RECORDED,
    ],
  };
}

function drawBoxes(ink: Ink, count: number, filled: boolean, area: CellArea): void {
  const step = Math.min(6.4, area.width / (count + 0.5 * Math.ceil(count / 8) + 1));
  const fill = filled ? PRINT.ink : PRINT.paper;
  // So many eighths cannot be told apart: one bar, no boxes.
  if (step < 3.2) {
    if (count > 0) ink.box(area.x, area.baseline - 6, area.width, 6.4, { stroke: PRINT.ink, fill });
    return;
  }
  for (let i = 0; i < count; i++) {
    const left = area.x + i * step + Math.floor(i / 8) * step * 0.5;
    ink.box(left, area.baseline - 6, step * 0.78, 6.4, { stroke: PRINT.ink, fill });
  }
}

function totalRow(summary: DaySummary, scenes: readonly Scene[]): TableRow {
  const { eighthsScheduled, eighthsCompleted } = summary.totals;
  const remaining =
    eighthsScheduled === null || eighthsCompleted === null ? null : Math.max(0, eighthsScheduled - eighthsCompleted);
  const count = (state: SceneState) => scenes.filter((scene) => scene.state === state).length;
  const text = (value: number | null) => (value === null ? NOT_RECORDED : eighths(value));
  return {
    total: true,
    cells: [
      plural(scenes.length, "scene"),
      `${count("completed")} completed, ${count("part")} part, ${count("not shot")} not shot`,
      "",
      text(eighthsScheduled),
      text(eighthsCompleted),
      text(remaining),
      "",
    ],
  };
}
