import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { buildAddin } from "./workbook/build.mjs";
import { FOLDERS } from "./workbook/server.mjs";

/** The most a script may weigh over the wire, in KB (1,000 bytes) after gzip: what Excel loads before it answers a person. */
const LIMITS = { "functions.js": 74, "taskpane.js": 84 };

if (process.env.CURBWRIGHT_BUILT !== "1") await buildAddin();
const names = (await readdir(FOLDERS.addin)).filter((name) => name.endsWith(".js"));
const missing = Object.keys(LIMITS).filter((name) => !names.includes(name));
let failed = missing.length > 0;
for (const name of missing) console.error(`${name} is not in dist/`);
for (const name of names.sort()) {
  const size = gzipSync(await readFile(join(FOLDERS.addin, name)), { level: 9 }).length / 1000;
  const limit = LIMITS[name];
  const over = limit !== undefined && size > limit;
  failed ||= over;
  const judgement = limit === undefined ? "loaded when needed, no limit" : `of ${limit} KB${over ? ": TOO LARGE" : ""}`;
  console.log(`${name.padEnd(24)} ${size.toFixed(1).padStart(7)} KB gz  ${judgement}`);
}
process.exitCode = failed ? 1 : 0;
