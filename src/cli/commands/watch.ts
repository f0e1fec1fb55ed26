/** `daybook watch SHOW` */
import { type AfterChange, afterChange, stateAfter, type WatchState } from "../../build/after-change.ts";
import { thisTool } from "../../build/program.ts";
import { showFiles } from "../../build/show-files.ts";
import { watchFolder } from "../../build/watch.ts";
import { plainSpaces } from "../../format/space.ts";
import { plural } from "../../format/words.ts";
import { reportFaults } from "../fault.ts";
import { EXIT, type Io } from "../io.ts";
import { findingLine, jsonLine } from "../json-lines.ts";
import { findingsText } from "../report.ts";
import { coloursFor } from "../style.ts";
import { type BuildCommandOptions, type PreparedBuild, prepareBuild, sayBuild } from "./build.ts";

export interface WatchCommandOptions extends BuildCommandOptions {
  /** For volumes that tell nobody of changes. */
  readonly poll: boolean;
}

/** So many changed files are named, the others are counted. */
const MOST_NAMED = 5;

/** Builds, then builds again what changed until it is interrupted. Ends by itself only when the command is used wrongly (2). */
export async function watch(path: string, options: WatchCommandOptions, io: Io): Promise<number> {
  const prepared = await prepareBuild(path, options, io);
  if ("usage" in prepared) {
    io.err.write(`error: ${prepared.usage}\n`);
    return EXIT.usage;
  }
  const { show, out, log } = prepared;
  const ended = new Promise<number>((end) => {
    io.onInterrupt(() => {
      log.clear();
      io.err.write("interrupted. Finished days are in place; the next build goes on from here.\n");
      end(io.exit(EXIT.interrupted));
    });
  });
  let state: WatchState | null = null;
  // watching begins before the first build, so that nothing that changes meanwhile is missed
  const waiting: string[] = [];
  const work = async (files: readonly string[]): Promise<void> => {
    if (state === null) {
      waiting.push(...files);
      return;
    }
    sayChanged(files, options, io);
    const step = await afterChange(files, state, showFiles(show.path), out, prepared.run);
    state = step.state;
    sayStep(step, prepared, options, io);
  };
  const onFault = (error: unknown): void => {
    reportFaults([{ tool: thisTool(), args: ["watch", show.path], during: "watching", error }], io);
  };
  await watchFolder(show.path, { poll: options.poll, onChange: work, onFault });
  const first = await prepared.run();
  log.clear();
  sayBuild(first, show, prepared.outPath, options, io, log);
  state = stateAfter(first, null);
  if (!options.quiet && !options.json) io.err.write(`watching ${show.path}; Ctrl-C ends it\n`);
  if (waiting.length > 0) await work([...new Set(waiting)]);
  return ended;
}

function sayChanged(files: readonly string[], options: WatchCommandOptions, io: Io): void {
  if (options.json) io.out.write(jsonLine({ type: "changed", files }));
  if (options.quiet || options.json) return;
  const more = files.length - MOST_NAMED;
  const named = files.slice(0, MOST_NAMED).join(", ");
  io.err.write(`\nchanged: ${named}${more > 0 ? ` and ${plainSpaces(plural(more, "more file"))}` : ""}\n`);
}

function sayStep(step: AfterChange, { show, outPath, log }: PreparedBuild, options: WatchCommandOptions, io: Io): void {
  log.clear();
  if (step.kind === "built") {
    // the others were said before
    sayBuild({ ...step.result, findings: step.findings }, show, outPath, options, io, log);
    return;
  }
  if (options.json) {
    for (const finding of step.findings) io.out.write(findingLine(finding));
    io.out.write(jsonLine({ type: "kept", files: step.state.behind }));
    return;
  }
  const colours = coloursFor(io.out, io, options.color);
  io.out.write(
    findingsText(step.findings, show, { root: show.path, cwd: io.cwd, limit: options.maxFindings, severities: ["error"], colours }),
  );
  io.err.write("not built: the change has new errors. The last good pages stay, and say so. Mend it, or run daybook build.\n");
}
