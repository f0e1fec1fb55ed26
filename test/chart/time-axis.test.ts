import { describe, expect, test } from "vitest";
import { secondMarks, timeAxis } from "../../src/chart/time-axis.ts";

const FILM = { num: 24, denom: 1 };
const NTSC = { num: 30_000, denom: 1001 };

describe("seconds of the time axis", () => {
  test("begin at the frame whose label says so", () => {
    // 14:22:07:11 is 13 frames before 14:22:08:00.
    const inFrame = ((14 * 60 + 22) * 60 + 7) * 24 + 11;
    expect(secondMarks(inFrame, 40, FILM, false)).toEqual([
      { frame: 13, second: 51_728, label: "14:22:08" },
      { frame: 37, second: 51_729, label: "14:22:09" },
    ]);
  });

  test("are two frames short at a minute where drop frame leaves labels out", () => {
    // Frame 1800 is 00:01:00;02, the first label of its minute; 00:01:01;00 follows 28 frames later.
    const marks = secondMarks(1770, 90, NTSC, true);
    expect(marks.map((m) => [m.frame, m.label])).toEqual([
      [0, "00:00:59"],
      [30, "00:01:00"],
      [58, "00:01:01"],
      [88, "00:01:02"],
    ]);
  });

  test("go on from 23:59:59 to 00:00:00", () => {
    expect(secondMarks(24 * 86_400 - 24, 48, FILM, false).map((m) => m.label)).toEqual(["23:59:59", "00:00:00"]);
  });
});

describe("the time axis", () => {
  const take = { inFrame: 0, durationFrames: 744, rate: FILM, dropFrame: false };

  test("runs from the first frame to the last, edge to edge", () => {
    const axis = timeAxis(take, 64, 1124);
    expect(axis.x(0)).toBe(64);
    expect(axis.x(744)).toBe(1124);
  });

  test("labels every five seconds of half a minute, and alternates a block a second", () => {
    const axis = timeAxis(take, 64, 1124);
    expect(axis.ticks.map((t) => t.label)).toEqual([
      "00:00:00",
      "00:00:05",
      "00:00:10",
      "00:00:15",
      "00:00:20",
      "00:00:25",
      "00:00:30",
    ]);
    expect(axis.blockSeconds).toBe(1);
    expect(axis.blocks).toHaveLength(16);
    expect(axis.blocks[1]?.x).toBeCloseTo(axis.x(48), 9);
    expect(axis.blocks[1]?.width).toBeCloseTo(axis.x(24) - axis.x(0), 9);
  });

  test("says so when a block stands for more than a second", () => {
    expect(timeAxis({ ...take, durationFrames: 24 * 900 }, 64, 1124).blockSeconds).toBe(5);
  });

  test("has neither ticks nor blocks without an extent", () => {
    const axis = timeAxis({ ...take, inFrame: null, durationFrames: 0 }, 64, 1124);
    expect(axis.ticks).toEqual([]);
    expect(axis.blocks).toEqual([]);
  });
});
