import { describe, expect, test } from "vitest";
import type { CostingErrorCode, Fault } from "../../../src/exact/errors";
import { Quotient } from "../../../src/exact/quotient";
import {
  LINE_KEYS,
  LINE_LABELS,
  type LineKey,
  ORDER_KEYS,
  ORDER_LABELS,
  type OrderKey,
} from "../../../src/order/fields";
import { parseOrder } from "../../../src/order/order";
import { ORDER, orderOf, type Record_, ratesOf } from "../orders";
import { orderOfRow } from "../typedorders";

const RATES = ratesOf();
/** A flat row: what an order says once, and its one line. */
const ROW_KEYS = [...ORDER_KEYS, ...LINE_KEYS] as const;
const ROW_LABELS = { ...ORDER_LABELS, ...LINE_LABELS };
const parseRow = (row: Record_, rates = RATES) => parseOrder(orderOfRow(row), rates);

function faultsOf(changes: Record_, rates = RATES): readonly Fault[] {
  const parsed = parseRow({ ...ORDER, ...changes }, rates);
  return parsed.ok ? [] : parsed.faults;
}

function lineOf(changes: Record_) {
  const line = orderOf(changes).lines[0];
  if (!line) throw new Error("an order without a line");
  return line;
}

const text = (value: Quotient) => value.value().toString();

describe("an order as it is typed", () => {
  test("24 in at 4 links an inch are 96 links (common practice)", () => {
    expect(text(lineOf({}).links)).toBe("96");
  });

  test.each([
    ["24", "in", "4", "in", "0", "96"],
    ["24", "in", "4", "in", "0.5", "94"],
    ["60.96", "cm", "4", "in", "0", "96"], // 24 in
    ["609.6", "mm", "4", "in", "0", "96"],
    ["50", "cm", "2", "cm", "2", "96"], // 48 x 2
    ["50", "cm", "1.5", "cm", "0", "75"],
    ["20", "in", "1", "cm", "0", "51"], // 50.8
  ])(
    "%s %s at %s links per %s, clasp %s: %s links (hand arithmetic)",
    (length, lengthUnit, linksPer, linksPerUnit, claspLength, links) => {
      expect(text(lineOf({ length, lengthUnit, linksPer, linksPerUnit, claspLength }).links)).toBe(links);
    },
  );

  test("number cells and texts are read alike", () => {
    const cells = lineOf({ mark: 750, length: 24, linksPer: 4, linkWeight: 0.1 + 0.2, quantity: 2 });
    const typed = lineOf({ mark: "750", length: "24", linksPer: "4", linkWeight: "0.3", quantity: "2" });
    expect(text(cells.linkGroups[0]?.linkWeight.grams ?? Quotient.zero)).toBe("0.3");
    expect(text(typed.linkGroups[0]?.linkWeight.grams ?? Quotient.zero)).toBe("0.3");
    expect(cells.mark.share.equals(typed.mark.share)).toBe(true);
    expect([text(cells.links), text(cells.quantity)]).toEqual(["96", "2"]);
  });

  test.each([
    "claspLength",
    "claspWeight",
    "claspCost",
    "stoneCount",
    "stonePrice",
    "settingFee",
    "spot",
    "discount",
    "plated",
  ] as const)("%s may stay blank", (key) => {
    for (const blank of ["", " ", null, undefined]) expect(faultsOf({ [key]: blank })).toEqual([]);
  });

  test("spot and setting fee left blank are the workshop's", () => {
    const order = orderOf({ stoneCount: "1" });
    expect(order.spot.amount.equals(RATES.spot.amount)).toBe(true);
    expect(order.lines[0]?.stones[0]?.settingFee.amount.equals(RATES.settingFee.amount)).toBe(true);
  });
});

describe("a customer's name or a design", () => {
  test.each([
    '=HYPERLINK("http://x","y")',
    "+49 30 1234",
    "-Anna-",
    "@home",
    "=1+1",
    "<img src=x onerror=1>",
    "{{total}}",
    "O'Neil & Söhne",
    "'=1",
  ])("%j is text and stays text", (words) => {
    const order = orderOf({ customer: words, design: words });
    expect(order.customer).toBe(words);
    expect(order.lines[0]?.design).toBe(words);
  });
});

