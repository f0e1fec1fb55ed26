import { describe, expect, it } from "vitest";
import { logText, SMALL_KIT } from "../../helpers/memory-show.ts";
import { clipLog, found, logFile, oneDay } from "../../helpers/one-day.ts";

const NOTES = ["1,1,A,C1,10:00:04:00,10:00:08:00,P50,2.8,2 m"];
/** Five seconds around the take of four, on a clock whose 10:00:03:12 is `start`. */
const around = (start: string, key = "") => `${key}${clipLog("C1", "focus_m,t", 120, () => "2.000,2.83", start)}`;
const day = (start: string, key?: string) => ({ notes: NOTES, logs: { "a.csv": around(start, key) } });
const clockCodes = ["MATCH415", "MATCH422", "MATCH405"];
const saidOf = (input: Parameters<typeof oneDay>[0]) =>
  oneDay(input)
    .findings.filter((f) => clockCodes.includes(f.code))
    .map((f) => f.code);

describe("a log in another time zone", () => {
  it("is told of with its hours, and the offset in frames: an hour at 24 is 86400", () => {
    const [finding] = found(day("09:00:03:12"), "MATCH422");
    expect(finding).toMatchObject({ severity: "check", file: logFile("a.csv"), line: 4, column: 1, take: "a-1-1" });
    expect(finding?.message).toContain("1 hour behind the notes");
    expect(finding?.hint).toContain('"# clock_offset_frames: 86400"');
    expect(found(day("09:00:03:12"), "MATCH415")).toEqual([]);
  });

  it("fits when the line that the hint gives is written, in the log or in day.yaml", () => {
    expect(saidOf(day("09:00:03:12", "# clock_offset_frames: 86400\n"))).toEqual([]);
    expect(saidOf({ ...day("09:00:03:12"), day: "clocks: {A: {offset_frames: 86400}}\n" })).toEqual([]);
  });

  it("may be ahead, by half hours, and over midnight", () => {
    // 15:30:03:12 is 5 h 30 min later than the picture; 86400 x 5.5 = 475200
    const [ahead] = found(day("15:30:03:12"), "MATCH422");
    expect(ahead?.message).toContain("5.5 hours ahead of the notes");
    expect(ahead?.hint).toContain("clock_offset_frames: -475200");
    // 23:00:03:12 of the day before is 11 hours behind
    expect(found(day("23:00:03:12"), "MATCH422")[0]?.message).toContain("11 hours behind");
  });

  it("is counted in the labels of drop-frame: an hour is 107892 frames, as published", () => {
    const label = (hour: string, n: number) => `${hour}:05:0${3 + Math.floor(n / 30)};${String(n % 30).padStart(2, "0")}`;
    const rows = Array.from({ length: 90 }, (_, n) => `${label("11", n)},2.83\n`).join("");
    const [finding] = found(
      {
        notes: ["1,1,A,C1,10:05:04;00,10:05:05;00,P50,2.8,"],
        logs: { "a.csv": `# clip: C1\ntimecode,t\n${rows}` },
        files: { "show.yaml": SMALL_KIT["show.yaml"].replace("rate: 24", "rate: 30000/1001\ndrop_frame: true") },
      },
      "MATCH422",
    );
    expect(finding?.hint).toContain("clock_offset_frames: -107892");
  });

  it("is seen in a log of the camera's day too, where all takes fit one offset", () => {
    const notes = ["1,1,A,C1,10:00:04:00,10:00:08:00,P50,2.8,2 m", "1,2,A,C2,10:17:30:00,10:17:33:00,P50,2.8,2 m"];
    const rows = (start: string, frames: number) =>
      logText([], "focus_m,t", start, frames, () => "2.000,2.83").replace(/^.*\n/, "");
    const log = `# camera: A\ntimecode,focus_m,t\n${rows("08:00:04:00", 96)}${rows("08:17:30:00", 72)}`;
    const [finding] = found({ notes, logs: { "a.csv": log } }, "MATCH422");
    expect(finding?.message).toContain(
      "2 hours behind the notes: as it stands no row lies in a take, and moved by that it covers all 2 takes",
    );
    expect(finding).toMatchObject({ take: null });
    const half = `# camera: A\ntimecode,focus_m,t\n${rows("08:00:04:00", 96)}`;
    expect(found({ notes, logs: { "a.csv": half } }, "MATCH422")).toEqual([]);
  });
});

describe("a log that is off by something else", () => {
  it.each([
    ["twenty minutes", "09:40:03:12"],
    ["an hour and five seconds", "09:00:09:00"],
  ])("such as %s is a log outside its take", (_, start) => {
    expect(found(day(start), "MATCH415")).toHaveLength(1);
    expect(found(day(start), "MATCH422")).toEqual([]);
  });

  it("is not given an hour where it is so long that it fits at any", () => {
    const log = clipLog("C1", "focus_m,t", 24 * 300, () => "2.000,2.83", "09:00:00:00");
    expect(found({ notes: NOTES, logs: { "a.csv": log } }, "MATCH422")).toEqual([]);
  });
});
