import { describe, expect, it } from "vitest";
import { rational } from "../../src/core/rational.ts";
import { convertFrame } from "../../src/model/clock.ts";
import { parseTimecode } from "../../src/time/timecode.ts";

const R24 = rational(24);
const R23976 = rational(24000, 1001);
const R25 = rational(25);
const R2997 = rational(30000, 1001);
const R30 = rational(30);

function frame(label: string, rate: typeof R24, drop = false): number {
  const parsed = parseTimecode(label, rate, drop);
  if (!parsed.ok) throw new Error(parsed.problem);
  return parsed.frame;
}

describe("a log's frame on the picture's clock", () => {
  it("keeps the label between rates of one nominal count", () => {
    expect(convertFrame(frame("10:00:00:12", R24), R24, false, R23976, false)).toBe(frame("10:00:00:12", R23976));
    expect(convertFrame(frame("10:00:00:12", R30), R30, false, R2997, true)).toBe(frame("10:00:00;12", R2997, true));
  });
  it("takes the next label where drop frame leaves the label out", () => {
    expect(convertFrame(frame("00:01:00:00", R30), R30, false, R2997, true)).toBe(1800);
  });
  it("keeps the second of the day between nominal counts and takes the nearest frame", () => {
    expect(convertFrame(frame("14:00:00:12", R24), R24, false, R25, false)).toBe(frame("14:00:00:13", R25));
    expect(convertFrame(frame("14:00:00:24", R25), R25, false, R24, false)).toBe(frame("14:00:00:23", R24));
  });
});
