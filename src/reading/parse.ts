import * as z from "zod/mini";
import { CostingError, type CostingErrorCode, type Fault } from "../exact/errors";

// Zod would write and compile a parser for every form it is given: longer than reading it, and what a page may be forbidden.
z.config({ jitless: true });

/** What came of reading a form or a row: the value, or every fault in it. */
export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export function accepted<T>(value: T): Parsed<T> {
  return Object.freeze({ ok: true, value: Object.freeze(value) });
}

export function refused(faults: readonly Fault[]): Parsed<never> {
  return Object.freeze({ ok: false, faults: Object.freeze([...faults]) });
}

/** The fields of a form, each made by `field`. */
type Shape = Readonly<Record<string, z.ZodMiniTransform<unknown, unknown>>>;

/** What a form of these fields is read to. */
export type FormOf<S extends Shape> = z.output<z.ZodMiniObject<S>>;

/** The faults of all parts that were refused. */
export function faultsOf(...parts: readonly Parsed<unknown>[]): readonly Fault[] {
  return parts.flatMap((part) => (part.ok ? [] : part.faults));
}

/** A field of a form read by one of our readers, whose CostingError becomes the field's fault. */
export function field<T>(read: (value: unknown) => T) {
  return z.transform((value: unknown, context): T => {
    try {
      return read(value);
    } catch (error) {
      if (!(error instanceof CostingError)) throw error;
      context.issues.push({
        code: "custom",
        message: error.message,
        params: { code: error.code },
        input: value,
      });
      return z.NEVER;
    }
  });
}

/** What zod makes of a shape, which is most of the work where a shape is read once for every row. */
const FORMS = new WeakMap<Shape, z.ZodMiniObject>();

function formOf<S extends Shape>(shape: S): z.ZodMiniObject<S> {
  const known = FORMS.get(shape);
  // Kept under this very shape, so it is a form of it.
  if (known) return known as z.ZodMiniObject<S>;
  const made = z.object(shape);
  FORMS.set(shape, made);
  return made;
}

/** Reads a whole record, gathering the faults of all its fields before it gives up. */
export function parseForm<S extends Shape>(shape: S, record: Readonly<Record<string, unknown>>): Parsed<FormOf<S>> {
  const known = Object.fromEntries(Object.keys(shape).map((key) => [key, record[key]]));
  const result = formOf(shape).safeParse(known);
  return result.success ? accepted(result.data) : refused(result.error.issues.map(faultIn));
}

function faultIn(issue: z.core.$ZodIssue): Fault {
  const code = issue.code === "custom" ? (issue.params?.code as CostingErrorCode) : "unknownWord";
  return Object.freeze({ field: String(issue.path[0] ?? ""), code, sentence: issue.message });
}

/** The fault of one field. @param said what was found and what would be right */
export function faultOf(key: string, label: string, code: CostingErrorCode, said: string): Fault {
  return Object.freeze({ field: key, code, sentence: new CostingError(code, label, said).message });
}

/** What was read, or its first fault as the error it came from. */
export function orThrow<T>(parsed: Parsed<T>): T {
  if (parsed.ok) return parsed.value;
  const [fault] = parsed.faults;
  if (!fault) throw new Error("Refused without a fault");
  const [named = "", ...said] = fault.sentence.split(": ");
  throw new CostingError(fault.code, named, said.join(": "));
}

/** Runs a step that throws CostingErrors; each becomes the fault of one field. */
export function attempt<T>(fieldKey: string, step: () => T): Parsed<T> {
  try {
    return accepted(step());
  } catch (error) {
    if (!(error instanceof CostingError)) throw error;
    return refused([Object.freeze({ field: fieldKey, code: error.code, sentence: error.message })]);
  }
}
