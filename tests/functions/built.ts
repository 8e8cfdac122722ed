import { readFileSync } from "node:fs";
import { runInNewContext } from "node:vm";

/** An error as a cell shows it. */
export interface CellError {
  readonly code: string;
  readonly message: string;
}

type Associated = (...args: unknown[]) => unknown;

/** Excel's part of the custom-functions runtime, as far as a function needs it. */
class CustomFunctionsError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

const associated = new Map<string, Associated>();

runInNewContext(readFileSync("dist/functions.js", "utf8"), {
  // Where the parts of the pane are loaded from; no function asks for one.
  self: { location: { href: "https://localhost:3000/taskpane.html" } },
  CustomFunctions: {
    associate: (id: string, run: Associated) => associated.set(id, run),
    Error: CustomFunctionsError,
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A", divisionByZero: "#DIV/0!", invalidNumber: "#NUM!" },
  },
});

/** The ids that the built functions.js associates. */
export const associatedIds = [...associated.keys()];

/** Calls a built function with cells and ranges as Excel hands them; what it throws comes back as the cell's error. */
export function call(id: string, ...args: unknown[]): unknown {
  const run = associated.get(id);
  if (!run) throw new Error(`functions.js associates no ${id}`);
  try {
    return plain(run(...args));
  } catch (error) {
    if (error instanceof CustomFunctionsError) return errorOf(error);
    throw error;
  }
}

/** One cell's answer to single cells. */
export function cell(id: string, ...args: unknown[]): unknown {
  const answer = call(id, ...args.map((arg) => (Array.isArray(arg) ? arg : [[arg]])));
  return Array.isArray(answer) && answer.length === 1 && answer[0].length === 1 ? answer[0][0] : answer;
}

/** Arrays of the other realm as arrays of ours. */
function plain(value: unknown): unknown {
  if (value instanceof CustomFunctionsError) return errorOf(value);
  return typeof value === "object" && value !== null && "length" in value
    ? Array.from(value as ArrayLike<unknown>, plain)
    : value;
}

function errorOf(error: CustomFunctionsError): CellError {
  return { code: error.code, message: error.message };
}
