import { describe, expect, test } from "vitest";
import { parseRates, type Rates } from "../../../src/index";
import { sayMetal, sayOurs } from "../../../taskpane/market/checkmessage";
import { checkTyped, keptLinks } from "../../../taskpane/market/pricecheck";
import { RATES, type Record_, read } from "../../src/orders";

/** 25.00 a gram at 250 ‰; 1.50 cast, 50 labour, 2 g lost, quick basis, markup 30 %, price step 5 (tests/src/orders.ts). */
const ratesOf = (changes: Record_ = {}): Rates => read(parseRates({ ...RATES, ...changes }));
const ADA = {
  model: "Ada curb",
  width: 8,
  mark: 250,
  colour: "yellow",
  linksPer: 4,
  linksPerUnit: "in",
  weight: 2,
  basis: "weighed",
};
const OFFER = { price: "3340", weight: "100", mark: "250", lengthUnit: "in" };

function checked(typed: Record_ = {}, rates = ratesOf(), links: readonly (typeof ADA)[] = [ADA]) {
  const it = checkTyped({ ...OFFER, ...typed } as Record<string, string>, [], rates, keptLinks(links));
  if (it.kind !== "checked") throw new Error(it.faults.map(({ sentence }) => sentence).join("\n"));
  return it;
}
const plain = (text: string) => text.replaceAll("\u00a0", " ");
function said(typed: Record_ = {}, rates = ratesOf(), links: readonly (typeof ADA)[] = [ADA]) {
  const { asking, check, ours, piece } = checked(typed, rates, links);
  const metal = sayMetal(asking, check);
  const own = ours.found ? sayOurs(asking, check, ours.comparison, ours.match, piece, rates) : undefined;
  return {
    metal: [metal.headline, ...metal.sentences].map(plain),
    warning: metal.warning,
    answer: plain(own?.answer ?? ""),
    ours: own?.sentences.map(plain) ?? [],
    basis: own?.basis.map(plain) ?? [],
    lacks: ours.found ? "" : ours.sentence,
  };
}

describe("what a price check says", () => {
  test("against the metal and against ours: 8.40 over, we land at 2.50 over, matching leaves 590 of 3,340 (hand arithmetic)", () => {
    const { metal, warning, answer, ours } = said();
    expect(metal).toEqual([
      "USD 8.40 a gram over metal",
      "Asked USD 33.40 a gram, metal USD 25.00: 33.6% above melt.",
      "The whole piece: USD 3,340.00 asked, USD 2,500.00 of gold in it.",
    ]);
    expect(warning).toBeUndefined();
    // 590 / 3340 = 17.66 %; landed 2,750.00 (common practice); priced at 3,575.
    expect(answer).toBe("We land at USD 2.50 over; matching it leaves 17.7%.");
    expect(ours).toEqual([
      "Landed cost of ours: USD 2,750.00, USD 27.50 a gram.",
      "Our price for it: USD 3,575.00, USD 35.75 a gram: USD 235.00 more than asked.",
      "Matching it leaves USD 590.00 on the piece.",
      expect.stringContaining(
        "it would be a surcharge of USD 8.40 a gram: asked less the metal rate, nothing else. Rates have USD 3.25.",
      ),
    ]);
  });

  test("below the metal is a warning with the usual reasons, never a bargain", () => {
    const { metal, warning, ours } = said({ price: "2200" });
    expect(metal[0]).toBe("USD 3.00 a gram below the metal");
    expect(metal[1]).toContain("12% below melt");
    for (const reason of ["weight", "mark", "hollow", "plated", "stones"])
      expect(warning?.toLowerCase()).toContain(reason);
    expect(ours.join(" ")).not.toContain("surcharge");
    expect(JSON.stringify([metal, warning, ours])).not.toMatch(/bargain/i);
  });

  test("a loss, a margin below the least, and none at all", () => {
    // 2,750 landed: 2,700 loses 50; 3,000 leaves 250, 8.3 %.
    expect(said({ price: "2700" }).answer).toBe(
      "We land at USD 2.50 over; matching it would lose USD 50.00, 1.9% of the price.",
    );
    expect(said({ price: "3000" }).answer).toBe(
      "We land at USD 2.50 over; matching it leaves 8.3%. That is below your least margin of 10%.",
    );
    expect(said({ price: "2750" }).answer).toBe("We land at USD 2.50 over; matching it leaves nothing.");
  });

  test("in another currency, by weight, and with a tax in the price", () => {
    expect(said({ price: "EUR 3000", exchange: "1.1" }).metal[1]).toBe("EUR 3,000.00 at 1.1 is USD 3,300.00.");
    const byGram = said({ price: "33.40", per: "g", weight: "" });
    expect(byGram.metal).toHaveLength(2);
    expect(byGram.lacks).toContain("Give its weight");
    expect(said({}, ratesOf({ tax: "0.25", taxIs: "in the price" })).ours.at(-1)).toBe(
      "Taken to hold Sales tax, as your prices do: USD 2,672.00 of USD 3,340.00 is left without it.",
    );
  });

  test("which link was taken, and how well it fits", () => {
    // 22 in at 4 links of 2 g are 176 g.
    expect(said().basis).toEqual([
      "Held against 50 links of Ada curb 8 mm 250 yellow, 2.000 g each, weighed: links alone, without clasp, stones or engraving.",
      "At 22 in, usual where no length is said, a chain of it weighs 176.00 g.",
      "Our link is much heavier than the piece's: labour by the link counts too few of them.",
    ]);
    const fits = said({ length: "12.5", kind: "Rope", mark: "14K", colour: "rose" }).basis;
    expect(fits[1]).toBe("At 12.5 in a chain of it weighs 100.00 g.");
    expect(fits.slice(2)).toEqual([
      expect.stringContaining("It is kept in 250; in 14K"),
      expect.stringContaining("It is kept in yellow"),
      expect.stringContaining("“Rope” is other work than curb links"),
    ]);
  });

  test("what is missing for a comparison", () => {
    expect(said({}, ratesOf(), []).lacks).toContain("keep a link first");
    expect(said({ solidity: "hollow" }).lacks).toContain("says “hollow”");
    expect(said({ colour: "white" }).lacks).toContain("no plating cost on Rates");
    // A link that was chosen is taken, however it fits.
    const chosen = said({ solidity: "hollow", link: "Ada curb 8 mm 250 yellow" });
    expect(chosen.basis.at(-1)).toContain("One of the two is hollow");
  });

  test("the answer against the metal stands while other fields are wrong", () => {
    const it = checked({ length: "long" });
    expect(sayMetal(it.asking, it.check).headline).toContain("8.40");
    expect(it.faults.map(({ field }) => field)).toEqual(["length"]);
  });
});
