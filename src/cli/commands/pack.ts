/** `daybook pack SHOW --day DATE [--zip]` */
import { closeSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import type { OutFolder } from "../../build/effects.ts";
import { fileProblem } from "../../build/file-problem.ts";
import { lockOutput } from "../../build/lock.ts";
import { loadPipeline } from "../../build/make.ts";
import { readDayRecord, type StoredDay } from "../../build/manifest.ts";
import { outFiles } from "../../build/out-files.ts";
import { isHistory, issuePack } from "../../build/pack-history.ts";
import { isWithin } from "../../build/show-files.ts";
import { type LargeZipEntry, writeZip, ZipChanged, type ZipEntry } from "../../build/zip/zip.ts";
import { dayEntries } from "../../build/zip/zip-report.ts";
import type { TakeChoice } from "../../export/vfx/options.ts";
import { fileSize } from "../../format/amounts.ts";
import { plainSpaces } from "../../format/space.ts";
import type { ShowInput } from "../../ingest/records.ts";
import type { Reader } from "../../pdf/readers.ts";
import { EXIT, type Io } from "../io.ts";
import { jsonLine } from "../json-lines.ts";
import { openShow } from "../open-show.ts";
import type { CommonOptions } from "../options.ts";
import { clickablePath } from "../report.ts";
import { build, defaultOut } from "./build.ts";

export interface PackOptions extends CommonOptions {
  readonly day?: string;
  readonly zip: boolean;
  /** The zip file. */
  readonly out?: string;
  /** Folder of the report; by default the one that `build` writes. */
  readonly report?: string;
  /** As `build` takes them. */
  readonly vfx?: TakeChoice;
  readonly maps?: TakeChoice;
  readonly mapWidth?: number | "full";
  readonly pdf?: readonly Reader[];
}

/**
 * Builds a day as `build` does and issues its pack: a folder, or with `--zip` one file with the day's pages. From then on the
 * pack's hash list is kept, and a pack that differs later gets another beside it. Exit codes
 * are those of `build`; errors in the data do not keep the zip from being made.
 */
export async function pack(path: string, options: PackOptions, io: Io): Promise<number> {
  const { day: date } = options;
  if (date === undefined) return usage("pack needs the day, such as --day 2026-10-06.", io);
  if (options.out !== undefined && !options.zip) return usage("--out names the zip file; add --zip.", io);
  const show = openShow(path, io.cwd);
  if ("usage" in show) return usage(show.usage, io);
  const report = options.report === undefined ? defaultOut(show) : resolve(io.cwd, options.report);
  if (options.out !== undefined && isWithin(resolve(io.cwd, options.out), show.path)) {
    return usage("the zip cannot be written into the show folder. Name a file outside it with --out.", io);
  }
  const built = await build(path, { ...options, day: [date], out: report, force: false, strict: false, maxFindings: 20 }, io);
  if (built !== EXIT.fine && built !== EXIT.dataErrors) return built;
  const { input } = (await loadPipeline()).readShow(show);
  if (input === null) return EXIT.usage;
  const zip = options.out === undefined ? join(dirname(report), `${input.show.code}-${date}.zip`) : resolve(io.cwd, options.out);
  const target = options.zip ? zip : join(report, "packs", date);
  try {
    const lock = lockOutput(report);
    if ("by" in lock) return usage(`${report} is in use by ${lock.by}. Wait until it has ended and run the command again.`, io);
    try {
      const problem = handOver(input, date, report, target, options, io);
      return problem === null ? built : usage(problem, io);
    } finally {
      lock.release();
    }
  } catch (error) {
    if (error instanceof ZipChanged) return usage(`${target} was not written: ${error.message}. Run the command again.`, io);
    const words = fileProblem(error);
    if (words === null) throw error;
    return usage(`${target} ${words}.${options.zip ? " Mend the cause, or name another place with --out." : ""}`, io);
  }
}

/** Issues the pack, writes the zip if one is wanted, and says so; gives back what stands in the way. */
function handOver(show: ShowInput, date: string, report: string, target: string, options: PackOptions, io: Io): string | null {
  const out = outFiles(report);
  const record = readDayRecord(out, date);
  if (record === null) return `${report} has no record of ${date}. Build it and run the command again.`;
  // before the zip is written: a list that left in it must never be replaced
  const { generation, again } = issuePack(out, date);
  const unlisted = filesInNoList(out, date, record);
  const issue = `hash list ${generation ?? "none"}, ${again ? "issued before" : "issued now"}`;
  if (!options.zip) {
    if (options.json) io.out.write(jsonLine({ type: "pack", folder: target, generation, again, unlisted }));
    else if (!options.quiet) io.out.write(`pack ${clickablePath(target, io.cwd)}   ${issue}\n${unlistedText(unlisted)}`);
    return null;
  }
  const entries = dayEntries(out, show, record.digest);
  const bytes = writeZipFile(target, entries, date);
  const size = plainSpaces(fileSize(bytes));
  const files = entries.length;
  if (options.json) io.out.write(jsonLine({ type: "zip", file: target, bytes, files, generation, again, unlisted }));
  else if (!options.quiet) io.out.write(`zip ${clickablePath(target, io.cwd)}  ${size}   ${issue}\n${unlistedText(unlisted)}`);
  return null;
}

/** Files that somebody else put into the pack: no build made them, so that the hash list does not vouch for them. */
function filesInNoList(out: OutFolder, date: string, { outputs }: StoredDay): readonly string[] {
  const folder = `packs/${date}`;
  const own = new Set(outputs.map(({ file }) => file));
  const others = out.files(folder).filter((file) => !own.has(file) && !isHistory(file) && !file.endsWith("/.DS_Store"));
  return others.map((file) => file.slice(folder.length + 1));
}

function unlistedText(files: readonly string[]): string {
  if (files.length === 0) return "";
  const [first, ...more] = files;
  const [what, it] = more.length === 0 ? [first, "it"] : [`${first} and ${more.length} more`, "them"];
  return `in no hash list: ${what}. The build did not make ${it}: verify will report ${it} as extra.\n`;
}

/** The file is there when it is whole: until then it has another name. */
function writeZipFile(file: string, entries: readonly (ZipEntry | LargeZipEntry)[], date: string): number {
  const part = `${file}.part`;
  const [year = 1980, month = 1, day = 1] = date.split("-").map(Number);
  mkdirSync(dirname(file), { recursive: true });
  const target = openSync(part, "w");
  try {
    const bytes = writeZip(entries, { year, month, day }, (piece) => {
      for (let at = 0; at < piece.length; ) at += writeSync(target, piece, at);
    });
    closeSync(target);
    renameSync(part, file);
    return bytes;
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}

function usage(text: string, io: Io): number {
  io.err.write(`error: ${text}\n`);
  return EXIT.usage;
}
