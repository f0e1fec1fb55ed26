/** The command line: which command, which options. Commands are loaded when they run, so that a small one starts fast. */
import { Command, CommanderError, InvalidArgumentError, Option } from "commander";
import { thisTool } from "../build/program.ts";
import { FINDINGS_PER_CODE_AND_FILE } from "../core/findings/collect.ts";
import { READERS, type Reader } from "../pdf/readers.ts";
import { EXIT, type Io } from "./io.ts";
import type { CommonOptions } from "./options.ts";

/** Runs one command and gives back the exit code: 0 fine, 1 errors in the data, 2 usage, 70 a fault of the program. */
export async function runCommand(args: readonly string[], io: Io): Promise<number> {
  const result = { exit: EXIT.fine as number };
  const program = commands(io, (exit) => {
    result.exit = exit;
  });
  try {
    await program.parseAsync([...args], { from: "user" });
    return result.exit;
  } catch (error) {
    if (error instanceof CommanderError)
      return error.code === "commander.helpDisplayed" || error.code === "commander.version" ? EXIT.fine : EXIT.usage;
    const { reportFaults } = await import("./fault.ts");
    return reportFaults([{ tool: thisTool(), args, during: "the command", error }], io);
  }
}

function commands(io: Io, done: (exit: number) => void): Command {
  const program = new Command("daybook")
    .description("Turns lens logs and shot notes into an offline camera report, a PDF and open files, one pack a shooting day.")
    .version(thisTool().version, "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand(false)
    .option("--json", "one JSON object a line on standard output", false)
    .option("-q, --quiet", "print errors only", false)
    .option("--verbose", "print remarks, unchanged days and the time of each stage too", false)
    .option("--no-color", "no colour, like NO_COLOR in the environment")
    .configureHelp({ showGlobalOptions: true, optionDescription: (option) => option.description })
    .configureOutput({ writeOut: (text) => io.out.write(text), writeErr: (text) => io.err.write(text) })
    .showHelpAfterError("Run with --help to see how it is used.")
    .exitOverride()
    .addHelpText("before", EXAMPLES)
    .addHelpText("after", EXITS);

  withPackOptions(
    program
      .command("build")
      .description("build the report and the packs of a show folder")
      .argument("<show>", "show folder, the one with show.yaml")
      .option("-o, --out <folder>", "output folder (default: beside the show folder, <show>-report)")
      .option("-d, --day <date>", "build this day only, such as 2026-10-06; may be repeated", addDate, [])
      .option("-f, --force", "build every day anew, also into a folder that holds other files", false)
      .option("--strict", "exit 1 when there is anything to check", false)
      .addOption(maxFindingsOption()),
  ).action(async (show: string, _options, command: Command) => {
    const { build } = await import("./commands/build.ts");
    done(await build(show, command.optsWithGlobals(), io));
  });

  program
    .command("check")
    .description("read a show folder, or one file of it, and say what is wrong; writes nothing")
    .argument("<path>", "show folder, one notes or log file, or - for a file that is piped in")
    .option("-d, --day <date>", "check this day only; may be repeated", addDate, [])
    .option("--strict", "exit 1 when there is anything to check", false)
    .addOption(maxFindingsOption())
    .action(async (path: string, _options, command: Command) => {
      const { check } = await import("./commands/check.ts");
      done(await check(path, command.optsWithGlobals(), io));
    });

  withPackOptions(
    program
      .command("watch")
      .description("build, then build again what changes; ends with Ctrl-C")
      .argument("<show>", "show folder, the one with show.yaml")
      .option("-o, --out <folder>", "output folder (default: beside the show folder, <show>-report)")
      .option("--poll", "look at the files every second: for network volumes, which tell nobody of changes", false)
      .addOption(maxFindingsOption()),
  ).action(async (show: string, _options, command: Command) => {
    const { watch } = await import("./commands/watch.ts");
    done(await watch(show, { ...command.optsWithGlobals(), day: [], force: false, strict: false }, io));
  });

  program
    .command("verify")
    .description("compare a pack with its own hash list: what is the same, changed, missing, extra")
    .argument("<pack>", "folder of a pack, such as report/packs/2026-10-06, or a zip with one")
    .action(async (pack: string, _options, command: Command) => {
      const { verify } = await import("./commands/verify.ts");
      done(verify(pack, command.optsWithGlobals<CommonOptions>(), io));
    });

  withPackOptions(
    program
      .command("pack")
      .description("build one day and issue its pack, as a folder or as one zip with the day's pages")
      .argument("<show>", "show folder, the one with show.yaml")
      .option("-d, --day <date>", "the day, such as 2026-10-06", oneDate)
      .option("--zip", "make a zip of the pack and the day's pages", false)
      .option("-o, --out <file>", "the zip file (default: <code>-<date>.zip beside the report)")
      .option("--report <folder>", "folder of the report (default: beside the show folder, <show>-report)"),
  )
    .addHelpText("after", ISSUES)
    .action(async (show: string, _options, command: Command) => {
      const { pack } = await import("./commands/pack.ts");
      done(await pack(show, command.optsWithGlobals(), io));
    });

  program
    .command("init")
    .description("write a small example show to begin with")
    .argument("<folder>", "folder to make; it must be absent or empty")
    .action(async (folder: string, _options, command: Command) => {
      const { init } = await import("./commands/init.ts");
      done(init(folder, command.optsWithGlobals<CommonOptions>(), io));
    });

  program
    .command("explain")
    .description("explain a finding code or a formula; without one, list them")
    .argument("[code]", "such as CSV122 or depth-of-field")
    .action(async (code: string | undefined, _options, command: Command) => {
      const { explain } = await import("./commands/explain.ts");
      done(explain(code, command.optsWithGlobals<CommonOptions>(), io));
    });

  program
    .command("columns")
    .description("print the reference of all columns and keys; with a log of another layout, propose a map for kit/columns.yaml")
    .argument("[file]", "log of an unknown layout, or - for one that is piped in")
    .option("--markdown", "as Markdown (the default)", false)
    .option("-o, --out <file>", "write it into a file instead")
    .action(async (file: string | undefined, _options, command: Command) => {
      const { columns } = await import("./commands/columns.ts");
      done(columns(file, command.optsWithGlobals(), io));
    });

  return program;
}

function oneDate(text: string): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) throw new InvalidArgumentError("Write a date as year-month-day, such as 2026-10-06.");
  return text;
}

