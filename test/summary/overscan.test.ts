import { describe, expect, it } from "vitest";
import { completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { overscanOf } from "../../src/optics/distortion/overscan.ts";
import { edgeBox } from "../../src/summary/overscan.ts";
import { lensTake } from "./lens-show.ts";

/** Half sides 12.445 and 9.33 mm, 100 px a mm; x' = x (1 + k1 r^2), r^2 = 241.927 in the corner, 154.878 at the side, 87.049 at the top. */
function take(k1: string, more: { readonly direction?: string; readonly mode?: string } = {}) {
  return lensTake({
    keys: ["model: brown-conrady", `direction: ${more.direction ?? "undistort"}`, "radius: mm"],
    table: { header: "focal_mm,focus_m,k1", rows: [`50,inf,${k1}`] },
    frames: 24,
    cells: () => "3.000,2.8",
    ...(more.mode === undefined ? {} : { mode: more.mode }),
  });
}

describe("a take's overscan", () => {
  it("holds the whole recorded frame once the distortion is taken off", () => {
    // corner 1 + 1e-4 x 241.927 = 1.0241927: 1274.61 px of 1244.5 from the middle, 955.57 of 933: 31 and 23 more a side
    const found = take("0.0001").overscan?.undistort;
    expect(found).toMatchObject({ widthPx: 2489 + 2 * 31, heightPx: 1866 + 2 * 23 });
    expect(found?.percent).toBeCloseTo(2.41927, 4);
    expect(found?.box.leftPx).toBeCloseTo(1244.5 - 1274.608, 2);
    expect(found?.box.bottomPx).toBeCloseTo(933 + 955.572, 2);
  });

  it("looks at the whole edge: where the corners shrink most the middle of the side is the extreme", () => {
    // side 1 - 1e-4 x 154.878 = 0.9845122: 1225.225 px from the middle, 19 fewer; top 0.9912951: 924.878 px, 8 fewer
    const found = take("-0.0001").overscan?.undistort;
    expect(found).toMatchObject({ widthPx: 2489 - 2 * 19, heightPx: 1866 - 2 * 8 });
    expect(found?.percent).toBeCloseTo(-0.87049, 4);
  });

  it("has the other direction by the same numbers from a table that distorts", () => {
    const found = take("0.0001", { direction: "distort" }).overscan;
    expect(found?.redistort).toMatchObject({ widthPx: 2551, heightPx: 1912 });
    expect(found?.undistort?.widthPx).toBeLessThan(2489);
  });

  it("is the largest over the take's lens states", () => {
    // k1 1e-4 at infinity and 2e-4 at 1 m, where the corner is at 1.0483854: 1304.72 and 978.14 px, 61 and 46 more
    const found = lensTake({
      table: { header: "focal_mm,focus_m,k1", rows: ["50,inf,0.0001", "50,1,0.0002"] },
      frames: 48,
      cells: (i) => `${i < 20 ? "inf" : (1 / Math.min(1, (i - 19) / 24)).toFixed(6)},2.8`,
    });
    expect(found.overscan?.undistort).toMatchObject({ widthPx: 2489 + 2 * 61, heightPx: 1866 + 2 * 46 });
    expect(found.overscanReason).toBeNull();
  });

  it("has a box that need not lie about the middle, and a canvas that does", () => {
    // a centre 1 mm to the right: the left edge is further from it and grows most
    const d = completeCanonical("brown-conrady", { k1: 1e-4 }, { direction: "undistort", centreXMm: 1 });
    const box = edgeBox(d, { activeWidthMm: 24.89, activeHeightMm: 18.66 }, "ideal");
    // corner left: (13.445^2 + 9.33^2) 1e-4 = 0.0267817, x 1 - 13.445 x 1.0267817; right: 11.445^2 + 9.33^2 -> 1.0218037
    expect(box?.[0]).toBeCloseTo(1 - 13.445 * 1.0267817, 5);
    expect(box?.[2]).toBeCloseTo(1 + 11.445 * 1.0218037, 5);
    const area = { widthMm: 24.89, heightMm: 18.66 };
    expect(-(box?.[0] ?? 0) / 12.445).toBeCloseTo(overscanOf(d, area, "ideal") ?? 0, 12);
  });

  it("holds states that reach out to different sides", () => {
    // the centre moves from 1 mm right at infinity to 1 mm left at 1 m: each side is 13.445 x 1.0267817 - 1 = 12.80508 mm out once
    const found = lensTake({
      table: { header: "focal_mm,focus_m,k1,cx_mm", rows: ["50,inf,0.0001,1", "50,1,0.0001,-1"] },
      frames: 48,
      cells: (i) => `${i < 12 ? "2.000" : i < 24 ? "inf" : "1.000"},2.8`,
    }).overscan?.undistort;
    expect(found?.box.leftPx).toBeCloseTo(1244.5 - 1280.508, 2);
    expect(found?.box.rightPx).toBeCloseTo(1244.5 + 1280.508, 2);
  });

  it("says why there is none, or none in one direction", () => {
    // slope 1 - 0.03 r^2 is gone at r 5.77 mm, inside the frame
    expect(take("-0.01")).toMatchObject({
      overscan: null,
      overscanReason: "the coefficients are not defined out to the corner of this sensor mode",
    });
    // slope 1 - 0.0039 r^2 reaches 16.01 mm, past the corner at 15.55; but no ideal point lies beyond 2/3 of 16.01 = 10.67 mm
    const oneWay = take("-0.0013");
    expect(oneWay.overscan?.undistort).not.toBeNull();
    expect(oneWay.overscan?.redistort).toBeNull();
    expect(oneWay.overscanReason).toBe("the distortion is not defined along the whole edge of the frame");
    expect(take("0.0001", { mode: "UNSAID" }).overscanReason).toBe("the kit does not say the recorded resolution");
    const table = { header: "focal_mm,focus_m,k1", rows: ["50,inf,0.0001"] };
    const some = lensTake({ table, frames: 24, cells: (i) => `${i < 12 ? "3.000" : ""},2.8` });
    expect(some.overscan?.undistort?.widthPx).toBe(2551);
    expect(some.overscanReason).toBe("without some frames: the focus distance is not logged");
    expect(lensTake({ frames: 24, cells: () => "3.000,2.8" }).overscanReason).toBe("lens P50 has no calibration table");
  });
});
