/** Style sheets and scripts of the pages. */
import { copyFile, mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { markCss } from "../chart/paint.ts";
import { SHARED_SHEET } from "../view/page.ts";
import { ASSETS_DIR, CLIENT_DIR } from "./templates.ts";

/** Style rules of the drawings' marks; written from the same table that the PDF paints with. */
const MARKS_FILE = "marks.css";

/**
 * Copies the style sheets and the bundled scripts into `<outDir>/assets/`, the sheets that all pages share as one, and returns
 * their paths below `outDir`, in order. Needs the client bundle (`npm run bundle`).
 */
export async function copyAssets(outDir: string): Promise<readonly string[]> {
  const target = join(outDir, "assets");
  await mkdir(target, { recursive: true });
  const names: string[] = [SHARED_SHEET.name];
  const parts: readonly string[] = SHARED_SHEET.parts;
  const shared = await Promise.all(
    parts.map((name) => (name === MARKS_FILE ? marksSheet() : readFile(join(ASSETS_DIR, name), "utf8"))),
  );
  await writeFile(join(target, SHARED_SHEET.name), shared.join("\n"));
  for (const folder of [ASSETS_DIR, CLIENT_DIR]) {
    for (const name of (await readdir(folder)).sort()) {
      if (!/\.(css|js)$/.test(name) || parts.includes(name)) continue;
      await copyFile(join(folder, name), join(target, name));
      names.push(name);
    }
  }
  return names.sort().map((name) => `assets/${name}`);
}

function marksSheet(): string {
  return `/* Marks of the drawings. Made from the table of paints; colours come from tokens.css. */\n${markCss()}\n`;
}
