import { describe, expect, it } from "vitest";
import { buildId, type DayFacts, dayKey, planDay } from "../../src/build/plan.ts";
import { DEFAULT_VFX, type VfxOptions } from "../../src/export/vfx/options.ts";

const facts = (vfx: Partial<VfxOptions> = {}): DayFacts => ({
  toolVersion: "1.0.0",
  programHash: "p",
  showFiles: [],
  dayFiles: [],
  previous: null,
  next: null,
  vfx: { ...DEFAULT_VFX, ...vfx },
});
const WHOLE = { interrupted: false, missing: null };

describe("the options for VFX", () => {
  it.each<Partial<VfxOptions>>([{ takes: "all" }, { maps: "none" }, { mapWidth: 960 }, { mapWidth: "full" }])(
    "are part of a day's key: %o builds it again, and the reason says so",
    (vfx) => {
      const before = facts();
      expect(dayKey(facts(vfx))).not.toBe(dayKey(before));
      expect(planDay(facts(vfx), { key: dayKey(before), facts: before }, WHOLE, false)).toEqual({
        run: true,
        reason: "other files for VFX are asked for",
      });
      expect(planDay(facts(vfx), { key: dayKey(facts(vfx)), facts: facts(vfx) }, WHOLE, false).run).toBe(false);
    },
  );

  it("do not change the id of the input, which pages and PDF print", () => {
    expect(buildId(facts({ takes: "all" }))).toBe(buildId(facts()));
  });
});

describe("the readers that get a PDF of their own", () => {
  const asked: DayFacts = { ...facts(), pdf: ["editorial"] };

  it("are part of a day's key: asking for one builds the day again, and the reason says so", () => {
    expect(dayKey(asked)).not.toBe(dayKey(facts()));
    expect(planDay(asked, { key: dayKey(facts()), facts: facts() }, WHOLE, false)).toEqual({
      run: true,
      reason: "PDFs for other readers are asked for",
    });
    expect(planDay(asked, { key: dayKey(asked), facts: asked }, WHOLE, false).run).toBe(false);
  });
});
