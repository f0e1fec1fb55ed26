/**
 * Builds the demo once for a whole test run, by the command as a user would, and says where it lies and which page is of which kind.
 * DEMO_REPORT names the folder where it is to stay for other tests; without it, a temporary one.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { wholeSite } from "../../src/build/page-set.ts";
import { sha256 } from "../../src/core/hash.ts";
import type { PageKind } from "../../src/view/context.ts";
import { buildReport, ROOT } from "./run-command.ts";

declare module "vitest" {
  interface ProvidedContext {
    demoOut: string;
    /** Paths of the demo's pages below `demoOut`, by their kind. */
    demoPages: Readonly<Partial<Record<PageKind, readonly string[]>>>;
    /** Hashes of what the site generator run by hand writes beside the pages. */
    demoBeside: Readonly<Record<string, string>>;
  }
}

interface Built {
  readonly report: string;
  readonly pages: Readonly<Partial<Record<PageKind, readonly string[]>>>;
  readonly beside: Readonly<Record<string, string>>;
}

/** Each project of the run has its own copy of this module: what they share is kept beside them. */
const kept = globalThis as { daybookDemo?: Promise<Built> };

const stays = process.env.DEMO_REPORT;

export default async function setup(project: TestProject): Promise<() => void> {
  kept.daybookDemo ??= built();
  const { report, pages, beside } = await kept.daybookDemo;
  project.provide("demoOut", report);
  project.provide("demoPages", pages);
  project.provide("demoBeside", beside);
  return () => {
    if (stays === undefined) rmSync(join(report, ".."), { recursive: true, force: true });
  };
}

async function built(): Promise<Built> {
  const report = stays ?? join(mkdtempSync(join(tmpdir(), "daybook-demo-")), "report");
  rmSync(report, { recursive: true, force: true });
  // the demo has deliberate mistakes, so that its build ends with 1
  const building = buildReport(join(ROOT, "data"), report);
  const { pages, files } = await wholeSite(join(ROOT, "data"));
  await building;
  return {
    report,
    pages: Object.fromEntries(Object.entries(pages).map(([kind, all]) => [kind, all.map((page) => page.path)])),
    beside: Object.fromEntries(files.map(({ path, bytes }) => [path, sha256(bytes)])),
  };
}
