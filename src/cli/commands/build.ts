/** `daybook build SHOW` */
import { statSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import type { BuildEffects, OutFolder } from "../../build/effects.ts";
import { lockOutput } from "../../build/lock.ts";
import { loadPipeline } from "../../build/make.ts";
import { outFiles } from "../../build/out-files.ts";
import { programHash, thisTool } from "../../build/program.ts";
import { type BuildResult, buildShow } from "../../build/run.ts";
import { isWithin, type ShowFiles, showFiles } from "../../build/show-files.ts";
import { DEFAULT_VFX, type TakeChoice } from "../../export/vfx/options.ts";
import type { Reader } from "../../pdf/readers.ts";
import { reportFaults } from "../fault.ts";
import { EXIT, type Io } from "../io.ts";
import { dayLine, findingLine, summaryLine } from "../json-lines.ts";
import { openShow } from "../open-show.ts";
import { type CommonOptions, shownSeverities, type UsageProblem } from "../options.ts";
import { type ProgressLog, progressLog } from "../progress.ts";
import { clickablePath, findingsText } from "../report.ts";
import { coloursFor } from "../style.ts";
import { countsText, daysText, rowsText, totalLine } from "../summary.ts";

export interface BuildCommandOptions extends CommonOptions {
  readonly out?: string;
  readonly day: readonly string[];
  readonly force: boolean;
  readonly strict: boolean;
  readonly maxFindings: number;
  /** As the library has it when absent: plates. */
  readonly vfx?: TakeChoice;
  readonly maps?: TakeChoice;
  readonly mapWidth?: number | "full";
  /** Readers that get a PDF of their own. */
  readonly pdf?: readonly Reader[];
}

/** A build that can be run, once or again and again. */
export interface PreparedBuild {
  readonly show: ShowFiles;
  readonly outPath: string;
  readonly out: OutFolder;
  readonly log: ProgressLog;
  run(): Promise<BuildResult>;
}

/** Looks at the folders and options; says what is wrong with the use of the command. */
export async function prepareBuild(path: string, options: BuildCommandOptions, io: Io): Promise<PreparedBuild | UsageProblem> {
  const show = openShow(path, io.cwd);
  if ("usage" in show) return show;
  const outPath = options.out === undefined ? defaultOut(show) : resolve(io.cwd, options.out);
  if (isWithin(outPath, show.path)) {
    return { usage: `the report cannot be written into the show folder (${outPath}). Name a folder outside it with --out.` };
  }
  if (statSync(outPath, { throwIfNoEntry: false })?.isFile() === true)
    return { usage: `${outPath} is a file; --out takes a folder.` };
  const log = progressLog(io, options);
  const days: BuildEffects["log"] = options.json ? { ...log, day: (report) => io.out.write(dayLine(report)) } : log;
  const lock = () => lockOutput(outPath);
  const out = outFiles(outPath);
  const vfx = {
    takes: options.vfx ?? DEFAULT_VFX.takes,
    maps: options.maps ?? DEFAULT_VFX.maps,
    mapWidth: options.mapWidth ?? DEFAULT_VFX.mapWidth,
  };
  const pdf = options.pdf ?? [];
  const pipeline = await loadPipeline();
  const run = () => {
    // links that lead out are remembered by the reader of the folder: each build has its own
    const folder = showFiles(show.path);
    const effects: BuildEffects = { show: folder, linksLeftOut: folder.linksLeftOut, out, lock, log: days, now: io.now };
    const build = { dates: options.day, force: options.force, tool: thisTool(), programHash: programHash(), vfx, pdf };
    return buildShow(build, effects, pipeline);
  };
  return { show, outPath, out, log, run };
}

/** Builds a show, prints what was found and where the report begins, and gives back the exit code. */
export async function build(path: string, options: BuildCommandOptions, io: Io): Promise<number> {
  const prepared = await prepareBuild(path, options, io);
  if ("usage" in prepared) return usage(prepared.usage, io);
  const { show, outPath, log } = prepared;
  const stopWaiting = io.onInterrupt(() => {
    log.clear();
    io.err.write("interrupted. Finished days are in place, the others are as they were; the next build goes on from here.\n");
    io.exit(EXIT.interrupted);
  });
  const result = await prepared.run();
  stopWaiting();
  log.clear();
  return sayBuild(result, show, outPath, options, io, log);
}

/** Prints findings, totals and faults of a build and gives back its exit code. */
export function sayBuild(
  result: BuildResult,
  show: ShowFiles,
  outPath: string,
  options: BuildCommandOptions,
  io: Io,
  log: ProgressLog,
): number {
  const exit = exitCode(result, options.strict);
  const page = result.status === "done" && !result.faults.some((f) => f.date === null) ? join(outPath, "index.html") : null;
  if (options.json) {
    for (const finding of result.findings) io.out.write(findingLine(finding));
  } else {
    io.out.write(
      findingsText(result.findings, show, {
        root: show.path,
        cwd: io.cwd,
        limit: options.maxFindings,
        severities: shownSeverities(options),
        colours: coloursFor(io.out, io, options.color),
      }),
    );
  }
  log.clear();
  if (result.problem !== null) return usage(result.problem, io);
  const states = result.days.map((day) => day.state);
  if (options.json) {
    io.out.write(
      summaryLine({
        command: "build",
        exit,
        days: states.length,
        built: states.filter((s) => s === "built").length,
        unchanged: states.filter((s) => s === "unchanged").length,
        takes: result.takes,
        findings: result.counts,
        rows: result.rows,
        milliseconds: result.milliseconds,
        open: page,
      }),
    );
  } else if (!options.quiet && (result.status === "done" || states.length > 0)) {
    const counts = countsText(result.counts, options.verbose);
    io.out.write(`${totalLine({ days: daysText(states), takes: result.takes, counts, milliseconds: result.milliseconds })}\n`);
    const rows = rowsText(result.rows);
    if (rows !== "") io.out.write(`${rows}\n`);
    if (page !== null) io.out.write(`open ${clickablePath(page, io.cwd)}\n`);
  }
  if (result.faults.length === 0) return exit;
  const tool = thisTool();
  const args = ["build", show.path];
  return reportFaults(
    result.faults.map(({ date, error }) => ({ tool, args, during: date === null ? "the show-wide pages" : `day ${date}`, error })),
    io,
  );
}

function exitCode(result: BuildResult, strict: boolean): number {
  if (result.status === "refused") return EXIT.usage;
  if (result.faults.length > 0) return EXIT.fault;
  return result.counts.error > 0 || (strict && result.counts.check > 0) ? EXIT.dataErrors : EXIT.fine;
}

/** Beside the show folder, so that nothing is ever written into it. */
export function defaultOut(show: ShowFiles): string {
  return join(dirname(show.path), `${basename(show.path)}-report`);
}

function usage(text: string, io: Io): number {
  io.err.write(`error: ${text}\n`);
  return EXIT.usage;
}