function addDate(text: string, before: readonly string[]): readonly string[] {
  oneDate(text);
  return before.includes(text) ? before : [...before, text];
}

function maxFindingsOption(): Option {
  const about = `findings of one code in one file to print (default: ${FINDINGS_PER_CODE_AND_FILE}); 0 prints all`;
  return new Option("--max-findings <number>", about).argParser(wholeNumber).default(FINDINGS_PER_CODE_AND_FILE);
}

/** What a pack holds, asked alike by every command that builds. */
function withPackOptions(command: Command): Command {
  const readers = `${READERS.slice(0, -1).join(", ")} or ${READERS.at(-1)}`;
  return command
    .addOption(takeChoice("--vfx <which>", "takes that get a folder of lens files for VFX"))
    .addOption(takeChoice("--maps <which>", "takes whose folder has UV maps and shading maps, which are large"))
    .option("--map-width <pixels>", "width of the maps, or full (default: a quarter of the recorded width)", mapWidth)
    .option("--pdf <reader>", `a PDF for one reader beside the camera report: ${readers}; may be repeated`, addReader, []);
}

function addReader(text: string, before: readonly Reader[]): readonly Reader[] {
  const reader = READERS.find((known) => known === text);
  if (reader === undefined) throw new InvalidArgumentError(`Write one of ${READERS.join(", ")}.`);
  return before.includes(reader) ? before : [...before, reader];
}

function takeChoice(flags: string, about: string): Option {
  return new Option(flags, `${about}: none, plates (the default) or all`).choices(["none", "plates", "all"]).default("plates");
}

function mapWidth(text: string): number | "full" {
  if (text === "full") return text;
  if (!/^\d{2,5}$/.test(text)) throw new InvalidArgumentError("Write a width in pixels, such as 960, or full.");
  return Number(text);
}

function wholeNumber(text: string): number {
  if (!/^\d+$/.test(text)) throw new InvalidArgumentError("Write a whole number, 0 or more.");
  return Number(text);
}

const EXAMPLES = `Examples:
  daybook init my-show               a small show to begin with
  daybook check my-show              what is wrong in the notes and logs
  daybook build my-show --out report
  daybook verify report/packs/2026-10-06
  daybook explain CSV122
`;

const ISSUES = `
Run it when a pack leaves: its hash list (folder ascmhl in the pack) is issued by this command and never changed again. A pack
that differs when it is built or issued later gets a second list beside the first. Until a pack is issued, each build writes
its list anew, so that building while you work adds none.`;

const EXITS = `
Exit code: 0 fine, 1 errors in the data, 2 wrong use or configuration, 70 a fault of the program, 130 interrupted.`;
