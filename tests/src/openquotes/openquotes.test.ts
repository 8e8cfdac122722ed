import { expect, test } from "vitest";
import { openQuotes } from "../../../src/openquotes/openquotes";
import { readQuoteNumber } from "../../../src/order/quotenumber";
import { QUOTE_STATUSES } from "../../../src/order/quotestatus";

/** Quotes as "number standing", with "!" at the end where the last day is past. */
function sorted(...quotes: readonly string[]) {
  const read = quotes.map((text) => {
    const [, name = "", status = "", past] = /^(\S+) ?(.*?)(!?)$/.exec(text) ?? [];
    const number = readQuoteNumber(name);
    if (!number) throw new Error(text);
    return { text, number, status, ended: past === "!" };
  });
  const { open, ended, unknownStatus } = openQuotes(read);
  const texts = (some: typeof read | typeof open) => some.map(({ text }) => text);
  return { open: texts(open), ended: texts(ended), unknownStatus: texts(unknownStatus) };
}

test("gold is at risk while it is asked, quoted or agreed; from the caster on it is paid for (common practice)", () => {
  const quotes = QUOTE_STATUSES.map((status, index) => `${1001 + index} ${status}`);
  expect(sorted(...quotes)).toEqual({
    open: ["1001 asked", "1002 quoted", "1003 agreed"],
    ended: [],
    unknownStatus: [],
  });
});

test("past its last day a quote binds nobody, unless it was agreed", () => {
  expect(sorted("1001 asked!", "1002 quoted!", "1003 agreed!")).toEqual({
    open: ["1003 agreed!"],
    ended: ["1001 asked!", "1002 quoted!"],
    unknownStatus: [],
  });
});

test("the last letter of a number speaks for it", () => {
  expect(sorted("1001 quoted", "1001a quoted", "1001b quoted").open).toEqual(["1001b quoted"]);
  expect(sorted("1001b at the caster", "1001a quoted", "1001 quoted").open).toEqual([]);
  expect(sorted("1001 quoted", "1001a turned down").open).toEqual([]);
});

test("what was agreed binds until a later letter is agreed or further", () => {
  expect(sorted("1001 agreed", "1001a quoted").open).toEqual(["1001 agreed", "1001a quoted"]);
  expect(sorted("1001 agreed", "1001a turned down").open).toEqual(["1001 agreed"]);
  expect(sorted("1001 agreed", "1001a agreed").open).toEqual(["1001a agreed"]);
  expect(sorted("1001 agreed", "1001a at the caster").open).toEqual([]);
});

test("words of a person's own are counted apart, never as safe", () => {
  expect(sorted("1001 on hold", "1002 ", "1003 quoted")).toEqual({
    open: ["1003 quoted"],
    ended: [],
    unknownStatus: ["1001 on hold", "1002 "],
  });
});
