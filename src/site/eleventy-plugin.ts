/** Engine settings of the site generator: the one place that `.eleventy.js` and the command share. */
import type { EleventyConfig } from "@11ty/eleventy";
import { PAGE_KINDS, type PageSet } from "../view/context.ts";
import { TEMPLATE_ENGINE } from "./templates.ts";
import { printUnits } from "./units-markup.ts";

/**
 * Sets up an instance for the pages of this package: templates as in `TEMPLATE_ENGINE`, no ignore files, and nothing of
 * the generator's own data cascade but one key, `pages`. A kind without pages is an empty list.
 */
export function usePages(config: EleventyConfig, pages: PageSet | (() => Promise<PageSet>)): void {
  config.setTemplateFormats(["njk"]);
  config.setLibrary("njk", TEMPLATE_ENGINE);
  config.addTransform("units", (page) => printUnits(page));
  config.setUseGitIgnore(false);
  // A command that is installed as a dependency lies inside node_modules itself.
  config.ignores.delete("**/node_modules/**");
  config.addGlobalData("pages", typeof pages === "function" ? async () => allKinds(await pages()) : allKinds(pages));
}

function allKinds(pages: PageSet): PageSet {
  return Object.freeze({ ...Object.fromEntries(PAGE_KINDS.map((kind) => [kind, Object.freeze([])])), ...pages });
}
