/** A show folder made of plain texts, and the way from there to a day's figures. */
import type { Finding } from "../../src/core/finding.ts";
import type { FolderEntry, ShowFolder } from "../../src/ingest/folder.ts";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { buildDay } from "../../src/model/build-day.ts";
import type { Day } from "../../src/model/types.ts";
import { summariseDay } from "../../src/summary/day.ts";
import type { DaySummary } from "../../src/summary/types.ts";

export type Files = Readonly<Record<string, string | Uint8Array>>;

/** The files of a folder as the readers see it. */
export function memoryFolder(files: Files): ShowFolder {
  const names = Object.keys(files).sort();
  return {
    list(folder) {
      const prefix = folder === "" ? "" : `${folder}/`;
      const below = names.filter((name) => name.startsWith(prefix));
      if (below.length === 0 && folder !== "") return null;
      const entries = new Map<string, FolderEntry>();
      for (const name of below) {
        const [first, ...rest] = name.slice(prefix.length).split("/") as [string, ...string[]];
        entries.set(first, { name: first, kind: rest.length > 0 ? "folder" : "file" });
      }
      return [...entries.values()];
    },
    read(file) {
      const content = files[file];
      if (content === undefined)
        return { problem: names.some((name) => name.startsWith(`${file}/`)) ? "is a folder" : "no such file" };
      return typeof content === "string" ? new TextEncoder().encode(content) : content;
    },
  };
}

export const SMALL_KIT = {
  "show.yaml": "title: Small show\ncode: SMALL\nrate: 24\ncircle_of_confusion_mm: 0.025\n",
  "kit/cameras.csv": "camera,sensor_mode,active_width_mm,active_height_mm\nA,OPEN,24.89,18.66\nB,OPEN,24.89,18.66\n",
  "kit/lenses.csv":
    "lens,serial,kind,focal_mm,focal_min_mm,focal_max_mm,widest_t,transmittance,close_focus_m,front_to_image_mm\n" +
    "P50,501,prime,50,,,2,0.81,0.5,150\nP35,351,prime,35,,,2,,0.4,\nZ2880,901,zoom,,28,80,2.8,,0.8,\n",
} as const;

/** Per-frame log text: a row for each frame from `firstFrame` at 24 frames a second on, with what `cells` says. */
export function logText(
  keys: readonly string[],
  header: string,
  start: string,
  frames: number,
  cells: (i: number) => string,
): string {
  const [h, m, s, f] = start.split(":").map(Number) as [number, number, number, number];
  const first = ((h * 60 + m) * 60 + s) * 24 + f;
  const rows = Array.from({ length: frames }, (_, i) => {
    const n = first + i;
    const label = [Math.floor(n / 86400) % 24, Math.floor(n / 1440) % 60, Math.floor(n / 24) % 60, n % 24]
      .map((v) => String(v).padStart(2, "0"))
      .join(":");
    return `${label},${cells(i)}\n`;
  });
  return `${keys.map((key) => `# ${key}\n`).join("")}timecode,${header}\n${rows.join("")}`;
}

/** Reads, joins and summarises one day of a show given as texts. */
export function summarise(
  files: Files,
  date: string,
): { readonly day: Day; readonly summary: DaySummary; readonly findings: readonly Finding[] } {
  const folder = memoryFolder(files);
  const show = readShow(folder);
  if (show.input === null) throw new Error(`the show cannot be read: ${show.findings.map((f) => f.message).join("; ")}`);
  const read = readDay(folder, show.input, date);
  const day = buildDay(show.input, read.input, [...show.findings, ...read.findings]);
  const summary = summariseDay(day, show.input.kit);
  return { day, summary, findings: summary.findings };
}
