/** What the notes say about places in time: the slate as a clapstick sign, other timecodes as dotted lines, noted distances at the ends. */
import { dioptresFromMetres } from "../../core/quantity.ts";
import { type NoteMark, notedEnds, noteMarks } from "../../summary/note-marks.ts";
import type { DrawItem } from "../drawing.ts";
import { boxOf, overlaps, type TextItem, text } from "../labels.ts";
import { bar, polyline, segment } from "../path.ts";
import type { Plot } from "./ribbon-labels.ts";
import { shortDistance } from "./ribbon-words.ts";

/** Height and width of the sign, and how far its upper stick is open. */
const STICK = { width: 21, height: 4, open: 8 } as const;
/** Length of a noted distance at either end of the plot. */
const NOTED = 34;
const FOCUS = "t-fine t-focus halo";

export interface NoteMarkItems {
  readonly items: readonly DrawItem[];
  /** Words above the plot. */
  readonly texts: readonly TextItem[];
}

/** `taken`: the pulls' words above the plot, which keep their place; a slate's words that would lie on them are left to the page. */
export function noteMarkItems(plot: Plot, top: number, bottom: number, taken: readonly TextItem[]): NoteMarkItems {
  const items: DrawItem[] = [];
  const texts: TextItem[] = [];
  for (const mark of noteMarks(plot.summary.take)) {
    const x = plot.axis.x(mark.frame);
    if (mark.kind === "slate") {
      items.push(...clapstick(x, top, bottom));
      texts.push(...slateWords(mark, x, top, plot.axis.right, [...taken, ...texts]));
    } else items.push(...dotted(mark, x, plot, top, bottom));
  }
  return { items: [...items, ...notedAtEnds(plot)], texts };
}

/** Two sticks, the upper one open, on a line through the plot and its strips. */
function clapstick(x: number, top: number, bottom: number): readonly DrawItem[] {
  const left = x - STICK.width;
  const y = top - 2;
  return [
    { type: "line", k: "k-clap", x1: x, y1: y - STICK.height, x2: x, y2: bottom },
    { type: "path", k: "k-bar", d: bar(left, y - STICK.height, STICK.width, STICK.height) },
    {
      type: "path",
      k: "k-bar-open",
      d: polyline(
        [left, x, x, left],
        [y - 2 * STICK.height - STICK.open, y - 2 * STICK.height, y - STICK.height, y - STICK.height - STICK.open],
        true,
      ),
    },
  ];
}

function slateWords(mark: NoteMark, x: number, top: number, right: number, taken: readonly TextItem[]): readonly TextItem[] {
  const lines = (at: number, anchor: "start" | "end") => [
    text(at, top - 36, "slate, noted", anchor, "t-b"),
    text(at, top - 20, mark.timecode, anchor, "t-fine"),
  ];
  const free = (found: readonly TextItem[]): boolean =>
    found.every((line) => {
      const box = boxOf(line);
      return box.left >= 0 && box.right <= right && taken.every((other) => !overlaps(box, boxOf(other), 6));
    });
  return [lines(x + 6, "start"), lines(x - STICK.width - 4, "end")].find(free) ?? [];
}

/** A dotted line with its words in the plot; without room for the words there is no line either. */
function dotted(mark: NoteMark, x: number, plot: Plot, top: number, bottom: number): readonly DrawItem[] {
  const words = mark.words === "" ? mark.timecode : mark.words;
  const heights = [top + 22, top + 38, plot.scale.floorY - 10, plot.scale.floorY - 26];
  const tries = heights.flatMap((y) => [
    [text(x + 5, y, words, "start", "t-fine halo")],
    [text(x - 5, y, words, "end", "t-fine halo")],
  ]);
  const label = plot.board.place(tries);
  return label === null ? [] : [{ type: "line", k: "k-lead", x1: x, y1: top, x2: x, y2: bottom }, ...label];
}

/** A noted focus range beside a log: where the note says the focus stood at the first and at the last frame. */
function notedAtEnds(plot: Plot): readonly DrawItem[] {
  const ends = notedEnds(plot.summary.take);
  if (ends === null || plot.summary.focus?.source !== "logged") return [];
  const { left, right } = plot.axis;
  return [
    { metres: ends.start, from: left + 2, anchor: "start" as const },
    { metres: ends.end, from: right - NOTED - 2, anchor: "end" as const },
  ].flatMap(({ metres, from, anchor }): readonly DrawItem[] => {
    const y = plot.scale.y(dioptresFromMetres(metres));
    const at = anchor === "start" ? from + 2 : from + NOTED - 2;
    const words = `noted ${shortDistance(metres, plot.system)}`;
    const label = plot.board.place([-10, 19, -24, 33].map((by) => [text(at, y + by, words, anchor, FOCUS)]));
    return label === null ? [] : [{ type: "path", k: "k-noted", d: segment(from, y, from + NOTED, y) }, ...label];
  });
}
