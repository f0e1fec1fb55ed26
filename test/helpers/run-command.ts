/** The command as a user runs it, beside whatever else the test does meanwhile. */
import { spawn } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = fileURLToPath(new URL("../..", import.meta.url));

export interface Ended {
  readonly status: number | null;
  /** What was said on both streams. */
  readonly said: string;
}

export function runCommand(args: readonly string[]): Promise<Ended> {
  const run = spawn(process.execPath, [join(ROOT, "dist/cli/main.js"), ...args]);
  let said = "";
  for (const stream of [run.stdout, run.stderr]) {
    stream.on("data", (text) => {
      said += text;
    });
  }
  return new Promise((resolve, reject) => {
    run.on("error", reject);
    run.on("close", (status) => resolve({ status, said }));
  });
}

/** Builds a show as the tests look at it: small maps. Throws unless the exit is 0 or 1, errors in the data. */
export async function buildReport(show: string, out: string): Promise<void> {
  const { status, said } = await runCommand(["build", show, "--out", out, "--quiet", "--map-width", "96"]);
  if (status !== 0 && status !== 1) throw new Error(`${show} did not build (exit ${status}): ${said}`);
}
