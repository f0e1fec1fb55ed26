import { describe, expect, it } from "vitest";
import { didYouMean, editCost, nearestNames } from "../../src/core/nearest-name.ts";
import { found, oneDay } from "../helpers/one-day.ts";

describe("the cost of a slip", () => {
  it.each([
    // a letter changed, put in or left out, or two neighbours turned: 10 each
    ["focus", "focis", 10],
    ["focus", "focuss", 10],
    ["slate", "salte", 10],
    // a digit for a digit: 20; a digit put in: 10; 35 to 50 and 34 to 43 are one digit left out and one put in
    ["K35", "K50", 20],
    ["K44", "K34", 20],
    ["K96", "K966", 10],
    ["K34", "K43", 20],
    // case and marks: 1 each
    ["T_Stop", "t-stop", 3],
    ["focus_m", "focusm", 1],
    ["a", "a", 0],
  ])("%s for %s is %i", (a, b, cost) => {
    expect(editCost(a, b)).toBe(cost);
    expect(editCost(b, a)).toBe(cost);
  });
});

describe("the nearest names", () => {
  it("never take one lens for another because of a digit", () => {
    expect(nearestNames("K44", ["K34", "K54", "K58"])).toEqual([]);
    expect(nearestNames("K966", ["K34", "K96", "K128"])).toEqual(["K96"]);
    expect(nearestNames("k-34", ["K44", "K34"])).toEqual(["K34"]);
  });
  it("are at most three, the nearest first", () => {
    expect(nearestNames("sensor_mod", ["sensor_modes", "sensor_mods", "sensor_model", "sensor_mode", "sensor"])).toHaveLength(3);
    expect(nearestNames("tc_inn", ["tc_out", "tc_in"])[0]).toBe("tc_in");
  });
  it("are none for a letter alone, or for what is far from all", () => {
    expect(nearestNames("C", ["A", "B"])).toEqual([]);
    expect(didYouMean("gaffer", ["slate", "take"])).toBe("");
  });
});

describe("suggestions in findings", () => {
  const hint = (code: string, day: Parameters<typeof found>[0]) => found(day, code)[0]?.hint;
  const note = (cells: string) => ({ header: "slate,take,camera,lens,plate,plate_of", notes: ["24B,1,A,P50,hero,", cells] });
  it("name the lens of the kit, the camera, the slate of the hero", () => {
    expect(hint("CHECK706", note("24B,2,A,P500,,"))).toContain('Did you mean "P50"?');
    expect(hint("CHECK718", note("24C,1,A,P50,clean,24 b"))).toContain('Did you mean "24B"?');
    expect(hint("CHECK718", note("24C,1,A,P50,clean,24BB"))).toContain('Did you mean "24B"?');
    const cameras = { "kit/cameras.csv": "camera,sensor_mode,active_width_mm,active_height_mm\nDrone,OPEN,24.89,18.66\n" };
    expect(hint("CHECK707", { ...note("24B,2,Dorne,P50,,"), notes: ["24B,1,Dorne,P50,,"], files: cameras })).toContain(
      'Did you mean "Drone"?',
    );
  });
  it("name the column, the key and the slate that a log is of", () => {
    const columns = oneDay({ header: "slate,take,camera,remakrs", notes: ["1,1,A,"] }).findings.map((f) => f.hint);
    expect(columns.some((text) => text.includes("remarks"))).toBe(true);
    const log = "# slate: 24BB\n# take: 1\n# camrea: A\ntimecode,focus_m\n10:00:00:00,3\n";
    const day = { notes: ["24B,1,A,,10:00:00:00,10:00:02:00,P50,,"], logs: { "a.csv": log } };
    const hints = oneDay(day).findings.map((f) => f.hint);
    expect(hints.some((text) => text.includes('Did you mean "24B"?'))).toBe(true);
    expect(hints.some((text) => text.includes('Did you mean "camera"?'))).toBe(true);
  });
});
