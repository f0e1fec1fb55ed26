import { describe, expect, test } from "vitest";
import { dayClock } from "../../src/chart/day/day-clock.ts";
import type { DaySummary } from "../../src/summary/types.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { LENS_35, LENS_50, LENS_75, LENS_ZOOM } from "../fixtures/day-summary-kit.ts";
import { makeTake } from "../fixtures/day-summary-take.ts";
import { clipped, overlapping, pathsOf, wordsOf } from "./reading.ts";

function nightDay(): DaySummary {
  const day = exampleDaySummary();
  const record = {
    ...day.day.record,
    ...{ call: 840, firstShot: 862, firstAfterMeal: 1250, wrap: 1590 },
    meals: [
      { out: 1200, in: 1240 },
      { out: 1500, in: null },
    ],
  };
  const rolls = [
    ["A", "14:22:00:00", LENS_50],
    ["A", "14:50:00:00", LENS_50],
    ["A", "16:42:00:00", LENS_75],
    ["B", "23:58:30:00", LENS_35],
    ["B", "02:10:00:00", LENS_ZOOM],
  ] as const;
  const takes = rolls.map(([camera, tcIn, lens], i) =>
    makeTake({
      slate: `3${i}`,
      take: "1",
      camera,
      clip: null,
      line: i + 2,
      tcIn,
      frames: 2400,
      lens,
      stop: null,
      scene: null,
      holds: [{ m: 3, until: 2400 }],
    }),
  );
  return { ...day, takes, day: { ...day.day, record } };
}

describe("the day by the clock", () => {
  const plain = dayClock(exampleDaySummary(), { width: 1216 });

  test("says from when to when each camera rolled", () => {
    expect(plain.title).toBe("Camera A rolled from 08:42 to 15:03, camera B rolled from 14:22 to 17:41");
  });

  test("shows the hours of the day, the meal and the lenses in words", () => {
    const words = wordsOf(plain);
    expect(words).toEqual(
      expect.arrayContaining(["call 07:30", "first shot 08:42", "first after meal 13:52", "wrap 18:20", "meal", "35 mm", "75 mm"]),
    );
  });

  test("puts half an hour in a block of the border", () => {
    const blocks = pathsOf(plain, "k-bar");
    const xs = blocks[0]!.points.map(([x]) => x);
    // 07:00 to 19:00 is 24 blocks of which 12 are black.
    expect(blocks).toHaveLength(12);
    expect(blocks[1]!.points[0]![0] - xs[0]!).toBeCloseTo(2 * (Math.max(...xs) - Math.min(...xs)), 0);
  });

  test("has a mark for each clip that has a time", () => {
    expect(pathsOf(plain, "k-roll")).toHaveLength(6);
  });

  test("names a crowd of slates by the first and the last of each stretch, none twice, none cut off", () => {
    const day = exampleDaySummary();
    const takes = Array.from({ length: 60 }, (_, i) => {
      const minutes = 540 + 6 * i;
      const tcIn = `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}:00:00`;
      const holds = [{ m: 3, until: 240 }];
      const base = { take: "1", camera: "A", clip: null, line: i + 2, frames: 240, lens: LENS_50, stop: null, scene: null };
      return makeTake({ ...base, slate: `${100 + i}`, tcIn, holds });
    });
    for (const width of [1216, 900, 700]) {
      const drawing = dayClock({ ...day, takes }, { width });
      expect(clipped(drawing)).toEqual([]);
      expect(overlapping(drawing)).toEqual([]);
      const named = wordsOf(drawing).filter((words) => /^1\d\d( to 1\d\d|(, 1\d\d)*)$/.test(words));
      const ends = named.map((words) => words.split(/ to |, /).map(Number));
      // every label begins with the slate after the one that the label before it ends with
      expect(ends[0]?.[0]).toBe(100);
      expect(ends.at(-1)?.at(-1)).toBe(159);
      ends.slice(1).forEach((label, i) => {
        expect(label[0]).toBe((ends[i]?.at(-1) ?? 0) + 1);
      });
    }
  });

  test("tells the lenses of a day with many changes once each, with the count of changes", () => {
    const day = exampleDaySummary();
    const takes = Array.from({ length: 12 }, (_, i) =>
      makeTake({
        ...{ slate: `${i}`, take: "1", camera: "A", clip: null, line: i + 2, frames: 240, stop: null, scene: null },
        ...{ tcIn: `${String(9 + Math.floor(i / 6)).padStart(2, "0")}:${i % 6}0:00:00`, lens: i % 2 === 0 ? LENS_50 : LENS_35 },
        holds: [{ m: 3, until: 240 }],
      }),
    );
    const { description } = dayClock({ ...day, takes }, { width: 900 });
    expect(description).toContain("Camera A: twelve clips; eleven lens changes between 50 mm and 35 mm.");
  });

  test("counts on past midnight", () => {
    const night = dayClock(nightDay(), { width: 900 });
    expect(night.title).toBe("Camera A rolled from 14:22 to 16:43, camera B rolled from 23:58 to 02:11+1");
    expect(wordsOf(night)).toEqual(expect.arrayContaining(["wrap 02:30+1", "meal from 01:00+1", "00:00+1"]));
    const rolls = pathsOf(night, "k-roll").map((p) => p.points[0]![0]);
    expect(rolls.at(-1)).toBeGreaterThan(rolls.at(-2)!);
  });

  test("draws a lens only from roll to roll", () => {
    const boxes = dayClock(nightDay(), { width: 900 }).items.filter((i) => i.type === "rect" && i.k === "k-box");
    expect(boxes).toHaveLength(4);
  });

  test.each([480, 760, 1216])("keeps its texts inside and apart at %i", (width) => {
    for (const day of [exampleDaySummary(), nightDay()]) {
      const drawing = dayClock(day, { width });
      expect(clipped(drawing)).toEqual([]);
      expect(overlapping(drawing)).toEqual([]);
    }
  });

  test("says so when nothing of the day has a time", () => {
    const day = exampleDaySummary();
    const record = { ...day.day.record, call: null, firstShot: null, meals: [], firstAfterMeal: null, wrap: null };
    expect(dayClock({ ...day, takes: [], day: { ...day.day, record } }, { width: 900 }).title).toBe(
      "No hours and no timecode recorded",
    );
  });
});
