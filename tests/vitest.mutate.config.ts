import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/** The tests of the rooms that are changed on purpose and of those between them, nothing built: what `npm run mutate` runs. */
export default defineConfig({
  root: fileURLToPath(new URL("../", import.meta.url)),
  test: { include: ["tests/src/{exact,reading,units,gold,trade,columns}/**/*.test.ts"], testTimeout: 60_000 },
});
