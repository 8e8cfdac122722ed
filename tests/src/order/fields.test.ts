import { describe, expect, test } from "vitest";
import { keyOfHeader, plainHeader } from "../../../src/designs/headerwords";
import { CostingError } from "../../../src/exact/errors";
import { Quotient } from "../../../src/exact/quotient";
import { EXTRA_FIELDS, EXTRA_KEYS, EXTRA_LABELS } from "../../../src/order/extrafields";
import type { OrderField } from "../../../src/order/fieldkinds";
import {
  LINE_FIELDS,
  LINE_KEYS,
  LINE_LABELS,
  ORDER_FIELDS,
  ORDER_KEYS,
  ORDER_LABELS,
  STONE_KEYS,
  standInFor,
} from "../../../src/order/fields";
import { parseOrder } from "../../../src/order/order";
import { ORDER, type Record_, ratesOf, read } from "../orders";

const RATES = ratesOf({ plating: "40", settingFee: "7", breakage: "0.25", tolerance: "0.04", ownGoldShare: "0.9" });
const ROW = { ...ORDER_FIELDS, ...LINE_FIELDS };
const ALL: readonly (readonly [string, OrderField<unknown>])[] = [ORDER_FIELDS, LINE_FIELDS, EXTRA_FIELDS].flatMap(
  (fields) => Object.entries<OrderField<unknown>>(fields),
);

/** An order in which every field counts: each colour and kind of stone, and the customer's own gold. */
const FULL: Record_ = {
  ...ORDER,
  priceBy: "markup",
  priceFigure: "0.3",
  settled: "by final weight",
  ownGoldWeight: "5",
  ownGoldMark: "14K",
  mark: "585",
  colour: "yellow",
  pattern: "YRWG",
  linkWeightRose: "2",
  linkWeightWhite: "2",
  linkWeightGreen: "2",
  lengthGiven: "neck",
  ease: "1",
  stonesOn: "every n-th link",
  stoneEvery: "3",
  stonePrice: "3",
  claspStoneCount: "2",
  claspStonePrice: "3",
  linePriceBy: "margin",
  linePriceFigure: "0.4",
};
/** Alike, of an alloy of the workshop's own. */
const OWN = { ...FULL, colour: "own", pattern: "", colourName: "sand", composition: "Au 600 Ag 400" };
const EXTRA: Record_ = { text: "Gift box", amount: "15", cost: "2" };
/** Longer than any text may be, and neither a figure nor a word of a choice. */
const STRANGE = "§".repeat(300);

const parsed = (row: Record_, extra = EXTRA, rates = RATES) =>
  parseOrder({ order: row, lines: [row], extras: [extra] }, rates);
const shown = (value: unknown) =>
  JSON.stringify(value, (_, part: unknown) => (part instanceof Quotient ? part.value().toString() : part));

describe("every declared field", () => {
  test("has a label of its own, so that a fault or a header names one field only", () => {
    const labels = ALL.map(([, { label }]) => label.toLowerCase());
    expect(labels.filter((label, index) => labels.indexOf(label) !== index)).toEqual([]);
    expect([ORDER_KEYS, LINE_KEYS, EXTRA_KEYS]).toEqual([ORDER_LABELS, LINE_LABELS, EXTRA_LABELS].map(Object.keys));
  });

  test.each(ALL)("has a reader that names it where it cannot be read: %s", (_, { label, read: readField }) => {
    const reading = () => {
      const value = readField(STRANGE);
      // A figure of which another field says what it counts is read once that is known.
      if (typeof value === "function") value("markup");
    };
    expect(reading).toThrow(CostingError);
    expect(reading).toThrow(`${label}: found`);
  });

  test("is read in an order, and its fault stands at its own place", () => {
    expect(parsed(FULL).ok && parsed(OWN).ok).toBe(true);
    for (const key of [...ORDER_KEYS, ...LINE_KEYS]) {
      const base = key === "composition" || key === "colourName" ? OWN : FULL;
      const read = parsed({ ...base, [key]: STRANGE });
      const faults = read.ok ? [] : read.faults.filter(({ field }) => field === key);
      expect(
        faults.map(({ sentence }) => sentence.split(":")[0]),
        key,
      ).toEqual([ROW[key].label]);
    }
    for (const key of EXTRA_KEYS) {
      const read = parsed(FULL, { ...EXTRA, [key]: STRANGE });
      expect(read.ok ? [] : read.faults.map(({ field, extra }) => [field, extra]), key).toEqual([[key, 0]]);
    }
  });

  test("of an order or a line is named by a header, in each of its words", () => {
    for (const key of [...ORDER_KEYS, ...LINE_KEYS]) {
      const { label, alsoCalled } = ROW[key];
      for (const words of [label, label.toUpperCase(), `${label} (x)`, ...alsoCalled])
        expect(keyOfHeader(words), words).toBe(key);
      for (const words of alsoCalled) expect(plainHeader(words)).toBe(words);
    }
  });
});