describe("bad input: one sentence that names the field, what was found and what would be right", () => {
  const rows: readonly (readonly [OrderKey | LineKey, unknown, CostingErrorCode, RegExp])[] = [
    ["customer", "", "blank", /^Customer: found nothing; give the customer's name$/],
    ["customer", "x".repeat(201), "tooLarge", /^Customer: found "x+…" of 201 characters; give at most 200$/],
    ["design", "  ", "blank", /^Design: found nothing; give the name of the design$/],
    ["mark", "", "blank", /^Mark: found nothing; give a mark such as "14K"/],
    ["mark", "25K", "unknownMark", /^Mark: found "25K", which is not a fineness .*give a mark such as "14K"/],
    ["mark", "14.5.2", "unknownMark", /^Mark: found "14.5.2"/],
    ["mark", "1", "ambiguousMark", /^Mark: found 1, which may be 1 karat or pure gold; give "1K" or 1000$/],
    ["colour", "", "blank", /^Colour: found nothing; give one of "yellow", "rose", "white", "green", "own"$/],
    ["colour", "blue", "unknownWord", /^Colour: found "blue"; give one of "yellow"/],
    ["plated", "a bit", "unknownWord", /^Plating: found "a bit"; give one of "as usual", "plated", "not plated"$/],
    ["length", "", "blank", /^Length: found nothing; give a length above 0, such as 24$/],
    ["length", "0", "outOfRange", /^Length: found "0"; give a length above 0/],
    ["length", "-24", "outOfRange", /^Length: found "-24"/],
    ["length", "14.5.2", "notANumber", /^Length: found "14.5.2", which is not a plain number/],
    ["length", "24 in", "notANumber", /^Length: found "24 in"/],
    ["length", "24,5", "notANumber", /^Length: found "24,5", which has a comma where a point would be right/],
    ["length", "1e308", "notANumber", /^Length: found "1e308"/],
    ["length", 1e308, "tooLarge", /^Length: found 1e\+308, which is too large to compute with/],
    ["lengthUnit", "yard", "unknownWord", /^Length unit: found "yard"; give one of "in", "cm", "mm"$/],
    ["linksPer", "0", "outOfRange", /^Links per length: found "0"; give links in one inch or centimetre, such as 4$/],
    ["linksPerUnit", "mm", "unknownWord", /^Links counted per: found "mm"; give one of "in", "cm"$/],
    ["linkWeight", "", "blank", /^Weight of one link: found nothing; give grams above 0/],
    ["linkWeight", "0", "outOfRange", /^Weight of one link: found "0"; give grams above 0, such as 2.05$/],
    ["linkWeight", "-2", "outOfRange", /^Weight of one link: found "-2"/],
    ["linkWeight", "two", "notANumber", /^Weight of one link: found "two", which is not a plain number/],
    ["linkWeight", "1000001", "outOfRange", /^Weight of one link: found "1000001"/],
    ["claspLength", "-1", "outOfRange", /^Clasp length: found "-1"/],
    ["claspWeight", "-1", "outOfRange", /^Clasp weight: found "-1"/],
    ["claspCost", "-0.01", "outOfRange", /^Clasp cost: found "-0.01"/],
    ["stoneCount", "2.5", "outOfRange", /^How many links: found "2.5"; give a whole number from 0, such as 12$/],
    ["stonePrice", "free", "notANumber", /^Price of one stone: found "free"/],
    ["settingFee", "-1", "outOfRange", /^Setting fee: found "-1"/],
    ["quantity", "", "blank", /^Quantity: found nothing; give a whole number of pieces from 1 to 1000$/],
    ["quantity", "0", "outOfRange", /^Quantity: found "0"/],
    ["quantity", "1.5", "outOfRange", /^Quantity: found "1.5"/],
    ["spot", "0", "outOfRange", /^Spot: found "0"; give the money for one troy ounce of fine gold/],
    ["spot", "=1+1", "notANumber", /^Spot: found "=1\+1"/],
    ["discount", "1", "outOfRange", /^Discount: found "1"; give a share from 0 to below 1, such as 0.05 or 5 %$/],
    ["discount", "105 %", "outOfRange", /^Discount: found "105 %"/],
    ["discount", "%", "notANumber", /^Discount: found "%"/],
    ["discount", "-0.1", "outOfRange", /^Discount: found "-0.1"/],
  ];
  test.each(rows)("%s %j", (key, value, code, sentence) => {
    expect(faultsOf({ [key]: value })).toMatchObject([{ field: key, code, sentence: expect.stringMatching(sentence) }]);
  });

  test.each(ROW_KEYS)("%s that is no text and no number is refused or is its words, never a crash", (key) => {
    for (const value of [true, Number.NaN, {}, [], Symbol.iterator])
      expect(() => faultsOf({ [key]: value })).not.toThrow();
  });
});

describe("lengths that do not fit together", () => {
  test.each([
    ["2", "2"],
    ["2", "2.5"],
  ])("a chain of %s in with a clasp of %s in", (length, claspLength) => {
    // Inches of 25.4 mm.
    expect(faultsOf({ length, claspLength })).toMatchObject([
      {
        field: "length",
        code: "outOfRange",
        sentence: expect.stringMatching(
          /^Length: found 50.8 mm, no longer than the clasp of (50.8|63.5) mm; give a length above/,
        ),
        line: 0,
      },
    ]);
  });

  test("10,000 links", () => {
    // 2500 in at 4 links an inch.
    expect(faultsOf({ length: "2500" })).toMatchObject([
      {
        field: "length",
        code: "outOfRange",
        sentence: expect.stringMatching(
          /^Length: found a chain of 10000 links; check length and links per length.* at most 5000/,
        ),
      },
    ]);
  });

  test("5,000 links are the most", () => {
    expect(faultsOf({ length: "1250" })).toEqual([]);
    expect(faultsOf({ length: "1250.2" })).toHaveLength(1); // 5000.8
  });

  test("no room for one link", () => {
    expect(faultsOf({ length: "0.1" })).toMatchObject([
      { field: "length", code: "outOfRange", sentence: expect.stringContaining("without room for one link") },
    ]);
  });
});

describe("plating without a cost on Rates", () => {
  test.each([{ colour: "white" }, { colour: "yellow", plated: "plated" }])(
    "%j is asked for, and says where to give it",
    (changes) => {
      expect(faultsOf(changes)).toMatchObject([
        {
          field: "plated",
          code: "blank",
          sentence: "Plating: found no plating cost on Rates; give it there, or choose not plated",
        },
      ]);
    },
  );

  test("is not asked for where nothing is plated, or where plating is free", () => {
    expect(faultsOf({ colour: "white", plated: "not plated" })).toEqual([]);
    expect(faultsOf({ colour: "white" }, ratesOf({ plating: "0" }))).toEqual([]);
  });
});

describe("several faults", () => {
  test("are gathered at once, in the order of the form", () => {
    const bad = { customer: "", mark: "25K", length: "14.5.2", linkWeight: "-1", quantity: "0", discount: "1" };
    expect(faultsOf(bad).map((fault) => fault.field)).toEqual([
      "customer",
      "discount",
      "mark",
      "quantity",
      "length",
      "linkWeight",
    ]);
  });

  test("of an empty form are every field that is needed", () => {
    const parsed = parseRow({});
    expect(parsed.ok ? [] : parsed.faults.map((fault) => [fault.field, fault.code])).toEqual(
      [
        "customer",
        "design",
        "mark",
        "colour",
        "quantity",
        "length",
        "lengthUnit",
        "linksPer",
        "linksPerUnit",
        "linkWeight",
      ].map((key) => [key, "blank"]),
    );
  });

  test("between fields are gathered too: a chain shorter than its clasp and plating nobody has priced", () => {
    expect(faultsOf({ length: "2", claspLength: "3", colour: "white" }).map((fault) => fault.field)).toEqual([
      "plated",
      "length",
    ]);
  });

  test("between fields are gathered while others are still empty", () => {
    const faults = faultsOf({ customer: "", length: "2", claspLength: "3" });
    expect(faults.map((fault) => fault.field)).toEqual(["customer", "length"]);
  });

  test("each begin with the words of their field", () => {
    const parsed = parseRow({});
    for (const fault of parsed.ok ? [] : parsed.faults) {
      expect(fault.sentence.startsWith(`${ROW_LABELS[fault.field as keyof typeof ROW_LABELS]}: `)).toBe(true);
    }
  });
});

test("what was typed is not lost: the record stays as it was, right or wrong", () => {
  const wrong = { ...ORDER, customer: "  Anna ", mark: "25K", length: "abc" };
  const kept = Object.freeze({ ...wrong });
  parseRow(kept);
  expect(kept).toEqual(wrong);
  const right = Object.freeze({ ...ORDER });
  parseRow(right);
  expect(right).toEqual(ORDER);
});

test("an order, its lines and its faults are frozen", () => {
  const parsed = parseRow(ORDER);
  expect(Object.isFrozen(parsed)).toBe(true);
  expect(Object.isFrozen(parsed.ok && parsed.value)).toBe(true);
  expect(Object.isFrozen(parsed.ok && parsed.value.lines)).toBe(true);
  expect(Object.isFrozen(parsed.ok && parsed.value.lines[0])).toBe(true);
  const refused = parseRow({});
  expect(Object.isFrozen(refused)).toBe(true);
  expect(Object.isFrozen(!refused.ok && refused.faults)).toBe(true);
});
