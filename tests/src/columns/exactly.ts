import Fraction from "fraction.js";

/** A double as the exact fraction it is: fraction.js itself would read its shortest text. */
export function exactly(double: number): Fraction {
  let whole = double;
  let halvings = 0n;
  for (; !Number.isInteger(whole); halvings += 1n) whole *= 2;
  return new Fraction(BigInt(whole), 2n ** halvings);
}

/** The decimal of a cell's 15 digits, by JavaScript's own text of them. */
export function saidBy(cell: number): Fraction {
  const [mantissa = "", exponent = ""] = cell.toExponential(14).split("e");
  const ten = new Fraction(10).pow(Number(exponent));
  return new Fraction(mantissa).mul(ten ?? 1);
}
