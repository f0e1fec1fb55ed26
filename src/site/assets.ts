/** Style sheets and scripts of the pages. */
import { copyFile, mkdir, readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { markCss } from "../chart/paint.ts";
import { ASSETS_DIR, CLIENT_DIR } from "./templates.ts";

/** Style rules of the drawings' marks; written from the same table that the PDF paints with. */
const MARKS_FILE = "marks.css";

/**
 * Copies the style sheets and the bundled scripts into `<outDir>/assets/` and returns their paths below `outDir`, in
 * order. Needs the client bundle (`npm run bundle`).
 */
export async function copyAssets(outDir: string): Promise<readonly string[]> {
  const target = join(outDir, "assets");
  await mkdir(target, { recursive: true });
  const names: string[] = [MARKS_FILE];
  await writeFile(join(target, MARKS_FILE), marksSheet());
  for (const folder of [ASSETS_DIR, CLIENT_DIR]) {
    for (const name of (await readdir(folder)).sort()) {
      if (!/\.(css|js)$/.test(name)) continue;
      await copyFile(join(folder, name), join(target, name));
      names.push(name);
    }
  }
  return names.sort().map((name) => `assets/${name}`);
}

function marksSheet(): string {
  return `/* Marks of the drawings. Made from the table of paints; colours come from tokens.css. */\n${markCss()}\n`;
}
