/** What the report promises to people on paper and to people who hear it: running heads, order, links, greys, reasons, its own claim. */
import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { cameraReport } from "../../src/pdf/camera-report.ts";
import { PRINT } from "../../src/pdf/palette.ts";
import { readerReport } from "../../src/pdf/reader-report.ts";
import { READERS } from "../../src/pdf/readers.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { SMALL_KIT, summarise } from "../helpers/memory-show.ts";
import { oddDay } from "./odd-day.ts";
import { type PdfParts, type Placed, pdfParts } from "./structure.ts";
import { itWith, look, type Word, wordsOf } from "./tools.ts";

const OPTIONS = { tool: { name: "Lens Daybook", version: "0.1.0" }, buildId: "7c41e09a" } as const;
const MM = 72 / 25.4;

function textOf(bytes: Uint8Array): string {
  return look("pdftotext", bytes, ["-layout", "file", "-"]).replace(/[\s\u00a0\u202f]+/g, " ");
}

function said(words: readonly Word[]): string {
  return words.map(({ text }) => text).join(" ");
}

let report: Uint8Array;
let parts: PdfParts | null = null;
beforeAll(async () => {
  report = await cameraReport(exampleDaySummary(), OPTIONS);
});
const ofReport = (): PdfParts => {
  parts ??= pdfParts(report);
  return parts;
};

describe("a page that is taken out of the report", () => {
  itWith("pdftotext", "says above its text which show and which day it is of", () => {
    const words = wordsOf(report);
    const pages = Math.max(...words.map(({ page }) => page));
    expect(pages).toBeGreaterThan(4);
    for (let page = 1; page <= pages; page++) {
      // 18 mm are above the text; the first page says the day itself in large type below
      const depth = page === 1 ? 35 : 18;
      const head = said(words.filter((word) => word.page === page && word.bottom < depth * MM));
      expect(head, `page ${page}`).toContain("The Tin Harbour");
      expect(head, `page ${page}`).toMatch(/Day 9\b/);
      expect(head, `page ${page}`).toContain("Tuesday 6 May 2031");
      expect(head, `page ${page}`).toContain(`page ${page} of ${pages}`);
    }
  });
});

describe("the order in which the report is read out", () => {
  /** Below what came before, on a later page, or in a column to the right: as pages are read. */
  const misplaced = (elements: readonly Placed[]): readonly string[] =>
    elements.flatMap((after, i) => {
      const before = elements[i - 1];
      if (before === undefined || after.page > before.page) return [];
      const sameLine = Math.abs(after.top - before.top) <= 1;
      const onward = sameLine ? after.left >= before.left - 1 : after.top > before.top || after.left > before.left + 20;
      const follows = after.page === before.page && onward;
      return follows
        ? []
        : [`${after.tag} on page ${after.page} at ${Math.round(after.top)} after ${before.tag} at ${Math.round(before.top)}`];
    });
  const blocks = (elements: readonly Placed[]) => elements.filter(({ tag }) => /^(?:H\d|P|Table|Figure|TOCI|LI)$/.test(tag));

  itWith("qpdf", "is the order of the pages, for headings, paragraphs, tables, figures and lists", () => {
    const elements = blocks(ofReport().elements);
    // 7 clips, of which one has no focus, and the clock of the day
    expect(elements.filter(({ tag }) => tag === "Figure").length).toBeGreaterThanOrEqual(7);
    // a table a slate (5), scenes, lens use, use, kit changes, facts, findings
    expect(elements.filter(({ tag }) => tag === "Table").length).toBeGreaterThanOrEqual(5 + 6);
    expect(misplaced(elements)).toEqual([]);
    const [first, ...others] = elements;
    expect(misplaced([...others, first as Placed])).not.toEqual([]);
  });

  itWith("qpdf", "is the order of the pages for odd names and for each reader", async () => {
    expect(misplaced(blocks(pdfParts(await cameraReport(oddDay(), OPTIONS)).elements))).toEqual([]);
    for (const reader of READERS) {
      const { elements } = pdfParts(await readerReport(exampleDaySummary(), reader, OPTIONS));
      expect(misplaced(blocks(elements)), reader).toEqual([]);
    }
  });

  itWith("qpdf", "has the rows of a table below each other and the cells of a row from left to right", () => {
    const cells = ofReport().elements.filter(({ tag }) => /^(?:TR|TH|TD)$/.test(tag));
    expect(cells.filter(({ tag }) => tag === "TD").length).toBeGreaterThan(50);
    const wrong = cells.flatMap((cell, i) => {
      const before = cells[i - 1];
      // a cell after its row, or after another cell of the same row
      if (before === undefined || cell.tag === "TR" || before.page !== cell.page || before.tag === "TR") return [];
      return cell.left > before.left ? [] : [cell];
    });
    expect(wrong).toEqual([]);
  });
});

