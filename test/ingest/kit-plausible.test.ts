import { describe, expect, it } from "vitest";
import { readShow } from "../../src/ingest/read-show.ts";
import { memoryFolder } from "../helpers/memory-show.ts";

const TABLE = "kit/calibration/W.csv";
const KEYS = [
  "model: brown-conrady",
  "direction: undistort",
  "radius: half-diagonal",
  "area_mm: 24x18",
  "shading_radius: half-diagonal",
];

/** Findings of a show with one lens and its table; the table's first row is line 7. The half diagonal is 15 mm. */
function found(rows: readonly string[], keys: readonly string[] = KEYS, focal = 24, files = {}) {
  const header = "focal_mm,focus_m,t,k1,k2,k3,p1,p2,a1,a2";
  const { findings } = readShow(
    memoryFolder({
      "show.yaml": "title: Small\ncode: SMALL\nrate: 24\n",
      "kit/cameras.csv": "camera,sensor_mode,active_width_mm,active_height_mm\nA,OPEN,24,18\n",
      "kit/lenses.csv": `lens,serial,kind,focal_mm\nW,1,prime,${focal}\n`,
      [TABLE]: `${keys.map((key) => `# ${key}\n`).join("")}${header}\n${rows.map((row) => `${row}\n`).join("")}`,
      ...files,
    }),
  );
  return findings.filter((f) => f.code.startsWith("CHECK"));
}

const codes = (...args: Parameters<typeof found>) => found(...args).map((f) => `${f.code}:${f.line}:${f.severity}`);

describe("calibration tables", () => {
  it("of a usual lens have nothing to check", () => {
    // recorded to ideal, 1.04 at the corner: 3.8 % barrel; 0.6 of the brightness there
    expect(codes(["24,1,,0.05,-0.01,,0.0004,-0.0003,0.35,0.05", "24,inf,,0.045,-0.01,,0.0004,-0.0003,0.33,0.05"])).toEqual([]);
  });
  it("with k3 in the place of p2 are a check at the row", () => {
    // k1 k2 p1 p2 k3 copied under k1 k2 k3 p1 p2: p2 = 0.02 moves the corner by 2 p1 x y + p2 (r^2 + 2 x^2), 4.6 % in x
    const findings = found(["24,1,,0.05,-0.01,0.0004,-0.0003,0.02,,"]);
    expect(findings[0]).toMatchObject({ code: "CHECK734", severity: "check", file: TABLE, line: 7, field: "p2" });
    expect(findings[0]?.hint).toContain("k1 k2 p1 p2 k3");
  });
  it("with more than 20 % at the corner, or nothing there, are a check at the first such row", () => {
    // 1.3 at the corner is 23 % barrel; 1 - 0.9 r^2 turns back before the corner
    expect(codes(["24,1,,0.05,,,,,,", "24,inf,,0.3,,,,,,"])).toEqual(["CHECK735:8:check"]);
    expect(codes(["50,1,,-0.9,,,,,,"], KEYS, 50)).toEqual(["CHECK735:7:check"]);
  });
  it("of a wide lens with pincushion are read in the wrong direction", () => {
    expect(codes(["20,1,,-0.05,0.01,,,,,"])).toEqual(["CHECK736:7:check"]);
    expect(codes(["20,1,,-0.05,0.01,,,,,"], [...KEYS.slice(0, 1), "direction: distort", ...KEYS.slice(2)])).toEqual([]);
    // a long lens may be one
    expect(codes(["85,1,,-0.02,0.001,,,,,"], KEYS, 85)).toEqual([]);
  });
  it("of a zoom that goes from pincushion to barrel are read in the wrong direction", () => {
    expect(codes(["35,1,,-0.02,,,,,,", "80,1,,0.02,,,,,,"])).toEqual(["CHECK736:7:check"]);
    expect(codes(["35,1,,0.02,,,,,,", "80,1,,-0.02,,,,,,"])).toEqual([]);
  });
  it("with the same distortion at three distances are a check", () => {
    const rows = ["0.5", "1", "inf"].map((m) => `24,${m},,0.05,-0.01,,,,,`);
    expect(codes(rows)).toEqual(["CHECK737:7:check"]);
    expect(codes(rows.slice(0, 2))).toEqual([]);
    expect(codes(["0.5", "1", "inf"].map((m) => `24,${m},,,,,,,0.3,`))).toEqual([]);
  });
  it("whose shading gets brighter outwards, or black, are a check", () => {
    // read as losses: 1 + 0.35 at the corner; a gain of -0.35 is right
    expect(codes(["24,1,,0.05,,,,,-0.35,"])).toEqual(["CHECK738:7:check"]);
    expect(codes(["24,1,,0.05,,,,,-0.35,"], [...KEYS, "shading_values: gain"])).toEqual([]);
    expect(found(["24,1,,0.05,,,,,1.2,"])[0]?.message).toContain("black at 92 % of the way to the corner");
    // 1 - 0.8 r^2 + 0.6 r^4 is darkest at r^2 = 2/3 (0.73) and 0.8 at the corner
    expect(found(["24,1,,0.05,,,,,0.8,-0.6"])[0]?.message).toContain("brighter again");
  });
});

describe("serial numbers", () => {
  it("that two lenses share are a check at the second", () => {
    const lenses = "lens,serial,kind,focal_mm\nW,7,prime,24\nL,7,prime,50\nM,8,prime,85\n";
    expect(found(["24,1,,0.05,,,,,,"], KEYS, 24, { "kit/lenses.csv": lenses })).toMatchObject([
      { code: "CHECK747", severity: "check", file: "kit/lenses.csv", line: 3, field: "serial" },
    ]);
  });
});
