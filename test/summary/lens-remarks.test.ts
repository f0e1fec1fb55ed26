import { describe, expect, it } from "vitest";
import { digestDay } from "../../src/summary/digest.ts";
import { lensRemarks } from "../../src/summary/lens-remarks.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { LENS_50 } from "../fixtures/day-summary-kit.ts";

const digest = digestDay(exampleDaySummary(), []);
const take = digest.takes[0];
if (take === undefined) throw new Error("no take");
const day = (...remarks: readonly (string | null)[]) => ({
  ...digest,
  takes: remarks.map((text, i) => ({ ...take, take: String(i + 1), lens: LENS_50.id, remarks: text })),
});
const texts = (lens: typeof LENS_50, ...days: readonly (typeof digest)[]) => lensRemarks(lens, days).map((r) => r.text);
const LENS = { ...LENS_50, remarks: null };

describe("remarks on a lens", () => {
  it("are the kit's own, then those of takes that name the lens or speak of its condition", () => {
    const lens = { ...LENS, remarks: "focus scale re-marked in August" };
    expect(texts(lens, day("Soft on the turn", `${LENS.id} slips a little`, "Flare from the lamp, kept", null))).toEqual([
      "focus scale re-marked in August",
      `${LENS.id} slips a little`,
      "Flare from the lamp, kept",
    ]);
  });
  it("are no remarks on the acting, the boat or the lens state", () => {
    expect(texts(LENS, day("Gull in shot", "Same lens state as the end of 14B take 2", "Boat drifted out of frame"))).toEqual([]);
  });
  it("are those of takes that this lens served", () => {
    const other = day("Scratch on the front element");
    expect(texts(LENS, { ...other, takes: other.takes.map((t) => ({ ...t, lens: "P35" })) })).toEqual([]);
  });
});
