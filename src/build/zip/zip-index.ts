/** The first page of a zip: where the day's pages and files are. */
import { fileSize } from "../../format/amounts.ts";
import { dateLong } from "../../format/time.ts";
import type { ShowRecord } from "../../ingest/records.ts";
import { dayPath, hrefTo, packPath } from "../../view/links.ts";
import { SHARED_SHEET } from "../../view/page.ts";

export interface ZipIndexContent {
  readonly show: ShowRecord;
  readonly date: string;
  readonly day: number | null;
  /** Files of the pack, hash list apart. */
  readonly packFiles: readonly { readonly name: string; readonly bytes: number }[];
  readonly isThere: (file: string) => boolean;
}

const INDEX = "index.html";
const DOORS = [
  ["index", "The day, take by take"],
  ["editorial", "Editorial"],
  ["vfx", "VFX"],
  ["production", "Production"],
  ["findings", "Findings of the day"],
] as const;

export function zipIndex({ show, date, day, packFiles, isThere }: ZipIndexContent): string {
  const title = `${show.title}, ${day === null ? "" : `day ${day}, `}${dateLong(date)}`;
  const doors = DOORS.filter(([name]) => isThere(dayPath(date, name))).map(([name, label]) => {
    return `<li><a href="${escapeHtml(hrefTo(INDEX, dayPath(date, name)))}">${label}</a></li>`;
  });
  const files = packFiles.map(({ name, bytes }) => {
    const href = escapeHtml(hrefTo(INDEX, packPath(date, name)));
    return `<li><a href="${href}">${escapeHtml(name)}</a> <span class="unit">${escapeHtml(fileSize(bytes))}</span></li>`;
  });
  const styles = [SHARED_SHEET.name].filter((name) => isThere(`assets/${name}`));
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self' 'unsafe-inline' file:">
<title>${escapeHtml(title)}</title>
${styles.map((name) => `<link rel="stylesheet" href="assets/${name}">\n`).join("")}</head>
<body>
<div class="page">
<main id="main">
<h1>${escapeHtml(title)}</h1>
<h2>Pages</h2>
<ul>
${doors.join("\n")}
</ul>
<h2>Files</h2>
<p>All in the folder <span class="mono">packs/${date}</span>, with a hash list in its folder <span class="mono">ascmhl</span>.</p>
<ul>
${files.join("\n")}
</ul>
</main>
</div>
</body>
</html>
`;
}

function escapeHtml(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
