/** Renders page models to HTML files: the only user of the site generator beside its settings. */
import { relative } from "node:path";
import { Eleventy } from "@11ty/eleventy";
import type { PageSet } from "../view/context.ts";
import { usePages } from "./eleventy-plugin.ts";
import { PAGES_DIR, releaseGenerator } from "./templates.ts";

export { copyAssets } from "./assets.ts";

/**
 * Renders the pages into a folder and returns their paths below it, in order. One instance a call, so that a day's
 * pages can be dropped before the next day is read. Prints nothing.
 *
 * @throws Error with the template's place when a template asks for a value that a model lacks, or when the number of
 * pages written is not the number asked for (templates ignored or not found): both are faults of the program.
 */
export async function renderPages(pages: PageSet, outDir: string): Promise<readonly string[]> {
  const expected = Object.values(pages).flat();
  if (expected.length === 0) return [];
  const eleventy = new Eleventy(PAGES_DIR, outDir, {
    configPath: null,
    source: "cli",
    quietMode: true,
    config: (config) => {
      usePages(config, pages);
      silence(config);
    },
  });
  eleventy.disableLogger();
  await eleventy.init();
  const [, results] = await withCause(eleventy.write()).finally(releaseGenerator);
  const written = results.flatMap((result) => (result.outputPath === false ? [] : [relativePath(outDir, result.outputPath)]));
  const wanted = new Set(expected.map((page) => page.path));
  const missing = [...wanted].filter((path) => !written.includes(path));
  if (written.length !== expected.length || missing.length > 0) {
    throw new Error(
      `${expected.length} pages were asked for and ${written.length} written${missing.length > 0 ? `; missing: ${missing.slice(0, 3).join(", ")}` : ""}`,
    );
  }
  return written.sort();
}

function relativePath(outDir: string, file: string): string {
  return relative(outDir, file).replaceAll("\\", "/");
}

/** Each group of benchmarks has a logger of its own that the quiet mode does not reach. */
function silence(config: {
  readonly benchmarkManager: { getAll(): Record<string, { readonly logger: { overrideLogger(l: unknown): void } }> };
}) {
  for (const group of Object.values(config.benchmarkManager.getAll())) group.logger.overrideLogger(false);
}

/** The generator wraps the template's error; the message below is what says which template and which line. */
async function withCause<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    const messages: string[] = [];
    let inner: unknown = error;
    while (inner instanceof Error && messages.length < 5) {
      messages.push(inner.message);
      inner = "originalError" in inner ? inner.originalError : inner.cause;
    }
    throw new Error(messages.join(": "), { cause: error });
  }
}
