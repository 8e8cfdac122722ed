import type { Nullable } from "@univerjs/core";
import {
  ArrayValueObject,
  BaseFunction,
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  FunctionType,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/preset-sheets-core";
import type { Book } from "./book";
import type { Faults } from "./faults";
import type { FunctionMetadata, Metadata, Parameter } from "./metadata";

/** The function that the add-in associated with an id; undefined while the pane has not loaded. */
export type Associated = (id: string) => ((...values: unknown[]) => unknown) | undefined;

/** How a blank cell reaches a function: by reports null in Excel on the web, 0 in Excel for Windows. */
export type Blanks = "null" | "zero" | "text";

const BLANK: Record<Blanks, unknown> = { null: null, zero: 0, text: "" };

/** How an error cell reaches a function that takes errors: as documented, data; or an object of the runtime's own class. */
export type ErrorCells = (code: string) => unknown;

export const errorAsData: ErrorCells = (code) => ({ type: "Error", basicType: "Error", basicValue: code });

/** What Excel passes for cells that have no plain value. */
export interface Handing {
  readonly blanks: Blanks;
  readonly errors: ErrorCells;
}

/** Registers every function of the metadata with the grid as NAMESPACE.ID, answered by the add-in's associated function. */
export function registerFunctions(
  book: Book,
  namespace: string,
  { functions: metadata, takesErrors }: Metadata,
  associated: Associated,
  faults: Faults,
  { blanks, errors }: Handing,
): void {
  const handing = { blanks, errors: takesErrors ? errors : undefined };
  const executors = metadata.map((each) => new AddinFunction(namespace, each, associated, faults, handing));
  book.engine.functions.registerExecutors(...executors);
  book.engine.descriptions.registerDescriptions(
    metadata.map((each) => ({
      functionName: `${namespace}.${each.name}`.toUpperCase(),
      functionType: FunctionType.User,
      description: each.description ?? "",
      abstract: each.description ?? "",
      functionParameter: each.parameters.map((parameter) => ({
        name: parameter.name,
        detail: parameter.description ?? "",
        example: "",
        require: parameter.optional ? 0 : 1,
        repeat: parameter.repeating ? 1 : 0,
      })),
    })),
  );
}

class AddinFunction extends BaseFunction {
  override minParams: number;
  override maxParams: number;

  constructor(
    namespace: string,
    private readonly metadata: FunctionMetadata,
    private readonly associated: Associated,
    private readonly faults: Faults,
    private readonly handing: { readonly blanks: Blanks; readonly errors: ErrorCells | undefined },
  ) {
    super(`${namespace}.${metadata.name}`.toUpperCase());
    const { parameters } = metadata;
    this.minParams = parameters.filter((parameter) => !parameter.optional).length;
    this.maxParams = parameters.at(-1)?.repeating ? 255 : parameters.length;
  }

  /** Must not throw: an error would stop the grid's engine for good. */
  override calculate(...given: BaseValueObject[]): BaseValueObject {
    try {
      return this.answer(given);
    } catch (thrown) {
      return this.fault(readError(thrown) ?? { code: "#VALUE!", sentence: "" });
    }
  }

  private answer(given: BaseValueObject[]): BaseValueObject {
    const call = this.associated(this.metadata.id);
    if (!call) return this.fault({ code: "#GETTING_DATA", sentence: "The add-in has not loaded yet." });
    const values: unknown[] = [];
    for (const [index, parameter] of this.metadata.parameters.entries()) {
      const read = parameter.repeating
        ? this.readAll(given.slice(index), parameter)
        : this.read(given[index], parameter);
      if (read instanceof ErrorValueObject) return read;
      values.push(read);
    }
    // Excel passes an invocation object as a further argument to every function.
    const invocation = { functionName: this.metadata.id, address: undefined, parameterAddresses: undefined };
    return this.result(call(...values, invocation));
  }

  private readAll(given: BaseValueObject[], parameter: Parameter): unknown {
    const values = given.map((argument) => this.read(argument, parameter));
    return values.find((value) => value instanceof ErrorValueObject) ?? values;
  }

  private read(argument: BaseValueObject | undefined, parameter: Parameter): unknown {
    const wantsMatrix = parameter.dimensionality === "matrix";
    const errors = (parameter.type ?? "any") === "any" ? this.handing.errors : undefined;
    if (argument?.isError() && !errors) return argument;
    if (!argument || (!argument.isArray() && argument.isNull())) return null;
    if (!argument.isArray()) return wantsMatrix ? [[this.plain(argument, errors)]] : this.plain(argument, errors);
    const rows = argument.getArrayValue();
    const first = rows[0]?.[0];
    const isSingle = rows.length === 1 && rows[0]?.length === 1;
    if (!wantsMatrix) {
      if (!isSingle) return ErrorValueObject.create(ErrorType.VALUE);
      return first?.isError() && !errors ? first : this.plain(first, errors);
    }
    // Excel does not call a function where a cell is an error, unless the metadata says that functions take errors.
    const error = errors ? undefined : rows.flat().find((cell) => cell?.isError());
    return error ?? rows.map((row) => row.map((cell) => this.plain(cell, errors)));
  }

  private plain(value: Nullable<BaseValueObject>, errors: ErrorCells | undefined): unknown {
    if (!value || value.isNull()) return BLANK[this.handing.blanks];
    if (errors && value.isError()) return errors(String(value.getValue()));
    if (value.isBoolean()) return value.getValue() === true || Number(value.getValue()) === 1;
    return value.getValue();
  }

  private result(value: unknown): BaseValueObject {
    if (!Array.isArray(value)) return this.single(value, 0, 0);
    const rows: unknown[][] = value.map((row: unknown) => (Array.isArray(row) ? row : [row]));
    const columns = rows[0]?.length ?? 0;
    if (columns === 0 || rows.some((row) => row.length !== columns)) return ErrorValueObject.create(ErrorType.VALUE);
    if (rows.length === 1 && columns === 1) return this.single(rows[0]?.[0], 0, 0);
    return ArrayValueObject.create({
      calculateValueList: rows.map((row, i) => row.map((cell, j) => this.single(cell, i, j))),
      rowCount: rows.length,
      columnCount: columns,
      unitId: this.unitId ?? "",
      sheetId: this.subUnitId ?? "",
      row: this.row,
      column: this.column,
    });
  }

  private single(value: unknown, down: number, right: number): BaseValueObject {
    if (typeof value === "string") return StringValueObject.create(value);
    if (typeof value === "boolean") return BooleanValueObject.create(value);
    if (typeof value === "number") {
      if (!Number.isFinite(value)) return this.fault({ code: "#NUM!", sentence: "" }, down, right);
      return NumberValueObject.create(value);
    }
    // Excel shows 0 where a function returns null (office-js issue 1503, by design).
    if (value === null || value === undefined) return NumberValueObject.create(0);
    return this.fault(readError(value) ?? { code: "#VALUE!", sentence: "" }, down, right);
  }

  private fault(error: { code: string; sentence: string }, down = 0, right = 0): BaseValueObject {
    const anchor = [this.row, this.column] as const;
    this.faults.set(this.subUnitId ?? "", this.row + down, this.column + right, { ...error, anchor });
    return ErrorValueObject.create(ERROR_TYPES.find((type) => type === error.code) ?? ErrorType.VALUE);
  }
}

const ERROR_TYPES: readonly ErrorType[] = Object.values(ErrorType);

/** Excel shows the sentence of #VALUE! and #N/A only. */
const WITH_SENTENCE = new Set(["#VALUE!", "#N/A", "#GETTING_DATA"]);

/** A CustomFunctions.Error of the pane's page, recognized by its shape since its class is another page's. */
function readError(thrown: unknown): { code: string; sentence: string } | undefined {
  if (typeof thrown !== "object" || thrown === null || !("code" in thrown)) return undefined;
  const { code } = thrown;
  if (typeof code !== "string" || !code.startsWith("#")) return undefined;
  const message = "message" in thrown && typeof thrown.message === "string" ? thrown.message : "";
  return { code, sentence: WITH_SENTENCE.has(code) ? message : "" };
}
