import { describe, expect, test } from "vitest";
import { linkWeightOf, parseListedChain } from "../../../src/makeorbuy/listedchain";
import type { OrderLine } from "../../../src/order/orderline";
import { orderOf, type Record_, ratesOf } from "../orders";

const NONE = { mark: "", linkWeight: "", quantity: "" };

function ordered(record: Record_): OrderLine {
  const [line] = orderOf(record, ratesOf({ plating: "40" })).lines;
  if (!line) throw new Error("no line");
  return line;
}

/** Karats or parts of a thousand, grams of a link and pieces of a list's line; or what is wrong with it. */
function lineOf(typed: Partial<typeof NONE>, order?: OrderLine, changes: Record_ = {}): string {
  const parsed = parseListedChain({ ...NONE, ...typed }, order, ratesOf(changes));
  if (!parsed.ok) return parsed.faults.map(({ sentence }) => sentence).join(" ");
  const { mark, linkGroups, quantity } = parsed.value;
  return [mark.share.over, linkGroups[0]?.linkWeight.grams.value(), quantity.value()].join(" ");
}

describe("a list's line", () => {
  const order = ordered({ mark: "18K", linkWeight: "1.35", quantity: "3" });

  test("takes from the order what its fields leave empty", () => {
    expect(lineOf({}, order)).toBe("18 1.35 3");
    expect(lineOf({ mark: "14K", quantity: "2" }, order)).toBe("14 1.35 2");
    expect(lineOf({ mark: "14K" })).toBe("14 1 1");
  });

  test("asks for a link where labour counts links, and for a mark always", () => {
    const missing = lineOf({}, undefined, { labourPerLink: "0.85" });
    expect(missing).toContain("Weight of one link: found nothing");
    expect(missing).toContain("Mark: found nothing");
    expect(lineOf({ mark: "14K", linkWeight: "2" }, undefined, { labourPerLink: "0.85" })).toBe("14 2 1");
  });

  test("takes the order's link weight as it is: of 2 yellow and 1 white link of 1 g and 2 g, 4/3 g (hand arithmetic)", () => {
    const mixed = ordered({ pattern: "YYW", length: "0.75", linkWeight: "1", linkWeightWhite: "2", claspLength: "" });
    const { over, under } = linkWeightOf(mixed).grams;
    expect(over.times(3).equals(under.times(4))).toBe(true);
    const parsed = parseListedChain(NONE, mixed, ratesOf());
    expect(parsed.ok && parsed.value.linkGroups[0]?.linkWeight.grams.equals(linkWeightOf(mixed).grams)).toBe(true);
  });
});
