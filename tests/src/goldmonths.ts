import Fraction from "fraction.js";
import { publishedText } from "./published";

/** From each month to the next since January 1968, in exact fractions (gold-monthly.csv). */
export function monthlyMoves() {
  const months = publishedText("gold-monthly.csv")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","))
    .filter(([month = ""]) => month >= "1968-01")
    .map(([month = "", price = ""]) => ({ month, price: new Fraction(price) }));
  return months.slice(1).flatMap((then, index) => {
    const before = months[index];
    if (!before) return [];
    return [
      {
        from: before.month,
        to: then.month,
        before: before.price,
        after: then.price,
        ratio: then.price.div(before.price),
      },
    ];
  });
}
