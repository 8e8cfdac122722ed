import { existsSync, readFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { XMLValidator } from "fast-xml-parser";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  descendants,
  type Element,
  kindOf,
  LONGEST,
  orderFaults,
  parse,
  REQUIRED,
  RESOURCE_OF,
} from "./manifest-schema";
import { buildAddin } from "./workbook/build.mjs";

const ROOT = fileURLToPath(new URL("../", import.meta.url));
const DIST = join(ROOT, "dist");
const SOURCE = readFileSync(join(ROOT, "manifest.xml"), "utf8");

const app = parse(SOURCE);
const everything = descendants(app);

describe("manifest.xml", () => {
  test("is well-formed and says so at the first fault", () => {
    expect(XMLValidator.validate(SOURCE)).toBe(true);
    expect(XMLValidator.validate(SOURCE.replace("</Hosts>", ""))).not.toBe(true);
  });

  test("is a task pane add-in of the 1.1 schema with version 1.0 overrides", () => {
    expect(app.name).toBe("OfficeApp");
    expect(app.attributes.xmlns).toBe("http://schemas.microsoft.com/office/appforoffice/1.1");
    expect(app.attributes["xsi:type"]).toBe("TaskPaneApp");
    const overrides = only("VersionOverrides");
    expect(overrides.attributes.xmlns).toBe("http://schemas.microsoft.com/office/taskpaneappversionoverrides");
    expect(overrides.attributes["xsi:type"]).toBe("VersionOverridesV1_0");
  });

  test("has a GUID, a version of four parts and the provider's name", () => {
    expect(only("Id").text).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(only("Version").text).toMatch(/^\d{1,5}(\.\d{1,5}){3}$/);
    expect(only("ProviderName").text).toBe("Curbwright");
  });

  test("holds only elements the schema knows, in the schema's order", () => {
    expect(orderFaults(app)).toEqual([]);
  });

  test("would be found out if two elements changed places or one were unknown", () => {
    const swapped = SOURCE.replace(/(<Label resid="Open.Label"\/>)(\s*)(<Supertip>[\s\S]*?<\/Supertip>)/, "$3$2$1");
    expect(swapped).not.toBe(SOURCE);
    expect(orderFaults(parse(swapped))).toEqual(["Control:Button: Label after Supertip"]);
    const unknown = SOURCE.replace("<GetStarted>", "<Started/><GetStarted>");
    expect(orderFaults(parse(unknown))).toEqual(["DesktopFormFactor: Started is not known there"]);
  });

  test("leaves out nothing that Excel requires", () => {
    const absent = everything.flatMap((element) =>
      (REQUIRED[kindOf(element)] ?? [])
        .filter((name) => !element.children.some((child) => child.name === name))
        .map((name) => `${kindOf(element)} has no ${name}`),
    );
    expect(absent).toEqual([]);
    expect(Object.keys(REQUIRED).filter((kind) => !everything.some((element) => kindOf(element) === kind))).toEqual([]);
  });

  test("defines every resource once, uses every one it defines, each of the right kind", () => {
    const defined = only("Resources").children.flatMap((list) =>
      list.children.map((resource) => [resource.attributes.id, list.name] as const),
    );
    const ids = defined.map(([id]) => id);
    expect(ids).toEqual([...new Set(ids)]);
    const used = everything
      .filter((element) => element.attributes.resid !== undefined)
      .map((element) => [element.attributes.resid, RESOURCE_OF[element.name]] as const);
    const kinds = new Map(defined);
    expect(used).toStrictEqual(used.map(([id]) => [id, kinds.get(id) ?? `${id} is not defined`]));
    expect(ids.filter((id) => !used.some(([resid]) => resid === id))).toEqual([]);
  });

  test("keeps ids and texts within Excel's limits", () => {
    const resources = only("Resources").children;
    for (const list of resources) {
      for (const { attributes } of list.children) {
        expect(attributes.id?.length, attributes.id).toBeLessThanOrEqual(32);
        expect(attributes.DefaultValue?.length, attributes.id).toBeGreaterThan(0);
        expect(attributes.DefaultValue?.length, attributes.id).toBeLessThanOrEqual(LONGEST[list.name] ?? 0);
      }
    }
    expect(
      app.children.find(({ name }) => name === "DisplayName")?.attributes.DefaultValue?.length,
    ).toBeLessThanOrEqual(125);
    expect(
      app.children.find(({ name }) => name === "Description")?.attributes.DefaultValue?.length,
    ).toBeLessThanOrEqual(250);
    const ids = ["Group", "Control"].flatMap((name) => all(name).map(({ attributes }) => attributes.id ?? ""));
    expect(ids).toEqual([...new Set(ids)]);
    for (const id of [...ids, only("TaskpaneId").text]) expect(id).toMatch(/^.{1,125}$/);
  });

  test("shares one long-lived runtime: one page for functions, commands and pane", () => {
    const runtime = only("Runtime");
    expect(runtime.attributes.lifetime).toBe("long");
    const page = runtime.attributes.resid;
    expect(only("FunctionFile").attributes.resid).toBe(page);
    expect(only("Page").children[0]?.attributes.resid).toBe(page);
    expect(
      all("Action").flatMap(({ children }) => children.map(({ attributes }) => attributes.resid).filter(Boolean)),
    ).toEqual([page]);
    expect(resource(page)).toBe(only("DefaultSettings").children[0]?.attributes.DefaultValue);
    expect(all("Set").map(({ attributes }) => [attributes.Name, attributes.MinVersion])).toEqual([
      ["SharedRuntime", "1.1"],
      ["CustomFunctionsRuntime", "1.2"],
      ["ExcelApi", "1.9"],
    ]);
  });

  test("offers the functions as CURB and one button on the Home tab", () => {
    expect(resource(only("Namespace").attributes.resid)).toBe("CURB");
    expect(only("OfficeTab").attributes.id).toBe("TabHome");
    expect(resource(only("Group").children[0]?.attributes.resid)).toBe("Curbwright");
    expect(resource(only("Control").children[0]?.attributes.resid)).toBe("Open Curbwright");
  });

  test("names icons that exist and are as large as they claim", () => {
    const claims = all("bt:Image")
      .filter(({ attributes }) => attributes.size !== undefined)
      .map(({ attributes }) => [Number(attributes.size), resource(attributes.resid)] as const);
    expect(new Set(claims.map(([size]) => size))).toEqual(new Set([16, 32, 64, 80]));
    claims.push(
      [32, only("IconUrl").attributes.DefaultValue ?? ""],
      [64, only("HighResolutionIconUrl").attributes.DefaultValue ?? ""],
    );
    for (const [size, url] of claims) {
      const file = url.replace("https://localhost:3000/icons/", join(ROOT, "taskpane/icons/"));
      expect(pngSize(file), url).toEqual({ width: size, height: size });
    }
  });

  test("loads everything over https from one origin, from files the build makes", () => {
    const urls = urlsIn(SOURCE);
    expect(urls.length).toBeGreaterThan(5);
    expect(new Set(urls.map((url) => new URL(url).origin))).toEqual(new Set(["https://localhost:3000"]));
    for (const url of urls) expect(existsSync(join(DIST, new URL(url).pathname)), url).toBe(true);
  });
});

