import type { Book } from "../book";
import { invalid } from "../failure";

/** Readers of properties; each gives a plain value that JSON can hold. */
export type Reads = Record<string, () => unknown>;
export type Writes = Record<string, (value: unknown) => void>;
export type Parts = Record<string, () => Entity>;
/** Methods; each gives another object, NOTHING for Excel's null object, or a plain value. */
export type Calls = Record<string, (given: Arguments) => unknown>;

/** Excel's null object: what get…OrNullObject gives where there is nothing. */
export const NOTHING = Symbol("null object");

/**
 * One object of Excel's object model. What is in its tables it can do; the interpreter answers anything else with an
 * honest ApiNotFound. Names are as in the documentation.
 */
export abstract class Entity {
  /** The class's name in the documentation. */
  abstract readonly type: string;
  readonly reads: Reads = {};
  readonly writes: Writes = {};
  readonly parts: Parts = {};
  readonly calls: Calls = {};
  /** Methods whose answer depends on calculated values. */
  readonly settledCalls: readonly string[] = [];
  /** Calls that move cells. */
  readonly movingCalls: readonly string[] = [];

  constructor(readonly book: Book) {}

  /** The id by which later batches refer to it; undefined where they find it again by the same path. */
  get id(): string | undefined {
    return undefined;
  }

  /** Whether it lives on the host under a reference, as ranges do. */
  get isKept(): boolean {
    return false;
  }

  item(_given: Arguments): Entity {
    throw invalid();
  }

  items(): Entity[] | undefined {
    return undefined;
  }
}

/** The arguments of a call, read with a check each. */
export class Arguments {
  constructor(private readonly values: readonly unknown[]) {}

  has(index: number): boolean {
    return this.values[index] !== undefined && this.values[index] !== null;
  }

  raw(index: number): unknown {
    return this.values[index];
  }

  text(index: number): string {
    const value = this.values[index];
    if (typeof value !== "string") throw invalid();
    return value;
  }

  optionalText(index: number): string | undefined {
    return this.has(index) ? this.text(index) : undefined;
  }

  whole(index: number, fallback?: number): number {
    const value = this.values[index] ?? fallback;
    if (typeof value !== "number" || !Number.isInteger(value)) throw invalid();
    return value;
  }

  flag(index: number): boolean {
    return this.values[index] === true;
  }

  record(index: number): Record<string, unknown> {
    return record(this.values[index]);
  }
}

/** A plain object with its keys as the documentation writes them (office.js sends them so, or with a capital). */
export function record(value: unknown): Record<string, unknown> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw invalid();
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [lowerFirst(key), item]));
}

export function text(value: unknown): string {
  if (typeof value !== "string") throw invalid();
  return value;
}

export function number(value: unknown): number {
  if (typeof value !== "number" || !Number.isFinite(value)) throw invalid();
  return value;
}

export function flag(value: unknown): boolean {
  if (typeof value !== "boolean") throw invalid();
  return value;
}

export function oneOf<const T extends string>(value: unknown, allowed: readonly T[]): T {
  const found = allowed.find((item) => typeof value === "string" && item.toLowerCase() === value.toLowerCase());
  if (found === undefined) throw invalid();
  return found;
}

export function lowerFirst(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}

export function upperFirst(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
