import { describe, expect, it } from "vitest";
import { lensLookDrawing } from "../../src/chart/look/lens-look.ts";
import { shadingRings } from "../../src/chart/look/shading-rings.ts";
import { visibleRuns } from "../../src/chart/ribbon/visible-runs.ts";
import { svg } from "../../src/chart/svg.ts";
import { completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { lookOnArea } from "../../src/still/middle-look.ts";
import { clipped, overlapping, pathsOf, wordsOf } from "./reading.ts";

const AREA = { widthMm: 28.8, heightMm: 16.2 };
/** 1 - 0.0029289 r^2 is 0.70711, half a stop, at 10 mm. */
const SHADING = { b1: -0.0029289, b2: 0, b3: 0, centreXMm: 0, centreYMm: 0, squeeze: 1 };
const barrel = completeCanonical("brown-conrady", { k1: 2e-4 }, { direction: "undistort" });
const look = lookOnArea(AREA, 1, barrel, SHADING)!;
const recorded = lensLookDrawing(look, { width: 680, side: "recorded" });
const ideal = lensLookDrawing(look, { width: 680, side: "ideal" });

describe("rings of equal shading", () => {
  it("stand where the brightness is so many stops down", () => {
    // 16.52 mm to the corner: 1 - 0.0029289 x 272.97 is 0.2005, 2.32 stops; steps of 0.25 would be nine rings
    const rings = shadingRings(SHADING, Math.hypot(14.4, 8.1));
    expect(rings.map((ring) => ring.stops)).toEqual([-0.5, -1, -1.5, -2]);
    expect(rings[0]?.radiusMm).toBeCloseTo(10, 1);
    // one stop: r^2 = 0.5 / 0.0029289
    expect(rings[1]?.radiusMm).toBeCloseTo(Math.sqrt(0.5 / 0.0029289), 1);
  });

  it("are none where the shading is less than the smallest step", () => {
    expect(shadingRings({ ...SHADING, b1: -1e-5 }, 16)).toEqual([]);
  });

  it("come twice where the brightness turns round", () => {
    // 1 - 0.01 r^2 + 0.0001 r^4 falls to 0.75 at r = 7.07 and is 1 again at 10
    const rings = shadingRings({ ...SHADING, b1: -0.01, b2: 0.0001 }, 10);
    expect(rings.filter((ring) => Math.abs(ring.stops + 0.2) < 1e-9)).toHaveLength(2);
  });
});

describe("parts of a curve that are seen", () => {
  it("are cut where the curve leaves, between two samples", () => {
    const runs = visibleRuns((share) => (share > 0.26 && share < 0.71 ? { xMm: share, yMm: 0 } : null), 10);
    expect(runs).toHaveLength(1);
    expect(runs[0]?.[0]?.xMm).toBeCloseTo(0.26, 3);
    expect(runs[0]?.at(-1)?.xMm).toBeCloseTo(0.71, 3);
  });
});

describe("lens look as recorded", () => {
  it("says in its title how lines bend and how much darker the corner is", () => {
    // 272.97 x 0.0002 = 0.0546: the ideal corner is 5.46 % further out, the recorded one 5.18 % nearer
    expect(recorded.title.replaceAll(/[\u00a0\u202f]/g, " ")).toBe(
      "Straight lines bow outward, \u22125.18 % at the corner; the corner is 2.32 stops darker than the centre",
    );
  });

  it("draws the grid bent inside the frame and the true one straight", () => {
    const frame = pathsOf(recorded, "k-plate-edge")[0]?.points ?? [];
    const xs = frame.map(([x]) => x);
    const ys = frame.map(([, y]) => y);
    const lines = pathsOf(recorded, "k-plate-grid");
    for (const [x, y] of lines.flatMap((line) => line.points)) {
      expect(x).toBeGreaterThanOrEqual(Math.min(...xs) - 0.2);
      expect(x).toBeLessThanOrEqual(Math.max(...xs) + 0.2);
      expect(y).toBeGreaterThanOrEqual(Math.min(...ys) - 0.2);
      expect(y).toBeLessThanOrEqual(Math.max(...ys) + 0.2);
    }
    // an upright line on the left bows to the left in the middle: barrel
    const left = lines[0]?.points ?? [];
    const middle = left[Math.floor(left.length / 2)]?.[0] ?? 0;
    expect(middle).toBeLessThan(left[0]?.[0] ?? 0);
    for (const line of pathsOf(recorded, "k-plate-true")) expect(line.points).toHaveLength(2);
  });

  it("labels the rings with their stops; a ring that only crosses a corner is left to the caption", () => {
    const labels = wordsOf(recorded).filter((words) => words.startsWith("\u2212"));
    expect(labels).toEqual(["\u22120.50", "\u22121.00", "\u22121.50"]);
    expect(overlapping(recorded)).toEqual([]);
    expect(clipped(recorded)).toEqual([]);
  });
});

describe("lens look taken off", () => {
  it("has straight lines of two points and an outline further out than the recorded frame", () => {
    for (const line of pathsOf(ideal, "k-plate-grid")) expect(line.points).toHaveLength(2);
    const width = (k: "k-plate-edge" | "k-plate-frame") => {
      const xs = pathsOf(ideal, k).flatMap((p) => p.points.map(([x]) => x));
      return Math.max(...xs) - Math.min(...xs);
    };
    // the corners go out by 5.46 %
    expect(width("k-plate-edge") / width("k-plate-frame")).toBeCloseTo(1.0546, 3);
  });

  it("keeps the recorded frame where it was, so that the two lie over each other", () => {
    expect(pathsOf(ideal, "k-plate-frame")).toEqual(pathsOf(recorded, "k-plate-edge"));
    expect([ideal.width, ideal.height]).toEqual([recorded.width, recorded.height]);
  });
});

describe("pictures under the drawing", () => {
  it("fill their slots by class, and a slot without one stays empty", () => {
    const both = svg(recorded, { idPrefix: "x", pictures: { shaded: "a b&.png", unshaded: "off.png" } });
    expect(both.match(/<image [^>]*>/g)).toEqual([
      expect.stringContaining('class="shaded" href="a b&amp;.png"'),
      expect.stringContaining('class="unshaded" href="off.png"'),
    ]);
    expect(svg(recorded, { idPrefix: "x" })).not.toContain("<image");
  });

  it("lie at the frame as recorded, and at all that the picture fills when it is off", () => {
    const rooms = (drawing: typeof recorded) => drawing.items.filter((item) => item.type === "picture");
    expect(rooms(recorded)[0]?.width).toBeLessThan(rooms(ideal)[0]?.width ?? 0);
    expect(rooms(ideal)[0]).toMatchObject({ x: 12, width: 680 - 24 });
  });
});

describe("a look without distortion", () => {
  it("has rings and no grid", () => {
    const drawing = lensLookDrawing(lookOnArea(AREA, 1, null, SHADING)!, { width: 680, side: "recorded" });
    expect(pathsOf(drawing, "k-plate-grid")).toEqual([]);
    expect(pathsOf(drawing, "k-plate-ring").length).toBeGreaterThan(0);
    expect(drawing.title).toMatch(/^Shading: the corner is 2\.32/);
  });
});
