/**
 * Saves workbooks as this version writes them, for later versions to open: makes each by driving the built pane as a person would
 * (kept/*.keep.ts) and writes it to kept/<version>-<name>.json. Run with names for some of them: node tests/workbook/keep.mjs
 * quotes CURBWRIGHT_BUILT=1 says that dist/ and the workbook page are built.
 */
import { fileURLToPath } from "node:url";
import { startVitest } from "vitest/node";

const root = fileURLToPath(new URL("../../", import.meta.url));
const names = process.argv.slice(2).map((name) => `kept/${name}.keep.ts`);

const vitest = await startVitest("test", names, {
  root,
  config: false,
  watch: false,
  include: ["tests/workbook/kept/*.keep.ts"],
  globalSetup: "tests/setup.mjs",
  isolate: false,
  maxWorkers: 1,
  testTimeout: 600_000,
  hookTimeout: 60_000,
});
await vitest.close();
