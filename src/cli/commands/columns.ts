/** `daybook columns`: the reference of every column and key, from the same data that the readers use. */
import { columnsMarkdown } from "../../csv/columns-markdown.ts";
import { columnObjects } from "../columns-json.ts";
import { EXIT, type Io } from "../io.ts";
import { jsonLine } from "../json-lines.ts";
import type { CommonOptions } from "../options.ts";

/** Prints the reference as Markdown, or one object a line with `--json`. */
export function columns(options: CommonOptions, io: Io): number {
  io.out.write(options.json ? columnObjects().map(jsonLine).join("") : columnsMarkdown());
  return EXIT.fine;
}
