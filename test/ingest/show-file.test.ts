import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/core/finding.ts";
import { collectFindings } from "../../src/core/findings/collect.ts";
import type { DayRecord, ShowRecord } from "../../src/ingest/records.ts";
import { DEFAULT_LIMITS } from "../../src/ingest/show/check-limits.ts";
import { readDayFile } from "../../src/ingest/show/day-file.ts";
import { readShowFile } from "../../src/ingest/show/show-file.ts";

function show(text: string): { show: ShowRecord | null; findings: readonly Finding[] } {
  const found = collectFindings();
  return { show: readShowFile(text, "show.yaml", found), findings: found.list() };
}

function day(text: string): { record: DayRecord; findings: readonly Finding[] } {
  const found = collectFindings();
  const file = readDayFile(`day: 3\ndate: 2031-05-06\n${text}`, "days/2031-05-06/day.yaml", "2031-05-06", found);
  return { record: file.record, findings: found.list() };
}

const MINIMUM = "title: The Small Show\ncode: SMALL\nrate: 24\n";

describe("readShowFile", () => {
  it("needs title, code and rate, and has defaults for the rest", () => {
    expect(show(MINIMUM)).toEqual({
      show: {
        title: "The Small Show",
        code: "SMALL",
        production: null,
        unit: "main",
        rate: { num: 24, denom: 1 },
        dropFrame: false,
        distances: "metric",
        paper: "A4",
        timeZone: null,
        timecodeOut: "exclusive",
        circleOfConfusionMm: null,
        limits: {
          ...DEFAULT_LIMITS,
          stopDifference: 0.15,
          focusDifferenceFraction: 0.1,
          logCoverage: 0.98,
          clockDriftFrames: 1,
          widerThanLensStops: 0.1,
          focalDifferenceFraction: 0.05,
          logEdgeSeconds: 1,
          stopJumpStops: 1,
          distortionPercent: 20,
          mealHours: 6,
          heightDifferenceM: 0.05,
          angleDifferenceDeg: 1,
          whiteBalanceMired: 50,
        },
        accepted: [],
      },
      findings: [],
    });
  });

  it.each(["title", "code", "rate"])("gives nothing without %s", (key) => {
    const { show: read, findings } = show(MINIMUM.replace(new RegExp(`^${key}:.*\n`, "m"), ""));
    expect(read).toBeNull();
    expect(findings).toEqual([expect.objectContaining({ code: "SHOW603", severity: "error", field: key })]);
  });

  it("takes texts as they are written, whatever YAML would make of them", () => {
    const { show: read } = show("title: 007\ncode: 1e3\nrate: 24000/1001\nproduction: no\nunit: 2031-05-06\n");
    expect(read).toMatchObject({
      title: "007",
      code: "1e3",
      production: "no",
      unit: "2031-05-06",
      rate: { num: 24000, denom: 1001 },
    });
  });

  it("reads a circle of confusion for each sensor mode", () => {
    const read = show(`${MINIMUM}circle_of_confusion_mm: {OPEN: 0.02, SQZ: x}\n`);
    expect(read.show?.circleOfConfusionMm).toEqual(new Map([["OPEN", 0.02]]));
    expect(read.findings[0]).toMatchObject({ code: "SHOW604", line: 4, column: 43, field: "circle_of_confusion_mm.SQZ" });
  });

  it("refuses drop-frame at a rate that has none", () => {
    const read = show(`${MINIMUM}drop_frame: true\n`);
    expect(read.show?.dropFrame).toBe(false);
    expect(read.findings[0]).toMatchObject({ code: "SHOW610", line: 4, column: 13 });
    expect(show("title: x\ncode: X\nrate: 29.97\ndrop_frame: true\n").show?.dropFrame).toBe(true);
  });

  it("loses a refused limit only, and names the key that may be meant", () => {
    const read = show(`${MINIMUM}check: {stop_diference: 0.3, log_coverage: 2, clock_drift_frames: 3}\n`);
    expect(read.show?.limits).toMatchObject({ logCoverage: 0.98, clockDriftFrames: 3, stopDifference: 0.15 });
    expect(read.findings.map((f) => f.code).sort()).toEqual(["SHOW604", "SHOW605"]);
    expect(read.findings.find((f) => f.code === "SHOW605")?.hint).toContain('"stop_difference"');
  });

  it("gives nothing for a file that is no map", () => {
    expect(show("- a\n- b\n")).toMatchObject({ show: null, findings: [{ code: "SHOW602" }] });
    expect(show("")).toMatchObject({ show: null });
  });

  it.each(["constructor", "__proto__", "toString"])("takes the name %s for a key that is not known", (key) => {
    expect(show(`${MINIMUM}${key}: x\n`).findings.map((finding) => [finding.code, finding.field])).toEqual([["SHOW605", key]]);
  });

  it("survives an alias that holds itself", () => {
    const { findings } = show(`${MINIMUM}production: &a [*a]\n`);
    expect(findings.map((finding) => finding.code)).toEqual(["SHOW620", "SHOW604"]);
  });
});

describe("readDayFile", () => {
  it("reads times as minutes of the day, past midnight counting on", () => {
    const { record, findings } = day('call: 18:00\nfirst_shot: 18:40\nmeals:\n  - {out: "22:15", in: 23:00}\nwrap: 02:10+1\n');
    expect(findings).toEqual([]);
    expect(record).toMatchObject({ call: 1080, firstShot: 1120, meals: [{ out: 1335, in: 1380 }], wrap: 1570 });
  });

  it("reads scenes as text, pages in eighths and clocks of each camera", () => {
    const { record } = day(
      'scheduled:\n  - {scene: 5, pages: "1 5/8", seconds: 95}\n  - {scene: 5.10, pages: 2}\ncompleted: [5, 5.10, 007]\n' +
        'clocks:\n  A: {offset_frames: 3, from: "10:15:30;00"}\n  B: [{offset_frames: -1}, {offset_frames: 2, from: "12:00:00:00"}]\n' +
        "contacts: {office: 555-01, script: [x, y]}\nsound_rolls: [S01, 2]\n",
    );
    expect(record.scheduled).toEqual([
      { scene: "5", eighths: 13, seconds: 95 },
      { scene: "5.10", eighths: 16, seconds: null },
    ]);
    expect(record.completed).toEqual(["5", "5.10", "007"]);
    expect(record.clocks.map((c) => [c.camera, c.offsetFrames, c.from])).toEqual([
      ["A", 3, "10:15:30;00"],
      ["B", -1, null],
      ["B", 2, "12:00:00:00"],
    ]);
    expect(record.contacts).toEqual([
      { role: "office", text: "555-01" },
      { role: "script", text: "x, y" },
    ]);
    expect(record.soundRolls).toEqual(["S01", "2"]);
  });

  it("points at a wrap before the call, as a night that forgot its +1 has it", () => {
    expect(day("call: 18:00\nwrap: 02:10\n").findings).toEqual([
      expect.objectContaining({ code: "SHOW613", severity: "check", field: "wrap", line: 4, column: 7 }),
    ]);
  });

  it("uses the folder's date where the file says another", () => {
    const found = collectFindings();
    const { record } = readDayFile("day: 3\ndate: 2031-05-07\n", "day.yaml", "2031-05-06", found);
    expect(record.date).toBe("2031-05-06");
    expect(found.list()).toEqual([expect.objectContaining({ code: "SHOW607", severity: "error", line: 2, column: 7 })]);
  });
});
