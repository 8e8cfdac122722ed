import { describe, expect, test } from "vitest";
import { parseMakerOffer } from "../../../src/makeorbuy/makeroffer";
import { NO_CURRENCY } from "../../../src/units/currency";
import { read } from "../orders";

/** Invented. */
const ROW = {
  maker: "Fennick Chain",
  mark: "14K",
  from: "20",
  surcharge: "3.25",
  currency: "",
  minimum: "100",
  minimumIn: "g",
  lead: "12",
  date: "",
  note: "",
};
type Changes = Readonly<Record<string, unknown>>;

const offer = (changes: Changes = {}) => read(parseMakerOffer({ ...ROW, ...changes }, "USD"));
function faults(changes: Changes, currency: "USD" | "EUR" = "USD") {
  const parsed = parseMakerOffer({ ...ROW, ...changes }, currency);
  return parsed.ok ? [] : parsed.faults.map(({ field, code, sentence }) => [field, code, sentence] as const);
}
const minimumOf = (changes: Changes) => {
  const { minimum } = offer(changes);
  if (minimum?.kind === "weight") return `${minimum.weight.grams.value()} g`;
  return minimum && `${minimum.money.currency} ${minimum.money.amount.value()}`;
};

describe("one class of a maker's price list", () => {
  test("is read as it stands; without a weight to begin at it is for every weight", () => {
    const read = offer();
    expect(read.maker).toBe("Fennick Chain");
    expect(read.from.grams.value().toString()).toBe("20");
    expect(read.surcharge.perGram.value().toString()).toBe("3.25");
    expect(read.surcharge.currency).toBe("USD");
    expect(offer({ from: "" }).from.grams.isZero()).toBe(true);
  });

  test("14K is 14/24 and 585 is 585/1000; all is every mark", () => {
    expect(offer({ mark: "14 kt" }).mark?.share.over.toString()).toBe("14");
    expect(offer({ mark: 585 }).mark?.share.value().toString()).toBe("0.585");
    expect(offer({ mark: " All" }).mark).toBeUndefined();
  });

  test("a minimum in g, kg, dwt, ozt is grams exactly (UCUM: 1 dwt is 1.55517384 g, 1 ozt 31.1034768 g)", () => {
    expect(minimumOf({})).toBe("100 g");
    expect(minimumOf({ minimum: 0.1, minimumIn: "kg" })).toBe("100 g");
    expect(minimumOf({ minimumIn: "dwt" })).toBe("155.517384 g");
    expect(minimumOf({ minimum: "5", minimumIn: "OZT" })).toBe("155.517384 g");
  });

  test("or money of the workbook, by that word or by its letters; nothing and 0 are none, whatever is said beside", () => {
    expect(minimumOf({ minimum: "500", minimumIn: "money" })).toBe("USD 500");
    expect(minimumOf({ minimum: "500", minimumIn: "usd", currency: "USD" })).toBe("USD 500");
    expect(offer({ minimum: "" }).minimum).toBeUndefined();
    expect(offer({ minimum: 0, minimumIn: "" }).minimum).toBeUndefined();
  });

  test("without a currency of its own any amounts are taken as they are", () => {
    expect(read(parseMakerOffer({ ...ROW, currency: "EUR" }, NO_CURRENCY)).surcharge.currency).toBe(NO_CURRENCY);
  });
});

describe("a class that cannot be used says which cell, what was found and what would be right", () => {
  test.each([
    [{ surcharge: "" }, "surcharge", "blank", "Surcharge per g: found nothing; give what the maker adds"],
    [{ surcharge: "-1" }, "surcharge", "outOfRange", 'Surcharge per g: found "-1"'],
    [{ surcharge: "3,25" }, "surcharge", "notANumber", "a comma where a point would be right"],
    [{ maker: "  " }, "maker", "blank", "Maker: found nothing; give the maker's name"],
    [{ mark: "" }, "mark", "blank", 'or "all" where the price is the same for every mark'],
    [{ mark: "gold" }, "mark", "unknownMark", 'Mark: found "gold"'],
    [{ mark: 1 }, "mark", "ambiguousMark", "may be 1 karat or pure gold"],
    [{ from: "-5" }, "from", "outOfRange", "grams of one chain from 0"],
    [{ minimum: "many" }, "minimum", "notANumber", 'Minimum order: found "many"'],
    [{ minimumIn: "" }, "minimumIn", "blank", "found nothing beside a minimum of 100; give g, kg, dwt, ozt or"],
    [{ minimumIn: "boxes" }, "minimumIn", "unknownWord", 'found "boxes", which is no unit of a minimum'],
    // An ounce of gold is a troy one; "oz" does not say so.
    [{ minimumIn: "oz" }, "minimumIn", "unknownWord", 'found "oz"'],
    [{ minimumIn: "EUR" }, "minimumIn", "currencyMismatch", "found EUR, and the workbook's amounts are in USD"],
    [{ currency: "EUR" }, "currency", "currencyMismatch", "Currency: found EUR"],
    [{ currency: "gold" }, "currency", "unknownWord", 'found "gold", which is no currency'],
  ] as const)("%j", (changes, field, code, said) => {
    const found = faults(changes);
    expect(found.map(([where, what]) => [where, what])).toEqual([[field, code]]);
    expect(found[0]?.[2]).toContain(said);
  });

  test("all its faults at once", () => {
    const found = faults({ maker: "", mark: "", surcharge: "", minimumIn: "boxes", currency: "EUR" });
    expect(found.map(([field]) => field)).toEqual(["maker", "mark", "surcharge", "currency", "minimumIn"]);
  });

  test("amounts of the workbook's own currency are no fault", () => {
    expect(faults({ currency: "EUR" }, "EUR")).toEqual([]);
  });
});
