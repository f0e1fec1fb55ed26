import { describe, expect, test } from "vitest";
import { focusRibbon } from "../../src/chart/ribbon/focus-ribbon.ts";
import { svg } from "../../src/chart/svg.ts";
import { exampleDaySummary, exampleTake } from "../fixtures/day-summary.ts";
import { LENS_75 } from "../fixtures/day-summary-kit.ts";
import { makeTake } from "../fixtures/day-summary-take.ts";
import { clipped, overlapping, pathsOf, readPath, textsOf, wordsOf } from "./reading.ts";

const METRIC = { width: 1180, distances: "metric" } as const;

/** 24 pulls of one take, holds of unequal length. */
const CROWDED = makeTake({
  ...{
    slate: "20",
    take: "1",
    camera: "A",
    clip: "A1",
    line: 2,
    tcIn: "10:00:00:00",
    frames: 1440,
    lens: LENS_75,
    stop: [2, 2.8],
    scene: "20",
  },
  holds: Array.from({ length: 24 }, (_, i) => ({
    m: 1.2 + (3 * ((i * 7) % 5)) / 4,
    ...(i > 0 ? { from: i * 60 + 8 + (i % 4) * 10 } : {}),
    until: (i + 1) * 60,
  })),
});

describe("every focus ribbon", () => {
  const takes = [...exampleDaySummary().takes, CROWDED];
  const cases = takes.flatMap((take) =>
    (["metric", "imperial", "both"] as const).flatMap((distances) =>
      [480, 760, 1180].map((width) => ({ address: take.take.address, take, distances, width })),
    ),
  );

  test.each(cases)("of $address in $distances at $width has its texts inside and none on another", ({ take, distances, width }) => {
    const drawing = focusRibbon(take, { distances, width });
    expect(clipped(drawing)).toEqual([]);
    expect(overlapping(drawing)).toEqual([]);
  });

  test("is drawn with moves, lines and closings only, inside its box", () => {
    for (const take of takes) {
      const drawing = focusRibbon(take, METRIC);
      for (const item of drawing.items) {
        if (item.type !== "path") continue;
        for (const [x, y] of readPath(item.d).flatMap((p) => p.points)) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(drawing.width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(drawing.height);
        }
      }
    }
  });

  test("of a minute of frames stays small", () => {
    expect(svg(focusRibbon(exampleTake("a-12a-1"), METRIC), { idPrefix: "r" }).length).toBeLessThan(6500);
    expect(svg(focusRibbon(exampleTake(), METRIC), { idPrefix: "r" }).length).toBeLessThan(12_000);
  });
});

