/** Pages of the built demo to look at: some of every kind, whatever kinds there are. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { inject } from "vitest";
import { PAGE_KINDS, type PageKind } from "../../src/view/context.ts";

export const DEMO_OUT = inject("demoOut");

/** Address of a page of the demo, or of the same page in a copy of it. */
export function demoUrl(path: string, folder = DEMO_OUT): string {
  return pathToFileURL(join(folder, path)).href;
}

/** The fullest page of each kind by its bytes: the one with most that could go wrong. Throws for a kind that the demo has no page of. */
export function fullestOfEachKind(): ReadonlyMap<PageKind, string> {
  const all = inject("demoPages");
  return new Map(
    PAGE_KINDS.map((kind) => {
      const [fullest] = (all[kind] ?? [])
        .map((path) => ({ path, bytes: readFileSync(join(DEMO_OUT, path)).length }))
        .sort((a, b) => b.bytes - a.bytes || (a.path < b.path ? -1 : 1));
      if (fullest === undefined) throw new Error(`the demo has no page of kind ${kind}`);
      return [kind, fullest.path];
    }),
  );
}

/** The fullest page of each kind, and that of a take without a log. */
export function pagesToLookAt(): readonly string[] {
  const noLog = (inject("demoPages").take ?? []).find((path) => !existsSync(join(DEMO_OUT, path.replace(/html$/, "data.js"))));
  if (noLog === undefined) throw new Error("every take of the demo has a log");
  return [...fullestOfEachKind().values(), noLog];
}
