/** Top of the first page: which show, which day, where; the day by the clock; six figures. */
import { dayClock } from "../../chart/day/day-clock.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { dateLong, hoursMinutes, minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { DaySummary } from "../../summary/types.ts";
import { dayHeading, sentence, unitName } from "../../view/names.ts";
import type { Element } from "../document.ts";
import { drawDrawing } from "../drawing.ts";
import { lineHeight } from "../ink.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { artifact, element } from "../tags.ts";
import { cameraSeconds } from "../totals.ts";

/** Points a pixel of the day's clock: its labels print at 8.75 points. */
const CLOCK_SCALE = 0.7;

/** The show and the day, as every report of the day begins. */
export function reportHead(report: Report, parent: Element): void {
  showLine(report, parent);
  dayTitle(report, parent);
}

export function glanceHead(report: Report, parent: Element): void {
  reportHead(report, parent);
  const { flow, summary } = report;
  const clock = dayClock(summary, { width: Math.floor(flow.sheet.width / CLOCK_SCALE) });
  flow.y += drawDrawing(report, parent, clock, flow.sheet.left, flow.y, CLOCK_SCALE) + 8;
  sixFigures(report, parent);
}

/** The show stands above the rule of the first page, where later pages have their running head. */
function showLine(report: Report, parent: Element): void {
  const { doc, ink, flow, summary } = report;
  const baseline = flow.sheet.top - 18;
  element(doc, parent, "P", {}, () => {
    const { title, production } = summary.show;
    const line = ink.fitted(title, TYPE.date, flow.sheet.width * 0.55);
    const used = ink.text(`${line} `, flow.sheet.left, baseline, TYPE.date);
    if (production === null) return;
    const maker = ink.fitted(production, TYPE.label, flow.sheet.width * 0.8 - used);
    ink.text(maker, flow.sheet.left + used + 8, baseline, TYPE.label);
  });
}

function dayTitle(report: Report, parent: Element): void {
  const { doc, ink, flow, summary } = report;
  const { record } = summary.day;
  const top = flow.y;
  const heading = dayHeading({ date: summary.date, day: record.day });
  const style = record.day === null ? { ...TYPE.day, size: 20 } : TYPE.day;
  let right = flow.sheet.left;
  element(doc, parent, "H1", {}, () => {
    right += ink.text(`${heading} `, right, top + 28, style);
    if (record.of !== null && record.day !== null)
      right += ink.text(`of ${record.of} `, right, top + 28, { ...TYPE.body, size: 10 });
  });
  const x = right + 14;
  const unit = unitName(record.unit ?? summary.show.unit);
  const about = `${record.place === null ? "Place not recorded." : sentence(record.place)} ${sentence(unit)} ${report.title}.`;
  const lines = ink.lines(about, TYPE.body, flow.sheet.right - x);
  element(doc, parent, "P", {}, () => {
    ink.text(`${dateLong(summary.date)} `, x, top + 12, TYPE.date);
  });
  element(doc, parent, "P", {}, () => {
    lines.forEach((line, i) => {
      ink.text(`${line} `, x, top + 28 + i * lineHeight(TYPE.body), TYPE.body);
    });
  });
  flow.y = top + 40 + Math.max(0, lines.length - 1) * lineHeight(TYPE.body);
}

interface Six {
  readonly label: string;
  readonly figure: string | null;
  readonly small: string;
}

function sixFigures(report: Report, parent: Element): void {
  const { doc, ink, flow, summary } = report;
  const { left, width, right } = flow.sheet;
  const cell = width / 6;
  const figures = sixOf(summary);
  const smalls = figures.map((six) => ink.lines(six.small, TYPE.label, cell - 10));
  const top = flow.y;
  const height = 36 + Math.max(...smalls.map((lines) => lines.length)) * lineHeight(TYPE.label);
  artifact(doc, () => {
    ink.line(left, top, right, top, PRINT.ink, 2);
    ink.line(left, top + height, right, top + height, PRINT.ink, 0.75);
    for (let i = 1; i < 6; i++) ink.line(left + i * cell, top + 2, left + i * cell, top + height, PRINT.rule);
  });
  figures.forEach((six, i) => {
    const x = left + i * cell + (i === 0 ? 0 : 8);
    element(doc, parent, "P", {}, () => {
      ink.text(`${six.label} `, x, top + 12, TYPE.label);
      if (six.figure === null) ink.text(`${NOT_RECORDED} `, x, top + 29, { ...TYPE.source, size: 10 });
      else ink.text(`${six.figure} `, x, top + 30, TYPE.figure);
      (smalls[i] ?? []).forEach((line, n) => {
        ink.text(`${line} `, x, top + 41 + n * lineHeight(TYPE.label), TYPE.label);
      });
    });
  });
  flow.y = top + height;
}

function sixOf(summary: DaySummary): readonly Six[] {
  const { totals } = summary;
  const { call, firstShot, wrap } = summary.day.record;
  const plates = new Set(summary.takes.filter((t) => t.take.plate !== null).map((t) => t.take.slate)).size;
  const remaining =
    totals.eighthsScheduled === null || totals.eighthsCompleted === null ? null : totals.eighthsScheduled - totals.eighthsCompleted;
  const cameras = cameraSeconds(summary).map(([camera, seconds]) => `${camera} ${minutesSeconds(seconds)}`);
  return [
    {
      label: "Call to wrap",
      figure: call === null || wrap === null ? null : hoursMinutes(wrap - call),
      small: call === null || firstShot === null ? "" : `${hoursMinutes(firstShot - call)} from call to first shot`,
    },
    {
      label: "Pages completed",
      figure: totals.eighthsCompleted === null ? null : eighths(totals.eighthsCompleted),
      small:
        totals.eighthsScheduled === null
          ? `scheduled ${NOT_RECORDED}`
          : `of ${eighths(totals.eighthsScheduled)} scheduled${remaining === null ? "" : `, ${eighths(Math.max(0, remaining))} remaining`}`,
    },
    {
      label: "Slates",
      figure: thousands(totals.slates),
      small: plates === 0 ? "no plates" : `${thousands(plates)} of them with plates`,
    },
    {
      label: "Takes",
      figure: thousands(totals.takes),
      small: `${thousands(totals.circled)} circled, ${plural(totals.clips, "clip")}`,
    },
    { label: "Media, min:s", figure: minutesSeconds(totals.mediaSeconds), small: cameras.join(", ") },
    {
      label: "Shooting ratio",
      figure: totals.shootingRatio === null ? null : `${fixed(totals.shootingRatio, 1)} : 1`,
      small: `${minutesSeconds(totals.mediaSeconds)} to ${minutesSeconds(totals.circledSeconds)} circled`,
    },
  ];
}
