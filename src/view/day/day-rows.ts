/** Takes of a day by slate: a row a clip, with its ribbon. */

import { rowRibbon } from "../../chart/ribbon/row-ribbon.ts";
import { stopDots } from "../../chart/stop-dots.ts";
import { svg } from "../../chart/svg.ts";
import type { Finding } from "../../core/finding.ts";
import { openFindings } from "../../core/finding.ts";
import { NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { folded } from "../../format/brief.ts";
import { stopRange } from "../../format/stop.ts";
import { minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { distanceUnit, rangeInColumn } from "../distances.ts";
import { takeFacets } from "../filters.ts";
import { severityClass, severityWord, worstFirst } from "../findings/findings.ts";
import { hrefTo, takePath } from "../links.ts";
import { focalMark, plateWords, sentence, tradeWords } from "../names.ts";
import type { StopScale } from "../stop-scale.ts";
import { classes, type Facet } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";
import { RIBBON_COLUMN } from "../time-scale.ts";
import { type DayContext, type ShownSlate, shownSlates } from "./day-context.ts";

/** 54 pixels a dioptre. */
const ROW_HEIGHT = 57;

export interface TakeRow {
  readonly id: string;
  readonly facets: readonly Facet[];
  readonly cls: string;
  readonly href: string;
  readonly slate: string;
  readonly take: string;
  readonly camera: string;
  readonly ringCls: string;
  readonly circledWords: string;
  readonly timecode: string;
  readonly hasTimecode: boolean;
  readonly clip: string;
  readonly clipCls: string;
  readonly length: string;
  /** What a cell's class has after the column's own, such as " absent"; may be empty. */
  readonly lengthCls: string;
  readonly lens: string;
  readonly lensCls: string;
  readonly lensAt: string;
  readonly stop: string;
  readonly stopCls: string;
  readonly dots: string;
  readonly ribbon: string;
  readonly focus: string;
  readonly focusCls: string;
  readonly focusSource: string;
  readonly pulls: string;
  readonly pullsCls: string;
  readonly status: string;
  readonly findingWord: string;
  readonly findingCls: string;
  readonly findingText: string;
  /** For paper, where a row is one line. */
  readonly findingShort: string;
  /** Its beginning where it is long. */
  readonly remark: string;
  readonly remarkRest: string;
  readonly hasRemarkRest: boolean;
}

export interface SlateRows {
  readonly id: string;
  readonly slate: string;
  readonly about: string;
  readonly plate: string;
  readonly hasPlate: boolean;
  readonly rows: readonly TakeRow[];
}

export function slateRows(day: DayContext, path: string, scales: RowScales): readonly SlateRows[] {
  return shownSlates(day).map((group) => slateView(group, day, path, scales));
}

function slateView(group: ShownSlate, day: DayContext, path: string, scales: RowScales): SlateRows {
  const scenes = [...new Set(group.takes.map((t) => t.take.scene).filter((scene) => scene !== null))];
  const takes = new Set(group.takes.map((t) => t.take.take)).size;
  const plates = [...new Set(group.takes.map((t) => plateWords(t.take)).filter((words) => words !== null))];
  const scene = scenes.length === 0 ? "scene not recorded" : `scene ${scenes.join(", ")}`;
  return {
    id: group.anchor,
    slate: group.slate,
    about: `${scene}, ${plural(takes, "take")}`,
    plate: plates.length === 0 ? "" : `plate: ${plates.join("; ")}`,
    hasPlate: plates.length > 0,
    rows: group.takes.map((t, i) => {
      const next = group.takes[i + 1];
      const pair = next !== undefined && next.take.take === t.take.take;
      return takeRow(t, day, path, { ...scales, firstRow: i === 0, pair });
    }),
  };
}

/** What all rows of the day share. */
export interface RowScales {
  readonly pixelsPerSecond: number;
  readonly stops: StopScale;
}

interface RowPlace extends RowScales {
  readonly firstRow: boolean;
  readonly pair: boolean;
}

function takeRow(t: TakeSummary, day: DayContext, path: string, place: RowPlace): TakeRow {
  const { take } = t;
  const distances = day.site.show.distances;
  const absent = take.track === null ? NOT_RECORDED : NOT_LOGGED;
  const worst = worstFirst(openFindings(t.findings));
  const remark = folded(t.remarks ?? "");
  const ribbon = rowRibbon(t, {
    pixelsPerSecond: place.pixelsPerSecond,
    height: ROW_HEIGHT,
    firstRow: place.firstRow,
    distances,
    width: RIBBON_COLUMN,
  });
  return {
    id: take.address,
    facets: takeFacets(t),
    cls: classes(["take", place.pair && "pair", take.circled && "circled"]),
    href: hrefTo(path, takePath(day.summary.date, take.address)),
    slate: take.slate,
    take: take.take,
    camera: take.camera,
    ringCls: take.circled ? "ring on" : "ring",
    circledWords: take.circled ? ", circled" : "",
    timecode: t.timecodeIn ?? NOT_RECORDED,
    hasTimecode: t.timecodeIn !== null,
    clip: take.clip ?? `clip ${NOT_RECORDED}`,
    clipCls: take.clip === null ? "clip absent" : "clip",
    length: take.durationFrames === 0 ? NOT_RECORDED : minutesSeconds(t.durationSeconds),
    lengthCls: absentClass(take.durationFrames === 0),
    ...lensOf(t),
    stop: t.tStop === null ? absent : stopRange(t.tStop.widest, t.tStop.deepest),
    stopCls: absentClass(t.tStop === null),
    dots: t.tStop === null ? "" : svg(stopDots(t, place.stops), { idPrefix: `s-${take.address}`, decorative: true }),
    ribbon: svg(ribbon, { idPrefix: `r-${take.address}`, decorative: true }),
    focus: t.focus === null ? absent : rangeInColumn(t.focus.nearestM, t.focus.farthestM, distances),
    focusCls: absentClass(t.focus === null),
    focusSource: t.focus === null || t.focus.source === "logged" ? "" : t.focus.source,
    pulls: t.pulls === null ? NOT_LOGGED : String(t.pulls.length),
    pullsCls: absentClass(t.pulls === null),
    status: take.status === null || take.status === "good" ? "" : sentence(tradeWords(take.status)),
    ...findingOf(worst),
    remark: remark.beginning,
    remarkRest: remark.rest,
    hasRemarkRest: remark.rest !== "",
  };
}

function absentClass(absent: boolean): string {
  return absent ? " absent" : "";
}

function lensOf(t: TakeSummary): { lens: string; lensCls: string; lensAt: string } {
  const { lens, lensId } = t.take;
  if (lensId === null) return { lens: NOT_RECORDED, lensCls: absentClass(true), lensAt: "" };
  if (lens === null) return { lens: lensId, lensCls: "", lensAt: "not in the kit" };
  const at = lens.kind === "zoom" && t.focal !== null ? `at ${focalRange(t.focal.minMm, t.focal.maxMm)}` : "";
  return { lens: focalMark(lens), lensCls: " in-mm", lensAt: at };
}

function findingOf(worst: readonly Finding[]): {
  findingWord: string;
  findingCls: string;
  findingText: string;
  findingShort: string;
} {
  const first = worst[0];
  if (first === undefined) return { findingWord: "", findingCls: "", findingText: "", findingShort: "" };
  const more = worst.length === 1 ? "" : ` And ${worst.length - 1} more.`;
  return {
    findingWord: severityWord(first.severity),
    findingCls: severityClass(first.severity),
    findingText: `${first.message}${more}`,
    findingShort: `${first.code}.${more}`,
  };
}

/** Caption of the table for people who do not see it. */
export function takesCaption(dayName: string): string {
  return `Takes of ${dayName} by slate, with focus ribbons on shared scales`;
}

export function focusColumnUnit(day: DayContext): string {
  return distanceUnit(day.site.show.distances);
}
