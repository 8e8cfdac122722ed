import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { cell } from "./built";

const fault = (words: string) => ({ code: "#VALUE!", message: expect.stringContaining(words) });

describe("labour of one piece, by hand", () => {
  test("50 flat, 40 links at 0.35 and 30 g at 0.5 are 79", () => {
    expect(cell("LABOURCOST", 40, 30, 50, 0.35, 0.5)).toBe(79);
  });

  test("is not below its minimum, and what is left out costs nothing", () => {
    expect(cell("LABOURCOST", 40, 30, 50, 0.35, 0.5, 120)).toBe(120);
    expect(cell("LABOURCOST", 40, 30)).toBe(0);
    expect(cell("LABOURCOST", 40, 30, " ", "", "0.5 ")).toBe(15);
  });

  test("says what it cannot read", () => {
    expect(cell("LABOURCOST", 40, 30, "fifty")).toEqual(fault('flat: found "fifty"'));
  });
});

describe("casting of one piece, by hand", () => {
  test("10.2 g at 1.5 is 15.30; a minimum of 60 shared by three is 20 each", () => {
    expect(cell("CASTINGCOST", 10.2, 1.5)).toBe(15.3);
    expect(cell("CASTINGCOST", 10.2, 1.5, 60, 3)).toBe(20);
    // 3 x 15.30 = 45.90, above the minimum of 45.
    expect(cell("CASTINGCOST", 10.2, 1.5, 45, 3)).toBe(15.3);
  });

  test("on the quick basis the fee is counted on the stated weight, and the lost grams are its share", () => {
    expect(cell("CHARGEDWEIGHT", 100, 0.02, "cast", "quick")).toBe(100);
    expect(cell("LOSTWEIGHT", 100, "2 %", null, " Quick")).toBe(2);
  });

  test("on the finished basis it is all that is cast: 98 g at a loss of 2 % of the cast weight are 100 g, 2 g lost", () => {
    expect(cell("CHARGEDWEIGHT", 98, 0.02)).toBe(100);
    expect(cell("LOSTWEIGHT", 98, " 2 % ")).toBe(2);
    expect(cell("LOSTWEIGHT", 100, 1.5, "grams ")).toBe(1.5);
  });

  test("a share is no count of grams", () => {
    expect(cell("CASTWEIGHT", 100, "2 %", "grams")).toEqual(fault("the grams lost"));
    expect(cell("CASTWEIGHT", 100, 1.5)).toEqual(fault('the lossBasis "grams"'));
    expect(cell("LANDEDCOST", 98, 25, 1.5, 0, "2%")).toBe(2650);
  });
});

describe("links that were polished", () => {
  test("95 cast at 190 g, 93 sent, 91 back at 173.81 g: 182 g went out, 4.5 % lost, two spare, two missing (by hand)", () => {
    expect(cell("POLISHEDLINKS", 190, 173.81, 95, 91, 93)).toEqual([[182, 0.045, 2, 4, 2, 4]]);
  });

  test("without how many were sent none is called spare or missing; without counts all came back", () => {
    expect(cell("POLISHEDLINKS", 190, 173.81, 95, 91)).toEqual([[182, 0.045, "", "", "", ""]]);
    expect(cell("POLISHEDLINKS", 100, 98, null, " ")).toEqual([[100, 0.02, "", "", "", ""]]);
  });

  test("names the count that contradicts the others", () => {
    expect(cell("POLISHEDLINKS", 190, 173.81, 95)).toEqual(fault("backLinks: found nothing"));
    expect(cell("POLISHEDLINKS", 190, 173.81, 95, 96)).toEqual(fault("backLinks: found 96, more than the 95 links"));
    expect(cell("POLISHEDLINKS", 190, 173.81, 95, 91, 90)).toEqual(
      fault("backLinks: found 91, more than the 90 links"),
    );
  });
});

describe("whole stones to buy", () => {
  test("100 stones with a tenth broken are 110, three pieces of seven with a twentieth 23", () => {
    expect(cell("STONESTOBUY", 100, 1, 0.1)).toBe(110);
    // 3 x 7 x 1.05 = 22.05
    expect(cell("STONESTOBUY", 7, 3, 0.05)).toBe(23);
    expect(cell("STONESTOBUY", 7)).toBe(7);
  });
});

