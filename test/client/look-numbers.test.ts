import { describe, expect, it } from "vitest";
import { looksOf } from "../../src/client/take/look-at.ts";
import { overscanWords, pointRows } from "../../src/client/take/look-numbers.ts";
import { openTake } from "../../src/format/take-record.ts";
import { takeRecord } from "../../src/view/take/take-data.ts";
import { lookView } from "../../src/view/take/take-look.ts";
import { lensTake } from "../summary/lens-show.ts";

const KEYS = [
  "model: brown-conrady",
  "direction: undistort",
  "radius: half-diagonal",
  "area_mm: 24.89 x 18.66",
  "shading_radius: half-diagonal",
];

/** A lens that is held, so that the take's overscan is that of each of its frames. */
const take = lensTake({
  frames: 100,
  keys: KEYS,
  table: { header: "focal_mm,focus_m,t,k1,k2,a1", rows: ["50,0.6,2.8,0.052,-0.004,0.31", "50,8,2.8,0.061,-0.006,0.22"] },
  cells: () => "2.345,2.8",
  logged: 90,
});
const record = takeRecord(take, "metric");
if (record?.look == null) throw new Error("no look");
const { look: packed } = record;
const lookAt = looksOf(packed, record.frames);
const open = openTake(record);

describe("figures of the panel", () => {
  it("read at the middle frame as the table that the builder prints", () => {
    const { rows } = lookView(take, "days/2030-02-03/takes/a-1-1.html", null).table;
    expect(pointRows(open.valuesAt(record.middle), lookAt(record.middle), packed.pixels)).toEqual(
      rows.map((row) => row.cells.map((cell) => cell.text)),
    );
  });

  it("give the overscan canvas that the builder gives", () => {
    const canvas = take.overscan?.undistort;
    if (canvas == null) throw new Error("no canvas");
    const words = overscanWords(lookAt(record.middle), packed.pixels).replace(/[\u00a0\u202f]/g, "");
    expect(words).toContain(`${canvas.widthPx}×${canvas.heightPx}pixels`);
    expect(words).toContain(`(+${canvas.percent.toFixed(1)}%)`);
  });

  it("are words on a frame that was not logged", () => {
    expect(pointRows(open.valuesAt(95), lookAt(95), packed.pixels).flat()).toEqual(new Array(12).fill("not logged"));
    expect(overscanWords(lookAt(95), packed.pixels)).toBe("");
  });
});
