import { describe, expect, it } from "vitest";
import { SMALL_KIT } from "../../helpers/memory-show.ts";
import { clipLog, found, NOTES } from "../../helpers/one-day.ts";

const HEADER = "slate,take,camera,scene,lens,filters,wb,tilt_deg,plate";
const rows = (...notes: string[]) => ({ header: HEADER, notes });
const at = (code: string, ...notes: string[]) => found(rows(...notes), code).map((f) => [f.severity, f.line, f.column, f.field]);

describe("a filter", () => {
  it("in some takes of a set-up only is a check at the first take without", () => {
    expect(at("CHECK754", "1,1,A,1,P50,Mist 1/4,,,", "1,2,A,1,P50,,,,", "1,3,A,1,P50,,,,")).toEqual([["check", 3, 1, "filters"]]);
  });
  it("on one camera says nothing of the other", () => {
    expect(at("CHECK754", "1,1,A,1,P50,Mist 1/4,,,", "1,1,B,1,P35,,,,")).toEqual([]);
  });
  it("on one side of a scene is remarked on at the reverse", () => {
    expect(at("CHECK755", "1,1,A,1,P50,Mist 1/4,,,", "1A,1,A,1,P50,,,,")).toEqual([["remark", 3, 1, "filters"]]);
  });
  it("in few set-ups of a scene, or before a grid, is none", () => {
    expect(at("CHECK755", "1,1,A,1,P50,Mist 1/4,,,", "1A,1,A,1,P50,,,,", "1B,1,A,1,P50,,,,")).toEqual([]);
    expect(at("CHECK755", "1,1,A,1,P50,Mist 1/4,,,", "1A,1,A,1,P50,,,,grid")).toEqual([]);
  });
});

describe("white balance", () => {
  it("of one slate, 134 mired apart and no filter noted, is a check at the second", () => {
    // 1e6/3200 = 312.5, 1e6/5600 = 178.6: 133.9 apart
    const [finding] = found(rows("1,1,A,1,P50,,5600,,", "1,1,B,1,P35,,3200,,"), "CHECK756");
    // "1,1,B,1,P35,," are 13 characters
    expect(finding).toMatchObject({ severity: "check", file: NOTES, line: 3, column: 14, field: "wb" });
    expect(finding?.message).toContain("134 mired");
  });
  it("is explained by a filter, and by another slate", () => {
    expect(at("CHECK756", "1,1,A,1,P50,,5600,,", "1,1,B,1,P35,half blue,3200,,")).toEqual([]);
    expect(at("CHECK756", "1,1,A,1,P50,,5600,,", "2,1,A,1,P50,,3200,,")).toEqual([]);
    // 1e6/5000 = 200, 1e6/5600 = 178.6: 21 apart
    expect(at("CHECK756", "1,1,A,1,P50,,5600,,", "1,1,B,1,P35,,5000,,")).toEqual([]);
  });
  it("together with the conversion filter that makes it unnecessary is a check", () => {
    expect(at("CHECK756", "1,1,A,1,P50,85,5600,,")).toEqual([["check", 2, 16, "wb"]]);
    expect(at("CHECK756", "1,1,A,1,P50,80A,3200,,")).toHaveLength(1);
    expect(at("CHECK756", "1,1,A,1,P50,85,3200,,", "2,1,A,1,P50,K185,5600,,")).toEqual([]);
  });
  it("has the limit of show.yaml", () => {
    const files = { "show.yaml": `${SMALL_KIT["show.yaml"]}check: {white_balance_mired: 150}\n` };
    expect(found({ ...rows("1,1,A,1,P50,,5600,,", "1,1,B,1,P35,,3200,,"), files }, "CHECK756")).toEqual([]);
  });
});

describe("a tilt", () => {
  it("of the other sign in one take of a set-up is a check", () => {
    expect(at("CHECK759", "1,1,A,1,P50,,,-3.5,", "1,2,A,1,P50,,,3.5,")).toEqual([["check", 3, 15, "tilt_deg"]]);
  });
  it("of another camera or of another size is none", () => {
    expect(at("CHECK759", "1,1,A,1,P50,,,-3.5,", "1,1,B,1,P50,,,3.5,", "1,2,A,1,P50,,,2,")).toEqual([]);
  });
});

describe("two cameras", () => {
  const usual = ["1,1,A,1,P50,,,,", "1,1,B,1,P35,,,,", "1,2,A,1,P50,,,,", "1,2,B,1,P35,,,,"];
  it("with one another's lens in one take are a check", () => {
    const [finding, ...more] = found(rows(...usual, "1,3,A,1,P35,,,,", "1,3,B,1,P50,,,,"), "CHECK753");
    expect(finding).toMatchObject({ severity: "check", line: 6, column: 9, field: "lens", take: "a-1-3" });
    expect(more).toEqual([]);
  });
  it("are none while one of them changed its lens only, or nobody knows which is usual", () => {
    expect(at("CHECK753", ...usual, "1,3,A,1,P35,,,,", "1,3,B,1,P35,,,,")).toEqual([]);
    expect(at("CHECK753", "1,1,A,1,P50,,,,", "1,1,B,1,P35,,,,", "1,2,A,1,P35,,,,", "1,2,B,1,P50,,,,")).toEqual([]);
  });
  it("are a check where a log names its clip and the other camera", () => {
    const log = (camera: string) => `# camera: ${camera}\n${clipLog("C1", "focus_m,t", 48, () => "3.000,2.83")}`;
    const day = (camera: string) => ({ notes: ["1,1,A,C1,10:00:00:00,10:00:02:00,P50,,"], logs: { "a.csv": log(camera) } });
    expect(found(day("B"), "CHECK753")[0]).toMatchObject({ severity: "check", file: NOTES, line: 2, column: 5, field: "camera" });
    expect(found(day("A"), "CHECK753")).toEqual([]);
  });
});
