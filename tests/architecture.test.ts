import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const ROOT = fileURLToPath(new URL("../", import.meta.url));

interface Source {
  /** Path from the root, with slashes. */
  readonly path: string;
  /** Without comments. */
  readonly code: string;
  readonly imports: readonly string[];
}

const IMPORT =
  /(?:^|;)\s*(?:import|export)\b[^;"']*?\bfrom\s*["']([^"'\n]+)["']|(?:^|;)\s*import\s*["']([^"'\n]+)["']|\bimport\(\s*["']([^"'\n]+)["']/gm;

function sourcesIn(folder: string): readonly Source[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(?:ts|mts|mjs|js)$/.test(entry.name))
    .map((entry) => {
      const file = join(entry.parentPath, entry.name);
      const code = readFileSync(file, "utf8")
        .replace(/\/\*[\s\S]*?\*\//g, "")
        .replace(/^\s*\/\/.*$/gm, "")
        .replace(/\s\/\/ .*$/gm, "");
      const imports = [...code.matchAll(IMPORT)].map((match) => match[1] ?? match[2] ?? match[3] ?? "");
      return { path: relative(ROOT, file).replaceAll("\\", "/"), code, imports };
    });
}

/** Where a relative import leads, from the root; undefined for a package. */
function target(source: Source, specifier: string): string | undefined {
  if (!specifier.startsWith(".")) return undefined;
  return relative(ROOT, resolve(ROOT, dirname(source.path), specifier)).replaceAll("\\", "/");
}

/** "path: what" of everything in the sources that breaks a rule. */
function broken(sources: readonly Source[], rule: (source: Source) => readonly string[]): readonly string[] {
  return sources.flatMap((source) => rule(source).map((what) => `${source.path}: ${what}`));
}

const saying = (pattern: RegExp) => (source: Source) => [...source.code.matchAll(pattern)].map((match) => match[0]);

const tracked = execFileSync("git", ["ls-files"], { cwd: ROOT, encoding: "utf8" }).trim().split("\n");
const SRC = sourcesIn("src");
const FUNCTIONS = sourcesIn("functions");
const TASKPANE = sourcesIn("taskpane");
const WORKBOOK = sourcesIn("tests/workbook");
const PRODUCT = [...SRC, ...FUNCTIONS, ...TASKPANE];

test("the sources and their imports are read at all", () => {
  const importsOf = (path: string) => SRC.find((source) => source.path === path)?.imports ?? [];
  expect(importsOf("src/decimal.ts")).toContain("decimal.js");
  expect(importsOf("src/form.ts")).toEqual(["zod", "./errors"]);
  expect(FUNCTIONS.length).toBeGreaterThan(0);
  expect(TASKPANE.length).toBeGreaterThan(0);
  expect(WORKBOOK.length).toBeGreaterThan(0);
});

describe("the costing library", () => {
  const ALLOWED: Readonly<Record<string, string>> = { "src/decimal.ts": "decimal.js", "src/form.ts": "zod" };

  test("imports nothing outside but decimal.js, in decimal.ts, and zod, in form.ts", () => {
    expect(
      broken(SRC, (source) =>
        source.imports.filter(
          (specifier) => target(source, specifier) === undefined && specifier !== ALLOWED[source.path],
        ),
      ),
    ).toEqual([]);
  });

  test("never leaves its folder", () => {
    expect(
      broken(SRC, (source) =>
        source.imports.filter((specifier) => target(source, specifier)?.startsWith("src/") === false),
      ),
    ).toEqual([]);
  });

  test("knows no clock, no chance, no network, no page and no console", () => {
    const world =
      /\bnew Date\(\s*\)|\bDate\.now\b|\bDate\(\s*\)|\bperformance\b|\bMath\.random\b|\bcrypto\b|\bfetch\s*\(|\bXMLHttpRequest\b|\bWebSocket\b|\bdocument\.|\bwindow\.|\bglobalThis\b|\blocalStorage\b|\bnavigator\.|\bset(?:Timeout|Interval)\b|\bconsole\b|\bprocess\.|\brequire\s*\(/g;
    expect(broken(SRC, saying(world))).toEqual([]);
  });

  test("writes no figure with a point as a number: exact figures are texts", () => {
    const withoutTexts = SRC.map((source) => ({
      ...source,
      code: source.code.replace(/"[^"\n]*"|`[^`]*`|\/[^/\n]+\/[a-z]*/g, ""),
    }));
    expect(broken(withoutTexts, saying(/\b\d+\.\d+\b/g))).toEqual([]);
  });

  test("never says any", () => {
    expect(broken(PRODUCT, saying(/(?::|\bas|<|,)\s*any\b(?=\s*[;,)=>[\]|&])/g))).toEqual([]);
  });

  test("has a file of tests for every file that has something to check", () => {
    const modules = SRC.map((source) => basename(source.path, ".ts")).filter((name) => name !== "index");
    expect(modules.filter((name) => !existsSync(join(ROOT, "tests/src", `${name}.test.ts`)))).toEqual([]);
  });
});

describe("functions and task pane", () => {
  test("reach the library through its public list only, and never each other", () => {
    const own = (source: Source) => source.path.split("/")[0] ?? "";
    expect(
      broken([...FUNCTIONS, ...TASKPANE], (source) =>
        source.imports.filter((specifier) => {
          const path = target(source, specifier);
          const script = source.path.endsWith(".mjs") && path?.startsWith("tests/");
          return path !== undefined && path !== "src/index" && !path.startsWith(`${own(source)}/`) && !script;
        }),
      ),
    ).toEqual([]);
  });

  test("only taskpane/excel says Excel. or Office.", () => {
    const outside = PRODUCT.filter((source) => !source.path.startsWith("taskpane/excel/"));
    expect(broken(outside, saying(/\b(?:Excel|Office|OfficeExtension|OfficeRuntime)\.[A-Za-z]\w*/g))).toEqual([]);
  });
});

test("the stand-in for Excel imports no product code", () => {
  expect(
    broken(WORKBOOK, (source) =>
      source.imports.filter((specifier) => /^(?:src|functions|taskpane)(?:\/|$)/.test(target(source, specifier) ?? "")),
    ),
  ).toEqual([]);
});

test("only src/index.ts re-exports, and by name", () => {
  const reExport = /^\s*export\s+(?:type\s+)?(?:\*(?:\s+as\s+\w+)?|\{[^}]*\})\s*from/gm;
  const index = SRC.filter((source) => source.path === "src/index.ts");
  const others = PRODUCT.filter((source) => source.path !== "src/index.ts");
  expect(broken(others, saying(reExport))).toEqual([]);
  expect(broken(index, saying(/export\s+\*|export\s+default/g))).toEqual([]);
  expect(broken(index, saying(reExport)).length).toBeGreaterThan(0);
});

test("no file is named for nothing in particular", () => {
  const names = [...PRODUCT, ...sourcesIn("tests")].map((source) => source.path);
  const vague = /^(?:utils?|helpers?|common|shared|misc|types?)$/i;
  const parts = (path: string) => path.split("/").map((part) => part.replace(/\.[^.]+$/, ""));
  expect(names.filter((path) => parts(path).some((part) => vague.test(part)))).toEqual([]);
});

test("nothing joins the top level of the repository", () => {
  const card = [
    "package.json",
    "package-lock.json",
    "tsconfig.json",
    "manifest.xml",
    "webpack.config.js",
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    "src",
    "functions",
    "taskpane",
    "tests",
  ];
  const top = [...new Set(tracked.map((path) => path.split("/")[0] ?? ""))];
  expect(top.filter((entry) => !entry.startsWith(".") && !card.includes(entry))).toEqual([]);
});

interface Package {
  readonly license?: unknown;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
}

const readPackage = (folder: string): Package => JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));

