import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("../..", import.meta.url));
/** What measures time runs when nothing else does; the rest two files at a time. */
const TIMED = ["lens-look", "search", "budgets"].map((name) => `test/browser/${name}.test.ts`);
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
