import { describe, expect, it } from "vitest";
import { readClock, readDate } from "../../../src/ingest/written/clock.ts";
import { readFocal } from "../../../src/ingest/written/focal.ts";
import { oneOf, readCircled, readStatus } from "../../../src/ingest/written/marks.ts";
import { readNd } from "../../../src/ingest/written/nd.ts";
import { readNumber } from "../../../src/ingest/written/number.ts";
import { readPages } from "../../../src/ingest/written/pages.ts";
import type { Reading } from "../../../src/ingest/written/reading.ts";
import { readRate } from "../../../src/ingest/written/setting.ts";
import { readShutter } from "../../../src/ingest/written/shutter.ts";

function hintOf(reading: Reading<unknown>): string {
  if (reading.ok) throw new Error(`was read as ${JSON.stringify(reading.value)}`);
  return reading.hint;
}

describe("readNd", () => {
  // Hand: density d is d / log10(2) stops: 0.6 / 0.30103 = 1.99316, 0.3 = 0.99658, 0.9 = 2.98974. A factor n is log2(n) stops.
  it.each([
    ["0.6", 1.99316],
    [".3", 0.99658],
    ["ND0.9", 2.98974],
    ["0.9ND", 2.98974],
    ["ND8", 3],
    ["nd 16", 4],
    ["2 stops", 2],
    ["1 stop", 1],
    ["1 1/3 stops", 1.33333],
    ["0.3+0.6", 2.98974],
    ["none", 0],
  ])("%s is %f stops", (text, stops) => {
    expect(readNd(text)).toEqual({ ok: true, value: expect.closeTo(stops, 4) });
  });

  it.each([
    ["16", 'ND16" (4.0 stops)'],
    ["8", '"0.8" (a density)'],
    ["4.2", "below 4"],
    ["ND9", '"0.9"'],
    ["ND1", "2 or more"],
    ["dark", "ND4"],
    ["0.3+x", "ND4"],
  ])("refuses %s with the likely readings", (text, hint) => {
    expect(hintOf(readNd(text))).toContain(hint);
  });
});

describe("readShutter", () => {
  it.each([
    ["172.8", { degrees: 172.8 }],
    ["180°", { degrees: 180 }],
    ["360 deg", { degrees: 360 }],
    ["1/48", { seconds: 1 / 48 }],
    ["1/50 s", { seconds: 0.02 }],
    ["0.02s", { seconds: 0.02 }],
  ])("reads %s", (text, value) => {
    expect(readShutter(text)).toEqual({ ok: true, value });
  });

  it("refuses an angle above 360 and asks whether it is a time", () => {
    expect(hintOf(readShutter("500"))).toContain("1/500");
    expect(readShutter("0").ok).toBe(false);
    expect(readShutter("half").ok).toBe(false);
  });
});

describe("readFocal", () => {
  it.each([
    ["35", 35, 35],
    ["50mm", 50, 50],
    ["35-60", 35, 60],
    ["60 to 35 mm", 60, 35],
    ["24.5 mm – 70mm", 24.5, 70],
  ])("%s is %f to %f mm", (text, from, to) => {
    expect(readFocal(text)).toEqual({ ok: true, value: { from, to } });
  });
  it.each(["wide", "0", "35,5", "3 in", "35-"])("refuses %s", (text) => {
    expect(readFocal(text).ok).toBe(false);
  });
});

describe("readNumber", () => {
  it.each([
    ["2.4", 2.4],
    ["-0.5", -0.5],
    ["+3", 3],
    [".5", 0.5],
    ["6.1e-4", 0.00061],
    [" 7 ", 7],
  ])("reads %s", (text, value) => {
    expect(readNumber(text)).toEqual({ ok: true, value });
  });
  it("reads a decimal comma where the file says so, and only there", () => {
    expect(readNumber("2,41", ",")).toEqual({ ok: true, value: 2.41 });
    expect(hintOf(readNumber("2,41"))).toContain("Write 2.41");
    expect(hintOf(readNumber("2.41", ","))).toContain("Write 2,41");
  });
  it.each([
    ["1,900", "1.900 or 1900"],
    ["2.4m", "Write 2.4"],
    ["2,41 m", "Write 2.41, without"],
    ["23O.0", "Write 230.0"],
    ["1 900 000", "thousands"],
    ["NaN", "empty"],
    ["--", "empty"],
    ["0x10", "plain number"],
    ["1e999", "plain number"],
  ])("refuses %s and names the likely reading", (text, hint) => {
    expect(hintOf(readNumber(text))).toContain(hint);
  });
});