describe("packages", () => {
  const own = readPackage(ROOT);

  test("are pinned to one version each", () => {
    const all = Object.entries({ ...own.dependencies, ...own.devDependencies, ...own.optionalDependencies });
    expect(all.length).toBeGreaterThan(0);
    expect(all.filter(([, version]) => !/^\d+\.\d+\.\d+(?:-[\w.]+)?$/.test(version))).toEqual([]);
  });

  test("that we ship, and all they bring, have permissive licences", () => {
    const permissive = [
      "MIT",
      "ISC",
      "0BSD",
      "BSD-2-Clause",
      "BSD-3-Clause",
      "Apache-2.0",
      "Unlicense",
      "CC0-1.0",
      "BlueOak-1.0.0",
    ];
    const shipped = new Map<string, unknown>();
    const visit = (name: string, from: string): void => {
      const folder = installed(name, from);
      if (shipped.has(folder)) return;
      const found = readPackage(folder);
      shipped.set(folder, found.license);
      for (const next of Object.keys({ ...found.dependencies })) visit(next, folder);
    };
    for (const name of Object.keys(own.dependencies ?? {})) visit(name, ROOT);
    expect(shipped.size).toBeGreaterThanOrEqual(Object.keys(own.dependencies ?? {}).length);
    const doubtful = [...shipped].filter(([, licence]) => !permissive.includes(String(licence)));
    expect(doubtful.map(([folder, licence]) => `${relative(ROOT, folder)}: ${String(licence)}`)).toEqual([]);
  });

  test("office.js stays under its own terms: never shipped, never copied into the repository", () => {
    expect(Object.keys(own.dependencies ?? {})).not.toContain("@microsoft/office-js");
    expect(Object.keys(own.devDependencies ?? {})).toContain("@microsoft/office-js");
    expect(
      tracked.filter((path) => /(?:^|\/)(?:office|excel-web|excel-win32)[\w.-]*\.(?:debug\.)?js$/i.test(path)),
    ).toEqual([]);
  });
});

/** The folder Node would load a package from. */
function installed(name: string, from: string): string {
  for (let folder = from; ; folder = dirname(folder)) {
    const candidate = join(folder, "node_modules", name);
    if (existsSync(join(candidate, "package.json"))) return candidate;
    if (folder === dirname(folder)) throw new Error(`${name}, needed by ${from}, is not installed`);
  }
}
