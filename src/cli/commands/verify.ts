/** `daybook verify PACK` */
import { resolve } from "node:path";
import { type FileState, type Verification, type VerifiedFile, verifyPack } from "../../build/verify.ts";
import { fileSize } from "../../format/amounts.ts";
import { plainSpaces } from "../../format/space.ts";
import { plural } from "../../format/words.ts";
import { EXIT, type Io } from "../io.ts";
import { jsonLine } from "../json-lines.ts";
import type { CommonOptions } from "../options.ts";
import { type Colours, coloursFor } from "../style.ts";

/** Says of every file of a pack whether it is as the pack's hash list says; exit 0 intact, 1 not, 2 nothing to compare with. */
export function verify(path: string, options: CommonOptions, io: Io): number {
  const result = verifyPack(resolve(io.cwd, path));
  if ("problem" in result) {
    io.err.write(`error: ${result.problem}\n`);
    return EXIT.usage;
  }
  const exit = result.intact ? EXIT.fine : EXIT.dataErrors;
  if (options.json) io.out.write(jsonText(result, exit));
  else io.out.write(text(result, options, coloursFor(io.out, io, options.color)));
  return exit;
}

function jsonText(result: Verification, exit: number): string {
  const { files, counts, generation, created, host, problems, intact, inZip } = result;
  const lines = [
    ...files.map(({ state, ...file }) => ({ type: "file", state, ...file })),
    ...problems.map((message) => ({ type: "history", message })),
    {
      type: "summary",
      command: "verify",
      exit,
      intact,
      generation,
      created,
      host,
      ...(inZip === null ? {} : { inZip }),
      files: counts,
    },
  ];
  return lines.map(jsonLine).join("");
}

function text(result: Verification, options: CommonOptions, colours: Colours): string {
  const { files, counts, generation, created, host, problems } = result;
  const shown = options.quiet ? files.filter((file) => file.state !== "same") : files;
  const widest = shown.reduce((most, file) => Math.max(most, file.path.length), 0);
  const lines = [
    ...shown.map((file) => fileLine(file, widest, colours)),
    ...problems.map((problem) => `${colours.red("history")}    ${problem}`),
  ];
  if (!options.quiet) {
    const list = `generation ${generation} of ${created.replace("T", " ").replace("+00:00", " UTC")}, made by ${host}`;
    if (result.inZip !== null) lines.push(inZipLine(result.inZip));
    lines.push(`${result.intact ? "intact" : "not intact"}: ${countsText(counts, problems.length)}   (hash list: ${list})`);
  }
  return lines.length === 0 ? "" : `${lines.join("\n")}\n`;
}

/** The list is of the pack: the pages that travel beside it are in none. */
function inZipLine(folder: string): string {
  return folder === ""
    ? "compared in the zip"
    : `compared in the zip: its folder ${folder}; what else is in it, such as pages, is in no list`;
}

function fileLine(file: VerifiedFile, widest: number, colours: Colours): string {
  const word = file.state.padEnd(9);
  const state = file.state === "same" ? colours.dim(word) : colours.red(word);
  // a name in a zip may hold what a terminal obeys
  return `${state}  ${inert(file.path).padEnd(widest)}  ${about(file)}`.trimEnd();
}

function about({ state, bytes, expectedBytes, algorithm, hash, expectedHash, detail }: VerifiedFile): string {
  const size = bytes === null ? "" : plainSpaces(fileSize(bytes));
  const listed = `listed ${expectedBytes === null ? "" : `${plainSpaces(fileSize(expectedBytes))}, `}${algorithm} ${expectedHash}`;
  if (state === "missing") return listed;
  if (detail !== "") return `${size}  ${inert(detail)}`;
  const now = `${size}  ${algorithm} ${hash}`;
  return state === "changed" ? `${now}, ${listed}` : now;
}

function inert(words: string): string {
  return words.replaceAll(/\p{Cc}/gu, "\ufffd");
}

function countsText(counts: Readonly<Record<FileState, number>>, problems: number): string {
  const states: readonly FileState[] = ["same", "changed", "missing", "extra", "unchecked"];
  const total = states.reduce((sum, state) => sum + counts[state], 0);
  const parts = states.filter((state) => counts[state] > 0).map((state) => `${counts[state]} ${state}`);
  const history = problems === 0 ? [] : [`${plainSpaces(plural(problems, "problem"))} in the hash list itself`];
  return `${plainSpaces(plural(total, "file"))}${parts.length === 0 ? "" : `: ${[...parts, ...history].join(", ")}`}`;
}
