import { LexerTreeBuilder } from "@univerjs/preset-sheets-core";

/**
 * Makes the grid begin each formula with no open bracket. Univer 0.25.1 reads a formula at every key and keeps counting the "[" of
 * a half typed Table[#All] in all formulas that it reads later. It then takes their operators and commas for text.
 */
export function closeBrackets(): void {
  const reset: unknown = Reflect.get(LexerTreeBuilder.prototype, "_resetTemp");
  if (typeof reset !== "function") throw new Error("The grid's reading of formulas has no _resetTemp any more");
  Reflect.set(LexerTreeBuilder.prototype, "_resetTemp", function (this: object) {
    reset.call(this);
    Reflect.set(this, "_squareBracketState", 0);
  });
}
