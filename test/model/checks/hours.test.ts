import { describe, expect, it } from "vitest";
import { SMALL_KIT } from "../../helpers/memory-show.ts";
import { clipLog, DATE, DAY, found, logFile, NOTES } from "../../helpers/one-day.ts";

const HEADER = "slate,take,camera,clip,tc_in,tc_out,lens";
const ROW = "1,1,A,C1,10:00:00:00,10:00:02:00,P50";

describe("a meal", () => {
  const meals = (text: string, show = "") =>
    found({ header: HEADER, notes: [ROW], day: text, files: { "show.yaml": `${SMALL_KIT["show.yaml"]}${show}` } }, "CHECK764");

  it("more than six hours after the call is a check, and never a legal finding", () => {
    // 07:00 to 13:15 is 6 h 15 min
    const [finding] = meals('call: "07:00"\nmeals:\n  - {out: "13:15", in: "14:00"}\nwrap: "18:00"\n');
    expect(finding).toMatchObject({ severity: "check", file: DAY, line: 5, column: 11 });
    expect(finding?.message).toContain("6 h 15 min after call");
    expect(finding?.hint).toContain("not a legal finding: agreements and local law decide");
  });
  it("six hours after it is none, nor one without a call", () => {
    expect(meals('call: "07:00"\nmeals: [{out: "13:00", in: "14:00"}]\n')).toEqual([]);
    expect(meals('meals: [{out: "13:15", in: "14:00"}]\n')).toEqual([]);
  });
  it("is counted from the meal before, past midnight too", () => {
    const text = 'call: "16:00"\nmeals:\n  - {out: "19:00", in: "19:30"}\n  - {out: "01:45+1", in: "02:15+1"}\n';
    // 19:30 to 25:45 is 6 h 15 min
    expect(meals(text).map((f) => [f.line, f.message.includes("6 h 15 min after the meal before")])).toEqual([[6, true]]);
  });
  it("has the limit of show.yaml", () => {
    const text = 'call: "07:00"\nmeals: [{out: "12:15"}]\n';
    expect(meals(text, "check: {meal_hours: 5}\n")).toHaveLength(1);
    expect(meals(text, "check: {meal_hours: 5.5}\n")).toEqual([]);
  });
});

describe("a take outside call and wrap", () => {
  const takes = (...starts: string[]) => ({
    header: HEADER,
    notes: starts.map((start, i) => `${i + 1},1,A,C${i},${start}:00:00,${start}:05:00,P50`),
    day: 'call: "08:00"\nwrap: "18:00"\n',
  });
  it("is a check at its tc_in while the others lie within", () => {
    const day = takes("09:00", "10:00", "11:00", "12:00", "20:15");
    // slate, take, camera and clip before tc_in: "5,1,A,C4," are nine characters
    expect(found(day, "CHECK765").map((f) => [f.severity, f.file, f.line, f.column])).toEqual([["check", NOTES, 6, 10]]);
  });
  it("is none within half an hour after wrap or an hour before call", () => {
    expect(found(takes("07:05", "10:00", "11:00", "12:00", "18:25"), "CHECK765")).toEqual([]);
  });
  it("says nothing where timecode is no time of day", () => {
    expect(found(takes("01:00", "01:10", "02:00", "02:30", "10:00"), "CHECK765")).toEqual([]);
  });
});

describe("a log of the next date", () => {
  const day = (start: string, date: string) => ({
    header: HEADER,
    notes: [`1,1,A,C1,${start}:00,${start.slice(0, 6)}02:00,P50`],
    logs: { "a.csv": `# date: ${date}\n${clipLog("C1", "focus_m,t", 48, () => "3.000,2.83", `${start}:00`)}` },
    day: 'call: "14:00"\nwrap: "02:00+1"\n',
  });
  it("is a check at its date where the take lies before midnight", () => {
    expect(found(day("22:00:00", "2030-02-04"), "CHECK766")[0]).toMatchObject({
      severity: "check",
      file: logFile("a.csv"),
      line: 1,
      field: "date",
    });
  });
  it("is right after midnight, and so is a log of the day itself", () => {
    expect(found(day("00:30:00", "2030-02-04"), "CHECK766")).toEqual([]);
    expect(found(day("22:00:00", DATE), "CHECK766")).toEqual([]);
  });
});
