/** A show folder over the file system, with problems in words. Nothing outside the folder is ever read. */
import { readdirSync, readFileSync, realpathSync, statSync } from "node:fs";
import { isAbsolute, join, relative, resolve, sep } from "node:path";
import { compareText } from "../core/finding.ts";
import type { ByteSource } from "../csv/byte-source.ts";
import type { FolderEntry, ShowFolder } from "../ingest/folder.ts";
import { fileProblem } from "./file-problem.ts";
import { fileSource } from "./file-source.ts";

export interface ShowFiles extends ShowFolder {
  /** Absolute path of the folder, links resolved. */
  readonly path: string;
  open(file: string): ByteSource | { readonly problem: string };
  /** Links that lead out of the folder and were therefore not followed, in name order. */
  linksLeftOut(): readonly string[];
}

const LEADS_OUT = "is a symbolic link that leads out of the show folder, and such links are not followed";

/**
 * The folder at `path` (which may itself be reached through a link). A symbolic link inside it is followed only when its
 * target is in the show folder too; otherwise it is listed as `other`, reading it gives a problem, and `linksLeftOut` names it.
 */
export function showFiles(path: string): ShowFiles {
  const root = realpathSync(resolve(path));
  const leftOut = new Set<string>();

  const inside = (name: string): string | null => {
    const real = realpathSync(join(root, name));
    if (real === root || real.startsWith(root.endsWith(sep) ? root : root + sep)) return real;
    leftOut.add(name);
    return null;
  };

  return {
    path: root,
    list(folder) {
      try {
        const real = inside(folder);
        if (real === null) return null;
        return readdirSync(real, { withFileTypes: true })
          .map((entry): FolderEntry => ({ name: entry.name, kind: kindOf(folder === "" ? entry.name : `${folder}/${entry.name}`) }))
          .sort((a, b) => compareText(a.name, b.name));
      } catch {
        return null;
      }
    },
    read(file) {
      try {
        const real = inside(file);
        if (real === null) return { problem: LEADS_OUT };
        return readFileSync(real);
      } catch (error) {
        return { problem: fileProblem(error) ?? "cannot be read" };
      }
    },
    open(file) {
      try {
        const real = inside(file);
        return real === null ? { problem: LEADS_OUT } : fileSource(real);
      } catch (error) {
        return { problem: fileProblem(error) ?? "cannot be read" };
      }
    },
    size(file) {
      try {
        const real = inside(file);
        return real === null ? null : statSync(real).size;
      } catch {
        return null;
      }
    },
    linksLeftOut: () => [...leftOut].sort(compareText),
  };

  function kindOf(name: string): FolderEntry["kind"] {
    try {
      const real = inside(name);
      if (real === null) return "other";
      const stat = statSync(real);
      return stat.isFile() ? "file" : stat.isDirectory() ? "folder" : "other";
    } catch {
      return "other";
    }
  }
}

/** Whether `inner` is `outer` or lies below it. Both may not exist yet: then the nearest folder that exists is resolved. */
export function isWithin(inner: string, outer: string): boolean {
  const way = relative(realish(outer), realish(inner));
  return way === "" || (way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way));
}

function realish(path: string): string {
  const absolute = resolve(path);
  try {
    return realpathSync(absolute);
  } catch {
    const parent = resolve(absolute, "..");
    return parent === absolute ? absolute : join(realish(parent), absolute.slice(parent.length));
  }
}
