import fc from "fast-check";
import { expect, test } from "vitest";
import { csvOf } from "../../../taskpane/designs/pricecsv";
import { readCsv } from "../../../taskpane/wording/csvtext";

test("lines end with CR LF; commas, quotes and line breaks are quoted (RFC 4180, section 2)", () => {
  expect(
    csvOf([
      ["aaa", "bbb"],
      ["zzz", 'b "b" b'],
      ["a,b", "line\r\nbreak"],
    ]),
  ).toBe('aaa,bbb\r\nzzz,"b ""b"" b"\r\n"a,b","line\r\nbreak"\r\n');
});

test("what a spreadsheet would take for a formula gets an apostrophe; a plain number below zero stays", () => {
  expect(csvOf([["=1+1", "+1", "-1+2", "@SUM(A1)", "\tx", "\rx", "-12.50", "14K", "="]])).toBe(
    "'=1+1,'+1,'-1+2,'@SUM(A1),'\tx,\"'\rx\",-12.50,14K,'=\r\n",
  );
});

test("whatever the texts, they come back, and none begins as a formula", () => {
  fc.assert(
    fc.property(fc.array(fc.array(fc.string(), { minLength: 2, maxLength: 4 }), { minLength: 1 }), (rows) => {
      // A lone carriage return outside quotes is written quoted; rows of one empty cell are no rows.
      const back = readCsv(`sep=,\r\n${csvOf(rows)}`).rows.slice(0, -1);
      expect(back.map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@\t\r])/, "")))).toEqual(
        rows.map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@\t\r])/, ""))),
      );
      for (const cell of back.flat()) if (!/^-\d+(\.\d+)?$/.test(cell)) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
    }),
  );
});
