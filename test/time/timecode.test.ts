import { readFileSync } from "node:fs";
import Timecode from "smpte-timecode";
import { describe, expect, test } from "vitest";
import { type FrameRate, nominalRate, parseFrameRate } from "../../src/time/frame-rate.ts";
import { formatTimecode, framesForward, framesPerDay, parseTimecode } from "../../src/time/timecode.ts";

/** Every rate of a production, with the length of its day as S. Andrews, TimecodeKit, prints it. */
const RATES: readonly [string, boolean, number][] = [
  ["23.976", false, 2_073_600],
  ["24", false, 2_073_600],
  ["25", false, 2_160_000],
  ["29.97", true, 2_589_408],
  ["29.97", false, 2_592_000],
  ["30", false, 2_592_000],
  ["47.952", false, 4_147_200],
  ["48", false, 4_147_200],
  ["50", false, 4_320_000],
  ["59.94", true, 5_178_816],
  ["59.94", false, 5_184_000],
  ["60", false, 5_184_000],
  ["119.88", true, 10_357_632],
  ["119.88", false, 10_368_000],
];

function rate(label: string): FrameRate {
  return parseFrameRate(label) as FrameRate;
}

function frameOf(text: string, label: string, drop = false): number | string {
  const result = parseTimecode(text, rate(label), drop);
  return result.ok ? result.frame : result.kind;
}

function problemOf(text: string, label: string, drop = false): string {
  const result = parseTimecode(text, rate(label), drop);
  return result.ok ? "" : result.problem;
}

describe("labels published by OpenTimelineIO", () => {
  const vectors: { cases: { rate: string; dropFrame: boolean; labels: [number, string][] }[] } = JSON.parse(
    readFileSync(new URL("../reference/timecode-labels.json", import.meta.url), "utf8"),
  );
  for (const { rate: label, dropFrame, labels } of vectors.cases) {
    test(`${label}${dropFrame ? " drop frame" : ""}: ${labels.length} labels are read and written alike`, () => {
      for (const [frame, text] of labels) {
        expect(frameOf(text, label, dropFrame), text).toBe(frame);
        expect(formatTimecode(frame, rate(label), dropFrame), String(frame)).toBe(text);
      }
    });
  }
});

describe("a whole day", () => {
  test.each(RATES)("%s (drop frame %s) has %d frames and comes back through its labels", (label, drop, day) => {
    expect(framesPerDay(rate(label), drop)).toBe(day);
    // A stride that is no multiple of any base, as in OpenTimelineIO's own sweep.
    let sweeps = 0;
    for (let frame = 0; frame < day; frame += 1113) {
      const text = formatTimecode(frame, rate(label), drop);
      const back = parseTimecode(text, rate(label), drop);
      if (!back.ok || back.frame !== frame)
        throw new Error(`frame ${frame} at ${label} is ${text}, which reads as ${JSON.stringify(back)}`);
      sweeps++;
    }
    expect(sweeps).toBe(Math.ceil(day / 1113));
    expect(formatTimecode(day, rate(label), drop)).toBe(formatTimecode(0, rate(label), drop));
    expect(formatTimecode(-1, rate(label), drop)).toBe(formatTimecode(day - 1, rate(label), drop));
  });

  test.each([
    ["29.97", 2],
    ["59.94", 4],
    ["119.88", 8],
  ])("drop frame at %s: counting labels one by one for eleven minutes, %d left out a minute but the tenth", (label, dropped) => {
    const base = nominalRate(rate(label));
    let frame = 0;
    for (let minute = 0; minute < 11; minute++) {
      for (let second = 0; second < 60; second++) {
        for (let f = 0; f < base; f++) {
          if (minute !== 0 && minute !== 10 && second === 0 && f < dropped) continue;
          const clock = `00:${String(minute).padStart(2, "0")}:${String(second).padStart(2, "0")}`;
          const text = `${clock};${String(f).padStart(base > 100 ? 3 : 2, "0")}`;
          const written = formatTimecode(frame, rate(label), true);
          if (written !== text) throw new Error(`frame ${frame} is ${text}, not ${written}`);
          frame++;
        }
      }
    }
    expect(frame).toBe(base * 60 * 11 - dropped * 9);
  });
});

describe("the package smpte-timecode as a second opinion", () => {
  test.each([
    ["23.976", false],
    ["24", false],
    ["25", false],
    ["29.97", true],
    ["29.97", false],
    ["30", false],
    ["48", false],
    ["50", false],
    ["59.94", true],
    ["59.94", false],
    ["60", false],
  ] as const)("%s, drop frame %s: both name the same frames", (label, drop) => {
    const { num, denom } = rate(label);
    for (let frame = 0; frame < framesPerDay(rate(label), drop); frame += 111_317) {
      const other = Timecode(frame, [num, denom], drop);
      const text = other.toString();
      expect(formatTimecode(frame, rate(label), drop)).toBe(text);
      expect(frameOf(text, label, drop)).toBe(other.frameCount);
    }
  });
});

