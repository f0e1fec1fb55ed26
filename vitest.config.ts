import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/browser/**", "test/interop/**", "node_modules/**"],
    testTimeout: 20_000,
  },
});
