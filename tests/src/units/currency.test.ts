import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { data } from "currency-codes";
import { XMLParser } from "fast-xml-parser";
import { describe, expect, test } from "vitest";
import { type Currency, minorDigits, NO_CURRENCY, parseCurrency } from "../../../src/units/currency";
import { published } from "../published";
import { expectFault } from "../reference";

interface IsoEntry {
  readonly Ccy?: string;
  readonly CcyMnrUnts?: string;
}

function isoListOne(): ReadonlyMap<string, string> {
  const file = createRequire(import.meta.url).resolve("currency-codes/iso-4217-list-one.xml");
  const list = new XMLParser({ parseTagValue: false }).parse(readFileSync(file, "utf8"));
  const entries: readonly IsoEntry[] = list.ISO_4217.CcyTbl.CcyNtry;
  return new Map(entries.flatMap((entry) => (entry.Ccy ? [[entry.Ccy, entry.CcyMnrUnts ?? ""] as const] : [])));
}

describe("ISO 4217 list one (XML in currency-codes)", () => {
  const list = isoListOne();
  const withMinorUnit = [...list].filter(([, digits]) => /^\d$/.test(digits));
  const without = [...list].filter(([, digits]) => !/^\d$/.test(digits));

  test("the list is read whole", () => {
    expect(list.size).toBeGreaterThan(170);
    expect(withMinorUnit.length).toBeGreaterThan(150);
    expect(without.map(([code]) => code)).toContain("XAU");
  });

  test("every currency with a minor unit is known with the list's digits", () => {
    const ours = withMinorUnit.map(([code]) => [code, String(minorDigits(parseCurrency(code)))]);
    expect(ours).toEqual(withMinorUnit);
  });

  test("nothing without a minor unit is a currency: no gold, no funds, no test code", () => {
    for (const [code] of without) expectFault(() => parseCurrency(code), "unknownWord", code, "no currency");
  });

  test("no three letters outside the list are a currency", () => {
    const letters = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"];
    const known = letters
      .flatMap((a) => letters.flatMap((b) => letters.map((c) => a + b + c)))
      .filter((code) => {
        try {
          return parseCurrency(code) === code;
        } catch {
          return false;
        }
      });
    expect(known.sort()).toEqual(withMinorUnit.map(([code]) => code).sort());
  });

  test("the package's own reading of the list agrees", () => {
    for (const { code, digits } of data) {
      if (/^\d$/.test(list.get(code) ?? "")) expect([code, minorDigits(parseCurrency(code))]).toEqual([code, digits]);
    }
  });
});

const { source, rows } = published<{ source: string; rows: readonly { code: string; digits: string }[] }>(
  "minor-units.json",
);
test.each(rows)(`$code has $digits digits (${source})`, ({ code, digits }) => {
  if (digits === "N.A.") expectFault(() => parseCurrency(code), "unknownWord");
  else expect(minorDigits(parseCurrency(code))).toBe(Number(digits));
});

test("three letters are read whatever their case and the spaces around them", () => {
  expect(parseCurrency(" usd ")).toBe("USD");
});

test.each(["US", "dollars", "$", 840, true, "constructor"])(
  "%j is no currency, and the sentence says what would be",
  (value) => {
    expectFault(() => parseCurrency(value, "Currency"), "unknownWord", "Currency: found", '"USD"');
  },
);

test("a blank currency is named blank", () => {
  expectFault(() => parseCurrency("", "Currency"), "blank", "Currency: found nothing");
});

test("an amount without currency has no minor unit to round to", () => {
  expect(() => minorDigits(NO_CURRENCY)).toThrow("no minor unit");
  expect(() => minorDigits("XAU" as Currency)).toThrow("no minor unit");
});
