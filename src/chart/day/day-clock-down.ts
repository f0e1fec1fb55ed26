/** The day by the clock for a narrow screen: hours run down the page, a column a camera. */
import { dayMinutes } from "../../format/time.ts";
import type { DaySummary } from "../../summary/types.ts";
import type { DrawItem, Drawing } from "../drawing.ts";
import { boxOf, contains, labelBoard, type TextItem, text } from "../labels.ts";
import { bar, segment } from "../path.ts";
import { clockTitle, clockWords } from "./clock-words.ts";
import { type CameraDay, dayTimes, lensesOn } from "./day-times.ts";

const TOP = 30;
const BOTTOM = 10;
/** Left edge of the border of half hours, with room for "00:00+1", and of the first camera. */
const BORDER = { x: 58, width: 6 } as const;
const LANES = 74;
const HOUR = 46;
const ROLL = { at: 4, width: 14 } as const;
const LENS = { at: 24, width: 10 } as const;

/** Fits a width of 288 pixels and more: a page 320 wide without scrolling sideways. */
export function dayClockDown(day: DaySummary, options: { readonly width: number }): Drawing {
  const width = Math.max(240, options.width);
  const times = dayTimes(day);
  if (times === null) {
    const words = "No hours and no timecode recorded";
    return { width, height: 40, title: words, description: "", items: [text(0, 24, words)] };
  }
  const y = (minutes: number): number => TOP + ((minutes - times.from) / 60) * HOUR;
  const bottom = y(times.to);
  const column = (width - LANES) / Math.max(1, times.cameras.length);
  const board = labelBoard({ left: 0, right: width, top: 0, bottom: bottom + BOTTOM });
  const lanes = times.cameras.map((camera, i) => laneItems(camera, { left: LANES + i * column, width: column - 8, y, bottom }));
  for (const lane of lanes) for (const label of lane.labels) board.reserve(boxOf(label));
  const events = eventItems(day, width, y, board);
  return {
    width,
    height: Math.ceil(bottom + BOTTOM),
    title: clockTitle(times),
    description: clockWords(times),
    items: [
      ...lanes.flatMap((lane) => lane.ground),
      ...mealItems(day, width, y),
      ...events.lines,
      ...lanes.flatMap((lane) => [...lane.marks, ...lane.labels]),
      ...borderItems(times.from, times.to, y),
      ...events.words,
    ],
  };
}

interface Lane {
  readonly ground: readonly DrawItem[];
  readonly marks: readonly DrawItem[];
  readonly labels: readonly TextItem[];
}

function laneItems(
  camera: CameraDay,
  at: { readonly left: number; readonly width: number; readonly y: (minutes: number) => number; readonly bottom: number },
): Lane {
  const { left, width, y, bottom } = at;
  const rolls = camera.rolls.map((r) => bar(left + ROLL.at, y(r.from), ROLL.width, Math.max(1.6, y(r.to) - y(r.from))));
  const marks: DrawItem[] = [{ type: "path", k: "k-roll", d: rolls.join("") }];
  const labels: TextItem[] = [text(left, TOP - 10, camera.camera, "start", "t-cam")];
  let free = TOP;
  const lenses = lensesOn(camera.rolls);
  lenses.forEach((lens, i) => {
    const top = y(lens.from);
    const next = y(lenses[i + 1]?.from ?? Number.POSITIVE_INFINITY);
    marks.push({ type: "rect", k: "k-box", x: left + LENS.at, y: top, width: LENS.width, height: Math.max(3, y(lens.to) - top) });
    const label = text(left + LENS.at + LENS.width + 4, Math.max(top + 9, free + 14), lens.words, "start", "t-ink");
    const lane = { left, right: left + width, top: 0, bottom };
    // a name that would stand more than half an hour from its box, or beside the next one, is left to the rows below
    if (!contains(lane, boxOf(label)) || label.y - top > HOUR / 2 || label.y - 4 > next) return;
    labels.push(label);
    free = label.y;
  });
  return {
    ground: [{ type: "rect", k: "k-frame", x: left, y: TOP, width, height: bottom - TOP }],
    marks,
    labels,
  };
}

function borderItems(from: number, to: number, y: (minutes: number) => number): readonly DrawItem[] {
  let d = "";
  const hours: TextItem[] = [];
  for (let m = from; m <= to; m += 60) {
    hours.push(text(BORDER.x - 5, y(m) + 4, dayMinutes(m), "end", "t-fine"));
    if (m < to) d += bar(BORDER.x, y(m), BORDER.width, y(m + 30) - y(m));
  }
  return [
    { type: "path", k: "k-bar-open", d: bar(BORDER.x, y(from), BORDER.width, y(to) - y(from)) },
    { type: "path", k: "k-bar", d },
    ...hours,
  ];
}

function mealItems(day: DaySummary, width: number, y: (minutes: number) => number): readonly DrawItem[] {
  return day.day.record.meals.flatMap((meal): readonly DrawItem[] =>
    meal.in === null
      ? []
      : [{ type: "rect", k: "k-meal", x: LANES - 4, y: y(meal.out), width: width - LANES + 2, height: y(meal.in) - y(meal.out) }],
  );
}

/** A line across for each written hour, with its word where it finds room: at the right edge, above or below the line. */
function eventItems(
  day: DaySummary,
  width: number,
  y: (minutes: number) => number,
  board: ReturnType<typeof labelBoard>,
): { readonly lines: readonly DrawItem[]; readonly words: readonly DrawItem[] } {
  const { call, firstShot, firstAfterMeal, meals, wrap } = day.day.record;
  const events = [
    { name: "call", at: call },
    { name: "first shot", at: firstShot },
    ...meals.map((m) => ({ name: m.in === null ? "meal from" : "meal", at: m.out })),
    { name: "first after meal", at: firstAfterMeal },
    { name: "wrap", at: wrap },
  ];
  let lines = "";
  const words: TextItem[] = [];
  for (const { name, at } of events) {
    if (at === null) continue;
    const line = y(at);
    lines += segment(BORDER.x, line, width, line);
    const tries = [line - 4, line - 9, line + 12, line + 26].map((by) => [
      text(width - 2, by, `${name} ${dayMinutes(at)}`, "end", "t-b halo"),
    ]);
    words.push(...(board.place(tries) ?? []));
  }
  return { lines: lines === "" ? [] : [{ type: "path", k: "k-axis", d: lines }], words };
}
