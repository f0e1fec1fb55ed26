import { describe, expect, it } from "vitest";
import { clipLog, found, NOTES } from "../../helpers/one-day.ts";

const HEADER = "slate,take,camera,clip,tc_in,tc_out,lens,stop,focus,height_m,tilt_deg,circled,plate,plate_of";

/** A hero at 3 m, T2.8 on a 50 and its clean plate, both logged. */
function plates(clean: { lens?: string; stop?: number; focus?: string }, hero: (i: number) => string = () => "3.000") {
  const { lens = "P50", stop = 2.83, focus = "3.000" } = clean;
  return {
    header: HEADER,
    notes: [
      "7,1,A,C1,10:00:00:00,10:00:02:00,P50,2.8,,1.5,0,y,hero,",
      `7A,1,A,C2,10:10:00:00,10:10:02:00,${lens},,,1.5,0,y,clean,7`,
    ],
    logs: {
      "a.csv": clipLog("C1", "focus_m,t", 48, (i) => `${hero(i)},2.83`),
      "b.csv": clipLog("C2", "focus_m,t", 48, () => `${focus},${stop}`, "10:10:00:00").replace("P50", lens),
    },
  };
}

describe("a clean plate against its hero", () => {
  // depth of field of a 50 at T2.8 (tau 0.81: N = 2.55), 3 m, c = 0.025 mm: H0 = 50^2 / (2.55 x 0.025) = 39.2 m, so that half of
  // the depth is 1 / 39.2 = 0.0255 (1/m): from 2.79 m to 3.25 m
  it("fits within the hero's depth of field", () => {
    expect(found(plates({}))).toEqual([]);
    expect(found(plates({ focus: "2.850" }))).toEqual([]);
    expect(found(plates({ focus: "3.200" }))).toEqual([]);
  });
  it("is a check at the plate when focus is beyond it", () => {
    const [finding, ...more] = found(plates({ focus: "2.500" }));
    expect(finding).toMatchObject({ code: "CHECK733", severity: "check", file: NOTES, line: 3, field: "plate", take: "a-7a-1" });
    expect(finding?.message).toContain("focus 2.5 m instead of 3 m");
    expect(more).toEqual([]);
  });
  it("is a check when stop or lens differ", () => {
    expect(found(plates({ stop: 4 }))[0]?.message).toContain("T4 instead of T2.83");
    expect(found(plates({ lens: "P35", focus: "3.010" }))[0]?.message).toContain("lens P35 instead of P50");
  });
  it("fits anywhere within what the hero did", () => {
    const moving = (i: number) => (3 - i / 40).toFixed(3);
    expect(found(plates({ focus: "2.000" }, moving))).toEqual([]);
    expect(found(plates({ focus: "4.500" }, moving)).map((f) => f.code)).toEqual(["CHECK733"]);
  });
});
