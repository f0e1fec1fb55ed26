/** Pages that stay although their input changed say so in a strip above the head. The next build makes them anew: their size is another. */
import { escapeMarkup } from "../core/markup.ts";
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
  for (const file of pagesOf(out, date)) {
    const page = out.read(file);
    if (page === null) continue;
    const text = new TextDecoder()
      .decode(page)
      .replace(STRIP, "")
      .replace(HEAD, () => `${strip(files)}\n${HEAD}`);
    out.write(`${file}.new`, text);
    out.move(`${file}.new`, file);
  }
}

/** A day's production page is made with the show-wide pages, and is both. */
function pagesOf(out: OutFolder, date: string | null): readonly string[] {
  const showWide = readShowRecord(out)?.outputs ?? [];
  const outputs =
    date === null
      ? showWide
      : [...(readDayRecord(out, date)?.outputs ?? []), ...showWide.filter(({ file }) => file.startsWith(`days/${date}/`))];
  return outputs.map(({ file }) => file).filter((file) => file.endsWith(".html"));
}

function strip(files: readonly string[]): string {
  const [first = "the show folder", ...more] = files.map((file) =>
    escapeMarkup(file.replace(/^days\/[^/]+\//, "").replace(/\p{Cc}/gu, " ")),
  );
  const others = more.length === 0 ? "" : ` and ${plural(more.length, "more file")}`;
  return `<p class="stale"><b class="sev-check">Check</b> Built before the last change to ${first}${others}.</p>`;
}
