/** The files of a day's pack: what leaves the set at the end of the day. */
import { type Finding, sortFindings } from "../core/finding.ts";
import { dayDataPackage } from "../export/datapackage.ts";
import { dayJson } from "../export/day-json.ts";
import { EDITORIAL_LOSSES, editorialFiles, type TextFile } from "../export/editorial/editorial-files.ts";
import { findingsCsv } from "../export/findings-csv.ts";
import { lossesMarkdown } from "../export/losses.ts";
import { takesCsv } from "../export/takes-csv.ts";
import { isChosen, type VfxOptions } from "../export/vfx/options.ts";
import { makeVfx, planVfx, VFX_LOSSES, type VfxPlan } from "../export/vfx/take-files.ts";
import { fileSize } from "../format/amounts.ts";
import { plural } from "../format/words.ts";
import type { Attachment } from "../pdf/document.ts";
import { READERS, type Reader } from "../pdf/readers.ts";
import type { Still } from "../pdf/still-picture.ts";
import type { ReportOptions } from "../pdf/write-report.ts";
import type { DaySummary } from "../summary/types.ts";
import type { Tool } from "./pipeline.ts";
import { schemaFiles } from "./program.ts";

export interface PackContent {
  /** Relative to `packs/<date>/`. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What lies in the pack and inside the PDF too: name, media type, and what it is in words. */
const TEXTS = [
  { name: "day.json", mime: "application/json", description: "Every figure of the day", text: dayJson },
  { name: "takes.csv", mime: "text/csv", description: "A row per take", text: takesCsv },
  {
    name: "findings.csv",
    mime: "text/csv",
    description: "A row per finding",
    text: (summary: DaySummary) => findingsCsv(summary.findings),
  },
] as const;

/** Texts of the open files beside the tables: editorial, and what each format cannot hold. */
function openTexts(summary: DaySummary, tool: Tool, vfx: VfxOptions): readonly TextFile[] {
  const { files, leftOut } = editorialFiles(summary, tool);
  const title = `${summary.show.title}, ${summary.date}`;
  const hasVfx = summary.takes.some(({ take }) => isChosen(take, vfx.takes));
  const formats = hasVfx ? [...EDITORIAL_LOSSES, ...VFX_LOSSES] : EDITORIAL_LOSSES;
  return [...files, { name: "LOSSES.md", text: lossesMarkdown({ title, formats, leftOut }) }];
}

export interface PdfRequest {
  /** Readers that get a PDF of their own. */
  readonly readers: readonly Reader[];
  /** Reads a still of the show folder; anything but bytes when it cannot be read. */
  read(file: string): unknown;
}

const NO_PDF_REQUEST: PdfRequest = { readers: [], read: () => null };

/**
 * All files of the pack but those for VFX, the PDFs first. The camera report holds the tables, the JSON and the lens tables
 * that the pack has, so that it can travel alone.
 */
export async function packContents(
  summary: DaySummary,
  showFindings: readonly Finding[],
  tool: Tool,
  buildId: string,
  vfx: VfxOptions,
  pdf: PdfRequest = NO_PDF_REQUEST,
): Promise<readonly PackContent[]> {
  // the machine files say what is wrong with show.yaml and the kit too: the pack travels without them
  const whole: DaySummary = { ...summary, findings: sortFindings([...showFindings, ...summary.findings]) };
  const texts = TEXTS.map(({ name, mime, description, text }) => ({
    name,
    mime,
    description,
    bytes: Buffer.from(text(whole, tool)),
  }));
  const files = [...texts, ...(await lensTables(summary, vfx))];
  return [
    ...(await pdfFiles(summary, { tool, buildId, showFindings, stills: stillsOf(summary, pdf) }, files, pdf.readers)),
    ...texts.map(({ name, bytes }) => ({ name, bytes })),
    { name: "datapackage.json", bytes: Buffer.from(dayDataPackage(summary)) },
    ...schemaFiles().map(({ name, bytes }) => ({ name: `schema/${name}`, bytes })),
    ...openTexts(summary, tool, vfx).map(({ name, text }) => ({ name, bytes: Buffer.from(text) })),
  ];
}

/** Which of the files each reader's PDF holds. */
const HELD: Readonly<Record<Reader, (name: string) => boolean>> = {
  editorial: (name) => name === "takes.csv",
  vfx: (name) => name === "day.json" || name === "takes.csv" || name.endsWith("lens.csv"),
  production: (name) => name === "takes.csv" || name === "findings.csv",
};

async function pdfFiles(
  summary: DaySummary,
  options: ReportOptions,
  files: readonly Attachment[],
  readers: readonly Reader[],
): Promise<readonly PackContent[]> {
  const { cameraReport } = await import("../pdf/camera-report.ts");
  const stem = `${summary.show.code}-${summary.date}`;
  const made = [{ name: `${stem}-camera-report.pdf`, bytes: await cameraReport(summary, { ...options, attachments: files }) }];
  const { readerReport } = await import("../pdf/reader-report.ts");
  for (const reader of READERS.filter((known) => readers.includes(known))) {
    const attachments = files.filter(({ name }) => HELD[reader](name));
    made.push({ name: `${stem}-${reader}.pdf`, bytes: await readerReport(summary, reader, { ...options, attachments }) });
  }
  return made;
}

/** The lens tables that the pack holds, under names without folders, as not every viewer saves those. */
async function lensTables(summary: DaySummary, vfx: VfxOptions): Promise<readonly Attachment[]> {
  const tables = planVfx(summary, { ...vfx, maps: "none" }).files.filter(({ name }) => name.endsWith("/lens.csv"));
  return Promise.all(
    tables.map(async (table) => ({
      name: lensTableName(table.name),
      mime: "text/csv",
      description: `${table.name} of the pack: a row a frame of the lens`,
      bytes: await table.bytes(),
    })),
  );
}

/** `a-33b-2-lens.csv` for `vfx/a-33b-2/lens.csv`. */
function lensTableName(packName: string): string {
  return packName.split("/").slice(1).join("-");
}

function stillsOf(summary: DaySummary, pdf: PdfRequest): ReadonlyMap<string, Still> {
  const stills = new Map<string, Still>();
  for (const { take } of summary.takes) {
    if (take.still === null || take.plate === null || take.duplicate) continue;
    const bytes = pdf.read(take.still.file);
    if (bytes instanceof Uint8Array) stills.set(take.address, { name: take.still.name, bytes });
  }
  return stills;
}

/** What the writing of large files needs from outside. */
export interface PackEffects {
  write(name: string, bytes: Uint8Array): void;
  say(text: string): void;
  now(): number;
}

/** Samples of a map that are made and written in a second, for what is said before. */
const SAMPLES_PER_SECOND = 8e6;

/** Bytes of all maps, from one map of each take that has many: lenses differ in how well their maps deflate. */
async function bytesOfMaps({ maps }: VfxPlan): Promise<number> {
  const sizes = await Promise.all(maps.typical.map(async ({ file }) => (await file.bytes()).length));
  return maps.typical.reduce(
    (sum, { samples, allSamples, allBytesAbout }, i) => sum - allBytesAbout + ((sizes[i] ?? 0) * allSamples) / samples,
    maps.bytesAbout,
  );
}

/** Writes the folders for VFX one file at a time, since maps are large, and says before and after what they come to. */
export async function packVfx(
  summary: DaySummary,
  options: VfxOptions,
  { write, say, now }: PackEffects,
): Promise<readonly { readonly name: string; readonly bytes: number }[]> {
  const plan = planVfx(summary, options);
  const { maps } = plan;
  if (maps.files > 0) {
    const seconds = Math.max(1, Math.round(maps.samples / SAMPLES_PER_SECOND));
    const what = `maps of the lens for ${plural(maps.takes, "take")}: ${plural(maps.files, "file")}`;
    say(`${what}, about ${fileSize(await bytesOfMaps(plan))} and ${seconds} s (--maps none leaves them out)`);
  }
  const start = now();
  const files: { readonly name: string; readonly bytes: number }[] = [];
  await makeVfx(plan, (name, bytes) => {
    write(name, bytes);
    files.push({ name, bytes: bytes.length });
  });
  const mapBytes = files.filter(({ name }) => name.endsWith(".exr")).reduce((sum, { bytes }) => sum + bytes, 0);
  if (maps.files > 0) say(`maps written: ${fileSize(mapBytes)}, ${((now() - start) / 1000).toFixed(1)} s`);
  return files;
}
