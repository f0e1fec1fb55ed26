/** Colour where it helps: on a terminal that wants it, decided for each stream. */
import picocolors from "picocolors";
import type { Severity } from "../core/finding.ts";
import type { Io, TextStream } from "./io.ts";

export type Colours = ReturnType<typeof picocolors.createColors>;

/** Colours for a stream; they add nothing with `--no-color`, `NO_COLOR` (non-empty), `TERM=dumb` or when no terminal reads. */
export function coloursFor(stream: TextStream, io: Io, wanted: boolean): Colours {
  const refused = !wanted || (io.env.NO_COLOR ?? "") !== "" || io.env.TERM === "dumb";
  return picocolors.createColors(stream.isTerminal && !refused);
}

export function severityWord(severity: Severity, colours: Colours): string {
  if (severity === "error") return colours.bold(colours.red(severity));
  return severity === "check" ? colours.yellow(severity) : colours.dim(severity);
}

/** Breaks a paragraph into lines of at most `width` characters, each after the indent. */
export function wrapText(text: string, width: number, indent = ""): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter((w) => w !== "")) {
    if (line !== "" && indent.length + line.length + 1 + word.length > width) {
      lines.push(indent + line);
      line = word;
    } else {
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  if (line !== "") lines.push(indent + line);
  return lines.join("\n");
}
