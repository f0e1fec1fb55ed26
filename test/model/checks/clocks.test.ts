import { describe, expect, it } from "vitest";
import { logText } from "../../helpers/memory-show.ts";
import { clipLog, DAY, found, logFile, oneDay, pull } from "../../helpers/one-day.ts";

/** Two takes of four seconds that are pulled from 3 to 1.5 m from the first frame to the last, logged by a clock that is off. */
function offBy(frames: number, focus = "3-1.5 m") {
  const log = (clip: string, minute: string) => {
    const start = 24 * 2 - frames; // two seconds before the take, on the log's clock
    const label = `10:${minute}:0${Math.floor(start / 24)}:${String(start % 24).padStart(2, "0")}`;
    // frame 48 of the log is the take's first frame
    return clipLog(clip, "focus_m,t", 200, (i) => `${pull(3, 1.5, 48, 143)(i)},2.83`, label);
  };
  return {
    notes: [`1,1,A,C1,10:00:04:00,10:00:08:00,P50,2.8,${focus}`, `1,2,A,C2,10:05:04:00,10:05:08:00,P50,2.8,${focus}`],
    logs: { "a.csv": log("C1", "00"), "b.csv": log("C2", "05") },
  };
}

describe("a clock that is off by the same frames in all takes", () => {
  it("is proposed in frames where the notes' start and end tell it", () => {
    // the clip starts at 10:00:02:00 - frames on the log's clock, and the take at 10:00:04:00: log + frames = picture
    const [finding] = found(offBy(30), "MATCH418");
    expect(finding).toMatchObject({ severity: "check", file: logFile("a.csv"), field: "clock_offset_frames" });
    const proposed = Number(/clock_offset_frames: (-?\d+)/.exec(finding?.hint ?? "")?.[1]);
    // the ends are noted to 3 %, which the log is within for 5 frames of the first and 2 of the last
    expect(Math.abs(proposed - 30)).toBeLessThanOrEqual(3);
    expect(finding?.message).toContain("2 takes of camera A");
  });
  it("is not looked for where the logs fit as they are", () => {
    expect(found(offBy(0), "MATCH418")).toEqual([]);
  });
  it("is not proposed where the notes give one distance, or one that fits nowhere", () => {
    expect(found(offBy(30, "3 m"), "MATCH418")).toEqual([]);
    expect(found(offBy(30, "9-5 m"), "MATCH418")).toEqual([]);
  });
});

describe("two sync points", () => {
  const day = (clocks: string) => ({ notes: ["1,1,A,,10:00:00:00,10:00:02:00,P50,2.8,"], day: `clocks:\n  A: ${clocks}\n` });
  it("give the drift in ppm: 4 frames of 1/24 s in 5 hours are 9.26 ppm", () => {
    const [finding] = found(day('[{offset_frames: 1, from: "09:00:00:00"}, {offset_frames: 5, from: "14:00:00:00"}]'), "MATCH419");
    expect(finding).toMatchObject({ severity: "remark", file: DAY, line: 4 });
    expect(finding?.message).toContain("9.26 ppm");
  });
  it("with 3.6 s an hour between them are two rates, and no drift", () => {
    // 86 frames of 1/24 s are 3.58 s
    const [finding] = found(day('[{offset_frames: 0, from: "09:00:00:00"}, {offset_frames: 86, from: "10:00:00:00"}]'), "MATCH420");
    expect(finding).toMatchObject({ severity: "check", file: DAY });
    expect(finding?.message).toContain("23.976");
  });
  it("within the limit are fine", () => {
    expect(found(day('[{offset_frames: 1, from: "09:00:00:00"}, {offset_frames: 2, from: "14:00:00:00"}]'), "MATCH419")).toEqual(
      [],
    );
  });
  it("hold one after the other: the second replaces the first", () => {
    const log = logText(["camera: A"], "focus_m,t", "15:00:00:00", 24, () => "3.000,2.83");
    const takes = (clocks: string) =>
      oneDay({
        notes: ["1,1,A,,15:00:00:05,15:00:01:05,P50,2.8,"],
        logs: { "a.csv": log },
        day: `clocks:\n  A: ${clocks}\n`,
      }).summary.takes[0]?.framesLogged;
    expect(takes('[{offset_frames: 1, from: "09:00:00:00"}, {offset_frames: 5, from: "14:00:00:00"}]')).toBe(24);
    expect(takes('[{offset_frames: 5, from: "14:00:00:00"}, {offset_frames: 1, from: "09:00:00:00"}]')).toBe(24);
    expect(takes('[{offset_frames: 2}, {offset_frames: 5, from: "14:00:00:00"}]')).toBe(24);
  });
});