describe("the focus ribbon of a take with pulls, a gap and a zoom", () => {
  const drawing = focusRibbon(exampleTake(), METRIC);
  const gapLeft = drawing.plot.left + ((drawing.plot.right - drawing.plot.left) * 334) / 754;
  const gapRight = drawing.plot.left + ((drawing.plot.right - drawing.plot.left) * 351) / 754;

  test("says in its title what was pulled and what is missing", () => {
    expect(drawing.title.replaceAll(/[\u00a0\u202f]/g, " ")).toBe(
      "Focus from 6.0 m to 1.8 m, then to infinity; four pulls; stop T4 to T5.6; focal length 35 mm to 50 mm; 17 frames not logged",
    );
  });

  test.each(["k-focus", "k-limit", "k-stop", "k-focal", "k-band", "k-stop-band"] as const)("joins no %s across the gap", (mark) => {
    const lines = pathsOf(drawing, mark);
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) {
      const xs = line.points.map(([x]) => x);
      expect(Math.max(...xs) <= gapLeft + 0.06 || Math.min(...xs) >= gapRight - 0.06).toBe(true);
    }
  });

  test("says in words how many frames the gap has, beside the hatching", () => {
    const [count, words] = textsOf(drawing).filter((t) => /frames$|not logged$/.test(t.text));
    expect(count?.text.replace("\u00a0", " ")).toBe("17 frames");
    expect(words?.text).toBe("not logged");
    expect(Math.min(Math.abs((count?.x ?? 0) - gapLeft), Math.abs((count?.x ?? 0) - gapRight))).toBeLessThan(8);
  });

  test("stands at infinity on the line of infinity, with a band that is cut flat", () => {
    const end = pathsOf(drawing, "k-focus").at(-1)?.points.at(-1);
    expect(end?.[1]).toBe(drawing.plot.infinityY);
    const band = pathsOf(drawing, "k-band").flatMap((p) => p.points.map(([, y]) => y));
    expect(Math.min(...band)).toBe(drawing.plot.infinityY);
  });

  test("draws the held distances at their dioptres", () => {
    const ys = pathsOf(drawing, "k-focus").flatMap((p) => p.points.map(([, y]) => y));
    // 1.8 m held, with a hand that moves by at most 0.003 dioptre.
    const held = drawing.plot.infinityY + drawing.plot.pixelsPerDioptre / 1.8;
    expect(Math.abs(Math.max(...ys) - held)).toBeLessThan(0.003 * drawing.plot.pixelsPerDioptre + 0.1);
  });

  test("writes the longest pulls and numbers the ones that come within 150 pixels of them", () => {
    const words = wordsOf(drawing);
    expect(words).toContain("6.0 m to 1.8 m");
    expect(words).toContain("3.4 m to ∞");
    expect(words).toContain("2.2 s, 6.2 depths");
    const starts = textsOf(drawing).filter((t) => / to /.test(t.text) && t.tone === "t-b");
    for (const a of starts) for (const b of starts) if (a !== b) expect(Math.abs(a.x - b.x)).toBeGreaterThanOrEqual(149);
    expect(starts.length + textsOf(drawing).filter((t) => t.tone === "t-fine t-b").length).toBe(4);
  });

  test("writes near and far once, and what it is sharp from at infinity", () => {
    const words = wordsOf(drawing).join("; ");
    expect(words.match(/far limit/g)).toHaveLength(1);
    expect(words.match(/near limit/g)).toHaveLength(1);
    expect(words).toMatch(/sharp from 10\.\d m outward/);
  });

  test("labels both ends of the strips", () => {
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["T4", "T5.6", "50 mm", "35 mm"]));
  });

  test("shows the cursor only when asked, with its ring on the line", () => {
    expect(drawing.items.some((i) => i.type !== "text" && i.type !== "picture" && i.k === "k-cursor")).toBe(false);
    const asked = focusRibbon(exampleTake(), { ...METRIC, cursor: 640 });
    const ring = asked.items.find((i) => i.type === "circle");
    expect(ring).toMatchObject({ k: "k-dot", y: asked.plot.infinityY });
  });
});

describe("a focus ribbon with something missing", () => {
  test("has dotted lines at the noted distances and no band where there is no log", () => {
    const drawing = focusRibbon(exampleTake("b-12-2"), METRIC);
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["noted 5.0 m", "noted 2.0 m", "No log for this clip", "T4, noted"]));
    expect(pathsOf(drawing, "k-noted")).toHaveLength(2);
    expect(pathsOf(drawing, "k-band")).toEqual([]);
    expect(pathsOf(drawing, "k-focus")).toEqual([]);
    expect(drawing.title.replaceAll("\u00a0", " ")).toBe("Focus noted from 5.0 m to 2.0 m, not logged");
  });

  test("has the line alone, and says why, where there is no stop", () => {
    const drawing = focusRibbon(exampleTake("a-12a-1"), METRIC);
    expect(wordsOf(drawing)).toContain("No stop: limits not calculated");
    expect(pathsOf(drawing, "k-band")).toEqual([]);
    expect(pathsOf(drawing, "k-stop")).toEqual([]);
    expect(pathsOf(drawing, "k-focus")).toHaveLength(1);
  });

  test("says that a stop in the notes is not one in the log", () => {
    const bare = exampleTake("a-12a-1");
    const noted = { widest: 4, deepest: 4, typical: null, rangeStops: 0, source: "noted" } as const;
    const drawing = focusRibbon({ ...bare, tStop: noted }, METRIC);
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["No stop logged: limits not calculated", "T4, noted"]));
    expect(pathsOf(drawing, "k-noted-stop")).toHaveLength(1);
    expect(drawing.title).toContain("stop T4, noted");
  });

  test("says that the length is not recorded where there is no timecode", () => {
    const drawing = focusRibbon(exampleTake("a-15-1"), METRIC);
    expect(wordsOf(drawing)).toContain("No timecode in the notes and no log: length not recorded");
  });

  test("names a hold at infinity in its title", () => {
    expect(focusRibbon(exampleTake("a-12b-1"), METRIC).title).toMatch(/^Focus at infinity throughout; no pulls/);
  });
});
