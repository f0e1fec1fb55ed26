import { describe, expect, test } from "vitest";
import { bar, coordinate, polyline, segment } from "../../src/chart/path.ts";
import { gapHatching, gapSpans } from "../../src/chart/ribbon/gaps.ts";
import { TOLERANCE, thin, trace } from "../../src/chart/series.ts";
import { readPath } from "./reading.ts";

describe("path data", () => {
  test("is relative, on a grid of a tenth, with the shortest command", () => {
    expect(polyline([10, 20.04, 20.04, 30], [5, 5, 7.26, 6])).toBe("M10 5h10v2.3l10-1.3");
    expect(polyline([0, 10, 10, 0], [0, 0, 10, 10], true)).toBe("M0 0h10v10h-10z");
    expect(segment(0.5, 1, 0.5, 9)).toBe("M.5 1v8");
    expect(coordinate(-0.04)).toBe("0");
    expect(coordinate(-0.5)).toBe("-.5");
  });

  test("does not drift: every point is within half a tenth of where it belongs", () => {
    const xs = Array.from({ length: 500 }, (_, i) => i * 1.37);
    const ys = xs.map((x) => 100 + 40 * Math.sin(x / 9));
    const [line] = readPath(polyline(xs, ys));
    line?.points.forEach(([x, y], i) => {
      expect(Math.abs(x - xs[i]!)).toBeLessThan(0.0501);
      expect(Math.abs(y - ys[i]!)).toBeLessThan(0.0501);
    });
    expect(line?.points).toHaveLength(500);
  });

  test("keeps a box visible that is narrower than a tenth", () => {
    expect(bar(3, 4, 0.01, 6)).toBe("M3 4h.1v6h-.1z");
  });
});

describe("a decimated line", () => {
  test("keeps the smallest and the largest value of its run", () => {
    const values = Float64Array.from(
      { length: 40_000 },
      (_, i) => 50 + 5 * Math.sin(i / 900) + (i === 17_123 ? 30 : 0) - (i === 31_007 ? 40 : 0),
    );
    const line = trace(
      values,
      { first: 0, last: values.length - 1 },
      (f) => f / 40,
      (v) => v,
    );
    expect(Math.max(...line.ys)).toBe(Math.max(...values));
    expect(Math.min(...line.ys)).toBe(Math.min(...values));
    expect(line.xs.length).toBeLessThan(400);
  });

  test("stays within its tolerance of the full line", () => {
    const values = Float64Array.from({ length: 754 }, (_, i) => 100 + 60 * Math.sin(i / 60));
    const x = (f: number) => f * 1.4;
    const line = trace(values, { first: 0, last: 753 }, x, (v) => v);
    let k = 0;
    values.forEach((value, i) => {
      while (k + 2 < line.xs.length && line.xs[k + 1]! < x(i)) k++;
      const part = (x(i) - line.xs[k]!) / (line.xs[k + 1]! - line.xs[k]!);
      expect(Math.abs(line.ys[k]! + part * (line.ys[k + 1]! - line.ys[k]!) - value)).toBeLessThanOrEqual(TOLERANCE + 1e-9);
    });
  });

  test("of a log too noisy for few points leaves the full one by 1.4 pixels and no more", () => {
    // up and down by 1.9 pixels: a line along the tops would leave the bottoms by that
    const values = Float64Array.from({ length: 600 }, (_, i) => (i % 2 === 0 ? 0 : 1.9));
    const line = trace(
      values,
      { first: 0, last: 599 },
      (f) => f,
      (v) => v,
    );
    expect(line.xs.length).toBeGreaterThan(590);
  });

  test("is straight where the values are, however many frames fall on a pixel", () => {
    const values = Float64Array.from({ length: 1001 }, (_, i) => i / 4);
    const line = trace(
      values,
      { first: 0, last: 1000 },
      (f) => f / 5,
      (v) => v,
    );
    // the last frame's value is held to its end
    expect(line.xs.slice(0, 1).concat(line.xs.slice(-2))).toEqual([0, 200, 200.2]);
    expect(line.xs.length).toBeLessThanOrEqual(4);
  });

  test("holds the last value to the end of its frame, so that one logged frame still shows", () => {
    const line = trace(
      Float64Array.of(7),
      { first: 0, last: 0 },
      (f) => 10 + 2 * f,
      (v) => v,
    );
    expect(line).toEqual({ xs: [10, 12], ys: [7, 7] });
  });

  test("has only its ends and extremes left where it is straight", () => {
    const points = { xs: [0, 1, 2, 3, 4], ys: [0, 1, 2, 3, 4] };
    expect(thin(points, 0.1)).toEqual({ xs: [0, 4], ys: [0, 4] });
  });
});

describe("gaps", () => {
  test("are at least three pixels wide and keep their count", () => {
    const [span] = gapSpans([{ first: 100, last: 100 }], (f) => f * 0.5);
    expect(span).toEqual({ left: 48.75, right: 51.75, frames: 1 });
  });

  test("are counted together where less than three pixels of data part them", () => {
    const spans = gapSpans(
      [
        { first: 10, last: 19 },
        { first: 21, last: 30 },
        { first: 60, last: 69 },
      ],
      (f) => f,
    );
    expect(spans.map((s) => s.frames)).toEqual([20, 10]);
  });

  test("are hatched inside their box only", () => {
    const points = readPath(gapHatching({ left: 20, right: 44, frames: 17 }, 74, 398)).flatMap((p) => p.points);
    expect(points.length).toBeGreaterThan(40);
    for (const [x, y] of points) {
      expect(x).toBeGreaterThanOrEqual(20);
      expect(x).toBeLessThanOrEqual(44);
      expect(y).toBeGreaterThanOrEqual(74);
      expect(y).toBeLessThanOrEqual(398);
    }
  });
});
