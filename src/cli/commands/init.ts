/** `daybook init DIR` */
import { mkdirSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileProblem } from "../../build/file-problem.ts";
import { exampleShow } from "../example-show.ts";
import { EXIT, type Io } from "../io.ts";
import { jsonLine } from "../json-lines.ts";
import type { CommonOptions } from "../options.ts";

/** Writes the example show into a folder that is absent or empty and says what to do next. */
export function init(folder: string, options: CommonOptions, io: Io): number {
  const root = resolve(io.cwd, folder);
  const problem = folderProblem(root, folder) ?? writeAll(root);
  if (problem !== null) {
    io.err.write(`error: ${problem}\n`);
    return EXIT.usage;
  }
  const files = exampleShow();
  if (options.json) io.out.write(jsonLine({ type: "init", folder: root, files: files.map((f) => f.name) }));
  else if (!options.quiet) {
    io.out.write(`${files.map((f) => `  ${join(folder, f.name)}`).join("\n")}\n\n`);
    io.out.write(`next:\n  daybook check ${folder}\n  daybook build ${folder}\n`);
  }
  return EXIT.fine;
}

function folderProblem(root: string, shown: string): string | null {
  const stat = statSync(root, { throwIfNoEntry: false });
  if (stat === undefined) return null;
  if (!stat.isDirectory()) return `"${shown}" is a file; init makes a folder.`;
  const names = readdirSync(root);
  return names.length === 0
    ? null
    : `"${shown}" is not empty (${names.slice(0, 3).join(", ")}); nothing was written. Name a new folder.`;
}

function writeAll(root: string): string | null {
  try {
    for (const file of exampleShow()) {
      mkdirSync(dirname(join(root, file.name)), { recursive: true });
      writeFileSync(join(root, file.name), file.text);
    }
    return null;
  } catch (error) {
    const words = fileProblem(error);
    if (words === null) throw error;
    return `${root} ${words}`;
  }
}
