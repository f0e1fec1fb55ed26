/** A PDF for one reader only: what is in it, what is not, and what travels inside. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type PackContent, packContents } from "../../src/build/pack.ts";
import { DEFAULT_VFX } from "../../src/export/vfx/options.ts";
import { planVfx } from "../../src/export/vfx/take-files.ts";
import { readerReport } from "../../src/pdf/reader-report.ts";
import { READERS, type Reader } from "../../src/pdf/readers.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { SMALL_KIT, summarise } from "../helpers/memory-show.ts";
import { emptyDay, oddDay } from "./odd-day.ts";
import { itWith, look, overlaps, wordsOf } from "./tools.ts";

const TOOL = { name: "Lens Daybook", version: "0.1.0" } as const;
const OPTIONS = { tool: TOOL, buildId: "7c41e09a" } as const;

async function textOf(reader: Reader): Promise<string> {
  const report = await readerReport(exampleDaySummary(), reader, OPTIONS);
  return look("pdftotext", report, ["-layout", "file", "-"]).replace(/[\s\u00a0\u202f]+/g, " ");
}

describe("a PDF for one reader", () => {
  itWith("pdftotext", "gives the cutting room circled takes before the others, with what changed inside", async () => {
    const text = await textOf("editorial");
    expect(text).toContain("Editorial report.");
    expect(text.indexOf("12 take 2 A")).toBeGreaterThan(text.indexOf("Circled takes"));
    expect(text.indexOf("Other takes")).toBeGreaterThan(text.indexOf("12 take 2 A"));
    expect(text.indexOf("12 take 1 A")).toBeGreaterThan(text.indexOf("Other takes"));
    expect(text).toContain("Inside: 4 focus pulls, stop pull, zoom and 17 frames not logged.");
    expect(text).not.toContain("Formulas");
    expect(text).not.toContain("Director of photography");
  });

  itWith("pdftotext", "gives VFX the plates that belong together, their sheets, lenses and formulas", async () => {
    const text = await textOf("vfx");
    expect(text).toContain("VFX report.");
    expect(text).toContain(
      "12: hero and clean. 12B take 1 A against 12 take 2 A: same lens, mode, focal length, stop and height, as far as recorded.",
    );
    for (const words of ["Plate sheet 12 ", "Plate sheet 12B ", "Lens facts", "Formulas"]) expect(text).toContain(words);
    // eighths, ratio and hours are no matter of lenses
    for (const words of ["Script, min:s", "Shooting ratio", "Pages in eighths", "Working hours"]) expect(text).not.toContain(words);
    expect(text).toContain("The camera report lists the input files with their hashes.");
  });

  itWith("pdftotext", "gives production the page to sign and a row a set-up", async () => {
    const text = await textOf("production");
    expect(text).toContain("Production report.");
    for (const words of ["Director of photography", "3 scenes 1 completed, 1 part, 1 not shot", "not a legal finding"])
      expect(text).toContain(words);
    // 12 has takes 1 A, 2 A and 2 B: 312, 754 and 741 frames at 24 are 75.3 s.
    expect(text).toMatch(/Set-ups In shooting order.*12 12 A and B 3 2 1:15 /);
    for (const words of ["Plate sheet", "Mass and balance"]) expect(text).not.toContain(words);
    expect(text).toContain(" to check, 0 accepted.");
    expect(text).not.toContain("Remark ");
  });

  itWith("pdftotext", "gives VFX the lenses that were used, and not the rest of the kit", async () => {
    const day = exampleDaySummary();
    const [used] = day.lensUse.filter((use) => use.takes > 0);
    const fewer = { ...day, lensUse: day.lensUse.filter((use) => use.lens === used?.lens) };
    const facts = look("pdftotext", await readerReport(fewer, "vfx", OPTIONS), ["-layout", "file", "-"])
      .split("Lens facts")[1]
      ?.split("Plate sheet")[0];
    for (const { id } of day.kit.lenses) {
      if (id === used?.lens) expect(facts).toContain(`${id}. `);
      else expect(facts).not.toContain(`${id}. `);
    }
    expect(day.kit.lenses.length).toBeGreaterThan(1);
  });

  it.each(READERS)("%s: the same bytes for the same summary, also of an empty and of an odd day", async (reader) => {
    for (const day of [exampleDaySummary(), emptyDay()]) {
      const one = await readerReport(day, reader, OPTIONS);
      expect(Buffer.compare(one, await readerReport(day, reader, OPTIONS))).toBe(0);
    }
  });

  for (const reader of READERS) {
    itWith("pdftotext", `${reader}: sets odd text on the sheet and never over other text`, async () => {
      const words = wordsOf(await readerReport(oddDay(), reader, OPTIONS));
      expect(Math.max(...words.map((word) => word.right))).toBeLessThanOrEqual(595.28 - (10 * 72) / 25.4);
      expect(overlaps(words)).toEqual([]);
    });
  }
});

describe("the pack", () => {
  const notes = [
    "slate,take,camera,tc_in,tc_out,lens,stop,focus,plate,plate_of",
    "1,1,A,10:00:00:00,10:00:02:00,P50,4,2 m,hero,",
    "1A,1,A,10:10:00:00,10:10:02:00,P50,4,2 m,clean,1",
    "2,1,A,10:20:00:00,10:20:02:00,P50,4,2 m,,",
  ];
  const { summary } = summarise({ ...SMALL_KIT, "days/2030-02-03/notes.csv": `${notes.join("\n")}\n` }, "2030-02-03");
  const stem = `${summary.show.code}-2030-02-03`;
  const pack = (readers: readonly Reader[]) =>
    packContents(summary, [], TOOL, "7c41e09a", DEFAULT_VFX, { readers, read: () => null });
  const pdfs = (files: readonly PackContent[]) => files.map(({ name }) => name).filter((name) => name.endsWith(".pdf"));

  it("has the camera report alone unless others are asked for, and those in one order", async () => {
    expect(pdfs(await pack([]))).toEqual([`${stem}-camera-report.pdf`]);
    const asked = await pack(["production", "vfx"]);
    expect(pdfs(asked)).toEqual([`${stem}-camera-report.pdf`, `${stem}-vfx.pdf`, `${stem}-production.pdf`]);
  });

  itWith("pdfdetach", "has inside its camera report the very files that lie beside it, lens tables too", async () => {
    const files = await pack([]);
    const folder = mkdtempSync(join(tmpdir(), "daybook-detach-"));
    try {
      writeFileSync(join(folder, "report.pdf"), files[0]?.bytes ?? "");
      execFileSync("pdfdetach", ["-saveall", "-o", folder, join(folder, "report.pdf")]);
      const tables = planVfx(summary, DEFAULT_VFX).files.filter(({ name }) => name.endsWith("/lens.csv"));
      expect(tables.map(({ name }) => name)).toEqual(["vfx/a-1-1/lens.csv", "vfx/a-1a-1/lens.csv"]);
      const wanted = new Map<string, Uint8Array>();
      for (const { name, bytes } of files.filter((f) => ["day.json", "takes.csv", "findings.csv"].includes(f.name)))
        wanted.set(name, bytes);
      for (const table of tables) wanted.set(table.name.replace("vfx/", "").replace("/", "-"), await table.bytes());
      expect(readdirSync(folder).sort()).toEqual([...wanted.keys(), "report.pdf"].sort());
      for (const [name, bytes] of wanted) expect(Buffer.compare(readFileSync(join(folder, name)), bytes)).toBe(0);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
