import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { EXTRA_FIELDS } from "../src/order/extrafields";
import type { OrderField } from "../src/order/fieldkinds";
import { LINE_FIELDS, ORDER_FIELDS } from "../src/order/fields";
import { PANE_FEATURES, PANE_ROOMS, SRC_ROOMS } from "./rooms";

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

/** Every file that belongs to the repository, whether or not git is installed: what .gitignore names does not. */
const tracked = filesIn(ROOT);

function filesIn(root: string): readonly string[] {
  const ignored = readFileSync(join(root, ".gitignore"), "utf8").split("\n").filter(Boolean);
  const folders = ignored.filter((name) => !name.startsWith("*")).map((name) => name.replace(/\/$/, ""));
  const endings = ignored.filter((name) => name.startsWith("*")).map((name) => name.slice(1));
  const isOurs = (name: string) => ![".git", ...folders].includes(name) && !endings.some((end) => name.endsWith(end));
  const visit = (folder: string): readonly string[] =>
    readdirSync(join(root, folder), { withFileTypes: true })
      .filter(({ name }) => isOurs(name))
      .flatMap((entry) => {
        const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
        return entry.isDirectory() ? visit(path) : [path];
      });
  return visit("");
}

const SRC = sourcesIn("src");
const FUNCTIONS = sourcesIn("functions");
const TASKPANE = sourcesIn("taskpane");
const WORKBOOK = sourcesIn("tests/workbook");
const PRODUCT = [...SRC, ...FUNCTIONS, ...TASKPANE];

test("the sources and their imports are read at all", () => {
  const importsOf = (path: string) => SRC.find((source) => source.path === path)?.imports ?? [];
  expect(importsOf("src/exact/decimal.ts")).toContain("decimal.js");
  expect(importsOf("src/reading/parse.ts")).toEqual(["zod/mini", "../exact/errors"]);
  expect(FUNCTIONS.length).toBeGreaterThan(0);
  expect(TASKPANE.length).toBeGreaterThan(0);
  expect(WORKBOOK.length).toBeGreaterThan(0);
});

describe("the costing library", () => {
  const ALLOWED: Readonly<Record<string, string>> = {
    "src/exact/decimal.ts": "decimal.js",
    "src/reading/parse.ts": "zod/mini",
  };

  test("imports nothing outside but decimal.js, in exact/decimal.ts, and zod, in reading/parse.ts", () => {
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

  test("has tests for every room", () => {
    const tested = SRC_ROOMS.filter((room) => existsSync(join(ROOT, "tests/src", room)));
    expect(tested).toEqual(SRC_ROOMS);
  });
});

describe("a line of an order", () => {
  /** Where texts or cells that a person wrote come in. Whoever has figures already makes a line of them: makeLine, lineOfLinks. */
  const DOORS: Readonly<Record<string, readonly string[]>> = {
    parseLine: ["src/designs/pricelist.ts", "src/order/order.ts"],
    lineOfRow: ["src/designs/repricing.ts", "src/designs/tableformulas.ts"],
    parseOrder: ["taskpane/openquotes/openquotes.ts", "taskpane/order/reckoning.ts"],
    parseNamelessOrder: ["taskpane/order/reckoning.ts"],
    readDesigns: ["taskpane/designtable/chosendesigns.ts"],
    priceLines: [],
    orderOfRow: [],
    parseChain: ["src/order/linereading.ts"],
  };

  test("is read from texts at the doors alone: nothing writes texts for them to be read again", () => {
    const imported = (name: string) =>
      PRODUCT.filter(({ path, code }) => path !== "src/index.ts" && importsName(code, name)).map(({ path }) => path);
    expect(Object.fromEntries(Object.keys(DOORS).map((name) => [name, imported(name).sort()]))).toEqual(DOORS);
  });

  const DECLARATIONS = ["src/order/fields.ts", "src/order/extrafields.ts"];
  /** Words of other nouns: rows of the Rates sheet, lines of cost, groups of the form, what a paper says. */
  const OTHER_NOUNS =
    /^(?:src\/rates\/raterows|src\/quote\/piececosts|taskpane\/wording\/|taskpane\/excel\/(?:job|weights)\/)/;

  test("says each field's label and rule in its declaration, and nowhere a second time", () => {
    const declared: readonly OrderField<unknown>[] = [ORDER_FIELDS, LINE_FIELDS, EXTRA_FIELDS].flatMap((fields) =>
      Object.values<OrderField<unknown>>(fields),
    );
    // Labels of one word, such as Mark, are words of the trade before they are labels.
    const labels = declared.map(({ label }) => label).filter((label) => label.includes(" "));
    const rights = declared.flatMap(({ rule }) => (rule ? [rule.right] : []));
    expect(labels.length).toBeGreaterThan(50);
    expect(rights.length).toBeGreaterThan(40);
    const others = PRODUCT.filter(({ path }) => !DECLARATIONS.includes(path) && !OTHER_NOUNS.test(path));
    const texts = (code: string) =>
      [...code.matchAll(/"((?:[^"\\\n]|\\.)*)"|`((?:[^`\\]|\\.)*)`/g)].map((match) => match[1] ?? match[2]);
    const plain = (text: string) => text.replace(/ \([^)]*\)$/, "");
    expect(
      broken(others, ({ path, code }) =>
        texts(code)
          .filter((text) => text !== undefined)
          .filter(
            (text) => labels.includes(plain(text)) || (path !== "src/exact/numberrule.ts" && rights.includes(text)),
          ),
      ),
    ).toEqual([]);
  });
});