describe("the lines of the contents", () => {
  itWith("qpdf", "lead to the page whose number ends them, where that page says what they name", () => {
    const words = wordsOf(report);
    const within = (page: number, top: number, bottom: number) =>
      words.filter((word) => word.page === page && word.top >= top - 1 && word.bottom <= bottom + 1);
    const lines = ofReport().links.filter(({ label }) => label.endsWith(": go to its page"));
    // 5 sections, 5 slates, 2 plate sheets
    expect(lines).toHaveLength(5 + 5 + 2);
    for (const line of lines) {
      const title = line.label.replace(": go to its page", "");
      const printed = within(line.page, line.top, line.bottom)
        .filter(({ left, right }) => left >= line.left - 1 && right <= line.right + 1)
        .sort((a, b) => a.left - b.left);
      expect(printed.at(-1)?.text, line.label).toBe(String(line.to.page));
      // the head is in the first 40 points below the place; "Plate sheets" is the head of all sheets
      const there = said(within(line.to.page, line.to.top, line.to.top + 40));
      expect(there, line.label).toContain(title.replace("Plate sheets", "Plate sheet"));
    }
  });
});

describe("a grey copy", () => {
  /** CIE L* of an sRGB colour: IEC 61966-2-1 for the curve and the weights, CIE 15 for L*. */
  const lightness = (hex: string): number => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
      const v = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
    });
    const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
    return y > (6 / 29) ** 3 ? 116 * Math.cbrt(y) - 16 : (y * 24389) / 27;
  };
  /** Lightness that a copier keeps apart. */
  const STEP = 10;

  it("measures lightness as CIE does: black 0, mid grey #777777 50, white 100", () => {
    expect(lightness("#000000")).toBe(0);
    expect(lightness("#777777")).toBeCloseTo(50, 0);
    expect(lightness("#FFFFFF")).toBeCloseTo(100, 6);
  });

  it("keeps the focus line darker than its limits, the limits darker than the band, the band darker than the paper", () => {
    const steps = [PRINT.focus, PRINT.focusLimit, PRINT.focusBand, PRINT.paper].map(lightness);
    for (let i = 1; i < steps.length; i++) expect((steps[i] as number) - (steps[i - 1] as number)).toBeGreaterThan(STEP);
    expect(lightness(PRINT.stopBand) - lightness(PRINT.stop)).toBeGreaterThan(STEP);
    expect(lightness(PRINT.paper) - lightness(PRINT.stopBand)).toBeGreaterThan(STEP);
  });

  itWith("qpdf", "holds for the pages: they are painted with these inks and no other", () => {
    const { colours } = ofReport();
    const inks: readonly string[] = Object.values(PRINT);
    expect([...colours].filter((colour) => !inks.includes(colour))).toEqual([]);
    for (const ink of [PRINT.focus, PRINT.focusLimit, PRINT.focusBand]) expect([...colours]).toContain(ink);
  });
});

describe("findings that somebody accepted", () => {
  const show = (accepted: string) => ({
    ...SMALL_KIT,
    "days/2030-02-03/day.yaml": `date: 2030-02-03\n${accepted}`,
    "days/2030-02-03/notes.csv":
      "slate,take,camera,clip,tc_in,tc_out,lens,stop,focus,circled\n7,1,A,A001C001,10:00:00:00,10:00:02:00,P50,4,2 m,y\n",
  });
  const ACCEPTED = "accepted:\n  - {code: MATCH405, reason: the recorder was lent to the other unit}\n";

  itWith("pdftotext", "are printed with the reason, ask for nothing, and are no open ones", async () => {
    const open = textOf(await cameraReport(summarise(show(""), "2030-02-03").summary, OPTIONS));
    expect(open).toMatch(/Check MATCH405 No log rows belong to this take/);
    expect(open).toContain(", 0 accepted.");
    const text = textOf(await cameraReport(summarise(show(ACCEPTED), "2030-02-03").summary, OPTIONS));
    expect(text).toMatch(/Accepted MATCH405 No log rows belong to this take/);
    expect(text).toMatch(/Accepted: the recorder was lent\b.* to the other unit/);
    expect(text).toContain(", 1 accepted.");
    expect(text).not.toMatch(/Check (?:MATCH405 )?No log rows/);
  });

  itWith("pdftotext", "go with the PDF for the production office too", async () => {
    const { summary } = summarise(show(ACCEPTED), "2030-02-03");
    const text = textOf(await readerReport(summary, "production", OPTIONS));
    expect(text).toMatch(/Accepted: the recorder was lent\b.* to the other unit/);
  });
});

describe("what the report says of its validation", () => {
  itWith("pdftotext", "names the profiles that its validation runs, all of them and no other", () => {
    const script = readFileSync(new URL("../interop/pdf_validation.py", import.meta.url), "utf8");
    const dict = /names = \{([^}]*)\}/.exec(script)?.[1] ?? "";
    const run = [...dict.matchAll(/"\w+": "([^"]+)"/g)].map(([, name]) => name);
    expect(script).toContain("verapdf.verdicts({flavour: paths for flavour in names})");
    const says = textOf(report).split("What this report is").at(-1) ?? "";
    const claim = says.slice(0, says.indexOf("this file itself was not"));
    expect(claim).toContain("validated against both in its tests;");
    expect([...new Set(claim.match(/PDF\/[A-Z]+-\d\w?/g))].sort()).toEqual([...run].sort());
    expect(run).toHaveLength(2);
  });
});
