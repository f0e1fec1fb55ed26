/** Pages that stay although their input changed say so in a strip above the head. The next build makes them anew: their size is another. */
import { plural } from "../format/words.ts";
import type { OutFolder } from "./effects.ts";
import { readDayRecord, readShowRecord } from "./manifest.ts";

const HEAD = '<header class="top">';
const STRIP = /<p class="stale">[^\n]*<\/p>\n(?=<header class="top">)/;

/**
 * Puts the strip on the pages of a day (`null`: on the show-wide ones), in the place of an older strip.
 * @param files names of the files that changed since the pages were made, in order
 */
export function markStale(out: OutFolder, date: string | null, files: readonly string[]): void {
  const stored = date === null ? readShowRecord(out) : readDayRecord(out, date);
  for (const { file } of stored?.outputs ?? []) {
    const page = file.endsWith(".html") ? out.read(file) : null;
    if (page === null) continue;
    const text = new TextDecoder()
      .decode(page)
      .replace(STRIP, "")
      .replace(HEAD, () => `${strip(files)}\n${HEAD}`);
    out.write(`${file}.new`, text);
    out.move(`${file}.new`, file);
  }
}

function strip(files: readonly string[]): string {
  const [first = "the show folder", ...more] = files.map((file) => escapeHtml(file.replace(/^days\/[^/]+\//, "")));
  const others = more.length === 0 ? "" : ` and ${plural(more.length, "more file")}`;
  return `<p class="stale"><b class="sev-check">Check</b> Built before the last change to ${first}${others}.</p>`;
}

function escapeHtml(text: string): string {
  return text
    .replace(/[\p{Cc}]/gu, " ")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll('"', "&quot;");
}
