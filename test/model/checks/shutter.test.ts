import { describe, expect, it } from "vitest";
import { NOTES, oneDay } from "../../helpers/one-day.ts";

function found(shutter: string, fps = "", rate = "24") {
  const show = `title: Small\ncode: SMALL\nrate: ${rate}\n`;
  const day = oneDay({
    header: "slate,take,camera,tc_in,tc_out,capture_fps,shutter",
    notes: [`1,1,A,10:00:00:00,10:00:02:00,${fps},${shutter}`],
    files: { "show.yaml": show },
  });
  return day.findings.filter((f) => f.code === "CHECK731" || f.code === "CHECK732");
}

describe("shutter against speed", () => {
  it("knows an angle that was written as a time", () => {
    const [finding] = found("1/180");
    expect(finding).toMatchObject({ code: "CHECK731", severity: "check", file: NOTES, line: 2, column: 32, field: "shutter" });
    // 360 x 24 / 180 = 48 degrees
    expect(finding?.message).toContain("48 degrees");
    expect(found("1/172.8")).toHaveLength(1);
  });
  it("knows a time that was written as an angle", () => {
    // 48 degrees at 24 frames a second is 48 / 360 / 24 = 1/180 s
    expect(found("48")[0]?.message).toContain("1/180 s");
    expect(found("50", "", "25")[0]?.hint).toContain("1/50");
  });
  it("knows that 172.8 degrees is 1/50 s at 24 and 1/52 s at 25", () => {
    expect(found("172.8", "", "25")[0]?.message).toContain("1/52 s");
    expect(found("172.8")).toEqual([]);
  });
  it("leaves usual shutters alone", () => {
    for (const shutter of ["180", "144", "90", "45", "1/48", "1/50", "1/100", "11.25"]) expect(found(shutter), shutter).toEqual([]);
    expect(found("60", "", "30000/1001")).toEqual([]);
    expect(found("172.8", "48")).toEqual([]);
  });
  it("remarks on a capture speed that is almost the timecode's rate", () => {
    expect(found("180", "25")[0]).toMatchObject({
      code: "CHECK732",
      severity: "remark",
      line: 2,
      column: 31,
      field: "capture_fps",
    });
    expect(found("180", "24", "24000/1001")).toHaveLength(1);
    expect(found("180", "23.976", "24000/1001")).toEqual([]);
    expect(found("180", "48")).toEqual([]);
  });
});
