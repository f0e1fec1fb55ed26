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

interface Built {
  readonly work: string;
  readonly pages: Readonly<Partial<Record<PageKind, readonly string[]>>>;
}

/** Each project of the run has its own copy of this module: what they share is kept beside them. */
const kept = globalThis as { daybookDemo?: Promise<Built> };

export default async function setup(project: TestProject): Promise<() => void> {
  kept.daybookDemo ??= built();
  const { work, pages } = await kept.daybookDemo;
  project.provide("demoOut", join(work, "report"));
  project.provide("demoPages", pages);
  return () => rmSync(work, { recursive: true, force: true });
}

async function built(): Promise<Built> {
  const work = mkdtempSync(join(tmpdir(), "daybook-demo-"));
  // the demo has deliberate mistakes, so that its build ends with 1
  const report = buildReport(join(ROOT, "data"), join(work, "report"));
  const { pages } = await wholeSite(join(ROOT, "data"));
  await report;
  return { work, pages: Object.fromEntries(Object.entries(pages).map(([kind, all]) => [kind, all.map((page) => page.path)])) };
}
