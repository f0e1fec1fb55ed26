import { describe, expect, it } from "vitest";
import { distortionMultiples } from "../../src/chart/kit/distortion-multiples.ts";
import { type FocusCurvesOptions, focusCurvesDrawing } from "../../src/chart/kit/focus-curves.ts";
import { focusStopMap } from "../../src/chart/kit/focus-stop-map.ts";
import { roundTicks, spread } from "../../src/chart/value-axis.ts";
import type { FocusCurve } from "../../src/summary/lens-curves.ts";
import type { LensMap } from "../../src/summary/lens-map.ts";
import { clipped, overlapping, pathsOf, textsOf, wordsOf } from "./reading.ts";

describe("an axis of values", () => {
  it("has round ticks that hold the range, zero among them", () => {
    expect(roundTicks(-3.4, 0.8, 5)).toEqual([-4, -3, -2, -1, 0, 1]);
    expect(roundTicks(-0.66, 0, 5)).toEqual([-0.8, -0.6, -0.4, -0.2, 0]);
    expect(roundTicks(0, 0, 5).length).toBeGreaterThan(1);
  });
  it("moves labels apart and keeps their order", () => {
    expect(spread([50, 50, 10], 14, 0, 100)).toEqual([50, 64, 10]);
    // no room below: the last stands on the floor, the one above it makes room
    expect(spread([95, 99], 14, 0, 100)).toEqual([86, 100]);
  });
});

const curve = (focalMm: number, ...values: readonly number[]): FocusCurve => ({
  focalMm,
  tStop: null,
  points: values.map((value, i) => ({ focusDioptres: i, value })),
});
const OPTIONS: FocusCurvesOptions = {
  ...{ width: 390, height: 236, distances: "metric", role: "ink", unit: "%", title: "Distortion", description: "over focus" },
  label: (c) => `${c.focalMm} mm`,
};

describe("figures over focus", () => {
  const drawing = focusCurvesDrawing([curve(28, -3, -3.5, -4), curve(50, -1, -1, -1), curve(80, -1, -1, -1)], OPTIONS)!;

  it("stand on a scale where equal widths are equal amounts of focus, infinity on the left", () => {
    // at 0, 1 and 2 dioptres
    const [first] = pathsOf(drawing, "k-focal");
    const xs = first?.points.map(([x]) => x) ?? [];
    expect(xs[0]).toBe(52);
    expect((xs[2] ?? 0) - (xs[1] ?? 0)).toBeCloseTo((xs[1] ?? 0) - (xs[0] ?? 0), 0);
  });
  it("differ by dash and end label, not by hue", () => {
    for (const k of ["k-focal", "k-line-dash", "k-line-dot"] as const) expect(pathsOf(drawing, k)).toHaveLength(1);
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["28 mm", "50 mm", "80 mm"]));
  });
  it("have no label on another and none outside, with alike lines too", () => {
    expect(overlapping(drawing)).toEqual([]);
    expect(clipped(drawing)).toEqual([]);
  });
  it("are plum for light", () => {
    const light = focusCurvesDrawing([curve(50, -1, -1.1)], { ...OPTIONS, role: "light" })!;
    expect(pathsOf(light, "k-stop")).toHaveLength(1);
    expect(pathsOf(light, "k-focal")).toHaveLength(0);
  });
  it("are not drawn without a line", () => {
    expect(focusCurvesDrawing([], OPTIONS)).toBeNull();
  });
});

const MAP: LensMap = {
  // 2.5 m to 2 m at T2.8 and T3.2 (9 and 10 thirds), infinity at T2.8
  cells: [
    { band: 0, thirds: 9, frames: 24, outside: false },
    { band: 7, thirds: 9, frames: 24 * 30, outside: false },
    { band: 7, thirds: 10, frames: 24 * 90, outside: true },
  ],
  ...{ frames: 24 * 121, framesUnknown: 0, closeFocusDioptres: 2, widestStops: 2 },
  calibrated: {
    ...{ farDioptres: 0, nearDioptres: 2, stops: { from: 2, to: 3 } },
    points: [
      { focusDioptres: 0, stops: 2 },
      { focusDioptres: 2, stops: 3 },
    ],
  },
};