describe("what is refused", () => {
  test("labels that drop frame leaves out, in every minute but each tenth (TTML2, drop mode dropNTSC)", () => {
    for (let minute = 0; minute < 60; minute++) {
      const kept = minute % 10 === 0;
      for (const f of ["00", "01"]) {
        const text = `10:${String(minute).padStart(2, "0")}:00;${f}`;
        expect(typeof frameOf(text, "29.97", true) === "number", text).toBe(kept);
        if (!kept) expect(frameOf(text, "29.97", true)).toBe("dropped-label");
        expect(frameOf(text, "29.97", false), text).toBeTypeOf("number");
      }
    }
    expect(frameOf("00:01:00;03", "59.94", true)).toBe("dropped-label");
    expect(frameOf("00:01:00;007", "119.88", true)).toBe("dropped-label");
    expect(frameOf("00:01:00;008", "119.88", true)).toBe(7200);
    expect(frameOf("00:01:01;00", "29.97", true)).toBe(1828);
  });

  test.each([
    ["24:00:00:00", "24", "hour 24"],
    ["99:00:00:00", "24", "hour 99"],
    ["00:60:00:00", "24", "minute 60"],
    ["00:75:00:00", "25", "minute 75"],
    ["00:00:60:00", "24", "second 60"],
    ["01:00:13:24", "24", "frame 24"],
    ["00:00:00:24", "23.976", "frame 24"],
    ["00:00:00:30", "29.97", "frame 30"],
    ["00:00:00:120", "119.88", "frame 120"],
  ])("%s at %s, and the problem names %s", (text, label, part) => {
    expect(frameOf(text, label)).toBe("range");
    expect(problemOf(text, label)).toContain(`"${text}" has ${part};`);
  });

  test.each([
    "pink elephants",
    "",
    "-01:00:13:13",
    "1:00:00:00",
    "01:00:00",
    "01:00:00:1x",
    "01:00:00:1",
    "x01:00:00:01",
    "01:00:00:01x",
    "01:00:00:01:02",
    "01:00:00:01\n02:00:00:00",
    "01:00:00,01",
    "01;00;00;01",
    "01:00:00.0001",
    "１0:00:00:00",
  ])("%j is no timecode", (text) => {
    expect(frameOf(text, "24")).toBe("form");
    expect(problemOf(text, "24")).toContain(`"${text.trim()}" is not written as hours:minutes:seconds:frames`);
  });

  test("drop frame at a rate that has none", () => {
    for (const label of ["23.976", "24", "25", "30", "47.952", "60"]) {
      expect(frameOf("01:00:00:00", label, true)).toBe("drop-rate");
      expect(problemOf("01:00:00:00", label, true)).toBe(`there is no drop-frame timecode at ${label} frames a second`);
    }
  });
});

test("the sign before the frames decides nothing: the flag does", () => {
  for (const sign of [":", ";", "."]) {
    expect(frameOf(`00:01:00${sign}02`, "29.97", true)).toBe(1800);
    expect(frameOf(`00:01:00${sign}02`, "29.97", false)).toBe(1802);
    expect(frameOf(`00:01:00${sign}02`, "24", false)).toBe(1442);
  }
  expect(frameOf("  14:22:07:11 ", "24")).toBe(((14 * 60 + 22) * 60 + 7) * 24 + 11);
});

test("frames have three digits at bases above a hundred, so that labels sort", () => {
  expect(formatTimecode(7, rate("119.88"), false)).toBe("00:00:00:007");
  expect(formatTimecode(119, rate("119.88"), false)).toBe("00:00:00:119");
  expect(formatTimecode(99, rate("100"), false)).toBe("00:00:00:99");
  expect(frameOf("00:00:00:07", "119.88")).toBe(7);
});

describe("framesForward", () => {
  test("counts past midnight", () => {
    const end = Number(frameOf("23:59:59:23", "24"));
    expect(framesForward(end, 0, rate("24"), false)).toBe(1);
    expect(framesForward(end, 24, rate("24"), false)).toBe(25);
    const dropEnd = Number(frameOf("23:59:59;29", "29.97", true));
    expect(framesForward(dropEnd, 1, rate("29.97"), true)).toBe(2);
  });

  test("is nothing from a frame to itself, and a day less one to the frame before", () => {
    expect(framesForward(100, 100, rate("24"), false)).toBe(0);
    expect(framesForward(100, 99, rate("24"), false)).toBe(2_073_599);
  });
});
