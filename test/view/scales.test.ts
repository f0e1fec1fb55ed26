import { describe, expect, it } from "vitest";
import { hoursDrawing, namesAllHours } from "../../src/view/readers/hours-drawing.ts";
import { stopScale } from "../../src/view/stop-scale.ts";
import { timeScale } from "../../src/view/time-scale.ts";
import { exampleTake } from "../fixtures/day-summary.ts";
import { DAY_RECORD } from "../fixtures/day-summary-kit.ts";

describe("scales of a day", () => {
  it("hold the longest take", () => {
    expect(timeScale(78).seconds).toBe(90);
    expect(timeScale(90).seconds).toBe(90);
    expect(timeScale(3700).seconds).toBe(7200);
  });

  it("run from T1.4 to T8 and grow in whole stops where the day needs it", () => {
    const take = exampleTake("a-12-2");
    const stop = take.tStop;
    if (stop === null) throw new Error("no stop");
    expect(stopScale([])).toEqual({ widest: 1.4, deepest: 8 });
    expect(stopScale([{ ...take, tStop: { ...stop, widest: 1.19, deepest: 12 } }])).toEqual({ widest: 1, deepest: 16 });
  });
});

describe("hoursDrawing", () => {
  it("names every time that is recorded", () => {
    expect(hoursDrawing(DAY_RECORD)?.title).toContain("call 07:30");
  });

  it("is absent when there is nothing to measure", () => {
    const bare = { ...DAY_RECORD, call: 450, firstShot: null, meals: [], firstAfterMeal: null, wrap: null };
    expect(hoursDrawing(bare)).toBeNull();
  });

  it("says when it had to leave an hour to the list: two lie closer than their labels are wide", () => {
    const apart = { ...DAY_RECORD, call: 450, firstShot: 540, meals: [], firstAfterMeal: null, wrap: 1080 };
    expect(namesAllHours(apart)).toBe(true);
    expect(namesAllHours({ ...apart, firstShot: 460 })).toBe(false);
    expect(namesAllHours({ ...apart, firstShot: null, wrap: null })).toBe(false);
  });

  it("runs on past midnight", () => {
    expect(hoursDrawing({ ...DAY_RECORD, wrap: 1480 })?.title).toContain("wrap 00:40+1");
  });
});
