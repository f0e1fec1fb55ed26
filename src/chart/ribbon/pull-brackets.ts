/** Brackets above the plot, from the start of a pull to its end, with the move in words. */

import { dioptresFromMetres } from "../../core/quantity.ts";
import { depths, dioptres } from "../../format/amounts.ts";
import { distance } from "../../format/length.ts";
import { secondsText } from "../../format/time.ts";
import { oneSystem, type PageDistances } from "../../format/units.ts";
import type { PullFigures } from "../../summary/types.ts";
import type { DrawItem } from "../drawing.ts";
import { boxOf, overlaps, type TextItem, text } from "../labels.ts";
import { polyline, segment } from "../path.ts";
import type { DistanceScale } from "../scales.ts";
import { shortMove } from "./ribbon-words.ts";

/** Two pulls closer than this share one label: the longer keeps it, the other has its number. */
const LABEL_REACH = 150;

export interface PullLabels {
  readonly texts: readonly TextItem[];
  /** Whether a row for numbers is needed between the words and the brackets. */
  readonly numbered: boolean;
}

/** y of the two rows of words, of the row of numbers, and of the brackets' top. */
export interface PullRows {
  readonly move: number;
  readonly measure: number;
  readonly number: number;
  readonly bracket: number;
}

/** Height that the pulls need above the plot. */
export const PULL_HEIGHT = { labels: 48, numbers: 14 } as const;

/** Rows from the top of the drawing. */
export function pullRows(numbered: boolean): PullRows {
  const extra = numbered ? PULL_HEIGHT.numbers : 0;
  return { move: 12, measure: 28, number: 43, bracket: 35 + extra };
}

/**
 * Labels of the longest pulls, numbers (as in the table of pulls) of the rest. A number that finds no room is left to the
 * table. `secondsOf` turns frames into seconds of the take's timecode.
 */
export function pullLabels(
  pulls: readonly PullFigures[],
  x: (frame: number) => number,
  right: number,
  system: PageDistances,
  secondsOf: (frames: number) => number,
): PullLabels {
  const rows = pullRows(true);
  const order = pulls.map((_, i) => i).sort((a, b) => (pulls[b]?.frames ?? 0) - (pulls[a]?.frames ?? 0) || a - b);
  const words: { readonly start: number; readonly lines: readonly TextItem[] }[] = [];
  const rest: number[] = [];
  for (const i of order) {
    const pull = pulls[i];
    if (pull === undefined) continue;
    const start = x(pull.startFrame);
    const lines = labelLines(pull, start, right, rows, system, secondsOf);
    const near = words.some((w) => Math.abs(w.start - start) < LABEL_REACH || lines.some((l) => meets(l, w.lines)));
    if (near) rest.push(i);
    else words.push({ start, lines });
  }
  const numbers: TextItem[] = [];
  for (const i of rest) {
    const pull = pulls[i];
    if (pull === undefined) continue;
    const number = text((x(pull.startFrame) + x(pull.endFrame)) / 2, rows.number, String(i + 1), "middle", "t-fine t-b");
    if (!meets(number, numbers)) numbers.push(number);
  }
  const lines = words.flatMap((w) => w.lines);
  numbers.sort((a, b) => a.x - b.x);
  return { texts: [...lines.sort((a, b) => a.x - b.x || a.y - b.y), ...numbers], numbered: rest.length > 0 };
}

function meets(item: TextItem, others: readonly TextItem[]): boolean {
  const box = boxOf(item);
  return others.some((other) => overlaps(box, boxOf(other), 6));
}

/** Begins at the bracket, moved to the left where it would leave the drawing. */
function labelLines(
  pull: PullFigures,
  start: number,
  right: number,
  rows: PullRows,
  system: PageDistances,
  secondsOf: (frames: number) => number,
): readonly TextItem[] {
  const seconds = `${secondsText(secondsOf(pull.frames))}${pull.follow ? " follow" : ""}`;
  const extent = pull.extentDepths === null ? `${dioptres(pull.extentDioptres)} 1/m` : depths(pull.extentDepths);
  const lines = [
    text(start, rows.move, shortMove(pull.fromM, pull.toM, system), "start", "t-b"),
    text(start, rows.measure, `${seconds}, ${extent}`, "start", "t-fine"),
  ];
  const over = Math.max(0, ...lines.map((line) => boxOf(line).right - right));
  return over === 0 ? lines : lines.map((line) => ({ ...line, x: Math.floor(line.x - over) }));
}

/** All brackets, and the dotted leads from their feet down to the held distances. */
export function pullBrackets(
  pulls: readonly PullFigures[],
  x: (frame: number) => number,
  scale: DistanceScale,
  rows: PullRows,
): readonly DrawItem[] {
  if (pulls.length === 0) return [];
  const foot = rows.bracket + 7;
  let brackets = "";
  let leads = "";
  for (const pull of pulls) {
    const from = x(pull.startFrame);
    const to = x(pull.endFrame);
    brackets += polyline([from, from, to, to], [foot, rows.bracket, rows.bracket, foot]);
    leads += segment(from, foot, from, scale.y(dioptresFromMetres(pull.fromM)));
    leads += segment(to, foot, to, scale.y(dioptresFromMetres(pull.toM)));
  }
  return [
    { type: "path", k: "k-lead", d: leads },
    { type: "path", k: "k-bracket", d: brackets },
  ];
}

/** "far limit 1.91 m" and the like: one distance with a word before it. */
export function namedDistance(name: string, dioptresValue: number, system: PageDistances): string {
  const metres = dioptresValue <= 1e-9 ? "inf" : 1 / dioptresValue;
  return `${name} ${distance(metres, oneSystem(system))}`;
}
