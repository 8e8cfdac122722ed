import { expect, test } from "vitest";
import { type EarningSpan, grams, Quotient } from "../../../src/index";
import { whereOf } from "../../../taskpane/margins/targetmessages";

const weight = (text: string | undefined) => (text === undefined ? undefined : grams(Quotient.of(text)));
const span = (from?: string, to?: string, links?: EarningSpan["links"]): EarningSpan => ({
  from: weight(from),
  to: weight(to),
  links,
});
const said = (...spans: readonly EarningSpan[]) => whereOf(spans).replaceAll("\u00a0", " ");

test("one range is told by the edges it has", () => {
  expect(said(span())).toBe("At any weight");
  expect(said(span("31.25"))).toBe("From 31.25 g up");
  expect(said(span(undefined, "162.5"))).toBe("Up to 162.50 g");
  expect(said(span("20", "31.5"))).toBe("From 20.00 g to 31.50 g");
});

test("an edge is rounded into its range, so that what is said is true", () => {
  expect(said(span("85.1063", "85.9999"))).toBe("From 85.11 g to 85.99 g");
  expect(said(span("85.1100"))).toBe("From 85.11 g up");
});

test("several ranges follow each other, with their links; beyond four they are counted", () => {
  expect(said(span("80", "80", { from: 80, to: 80 }), span("82", undefined, { from: 82, to: 5000 }))).toBe(
    "At 80.00 g (80 links) and from 82.00 g (82 links) up",
  );
  const many = ["1", "3", "5", "7", "9", "11"].map((each) => span(each, each, { from: 1, to: 1 }));
  expect(said(...many)).toBe(
    "At 1.00 g (one link), at 3.00 g (one link), at 5.00 g (one link), at 7.00 g (one link), and 2 more ranges",
  );
});
