/** Where the templates lie: beside `dist/` (or `src/`) of this package, wherever it is installed. */
import { fileURLToPath } from "node:url";
import nunjucks from "nunjucks";

export const TEMPLATES_DIR = fileURLToPath(new URL("../../templates", import.meta.url));
export const PAGES_DIR = fileURLToPath(new URL("../../templates/pages", import.meta.url));
export const ASSETS_DIR = fileURLToPath(new URL("../../templates/assets", import.meta.url));
/** Scripts for the browser, bundled by `npm run bundle`. */
export const CLIENT_DIR = fileURLToPath(new URL("../../dist/client", import.meta.url));

/**
 * The template engine as every page is rendered with it: text is escaped, a missing or null value is an error. Layouts,
 * macros and partials are found by their path below `templates/`. One serves the whole process, so that a template is compiled
 * once and not once a day.
 */
export const TEMPLATE_ENGINE = new nunjucks.Environment(new nunjucks.FileSystemLoader(TEMPLATES_DIR), {
  autoescape: true,
  throwOnUndefined: true,
  trimBlocks: true,
  lstripBlocks: true,
});

/**
 * Lets go of the site generator: each run hangs tags onto the engine, none of which is used here, and through them the engine
 * would hold the pages of every day.
 */
export function releaseGenerator(): void {
  for (const tag of Object.keys(TEMPLATE_ENGINE.extensions)) TEMPLATE_ENGINE.removeExtension(tag);
}
