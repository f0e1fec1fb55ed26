/** Findings of the show, the kit and across days on the show-wide findings page and in the camera report. */
import { describe, expect, it, vi } from "vitest";
import { finding } from "../../src/core/finding.ts";
import { cameraReport } from "../../src/pdf/camera-report.ts";
import { digestDay } from "../../src/summary/digest.ts";
import { findingsPage } from "../../src/view/findings/findings-page.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { exampleContext } from "../fixtures/site-context.ts";
import { itWith, look } from "../pdf/tools.ts";

vi.setConfig({ testTimeout: 120_000 });
const summary = exampleDaySummary();
const take = summary.takes[0]?.take.address ?? "";
const NOTES = `days/${summary.date}/notes.csv`;
const serial = {
  ...finding({
    code: "CHECK747",
    severity: "check",
    place: { file: "kit/lenses.csv", line: 3, column: 6 },
    message: "Serial twice",
    hint: "Mend it",
  }),
  accepted: "both are engraved 501",
};
const across = finding({
  code: "CHECK749",
  severity: "check",
  place: { file: NOTES, line: 2, column: 4 },
  message: "On two days",
  hint: "Mend it",
  take,
});

describe("findings of the show", () => {
  it("that are accepted stay on the page with the reason, and count no more; those across days lead to their take", () => {
    const digests = [digestDay(summary, [])];
    const without = findingsPage(digests, { ...exampleContext(summary), showFindings: [] });
    const page = findingsPage(digests, { ...exampleContext(summary), showFindings: [serial, across] });
    const checks = (counts: string): number => Number(/(\d+) to check/.exec(counts)?.[1] ?? 0);
    expect(checks(page.counts)).toBe(checks(without.counts) + 1);
    expect(page.show.map((view) => [view.code, view.word, view.hint])).toEqual([
      ["CHECK749", "Check", "Mend it."],
      ["CHECK747", "Accepted", "Accepted: both are engraved 501"],
    ]);
    expect(page.show[0]).toMatchObject({ hasTake: true, takeHref: `days/${summary.date}/takes/${take}.html` });
  });

  itWith("pdftotext", "stand in the camera report after the day's own, with the reason of those accepted", async () => {
    const options = { tool: { name: "Lens Daybook", version: "0.1.0" }, buildId: "7c41e09a" };
    const text = async (showFindings: readonly (typeof serial)[]) =>
      look("pdftotext", await cameraReport(summary, { ...options, showFindings }), ["-layout", "file", "-"]).replace(
        /[\s\u00a0\u202f]+/g,
        " ",
      );
    const report = await text([serial]);
    expect(report).toContain("In show.yaml and the kit: 0 errors, 0 to check, 0 remarks.");
    expect(report).toContain("Accepted: both are engraved 501");
    expect(report).toContain("kit/lenses.csv:3:6");
    expect(await text([])).not.toContain("In show.yaml and the kit");
  });
});
