import { describe, expect, test } from "vitest";
import { ROW_GUTTER, rowRibbon, rowTimeScale } from "../../src/chart/ribbon/row-ribbon.ts";
import { stopDots } from "../../src/chart/stop-dots.ts";
import { svg } from "../../src/chart/svg.ts";
import { exampleDaySummary, exampleTake } from "../fixtures/day-summary.ts";
import { clipped, overlapping, pathsOf, wordsOf } from "./reading.ts";

const ROW = { pixelsPerSecond: 4.2, height: 57, firstRow: false, distances: "metric" } as const;

describe("the ribbon of a row", () => {
  test("has 54 pixels a dioptre, infinity on top, at a height of 57", () => {
    // 3.2 m is 0.3125 and 1.5 m 0.6667 dioptre: 16.9 and 36 pixels under the line of infinity at 8.
    const ys = pathsOf(rowRibbon(exampleTake("a-12-1"), ROW), "k-focus").flatMap((p) => p.points.map(([, y]) => y));
    expect(Math.min(...ys)).toBeCloseTo(8 + 54 / 3.2, 0);
    expect(Math.max(...ys)).toBeCloseTo(8 + 54 / 1.5, 0);
  });

  test("is as wide as the take is long: all rows share one width a second", () => {
    const xs = pathsOf(rowRibbon(exampleTake("a-12-1"), ROW), "k-focus").flatMap((p) => p.points.map(([x]) => x));
    // 312 frames at 24 are 13 s.
    expect(Math.max(...xs)).toBeCloseTo(ROW_GUTTER + 13 * 4.2, 1);
  });

  test("marks and names what comes nearer than the scale, on the floor", () => {
    const drawing = rowRibbon(exampleTake("a-12a-1"), ROW);
    expect(wordsOf(drawing)).toContain("to 0.69 m");
    expect(pathsOf(drawing, "k-off")).toHaveLength(1);
    const ys = pathsOf(drawing, "k-focus").flatMap((p) => p.points.map(([, y]) => y));
    expect(Math.max(...ys)).toBe(53);
    expect(pathsOf(rowRibbon(exampleTake(), ROW), "k-off")).toEqual([]);
  });

  test("keeps within a pixel of the log, on a coarser grid than the take sheet", () => {
    const take = exampleTake("a-12-1");
    const values = take.perFrame?.focusDioptres ?? new Float64Array(0);
    const segments = pathsOf(rowRibbon(take, ROW), "k-focus").flatMap(({ points }) =>
      points.slice(1).map((to, i) => [points[i] ?? to, to] as const),
    );
    const away = (x: number, y: number) =>
      Math.min(
        ...segments.map(([[x1, y1], [x2, y2]]) => {
          const length = (x2 - x1) ** 2 + (y2 - y1) ** 2;
          const along = length === 0 ? 0 : ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length;
          const share = Math.min(1, Math.max(0, along));
          return Math.hypot(x - x1 - share * (x2 - x1), y - y1 - share * (y2 - y1));
        }),
      );
    const logged = [...values].flatMap((value, frame) => (Number.isNaN(value) ? [] : [{ value, frame }]));
    expect(logged.length).toBeGreaterThan(250);
    for (const { value, frame } of logged) {
      // half a pixel of thinning, and a quarter of the grid along both axes: 0.5 + 0.25 x root 2
      const off = away(ROW_GUTTER + (frame * 13 * 4.2) / 312, 8 + 54 * value);
      expect(off, `frame ${frame}`).toBeLessThan(0.86);
    }
  });

  test("shows a gap as two upright lines that nothing crosses", () => {
    const drawing = rowRibbon(exampleTake(), ROW);
    const [left, right, ...more] = pathsOf(drawing, "k-gap").map((p) => p.points[0]?.[0] ?? 0);
    expect(more).toEqual([]);
    expect(right! - left!).toBeGreaterThanOrEqual(2.9);
    const lines = pathsOf(drawing, "k-focus");
    expect(lines).toHaveLength(2);
    expect(lines[0]!.points.at(-1)![0]).toBeLessThanOrEqual(left! + 0.1);
    expect(lines[1]!.points[0]![0]).toBeGreaterThanOrEqual(right! - 0.2);
  });

  test("has dotted lines for noted distances and nothing for a take without extent", () => {
    expect(pathsOf(rowRibbon(exampleTake("b-12-2"), ROW), "k-noted")).toHaveLength(2);
    expect(rowRibbon(exampleTake("a-15-1"), ROW).items).toEqual([]);
  });

  test("draws a band too thin to see at a least height, with its depth beside it", () => {
    const base = exampleTake("a-12-2");
    const figures = base.perFrame!;
    // a tenth of a dioptre's hundredth to either side: 0.002 x 54 pixels a dioptre is a tenth of a pixel
    const near = figures.focusDioptres.map((d) => d + 0.001);
    const far = figures.focusDioptres.map((d) => Math.max(0, d - 0.001));
    const shallowest = { ...base.depthOfField!.shallowest!, totalM: 0.12 };
    const thin = {
      ...base,
      perFrame: { ...figures, nearDioptres: near, farDioptres: far },
      depthOfField: { ...base.depthOfField!, shallowest },
    };
    const drawing = rowRibbon(thin, ROW);
    expect(pathsOf(drawing, "k-band-least").length).toBeGreaterThan(0);
    expect(wordsOf(drawing)).toEqual(["0.12 m deep"]);
    expect(clipped(drawing)).toEqual([]);
    // no room beside it: the figure is left to the take sheet
    expect(wordsOf(rowRibbon(thin, { ...ROW, width: 200 }))).toEqual([]);
    expect(pathsOf(rowRibbon(base, ROW), "k-band-least")).toEqual([]);
  });

  test("labels its grid on the first row of a slate only, in metres or in feet", () => {
    expect(wordsOf(rowRibbon(exampleTake(), { ...ROW, firstRow: true }))).toEqual(["∞", "3", "1.5"]);
    expect(wordsOf(rowRibbon(exampleTake(), { ...ROW, firstRow: true, distances: "imperial" }))).toEqual(["∞", "10'", "5'"]);
    expect(wordsOf(rowRibbon(exampleTake(), ROW))).toEqual([]);
  });

  test("stays inside its box and small", () => {
    for (const take of exampleDaySummary().takes) {
      for (const height of [30, 57]) {
        const drawing = rowRibbon(take, { ...ROW, height, firstRow: true });
        expect(clipped(drawing)).toEqual([]);
        expect(overlapping(drawing)).toEqual([]);
        expect(svg(drawing, { idPrefix: "r", decorative: true }).length).toBeLessThan(2500);
      }
    }
  });

  test("stands under a time scale of the same width a second", () => {
    const scale = rowTimeScale({ pixelsPerSecond: 4.2, seconds: 90 });
    expect(wordsOf(scale)).toEqual(["0", "0:15", "0:30", "0:45", "1:00", "1:15", "1:30"]);
    expect(clipped(scale)).toEqual([]);
  });
});

describe("stop dots", () => {
  const stop = (widest: number, deepest: number) =>
    exampleTake("a-12-2", { tStop: { widest, deepest, typical: null, rangeStops: 0, source: "logged" } });
  const dots = (widest: number, deepest: number) =>
    stopDots(stop(widest, deepest)).items.flatMap((i) => (i.type === "circle" ? [i.x] : []));

  test("stand a whole stop apart for a whole stop", () => {
    const [t4, t56] = dots(4, 4 * Math.SQRT2);
    expect(t56! - t4!).toBeCloseTo(11.2, 6);
    expect(dots(4, 4)).toHaveLength(1);
  });

  test("become a triangle at the end of the scale that a stop leaves", () => {
    const drawing = stopDots(stop(2, 11.31));
    expect(pathsOf(drawing, "k-stop-off")).toHaveLength(1);
    expect(drawing.items.filter((i) => i.type === "circle")).toHaveLength(1);
  });

  test("leave the bare scale without a stop, and say so", () => {
    const drawing = stopDots(exampleTake("a-12a-1"));
    expect(drawing.title).toBe("No stop logged or noted");
    expect(drawing.items.some((i) => i.type === "circle")).toBe(false);
  });
});