function importsName(code: string, name: string): boolean {
  const lists = [...code.matchAll(/\bimport\s+(?:type\s+)?\{([^}]*)\}/g)].map((match) => match[1] ?? "");
  return lists.some((list) => new RegExp(`\\b${name}\\b`).test(list));
}

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

/** The folder of a path below `top`; "" for what stands at its top. */
const roomOf = (path: string, top: string) => dirname(path).slice(top.length + 1);

describe("the rooms", () => {
  const src: readonly string[] = SRC_ROOMS;
  const pane: readonly string[] = PANE_ROOMS;
  const features: readonly string[] = PANE_FEATURES;
  const AT_THE_TOP = ["taskpane/main.ts", "taskpane/pane.ts", "taskpane/tools.ts"];

  /** What a source imports of the same house, but for its own room. */
  const others = (source: Source, top: string) =>
    source.imports.filter((specifier) => {
      const path = target(source, specifier);
      return path?.startsWith(`${top}/`) && roomOf(path, top) !== roomOf(source.path, top);
    });
  const room = (source: Source, specifier: string, top: string) => roomOf(target(source, specifier) ?? "", top);

  test("of the library hold every file but its public list", () => {
    const inRooms = SRC.filter(({ path }) => path !== "src/index.ts").map(({ path }) => roomOf(path, "src"));
    expect([...new Set(inRooms)].sort()).toEqual([...src].sort());
  });

  test("of the library import only what is nearer the floor", () => {
    const inRooms = SRC.filter(({ path }) => path !== "src/index.ts");
    const rule = (source: Source) =>
      others(source, "src").filter(
        (specifier) => src.indexOf(room(source, specifier, "src")) >= src.indexOf(roomOf(source.path, "src")),
      );
    expect(broken(inRooms, rule)).toEqual([]);
  });

  test("of the side panel hold every file but the three that put them together", () => {
    const inRooms = TASKPANE.filter(({ path }) => !AT_THE_TOP.includes(path) && path.endsWith(".ts"));
    const found = [...new Set(inRooms.map(({ path }) => roomOf(path, "taskpane")))].sort();
    expect(found).toEqual([...pane, ...features].sort());
  });

  test("of the side panel import only what is nearer the floor, and a feature no other feature", () => {
    const inRooms = TASKPANE.filter(({ path }) => !AT_THE_TOP.includes(path) && path.endsWith(".ts"));
    const rule = (source: Source) => {
      const own = pane.indexOf(roomOf(source.path, "taskpane"));
      const height = own < 0 ? pane.length : own;
      return others(source, "taskpane").filter((specifier) => {
        const at = pane.indexOf(room(source, specifier, "taskpane"));
        return at < 0 || at >= height;
      });
    };
    expect(broken(inRooms, rule)).toEqual([]);
  });

  test("excel/ knows the words and nothing else of the side panel", () => {
    const rule = (source: Source) =>
      others(source, "taskpane").filter((specifier) => !/^(?:wording|excel)/.test(room(source, specifier, "taskpane")));
    expect(
      broken(
        TASKPANE.filter(({ path }) => path.startsWith("taskpane/excel/")),
        rule,
      ),
    ).toEqual([]);
  });

  test("have no files that import each other in a circle, not even for a type", () => {
    expect(circlesIn(PRODUCT)).toEqual([]);
  });
});

/** Each circle of imports, as the files that it goes through. */
function circlesIn(sources: readonly Source[]): readonly string[] {
  const paths = new Set(sources.map(({ path }) => path));
  const next = new Map(
    sources.map((source) => [
      source.path,
      source.imports.flatMap((specifier) => {
        const path = target(source, specifier);
        return path !== undefined && paths.has(`${path}.ts`) ? [`${path}.ts`] : [];
      }),
    ]),
  );
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    if (trail.includes(path)) circles.push([...trail.slice(trail.indexOf(path)), path].join(" -> "));
    if (trail.includes(path) || done.has(path)) return;
    for (const each of next.get(path) ?? []) visit(each, [...trail, path]);
    done.add(path);
  };
  for (const { path } of sources) visit(path, []);
  return circles;
}

test("a link's weight has one way into the order, and tests/workbook/linkweight.test.ts knows each place that offers it", () => {
  const saidBy = (pattern: RegExp) => TASKPANE.filter(({ code }) => pattern.test(code)).map(({ path }) => path);
  expect(saidBy(/\.fillLine\(/)).toEqual(["taskpane/tools.ts"]);
  expect(saidBy(/\blinkOffer\(\s*"/).sort()).toEqual([
    "taskpane/modelfile/result.ts",
    "taskpane/weights/estimates.ts",
    "taskpane/weights/linkpicker.ts",
  ]);
});

test("a time or a source beside a spot has one way out of Rates, which knows whether it is that spot's", () => {
  const saidBy = TASKPANE.filter(({ code }) => /spotTime|spotSource/.test(code)).map(({ path }) => path);
  expect(saidBy.filter((path) => !path.startsWith("taskpane/excel/rates/"))).toEqual([]);
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
