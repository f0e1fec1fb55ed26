import { describe, expect, it } from "vitest";
import { SMALL_KIT } from "../../helpers/memory-show.ts";
import { clipLog, found, NOTES } from "../../helpers/one-day.ts";

const HEADER = "slate,take,camera,clip,tc_in,tc_out,lens,height_m,tilt_deg,roll_deg";
/** One take of two seconds; height, tilt and roll in the note and, where given, in the log. */
const take = (note: string, log: string | null, show = "", kit = "") => ({
  header: HEADER,
  notes: [`1,1,A,C1,10:00:00:00,10:00:02:00,P50,${note}`],
  logs: log === null ? {} : { "a.csv": clipLog("C1", "focus_m,t,height_m,tilt_deg,roll_deg", 48, () => `3.000,2.83,${log}`) },
  files: { "show.yaml": `${SMALL_KIT["show.yaml"]}${show}`, ...(kit === "" ? {} : { "kit/lenses.csv": kit }) },
});
const at = (code: string, ...args: Parameters<typeof take>) =>
  found(take(...args), code).map((f) => [f.severity, f.file, f.line, f.column, f.field]);
// "1,1,A,C1,10:00:00:00,10:00:02:00,P50," are 37 characters
const HEIGHT = 38;

describe("the height of the lens", () => {
  it("noted lower than logged by a hand's breadth is a check that names the base plate", () => {
    const [finding] = found(take("1.30,,", "1.42,0,0"), "CHECK757");
    expect(finding).toMatchObject({ severity: "check", file: NOTES, line: 2, column: HEIGHT, field: "height_m" });
    expect(finding?.hint).toContain("base plate");
  });
  it("within the limit of show.yaml is none", () => {
    expect(at("CHECK757", "1.40,,", "1.42,0,0")).toEqual([]);
    expect(at("CHECK757", "1.30,,", "1.42,0,0", "check: {height_difference_m: 0.2}\n")).toEqual([]);
  });
  it("in centimetres, or below half of the lens's front, can hardly be so", () => {
    const [finding] = found(take("142,,", null), "CHECK758");
    expect(finding).toMatchObject({ severity: "check", line: 2, column: HEIGHT });
    expect(finding?.hint).toContain("1.42 m if it is centimetres");
    const kit = "lens,kind,focal_mm,front_diameter_mm\nP50,prime,50,110\n";
    // half of 110 mm is 0.055 m
    expect(at("CHECK758", "0.05,,", null, "", kit)).toHaveLength(1);
    expect(at("CHECK758", "0.06,,", null, "", kit)).toEqual([]);
    expect(at("CHECK758", "0,,", null)).toHaveLength(1);
    expect(at("CHECK758", "12.5,,", null)).toEqual([]);
  });
});

describe("tilt and roll", () => {
  it("with the logged tilt's other sign are a check of the sign", () => {
    expect(at("CHECK759", ",-3.5,", "1.4,3.4,0")).toEqual([["check", NOTES, 2, HEIGHT + 1, "tilt_deg"]]);
    expect(at("CHECK757", ",-3.5,", "1.4,3.4,0")).toEqual([]);
  });
  it("with what a level in percent says are a check of the unit", () => {
    // 100 tan(4.57 degrees) = 7.99
    const [finding] = found(take(",,8", "1.4,0,4.57"), "CHECK760");
    expect(finding).toMatchObject({ severity: "check", line: 2, column: HEIGHT + 2, field: "roll_deg" });
    expect(finding?.message).toContain("8 percent is 4.57 degrees");
  });
  it("that differ in another way are a check with the limit of show.yaml", () => {
    expect(at("CHECK757", ",6,", "1.4,3.4,0")).toHaveLength(1);
    expect(at("CHECK757", ",6,", "1.4,3.4,0", "check: {angle_difference_deg: 3}\n")).toEqual([]);
    expect(at("CHECK757", ",3,0.5", "1.4,3.4,0")).toEqual([]);
  });
});
