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

/** The parts of functions.json that calls need. */
export interface Metadata {
  readonly functions: readonly FunctionMetadata[];
  /** Whether an error cell reaches a function; without it the error is the formula's answer and the function is not called. */
  readonly takesErrors: boolean;
}

/** Either flag lets errors in. Source: custom-functions-json and custom-functions-data-types-concepts of the documentation. */
const FLAGS = ["allowErrorForDataTypeAny", "allowCustomDataForDataTypeAny"];

export function readMetadata(json: unknown): Metadata {
  const functions = readFunctions(json);
  return { functions, takesErrors: FLAGS.some((flag) => Reflect.get(Object(json), flag) === true) };
}

function readFunctions(json: unknown): FunctionMetadata[] {
  if (typeof json !== "object" || json === null || !("functions" in json) || !Array.isArray(json.functions))
    throw new Error("functions.json holds no list of functions");
  return json.functions.map((each: unknown) => {
    if (typeof each !== "object" || each === null || !("id" in each) || typeof each.id !== "string")
      throw new Error("functions.json holds a function without an id");
    const item = each as Partial<FunctionMetadata> & { id: string };
    return { ...item, name: item.name ?? item.id, parameters: item.parameters ?? [] };
  });
}
