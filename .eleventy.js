// The site generator run by hand: `npx eleventy` builds the pages of the demo show into site/. Compile first (npm run prepare).
// The command `daybook build` uses the same settings, day by day, and writes the packs too.
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { usePages } from "./dist/site/eleventy-plugin.js";
import { copyAssets } from "./dist/site/render.js";

const SHOW = fileURLToPath(new URL("./data", import.meta.url));
const OUT = "site";

export default function configure(config) {
  let searchRows = "";
  usePages(config, async () => {
    const { wholeSite } = await import("./dist/build/page-set.js");
    const site = await wholeSite(SHOW);
    searchRows = site.searchRows;
    return site.pages;
  });
  config.on("eleventy.after", async ({ directories }) => {
    const out = directories?.output ?? OUT;
    await copyAssets(out);
    await writeFile(join(out, "search-rows.js"), searchRows);
  });
}

export const config = { dir: { input: "templates/pages", output: OUT } };
