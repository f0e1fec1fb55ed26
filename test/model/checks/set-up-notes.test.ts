import { describe, expect, it } from "vitest";
import { SMALL_KIT } from "../../helpers/memory-show.ts";
import { clipLog, found, NOTES } from "../../helpers/one-day.ts";

const HEADER = "slate,take,camera,clip,tc_in,tc_out,lens,stop,ei,filters,nd,circled,status,plate";
const rows = (...notes: string[]) => ({ header: HEADER, notes });
const row = (slate: string, take: number, camera: string, rest: string) => `${slate},${take},${camera},,,,P50,${rest}`;
const at = (code: string, ...notes: string[]) => found(rows(...notes), code).map((f) => [f.severity, f.line, f.column, f.field]);

describe("neutral density", () => {
  it("in some takes of a set-up only is remarked on at the first take without", () => {
    const notes = [row("1", 1, "A", "4,800,,0.6,,,"), row("1", 2, "A", "4,800,,,,,"), row("1", 3, "A", "4,800,,,,,")];
    expect(at("CHECK768", ...notes)).toEqual([["remark", 3, 1, "nd"]]);
  });
  it("that was taken out (none), stands among the filters, or is on another camera or slate is none", () => {
    const first = row("1", 1, "A", "4,800,,0.6,,,");
    expect(at("CHECK768", first, row("1", 2, "A", "4,800,,none,,,"))).toEqual([]);
    expect(at("CHECK768", first, row("1", 2, "A", "4,800,ND 0.6,,,,"))).toEqual([]);
    expect(at("CHECK768", first, row("1", 2, "A", "4,800,IRND 0.6 + mist,,,,"))).toEqual([]);
    expect(at("CHECK768", first, row("1", 2, "A", "4,800,Hand-made mist,,,,"))).toHaveLength(1);
    expect(at("CHECK768", first, row("1", 1, "B", "4,800,,,,,"), row("1A", 1, "A", "4,800,,,,,"))).toEqual([]);
  });
  it("that changes while stop, EI and shutter stay is remarked on, with the difference in stops", () => {
    // density 0.6 is 0.6 / 0.30103 = 1.993 stops, and ND8 is 3: 1.007 apart
    const [finding] = found(rows(row("1", 1, "A", "4,800,,0.6,,,"), row("1", 2, "A", "4,800,,ND8,,,")), "CHECK769");
    // "1,2,A,,,,P50,4,800,," are 20 characters
    expect(finding).toMatchObject({ severity: "remark", file: NOTES, line: 3, column: 21, field: "nd", take: "a-1-2" });
    expect(finding?.message).toContain("1.01 stops apart");
  });
  it("that goes with another stop or EI, or is the same in another form, is no change", () => {
    const first = row("1", 1, "A", "4,800,,0.6,,,");
    expect(at("CHECK769", first, row("1", 2, "A", "2.8,800,,ND8,,,"))).toEqual([]);
    expect(at("CHECK769", first, row("1", 2, "A", "4,1600,,ND8,,,"))).toEqual([]);
    expect(at("CHECK769", first, row("1", 2, "A", "4,800,,ND4,,,"))).toEqual([]);
    expect(at("CHECK769", row("1", 1, "A", ",800,,0.6,,,"), row("1", 2, "A", ",800,,ND8,,,"))).toEqual([]);
  });
});

describe("a circle on one camera", () => {
  const pair = (take: number, b: string) => [row("1", take, "A", "4,,,,y,,"), row("1", take, "B", `4,,,,${b},`)];
  const alike = (count: number) => Array.from({ length: count }, (_, i) => pair(i + 1, "y,")).flat();
  it("is remarked on at the other camera's row where five others are circled on both", () => {
    expect(at("CHECK770", ...alike(5), ...pair(6, ","))).toEqual([["remark", 13, 1, "circled"]]);
  });
  it("is none where the other camera is NG, where the day has no such habit, or few takes", () => {
    expect(at("CHECK770", ...alike(5), ...pair(6, ",ng"))).toEqual([]);
    expect(at("CHECK770", ...alike(5), ...pair(6, ","), ...pair(7, ","))).toEqual([]);
    expect(at("CHECK770", ...alike(4), ...pair(5, ","))).toEqual([]);
  });
});

describe("a plate whose lens nobody measured", () => {
  const hero = row("1", 1, "A", "4,,,,,,hero");
  it("is remarked on once, at the lens's first plate", () => {
    // "1,1,A,,,,P50,4,,,,,," are 20 characters
    expect(at("CHECK771", hero, row("1", 2, "A", "4,,,,,,hero"), row("1A", 1, "A", "4,,,,,,clean"))).toEqual([
      ["remark", 2, 21, "plate"],
    ]);
  });
  it("is none after a grid with the lens, but of another lens's grid", () => {
    expect(at("CHECK771", hero, row("2", 1, "A", "4,,,,,,grid"))).toEqual([]);
    expect(at("CHECK771", hero, "2,1,A,,,,P35,4,,,,,,grid")).toHaveLength(1);
  });
  it("is none with a calibration table, or with coefficients in the log", () => {
    const table =
      "# model: brown-conrady\n# direction: undistort\n# radius: mm\nfocal_mm,focus_m,t,k1\n50,2,,0.001\n50,inf,,0.001\n";
    expect(found({ ...rows(hero), files: { ...SMALL_KIT, "kit/calibration/P50.csv": table } }, "CHECK771")).toEqual([]);
    const note = "1,1,A,C1,10:00:00:00,10:00:01:00,P50,4,,,,,,hero";
    const log = (header: string, cells: string) => ({ ...rows(note), logs: { "a.csv": clipLog("C1", header, 24, () => cells) } });
    expect(found(log("t,k1", "4,0.001"), "CHECK771")).toEqual([]);
    expect(found(log("t", "4"), "CHECK771")).toHaveLength(1);
  });
});
