/** The output folder over the file system. */
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { compareText } from "../core/finding.ts";
import type { OutFolder } from "./effects.ts";

/** The output folder at `path`, which need not exist yet. Names are relative to it; a failing file system throws its own error. */
export function outFiles(path: string): OutFolder {
  const root = resolve(path);
  const absolute = (name: string) => join(root, name);
  return {
    path: root,
    absolute,
    size(file) {
      const stat = statSync(absolute(file), { throwIfNoEntry: false });
      return stat?.isFile() ? stat.size : null;
    },
    read: (file) => (statSync(absolute(file), { throwIfNoEntry: false })?.isFile() ? readFileSync(absolute(file)) : null),
    write(file, content) {
      mkdirSync(dirname(absolute(file)), { recursive: true });
      writeFileSync(absolute(file), content);
    },
    files: (folder) => filesBelow(root, folder),
    topNames: () => (existsSync(root) ? readdirSync(root).sort(compareText) : null),
    move(from, to) {
      mkdirSync(dirname(absolute(to)), { recursive: true });
      renameSync(absolute(from), absolute(to));
    },
    removeFile(file) {
      rmSync(absolute(file), { force: true });
      removeEmptyFolders(root, dirname(file));
    },
    removeFolder: (folder) => rmSync(absolute(folder), { recursive: true, force: true }),
  };
}

function filesBelow(root: string, folder: string): string[] {
  const full = join(root, folder);
  if (!existsSync(full)) return [];
  return readdirSync(full, { withFileTypes: true })
    .flatMap((entry) => {
      const name = folder === "" ? entry.name : `${folder}/${entry.name}`;
      return entry.isDirectory() ? filesBelow(root, name) : [name];
    })
    .sort(compareText);
}

function removeEmptyFolders(root: string, folder: string): void {
  for (let current = folder; current !== "." && current !== ""; current = dirname(current)) {
    try {
      rmdirSync(join(root, current));
    } catch {
      return;
    }
  }
}
