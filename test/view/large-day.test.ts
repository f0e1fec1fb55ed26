/** A day with more clips than a page prints: issue 6 caps every table at 2,000 rows, the rest is in the file. */
import { describe, expect, it } from "vitest";
import { finding } from "../../src/core/finding.ts";
import type { DaySummary } from "../../src/summary/types.ts";
import { dayContext } from "../../src/view/day/day-context.ts";
import { dayPage } from "../../src/view/day/day-page.ts";
import { slatesShown } from "../../src/view/day/slates-shown.ts";
import { dayFindingsPage } from "../../src/view/findings/day-findings-page.ts";
import { scenesPage } from "../../src/view/show/scenes-page.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { KIT } from "../fixtures/day-summary-kit.ts";
import { digestOf, takeOf } from "../fixtures/show-digests.ts";
import { exampleContext } from "../fixtures/site-context.ts";

/** Thousands stand apart by a thin space, counts keep their word by a hard one. */
const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");
const clips = (slate: string, count: number) => Array.from({ length: count }, () => slate);

describe("the slates that a day page has room for", () => {
  it("are whole slates up to 2,000 clips: one clip more and the last slate stays away", () => {
    expect([...slatesShown([...clips("1", 1500), ...clips("2", 500)])]).toEqual(["1", "2"]);
    expect([...slatesShown([...clips("1", 1500), ...clips("2", 501)])]).toEqual(["1"]);
  });

  it("count a slate that comes back later as a whole, and end at the first that does not fit", () => {
    expect([...slatesShown([...clips("1", 1000), ...clips("2", 500), ...clips("1", 600), "3"])]).toEqual(["1"]);
  });

  it("have the first slate even when it is longer than the page", () => {
    expect([...slatesShown([...clips("1", 2001), "2"])]).toEqual(["1"]);
  });
});

describe("a day of 2,006 clips", () => {
  const example = exampleDaySummary();
  // the take without a log: its row has the least to draw
  const noted = example.takes.find((t) => t.take.track === null);
  if (noted === undefined) throw new Error("no take without a log");
  const take = (slate: string, n: number) => ({
    ...noted,
    take: { ...noted.take, slate, take: String(n), address: `a-${slate}-${n}`, duplicate: false },
  });
  const slates = ["1", "2", "3"].flatMap((slate) => Array.from({ length: slate === "3" ? 6 : 1000 }, (_, i) => take(slate, i + 1)));
  const shift = { shiftMired: 12, lowestK: 4300, highestK: 4500, clips: 1000, leftOut: 0 };
  const compared = { cameras: ["A"], clips: 1000, light: null, withEi: null, beforeNd: null, colourTemperature: shift };
  const summary: DaySummary = {
    ...example,
    takes: slates,
    totals: { ...example.totals, slates: 3, takes: 2006, clips: 2006 },
    slateExposure: ["2", "3"].map((slate) => ({ ...compared, slate })),
  };
  const context = exampleContext(summary);
  const day = dayContext(summary, context);
  const page = dayPage(day);

  it("shows 2,000 of them in whole slates and says so, with the way to all", () => {
    expect(page.slates.map((slate) => [slate.slate, slate.rows.length])).toEqual([
      ["1", 1000],
      ["2", 1000],
    ]);
    expect(plain(page.more)).toBe("The first 2 000 clips of 2 006 stand here: 2 slates of 3. The filters look through these.");
    expect(page.allTakesHref).toBe("../../takes.html");
    expect(page.hasTakesFile).toBe(true);
    expect(plain(page.filters.all)).toBe("All 2 000 clips shown.");
  });

  it("groups the figures of the strip alike", () => {
    const takes = page.strip.find((fact) => fact.term === "Takes");
    expect([takes?.value, takes?.source].map((text) => plain(text ?? ""))).toEqual(["2 006", "in 2 006 clips"]);
  });

  it("leads from the exposure table to the rows of a slate, or to its first take where it has no rows", () => {
    expect(page.exposure.rows.map((row) => row.head.href)).toEqual(["#slate-2", "takes/a-3-1.html"]);
  });

  it("is linked so by the page of the scenes", () => {
    const takes = slates.map(({ take: { slate, take: n } }) => takeOf(`${slate} ${n} A`, { scene: "7" }));
    const scenes = scenesPage([digestOf("2031-05-06", 8, { takes })], KIT, context);
    const hrefs = scenes.scenes.rows.flatMap((row) => row.cells.flatMap((cell) => cell.links.map((link) => link.href)));
    expect(hrefs).toEqual(expect.arrayContaining(["days/2031-05-06/index.html#slate-2", "days/2031-05-06/takes/a-3-1.html"]));
    expect(hrefs.join()).not.toContain("#slate-3");
  });

  it("has the worst 2,000 of its findings on their page", () => {
    const findings = Array.from({ length: 2003 }, (_, i) =>
      finding({
        code: "MATCH405",
        severity: i < 2001 ? "remark" : "error",
        place: null,
        field: null,
        message: `${i}`,
        hint: "",
        take: null,
      }),
    );
    const list = dayFindingsPage(dayContext({ ...summary, findings }, context));
    expect(list.groups.map((group) => [group.id, group.findings.length])).toEqual([
      ["group-error", 2],
      ["group-remark", 1998],
    ]);
    expect(plain(list.more)).toContain("The 2 000 worst of 2 003 findings stand here");
  });

  it("is said only where something is left out", () => {
    expect(dayPage(dayContext(example, exampleContext(example))).more).toBe("");
    expect(dayFindingsPage(dayContext(example, exampleContext(example))).more).toBe("");
  });
});
