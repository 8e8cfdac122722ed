import { spawn } from "node:child_process";
import { readFile, rm } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { TALLY_FILE } from "./tally.mjs";

const ROOT = fileURLToPath(new URL("../", import.meta.url));
const VITEST = join(dirname(createRequire(import.meta.url).resolve("vitest/package.json")), "vitest.mjs");

// A tally left by an earlier run must never speak for this one.
await rm(TALLY_FILE, { force: true });
const code = await runVitest(process.argv.slice(2));
const tally = await readTally();
const passed = tally?.passed ?? 0;
let failed = tally?.failed ?? 0;
if (tally?.skipped) console.log(`${tally.skipped} skipped`);
// Vitest may end badly with no test failed: a build, a reporter or a worker that broke is one failure of the run.
if (code !== 0 && failed === 0) failed = 1;
if (!tally) console.log("The tests did not run to their end; see above.");
else if (tally.passed + tally.failed === 0) console.log("No test ran.");
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;

function runVitest(args) {
  const reporters = ["default", "json", join(ROOT, "tests/tally.mjs")].map((name) => `--reporter=${name}`);
  const child = spawn(
    process.execPath,
    [VITEST, "run", "--config", "tests/vitest.config.ts", ...reporters, "--outputFile.json=.cache/tests.json", ...args],
    { cwd: ROOT, stdio: "inherit" },
  );
  // Ctrl+C reaches the child as well; this process stays to tell how far it came.
  process.on("SIGINT", () => {});
  return new Promise((fulfil, reject) => {
    child.on("error", reject);
    child.on("exit", (exitCode) => fulfil(exitCode ?? 1));
  });
}

async function readTally() {
  try {
    return JSON.parse(await readFile(TALLY_FILE, "utf8"));
  } catch (error) {
    if (error.code === "ENOENT") return undefined;
    throw error;
  }
}
