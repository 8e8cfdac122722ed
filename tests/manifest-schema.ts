import { XMLParser } from "fast-xml-parser";

/** An element of the manifest with its children in their order. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
}

/**
 * The children each element may have, in the order the schema sets.
 * Source: OfficeDev/office-js-docs-pr, docs/overview/schemas/taskpane: OfficeAppManifestV1_1.xsd,
 * TaskPaneAppVersionOverridesV1_0.xsd and OfficeAppBasicTypesV1_0.xsd; docs/develop/manifest-element-ordering.md;
 * Runtimes before AllFormFactors: MS-OWEMXML, complex type Host. An element that differs by its parent or xsi:type is
 * written "Parent/Name" or "Name:type".
 */
export const CHILDREN: Readonly<Record<string, readonly string[]>> = {
  OfficeApp: [
    "Id",
    "AlternateId",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "IconUrl",
    "HighResolutionIconUrl",
    "SupportUrl",
    "AppDomains",
    "Hosts",
    "Requirements",
    "DefaultSettings",
    "Permissions",
    "VersionOverrides",
  ],
  AppDomains: ["AppDomain"],
  Requirements: ["Sets", "Methods"],
  Sets: ["Set"],
  DefaultSettings: ["SourceLocation"],
  VersionOverrides: ["Description", "Requirements", "Hosts", "Resources", "WebApplicationInfo", "EquivalentAddins"],
  Hosts: ["Host"],
  "Host:Workbook": ["Runtimes", "AllFormFactors", "DesktopFormFactor"],
  Runtimes: ["Runtime"],
  AllFormFactors: ["ExtensionPoint"],
  DesktopFormFactor: ["GetStarted", "FunctionFile", "ExtensionPoint"],
  GetStarted: ["Title", "Description", "LearnMoreUrl"],
  "ExtensionPoint:CustomFunctions": ["Script", "Page", "Metadata", "Namespace"],
  Script: ["SourceLocation"],
  Page: ["SourceLocation"],
  Metadata: ["SourceLocation"],
  "ExtensionPoint:PrimaryCommandSurface": ["OfficeTab", "CustomTab"],
  OfficeTab: ["Group"],
  Group: ["Label", "Icon", "Control"],
  Icon: ["bt:Image"],
  "Control:Button": ["Label", "Supertip", "Icon", "Action"],
  Supertip: ["Title", "Description"],
  "Action:ShowTaskpane": ["TaskpaneId", "SourceLocation", "Title"],
  Resources: ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"],
  "bt:Images": ["bt:Image"],
  "bt:Urls": ["bt:Url"],
  "bt:ShortStrings": ["bt:String"],
  "bt:LongStrings": ["bt:String"],
};

/** Children without which Excel refuses the manifest. Source: the same schemas, minOccurs="1", and for a shared runtime MS Learn, "Configure your Office Add-in to use a shared runtime". */
export const REQUIRED: Readonly<Record<string, readonly string[]>> = {
  OfficeApp: [
    "Id",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "Hosts",
    "DefaultSettings",
    "Permissions",
    "VersionOverrides",
  ],
  "Host:Workbook": ["Runtimes", "AllFormFactors", "DesktopFormFactor"],
  GetStarted: ["Title", "Description", "LearnMoreUrl"],
  "ExtensionPoint:CustomFunctions": ["Script", "Page", "Metadata", "Namespace"],
  Group: ["Label", "Icon", "Control"],
  "Control:Button": ["Label", "Supertip", "Icon", "Action"],
  Supertip: ["Title", "Description"],
  "Action:ShowTaskpane": ["SourceLocation"],
};

/** Which list of Resources the resid of an element points into. Source: the schemas' …ResourceReference types. */
export const RESOURCE_OF: Readonly<Record<string, string>> = {
  Runtime: "bt:Urls",
  SourceLocation: "bt:Urls",
  FunctionFile: "bt:Urls",
  LearnMoreUrl: "bt:Urls",
  Namespace: "bt:ShortStrings",
  Label: "bt:ShortStrings",
  Title: "bt:ShortStrings",
  Description: "bt:LongStrings",
  "bt:Image": "bt:Images",
};

/** The longest value of each kind of resource, in characters. Source: OfficeAppBasicTypesV1_0.xsd. */
export const LONGEST: Readonly<Record<string, number>> = {
  "bt:Images": 2048,
  "bt:Urls": 2048,
  "bt:ShortStrings": 125,
  "bt:LongStrings": 250,
};

/** The root element of a manifest. */
export function parse(xml: string): Element {
  const parser = new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: "",
    parseTagValue: false,
    parseAttributeValue: false,
    ignoreDeclaration: true,
  });
  const [root, ...others] = elementsOf(parser.parse(xml));
  if (!root || others.length > 0) throw new Error("the manifest has no single root element");
  return root;
}

/** fast-xml-parser's ordered nodes, as elements: { Name: [nodes], ":@": { attribute: text } } or { "#text": text }. */
function elementsOf(nodes: unknown): Element[] {
  if (!Array.isArray(nodes)) throw new Error("expected a list of nodes");
  return nodes.flatMap((node: Record<string, unknown>) => {
    const name = Object.keys(node).find((key) => key !== ":@");
    if (name === undefined || name === "#text") return [];
    const inside: unknown = node[name];
    const attributes = Object.fromEntries(
      Object.entries(node[":@"] ?? {}).map(([key, value]) => [key, String(value)] as const),
    );
    return [{ name, attributes, children: elementsOf(inside), text: textOf(inside) }];
  });
}

function textOf(nodes: unknown): string {
  if (!Array.isArray(nodes)) return "";
  return nodes
    .map((node: Record<string, unknown>) => String(node["#text"] ?? ""))
    .join("")
    .trim();
}

/** An element and everything inside it. */
export function descendants(element: Element): Element[] {
  return [element, ...element.children.flatMap(descendants)];
}

/** The name of an element in the tables above. */
export function kindOf({ name, attributes }: Element): string {
  const type = attributes["xsi:type"];
  return type !== undefined && `${name}:${type}` in CHILDREN ? `${name}:${type}` : name;
}

/** What stands where the schema does not let it stand, as sentences. */
export function orderFaults(element: Element): string[] {
  const kind = kindOf(element);
  const allowed = CHILDREN[kind] ?? [];
  const faults: string[] = [];
  let furthest = 0;
  for (const { name } of element.children) {
    const place = allowed.indexOf(name);
    if (place < 0) faults.push(`${kind}: ${name} is not known there`);
    else if (place < furthest) faults.push(`${kind}: ${name} after ${allowed[furthest]}`);
    else furthest = place;
  }
  return [...faults, ...element.children.flatMap(orderFaults)];
}
