import { describe, expect, it } from "vitest";
import { buildId, type DayFacts, dayKey, planDay } from "../../src/build/plan.ts";

const FACTS: DayFacts = {
  toolVersion: "1.0.0",
  programHash: "p1",
  showFiles: [
    { file: "show.yaml", sha256: "a" },
    { file: "kit/lenses.csv", sha256: "b" },
  ],
  dayFiles: [
    { file: "days/2026-03-14/notes.csv", sha256: "c" },
    { file: "days/2026-03-14/logs/a.csv", sha256: "d" },
  ],
  previous: null,
  next: { date: "2026-03-15", day: 2 },
};
const WHOLE = { interrupted: false, missing: null };
const stored = (facts: DayFacts) => ({ key: dayKey(facts), facts });

describe("dayKey", () => {
  it("does not depend on the order of the files", () => {
    const turned = { ...FACTS, showFiles: [...FACTS.showFiles].reverse(), dayFiles: [...FACTS.dayFiles].reverse() };
    expect(dayKey(turned)).toBe(dayKey(FACTS));
  });

  it.each<[string, Partial<DayFacts>]>([
    ["the version", { toolVersion: "1.0.1" }],
    ["the program", { programHash: "p2" }],
    ["a show file", { showFiles: [{ file: "show.yaml", sha256: "a2" }] }],
    ["a day file", { dayFiles: [] }],
    ["the day before", { previous: { date: "2026-03-13", day: 0 } }],
    ["the number of the day after", { next: { date: "2026-03-15", day: 3 } }],
  ])("changes with %s", (_what, change) => {
    expect(dayKey({ ...FACTS, ...change })).not.toBe(dayKey(FACTS));
  });
});

describe("buildId", () => {
  it("stays when only the program's own files change, so that reports of the same input can be compared", () => {
    expect(buildId({ ...FACTS, programHash: "p2" } as DayFacts)).toBe(buildId(FACTS));
  });

  it("changes with the input", () => {
    expect(buildId({ ...FACTS, dayFiles: [] })).not.toBe(buildId(FACTS));
  });
});

describe("planDay", () => {
  it("skips a day whose key is equal and whose outputs are there", () => {
    expect(planDay(FACTS, stored(FACTS), WHOLE, false)).toEqual({ run: false, reason: "unchanged" });
  });

  it("runs a day that was never built", () => {
    expect(planDay(FACTS, null, WHOLE, false)).toEqual({ run: true, reason: "new" });
  });

  it("runs a day whose output is gone, and names the output", () => {
    const plan = planDay(FACTS, stored(FACTS), { interrupted: false, missing: "packs/2026-03-14/day.json" }, false);
    expect(plan).toEqual({ run: true, reason: "output missing: packs/2026-03-14/day.json" });
  });

  it("runs everything when forced", () => {
    expect(planDay(FACTS, stored(FACTS), WHOLE, true)).toEqual({ run: true, reason: "forced" });
  });

  it.each<[string, DayFacts]>([
    ["notes.csv changed", { ...FACTS, dayFiles: [{ file: "days/2026-03-14/notes.csv", sha256: "old" }, FACTS.dayFiles[1]!] }],
    ["logs/a.csv is new", { ...FACTS, dayFiles: [FACTS.dayFiles[0]!] }],
    ["logs/b.csv is gone", { ...FACTS, dayFiles: [...FACTS.dayFiles, { file: "days/2026-03-14/logs/b.csv", sha256: "x" }] }],
    ["kit/lenses.csv changed", { ...FACTS, showFiles: [FACTS.showFiles[0]!, { file: "kit/lenses.csv", sha256: "old" }] }],
    ["made by version 0.9.0, this is 1.0.0", { ...FACTS, toolVersion: "0.9.0" }],
    ["the program changed", { ...FACTS, programHash: "old" }],
    ["the day after changed its number or date", { ...FACTS, next: null }],
  ])("says why: %s", (reason, before) => {
    expect(planDay(FACTS, stored(before), WHOLE, false)).toEqual({ run: true, reason });
  });

  it("names the first of several changes and counts the others", () => {
    expect(planDay(FACTS, stored({ ...FACTS, dayFiles: [], showFiles: [] }), WHOLE, false).reason).toBe(
      "notes.csv is new and 3 more",
    );
  });

  it("runs a day whose files a stopped build was putting in place, even when the key is equal", () => {
    const plan = planDay(FACTS, stored(FACTS), { interrupted: true, missing: null }, false);
    expect(plan).toEqual({ run: true, reason: "the last build did not end" });
  });

  it("runs a day whose record says that it was not finished", () => {
    expect(planDay(FACTS, { key: "unfinished", facts: FACTS }, WHOLE, false).reason).toBe("the last build did not end");
  });
});
