/** Finds the show folder that a command names. */
import { existsSync, statSync } from "node:fs";
import { basename, dirname, resolve } from "node:path";
import { type ShowFiles, showFiles } from "../build/show-files.ts";
import type { UsageProblem } from "./options.ts";

/** The show folder at a path, which may also be that of its show.yaml. */
export function openShow(path: string, cwd: string): ShowFiles | UsageProblem {
  const full = resolve(cwd, path);
  const stat = statSync(full, { throwIfNoEntry: false });
  if (stat === undefined) return { usage: `there is no folder "${path}".${startHint(path)}` };
  if (stat.isDirectory()) {
    const above = existsSync(resolve(full, "show.yaml")) ? null : showAbove(full);
    return above === null ? showFiles(full) : { usage: `"${path}" has no show.yaml. Its show folder is ${above}.` };
  }
  if (basename(full) === "show.yaml") return showFiles(dirname(full));
  const show = showAbove(full);
  const instead = show === null ? "" : ` Its show folder is ${show}.`;
  return { usage: `"${path}" is a file; build takes the folder that holds show.yaml.${instead}` };
}

/** Nearest folder above a file that holds show.yaml; `null` when there is none. */
export function showAbove(file: string): string | null {
  for (let folder = dirname(resolve(file)); ; folder = dirname(folder)) {
    if (existsSync(resolve(folder, "show.yaml"))) return folder;
    if (dirname(folder) === folder) return null;
  }
}

function startHint(path: string): string {
  return ` To begin with an example, run: daybook init ${path}`;
}
