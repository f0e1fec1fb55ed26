import { describe, expect, it } from "vitest";
import { dayClock } from "../../src/chart/day/day-clock.ts";
import { dayClockDown } from "../../src/chart/day/day-clock-down.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { LENS_35, LENS_50, LENS_75 } from "../fixtures/day-summary-kit.ts";
import { makeTake } from "../fixtures/day-summary-take.ts";
import { emptyDay } from "../fixtures/site-context.ts";
import { clipped, overlapping, pathsOf, wordsOf } from "./reading.ts";

const day = exampleDaySummary();
const WIDTH = 288;
const drawing = dayClockDown(day, { width: WIDTH });

describe("the day's clock down the page", () => {
  it("fits a phone: no wider than asked, with no label outside or on another", () => {
    expect(drawing.width).toBe(WIDTH);
    expect(clipped(drawing)).toEqual([]);
    expect(overlapping(drawing)).toEqual([]);
  });
  it("says the same as the clock across", () => {
    const across = dayClock(day, { width: 1216 });
    expect([drawing.title, drawing.description]).toEqual([across.title, across.description]);
  });
  it("has an hour as long as any other, and a mark as long as the take rolled", () => {
    // 12 take 1 rolled 312 frames at 24: 13 s; 12A take 1 rolled 1440: 60 s
    const heights = pathsOf(drawing, "k-roll").map(
      ({ points }) => Math.max(...points.map(([, y]) => y)) - Math.min(...points.map(([, y]) => y)),
    );
    expect(heights.length).toBe(day.takes.filter((t) => t.take.durationFrames > 0).length);
    const hour = pathsOf(drawing, "k-bar").map(({ points }) => Math.min(...points.map(([, y]) => y)));
    for (let i = 2; i < hour.length; i++)
      expect((hour[i] ?? 0) - (hour[i - 1] ?? 0)).toBeCloseTo((hour[1] ?? 0) - (hour[0] ?? 0), 6);
  });
  it("names a column a camera", () => {
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["A", "B"]));
  });
  it("names a lens beside its own box only, however fast lenses change, and says hours past midnight in full", () => {
    // a change every nine minutes, 6.9 pixels at 46 an hour: names 14 pixels high have no room beside each
    const lenses = [LENS_35, LENS_50, LENS_75];
    const takes = Array.from({ length: 30 }, (_, i) => {
      const minutes = 1260 + 9 * i;
      const hours = Math.floor(minutes / 60) % 24;
      const base = { take: "1", camera: "A", clip: null, line: i + 2, frames: 240, stop: null, scene: null };
      return makeTake({
        ...{ ...base, slate: `${i}`, lens: lenses[i % 3] ?? LENS_35, holds: [{ m: 3, until: 240 }] },
        tcIn: `${String(hours).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}:00:00`,
      });
    });
    const busy = dayClockDown({ ...day, takes }, { width: WIDTH });
    expect(clipped(busy)).toEqual([]);
    expect(overlapping(busy)).toEqual([]);
    expect(wordsOf(busy)).toContain("00:00+1");
    const tops = busy.items.flatMap((item) => (item.type === "rect" && item.k === "k-box" ? [item.y] : []));
    expect(tops).toHaveLength(30);
    const names = busy.items.flatMap((item) =>
      item.type === "text" && / mm$/.test(item.text.replace("\u00a0", " ")) ? [item] : [],
    );
    expect(names.length).toBeGreaterThan(5);
    for (const { text, y } of names) {
      // the box at the height of the name's middle, four pixels above its foot
      const box = tops.filter((top) => top <= y - 4).length - 1;
      expect(text.replace("\u00a0", " "), `at ${y}`).toBe(["35 mm", "50 mm", "75 mm"][box % 3]);
    }
  });
  it("says so on a day without a time", () => {
    expect(wordsOf(dayClockDown(emptyDay(day), { width: WIDTH }))).toEqual(["No hours and no timecode recorded"]);
  });
});
