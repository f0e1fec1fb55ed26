/** Findings of the show, the kit and across days on the show-wide findings page and in the camera report. */
import { describe, expect, it, vi } from "vitest";
import { finding } from "../../src/core/finding.ts";
import { FINDINGS_COLUMNS } from "../../src/export/findings-csv.ts";
import { cameraReport } from "../../src/pdf/camera-report.ts";
import { digestDay } from "../../src/summary/digest.ts";
import { findingsPage, MOST_FINDINGS } from "../../src/view/findings/findings-page.ts";
import { linkTableFiles, tableFiles } from "../../src/view/table-files.ts";
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

describe("filters of all findings", () => {
  const many = Array.from({ length: 2100 }, (_, i) =>
    finding({
      code: i < 100 ? "CSV122" : "LOG209",
      severity: i < 100 ? "error" : "remark",
      place: { file: i < 100 ? `days/${summary.date}/logs/a.csv` : "kit/lenses.csv", line: i + 1, column: 1 },
      message: i === 0 ? 'Not a number, "1,4"' : "Kept",
      hint: "Mend it",
    }),
  );
  const bare = { ...digestDay(summary, []), findings: [] };

  it("have a chip for each severity, day, kind of file and code with the number of findings", () => {
    const page = findingsPage([digestDay(summary, [])], { ...exampleContext(summary), showFindings: [serial, across] });
    const listed = [...page.show, ...page.days.flatMap((d) => d.findings)];
    const chips = page.filters.groups.flatMap((group) => group.chips);
    expect(new Set(chips.map((chip) => chip.name))).toEqual(new Set(["severity", "day", "file", "code"]));
    for (const chip of chips) {
      const having = listed.filter(({ facets }) => facets.some(({ name, value }) => name === chip.name && value === chip.value));
      expect(chip.count, chip.label).toBe(String(having.length));
      expect(having).not.toEqual([]);
    }
    // one accepted of the show and one across days, under the same head
    expect(chips.find((chip) => chip.label === "Show and kit")?.count).toBe("2");
    expect(chips.find((chip) => chip.label === "Accepted")?.count).toBe("1");
    expect(chips.some((chip) => chip.label === "CHECK749 " || chip.label === "CHECK749")).toBe(false);
  });

  it("keep the 2,000 worst on the page, and all in a file beside it", () => {
    // the errors come last: they stay for their severity, not for their place
    const reversed = [...many].reverse();
    const page = findingsPage([bare], { ...exampleContext(summary), showFindings: reversed });
    expect(page.show).toHaveLength(MOST_FINDINGS);
    expect(page.show.filter((view) => view.word === "Error")).toHaveLength(100);
    expect(page.more.replace(/\s/g, " ")).toMatch(/^The 2 000 worst of 2 100 findings\./);
    const [file] = tableFiles(linkTableFiles({ findings: [page] }));
    expect(file?.path).toBe("findings.all.csv");
    const lines = file?.text.trimEnd().split("\n") ?? [];
    expect(lines).toHaveLength(1 + 2100);
    // the columns of a day's own file, so that a program which reads the one reads the other
    expect(lines[0]).toBe(`date,${FINDINGS_COLUMNS.join(",")},accepted`);
    expect(lines.at(-1)).toBe(`,CSV122,error,days/${summary.date}/logs/a.csv,1,1,,"Not a number, ""1,4"".",Mend it.,,`);
  });

  it("are not offered for a single finding, and no file is written for none", () => {
    expect(findingsPage([bare], { ...exampleContext(summary), showFindings: [serial] }).hasFilters).toBe(false);
    const none = findingsPage([bare], { ...exampleContext(summary), showFindings: [] });
    expect(tableFiles(linkTableFiles({ findings: [none] }))).toEqual([]);
  });
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
