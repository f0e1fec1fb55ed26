/** Small promises of the pages: counts in groups, names that are cut, tables without rows, room at the end. */
import { describe, expect, it } from "vitest";
import { finding } from "../../src/core/finding.ts";
import { cameraReport } from "../../src/pdf/camera-report.ts";
import { newDocument } from "../../src/pdf/document.ts";
import { messageSentence } from "../../src/pdf/finding-words.ts";
import { newInk } from "../../src/pdf/ink.ts";
import { TYPE } from "../../src/pdf/report.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";
import { emptyDay } from "./odd-day.ts";
import { itWith, look } from "./tools.ts";

const OPTIONS = { tool: { name: "Lens Daybook", version: "0.1.0" }, buildId: "7c41e09a" } as const;

function textOf(bytes: Uint8Array): string {
  return look("pdftotext", bytes, ["-layout", "file", "-"]).replace(/[\s\u00a0]+/g, " ");
}

const sentence = (message: string) =>
  messageSentence(finding({ code: "MATCH402", severity: "remark", message, hint: "", take: null }));

describe("the message of a finding", () => {
  it("has its counts in groups of three, as every figure of the report", () => {
    expect(sentence("1743 of 7300 rows lie outside")).toBe("1\u202f743 of 7\u202f300 rows lie outside.");
    expect(sentence("T2.70 is too wide (and 12345 more rows).")).toBe("T2.70 is too wide (and 12\u202f345 more rows).");
    expect(sentence("36 of 777 rows")).toBe("36 of 777 rows.");
  });

  it("keeps what is quoted, line numbers, dates and names of files as they are written", () => {
    for (const words of ['"1743 rows" is no number.', "The first is line 1743.", "days/2026-10-06/logs/a-1743 rows.csv."])
      expect(sentence(words)).toBe(words);
  });
});

describe("a name that is longer than its place", () => {
  const ink = newInk(newDocument({ title: "t", subject: "s", creator: "c", date: new Date(0), paper: "A4" }));

  it("is cut as late as it can be, and a sign says that it goes on", () => {
    const name = "Unbroken".repeat(20);
    for (const width of [30, 75, 200]) {
      const shown = ink.fitted(name, TYPE.head, width);
      expect(shown).toMatch(/^(?:Unbroken)*U?n?b?r?o?k?e?n?\u2026$/);
      expect(ink.width(shown, TYPE.head)).toBeLessThanOrEqual(width);
      const longer = `${name.slice(0, shown.length)}\u2026`;
      expect(ink.width(longer, TYPE.head)).toBeGreaterThan(width);
    }
  });

  it("is whole where it fits, and never cut inside a letter of two units", () => {
    expect(ink.fitted("24B", TYPE.head, 100)).toBe("24B");
    expect(ink.fitted("\u{1d49c}".repeat(30), TYPE.head, 60).replace("\u2026", "")).toMatch(/^(?:\u{1d49c})+$/u);
  });
});

describe("what a report says where there is little", () => {
  itWith("pdftotext", "is a line in place of the rows of a table", async () => {
    const text = textOf(await cameraReport(emptyDay(), OPTIONS));
    for (const words of ["Scenes not recorded.", "No lens was recorded today.", "The kit lists no lens."])
      expect(text).toContain(words);
  });

  itWith("pdftotext", "is room for notes by hand on its last page, and on no other", async () => {
    const pages = look("pdftotext", await cameraReport(emptyDay(), OPTIONS), ["-layout", "file", "-"])
      .split("\f")
      .slice(0, -1);
    expect(pages.map((page) => page.includes("Notes by hand"))).toEqual(pages.map((_, i) => i === pages.length - 1));
  });

  itWith("pdftotext", "is what a calibration table does not say, and nothing that it says", async () => {
    const day = exampleDaySummary();
    const tables = [...day.kit.calibration].map(
      ([id, table]) => [id, { ...table, convention: { ...table.convention, direction: null } }] as const,
    );
    expect(tables.length).toBeGreaterThan(0);
    const text = textOf(await cameraReport({ ...day, kit: { ...day.kit, calibration: new Map(tables) } }, OPTIONS));
    expect(text).toContain("not used: it does not say its direction.");
    expect(text).not.toContain("does not say its model");
  });
});

describe("plates", () => {
  itWith("pdftotext", "are listed by what belongs together before their sheets", async () => {
    const text = textOf(await cameraReport(exampleDaySummary(), OPTIONS));
    const at = text.indexOf("Plates What belongs together");
    expect(at).toBeGreaterThan(0);
    expect(text.indexOf("Plate sheet 12 Scene")).toBeGreaterThan(at);
  });
});

describe("a gap of one frame", () => {
  itWith("pdftotext", "is said by its one timecode", async () => {
    const rows = logText(["camera: A", "clip: A001C001"], "focus_m,t", "10:00:00:00", 48, () => "2.000,2.8").split("\n");
    const log = rows.filter((row) => !row.startsWith("10:00:01:05")).join("\n");
    expect(rows.length - log.split("\n").length).toBe(1);
    const notes = "slate,take,camera,clip,tc_in,tc_out,lens,circled\n7,1,A,A001C001,10:00:00:00,10:00:02:00,P50,y\n";
    const show = { ...SMALL_KIT, "days/2030-02-03/notes.csv": notes, "days/2030-02-03/logs/a.csv": log };
    const text = textOf(await cameraReport(summarise(show, "2030-02-03").summary, OPTIONS));
    expect(text).toContain("Not logged: 1 frame at 10:00:01:05.");
  });
});
