import { describe, expect, test } from "vitest";
import { parseRates, RATE_KEYS, RATE_ROWS, readQuoteNumber, showQuoteNumber } from "../../../src/index";
import type { BookedQuote } from "../../../taskpane/excel/quote/quotebook";
import { risksOf } from "../../../taskpane/openquotes/openquotes";
import { risksHead, riskWords } from "../../../taskpane/openquotes/riskmessages";

/** 100 g of fine gold, 2 lost: at 25.00 a gram 2,550 + 153 casting + 50 labour = 2,753; x 1.3 is 3,579 (hand arithmetic). */
const LINE = {
  design: "Plain curb",
  mark: "1000",
  colour: "yellow",
  quantity: "1",
  length: "12.5",
  lengthUnit: "in",
  linksPer: "4",
  linksPerUnit: "in",
  linkWeight: "2",
};
const AT_25 = 777.58692;
const TODAY = "2026-11-25";
/** Excel's serial number of that day: 46,023 for 2026-01-01, 328 days on. */
const DAY = 46351;

function rates(spot: string) {
  const start = Object.fromEntries(RATE_KEYS.map((key) => [key, RATE_ROWS[key].start]));
  const parsed = parseRates({ ...start, spot, loss: "2", lossBasis: "grams" });
  if (!parsed.ok) throw new Error("no rates");
  return parsed.value;
}

function row(
  written: string,
  cells: Partial<BookedQuote["cells"]> = {},
  order: Record<string, string> = {},
): BookedQuote {
  const number = readQuoteNumber(written);
  if (!number) throw new Error(`${written} is no number`);
  return {
    number,
    cells: {
      number: written,
      date: DAY - 3,
      customer: "Ada Quillfeather",
      design: "Plain curb",
      total: 3579,
      currency: "USD",
      spot: AT_25,
      validUntil: DAY + 4,
      status: "quoted",
      order: JSON.stringify({ customer: "Ada Quillfeather", ...order, lines: [LINE] }),
      ...cells,
    },
  };
}

const at35 = rates("1088.621688");
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const judged = (...quotes: readonly BookedQuote[]) => risksOf(quotes, at35, TODAY);
const names = (risks: ReturnType<typeof judged>) => risks.open.map(({ quote }) => showQuoteNumber(quote.number));
const words = (quote: BookedQuote, now = at35) => {
  const [risk] = risksOf([quote], now, TODAY).open;
  return risk ? riskWords(risk, now).map(({ text }) => plain(text)) : [];
};

describe("a price given at 25.00 a gram, gold now at 35.00 (hand arithmetic)", () => {
  test("costs 102 x 35 + 203 = 3,773 and loses 194; its spots are those of 29.589… and 33.098… a gram", () => {
    // 0.9 x 3,579 - 203 = 3,018.1 for 102 g; 3,579 - 203 = 3,376 for 102 g; each x 31.1034768, down to the cent.
    expect(words(row("1001"))).toEqual([
      "Loses USD 194.00: brings USD 3,579.00, costs USD 3,773.00.",
      "Keeps 10% up to a spot of USD 920.32, loses money above USD 1,029.46. Quoted at USD 777.58692.",
    ]);
  });

  test("the kept price is what the row says, not what today would ask", () => {
    expect(words(row("1001", { total: 5000 }))[0]).toBe("Leaves 24.5%: brings USD 5,000.00, costs USD 3,773.00.");
    expect(words(row("1001", { total: 4000 }))[0]).toBe(
      "Leaves 5.7%, below your 10%: brings USD 4,000.00, costs USD 3,773.00.",
    );
  });

  test("gold of the customer's, used for all of it, is no risk", () => {
    const own = { ownGoldWeight: "102", ownGoldMark: "1000", ownGoldUse: "used" };
    expect(words(row("1001", {}, own))).toEqual([
      "Leaves 23.1%: brings USD 3,579.00, costs USD 2,753.00.",
      "Keeps 10% at any spot, never loses money. Quoted at USD 777.58692.",
      "102.00 g of its 102.00 g of fine gold are the customer's own and follow no spot.",
    ]);
  });

  test("a price settled by final weight says at which weight it was reckoned", () => {
    expect(words(row("1001", {}, { settled: "by final weight" })).at(-1)).toMatch(/^Settled by final weight/);
  });
});

test("the worst comes first; what has ended or is somebody's own words is named apart", () => {
  const risks = judged(
    row("1001", { total: 4000 }),
    row("1002"),
    row("1003", { total: 5000 }),
    row("1004", { validUntil: DAY - 1 }),
    row("1005", { status: "on hold" }),
    row("1006", { status: "at the caster" }),
    row("1007", { total: 3600, status: "agreed", validUntil: DAY - 1 }),
  );
  expect(names(risks)).toEqual(["1002", "1007", "1001", "1003"]);
  expect([risks.ended, risks.unknownStatus, risks.unread]).toEqual([["1004"], ["1005"], []]);
  expect(plain(risksHead(risks, at35))).toBe(
    "Of 4 open quotes, at today's spot of USD 1,088.621688: 2 would lose money and one falls below your least margin of 10%.",
  );
});

test("nothing in danger, and nothing open, are said as well", () => {
  const risks = risksOf([row("1001")], rates(String(AT_25)), TODAY);
  expect(plain(risksHead(risks, rates(String(AT_25))))).toBe(
    "At today's spot of USD 777.58692 every one keeps your least margin of 10%: one open quote.",
  );
  expect(risksHead(judged(), at35)).toMatch(/^No open quotes/);
});

test("a row that cannot be judged says what was found and what would be right, and hides no other", () => {
  const risks = judged(
    row("1001", { total: "lots" }),
    row("1002", { order: "" }),
    row("1003", { currency: "EUR" }),
    row("1004", {}, { discount: "many" }),
    row("1005"),
  );
  expect(names(risks)).toEqual(["1005"]);
  expect(risks.unread).toEqual([
    'Quote 1001: its Total in the Quotes table is "lots", no amount. Put there what the customer pays.',
    expect.stringMatching(/^Quote 1002 cannot be opened: its Order cell/),
    expect.stringMatching(/^Quote 1003 is in EUR, and Rates are in USD/),
    expect.stringMatching(/^Quote 1004: Discount: found "many"/),
  ]);
});