describe("links of a colour in a pattern that repeats", () => {
  test("50 links of YYW are 34 yellow and 16 white", () => {
    expect(cell("PATTERNLINKS", 50, "YYW", "Y")).toBe(34);
    expect(cell("PATTERNLINKS", 50, " y y w ", "white")).toBe(16);
    expect(cell("PATTERNLINKS", 50, "YYW", "rose")).toBe(0);
    expect(cell("PATTERNLINKS", 50, "", "rose")).toBe(50);
  });

  test("are counted as a child would, link by link", () => {
    const letters = { Y: "yellow", R: "rose", W: "white", G: "green" };
    const patternOf = fc.array(fc.constantFrom("Y", "R", "W", "G"), { minLength: 1, maxLength: 7 });
    fc.assert(
      fc.property(patternOf, fc.integer({ min: 0, max: 90 }), (pattern, links) => {
        const chain = Array.from({ length: links }, (_, at) => pattern[at % pattern.length]);
        for (const [letter, colour] of Object.entries(letters)) {
          const own = chain.flatMap((each, at) => (each === letter ? [at] : []));
          const asked = [links, pattern.join(""), colour, "closed and open in turn"];
          expect(cell("PATTERNLINKS", ...asked)).toBe(own.length);
          expect(cell("PATTERNLINKS", ...asked, "open")).toBe(own.filter((at) => at % 2 === 1).length);
          expect(cell("PATTERNLINKS", ...asked, "closed")).toBe(own.filter((at) => at % 2 === 0).length);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe("what a piece sells for, by hand", () => {
  const priced = (...cells: unknown[]) => cell("SELLINGPRICE", ...cells);

  test("2,750 at a markup of 30 % with 8 % tax in the price: 3,861, in steps of 5 3,865", () => {
    expect(priced(2750, 0, "markup", 0.3, 100, 25, 0.08, "in the price", 0, 2)).toBe(3861);
    expect(priced(2750, 0, "markup", "30 %", 100, 25, "8 %", " In The Price ", 5, 2)).toBe(3865);
    expect(priced(2750, 0, "markup ", 0.3, 100, 25, 0.08, "on top", 5, 2)).toBe(3575);
  });

  test("2,600 at a margin of 35 % are 4,000; 100 g at a premium of 7.50 over 25 and 78 apart 3,328", () => {
    expect(priced(2600, 0, "MARGIN", 0.35, 100, 25, "", "", "", 2)).toBe(4000);
    expect(priced(2910.5, 78, "premium", 7.5, 100, 25, " ", " ", "", 2)).toBe(3328);
  });

  test("goes up to the smallest coin without a step, and stays as it is without decimals", () => {
    // 10 x 1.123 / 3 is 3.74333…
    expect(priced(10, 0, "margin", "0.7", 1, 1, 0, "", 0, 2)).toBe(33.34);
    expect(priced(10, 0, "margin", "0.7", 1, 1, 0, "")).toBe(10 / 0.3);
  });

  test("a price set by hand stands as it was set", () => {
    expect(priced(10, 0, "own price", 1234.565, 1, 1, 0.2, "in the price", 5, 2)).toBe(1234.57);
  });

  test("what the fifteen digits of a cost leave out lifts no step: 5,000 / 3 at 20 % is 2,000", () => {
    expect(priced(5000 / 3, 0, "markup", 0.2, 1, 1, 0, "", 1, 2)).toBe(2000);
  });

  test("says what it cannot read", () => {
    expect(priced(10, 0, "markdown", 0.3, 1, 1, 0, "")).toEqual(fault('by: found "markdown"'));
    expect(priced(10, 0, "premium", "5 %", 1, 1, 0, "")).toEqual(fault("figure: "));
    expect(priced(10, 0, "margin", 1, 1, 1, 0, "")).toEqual(fault("figure: found 1"));
    expect(priced(10, 0, "markup", "", 1, 1, 0, "")).toEqual(fault("figure: found nothing"));
    expect(priced(10, 0, "markup", 0.3, 1, 1, 0, "inside")).toEqual(fault('taxIs: found "inside"'));
  });

  test("is the fraction that its definition says, up to the step", () => {
    const cents = (most: number) => fc.integer({ min: 1, max: most }).map((count) => count / 100);
    fc.assert(
      fc.property(
        cents(900_000),
        cents(60),
        fc.constantFrom("markup", "margin"),
        cents(20),
        fc.constantFrom("on top", "in the price"),
        fc.constantFrom(0, 1, 5, 0.05),
        (cost, figure, by, tax, taxIs, step) => {
          const share = new Fraction(String(figure));
          const asked =
            by === "markup"
              ? new Fraction(String(cost)).mul(share.add(1))
              : new Fraction(String(cost)).div(new Fraction(1).sub(share));
          const shown = taxIs === "in the price" ? asked.mul(new Fraction(String(tax)).add(1)) : asked;
          const steps = new Fraction(step === 0 ? "0.01" : String(step));
          const price = shown.div(steps).ceil().mul(steps);
          expect(priced(cost, 0, by, figure, 1, 1, tax, taxIs, step, 2)).toBe(price.valueOf());
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe("tax and what is left", () => {
  test("of 1,080 with 8 % in it 1,000 are left, and 80 are tax; on top of 1,000 it is 80", () => {
    expect(cell("NETPRICE", 1080, 0.08, "in the price ")).toBe(1000);
    expect(cell("SALESTAX", 1080, 0.08, "in the price", 2)).toBe(80);
    expect(cell("SALESTAX", 1000, " 8% ", "", 2)).toBe(80);
    expect(cell("NETPRICE", 1000, 0.08, " ", 0.1)).toBe(900);
  });

  test("a clasp at a premium brings its weight, but never less than it cost", () => {
    expect(cell("PARTATPREMIUM", 2, 25, 5, 40)).toBe(60);
    expect(cell("PARTATPREMIUM", "", 25, 5, 40)).toBe(40);
  });
});

describe("cash before the first sale, by hand", () => {
  test("three pieces of 100 with 20 of casting in it, at a minimum of 90, cost 330", () => {
    expect(cell("PIECESCOST", 100, 20, 90, 3)).toBe(330);
    expect(cell("PIECESCOST", 100, 20, 30, 3)).toBe(300);
  });

  test("500 once and 330 for pieces, 200 of it paid beforehand, ask for 630; deposits beyond the pieces pay nothing once", () => {
    expect(cell("CASHNEEDED", 500, 330, 200)).toBe(630);
    expect(cell("CASHNEEDED", 500, 330, 400)).toBe(500);
  });

  test("with 1,000 at hand and 500 once, pieces of 100 with 30 beforehand are 7 at a time", () => {
    // 500 / 70 = 7.14
    const carried = [1000, 500, 100, 20, 0, 30];
    expect([cell("FEWESTPIECES", ...carried), cell("MOSTPIECES", ...carried)]).toEqual([1, 7]);
    expect(cell("MOSTPIECES", 400, ...carried.slice(1))).toBe(0);
    expect(cell("MOSTPIECES", 1000, 500, 100, 20, 0, 100)).toBe(1000);
  });

  test("a minimum that few pieces share badly asks for some at a time", () => {
    // Each brings 30 more than it costs without casting, so 100 of minimum beyond 10 of room take 3 pieces.
    const carried = [10, 0, 100, 20, 100, 110];
    expect([cell("FEWESTPIECES", ...carried), cell("MOSTPIECES", ...carried)]).toEqual([3, 1000]);
  });

  test("a deposit of 30 % lets 500 carry one piece of 800 at a price of 1,000; none carries it from below zero", () => {
    expect(cell("DEPOSITNEEDED", 500, 800, 0, 0, 1000)).toBe(0.3);
    expect(cell("DEPOSITNEEDED", 900, 800, 0, 0, 1000)).toBe(0);
    expect(cell("DEPOSITNEEDED", -1, 800, 0, 0, 1000)).toMatchObject({ code: "#N/A" });
  });

  test("500 paid once come back with the third piece at 200 a piece, and never at none", () => {
    expect(cell("PAIDBACKWITH", 500, 200)).toBe(3);
    expect(cell("PAIDBACKWITH", 0, 0)).toBe(1);
    expect(cell("PAIDBACKWITH", 500, 0)).toMatchObject({ code: "#N/A" });
  });
});
