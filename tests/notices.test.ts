import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { expect, test } from "vitest";

const ROOT = fileURLToPath(new URL("../", import.meta.url));
const BUILT = join(ROOT, "dist");
const RULE = `\n${"-".repeat(72)}\n\n`;

/** The packages that code in dist/ comes from, as the source maps of the tests' build tell. */
function bundled(): readonly string[] {
  const maps = readdirSync(BUILT).filter((name) => name.endsWith(".js.map"));
  expect(maps, "the tests' own build of dist/ has source maps").not.toEqual([]);
  const sources = maps.flatMap(
    (name): readonly string[] => JSON.parse(readFileSync(join(BUILT, name), "utf8")).sources,
  );
  const names = sources.flatMap((source) => source.match(/node_modules\/((?:@[^/]+\/)?[^/]+)\//)?.[1] ?? []);
  return [...new Set(names)].sort();
}

/** What the package says itself in the folder that it is installed in. */
function ownNotice(name: string): string {
  const folder = join(ROOT, "node_modules", name);
  const { version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const files = readdirSync(folder).filter((file) => /^licen[cs]e/i.test(file));
  expect(files, name).toHaveLength(1);
  const text = readFileSync(join(folder, files[0] ?? ""), "utf8").replaceAll("\r\n", "\n");
  return `${name} ${version} (${license})\n\n${text.trim()}\n`;
}

test("every package that is in what we ship has its notice beside it, with the whole text of its licence, and no other", () => {
  const notices = readFileSync(join(BUILT, "third-party-notices.txt"), "utf8").split(RULE);
  expect(bundled()).toContain("decimal.js");
  expect([...notices].sort()).toEqual(bundled().map(ownNotice).sort());
});

test("a release has no source maps; they are made where they are asked for", async () => {
  const { default: config } = await import(pathToFileURL(join(ROOT, "webpack.config.js")).href);
  expect([config({ base: "https://chains.example" }).devtool, config({ maps: true }).devtool]).toEqual([
    false,
    "source-map",
  ]);
});
