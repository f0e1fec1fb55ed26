/** `daybook check SHOW|FILE` */
import { statSync } from "node:fs";
import { relative, resolve, sep } from "node:path";
import { type CheckResult, checkOneFile, checkShow } from "../../build/check.ts";
import { type ShowFiles, showFiles } from "../../build/show-files.ts";
import { sourceOf } from "../../ingest/open-file.ts";
import { EXIT, type Io } from "../io.ts";
import { findingLine, summaryLine } from "../json-lines.ts";
import { looseFile, STDIN_NAME } from "../loose-file.ts";
import { openShow, showAbove } from "../open-show.ts";
import { type CommonOptions, shownSeverities, type UsageProblem } from "../options.ts";
import { findingsText } from "../report.ts";
import { coloursFor } from "../style.ts";
import { countsText, daysText, rowsText, totalLine } from "../summary.ts";

export interface CheckCommandOptions extends CommonOptions {
  readonly day: readonly string[];
  readonly strict: boolean;
  readonly maxFindings: number;
}

/** What is checked: a show, one file of a show, or a file without a show around it. */
interface Target {
  readonly folder: ShowFiles;
  /** Absolute path that the findings' file names are relative to. */
  readonly root: string;
  readonly onlyFile: string | null;
  /** Name that a file without a show is called by; `null` in a show. */
  readonly looseName: string | null;
  /** Said before the findings; `null` when there is nothing to say. */
  readonly remark: string | null;
}

/** Reads, prints what was found and gives back the exit code; writes nothing. */
export function check(path: string, options: CheckCommandOptions, io: Io): number {
  const start = io.now();
  const target = findTarget(path, io);
  if ("usage" in target) return usage(target.usage, io);
  if (target.remark !== null && !options.quiet) io.err.write(`${target.remark}\n`);
  const { folder, onlyFile, looseName } = target;
  const unknown = options.day.find((date) => folder.list(`days/${date}`) === null);
  if (unknown !== undefined) return usage(`no day "${unknown}" in the show.`, io);
  const result =
    onlyFile !== null && looseName !== null
      ? checkOneFile(folder, onlyFile, looseName, options.maxFindings)
      : checkShow(folder, options.day, onlyFile, options.maxFindings);
  const exit = exitCode(result, options);
  if (options.json) sayJson(result, exit, io.now() - start, io);
  else sayText(result, target, options, io.now() - start, io);
  return exit;
}

/** Files of a show that a report is made from. */
const READ_FILES = /^(show\.yaml|kit\/.+|days\/\d{4}-\d{2}-\d{2}\/.+)$/;

function findTarget(path: string, io: Io): Target | UsageProblem {
  if (path === "-") return loose(io.readInput(), STDIN_NAME, io);
  const full = resolve(io.cwd, path);
  if (statSync(full, { throwIfNoEntry: false })?.isFile() !== true) {
    const show = openShow(path, io.cwd);
    return "usage" in show ? show : { folder: show, root: show.path, onlyFile: null, looseName: null, remark: null };
  }
  const above = showAbove(full);
  if (above !== null) {
    const folder = showFiles(above);
    const onlyFile = relative(folder.path, showFiles(resolve(full, "..")).path + sep + full.slice(full.lastIndexOf(sep) + 1));
    const name = onlyFile.split(sep).join("/");
    if (!READ_FILES.test(name)) return { usage: `"${path}" is no file that a report is made from.` };
    return { folder, root: folder.path, onlyFile: name, looseName: null, remark: null };
  }
  const content = showFiles(resolve(full, "..")).read(full.slice(full.lastIndexOf(sep) + 1));
  if (!(content instanceof Uint8Array)) return { usage: `"${path}" ${content.problem}` };
  return loose(content, path, io);
}

function loose(content: Uint8Array, name: string, io: Io): Target {
  const { folder, file, remark } = looseFile(content, name);
  const read = (asked: string) => (asked === name ? content : folder.read(asked));
  const open = (asked: string) => sourceOf({ list: folder.list, read }, asked);
  const reading: ShowFiles = { path: io.cwd, list: folder.list, read, open, linksLeftOut: () => [] };
  return { folder: reading, root: io.cwd, onlyFile: file, looseName: name, remark };
}

function sayText(result: CheckResult, target: Target, options: CheckCommandOptions, milliseconds: number, io: Io): void {
  const text = findingsText(result.findings, target.folder, {
    root: target.root,
    cwd: io.cwd,
    limit: options.maxFindings,
    severities: shownSeverities(options),
    colours: coloursFor(io.out, io, options.color),
  });
  io.out.write(text);
  if (options.quiet || !result.usable) return;
  const counts = countsText(result.counts, options.verbose);
  const file = target.looseName ?? target.onlyFile;
  const days = daysText(Array.from({ length: result.days }, () => "checked"));
  io.out.write(file === null ? totalLine({ days, takes: result.takes, counts, milliseconds }) : `${file}   ${counts}`);
  io.out.write("\n");
  const rows = rowsText(result.rows);
  if (rows !== "") io.out.write(`${rows}\n`);
}

function sayJson(result: CheckResult, exit: number, milliseconds: number, io: Io): void {
  for (const finding of result.findings) io.out.write(findingLine(finding));
  const { days, takes, rows, counts: findings } = result;
  io.out.write(
    summaryLine({ command: "check", exit, days, built: 0, unchanged: 0, takes, findings, rows, milliseconds, open: null }),
  );
}

function exitCode(result: CheckResult, options: CheckCommandOptions): number {
  if (!result.usable) return EXIT.usage;
  return result.counts.error > 0 || (options.strict && result.counts.check > 0) ? EXIT.dataErrors : EXIT.fine;
}

function usage(text: string, io: Io): number {
  io.err.write(`error: ${text}\n`);
  return EXIT.usage;
}
