import { mkdir, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";

/** Where the counts of the last run are written. */
export const TALLY_FILE = fileURLToPath(new URL("../.cache/tally.json", import.meta.url));

/**
 * A Vitest reporter that writes how many tests passed, failed and were skipped. Vitest's own JSON report says nothing of
 * errors outside tests: a file that does not load, or an error nobody awaited, each count as one failure here.
 */
export default class Tally {
  async onTestRunEnd(modules, unhandledErrors, reason) {
    const tally = { reason, passed: 0, failed: 0, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === "passed") tally.passed += 1;
        else if (state === "failed") tally.failed += 1;
        else tally.skipped += 1;
      }
      tally.failed += module.errors().length;
      for (const suite of module.children.allSuites()) tally.failed += suite.errors().length;
    }
    tally.failed += unhandledErrors.length;
    await mkdir(dirname(TALLY_FILE), { recursive: true });
    await writeFile(TALLY_FILE, JSON.stringify(tally));
  }
}
