import { describe, expect, it } from "vitest";
import { found, NOTES, oneDay } from "../../helpers/one-day.ts";

const HEADER = "slate,take,camera,scene,roll,clip,lens,stop,circled";
const rows = (...notes: string[]) => ({ header: HEADER, notes });
const codes = (day: Parameters<typeof oneDay>[0]) =>
  oneDay(day)
    .findings.filter((f) => !f.code.startsWith("MATCH"))
    .map((f) => `${f.code}:${f.line}:${f.field}`);

describe("take numbers", () => {
  it("that are left out are a check at the row after the hole, whatever the cameras", () => {
    const [finding] = found(rows("1,1,A,1,,,,,", "1,2,B,1,,,,,", "1,4,A,1,,,,,y", "1,5,A,1,,,,,"), "CHECK725");
    expect(finding).toMatchObject({ severity: "check", file: NOTES, line: 4, column: 3, field: "take" });
    expect(finding?.message).toContain("take 3 is not in the notes");
  });
  it("that begin later are only remarked on", () => {
    expect(found(rows("1,3,A,1,,,,,y"), "CHECK726")[0]).toMatchObject({ severity: "remark", line: 2, field: "take" });
  });
  it("with a word after them count once with their number", () => {
    expect(codes(rows("1,1,A,1,,,,,", "1,2,A,1,,,,,", "1,2 PU,A,1,,,,,y", "1,3 AFS,A,1,,,,,"))).toEqual([]);
  });
  it("in two forms are a check at the second", () => {
    expect(found(rows("1,2,A,1,,,,,y", "1,02,A,1,,,,,"), "CHECK727")[0]).toMatchObject({ severity: "check", line: 3, column: 3 });
  });
});

describe("slates", () => {
  it("with the letter I or O are a check, once for the slate", () => {
    const findings = found(rows("24O,1,A,24,,,,,y", "24O,2,A,24,,,,,", "24I,1,A,24,,,,,y", "24B,1,A,24,,,,,y"), "CHECK728");
    expect(findings.map((f) => [f.line, f.column, f.severity])).toEqual([
      [2, 1, "check"],
      [4, 1, "check"],
    ]);
    expect(findings[0]?.hint).toContain("240");
  });
  it("of words are left alone", () => {
    expect(found(rows("INSERT,1,A,24,,,,,y", "VFX1,1,A,24,,,,,y"), "CHECK728")).toEqual([]);
  });
  it("on two scenes are a check at the second scene", () => {
    expect(found(rows("24,1,A,24,,,,,", "24,2,A,25,,,,,y"), "CHECK729")[0]).toMatchObject({
      severity: "check",
      line: 3,
      field: "scene",
    });
  });
  it("without a circled take are remarked on when others have one", () => {
    expect(found(rows("1,1,A,1,,,,,y", "2,1,A,2,,,,,", "2,2,A,2,,,,,"), "CHECK730")[0]).toMatchObject({
      severity: "remark",
      line: 4,
    });
    expect(found(rows("1,1,A,1,,,,,", "2,1,A,2,,,,,"), "CHECK730")).toEqual([]);
  });
  it("with two lenses on one camera are remarked on", () => {
    expect(found(rows("1,1,A,1,,,P50,,", "1,1,B,1,,,P35,,", "1,2,A,1,,,P35,,y"), "CHECK746")[0]).toMatchObject({
      line: 4,
      field: "lens",
    });
    expect(found(rows("1,1,A,1,,,P50,,", "1,1,B,1,,,P35,,y"), "CHECK746")).toEqual([]);
  });
});

describe("scenes", () => {
  it("that are not scheduled are remarked on, once", () => {
    const day = { ...rows("1,1,A,1,,,,,y", "7,1,A,7,,,,,y", "7,2,A,7,,,,,"), day: 'scheduled: [{scene: "1"}]\n' };
    expect(found(day, "CHECK742").map((f) => [f.severity, f.line])).toEqual([["remark", 3]]);
    expect(found({ ...day, day: "" }, "CHECK742")).toEqual([]);
  });
});

describe("clips and rolls", () => {
  const clips = (...all: [string, string, string][]) =>
    rows(...all.map(([camera, roll, clip], i) => `${i + 1},1,${camera},1,${roll},${clip},,,y`));
  const FOUR: [string, string, string][] = [
    ["A", "A021", "A021C001"],
    ["A", "A021", "A021C002"],
    ["B", "B014", "B014C001"],
    ["B", "B014", "B014C002"],
  ];
  it("one clip for two takes is a check, with the rolls where they differ", () => {
    const [finding] = found(clips(["A", "A021", "A021C001"], ["A", "A022", "A021C001"]), "CHECK717");
    expect(finding).toMatchObject({ severity: "check", line: 3, field: "clip" });
    expect(finding?.message).toContain("rolls A021 and A022");
  });
  it("a clip named by another roll is a check where the others have the habit", () => {
    expect(found(clips(...FOUR, ["A", "A022", "A021C003"]), "CHECK744")[0]).toMatchObject({
      line: 6,
      field: "clip",
      severity: "check",
    });
    expect(found(clips(["A", "1", "A021C001"], ["A", "2", "A021C002"]), "CHECK744")).toEqual([]);
  });
  it("a clip with another camera's letter is a check where the others have the habit", () => {
    expect(found(clips(...FOUR, ["A", "B014", "B014C003"]), "CHECK745")[0]).toMatchObject({
      line: 6,
      field: "clip",
      severity: "check",
    });
    expect(found(clips(...FOUR), "CHECK745")).toEqual([]);
  });
  it("a roll number that is left out is remarked on", () => {
    const [finding] = found(clips(["A", "A021", "A021C001"], ["B", "B014", "B014C001"], ["A", "A023", "A023C001"]), "CHECK743");
    expect(finding).toMatchObject({ severity: "remark", line: 4, field: "roll" });
    expect(found(clips(...FOUR, ["A", "A022", "A022C001"]), "CHECK743")).toEqual([]);
  });
});

describe("names in two spellings", () => {
  it("are a check at the first that is not the kit's, or not the commonest", () => {
    const findings = found(rows("1,1,A,1,A021,,P 50,,", "1,2,A,1,a021,,P50,,", "1,3,A,1,A021,,p50,,y"), "CHECK739");
    expect(findings.map((f) => [f.field, f.line, f.severity])).toEqual([
      ["lens", 2, "check"],
      ["roll", 3, "check"],
      ["lens", 4, "check"],
    ]);
    expect(findings[0]?.hint).toContain('Write "P50"');
  });
  it("that differ by a letter or a digit are two names", () => {
    expect(found(rows("1,1,A,1,A021,,P50,,y", "1A,1,A,1,A022,,P35,,y"), "CHECK739")).toEqual([]);
    expect(found(rows("1-1,1,A,1,A021,,P50,,y", "11,1,A,1,A021,,P50,,y"), "CHECK739")).toEqual([]);
  });
});

describe("T-stops and f-stops", () => {
  it("in one column are a check at the first of the rarer kind", () => {
    expect(found(rows("1,1,A,1,,,P50,T4,", "1,2,A,1,,,P50,T4,y", "1,3,A,1,,,P50,f/4,"), "CHECK740")[0]).toMatchObject({
      line: 4,
      field: "stop",
    });
    expect(found(rows("1,1,A,1,,,P50,T4,", "1,2,A,1,,,P50,4,y"), "CHECK740")).toEqual([]);
  });
});
