import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/core/finding.ts";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { readFieldMaps } from "../../src/ingest/log/field-map.ts";
import { type LogContext, logSource, readLensLog } from "../../src/ingest/log/lens-log.ts";
import type { LensLog } from "../../src/ingest/log/log-record.ts";

const SHOW: LogContext = { rate: { num: 24, denom: 1 }, dropFrame: false, maps: [], date: "2031-05-06" };
const DROP: LogContext = { ...SHOW, rate: { num: 30000, denom: 1001 }, dropFrame: true };

function readLog(text: string, context = SHOW): { log: LensLog; findings: readonly Finding[] } {
  const found = collectFindings();
  const log = readLensLog(logSource("logs/x.csv", new TextEncoder().encode(text)), context, found);
  if (log === null) throw new Error(found.list()[0]?.message);
  return { log, findings: found.list() };
}

describe("the focus of a log", () => {
  // 1 ft = 0.3048 m and 1 in = 0.0254 m exactly, so that each of these is 2 m or its stated metres.
  it.each([
    ["focus_m", "2", 0.5],
    ["focus_mm", "2000", 0.5],
    ["focus_cm", "200", 0.5],
    ["focus_ft", "10", 1 / 3.048],
    ["focus_in", "100", 1 / 2.54],
    ["focus_dpt", "0.5", 0.5],
    ["focus_dpt", "0", 0],
    ["focus_dpt", "inf", 0],
    ["focus_m", "inf", 0],
    ["focus_ft", "Infinity", 0],
  ])("%s %s is %f dioptres", (column, text, dioptres) => {
    const { log, findings } = readLog(`timecode,${column}\n00:00:00:00,${text}\n`);
    expect(log.columns.focus?.[0]).toBeCloseTo(dioptres, 12);
    expect(log.focusField).toBe(column);
    expect(findings).toEqual([]);
  });

  it("is NaN where the cell is empty, without a finding", () => {
    const { log, findings } = readLog("timecode,focus_m,t\n00:00:00:00,,2.8\n");
    expect(log.columns.focus?.[0]).toBeNaN();
    expect(log.columns.t?.[0]).toBe(2.8);
    expect(findings).toEqual([]);
  });

  it("keeps from where it was measured, unconverted", () => {
    const { log } = readLog("# distance_from: front\ntimecode,focus_m\n00:00:00:00,2\n");
    expect(log.keys.distanceFrom).toBe("front");
    expect(log.columns.focus?.[0]).toBe(0.5);
  });
});

describe("the time of a log", () => {
  it("is the frame of the day at the log's own rate", () => {
    // 21:40:00:01 at 25: 78,000 s x 25 + 1.
    const { log } = readLog("# rate: 25\n# drop_frame: false\ntimecode,t\n21:40:00:01,4\n", DROP);
    expect(log.timing).toEqual({ kind: "timecode", frames: Int32Array.of(1_950_001) });
    expect(log.rate).toEqual({ num: 25, denom: 1 });
    expect(log.keys.dropFrame).toBe(false);
  });

  it("is counted in drop-frame where the show counts so and the log does not say", () => {
    // Published: 00:01:00;02 is frame 1800, 01:00:00;00 is frame 107892.
    const { log, findings } = readLog("timecode,t\n00:01:00;02,4\n01:00:00:00,4\n", DROP);
    expect(log.timing).toMatchObject({ frames: Int32Array.of(1800, 107_892) });
    expect(log.keys.dropFrame).toBeNull();
    expect(log.dropFrame).toBe(true);
    expect(findings).toEqual([]);
  });

  it("is not drop-frame at a rate that has none, whatever the show says", () => {
    const { log, findings } = readLog("# rate: 25\ntimecode,t\n00:01:00:00,4\n", DROP);
    expect(log.dropFrame).toBe(false);
    expect(findings).toEqual([]);
  });

  it("may be counted frames or seconds from a start", () => {
    const { log } = readLog("# start_timecode: 00:00:10:00\nframe,t\n0,4\n7,4\n");
    expect(log.timing).toEqual({ kind: "frame", frames: Int32Array.of(0, 7), start: 240 });
    const seconds = readLog("time_s,t\n0.0,4\n0.5,4\n").log;
    expect(seconds.timing).toEqual({ kind: "time", seconds: Float64Array.of(0, 0.5), start: null });
  });

  it("is the timecode where a log has several, and the others are kept as they are", () => {
    const { log, findings } = readLog("frame,timecode,t\n0,00:00:00:05,4\n");
    expect(log.timing).toMatchObject({ kind: "timecode", frames: Int32Array.of(5) });
    expect(log.unknown.map((column) => [column.name, column.text(0)])).toEqual([["frame", "0"]]);
    expect(findings).toEqual([]);
  });
});

