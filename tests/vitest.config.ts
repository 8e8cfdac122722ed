import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("../", import.meta.url));
const BROWSER_TESTS = ["tests/workbook/**/*.test.ts", "tests/taskpane/**/*.workbook.test.ts"];
const timeouts = { testTimeout: 60_000, hookTimeout: 60_000 };

// The projects do not extend this config: each would build everything again. On two cores vitest would leave one idle: hence
// their maxWorkers. Each has a group of its own, so that files which share a process follow each other.
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
          maxWorkers: 2,
          // Nothing here replaces a module, and loading the libraries anew for each file took a third of the time.
          isolate: false,
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
