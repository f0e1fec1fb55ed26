/** The day by the clock: when each camera rolled, which lens was on, and the hours of the day. */
import { dayMinutes } from "../../format/time.ts";
import type { DaySummary } from "../../summary/types.ts";
import type { DrawItem, Drawing } from "../drawing.ts";
import { boxOf, contains, overlaps, type TextItem, text } from "../labels.ts";
import { bar, segment } from "../path.ts";
import { toneWidth } from "../text-width.ts";
import { clockTitle, clockWords } from "./clock-words.ts";
import { type CameraDay, type DayTimes, dayTimes, lensesOn, slateStarts } from "./day-times.ts";

const LEFT = 96;
const RIGHT = 30;
/** Rows of hours, then slates, then 64 a camera, then the border. */
const HOUR_ROWS = [14, 32] as const;
const SLATE_Y = 54;
const LANES_TOP = 62;
const LANE = { height: 50, step: 62, roll: 6, rollHeight: 16, lens: 27, lensHeight: 19 } as const;
const BORDER = 6;

interface Clock {
  readonly times: DayTimes;
  readonly right: number;
  readonly lanesBottom: number;
  x(minutes: number): number;
}

/**
 * One lane a camera, half an hour a block of the border. Hours run on past midnight. Drawn on one scale from the first to
 * the last thing that has a time; a day without any says so.
 */
export function dayClock(day: DaySummary, options: { readonly width: number }): Drawing {
  const width = Math.max(480, options.width);
  const times = dayTimes(day);
  if (times === null) {
    const words = "No hours and no timecode recorded";
    return { width, height: 40, title: words, description: "", items: [text(0, 24, words)] };
  }
  const right = width - RIGHT;
  const x = (minutes: number) => LEFT + ((right - LEFT) * (minutes - times.from)) / (times.to - times.from);
  const lanesBottom = LANES_TOP + Math.max(1, times.cameras.length) * LANE.step - (LANE.step - LANE.height);
  const clock: Clock = { times, right, lanesBottom, x };
  const border = lanesBottom + 8;
  const items: DrawItem[] = times.cameras.map((_, i) => ({
    type: "rect",
    k: "k-frame",
    x: LEFT,
    y: LANES_TOP + i * LANE.step,
    width: right - LEFT,
    height: LANE.height,
  }));
  // Lines first: the words that they cross have a halo.
  const events = eventItems(day, clock, border);
  items.push(...hourGrid(clock, border), ...mealItems(day, clock, border), ...events.lines);
  times.cameras.forEach((camera, i) => {
    items.push(...laneItems(camera, LANES_TOP + i * LANE.step, clock));
  });
  items.push(...slateItems(clock), ...events.words, ...borderItems(clock, border));
  return { width, height: border + BORDER + 22, title: clockTitle(times), description: clockWords(times), items };
}

/** Whole hours between the ends, in steps that leave 60 pixels between labels. */
function hourMarks(clock: Clock): readonly number[] {
  const { from, to } = clock.times;
  const hour = clock.x(from + 60) - clock.x(from);
  const step = 60 * ([1, 2, 3, 4, 6].find((s) => s * hour >= 60) ?? 12);
  const marks: number[] = [];
  for (let m = Math.ceil(from / step) * step; m <= to; m += step) marks.push(m);
  return marks;
}

function hourGrid(clock: Clock, border: number): readonly DrawItem[] {
  const d = hourMarks(clock)
    .filter((m) => m > clock.times.from && m < clock.times.to)
    .map((m) => segment(clock.x(m), LANES_TOP - 6, clock.x(m), border))
    .join("");
  return d === "" ? [] : [{ type: "path", k: "k-grid", d }];
}

function borderItems(clock: Clock, border: number): readonly DrawItem[] {
  const { from, to } = clock.times;
  let d = "";
  for (let m = from; m < to; m += 60) d += bar(clock.x(m), border, clock.x(Math.min(to, m + 30)) - clock.x(m), BORDER);
  return [
    { type: "path", k: "k-bar-open", d: bar(LEFT, border, clock.right - LEFT, BORDER) },
    { type: "path", k: "k-bar", d },
    ...hourMarks(clock).map((m) => text(clock.x(m), border + BORDER + 16, dayMinutes(m), "middle")),
  ];
}

function laneItems(camera: CameraDay, top: number, clock: Clock): readonly DrawItem[] {
  const rolls = camera.rolls.map((r) => {
    const left = clock.x(r.from);
    return bar(left, top + LANE.roll, Math.max(1.6, clock.x(r.to) - left), LANE.rollHeight);
  });
  const items: DrawItem[] = [
    text(0, top + 31, camera.camera, "start", "t-cam"),
    text(LEFT - 10, top + LANE.roll + 12, "rolling", "end", "t-fine"),
    text(LEFT - 10, top + LANE.lens + 14, "lens on", "end", "t-fine"),
    { type: "path", k: "k-roll", d: rolls.join("") },
  ];
  const boxes = lensesOn(camera.rolls).map((l) => ({
    ...l,
    left: clock.x(l.from),
    right: Math.max(clock.x(l.to), clock.x(l.from) + 3),
  }));
  let free = LEFT;
  boxes.forEach((box, i) => {
    items.push({ type: "rect", k: "k-box", x: box.left, y: top + LANE.lens, width: box.right - box.left, height: LANE.lensHeight });
    const next = boxes[i + 1]?.left ?? clock.right;
    const label = lensLabel(box, free, next, top + LANE.lens + 14);
    free = box.right;
    if (label === null) return;
    items.push(label);
    free = Math.max(free, boxOf(label).right);
  });
  return items;
}

