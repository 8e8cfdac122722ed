import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { expect, test } from "vitest";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const FOLDER = join(ROOT, "taskpane/excel");

/** Members the add-in does without where they are not there: an event then simply does not say who caused it. */
const OPTIONAL = ["triggerSource"];

/** Members of Excel's object model that taskpane/excel uses, with the ExcelApi version its type says it came with. */
function membersUsed(): Map<string, number> {
  const files = readdirSync(FOLDER, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(FOLDER, name));
  const { config } = ts.readConfigFile(join(ROOT, "tsconfig.json"), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, ROOT);
  const program = ts.createProgram(files, options);
  const checker = program.getTypeChecker();
  const used = new Map<string, number>();
  const note = (name: ts.Node) => {
    const symbol = checker.getSymbolAtLocation(name);
    const isOffice = symbol?.declarations?.some((each) => each.getSourceFile().fileName.includes("@types/office-js"));
    if (!symbol || !isOffice || OPTIONAL.includes(symbol.name)) return;
    const remarks = symbol.getJsDocTags(checker).flatMap(({ text = [] }) => text.map((part) => part.text));
    const version = /\[Api set: ExcelApi 1\.(\d+)/.exec(remarks.join(" "))?.[1];
    if (version) used.set(symbol.name, Math.max(Number(version), used.get(symbol.name) ?? 0));
  };
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAccessExpression(node)) note(node.name);
    if (ts.isBindingElement(node) && ts.isObjectBindingPattern(node.parent)) {
      const property = node.propertyName ?? node.name;
      const type = checker.getTypeAtLocation(node.parent);
      const symbol = ts.isIdentifier(property) ? type.getProperty(property.text) : undefined;
      const [declared] = symbol?.declarations ?? [];
      if (declared && "name" in declared) note(declared.name as ts.Node);
    }
    ts.forEachChild(node, visit);
  };
  for (const file of files) {
    const source = program.getSourceFile(file);
    if (source) visit(source);
  }
  return used;
}

test("the manifest asks for the ExcelApi version of the newest member that the add-in uses, and no newer", () => {
  const used = membersUsed();
  // office.js' own documentation: WorksheetCollection.onCalculated is 1.8, WorksheetCollection.onChanged 1.9.
  expect(used.get("onCalculated")).toBe(8);
  expect(used.get("onChanged")).toBe(9);
  const newest = Math.max(...used.values());
  const manifest = readFileSync(join(ROOT, "manifest.xml"), "utf8");
  const asked = /<Set Name="ExcelApi" MinVersion="1\.(\d+)"\/>/.exec(manifest)?.[1];
  const members = [...used].filter(([, version]) => version === newest).map(([name]) => name);
  expect(asked, `ExcelApi 1.${newest} for ${members.join(", ")}`).toBe(String(newest));
});
