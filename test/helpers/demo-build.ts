/** Builds the demo once for a whole test run, by the command as a user would, and says where it lies and which page is of which kind. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { wholeSite } from "../../src/build/page-set.ts";
import type { PageKind } from "../../src/view/context.ts";
import { buildReport, ROOT } from "./run-command.ts";

declare module "vitest" {
  interface ProvidedContext {
    demoOut: string;
    /** Paths of the demo's pages below `demoOut`, by their kind. */
    demoPages: Readonly<Partial<Record<PageKind, readonly string[]>>>;
  }
}

export default async function setup(project: TestProject): Promise<() => void> {
  const work = mkdtempSync(join(tmpdir(), "daybook-demo-"));
  const out = join(work, "report");
  // the demo has deliberate mistakes, so that its build ends with 1
  const built = buildReport(join(ROOT, "data"), out);
  const { pages } = await wholeSite(join(ROOT, "data"));
  await built;
  project.provide("demoOut", out);
  project.provide(
    "demoPages",
    Object.fromEntries(Object.entries(pages).map(([kind, all]) => [kind, all.map((page) => page.path)])),
  );
  return () => rmSync(work, { recursive: true, force: true });
}