describe("focus and stop used", () => {
  const drawing = focusStopMap(MAP, { width: 620, height: 340, distances: "metric", framesPerSecond: 24 });
  const width = (points: readonly (readonly [number, number])[]) =>
    Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x));

  it("are boxes a third of a stop wide, the outside ones dashed", () => {
    const used = pathsOf(drawing, "k-used");
    expect(used).toHaveLength(2);
    expect(pathsOf(drawing, "k-outside")).toHaveLength(1);
    const ticks = pathsOf(drawing, "k-bar").map((b) => width(b.points));
    for (const box of used) expect(width(box.points)).toBeCloseTo(ticks[0] ?? 0, 0);
  });
  it("are filled by time: a second, half a minute, a minute and a half", () => {
    for (const k of ["k-used-some", "k-used-more", "k-used-most"] as const) expect(pathsOf(drawing, k)).toHaveLength(1);
  });
  it("stand against close focus, widest stop and what is calibrated, in words", () => {
    const words = wordsOf(drawing);
    for (const word of ["close focus", "0.50 m", "widest T2", "tinted: calibrated", "dashed: outside it"])
      expect(words).toContain(word);
    // whatever units the reader chooses, feet being the longer word
    for (const distances of ["imperial", "reader-metric", "reader-imperial"] as const) {
      const shown = focusStopMap(MAP, { width: 620, height: 340, distances, framesPerSecond: 24 });
      expect(wordsOf(shown)).toContain("close focus");
    }
    // 24 x 121 frames at 24 a second
    expect(drawing.title.replaceAll("\u00a0", " ")).toBe("Used for 2:01 (min:s) at T2.8 to T3.2, focus ∞ to 2.00 m");
  });
  it("have no label on another and none outside", () => {
    expect(overlapping(drawing)).toEqual([]);
    expect(clipped(drawing)).toEqual([]);
  });
  it("say so when there is nothing", () => {
    const empty: LensMap = {
      cells: [],
      frames: 0,
      framesUnknown: 0,
      closeFocusDioptres: null,
      widestStops: null,
      calibrated: null,
    };
    expect(focusStopMap(empty, { width: 620, height: 340, distances: "both", framesPerSecond: 24 }).title).toContain("Not used");
  });
});

describe("distortion of a set", () => {
  const lens = (id: string, corner: number) => ({
    ...{ lens: id, area: { widthMm: 28.8, heightMm: 16.2 } },
    curves: [0, 1].map((focusDioptres) => ({
      ...{ focalMm: 50, focusDioptres },
      points: [0, 0.5, 1].map((share) => ({ share, percent: corner * share ** 2 })),
    })),
  });
  const drawing = distortionMultiples(
    [lens("P21", -4), lens("P35", -2), lens("P50", -1), lens("P75", 0.5), lens("P100", 0.6)],
    820,
  )!;

  it("is drawn on one scale: half the distortion is half as far from zero", () => {
    const lines = pathsOf(drawing, "k-focal").map((l) => (l.points.at(-1)?.[1] ?? 0) - (l.points[0]?.[1] ?? 0));
    expect((lines[0] ?? 0) / (lines[1] ?? 1)).toBeCloseTo(2, 1);
  });
  it("goes on in a second row, with no label on another and none outside", () => {
    expect(
      new Set(
        textsOf(drawing)
          .filter((t) => /^P\d+$/.test(t.text))
          .map((t) => t.y),
      ).size,
    ).toBe(2);
    expect(overlapping(drawing)).toEqual([]);
    expect(clipped(drawing)).toEqual([]);
  });
  it("states least and most", () => {
    expect(drawing.title.replaceAll("\u00a0", " ")).toBe("Distortion at the corner from +0.50 % (P75) to −4.00 % (P21)");
    expect(distortionMultiples([], 820)).toBeNull();
  });
});
