import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/core/finding.ts";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { type LogContext, logSource, readLensLog } from "../../src/ingest/log/lens-log.ts";
import type { LensLog } from "../../src/ingest/log/log-record.ts";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { readOpenTrackIo } from "../../src/ingest/samples/opentrackio.ts";
import { diskFolder } from "../helpers/disk-folder.ts";

const SHOW: LogContext = { rate: { num: 24, denom: 1 }, dropFrame: false, maps: [], date: "2031-05-06" };

function readLog(column: string, cells: readonly string[]): { log: LensLog; findings: readonly Finding[] } {
  const found = collectFindings();
  const rows = cells.map((cell, i) => `00:00:00:${String(i).padStart(2, "0")},${cell}\n`).join("");
  const log = readLensLog(logSource("logs/x.csv", new TextEncoder().encode(`timecode,${column}\n${rows}`)), SHOW, found);
  if (log === null) throw new Error(found.list()[0]?.message);
  return { log, findings: found.list() };
}

describe("a number that stands for something else in the focus column", () => {
  it.each([
    ["focus_m", "0", "nothing was measured"],
    ["focus_m", "-1", "nothing was measured"],
    ["focus_m", "999", "infinity"],
    ["focus_m", "9999.9", "infinity"],
    ["focus_m", "1000", "infinity"],
    ["focus_m", "65535", "infinity"],
    ["focus_m", "3.4028235e38", "infinity"],
    // 1000 m / 0.3048 m = 3280.84 ft; 1000 m = 1,000,000 mm.
    ["focus_ft", "3280.84", "infinity"],
    ["focus_mm", "1000000", "infinity"],
    ["focus_in", "65535", "infinity"],
    ["focus_dpt", "-1", "nothing was measured"],
    ["focus_dpt", "9999", "nothing was measured"],
  ])("%s %s loses its cell, with what it probably means", (column, text, means) => {
    const { log, findings } = readLog(column, ["2", text]);
    expect(log.columns.focus?.[0]).not.toBeNaN();
    expect(log.columns.focus?.[1]).toBeNaN();
    expect([...log.rejected]).toEqual([0, 0]);
    expect(findings.map((f) => [f.code, f.severity, f.line, f.column, f.field])).toEqual([["LOG225", "check", 3, 13, column]]);
    expect(findings[0]?.message).toContain(means);
    expect(findings[0]?.hint).toContain("inf");
  });

  it("is told of once a file, at its first row and with the number of rows", () => {
    const { findings } = readLog("focus_m", ["2", "9999", "9999", "3", "9999"]);
    expect(findings.map((f) => [f.code, f.line])).toEqual([["LOG225", 3]]);
    expect(findings[0]?.message).toContain("focus_m is 9999 here and in 2 more rows");
  });

  it.each([
    ["focus_m", ["24.5", "65", "120", "500", "inf"]],
    ["focus_ft", ["99", "100", "200", "250", "inf"]],
    // A pull that passes 999 mm and 9999 mm is a pull: its neighbours are near.
    ["focus_mm", ["990", "999", "999", "1010"]],
    ["focus_mm", ["9500", "9999", "10400"]],
    // A held distance is a distance, however it looks.
    ["focus_mm", ["999", "999", "999"]],
    ["focus_mm", ["1000", "1000", "2000"]],
    ["focus_cm", ["100", "1000"]],
    ["focus_in", ["999"]],
    ["focus_dpt", ["0", "0.5", "inf"]],
  ])("is no real distance: %s %j stays as it is", (column, cells) => {
    const { log, findings } = readLog(column, cells);
    expect(findings).toEqual([]);
    expect(log.columns.focus?.some(Number.isNaN)).toBe(false);
  });

  it("may be a short distance by its unit, and stands apart from all others then", () => {
    const { log, findings } = readLog("focus_mm", ["2400", "2380", "9999", "9999", "2350"]);
    expect(findings.map((f) => [f.code, f.line])).toEqual([["LOG225", 4]]);
    expect([...(log.columns.focus ?? [])].map(Number.isNaN)).toEqual([false, false, true, true, false]);
  });

  it("is found in samples too", () => {
    const sample = (frame: number, focus: number): string =>
      JSON.stringify({
        timing: { timecode: { hours: 1, minutes: 0, seconds: 0, frames: frame, frameRate: { num: 24, denom: 1 } } },
        lens: { focusDistance: focus },
      });
    const found = collectFindings();
    const text = [2.5, 0, 9999, -1].map((focus, i) => sample(i, focus)).join("\n");
    const log = readOpenTrackIo(logSource("logs/x.jsonl", new TextEncoder().encode(text)), SHOW, found);
    expect([...(log?.columns.focus ?? [])]).toEqual([0.4, Number.NaN, Number.NaN, Number.NaN]);
    expect(found.list().map((f) => [f.code, f.line, f.field])).toEqual([
      ["LOG225", 2, "focus_m"],
      ["LOG225", 3, "focus_m"],
      ["LOG225", 4, "focus_m"],
    ]);
  });
});

describe("a word for no value", () => {
  it("counts as not logged, with one finding for all of them at the first", () => {
    const { log, findings } = readLog("focus_m,t", ["2,2.8", "NaN,2.8", "nan(ind),null", "-1.#IND,---", ",N/A"]);
    expect([...(log.columns.focus ?? [])].map(Number.isNaN)).toEqual([false, true, true, true, true]);
    expect([...(log.columns.t ?? [])].map(Number.isNaN)).toEqual([false, false, true, true, true]);
    expect(findings.map((f) => [f.code, f.severity, f.line, f.column, f.field])).toEqual([["LOG226", "check", 3, 13, "focus_m"]]);
    expect(findings[0]?.message).toContain("6 such cells in focus_m, t");
  });

  it("is not any other word: that loses its cell as an error", () => {
    const { findings } = readLog("focus_m", ["near"]);
    expect(findings.map((f) => [f.code, f.severity, f.line, f.column])).toEqual([["CSV122", "error", 2, 13]]);
  });
});

describe("the demo show", () => {
  it("has none of them: no false alarm", () => {
    const folder = diskFolder(fileURLToPath(new URL("../../data", import.meta.url)));
    const { input } = readShow(folder);
    if (input === null) throw new Error("the demo show cannot be read");
    const codes = input.dates.flatMap((date) => readDay(folder, input, date).findings.map((f) => f.code));
    expect(codes.filter((code) => /LOG22[5-8]|CSV11[78]|NOTE31[4-6]/.test(code))).toEqual([]);
  });
});
