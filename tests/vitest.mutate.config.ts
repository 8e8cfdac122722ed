import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/**
 * The tests of the rooms that are changed on purpose, of those between them, and of the two that drive columns from their sources:
 * what `npm run mutate` runs. Nothing is built.
 */
export default defineConfig({
  root: fileURLToPath(new URL("../", import.meta.url)),
  test: {
    include: [
      "tests/src/{exact,reading,units,gold,trade,columns}/**/*.test.ts",
      "tests/src/designs/{tablerunner,tableformulas}.test.ts",
      "tests/functions/columns.test.ts",
    ],
    testTimeout: 60_000,
  },
});