/** Inside the box where it fits, else behind it, else before it; a label without room is left to the rows below. */
function lensLabel(
  box: { readonly left: number; readonly right: number; readonly words: string },
  free: number,
  next: number,
  y: number,
): TextItem | null {
  const width = toneWidth(box.words, "t-ink");
  if (box.right - box.left >= width + 6) return text((box.left + box.right) / 2, y, box.words, "middle", "t-ink");
  if (next - box.right >= width + 10) return text(box.right + 5, y, box.words, "start", "t-ink halo");
  if (box.left - free >= width + 10) return text(box.left - 5, y, box.words, "end", "t-ink halo");
  return null;
}

/**
 * Slates over the first roll of each. Those that would run into each other share one label: a list while it is short, else
 * the first "to" the last.
 */
function slateItems(clock: Clock): readonly DrawItem[] {
  const name = text(LEFT - 10, SLATE_Y, "slate", "end", "t-fine");
  const right = clock.right + RIGHT;
  const place = ({ at, slates }: Shared): TextItem => {
    const label = text(at, SLATE_Y, sharedWords(slates), "start", "t-fine halo-p");
    const over = boxOf(label).right - right;
    return over > 0 ? { ...label, x: Math.floor(label.x - over) } : label;
  };
  const shared: Shared[] = [];
  for (const { at, slate } of slateStarts(clock.times.rolls)) {
    let next: Shared = { at: clock.x(at) + 3, slates: [slate] };
    // a label may grow, or be moved in from the edge, into the one before it
    for (let before = shared.at(-1); before !== undefined; before = shared.at(-1)) {
      if (!overlaps(boxOf(place(before)), boxOf(place(next)), 8)) break;
      shared.pop();
      next = { at: before.at, slates: [...before.slates, ...next.slates] };
    }
    shared.push(next);
  }
  return [name, ...shared.map(place)];
}

/** Slates under one label, and where the first of them starts. */
interface Shared {
  readonly at: number;
  readonly slates: readonly string[];
}

/** A list of slates longer than this, in pixels, says its first and last alone. */
const LIST_WIDTH = 110;

function sharedWords(slates: readonly string[]): string {
  const list = slates.join(", ");
  return slates.length < 3 || toneWidth(list, "t-fine") <= LIST_WIDTH ? list : `${slates[0]} to ${slates.at(-1)}`;
}

/** Call, first shot, first after the meal, wrap: a line through all lanes with its word, on the row that is free. */
function eventItems(
  day: DaySummary,
  clock: Clock,
  border: number,
): { readonly lines: readonly DrawItem[]; readonly words: readonly DrawItem[] } {
  const { call, firstShot, firstAfterMeal, meals, wrap } = day.day.record;
  const events = [
    { name: "call", at: call },
    { name: "first shot", at: firstShot },
    { name: "first after meal", at: firstAfterMeal },
    ...meals.filter((m) => m.in === null).map((m) => ({ name: "meal from", at: m.out })),
    { name: "wrap", at: wrap },
  ];
  const whole = { left: 0, right: clock.right + RIGHT, top: 0, bottom: border };
  const placed: TextItem[] = [];
  let lines = "";
  for (const { name, at } of events) {
    if (at === null) continue;
    const x = clock.x(at);
    const words = `${name} ${dayMinutes(at)}`;
    const label = HOUR_ROWS.flatMap((y) => [
      text(x + 5, y, words, "start", "t-b halo-p"),
      text(x - 5, y, words, "end", "t-b halo-p"),
    ]).find((item) => contains(whole, boxOf(item)) && placed.every((other) => !overlaps(boxOf(other), boxOf(item), 3)));
    if (label !== undefined) placed.push(label);
    lines += segment(x, label === undefined ? HOUR_ROWS[1] : label.y - 12, x, border);
  }
  return { lines: lines === "" ? [] : [{ type: "path", k: "k-axis", d: lines }], words: placed };
}

function mealItems(day: DaySummary, clock: Clock, border: number): readonly DrawItem[] {
  const middle = (LANES_TOP + clock.lanesBottom) / 2;
  return day.day.record.meals.flatMap((meal): readonly DrawItem[] => {
    const left = clock.x(meal.out);
    // A meal without an end has its word among the hours.
    if (meal.in === null) return [];
    const right = clock.x(meal.in);
    const centre = (left + right) / 2;
    const box: DrawItem = {
      type: "rect",
      k: "k-meal",
      x: left,
      y: LANES_TOP - 4,
      width: right - left,
      height: border - LANES_TOP + 4,
    };
    const from = dayMinutes(meal.out);
    const to = dayMinutes(meal.in);
    const sets = [["meal", `${from} to ${to}`], ["meal", from, `to ${to}`], ["meal"]];
    const words = sets.find((set) => set.every((line) => toneWidth(line, "t-fine") <= right - left - 6)) ?? [];
    return [box, ...words.map((line, i) => text(centre, middle + 4 + 15 * (i - (words.length - 1) / 2), line, "middle", "t-fine"))];
  });
}
