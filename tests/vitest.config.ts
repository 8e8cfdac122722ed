import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const BROWSER_TESTS = "tests/workbook/**/*.test.ts";

export default defineConfig({
  root: fileURLToPath(new URL("../", import.meta.url)),
  cacheDir: ".cache/vite",
  test: {
    globalSetup: "tests/setup.mjs",
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: [BROWSER_TESTS],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 0 },
          typecheck: { enabled: true, include: ["tests/**/*.test-d.ts"], tsconfig: "tsconfig.json" },
        },
      },
      {
        extends: true,
        test: {
          name: "workbook",
          include: [BROWSER_TESTS],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // A browser and its page take both cores of a small machine: one file at a time, after the unit tests.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
