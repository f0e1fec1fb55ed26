import { describe, expect, it } from "vitest";
import { type Files, logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const DATE = "2030-02-03";
const NOTES = "slate,take,camera,clip,tc_in,tc_out,lens,stop,focus\n";

function show(notes: string, logs: Readonly<Record<string, string>>, day = ""): Files {
  return {
    ...SMALL_KIT,
    [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n${day}`,
    [`days/${DATE}/notes.csv`]: NOTES + notes,
    ...Object.fromEntries(Object.entries(logs).map(([name, text]) => [`days/${DATE}/logs/${name}`, text])),
  };
}

const still = (): string => "3.000,2.83";

function codes(findings: readonly { code: string }[]): string[] {
  return findings.map((finding) => finding.code);
}

describe("log rows and takes", () => {
  it("go together by clip, and what lies before or after the take is unmatched", () => {
    const log = logText(["clip: A001C001", "lens: P50"], "focus_m,t", "10:00:00:00", 48, still);
    const { day, summary } = summarise(show("1,1,A,A001C001,10:00:00:12,10:00:01:12,P50,2.8,3 m\n", { "a.csv": log }), DATE);
    expect(day.rows).toEqual({ read: 48, used: 24, unmatched: 24, rejected: 0 });
    expect(summary.takes[0]?.framesMissing).toBe(0);
  });

  it("go together by slate and take where there is no clip, and the camera tells two cameras apart", () => {
    const log = (camera: string) =>
      logText([`camera: ${camera}`, "slate: 7A", "take: 2", "lens: P50"], "focus_m,t", "10:00:00:00", 24, still);
    const notes = "7A,2,A,,10:00:00:00,10:00:01:00,P50,2.8,3 m\n7A,2,B,,10:00:00:00,10:00:01:00,P50,2.8,3 m\n";
    const { summary } = summarise(show(notes, { "a.csv": log("A"), "b.csv": log("B") }), DATE);
    expect(summary.takes.map((take) => [take.take.address, take.take.logFiles])).toEqual([
      ["a-7a-2", [`days/${DATE}/logs/a.csv`]],
      ["b-7a-2", [`days/${DATE}/logs/b.csv`]],
    ]);
  });

  it("go together by camera and timecode for a log of the whole day, across midnight", () => {
    const log = logText(["camera: A", "lens: P50"], "focus_m,t", "23:59:58:00", 96, still);
    const notes = "1,1,A,,23:59:59:00,00:00:01:00,P50,2.8,3 m\n";
    const { day, summary } = summarise(show(notes, { "day.csv": log }, 'call: "18:00"\n'), DATE);
    expect(summary.takes[0]?.framesLogged).toBe(48);
    expect(day.rows).toEqual({ read: 96, used: 48, unmatched: 48, rejected: 0 });
  });

  it("are found although the log's clock is off by the frames it says", () => {
    const log = logText(["clip: C1", "lens: P50", "clock_offset_frames: -10"], "focus_m,t", "10:00:00:10", 24, still);
    const { summary } = summarise(show("1,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,3 m\n", { "a.csv": log }), DATE);
    expect(summary.takes[0]?.framesLogged).toBe(24);
  });

  it("name a gap by its first and last missing frame", () => {
    const log = logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 24, still)
      .split("\n")
      .filter((line) => !/^10:00:00:1[0-3],/.test(line))
      .join("\n");
    const { summary } = summarise(show("1,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,3 m\n", { "a.csv": log }), DATE);
    expect(summary.takes[0]?.gaps.map(({ from, to, frames }) => ({ from, to, frames }))).toEqual([
      { from: "10:00:00:10", to: "10:00:00:13", frames: 4 },
    ]);
    expect(codes(summary.findings)).toContain("MATCH413");
  });

  it("use a take's own log before a log of the day, and say so", () => {
    const own = logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 20, () => "2.000,2.83");
    const all = logText(["camera: A", "lens: P50"], "focus_m,t", "10:00:00:00", 24, still);
    const { day, summary } = summarise(
      show("1,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,2 m\n", { "all.csv": all, "own.csv": own }),
      DATE,
    );
    expect(summary.takes[0]?.take.logFiles).toEqual([`days/${DATE}/logs/own.csv`]);
    expect(day.rows).toEqual({ read: 44, used: 20, unmatched: 24, rejected: 0 });
    expect(codes(day.findings)).toContain("MATCH416");
  });

  it("tell when the key says one take and the timecode another", () => {
    const log = logText(["slate: 1", "take: 1", "camera: A", "lens: P50"], "focus_m,t", "10:10:00:00", 24, still);
    const notes = "1,1,A,,10:00:00:00,10:00:01:00,P50,2.8,3 m\n1,2,A,,10:10:00:00,10:10:01:00,P50,2.8,3 m\n";
    const { day } = summarise(show(notes, { "a.csv": log }), DATE);
    const found = day.findings.find((finding) => finding.code === "MATCH403");
    expect(found).toMatchObject({ file: `days/${DATE}/logs/a.csv`, line: 6, column: 1, take: "a-1-1" });
    expect(day.rows.unmatched).toBe(24);
  });

  it("say when no take has the log's key", () => {
    const log = logText(["clip: NOBODY", "lens: P50"], "focus_m,t", "10:00:00:00", 24, still);
    const { day } = summarise(show("1,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,3 m\n", { "a.csv": log }), DATE);
    expect(day.findings.find((finding) => finding.code === "MATCH401")).toMatchObject({ file: `days/${DATE}/logs/a.csv`, line: 1 });
    expect(codes(day.findings)).toContain("MATCH405");
  });

  it("give the take its extent where the notes have none", () => {
    const log = logText(["slate: 1", "take: 1", "camera: A", "lens: P50"], "focus_m,t", "10:00:00:05", 36, still);
    const { summary } = summarise(show("1,1,A,,,,P50,2.8,3 m\n", { "a.csv": log }), DATE);
    expect(summary.takes[0]).toMatchObject({ timecodeIn: "10:00:00:05", timecodeOut: "10:00:01:17", framesLogged: 36 });
  });
});

describe("two rows with one address", () => {
  it("are an error at the later row, which counts in no total", () => {
    const notes = "1,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,3 m\n1,1,A,C2,10:05:00:00,10:05:01:00,P50,2.8,3 m\n";
    const { summary } = summarise(show(notes, {}), DATE);
    expect(summary.findings.find((finding) => finding.code === "MATCH406")).toMatchObject({ severity: "error", line: 3 });
    expect(summary.takes.map((take) => take.take.duplicate)).toEqual([false, true]);
    expect(summary.totals).toMatchObject({ takes: 1, clips: 1, framesExpected: 24 });
  });
});

describe("the lens of a take", () => {
  it("is the log's, and the note that differs is pointed at with the log's name in the hint", () => {
    const log = logText(["clip: C1", "lens: P35"], "focus_m,t", "10:00:00:00", 24, still);
    const { summary } = summarise(show("1,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,3 m\n", { "a.csv": log }), DATE);
    expect(summary.takes[0]?.take.lensId).toBe("P35");
    const found = summary.findings.find((finding) => finding.code === "CHECK701");
    expect(found).toMatchObject({ file: `days/${DATE}/notes.csv`, line: 2, field: "lens" });
    expect(found?.hint).toContain("a.csv");
  });
  it("that the kit does not have is named with the nearest id that it has", () => {
    const { summary } = summarise(show("1,1,A,C1,10:00:00:00,10:00:01:00,p-50,2.8,3 m\n", {}), DATE);
    expect(summary.findings.find((finding) => finding.code === "CHECK706")?.hint).toContain('"P50"');
  });
});
