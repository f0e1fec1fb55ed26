/** Builds the demo once for a whole test run, by the command as a user would, and says where it lies. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    demoOut: string;
  }
}

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

export default function setup(project: TestProject): () => void {
  const work = mkdtempSync(join(tmpdir(), "daybook-demo-"));
  const out = join(work, "report");
  const run = spawnSync(
    process.execPath,
    [join(ROOT, "dist/cli/main.js"), "build", join(ROOT, "data"), "--out", out, "--quiet", "--map-width", "96"],
    {
      encoding: "utf8",
    },
  );
  // the demo has deliberate mistakes, so that 1 (errors in the data) is as right as 0
  if (run.status !== 0 && run.status !== 1)
    throw new Error(`the demo did not build (exit ${run.status}): ${run.stdout}${run.stderr}`);
  project.provide("demoOut", out);
  return () => rmSync(work, { recursive: true, force: true });
}
