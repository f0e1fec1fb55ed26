/**
 * `daybook columns`: the reference of every column and key, from the same data that the readers use; with a file, what its columns may
 * be, as a field map to look at.
 */
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { fileProblem } from "../../build/file-problem.ts";
import { columnsMarkdown } from "../../csv/columns-markdown.ts";
import { LARGEST_TEXT_BYTES } from "../../csv/limits.ts";
import { proposeMap } from "../../ingest/columns/propose-map.ts";
import { columnObjects } from "../columns-json.ts";
import { proposalObjects, proposalText } from "../columns-proposal.ts";
import { EXIT, type Io } from "../io.ts";
import { findingLine, jsonLine } from "../json-lines.ts";
import type { CommonOptions } from "../options.ts";

export interface ColumnsOptions extends CommonOptions {
  readonly out?: string;
}

/** Prints the reference as Markdown, or one object a line with `--json`; with a file, the proposal for it; into a file with `--out`. */
export function columns(file: string | undefined, options: ColumnsOptions, io: Io): number {
  if (file === undefined) return write(options.json ? columnObjects().map(jsonLine).join("") : columnsMarkdown(), options, io);
  const bytes = bytesOf(file, io);
  const proposal = "problem" in bytes ? bytes : proposeMap(file, bytes.content);
  if ("problem" in proposal) {
    io.err.write(`error: ${file}: ${proposal.problem}\n`);
    return EXIT.usage;
  }
  if (!options.json) return write(proposalText(proposal), options, io);
  return write([...proposalObjects(proposal).map(jsonLine), ...proposal.findings.map(findingLine)].join(""), options, io);
}

function bytesOf(file: string, io: Io): { readonly content: Uint8Array } | { readonly problem: string } {
  if (file === "-") return { content: io.readInput() };
  try {
    const path = resolve(io.cwd, file);
    const { size } = statSync(path);
    if (size > LARGEST_TEXT_BYTES)
      return { problem: `it has ${Math.floor(size / 1e6)} MB: give the command its first thousand lines` };
    return { content: readFileSync(path) };
  } catch (error) {
    const problem = fileProblem(error);
    if (problem === null) throw error;
    return { problem };
  }
}

function write(text: string, options: ColumnsOptions, io: Io): number {
  if (options.out === undefined) {
    io.out.write(text);
    return EXIT.fine;
  }
  try {
    writeFileSync(resolve(io.cwd, options.out), text);
    return EXIT.fine;
  } catch (error) {
    const words = fileProblem(error);
    if (words === null) throw error;
    io.err.write(`error: ${options.out} ${words}\n`);
    return EXIT.usage;
  }
}
