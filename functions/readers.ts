import {
  alloyDensity,
  COST_BASES,
  type CostBasis,
  CostingError,
  FITS,
  type Fit,
  GRAMS_PER,
  grams,
  isBlank,
  type Length,
  type LengthUnit,
  LOSS_BASES,
  type Loss,
  type LossBasis,
  lengthIn,
  type Mark,
  METALS,
  MILLIMETRES_PER,
  type Money,
  money,
  NO_CURRENCY,
  type NumberRule,
  parseMark,
  perGram,
  Quotient,
  type Rate,
  readNumber,
  readWord,
  type Weight,
  type WeightUnit,
} from "../src/index";
import { type Grid, gridOf } from "./grid";

/** One cell as a value; throws a CostingError that names the argument. */
export type Reader<T> = (cell: unknown, argument: string) => T;

const number =
  (rule: NumberRule): Reader<Quotient> =>
  (cell, argument) =>
    readNumber(cell, argument, rule);

export const anyNumber = number({ right: "a number" });
export const numberFrom0 = number({ least: "0", right: "a number from 0" });
export const numberAbove0 = number({ above: "0", right: "a number above 0" });
export const wholeFrom0 = number({
  least: "0",
  whole: true,
  right: "a whole number from 0",
});
export const wholeAbove0 = number({
  above: "0",
  whole: true,
  right: "a whole number from 1",
});
export const shareBelow1 = number({
  least: "0",
  below: "1",
  right: "a share from 0 to below 1, such as 0.02 for 2 %",
});
export const signedShareBelow1 = number({
  below: "1",
  right: "a share below 1, such as 0.3 for 30 %",
});
export const share = number({
  least: "0",
  right: "a share from 0, such as 0.3 for 30 %",
});
export const perThousand = number({
  above: "0",
  most: "1000",
  right: "parts per thousand, above 0 up to 1000",
});
export const decimals = number({
  least: "0",
  most: "15",
  whole: true,
  right: "a whole number of decimals from 0 to 15",
});

export const weightAbove0: Reader<Weight> = (cell, argument) =>
  grams(readNumber(cell, argument, { above: "0", right: "grams above 0" }));
export const weightFrom0: Reader<Weight> = (cell, argument) =>
  grams(readNumber(cell, argument, { least: "0", right: "grams from 0" }));

/** Lengths of one call share a unit of the user's choice, which cancels: they are read as millimetres. */
export const lengthAbove0: Reader<Length> = (cell, argument) =>
  lengthIn(readNumber(cell, argument, { above: "0", right: "a length above 0" }), "mm");
export const lengthFrom0: Reader<Length> = (cell, argument) =>
  lengthIn(readNumber(cell, argument, { least: "0", right: "a length from 0" }), "mm");

export const spot: Reader<Money> = (cell, argument) =>
  cash(
    readNumber(cell, argument, {
      above: "0",
      right: "money per troy ounce of fine gold, above 0",
    }),
  );
export const moneyAbove0: Reader<Money> = (cell, argument) =>
  cash(readNumber(cell, argument, { above: "0", right: "money above 0" }));
export const moneyFrom0: Reader<Money> = (cell, argument) =>
  cash(readNumber(cell, argument, { least: "0", right: "money from 0" }));
export const anyMoney: Reader<Money> = (cell, argument) => cash(readNumber(cell, argument, { right: "money" }));
export const rateAbove0: Reader<Rate> = (cell, argument) =>
  gram(
    readNumber(cell, argument, {
      above: "0",
      right: "money per gram, above 0",
    }),
  );
export const rateFrom0: Reader<Rate> = (cell, argument) =>
  gram(readNumber(cell, argument, { least: "0", right: "money per gram, from 0" }));
export const anyRate: Reader<Rate> = (cell, argument) => gram(readNumber(cell, argument, { right: "money per gram" }));

export const mark: Reader<Mark> = parseMark;
export const lossBasis: Reader<LossBasis> = (cell, argument) => readWord(cell, argument, LOSS_BASES);
export const costBasis: Reader<CostBasis> = (cell, argument) => readWord(cell, argument, COST_BASES);
export const fit: Reader<Fit> = (cell, argument) => readWord(cell, argument, FITS);
export const weightUnit: Reader<WeightUnit> = (cell, argument) => readWord(cell, argument, keys(GRAMS_PER));
export const lengthUnit: Reader<LengthUnit> = (cell, argument) => readWord(cell, argument, keys(MILLIMETRES_PER));

/** A blank or omitted cell counts as the default. */
export function optional<T, D>(reader: Reader<T>, otherwise: D): Reader<T | D> {
  return (cell, argument) => (isBlank(cell) ? otherwise : reader(cell, argument));
}

/** A loss from its amount and what it is counted from. Errors: outOfRange for a share of 1 or more. */
export function lossOf(amount: Quotient, basis: LossBasis): Loss {
  if (basis === "grams") return { basis, weight: grams(amount) };
  if (!amount.isLessThan(Quotient.one)) {
    throw new CostingError(
      "outOfRange",
      "loss",
      `found ${amount.value()}; give a share from 0 to below 1, such as 0.02 for 2 %, or the lossBasis "grams"`,
    );
  }
  return { basis, share: amount };
}

export function cash(amount: Quotient): Money {
  return money(amount, NO_CURRENCY);
}

export function gram(amount: Quotient): Rate {
  return perGram(amount, NO_CURRENCY);
}

/** A result rounded once, half away from zero, where decimals are given. */
export function roundedTo(value: Quotient, places: Quotient | undefined): Quotient {
  return places ? Quotient.of(value.rounded(places.toNumber())) : value;
}

/** A range read as one list of numbers, its blank cells passed over; undefined for nothing at all. */
export function listOf(cells: unknown, argument: string, reader: Reader<Quotient>): readonly Quotient[] | undefined {
  const list = filled(gridOf(cells)).map((cell) => reader(cell, argument));
  return list.length > 0 ? list : undefined;
}

/** The density of an alloy from a range of symbols and a range of parts of equal shape. */
export function densityOf(metals: unknown, parts: unknown): Quotient {
  const symbols = gridOf(metals).flat();
  const amounts = gridOf(parts).flat();
  if (symbols.length !== amounts.length) {
    throw new CostingError(
      "wrongShape",
      "parts",
      `found ${amounts.length} cells beside ${symbols.length} metals; give one part for each metal`,
    );
  }
  const pairs = symbols.flatMap((symbol, index) => {
    const amount = amounts[index];
    if (isBlank(symbol) && isBlank(amount)) return [];
    return [
      {
        metal: readWord(symbol, "metals", METALS),
        parts: numberFrom0(amount, "parts"),
      },
    ];
  });
  if (pairs.length === 0)
    throw new CostingError("blank", "metals", 'found nothing; give symbols such as "Au", "Ag", "Cu"');
  return alloyDensity(pairs);
}

function filled(grid: Grid): unknown[] {
  return grid.flat().filter((cell) => !isBlank(cell));
}

function keys<K extends string>(record: Readonly<Record<K, unknown>>): readonly K[] {
  return Object.keys(record) as K[];
}
