/** One notes or log file without a show around it, dressed as the smallest show that can be read. */
import { basename } from "node:path";
import { compareText } from "../core/finding.ts";
import type { FolderEntry, ShowFolder } from "../ingest/folder.ts";

/** Name of what is piped in. */
export const STDIN_NAME = "standard-input.csv";

export interface LooseFile {
  readonly folder: ShowFolder;
  /** Name of the file in that show; the findings are about this name. */
  readonly file: string;
  /** What was assumed, in a sentence. */
  readonly remark: string;
}

const DAY = "days/2000-01-01";

/** A show that holds this one file: notes when its header has a slate and no time column, else a log. */
export function looseFile(content: Uint8Array, name: string): LooseFile {
  const text = new TextDecoder().decode(content.subarray(0, 4_000_000));
  const isNotes = looksLikeNotes(text);
  const guess = guessRate(text);
  const file = isNotes ? `${DAY}/notes.csv` : `${DAY}/logs/${basename(name)}`;
  const yaml = `title: one file\ncode: FILE\nrate: ${guess.rate}\ndrop_frame: ${guess.drop}\n`;
  const files = new Map<string, Uint8Array>([
    ["show.yaml", new TextEncoder().encode(yaml)],
    [file, content],
  ]);
  const what = isNotes ? "notes" : "a lens log";
  const counting = guess.drop ? ", drop-frame" : "";
  return {
    folder: folderOf(files),
    file,
    remark: `no show.yaml above it: read as ${what} at ${guess.rate} frames a second${counting}, unless the file says its rate; lenses and takes are not looked up`,
  };
}

function looksLikeNotes(text: string): boolean {
  const header = text.split(/\r?\n/).find((line) => line.trim() !== "" && !line.startsWith("#")) ?? "";
  const names = header.split(/[,;\t]/).map((cell) => cell.trim().replace(/^"|"$/g, "").toLowerCase());
  return names.includes("slate") && !names.some((n) => n === "timecode" || n === "frame" || n === "time_s");
}

/** The smallest usual rate that has room for all frame numbers in the file. */
function guessRate(text: string): { readonly rate: string; readonly drop: boolean } {
  let highest = 0;
  let drop = false;
  for (const match of text.matchAll(/\b\d\d:\d\d:\d\d([:;.])(\d\d)\b/g)) {
    highest = Math.max(highest, Number(match[2]));
    drop ||= match[1] === ";";
  }
  if (drop) return { rate: highest > 29 ? "60000/1001" : "30000/1001", drop };
  return { rate: highest < 24 ? "24" : highest < 25 ? "25" : highest < 30 ? "30" : highest < 48 ? "48" : "60", drop };
}

/** A show folder over files in memory. */
function folderOf(files: ReadonlyMap<string, Uint8Array>): ShowFolder {
  return {
    list(folder) {
      const prefix = folder === "" ? "" : `${folder}/`;
      const entries = new Map<string, FolderEntry>();
      for (const file of files.keys()) {
        if (!file.startsWith(prefix)) continue;
        const [name = "", ...rest] = file.slice(prefix.length).split("/");
        entries.set(name, { name, kind: rest.length === 0 ? "file" : "folder" });
      }
      return entries.size === 0 ? null : [...entries.values()].sort((a, b) => compareText(a.name, b.name));
    },
    read: (file) => files.get(file) ?? { problem: "is not there" },
  };
}
