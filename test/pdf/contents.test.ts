/** The contents, and what links say: to people who see the page and to people who hear it. */
import { beforeAll, describe, expect, it } from "vitest";
import { cameraReport } from "../../src/pdf/camera-report.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { emptyDay } from "./odd-day.ts";
import { alternativeTexts, itWith, look } from "./tools.ts";

const OPTIONS = { tool: { name: "Lens Daybook", version: "0.1.0" }, buildId: "7c41e09a" } as const;

describe("the contents of a camera report", () => {
  let report: Uint8Array;
  let text: string;
  beforeAll(async () => {
    report = await cameraReport(exampleDaySummary(), OPTIONS);
    text = Buffer.from(report).toString("latin1");
  });

  const pages = () =>
    look("pdftotext", report, ["-layout", "file", "-"])
      .split("\f")
      .map((page) => page.replace(/[\s\u00a0]+/g, " "));

  itWith("pdftotext", "name the page that each section and each slate begins on", () => {
    const [, second = ""] = pages();
    const pageOf = (title: string): string => {
      const found = new RegExp(`(?<=^| )${title} (\\d+) `).exec(second.slice(second.indexOf("Contents")));
      return pages()[Number(found?.[1]) - 1] ?? "";
    };
    expect(pageOf("Set-up by set-up")).toContain("Set-up by set-up Every figure says");
    expect(pageOf("12A")).toContain("12A Scene 12. 1 clip, none circled.");
    expect(pageOf("14")).toContain("14 Scene 14. 1 clip");
    expect(pageOf("Plate sheets 5 12")).toContain("Plate sheet 12 ");
    expect(pageOf("Lenses and kit changes")).toContain("Lens facts");
    expect(pageOf("Findings and accepted findings")).toContain("Severity Code");
    expect(pageOf("How it was computed")).toContain("Circle of confusion");
  });

  it("are links, each in the structure tree with words of its own", () => {
    const links = text.match(/\/Subtype \/Link\n/g)?.length ?? 0;
    // Contents: 5 sections, 5 slates, 2 plate sheets. A row of a take each (7); from 2 plates and their rows in the table of plates to their sheets.
    expect(links).toBe(5 + 5 + 2 + 7 + 2 + 2);
    const annotations = text.split(/\d+ 0 obj/).filter((object) => object.includes("/Subtype /Link"));
    for (const annotation of annotations) {
      expect(annotation).toMatch(/\/StructParent \d+/);
      expect(annotation).toMatch(/\/Contents \(\S/);
    }
    expect(text.match(/\/S \/Link\n/g)).toHaveLength(links);
    expect(text.match(/\/S \/TOCI\n/g)).toHaveLength(5 + 5 + 2);
  });

  itWith("pdfinfo", "stand in order in the tree: contents, entries, references, links", () => {
    const tree = look("pdfinfo", report, ["-struct", "file"]);
    expect(tree).toMatch(/\n *TOC[^\n]*\n *TOCI[^\n]*\n *Reference[^\n]*\n *Link/);
  });

  itWith("pdftotext", "leave plates out where there are none", async () => {
    const empty = look("pdftotext", await cameraReport(emptyDay(), OPTIONS), ["-layout", "file", "-"]);
    expect(empty).toContain("Contents");
    expect(empty).not.toContain("Plate sheet");
  });
});

describe("PDF/UA-1", () => {
  it("is said in the metadata, with the description that PDF/A asks of a property it does not know", async () => {
    const text = Buffer.from(await cameraReport(exampleDaySummary(), OPTIONS)).toString("latin1");
    const schema = text.indexOf("<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>");
    expect(schema).toBeGreaterThan(0);
    expect(text.indexOf("<pdfuaid:part>1</pdfuaid:part>")).toBeGreaterThan(schema);
  });

  it("has figures that say which take they are of and what happens in it", async () => {
    const texts = alternativeTexts(await cameraReport(exampleDaySummary(), OPTIONS)).map((text) => text.replace(/\u00a0/g, " "));
    const hero = texts.filter((text) => text.startsWith("12 take 2 A. Focus "));
    // In the row of the set-up and on the plate sheet. The largest pull in dioptres is 6 m to 1.8 m; the last ends at infinity.
    expect(hero).toHaveLength(2);
    for (const text of hero)
      expect(text).toMatch(/^12 take 2 A\. Focus from 6\.0 m to 1\.8 m, then to infinity; four pulls; .*17 frames not logged/);
    for (const text of texts) expect(text.length).toBeGreaterThan(20);
  });
});
