import { CostingError, found } from "./errors";
import { isBlank } from "./number";

/** Reads one of a few words, whatever its case. Errors: blank, unknownWord. */
export function readWord<W extends string>(value: unknown, field: string, words: readonly W[]): W {
  const right = `give one of ${words.map((word) => `"${word}"`).join(", ")}`;
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; ${right}`);
  const said = typeof value === "string" ? value.trim().toLowerCase() : undefined;
  const word = words.find((candidate) => candidate.toLowerCase() === said);
  if (word === undefined) throw new CostingError("unknownWord", field, `${found(value)}; ${right}`);
  return word;
}
