// The site generator run by hand: `npx eleventy` builds the pages of the demo show into site/. Compile first (npm run prepare).
// The command `daybook build` uses the same settings, day by day, and writes the packs too.
import { mkdir, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { usePages } from "./dist/site/eleventy-plugin.js";
import { copyAssets } from "./dist/site/render.js";

const SHOW = fileURLToPath(new URL("./data", import.meta.url));
const OUT = "site";

export default function configure(config) {
  let files = [];
  usePages(config, async () => {
    const { wholeSite } = await import("./dist/build/page-set.js");
    const site = await wholeSite(SHOW);
    files = site.files;
    return site.pages;
  });
  config.on("eleventy.after", async ({ directories }) => {
    const out = directories?.output ?? OUT;
    await copyAssets(out);
    for (const { path, bytes } of files) {
      await mkdir(dirname(join(out, path)), { recursive: true });
      await writeFile(join(out, path), bytes);
    }
  });
}

export const config = { dir: { input: "templates/pages", output: OUT } };
