/** A parameter in functions.json. */
export interface Parameter {
  readonly name: string;
  readonly description?: string;
  readonly type?: string;
  readonly dimensionality?: string;
  readonly optional?: boolean;
  readonly repeating?: boolean;
}

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly Parameter[];
}

/** Reads functions.json, keeping what a call needs. */
export function readMetadata(json: unknown): FunctionMetadata[] {
  if (typeof json !== "object" || json === null || !("functions" in json) || !Array.isArray(json.functions))
    throw new Error("functions.json holds no list of functions");
  return json.functions.map((each: unknown) => {
    if (typeof each !== "object" || each === null || !("id" in each) || typeof each.id !== "string")
      throw new Error("functions.json holds a function without an id");
    const item = each as Partial<FunctionMetadata> & { id: string };
    return { ...item, name: item.name ?? item.id, parameters: item.parameters ?? [] };
  });
}
