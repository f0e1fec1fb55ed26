import { beforeAll, describe, expect, it } from "vitest";
import { cameraReport } from "../../src/pdf/camera-report.ts";
import type { DaySummary } from "../../src/summary/types.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { emptyDay, HEBREW, oddDay } from "./odd-day.ts";
import { itWith, look, overlaps, wordsOf } from "./tools.ts";

const OPTIONS = { tool: { name: "Lens Daybook", version: "0.1.0" }, buildId: "7c41e09a" } as const;
const POINTS_A_MM = 72 / 25.4;

function latin1(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString("latin1");
}

function lettersOnly(bytes: Uint8Array): string {
  return look("pdftotext", bytes, ["-layout", "file", "-"]).replace(/[\s\u00a0\u202f]+/g, " ");
}

/** The example day with many clips: enough for tables of several pages. */
function thickDay(clips: number): DaySummary {
  const day = exampleDaySummary();
  const takes = Array.from({ length: clips }, (_, i) => {
    const t = day.takes[i % day.takes.length] as DaySummary["takes"][number];
    return { ...t, take: { ...t.take, slate: String(20 + Math.floor(i / 6)), take: String(1 + (i % 6)), address: `a-${i}` } };
  });
  return { ...day, takes };
}

describe("the camera report", () => {
  let report: Uint8Array;
  beforeAll(async () => {
    report = await cameraReport(exampleDaySummary(), OPTIONS);
  });

  it("has the same bytes for the same summary, whatever the clock says", async () => {
    const again = await cameraReport(exampleDaySummary(), OPTIONS);
    expect(Buffer.compare(report, again)).toBe(0);
  });

  it("is dated by the shooting day at midnight UTC, in its entries and in its metadata", () => {
    const text = latin1(report);
    expect(text).toContain("(D:20310506000000Z)");
    expect(text).toContain("<xmp:CreateDate>2031-05-06T00:00:00Z</xmp:CreateDate>");
    expect(text.match(/\(D:\d{14}Z\)/g)?.every((date) => date === "(D:20310506000000Z)")).toBe(true);
  });

  it("says PDF 1.7, part 3, level B, English, the title in the window, sRGB", () => {
    const text = latin1(report);
    expect(text.startsWith("%PDF-1.7")).toBe(true);
    expect(text).toContain("<pdfaid:part>3</pdfaid:part>");
    expect(text).toContain("<pdfaid:conformance>B</pdfaid:conformance>");
    expect(text).toContain("/Lang (en-GB)");
    expect(text).toContain("/DisplayDocTitle true");
    expect(text).toContain("/OutputConditionIdentifier (sRGB IEC61966-2.1)");
    expect(text).not.toContain("DeviceCMYK");
  });

  it("labels its pages 1, 2, 3", () => {
    expect(latin1(report)).toMatch(/\/PageLabels <<\s*\/Nums \[0 <<\s*\/S \/D\s*>>\]/);
  });

  itWith("qpdf", "passes the structural check of qpdf", () => {
    expect(look("qpdf", report, ["--check", "file"])).toContain("No syntax or stream encoding errors found");
  });

  itWith("pdffonts", "embeds every typeface as a subset with its Unicode map", () => {
    const lines = look("pdffonts", report, ["file"]).trim().split("\n").slice(2);
    expect(lines.length).toBeGreaterThanOrEqual(4);
    for (const line of lines) expect(line).toMatch(/DejaVu.* TrueType +Identity-H +yes yes yes /);
  });

  itWith("pdfinfo", "is tagged, titled and has no script", () => {
    const info = look("pdfinfo", report, ["file"]);
    expect(info).toMatch(/Title: +Camera report, The Tin Harbour, Day 9, 6 May 2031/);
    expect(info).toMatch(/Tagged: +yes/);
    expect(info).toMatch(/JavaScript: +no/);
    expect(info).toMatch(/Page size: +595.28 x 841.89 pts \(A4\)/);
  });

  itWith("pdfinfo", "reads in order: one first head, no level skipped, tables with heads, figures with words", () => {
    const tree = look("pdfinfo", report, ["-struct", "file"]);
    const heads = [...tree.matchAll(/^ *H([1-3])(?: |$)/gm)].map((match) => Number(match[1]));
    expect(heads.filter((level) => level === 1)).toHaveLength(1);
    expect(heads[0]).toBe(1);
    for (let i = 1; i < heads.length; i++) expect((heads[i] as number) - (heads[i - 1] as number)).toBeLessThanOrEqual(1);
    expect(tree).toMatch(/Table[^\n]*\n *THead[^\n]*\n *TR[^\n]*\n *TH[^\n]*\n *\/Scope \/Column\n/);
    const figures = [...tree.matchAll(/^ *Figure\b[^\n]*/gm)];
    expect(figures.length).toBeGreaterThan(exampleDaySummary().takes.length - 1);
    expect(latin1(report).match(/\/S \/Figure\n\/Alt \((?!\))/g)).toHaveLength(figures.length);
  });

  itWith("qpdf", "has bookmarks from the day to its slates and takes, the day open", () => {
    interface Item {
      readonly title: string;
      readonly open: boolean;
      readonly kids: readonly Item[];
    }
    const { outlines } = JSON.parse(look("qpdf", report, ["--json", "--json-key=outlines", "file"])) as {
      outlines: readonly Item[];
    };
    expect(outlines.map((item) => item.title)).toEqual(["Day 9, Tuesday 6 May 2031"]);
    const [day] = outlines;
    expect(day?.open).toBe(true);
    const slate = day?.kids.find((item) => item.title.startsWith("12,"));
    expect(slate?.kids.map((item) => item.title)).toEqual(["Take 1 A", "Take 2 A", "Take 2 B"]);
    expect(day?.kids.map((item) => item.title)).toContain("How it was computed");
  });

  itWith("pdftotext", "shows the figures of every take as the summary has them", () => {
    const text = lettersOnly(report);
    for (const t of exampleDaySummary().takes) {
      if (t.timecodeIn !== null) expect(text).toContain(t.timecodeIn);
      if (t.take.clip !== null) expect(text).toContain(t.take.clip);
      for (const gap of t.gaps) expect(text).toContain(`${gap.frames} frames ${gap.from} to ${gap.to}`);
    }
    // The move that the fixture writes: 2.4 m, 6 m, 1.8 m, 3.4 m, infinity, at T4 to T5.6 and 50 to 35 mm.
    expect(text).toMatch(/31 s 10 f Skerry 28.80 35 to 50 mm T4 to T5.6 1.80 m to \u221e 4/);
    for (const pull of ["2.40 m to 6.00 m", "6.00 m to 1.80 m", "1.80 m to 3.40 m", "3.40 m to \u221e"])
      expect(text).toContain(pull);
    // The pulls of 12A, which is no plate, are a table.
    for (const pull of ["5.00 2.00", "2.00 0.69", "0.69 3.20"]) expect(text).toContain(pull);
    expect(text).toContain("737 of 754 frames logged (97.7 %)");
  });

  itWith("pdftotext", "answers the producer on the first page", () => {
    const first = look("pdftotext", report, ["-layout", "-l", "1", "file", "-"]).replace(/[\s\u00a0]+/g, " ");
    for (const words of ["The Tin Harbour", "Day 9 of 24", "Tuesday 6 May 2031", "Main unit", "call 07:30", "wrap 18:20"]) {
      expect(first).toContain(words);
    }
    // 28 eighths scheduled, 19 completed, so 9 remain; 2 of 6 takes circled, 7 clips.
    expect(first).toContain("3 scenes 1 completed, 1 part, 1 not shot 3 4/8 2 3/8 1 1/8");
    expect(first).toContain("2 circled, 7 clips");
    expect(first).toContain("1 error, 4 to check, 1 remark.");
    expect(first).toContain("not a legal finding");
    for (const signer of ["First assistant camera", "Director of photography", "Production manager"])
      expect(first).toContain(signer);
  });

  itWith("pdftotext", "says how it was computed and what it does not promise", () => {
    const text = lettersOnly(report);
    expect(text).toContain("Circle of confusion: 0.0220 mm for 4.6K 16:9");
    expect(text).toContain("T times the root of the lens's transmittance");
    expect(text).toContain("written to PDF/A-3b, not certified");
    // test/interop/pdf_validation.py validates reports against both
    expect(text).toContain("validated against both in its tests; this file itself was not");
    expect(text.match(/rebalance with motors off/g)).toHaveLength(1);
    expect(text).toContain("rebalance with motors off");
    expect(text).toContain("not a safety distance");
  });

  itWith("pdftotext", "keeps 18 mm for the punch, sets nothing below 8 points and lays no words over each other", () => {
    const words = wordsOf(report);
    expect(Math.min(...words.map((word) => word.left))).toBeGreaterThanOrEqual(18 * POINTS_A_MM - 0.5);
    expect(Math.max(...words.map((word) => word.right))).toBeLessThanOrEqual(595.28 - 10 * POINTS_A_MM);
    // A word's box is 1.164 of its size in this family.
    expect(Math.min(...words.map((word) => word.bottom - word.top))).toBeGreaterThanOrEqual(7.99 * 1.164);
    expect(overlaps(words)).toEqual([]);
  });

  itWith("pdfinfo", "is Letter when the show's paper is Letter", async () => {
    const day = exampleDaySummary();
    const letter = await cameraReport({ ...day, show: { ...day.show, paper: "Letter" } }, OPTIONS);
    expect(look("pdfinfo", letter, ["file"])).toMatch(/Page size: +612 x 792 pts \(letter\)/);
  });

  itWith("pdfdetach", "carries files as data with the shooting date", async () => {
    const bytes = new TextEncoder().encode('{"takes": 6}\n');
    const attachments = [{ name: "day.json", mime: "application/json", description: "Every figure of the day", bytes }];
    const withFile = await cameraReport(exampleDaySummary(), { ...OPTIONS, attachments });
    expect(look("pdfdetach", withFile, ["-list", "file"])).toContain("day.json");
    expect(latin1(withFile)).toMatch(/\/AFRelationship \/Data/);
    expect(latin1(withFile)).toMatch(/\/Subtype \/application#2Fjson/);
    expect(Buffer.compare(withFile, await cameraReport(exampleDaySummary(), { ...OPTIONS, attachments }))).toBe(0);
  });
});

describe("a thick day", () => {
  let report: Uint8Array;
  let pages: readonly string[] | null = null;
  beforeAll(async () => {
    report = await cameraReport(thickDay(100), OPTIONS);
  });

  function pageTexts(): readonly string[] {
    pages ??= look("pdftotext", report, ["-layout", "file", "-"]).split("\f").slice(0, -1);
    return pages;
  }

  it("stays below 2 MB for 100 clips", () => {
    expect(report.length).toBeLessThan(2e6);
  });

  itWith("pdftotext", "repeats the head of a table on its later pages, and numbers every page", () => {
    const table = pageTexts().filter((page) => /Take +Clip +Timecode in +Length/.test(page));
    expect(table.length).toBeGreaterThan(3);
    pageTexts().forEach((page, i) => {
      expect(page).toContain(`page ${i + 1} of ${pageTexts().length}`);
    });
  });

  it("tells the head of a table once, however often it is seen", async () => {
    const day = thickDay(100);
    const takes = day.takes.map((t) => ({ ...t, take: { ...t.take, plate: null } }));
    const text = latin1(await cameraReport({ ...day, takes }, OPTIONS));
    const count = (pattern: RegExp) => text.match(pattern)?.length ?? 0;
    expect(count(/\/S \/THead\n/g)).toBe(count(/\/S \/Table\n/g));
    // Scenes 7, lens use 5, use of lenses 7, kit changes 5, lens facts 9, findings 4, two tables of files 4 each; 17 slates and their pulls 9 each.
    const pulls = count(/\/S \/Table\n/g) - 8 - 17;
    expect(pulls).toBeGreaterThan(2);
    expect(count(/\/Scope \/Column\n/g)).toBe(9 * (17 + pulls) + 7 + 5 + 7 + 5 + 9 + 4 + 2 * 4);
  });

  itWith("pdftotext", "begins no page with the end of a sentence or of a take", () => {
    // A page begins with a section, a slate, a take, or the repeated head of a table.
    const begins =
      /^ *(Contents|Set-up|\d+ +Scene|Camera +By|\d* ?take |Take +Clip|Pull +Start|Plate sheet|Lenses|Findings|Severity|How|Formulas|File|Input|What|[A-Z][a-z]+ (in|from|of|pull|distance|between|ratio)|Transmittance|Slate .*, continued|.* take .*, continued)/;
    const wrong = pageTexts()
      .slice(1)
      .map((page) => page.split("\n").filter((line) => line.trim() !== ""))
      .map((lines) => lines[1] ?? "")
      .filter((line) => !begins.test(line) && !/\d m to |focus, m|\d s/.test(line));
    expect(wrong).toEqual([]);
  });
});

describe("odd text", () => {
  let report: Uint8Array;
  beforeAll(async () => {
    report = await cameraReport(oddDay(), OPTIONS);
  });

  itWith("qpdf", "is set or marked, and the file is sound", () => {
    expect(look("qpdf", report, ["--check", "file"])).toContain("No syntax or stream encoding errors found");
  });

  itWith("pdftotext", "wraps, and is never set over other text or off the sheet", () => {
    const words = wordsOf(report);
    expect(Math.max(...words.map((word) => word.right))).toBeLessThanOrEqual(595.28 - 10 * POINTS_A_MM);
    expect(Math.max(...words.map((word) => word.bottom))).toBeLessThan(841.89 - 15);
    expect(overlaps(words)).toEqual([]);
  });

  itWith("pdftotext", "keeps words written from right to left, and says what the open square stands for", () => {
    const text = lettersOnly(report);
    for (const word of HEBREW.split(" ")) expect(text).toContain(word);
    expect(text).toContain("\u25a1 stands for a character that the typefaces of this file do not have");
  });

  itWith("xmllint", "leaves the metadata well-formed", () => {
    const text = Buffer.from(report).toString("utf8");
    const packet = /<x:xmpmeta[\s\S]*<\/x:xmpmeta>/.exec(text)?.[0] ?? "";
    expect(packet).toContain("Tide &amp; &lt;Tin&gt;");
    expect(() => look("xmllint", new TextEncoder().encode(packet), ["--noout", "file"])).not.toThrow();
  });
});

describe("a day of which nothing is known", () => {
  itWith("pdftotext", "says so in words and stays short", async () => {
    const report = await cameraReport(emptyDay(), OPTIONS);
    const text = lettersOnly(report);
    expect(text).toContain("Place not recorded.");
    expect(text).toContain("Hours: call not recorded; first shot not recorded; meal not recorded");
    expect(text).toContain("No takes: neither notes.csv nor a log with a take was found");
    expect(text).toContain("Nothing was found.");
    expect(look("pdfinfo", report, ["file"])).toMatch(/Pages: +[1-4]\n/);
  });
});
