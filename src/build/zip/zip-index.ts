/** The first page of a zip: where the day's pages and files are. */
import { escapeMarkup } from "../../core/markup.ts";
import { fileSize } from "../../format/amounts.ts";
import { dateLong } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
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
    return `<li><a href="${escapeMarkup(hrefTo(INDEX, dayPath(date, name)))}">${label}</a></li>`;
  });
  const groups = GROUPS.flatMap(([title, isOf]) => {
    const files = packFiles.filter(({ name }) => isOf(name));
    if (files.length === 0) return [];
    const entries = [...files.filter(({ name }) => !isMap(name)).map((file) => fileEntry(date, file)), ...mapEntries(files)];
    return `<h3>${title}</h3>\n<ul>\n${entries.join("\n")}\n</ul>`;
  });
  const styles = [SHARED_SHEET.name].filter((name) => isThere(`assets/${name}`));
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self' 'unsafe-inline' file:">
<title>${escapeMarkup(title)}</title>
${styles.map((name) => `<link rel="stylesheet" href="assets/${name}">\n`).join("")}<style>h1{margin:1.5rem 0}h2{margin:1.75rem 0 .5rem}h3{margin:1.25rem 0 .25rem}</style>
</head>
<body>
<div class="page">
<main id="main">
<h1>${escapeMarkup(title)}</h1>
<h2>Pages</h2>
<ul>
${doors.join("\n")}
</ul>
<h2>Files</h2>
<p>All in the folder <span class="mono">packs/${date}</span>, with a hash list in its folder <span class="mono">ascmhl</span>: README.txt says
what each file is and how to prove that none was changed.</p>
${groups.join("\n")}
</main>
</div>
</body>
</html>
`;
}

interface PackFile {
  readonly name: string;
  readonly bytes: number;
}

const inFolder = (name: string) => name.includes("/");
const isForPeople = (name: string) => /^[^/]*\.pdf$|^README\.txt$|^LOSSES\.md$/.test(name);
const isMap = (name: string) => /^vfx\/.*\.exr$/.test(name);

/** Every file is in one of these. */
const GROUPS: readonly (readonly [string, (name: string) => boolean])[] = [
  ["To read", isForPeople],
  ["The day for programs", (name) => !inFolder(name) && !isForPeople(name)],
  ["Editorial", (name) => name.startsWith("editorial/")],
  ["VFX", (name) => name.startsWith("vfx/")],
  ["Also there", (name) => inFolder(name) && !/^(editorial|vfx)\//.test(name)],
];

function fileEntry(date: string, { name, bytes }: PackFile): string {
  const href = escapeMarkup(hrefTo(INDEX, packPath(date, name)));
  return `<li><a href="${href}">${escapeMarkup(name)}</a> <span class="unit">${escapeMarkup(fileSize(bytes))}</span></li>`;
}

/** One line a folder for its maps, of which a take may have hundreds. */
function mapEntries(files: readonly PackFile[]): readonly string[] {
  const maps = files.filter(({ name }) => isMap(name));
  const folderOf = ({ name }: PackFile) => name.slice(0, name.lastIndexOf("/") + 1);
  return [...new Set(maps.map(folderOf))].map((folder) => {
    const mine = maps.filter((file) => folderOf(file) === folder);
    const bytes = mine.reduce((sum, file) => sum + file.bytes, 0);
    return `<li>${escapeMarkup(`${folder}*.exr`)}: ${plural(mine.length, "map")} <span class="unit">${escapeMarkup(fileSize(bytes))}</span></li>`;
  });
}
