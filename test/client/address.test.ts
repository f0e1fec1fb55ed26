import { describe, expect, it } from "vitest";
import { frameOf, hashOfTimecode, timecodeOfHash } from "../../src/client/take/address.ts";
import { rational } from "../../src/core/rational.ts";

/** 14:22:07:11 at 24 is frame ((14 x 60 + 22) x 60 + 7) x 24 + 11 = 1241459 of the day. */
const TAKE = { rate: rational(24), dropFrame: false, inFrame: 1_241_459, frames: 754 };
const NIGHT = { rate: rational(24), dropFrame: false, inFrame: 2_073_600 - 24, frames: 48 };
/** 00:01:00;02 drop frame at 29.97 is frame 1800: labels ;00 and ;01 are left out. */
const DROP = { rate: rational(30000, 1001), dropFrame: true, inFrame: 1790, frames: 100 };

describe("the frame in the address", () => {
  it("is written and read as a timecode", () => {
    expect(timecodeOfHash(hashOfTimecode("14:22:34:03"))).toBe("14:22:34:03");
    expect(timecodeOfHash("#tc=14%3A22%3A34%3A03")).toBe("14:22:34:03");
  });

  it("is none in any other fragment", () => {
    for (const hash of ["", "#focus", "#tc=", "#tc=%E0%A4%A"]) expect(timecodeOfHash(hash), hash).toBeNull();
  });
});

describe("a frame that a reader names", () => {
  it("is found by timecode, by its eight digits, and by number from 1", () => {
    // 26 s and 16 frames after 14:22:07:11: 26 x 24 + 16 = 640
    for (const text of ["14:22:34:03", " 14:22:34;03 ", "14:22:34.03", "14223403", "641"]) {
      expect(frameOf(text, TAKE), text).toEqual({ ok: true, frame: 640 });
    }
  });

  it("is counted on past midnight", () => {
    expect(frameOf("00:00:00:05", NIGHT)).toEqual({ ok: true, frame: 29 });
  });

  it("keeps to the labels of drop frame", () => {
    expect(frameOf("00:01:00;02", DROP)).toEqual({ ok: true, frame: 10 });
    expect(frameOf("00:01:00;00", DROP)).toMatchObject({ ok: false, problem: expect.stringContaining("leaves out") });
  });

  it("is refused in a sentence outside the take and when it is no timecode", () => {
    expect(frameOf("14:22:07:10", TAKE)).toEqual({ ok: false, problem: "14:22:07:10 is not in the take." });
    expect(frameOf("755", TAKE).ok).toBe(false);
    expect(frameOf("0", TAKE).ok).toBe(false);
    expect(frameOf("14:22:34:24", TAKE)).toMatchObject({ ok: false, problem: expect.stringContaining("frame 24") });
    expect(frameOf("later", TAKE)).toMatchObject({ ok: false, problem: expect.stringContaining("hours:minutes") });
  });
});
