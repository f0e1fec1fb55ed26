/** The hours of a day as one bar: call to wrap, meals left open, the written times above. */
import type { DrawItem, Drawing } from "../../chart/drawing.ts";
import { dayMinutes } from "../../format/time.ts";
import type { DayRecord } from "../../ingest/records.ts";

const WIDTH = 1120;
const BAR_TOP = 44;
const BAR_HEIGHT = 10;
const AXIS = 62;
/** Labels closer than this would touch: the later one is left to the list beside the drawing. */
const LABEL_ROOM = 108;
const HOUR = "t-ink t-hour";

interface Mark {
  readonly minutes: number;
  readonly words: string;
}

/** `null` when fewer than two times are recorded: there is nothing to measure then. */
export function hoursDrawing(record: DayRecord): Drawing | null {
  const marks = marksOf(record);
  const first = marks[0];
  const last = marks[marks.length - 1];
  if (first === undefined || last === undefined || first.minutes === last.minutes) return null;
  const from = Math.floor((first.minutes - 15) / 60) * 60;
  const to = Math.ceil((last.minutes + 15) / 60) * 60;
  const x = (minutes: number) => Math.round(((minutes - from) / (to - from)) * WIDTH * 10) / 10;
  return {
    width: WIDTH,
    height: 92,
    title: `${marks.map((m) => `${m.words} ${dayMinutes(m.minutes)}`).join(", ")}.`,
    description: "Hours of the day from left to right; the bar runs from the first to the last time, meals are left open.",
    items: [...barItems(record, first.minutes, last.minutes, x), ...markItems(marks, x), ...axisItems(from, to, x)],
  };
}

/** Whether the drawing names every hour that is recorded; where two lie close it leaves one to the list beside it. */
export function namesAllHours(record: DayRecord): boolean {
  const named = hoursDrawing(record)?.items.filter((item) => item.type === "text" && item.tone === HOUR) ?? [];
  return named.length > 0 && named.length === marksOf(record).length;
}

function marksOf(r: DayRecord): readonly Mark[] {
  const marks: Mark[] = [];
  const add = (minutes: number | null, words: string) => {
    if (minutes !== null) marks.push({ minutes, words });
  };
  add(r.call, "call");
  add(r.firstShot, "first shot");
  for (const meal of r.meals) add(meal.out, meal.in === null ? "meal" : `meal to ${dayMinutes(meal.in)}`);
  add(r.firstAfterMeal, "first after meal");
  add(r.wrap, "wrap");
  return marks.sort((a, b) => a.minutes - b.minutes);
}

function barItems(r: DayRecord, from: number, to: number, x: (minutes: number) => number): DrawItem[] {
  const bar = (a: number, b: number, k: "k-bar" | "k-bar-open"): DrawItem => ({
    type: "rect",
    k,
    x: x(a),
    y: BAR_TOP,
    width: Math.max(0, x(b) - x(a)),
    height: BAR_HEIGHT,
  });
  const items: DrawItem[] = [bar(from, to, "k-bar")];
  for (const meal of r.meals) if (meal.in !== null) items.push(bar(meal.out, Math.min(meal.in, to), "k-bar-open"));
  return items;
}

function markItems(marks: readonly Mark[], x: (minutes: number) => number): DrawItem[] {
  const items: DrawItem[] = [];
  let free = Number.NEGATIVE_INFINITY;
  for (const mark of marks) {
    const at = x(mark.minutes);
    const end = at > WIDTH - LABEL_ROOM;
    items.push({ type: "line", k: "k-axis", x1: at, y1: 4, x2: at, y2: AXIS });
    if ((end ? at - LABEL_ROOM : at) < free) continue;
    const anchor = end ? "end" : "start";
    const textX = end ? at - 6 : at + 6;
    items.push({ type: "text", x: textX, y: 18, text: dayMinutes(mark.minutes), anchor, tone: HOUR });
    items.push({ type: "text", x: textX, y: 36, text: mark.words, anchor, tone: "" });
    free = end ? at : at + LABEL_ROOM;
  }
  return items;
}

function axisItems(from: number, to: number, x: (minutes: number) => number): DrawItem[] {
  const items: DrawItem[] = [{ type: "line", k: "k-grid", x1: 0, y1: AXIS, x2: WIDTH, y2: AXIS }];
  const step = to - from > 16 * 60 ? 120 : 60;
  for (let minutes = from; minutes <= to; minutes += step) {
    const at = x(minutes);
    const anchor = minutes === from ? "start" : at > WIDTH - 12 ? "end" : "middle";
    items.push({ type: "line", k: "k-axis", x1: at, y1: AXIS, x2: at, y2: AXIS + 5 });
    items.push({ type: "text", x: at, y: 82, text: dayMinutes(minutes).slice(0, 2), anchor, tone: "" });
  }
  return items;
}
