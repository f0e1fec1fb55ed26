/** Tables of a day's production page: lens use, camera use, and the day beside all days so far. */
import { svg } from "../../chart/svg.ts";
import { compareCodes } from "../../core/code-order.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { stopRange } from "../../format/stop.ts";
import { minutesSeconds } from "../../format/time.ts";
import type { Kit } from "../../ingest/records.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import type { DayProgress, ProgressFigures } from "../../summary/progress.ts";
import type { LensUse } from "../../summary/types.ts";
import { dayHeading, focalMark } from "../names.ts";
import { cell, column, FIXED, num, numOr, type Row, row, type TableModel, table, textOr } from "../table.ts";
import { shareDrawing } from "./eighths-drawing.ts";

/** More lenses than fit the sheet share a row: the day's page has each. */
const MOST_LENSES = 7;

/** Longest served first, each with a bar as a share of the longest. */
export function lensBars({ lensUse, takes }: DayDigest, kit: Kit): TableModel {
  const uses = lensUse
    .map((use) => ({ use, seconds: seconds(takes.filter(({ lens }) => lens === use.lens)) }))
    .sort((a, b) => b.seconds - a.seconds);
  const longest = uses[0]?.seconds ?? 0;
  const rest = uses.length > MOST_LENSES + 1 ? uses.slice(MOST_LENSES) : [];
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
    uses.slice(0, uses.length - rest.length).map(({ use, seconds: served }) => {
      const bar = longest === 0 ? "" : svg(shareDrawing(served / longest), { idPrefix: `bar-${use.lens}`, decorative: true });
      return row(cell(use.lens, { nb: true }), [
        cell(markOf(kit, use.lens), { svg: bar, cls: "bar" }),
        num(minutesSeconds(served)),
        num(thousands(use.takes)),
        textOr(use.tStop === null ? null : stopRange(use.tStop.widest, use.tStop.deepest), NOT_RECORDED, { nb: true }),
      ]);
    }),
    { foot: rest.length === 0 ? [] : [moreLenses(rest)] },
  );
}

function moreLenses(uses: readonly { readonly use: LensUse; readonly seconds: number }[]): Row {
  return row(cell(`${uses.length} more`, { nb: true }), [
    cell("on the day's page"),
    num(minutesSeconds(uses.reduce((sum, { seconds: served }) => sum + served, 0))),
    num(String(uses.reduce((sum, { use }) => sum + use.takes, 0))),
    cell(""),
  ]);
}

/** A row a camera, in letter order. */
export function cameraUse({ takes, cameraSeconds }: DayDigest): TableModel {
  return table(
    "camera-use",
    "Camera use",
    [
      column("Camera"),
      column("Media", { unit: "min:s", num: true }),
      column("Clips", { num: true }),
      column("Lenses", { num: true }),
      column("Rolls"),
    ],
    Object.entries(cameraSeconds).map(([camera, rolled]) => {
      const clips = takes.filter((take) => take.camera === camera);
      const rolls = names(clips.map(({ roll }) => roll));
      return row(cell(camera), [
        num(minutesSeconds(rolled)),
        num(thousands(clips.length)),
        num(String(names(clips.map(({ lens }) => lens)).length)),
        textOr(rolls.length === 0 ? null : rolls.join(", "), NOT_RECORDED),
      ]);
    }),
  );
}

/** The day's own figures above those of all days so far, this one included. */
export function toDateTable(days: readonly DayProgress[], today: DayProgress): TableModel {
  const count = days.indexOf(today) + 1;
  const ownRemaining = today.own.eighthsScheduled === null ? null : today.own.eighthsScheduled - (today.own.eighthsCompleted ?? 0);
  return table(
    "to-date",
    "The day, and all days so far",
    [
      column("Days"),
      column("Scheduled", { unit: "pages", num: true }),
      column("Completed", { unit: "pages", num: true }),
      column("Remaining", { unit: "pages", num: true }),
      column("Set-ups", { num: true }),
      column("Takes", { num: true }),
      column("Circled", { num: true }),
      column("Clips", { num: true }),
      column("Media", { unit: "min:s", num: true }),
      column("Ratio", { unit: "to 1", num: true }),
    ],
    [
      row(cell(dayHeading(today), { nb: true }), figureCells(today.own, ownRemaining)),
      row(
        cell(count === 1 ? "To date, this day" : `To date, ${count} days`, { nb: true }),
        figureCells(today.toDate, today.eighthsRemaining),
      ),
    ],
    { cls: FIXED },
  );
}

function figureCells(figures: ProgressFigures, eighthsRemaining: number | null) {
  const pages = (value: number | null) => numOr(value === null ? null : eighths(value), NOT_RECORDED);
  return [
    pages(figures.eighthsScheduled),
    pages(figures.eighthsCompleted),
    pages(eighthsRemaining),
    ...[figures.setups, figures.takes, figures.circled, figures.clips].map((value) => num(thousands(value))),
    num(minutesSeconds(figures.mediaSeconds)),
    textOr(figures.shootingRatio === null ? null : fixed(figures.shootingRatio, 1), "none circled", { num: true }),
  ];
}

/** Marked focal length of a lens of the kit, for a table headed in mm; its id for any other. */
function markOf(kit: Kit, id: string): string {
  const lens = kit.lenses.find((l) => l.id === id);
  return lens === undefined ? id : focalMark(lens);
}

function seconds(clips: readonly { readonly durationSeconds: number }[]): number {
  return clips.reduce((sum, clip) => sum + clip.durationSeconds, 0);
}

/** Each once, in the order of an index. */
function names(found: readonly (string | null)[]): readonly string[] {
  return [...new Set(found.filter((name) => name !== null))].sort(compareCodes);
}
