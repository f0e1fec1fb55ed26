/** A show folder on the disk, as the readers see it. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { ShowFolder } from "../../src/ingest/folder.ts";

export function diskFolder(root: string): ShowFolder {
  return {
    list(folder) {
      try {
        return readdirSync(join(root, folder), { withFileTypes: true })
          .map((entry) => ({
            name: entry.name,
            kind: entry.isFile() ? ("file" as const) : entry.isDirectory() ? ("folder" as const) : ("other" as const),
          }))
          .sort((a, b) => (a.name < b.name ? -1 : 1));
      } catch {
        return null;
      }
    },
    read(file) {
      try {
        return readFileSync(join(root, file));
      } catch (error) {
        return { problem: String(error) };
      }
    },
  };
}
