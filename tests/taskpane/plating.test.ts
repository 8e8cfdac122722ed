import { describe, expect, test } from "vitest";
import {
  type CostSheet,
  costOrder,
  makeQuote,
  NOT_KNOWN,
  type PricedLine,
  parseOrder,
  type Quote,
  type Rates,
  termsOf,
} from "../../src/index";
import { csvOf } from "../../taskpane/designs/pricecsv";
import { isPriced } from "../../taskpane/designs/pricing";
import { cellOf, csvText } from "../../taskpane/designs/sheetcolumns";
import { jobSheet } from "../../taskpane/excel/job/jobsheet";
import { contentsOf } from "../../taskpane/excel/paper";
import { extraFields, lineFields, quoteFields } from "../../taskpane/excel/template/fields";
import { type Block, planFill } from "../../taskpane/excel/template/fill";
import { builtInTemplates, templateContents } from "../../taskpane/excel/template/template";
import { ticketsPaper } from "../../taskpane/excel/tickets/ticketspaper";
import { CUSTOMER_COLUMNS } from "../../taskpane/wording/pricesheetcolumns";
import { priceLines } from "../src/designlists";
import { ORDER, type Record_, ratesOf, read } from "../src/orders";

const { customer: _customer, spot: _spot, discount: _discount, ...LINE } = ORDER;

/** The orders whose plating a customer may read: white, of two colours, rose by choice; and some that are not plated. */
const LINES: readonly Record_[] = [
  { kind: "bracelet", mark: "14K", colour: "white" },
  { mark: "18K", pattern: "YYW", linkWeightWhite: "2.1" },
  { mark: "18K", colour: "rose", plated: "plated" },
  { mark: "18K", colour: "white", plated: "not plated" },
  { mark: "18K" },
];

interface Work {
  readonly rates: Rates;
  readonly quote: Quote;
  readonly sheets: readonly CostSheet[];
  readonly order: ReturnType<typeof parseOrder>;
}

function workOf(platingMetal: string, lines = LINES): Work {
  const rates = ratesOf({ plating: "40", platingMetal, tolerance: "0.05", settled: "fixed" });
  const form = { order: { customer: "Ada" }, lines: lines.map((line) => ({ ...LINE, ...line })), extras: [] };
  const order = parseOrder(form, rates);
  const sheets = costOrder(read(order), rates);
  return { rates, sheets, order, quote: makeQuote(read(order), sheets, rates, "2026-11-30").quote };
}

function filled(template: Block, { quote }: Work): string {
  const plan = planFill(
    template,
    [],
    quoteFields(quote, "en-US"),
    quote.lines.map((line) => lineFields(line, "en-US")),
    quote.extras.map((extra) => extraFields(extra, "en-US")),
  );
  expect(plan.unknown).toEqual([]);
  return plan.writes.map(({ content }) => String(content)).join("\n");
}

const HEADER = ["Design", "Kind of piece", "Mark", "Colour", "Colour pattern", "Weight of one white link", "Plating"];
function designs({ rates }: Work): readonly Extract<PricedLine, { kind: "priced" }>[] {
  const rows = LINES.map((line, index) =>
    [
      `Curb ${index}`,
      line.kind,
      line.mark,
      line.colour ?? "yellow",
      line.pattern,
      line.linkWeightWhite,
      line.plated,
    ].map((cell) => cell ?? ""),
  );
  const chain = ["Length (in)", "Links per in", "Weight of one link"];
  return priceLines([[...HEADER, ...chain], ...rows.map((row) => [...row, 24, 4, 2])], rates).filter(isPriced);
}

/** Every paper that a customer may read, in words. */
const PAPERS: Readonly<Record<string, (work: Work) => string>> = {
  ...Object.fromEntries(
    (["Letter", "A4"] as const).flatMap((size) =>
      builtInTemplates(size).map((name) => [
        `${name}, ${size}`,
        (work: Work) => filled(templateContents(name, size), work),
      ]),
    ),
  ),
  "a person's older template": (work) =>
    filled([["{{line.mark}} gold, {{line.colour}}, {{line.solid}}[[, {{line.plated}}]]"], ["{{total}}"]], work),
  "a person's older template, plating in a cell of its own": (work) =>
    filled([["{{line.mark}} gold", "{{line.colour}}", "{{line.plated}}"]], work),
  "a price sheet": (work) =>
    designs(work)
      .flatMap((line) =>
        CUSTOMER_COLUMNS.map((column) => {
          const cell = cellOf(line, column, work.rates);
          return "text" in cell ? cell.text : "";
        }),
      )
      .join("\n"),
  "a CSV": (work) =>
    csvOf(designs(work).map((line) => CUSTOMER_COLUMNS.map((column) => csvText(cellOf(line, column, work.rates))))),
};