describe("the manifest of a production build", () => {
  let output = "";
  beforeAll(async () => {
    output = await mkdtemp(join(tmpdir(), "curbwright-"));
    await buildAddin({ base: "https://addins.example/curb/", support: "https://help.example/curb/", output });
  }, 180_000);
  afterAll(() => rm(output, { recursive: true, force: true }));

  test("names the given addresses everywhere and localhost nowhere", () => {
    const built = readFileSync(join(output, "manifest.xml"), "utf8");
    expect(built).not.toMatch(/localhost/i);
    expect(built).toBe(
      SOURCE.replace(
        '<SupportUrl DefaultValue="https://localhost:3000/taskpane.html"/>',
        '<SupportUrl DefaultValue="https://help.example/curb"/>',
      ).replaceAll("https://localhost:3000", "https://addins.example/curb"),
    );
    expect(orderFaults(parse(built))).toEqual([]);
    expect(urlsIn(built)).toHaveLength(urlsIn(SOURCE).length);
  });

  test("is refused for an address Excel would not load, and for others to load from this computer", async () => {
    await expect(buildAddin({ base: "http://addins.example", output })).rejects.toThrow("https://");
    await expect(buildAddin({ support: "mail@addins.example", output })).rejects.toThrow("--env support");
    const { default: config } = await import(pathToFileURL(join(ROOT, "webpack.config.js")).href);
    for (const env of [{}, { base: "https://localhost:3000" }]) expect(() => config(env)).toThrow("a release needs");
    expect(config({ base: "https://addins.example" }).devtool).toBe(false);
  });

  test("loads scripts and styles by a name that changes with what is in them", () => {
    const page = readFileSync(join(output, "taskpane.html"), "utf8");
    const named = [...page.matchAll(/(?:src|href)=["']?(?!["']?https:)([^"'\s>]+)/g)].map(([, name]) => name ?? "");
    expect(named.map((name) => name.replace(/\?[0-9a-f]{8}$/, ""))).toEqual(
      expect.arrayContaining(["functions.js", "taskpane.js", "taskpane.css"]),
    );
    for (const name of named) expect(name).toMatch(/^\w+\.(js|css)\?[0-9a-f]{8}$/);
  });
});

function all(name: string): Element[] {
  return everything.filter((element) => element.name === name);
}

function only(name: string): Element {
  const [first, ...others] = all(name);
  if (!first || others.length > 0) throw new Error(`expected one ${name}, found ${others.length + (first ? 1 : 0)}`);
  return first;
}

function resource(id: string | undefined): string {
  const found = only("Resources")
    .children.flatMap(({ children }) => children)
    .find(({ attributes }) => attributes.id === id);
  if (!found?.attributes.DefaultValue) throw new Error(`no resource ${id}`);
  return found.attributes.DefaultValue;
}

/** Every address a value of the manifest holds, whatever its scheme; the names of XML namespaces are no addresses. */
function urlsIn(xml: string): string[] {
  return descendants(parse(xml))
    .flatMap(({ attributes, text }) => [attributes.DefaultValue ?? "", text])
    .filter((value) => /^[a-z]+:\/\//i.test(value));
}

/** Source: PNG specification (W3C), 11.2.2 IHDR: width and height are the first two 4-byte integers of the first chunk. */
function pngSize(file: string): { width: number; height: number } {
  const bytes = readFileSync(file);
  if (bytes.toString("latin1", 1, 4) !== "PNG" || bytes.toString("latin1", 12, 16) !== "IHDR") {
    throw new Error(`${file} is no PNG`);
  }
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}