describe("labels that leave out what drop-frame leaves out", () => {
  const show = "title: Small\ncode: SMALL\nrate: 30000/1001\n";
  const log = (labels: readonly string[], keys = "") =>
    `# clip: C1\n${keys}timecode,focus_m,t\n${labels.map((label) => `${label},3.000,2.83\n`).join("")}`;
  const day = (labels: readonly string[], keys = "") => ({
    notes: ["1,1,A,C1,10:00:59:00,10:01:01:00,P50,2.8,"],
    logs: { "a.csv": log(labels, keys) },
    files: { "show.yaml": show },
  });
  const second = (clock: string, from = 0) =>
    Array.from({ length: 30 - from }, (_, i) => `${clock}:${String(i + from).padStart(2, "0")}`);

  it("are a check at the first row after them in a log that is read as non-drop-frame", () => {
    const [finding] = found(day([...second("10:00:59"), ...second("10:01:00", 2)]), "MATCH421");
    // header line 2, thirty rows from line 3, the next is line 33
    expect(finding).toMatchObject({ severity: "check", file: logFile("a.csv"), line: 33, column: 1, field: "timecode" });
  });
  it("are right when the log says drop-frame, and at the tenth minute nothing is left out", () => {
    expect(found(day([...second("10:00:59"), ...second("10:01:00", 2)], "# drop_frame: true\n"), "MATCH421")).toEqual([]);
    expect(found(day([...second("10:00:59"), ...second("10:01:00")]), "MATCH421")).toEqual([]);
  });
});

describe("a log of another sample rate", () => {
  it("gives each frame its nearest sample and says how far it is", () => {
    // 60 samples a second: sample n is at frame 0.4 n; frames 1, 3 have their nearest sample 0.2 frame away
    const rows = Array.from({ length: 60 }, (_, i) => `10:00:00:${String(i).padStart(2, "0")},${(3 + i / 100).toFixed(2)},2.83\n`);
    const log = `# clip: C1\n# rate: 60\ntimecode,focus_m,t\n${rows.join("")}`;
    const { summary, findings, day } = oneDay({
      notes: ["1,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,"],
      logs: { "a.csv": log },
    });
    const found_ = findings.find((f) => f.code === "MATCH417");
    expect(found_).toMatchObject({ severity: "remark", file: logFile("a.csv"), line: 4 });
    expect(found_?.message).toContain("0.20 at most");
    expect(day.rows).toEqual({ read: 60, used: 24, unmatched: 36, rejected: 0 });
    const focus = summary.takes[0]?.perFrame?.focusDioptres;
    // frame 2 is sample 5, frame 4 sample 10
    expect(1 / (focus?.[2] ?? 0)).toBeCloseTo(3.05, 9);
    expect(1 / (focus?.[4] ?? 0)).toBeCloseTo(3.1, 9);
  });
  it("keeps seconds the same way", () => {
    const rows = Array.from({ length: 10 }, (_, i) => `${(i / 10).toFixed(1)},3.00,2.83\n`);
    const log = `# clip: C1\ntime_s,focus_m,t\n${rows.join("")}`;
    const { day, findings } = oneDay({ notes: ["1,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,"], logs: { "a.csv": log } });
    // ten samples a second reach ten frames; the others stay without
    expect(day.rows).toMatchObject({ used: 10 });
    // sample 1 is at frame 2.4, sample 3 at 7.2: 0.4 at most
    expect(findings.find((f) => f.code === "MATCH417")?.message).toContain("0.40 at most");
  });
});
