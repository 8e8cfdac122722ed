import { describe, expect, test } from "vitest";
import { decodeText, readCsv } from "../../../taskpane/wording/csvtext";

describe("a CSV text", () => {
  test.each([
    [";", 'Date;Shop;Price\r\n25.04.2026;"A; B";1.080,50\r\n26.04.2026;C;12,5\r\n'],
    [",", 'Date,Shop,Price\n2026-04-25,"A; B","1,080.50"\n2026-04-26,C,12.5\n'],
    ["\t", "Date\tShop\tPrice\n2026-04-25\tA; B\t1.080,50\n"],
  ])("is separated by %j where its lines are", (separator, text) => {
    const read = readCsv(text);
    expect(read.separator).toBe(separator);
    expect(read.rows[0]).toEqual(["Date", "Shop", "Price"]);
    expect(read.rows[1]?.[1]).toBe("A; B");
  });

  test("with a decimal comma in a single line keeps its semicolons", () => {
    expect(readCsv("Bid;2650,5").rows).toEqual([["Bid", "2650,5"]]);
    expect(readCsv('a;b\n1,5;"x;y"').rows).toEqual([
      ["a", "b"],
      ["1,5", "x;y"],
    ]);
  });

  test("may begin with a byte order mark, or with the line in which Excel names the separator", () => {
    expect(readCsv("\uFEFFa,b\n1,2").rows[0]).toEqual(["a", "b"]);
    expect(readCsv("sep=|\r\na,b|c\r\n").rows[0]).toEqual(["a,b", "c"]);
  });

  test("has quoted quotes, commas and line breaks (RFC 4180, section 2), and empty lines that count as rows", () => {
    expect(readCsv('a,b\r\n\r\n"x ""y"", z","line\r\nbreak"').rows).toEqual([
      ["a", "b"],
      [""],
      ['x "y", z', "line\r\nbreak"],
    ]);
  });
});

test("the bytes of a file are UTF-8, UTF-16 with its mark, or else Windows-1252", () => {
  const bytes = (...values: number[]) => decodeText(new Uint8Array(values));
  expect(bytes(0xc3, 0xbc)).toBe("ü");
  expect(bytes(0xef, 0xbb, 0xbf, 0x61)).toBe("a");
  expect(bytes(0xff, 0xfe, 0xfc, 0x00)).toBe("ü");
  expect(bytes(0xfe, 0xff, 0x00, 0xfc)).toBe("ü");
  // Node 20 takes Windows-1252 for Latin 1, where the euro sign is missing: that one is tried in the browser.
  expect(bytes(0x66, 0xfc, 0x72)).toBe("für");
});
