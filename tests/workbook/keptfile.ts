import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Desk } from "./desk";
import type { KeptBook } from "./kept";

const FOLDER = fileURLToPath(new URL("kept/", import.meta.url));
const PACKAGE = fileURLToPath(new URL("../../package.json", import.meta.url));

/** The kept workbooks there are, such as "0.1.0-quotes". */
export function keptNames(): readonly string[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith(".json"))
    .map((file) => file.replace(/\.json$/, ""))
    .sort();
}

export function readKept(name: string): KeptBook {
  return JSON.parse(readFileSync(`${FOLDER}${name}.json`, "utf8"));
}

/**
 * Keeps the workbook that is open at a desk, under its name and the version that wrote it. Throws where that version has kept
 * one of that name: what was written once is what must go on reading, and no later code may write over it.
 */
export async function keep(desk: Desk, name: string): Promise<void> {
  const { version }: { version: string } = JSON.parse(readFileSync(PACKAGE, "utf8"));
  const kept: KeptBook = { version, ...(await desk.page.evaluate(() => window.workbookPage.keep())) };
  writeFileSync(`${FOLDER}${version}-${name}.json`, `${laidOut(kept)}\n`, { flag: "wx" });
}

/** Rows of cells, names and rules get one line each, so that a difference is easy to read. */
const DEEPEST = 4;
const LINE = 120;

function laidOut(value: unknown, depth = 0): string {
  const line = JSON.stringify(value);
  if (typeof value !== "object" || value === null || depth >= DEEPEST || line.length <= LINE) return line;
  const indent = " ".repeat(depth + 1);
  const [open, parts, close] = Array.isArray(value)
    ? ["[", value.map((each) => laidOut(each, depth + 1)), "]"]
    : ["{", Object.entries(value).map(([key, each]) => `${JSON.stringify(key)}: ${laidOut(each, depth + 1)}`), "}"];
  return `${open}\n${parts.map((part) => indent + part).join(",\n")}\n${" ".repeat(depth)}${close}`;
}
