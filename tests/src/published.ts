import { readFileSync } from "node:fs";

/** A table of tests/published/ as it stands there. */
export function published<Table>(name: string): Table {
  return JSON.parse(readFileSync(new URL(`../published/${name}`, import.meta.url), "utf8"));
}

export function publishedText(name: string): string {
  return readFileSync(new URL(`../published/${name}`, import.meta.url), "utf8");
}
