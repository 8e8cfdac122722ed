import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { countLinks, parsePattern } from "../../../src/trade/colourpattern";
import { expectFault } from "../reference";

const counted = (
  links: number,
  pattern: string,
  casting: Parameters<typeof countLinks>[2] = "closed and open in turn",
) =>
  Object.fromEntries(
    countLinks(Quotient.of(links), parsePattern(pattern, "Colour pattern"), casting).map(
      ({ colour, links, closed, open }) => [
        colour,
        { links: links.toNumber(), closed: closed.toNumber(), open: open.toNumber() },
      ],
    ),
  );

describe("links that are cast closed and open in turn (hand arithmetic)", () => {
  test.each([
    [1, 1, 0],
    [2, 1, 1],
    [95, 48, 47],
    [96, 48, 48],
  ])("%i links are %i closed and %i open", (links, closed, open) => {
    expect(counted(links, "Y")).toEqual({ yellow: { links, closed, open } });
  });

  test("all open, or all closed", () => {
    expect(counted(95, "Y", "all open").yellow).toEqual({ links: 95, closed: 0, open: 95 });
    expect(counted(95, "Y", "all closed").yellow).toEqual({ links: 95, closed: 95, open: 0 });
  });
});

describe("a pattern of colours over a count that it does not divide (hand arithmetic)", () => {
  test("YYW over 100 links: 33 times three, and one yellow", () => {
    // Whites are links 3, 6, … 99: the odd ones of them, 3, 9, … 99, are 17 and closed.
    expect(counted(100, "YYW")).toEqual({
      yellow: { links: 67, closed: 33, open: 34 },
      white: { links: 33, closed: 17, open: 16 },
    });
  });

  test("YRW over 101 links: 34 yellow, 34 rose, 33 white", () => {
    // Yellow: links 1, 4, … 100, odd ones 1, 7, … 97. Rose: 2, 5, … 101, odd ones 5, 11, … 101. White: 3, 6, … 99.
    expect(counted(101, "y-r-w")).toEqual({
      yellow: { links: 34, closed: 17, open: 17 },
      rose: { links: 34, closed: 17, open: 17 },
      white: { links: 33, closed: 17, open: 16 },
    });
  });

  test("fewer links than letters", () => {
    expect(counted(2, "YRWG")).toEqual({
      yellow: { links: 1, closed: 1, open: 0 },
      rose: { links: 1, closed: 0, open: 1 },
    });
  });
});

test("counts are those of the pattern written out link by link", () => {
  const LETTERS = { Y: "yellow", R: "rose", W: "white", G: "green", O: "own" } as const;
  const pattern = fc.string({ unit: fc.constantFrom(..."YRWGO"), minLength: 1, maxLength: 9 });
  fc.assert(
    fc.property(pattern, fc.integer({ min: 1, max: 400 }), (letters, links) => {
      const written = letters.repeat(links).slice(0, links);
      const groups = counted(links, letters);
      for (const [letter, colour] of Object.entries(LETTERS)) {
        const closed = written.split("").filter((each, index) => each === letter && index % 2 === 0).length;
        const all = written.split(letter).length - 1;
        expect(groups[colour]).toEqual(all === 0 ? undefined : { links: all, closed, open: all - closed });
      }
    }),
  );
});

describe("bad input", () => {
  test("a letter that is no colour", () => {
    expectFault(() => parsePattern("YXW", "Colour pattern"), "unknownWord", 'Colour pattern: found "YXW"', "W white");
  });

  test("a pattern of more letters than anyone repeats", () => {
    expectFault(() => parsePattern("YW".repeat(31), "Colour pattern"), "tooLarge", "at most 60 letters");
  });

  test("nothing is no pattern", () => {
    for (const blank of ["", " ", undefined, null]) expect(parsePattern(blank, "Colour pattern")).toEqual([]);
  });
});