describe("readClock", () => {
  it.each([
    ["08:30", 510],
    ["8:30", 510],
    ["23:59", 1439],
    ["00:40+1", 1480],
  ])("%s is minute %i of the day", (text, minutes) => {
    expect(readClock(text)).toEqual({ ok: true, value: minutes });
  });
  it("refuses 24:10 with the form past midnight", () => {
    expect(hintOf(readClock("24:10"))).toBe("Write 00:10+1.");
  });
  it.each(["8.30", "8:70", "40:00", "08:30:00", "8 am"])("refuses %s", (text) => {
    expect(readClock(text).ok).toBe(false);
  });
});

describe("readDate", () => {
  it("knows leap years", () => {
    expect(readDate("2028-02-29").ok).toBe(true);
    expect(readDate("2030-02-29").ok).toBe(false);
    expect(readDate("2000-02-29").ok).toBe(true);
    expect(readDate("2100-02-29").ok).toBe(false);
  });
  it.each(["06.05.2031", "2031-5-6", "2031-13-01", "today"])("refuses %s", (text) => {
    expect(readDate(text).ok).toBe(false);
  });
});

describe("readPages", () => {
  it.each([
    ["2 3/8", 19],
    ["5/8", 5],
    ["2", 16],
    ["2⅜", 19],
    ["1 0/8", 8],
  ])("%s is %i eighths", (text, eighths) => {
    expect(readPages(text)).toEqual({ ok: true, value: eighths });
  });
  it.each([
    ["1/2", "Write 4/8."],
    ["2.375", "Write 2 3/8."],
    ["9/8", "1 1/8"],
    ["some", "eighths"],
  ])("refuses %s with the form in eighths", (text, hint) => {
    expect(hintOf(readPages(text))).toContain(hint);
  });
});

describe("marks and words", () => {
  it("reads y, x, * and a tick as circled, blank and n as not", () => {
    for (const text of ["y", "X", "*", "yes", "✓"]) expect(readCircled(text)).toEqual({ ok: true, value: true });
    for (const text of ["", "n", "no", "-"]) expect(readCircled(text)).toEqual({ ok: true, value: false });
    expect(readCircled("maybe").ok).toBe(false);
  });
  it("reads words whatever their case and the sign between them", () => {
    expect(readStatus("False-Start")).toEqual({ ok: true, value: "false start" });
    expect(readStatus("NG")).toEqual({ ok: true, value: "ng" });
  });
  it("refuses other words with the nearest", () => {
    expect(hintOf(readStatus("incomplet"))).toContain('Did you mean "incomplete"?');
    expect(hintOf(oneOf("c", ["a", "b"]))).toContain("a or b");
  });
});

describe("a rate that is nearly one", () => {
  it.each([
    ["23,976", "Write 23.976, or exactly 24000/1001."],
    ["23.97", "Write 23.976, or exactly 24000/1001."],
    ["23.976 fps", "Write 23.976, or exactly 24000/1001."],
    ["29,97", "Write 29.97, or exactly 30000/1001."],
    ["59.94i", "Write 59.94, or exactly 60000/1001."],
    ["25 fps", "Write 25."],
    ["25p", "Write 25."],
    ["film", "Write 24, 25, 29.97 or an exact 24000/1001."],
  ])("is refused with the form to write: %s", (text, hint) => expect(readRate(text)).toMatchObject({ ok: false, hint }));
});

describe("a number with a unit behind it", () => {
  it.each([
    ["50mm", "mm", 'Write 50, without the unit "mm".'],
    ["45cm", "m", "The column is in m: write the figure in m, without a unit behind it."],
    ["6.5'", "m", "The column is in m: write the figure in m, without a unit behind it."],
    ["3ft", undefined, 'Write 3, without the unit "ft".'],
  ])("%s in a column of %s", (text, unit, hint) => expect(hintOf(readNumber(text, ".", unit))).toBe(hint));
});

describe("a status in other words", () => {
  it.each(["no good", "N.G.", "n/g", "bad"])("%s is refused, and ng is the word, never good", (text) => {
    expect(hintOf(readStatus(text))).toBe("Write ng for a take that is no good.");
  });
});