/** Every way to say plating on a paper: the words behind it. */
const saidOf = (paper: string) => [...paper.matchAll(/plat(?:ed|ing)\b(.*)/gi)].map(([, after = ""]) => after);

describe.each(Object.keys(PAPERS))("%s", (name) => {
  const paper = (metal: string) => PAPERS[name]?.(workOf(metal)) ?? "";

  test.each(["rhodium", "black rhodium"])(
    "says plated with %s, of white links alone where others stand beside",
    (metal) => {
      const said = saidOf(paper(metal));
      // Three of the five lines are plated, and each says with what.
      expect(said.length).toBeGreaterThanOrEqual(3);
      for (const after of said) expect(after.startsWith(` with ${metal}`), after).toBe(true);
      expect(paper(metal).match(new RegExp(`white links plated with ${metal}`, "g"))).toHaveLength(1);
      expect(paper(metal)).not.toMatch(/gold.plated/i);
    },
  );

  test("without a metal says nothing of plating", () => {
    expect(saidOf(paper(""))).toEqual([]);
    expect(paper("")).toMatch(/white/);
  });
});

describe("the words of a template for plating", () => {
  const cell = (text: string, metal = "rhodium", line = 0) =>
    planFill([[text]], [], new Map(), [lineFields(workOf(metal).quote.lines[line] as Quote["lines"][number], "de-DE")])
      .writes[0]?.content;

  test.each([
    // As templates have them from before metals were named.
    ["Gold[[, {{line.plated|plated=rhodiniert}}]]", "Gold, rhodiniert (rhodium)"],
    ["Gold[[, {{line.plated|plated=rhodiniert|not plated=}}]]", "Gold, rhodiniert (rhodium)"],
    ["Gold[[, {{line.plated|plated=}}]]", "Gold"],
    ["{{line.plated|plated=plattiert|rhodium=Rhodium}}", "plattiert (Rhodium)"],
    // For the whole of it, and for its parts.
    ["{{line.plated|plated with rhodium=rhodiniert}}", "rhodiniert"],
    ["{{line.plated|plated with=plattiert mit|rhodium=Rhodium}}", "plattiert mit Rhodium"],
    ["{{line.plated|PLATED WITH=plattiert mit}}", "plattiert mit rhodium"],
    ["{{line.plated|plated with=}}", ""],
    ["{{line.plated|rhodium=Rhodium}}", "plated with Rhodium"],
    // Nothing is left of it where a word of it is left out.
    ["Gold[[, {{line.plated|rhodium=}}]]", "Gold"],
    ["Gold[[, {{line.plated|plated=plattiert|rhodium=}}]]", "Gold"],
    ["{{line.plated}}", "plated with rhodium"],
  ])("%s is %s", (template, expected) => {
    expect(cell(template)).toBe(expected);
  });

  test("name the white links where only those are plated", () => {
    expect(cell("{{line.plated}}", "rhodium", 1)).toBe("white links plated with rhodium");
    expect(cell("{{line.plated|white links=weiße Glieder|plated with=plattiert mit}}", "rhodium", 1)).toBe(
      "weiße Glieder plattiert mit rhodium",
    );
    expect(cell("Gold[[, {{line.plated|plated=}}]]", "rhodium", 1)).toBe("Gold");
  });

  test("write nothing without a metal", () => {
    expect(cell("Gold[[, {{line.plated|plated=rhodiniert}}]]", "")).toBe("Gold");
  });
});

describe("the bench", () => {
  const papers = (metal: string) => {
    const { order, sheets, quote, rates } = workOf(metal);
    const job = jobSheet(read(order), sheets, quote, rates, termsOf(rates, NOT_KNOWN));
    return { job: contentsOf(job.paper), tickets: contentsOf(ticketsPaper(sheets, quote, job, "Job 2001")) };
  };

  test("reads the metal on the job sheet and on the plater's ticket", () => {
    const { job, tickets } = papers("rhodium");
    expect(job.flat()).toEqual(expect.arrayContaining(["white, plated with rhodium", "rose, plated with rhodium"]));
    expect(job.flat().some((cell) => /white links plated with rhodium/.test(String(cell)))).toBe(true);
    const head = tickets.findIndex((row) => row.includes("Plate with"));
    const column = tickets[head]?.indexOf("Plate with") ?? -1;
    expect(tickets.slice(head + 1, head + 4).map((row) => row[column])).toEqual(["rhodium", "rhodium", "rhodium"]);
  });

  test("without a metal reads that it is plated all the same, and has a place to write the metal in", () => {
    const { job, tickets } = papers("");
    expect(job.flat()).toContain("white, plated (metal not named)");
    expect(tickets.flat()).toContain("Write in the metal before this ticket goes out.");
    const head = tickets.findIndex((row) => row.includes("Plate with"));
    expect(tickets[head + 1]?.[3]).toBe("");
  });
});
