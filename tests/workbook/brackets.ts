import { LexerTreeBuilder } from "@univerjs/preset-sheets-core";

/**
 * Has the grid begin each formula with no bracket open. Univer 0.25.1 reads a formula at every key and counts the "[" of a half
 * typed Table[#All] on into all formulas read after it: their operators and commas are then taken for text.
 */
export function closeBrackets(): void {
  const reset: unknown = Reflect.get(LexerTreeBuilder.prototype, "_resetTemp");
  if (typeof reset !== "function") throw new Error("The grid's reading of formulas has no _resetTemp any more");
  Reflect.set(LexerTreeBuilder.prototype, "_resetTemp", function (this: object) {
    reset.call(this);
    Reflect.set(this, "_squareBracketState", 0);
  });
}
