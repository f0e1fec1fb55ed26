// The site generator run by hand: `npx eleventy` builds the pages of the demo show into site/. Compile first (npm run prepare).
// The command `daybook build` uses the same settings, day by day, and writes the packs too.
import { fileURLToPath } from "node:url";
import { usePages } from "./dist/site/eleventy-plugin.js";
import { copyAssets } from "./dist/site/render.js";

const SHOW = fileURLToPath(new URL("./data", import.meta.url));
const OUT = "site";

export default function configure(config) {
  usePages(config, async () => {
    const { showPageSet } = await import("./dist/build/page-set.js");
    return showPageSet(SHOW);
  });
  config.on("eleventy.after", ({ directories }) => copyAssets(directories?.output ?? OUT));
}

export const config = { dir: { input: "templates/pages", output: OUT } };
