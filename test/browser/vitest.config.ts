import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { longestFirst } from "../helpers/longest-first.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
/** What measures time runs when nothing else does; the rest two files at a time. */
const TIMED = ["test/browser/*-timed.test.ts"];
const LONGEST = [
  "browser/every-kind",
  "browser/odd-shows",
  "output/same-bytes",
  "browser/tables",
  "browser/pictures",
  "browser/take-sheet",
  "browser/print",
  "browser/search",
  "browser/budgets",
  "browser/search-spoken",
];
const shared = {
  globalSetup: ["test/helpers/demo-build.ts"],
  testTimeout: 120_000,
  hookTimeout: 120_000,
  isolate: false,
  expect: { requireAssertions: true },
};

export default defineConfig({
  root,
  test: {
    sequence: { sequencer: longestFirst(LONGEST) },
    projects: [
      {
        root,
        test: {
          ...shared,
          name: "pages",
          include: ["test/output/**/*.test.ts", "test/browser/**/*.test.ts"],
          exclude: TIMED,
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        root,
        test: { ...shared, name: "timed", include: TIMED, maxWorkers: 1, fileParallelism: false, sequence: { groupOrder: 1 } },
      },
    ],
  },
});
