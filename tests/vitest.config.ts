import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("../", import.meta.url));
const BROWSER_TESTS = ["tests/workbook/**/*.test.ts", "tests/taskpane/sheets/**/*.test.ts"];
const timeouts = { testTimeout: 60_000, hookTimeout: 60_000 };

// The projects do not extend this config: each would build everything again.
export default defineConfig({
  root,
  test: {
    globalSetup: "tests/setup.mjs",
    projects: [
      {
        root,
        cacheDir: ".cache/vite",
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: BROWSER_TESTS,
          ...timeouts,
          // On two cores vitest would leave one idle.
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
          typecheck: { enabled: true, include: ["tests/**/*.test-d.ts"], tsconfig: "tsconfig.json" },
        },
      },
      {
        root,
        cacheDir: ".cache/vite",
        test: {
          name: "workbook",
          include: BROWSER_TESTS,
          ...timeouts,
          // A page keeps one core busy: two files at once fill a small machine, and more would only wait for each other.
          maxWorkers: 2,
          // Files that follow each other in one process share a browser and a page.
          isolate: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