describe("the keys and columns of a log", () => {
  it("are read with their convention", () => {
    const { log } = readLog(
      "# camera: B\n# clip: B001\n# slate: 24B\n# take: 3 PU\n# lens: P50\n# date: 2031-05-06\n# model: division\n" +
        "# direction: distort\n# radius: half-width\n# area_mm: 24.89x18.66\n# shading_radius: mm\n# shading_values: gain\n" +
        "# clock_offset_frames: -4\n# start_timecode: 01:00:00:00\nframe,lambda,a1\n0,0.1,0.2\n",
    );
    expect(log.keys).toMatchObject({
      camera: "B",
      clip: "B001",
      slate: "24B",
      take: "3 PU",
      lens: "P50",
      date: "2031-05-06",
      clockOffsetFrames: -4,
      startTimecode: "01:00:00:00",
      convention: {
        model: "division",
        direction: "distort",
        radius: "half-width",
        areaMm: { width: 24.89, height: 18.66 },
        shadingRadius: "mm",
        shadingValues: "gain",
      },
    });
    expect(log.keyPlace("slate")).toEqual({ file: "logs/x.csv", line: 3, column: 10, length: 3 });
    expect(log.keyPlace("decimal")).toEqual({ file: "logs/x.csv", line: null, column: null });
  });

  it("are found under other names through the first field map that fits, whose set the log's own keys outdo", () => {
    const maps = readFieldMaps(
      'none:\n  when: {header_has: ["Other"]}\n  columns: {Other: t}\n' +
        'unit:\n  when: {header_has: ["TC", "Dist [ft]"]}\n  decimal: ","\n  columns: {TC: timecode, "Dist [ft]": focus_ft}\n  set: {camera: B, lens: P35}\n',
      "kit/columns.yaml",
      collectFindings(),
    );
    const { log, findings } = readLog("# lens: P50\n TC ;Dist [ft];t\n00:00:00:01;10,0;2,8\n", { ...SHOW, maps });
    expect(findings).toEqual([]);
    expect(log.columns.focus?.[0]).toBeCloseTo(1 / 3.048, 12);
    expect(log.columns.t?.[0]).toBe(2.8);
    expect(log.keys).toMatchObject({ camera: "B", lens: "P50" });
    expect(log.keyPlace("camera")).toMatchObject({ file: "kit/columns.yaml", line: 8 });
    expect(log.cell(0, "focus")).toEqual({ text: "10,0", place: { file: "logs/x.csv", line: 3, column: 13, length: 4 } });
  });

  it("that identify a row are given row by row", () => {
    const { log } = readLog('timecode,camera,slate,take\n00:00:00:00,A,1, 2 \n00:00:00:00,B,1,"3, PU"\n');
    expect(log.rowKeys.camera?.(1)).toBe("B");
    expect(log.rowKeys.take?.(0)).toBe("2");
    expect(log.rowKeys.take?.(1)).toBe("3, PU");
    expect([...log.rejected]).toEqual([0, 0]);
  });

  it("that nobody knows are kept word for word", () => {
    const { log, findings } = readLog('timecode,t,Boom,"Wheel, V"\n00:00:00:00,4, in ,"14,8"\n');
    expect(log.unknown.map((column) => [column.name, column.text(0)])).toEqual([
      ["Boom", " in "],
      ["Wheel, V", "14,8"],
    ]);
    expect(findings.map((f) => [f.code, f.severity, f.field])).toEqual([["LOG209", "remark", "Boom"]]);
  });

  it("with a slip in the name are kept with the name that may be meant", () => {
    const { findings } = readLog("timecode,t,focal mm\n00:00:00:00,4,50\n");
    expect(findings[0]).toMatchObject({
      severity: "check",
      field: "focal mm",
      hint: expect.stringContaining("Rename it to focal_mm"),
    });
  });
});

describe("the rows of a log", () => {
  it("all count, the rejected ones included, whatever is written in them", () => {
    const cell = fc.constantFrom("", "2", "x", "00:00:00:00", "00:00:00:01", "00:00:00:99", '"', '"a"', "#", "inf");
    const row = fc.array(cell, { minLength: 2, maxLength: 4 }).map((cells) => cells.join(","));
    expect(() =>
      fc.assert(
        fc.property(fc.array(row, { maxLength: 12 }), (rows) => {
          const { log } = readLog(`timecode,focus_m,t\n${rows.join("\n")}\n`);
          const { timing } = log;
          if (timing.kind !== "timecode") return false;
          const used = timing.frames.filter((_, i) => log.rejected[i] === 0);
          // What is not rejected has a frame of its own.
          return timing.frames.length === log.rows && used.every((frame) => frame >= 0) && new Set(used).size === used.length;
        }),
      ),
    ).not.toThrow();
  });

  it("keep the place of each cell, counted in characters of the physical line", () => {
    const { log } = readLog("\ufeff# camera: A\r\n\r\ntimecode,remark,t\r\n00:00:00:00,éé𝄞,4\r\n");
    expect(log.lineOf(0)).toBe(4);
    expect(log.cell(0, "t")).toEqual({ text: "4", place: { file: "logs/x.csv", line: 4, column: 17, length: 1 } });
    expect(log.cell(0, "timecode").place).toMatchObject({ line: 4, column: 1, length: 11 });
  });

  it("are read at least as fast as a disk gives them", () => {
    const rows = Array.from({ length: 20_000 }, (_, i) => {
      const two = (n: number): string => String(n).padStart(2, "0");
      return `10:${two(Math.floor(i / 1440))}:${two(Math.floor(i / 24) % 60)}:${two(i % 24)},${(2 + (i % 100) / 100).toFixed(3)},2.84,35.0`;
    });
    const text = `timecode,focus_m,t,focal_mm\n${rows.join("\n")}\n`;
    const before = process.cpuUsage().user;
    const { log } = readLog(text);
    const seconds = (process.cpuUsage().user - before) / 1e6;
    expect(log.rows).toBe(20_000);
    // 0.6 MB; a reader with a string per cell needs several times this on the slowest machine that runs the tests.
    expect(seconds).toBeLessThan(0.5);
  });
});
