import { describe, expect, it } from "vitest";
import { dayClock } from "../../src/chart/day/day-clock.ts";
import { dayClockDown } from "../../src/chart/day/day-clock-down.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
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
  it("says so on a day without a time", () => {
    expect(wordsOf(dayClockDown(emptyDay(day), { width: WIDTH }))).toEqual(["No hours and no timecode recorded"]);
  });
});