test("an empty choice of a row is the word that the form begins with", () => {
  const choices = ALL.filter(([, { is }]) => is === "choice");
  const needed = ["colour", "lengthUnit", "linksPerUnit"];
  for (const [key, field] of choices) {
    if (needed.includes(key)) expect(() => field.read(""), key).toThrow(`${field.label}: found nothing`);
    else if (key !== "stonesOn") expect(field.read(""), key).toBe(field.words[0]);
    for (const word of field.words) expect(field.read(` ${word.toUpperCase()} `)).toBe(word);
  }
  expect(choices.length).toBeGreaterThan(15);
});

test("only figures count anything", () => {
  for (const [key, { is, counts }] of ALL) if (counts !== undefined) expect(is, key).toBe("figure");
});

test("only a field of the same table says what another counts, and it is a choice", () => {
  for (const fields of [ORDER_FIELDS, LINE_FIELDS, EXTRA_FIELDS] as const) {
    const table: Readonly<Record<string, OrderField<unknown>>> = fields;
    for (const [key, { saidBy, is }] of Object.entries(table)) {
      if (saidBy === undefined) continue;
      expect(is, key).toBe("figure");
      expect(table[saidBy]?.is, key).toBe("choice");
    }
  }
});

test("a field left empty counts as the figure of Rates that stands in for it", () => {
  const usual = ALL.filter(([, field]) => field.usual !== undefined);
  expect(usual.map(([key]) => key)).toEqual([
    "spot",
    "deposit",
    "tolerance",
    "ownGoldShare",
    "platingMetal",
    "settingFee",
    "claspSettingFee",
    "breakage",
  ]);
  for (const [key, field] of usual) {
    const given = standInFor(field, RATES);
    // The metal is a word, and counts where a piece is plated: tests/src/trade/plating.test.ts.
    if (typeof given === "string") continue;
    const figure = given?.value().toFixed();
    // A deposit that was typed counts as the same share, but is never raised.
    const counts = (text: string | undefined) =>
      shown(parsed({ ...FULL, [key]: text })).replace(/"isDepositTyped":(true|false)/, "");
    expect(counts(""), key).toBe(counts(figure));
    expect(counts("0.55"), key).not.toBe(counts(figure));
  }
});

test("stones in the links and on the clasp are declared alike but for their names", () => {
  for (const key of Object.keys(STONE_KEYS.links) as (keyof typeof STONE_KEYS.links)[]) {
    const { label: _, read: __, ...inLinks } = LINE_FIELDS[STONE_KEYS.links[key]];
    const { label: ___, read: ____, ...onClasp } = LINE_FIELDS[STONE_KEYS.clasp[key]];
    expect(onClasp, key).toEqual(inLinks);
  }
  expect(read(parsed(FULL)).lines[0]?.stones.map(({ where }) => where)).toEqual(["links", "clasp"]);
});
