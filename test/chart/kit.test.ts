import { describe, expect, it } from "vitest";
import type { Drawing } from "../../src/chart/drawing.ts";
import { frontsDrawing } from "../../src/chart/kit/kit-fronts.ts";
import { massDrawing } from "../../src/chart/kit/kit-mass.ts";
import { widestStopsDrawing } from "../../src/chart/kit/kit-widest.ts";
import { clipped, overlapping, wordsOf } from "./reading.ts";

const plain = (text: string) => text.replaceAll(/[\u00a0\u2009\u202f]/g, " ");
const circles = (drawing: Drawing | null, k: string) =>
  (drawing?.items ?? []).flatMap((item) => (item.type === "circle" && item.k === k ? [item] : []));

const STOPS = [
  { name: "P21", kind: "prime", widestT: Math.SQRT2 },
  { name: "P35", kind: "prime", widestT: Math.SQRT2 },
  { name: "P100", kind: "prime", widestT: 2 },
  { name: "Z28", kind: "zoom", widestT: 2 * Math.SQRT2 },
] as const;

describe("widest stops", () => {
  const drawing = widestStopsDrawing(STOPS, 820)!;

  it("lie on a scale where a stop is as wide everywhere", () => {
    const xs = circles(drawing, "k-stop-dot").map((dot) => dot.x);
    expect(xs[0]).toBeCloseTo(xs[1] ?? 0, 6);
    // T1.4, T2, T2.8: a stop each
    expect((xs[3] ?? 0) - (xs[2] ?? 0)).toBeCloseTo((xs[2] ?? 0) - (xs[0] ?? 0), 6);
  });

  it("say how far each is from the middle of the primes, and what the set can hold", () => {
    const words = wordsOf(drawing).map(plain);
    // the lower middle of T1.4, T1.4 and T2 is T1.4; T2.8 is two stops from it
    expect(words).toContain("+1 stop");
    expect(words).toContain("+2 stops, zoom");
    expect(plain(drawing.title)).toBe("Widest stops T1.4 to T2.8, 2 stops apart: the set can hold T2.8");
    // (2 / 1.414)^2 and (2.828 / 1.414)^2
    expect(words).toContain("1 stop, light ratio 2.00 to 1, 3 primes");
    expect(words).toContain("2 stops, light ratio 4.00 to 1, all lenses");
  });

  it("have no label on another and none outside", () => {
    expect(overlapping(drawing)).toEqual([]);
    expect(clipped(drawing)).toEqual([]);
  });

  it("are drawn for one lens, and not for none", () => {
    expect(widestStopsDrawing(STOPS.slice(0, 1), 820)?.title).toBe("Every lens opens to T1.4");
    expect(widestStopsDrawing([], 820)).toBeNull();
  });
});

describe("front diameters", () => {
  const lenses = [
    { name: "P21", frontMm: 114 },
    { name: "P35", frontMm: 95 },
    { name: "P50", frontMm: 95 },
  ];

  it("are drawn to one scale on one ground, with the commonest dotted in the others", () => {
    const drawing = frontsDrawing(lenses, 820)!;
    const [large, small] = circles(drawing, "k-box");
    expect((large?.r ?? 0) / (small?.r ?? 1)).toBeCloseTo(114 / 95, 6);
    expect((large?.y ?? 0) + (large?.r ?? 0)).toBeCloseTo((small?.y ?? 0) + (small?.r ?? 0), 6);
    expect(circles(drawing, "k-lead").map((c) => c.r)).toEqual([small?.r]);
    expect(plain(drawing.title)).toBe("2 front diameters: 95 mm on 2 lenses and 114 mm on 1 lens");
  });

  it("go on in a second row where the first is full, and stay inside", () => {
    const many = Array.from({ length: 20 }, (_, i) => ({ name: `L${i}`, frontMm: 95 }));
    const drawing = frontsDrawing(many, 400)!;
    expect(new Set(circles(drawing, "k-box").map((c) => Math.round(c.y))).size).toBeGreaterThan(1);
    expect(clipped(drawing)).toEqual([]);
    expect(overlapping(drawing)).toEqual([]);
    expect(plain(drawing.title)).toBe("One front diameter, 95 mm");
  });
});

describe("masses", () => {
  const drawing = massDrawing(
    [
      { name: "Z28", massG: 2650 },
      { name: "P50", massG: 1090 },
      { name: "P35", massG: 1120 },
      { name: "P36", massG: 1120 },
    ],
    820,
  )!;

  it("stand lightest first, each with its step from the one before", () => {
    const words = wordsOf(drawing).map(plain);
    expect(words.filter((w) => /^[PZ]\d+$/.test(w))).toEqual(["P50", "P35", "P36", "Z28"]);
    expect(words).toContain("+30 g on P50");
    expect(words).toContain("as P35");
    expect(words).toContain("+1 530 g on P36");
    expect(plain(drawing.title)).toBe("From 1 090 g (P50) to 2 650 g (Z28)");
  });

  it("begin at nothing: lengths are in the ratio of the masses", () => {
    const lines = drawing.items.flatMap((item) => (item.type === "line" && item.k === "k-focal" ? [item.x2 - item.x1] : []));
    expect((lines[3] ?? 0) / (lines[0] ?? 1)).toBeCloseTo(2650 / 1090, 6);
  });

  it("have no label on another and none outside", () => {
    expect(overlapping(drawing)).toEqual([]);
    expect(clipped(drawing)).toEqual([]);
  });
});
