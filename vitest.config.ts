import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import { longestFirst } from "./test/helpers/longest-first.ts";

const LONGEST = [
  "scripts/fuzz",
  "cli/faults",
  "package-install",
  "broken-demo",
  "pdf/layout",
  "build/zip",
  "cli/watch",
  "cli/process",
  "pdf/reader-report",
  "pdf/camera-report",
  "cli/handover",
  "optics/distortion-fast-map",
];

/** Unit, reference, PDF and command tests. What looks at the built demo has test/browser/vitest.config.ts. */
export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/browser/**", "test/output/**", "test/interop/**", "node_modules/**"],
    // against a hang alone: a busy machine takes ten times as long
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // The modules are pure and no test replaces one, so that files share them: loading them afresh took half of the run.
    isolate: false,
    // without a word it leaves one core to itself, which then has nothing to do
    maxWorkers: availableParallelism(),
    sequence: { sequencer: longestFirst(LONGEST) },
    // a test whose loop had nothing to go round has checked nothing
    expect: { requireAssertions: true },
  },
});
