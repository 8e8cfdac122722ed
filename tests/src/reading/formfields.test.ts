import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { fieldsNamed } from "../../../src/reading/formfields";
import { parseForm } from "../../../src/reading/parse";
import { read } from "../orders";

const named = fieldsNamed({ size: "Size", kind: "Kind", note: "Note" });
const RULE = { least: "0", right: "a size from 0" };
const SHAPE = {
  size: named.number("size", RULE),
  kind: named.word("kind", ["flat", "round"]),
  note: named.text("note", "a note"),
};

describe("fields named by their labels", () => {
  test("are asked for by their label", () => {
    const parsed = parseForm(SHAPE, {});
    expect(parsed.ok ? [] : parsed.faults.map(({ field, sentence }) => [field, sentence])).toEqual([
      ["size", "Size: found nothing; give a size from 0"],
      ["kind", 'Kind: found nothing; give one of "flat", "round"'],
      ["note", "Note: found nothing; give a note"],
    ]);
  });

  test("take what stands in for nothing, and only for nothing", () => {
    const shape = {
      size: named.numberOr("size", RULE, Quotient.one),
      kind: named.wordOr("kind", ["flat", "round"], "round"),
      note: named.optionalText("note"),
    };
    const blank = read(parseForm(shape, { size: " ", kind: null }));
    expect([blank.size.toNumber(), blank.kind, blank.note]).toEqual([1, "round", ""]);
    const parsed = parseForm(shape, { size: "-1", kind: "square" });
    expect(parsed.ok ? [] : parsed.faults.map(({ field }) => field)).toEqual(["size", "kind"]);
  });

  test("are undefined where nothing may stand", () => {
    const shape = { size: named.optional("size", RULE), kind: named.optionalWord("kind", ["flat"]) };
    expect(read(parseForm(shape, {}))).toEqual({ size: undefined, kind: undefined });
    expect(read(parseForm(shape, { size: "2", kind: "FLAT" })).kind).toBe("flat");
  });
});
