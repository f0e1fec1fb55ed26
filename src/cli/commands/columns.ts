/** `daybook columns`: the reference of every column and key, from the same data that the readers use. */
import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { fileProblem } from "../../build/file-problem.ts";
import { columnsMarkdown } from "../../csv/columns-markdown.ts";
import { columnObjects } from "../columns-json.ts";
import { EXIT, type Io } from "../io.ts";
import { jsonLine } from "../json-lines.ts";
import type { CommonOptions } from "../options.ts";

export interface ColumnsOptions extends CommonOptions {
  readonly out?: string;
}

/** Prints the reference as Markdown, or one object a line with `--json`; into a file with `--out`. */
export function columns(options: ColumnsOptions, io: Io): number {
  const text = options.json ? columnObjects().map(jsonLine).join("") : columnsMarkdown();
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
