import { describe, expect, test } from "vitest";
import { printedArea } from "../../../../taskpane/excel/quote/quotesheet";
import type { Fields, FieldValue } from "../../../../taskpane/excel/template/fields";
import { type Block, planFill } from "../../../../taskpane/excel/template/fill";

const said = (text: string): FieldValue => ({ value: text, text });
const QUOTE: Fields = new Map([
  ["customer", said("Ada")],
  ["discount", said("")],
  ["total", { value: 12.5, text: "12.50", format: "#,##0.00" }],
]);
const line = (colour: string, solid = ""): Fields =>
  new Map([
    ["line.colour", said(colour)],
    ["line.solid", said(solid)],
  ]);

const plan = (template: Block, lines: readonly Fields[] = [line("yellow")], formats: Block = []) =>
  planFill(template, formats, QUOTE, lines);
/** What one cell is filled with. */
const filled = (cell: string, lines?: readonly Fields[]) => plan([[cell]], lines).writes[0]?.content;

describe("the template's own words for ours", () => {
  test.each([
    ["{{line.colour|yellow=Gelb|white=Weiß}}", "yellow", "Gelb"],
    ["{{line.colour|yellow=Gelb|white=Weiß}}", "white", "Weiß"],
    ["{{ line.colour | YELLOW = Gelb }}", "yellow", "Gelb"],
    ["{{line.colour|yellow=Gelb}}", "rose", "rose"],
    ["{{line.colour|yellow=}}", "yellow", ""],
    ["{{line.colour|yellow=a=b}}", "yellow", "a=b"],
    ["Gold, {{line.colour|yellow=gelb}}, massiv", "yellow", "Gold, gelb, massiv"],
    ["{{line.colour|yellow=750}}", "yellow", "'750"],
    ["{{line.colour|yellow==1+1}}", "yellow", "'=1+1"],
  ])("%s for %s is %s", (cell, colour, expected) => {
    expect(filled(cell, [line(colour)])).toBe(expected);
  });

  test.each([
    ["20 sapphire (2 mm round)", "'20 Saphir (2 mm rund)"],
    ["20 star sapphire, 1 (3 x 2 mm)", "'20 star Saphir, 1 (3 x 2 mm)"],
    ["sapphire", "Saphir"],
    ["star sapphire", "star sapphire"],
  ])("stand for words among figures too, each by itself: %s is %s", (sets, expected) => {
    expect(filled("{{line.colour|sapphire=Saphir|round=rund}}", [line(sets)])).toBe(expected);
  });

  test("stand in optional phrases, and an empty word takes the phrase away", () => {
    const cell = "Gold[[, {{line.solid|hollow=hohl|solid=}}]]";
    expect(filled(cell, [line("white", "hollow")])).toBe("Gold, hohl");
    expect(filled(cell, [line("white", "solid")])).toBe("Gold");
    expect(filled(cell, [line("white")])).toBe("Gold");
  });

  test("an empty word empties its row, which is hidden", () => {
    expect(plan([["Label", "{{line.colour|yellow=}}"]]).hidden).toEqual([0]);
    expect(plan([["Label", "{{line.colour|white=}}"]]).hidden).toEqual([]);
  });

  test.each(["{{line.colour|Gelb}}", "{{line.colour|=Gelb}}", "{{line.colour|yellow=a|Yellow=b}}"])(
    "%s cannot be read: it stays in sight and is reported",
    (cell) => {
      expect(filled(cell)).toBe(`'${cell}`);
      expect(plan([["", cell]]).unknown).toEqual([`${cell} in B1`]);
    },
  );
});

describe("formulas in the template", () => {
  test("that hold a field are left as they are and reported with their cells", () => {
    const { writes, inFormulas, unknown } = plan([["{{customer}}"], ["", '="For "&"{{customer}} {{courier}}"']]);
    expect(writes).toEqual([{ row: 0, column: 0, content: "Ada" }]);
    expect(inFormulas).toEqual(["{{customer}} in B2", "{{courier}} in B2"]);
    expect(unknown).toEqual([]);
  });

  test("do not make their row one that repeats per line", () => {
    expect(plan([['="{{line.colour}}"'], ["{{customer}}"]]).repeated).toBeUndefined();
  });
});

describe("a template", () => {
  test("without a field is told from one with any", () => {
    expect(plan([["Quote", 12, "{customer}"]]).hasFields).toBe(false);
    expect(plan([["Quote", "for {{courier}}"]]).hasFields).toBe(true);
  });

  test("whose cell has the text format gets numbers as numbers and texts without the text format", () => {
    expect(plan([["{{total}}", "{{customer}}"]], [], [["@", "@"]]).writes).toEqual([
      { row: 0, column: 0, content: 12.5, format: "#,##0.00" },
      { row: 0, column: 1, content: "Ada", format: "General" },
    ]);
    expect(plan([["{{total}}", "{{customer}}"]], [], [["0.0", "0"]]).writes).toEqual([
      { row: 0, column: 0, content: 12.5 },
      { row: 0, column: 1, content: "Ada" },
    ]);
  });

  test("with two rows a line gets them three times for three lines; what stands below moves down", () => {
    const template = [["{{customer}}"], ["{{line.colour}}"], ["", "{{line.solid}}"], ["{{total}}"]];
    const { repeated, writes, hidden } = plan(template, [line("yellow", "a"), line("rose"), line("white", "c")]);
    expect(repeated).toEqual({ row: 1, height: 2, times: 3 });
    const bySheet = [...writes].sort((one, other) => one.row - other.row);
    expect(bySheet.map(({ row, column, content }) => [row, column, content])).toEqual([
      [0, 0, "Ada"],
      [1, 0, "yellow"],
      [2, 1, "a"],
      [3, 0, "rose"],
      [4, 1, ""],
      [5, 0, "white"],
      [6, 1, "c"],
      [7, 0, 12.5],
    ]);
    expect(hidden).toEqual([4]);
  });
});

describe("the print area of a quote", () => {
  const template = [["{{customer}}"], [""], ["{{line.colour}}"], ["{{total}}"]];
  const three = plan(template, [line("yellow"), line("rose"), line("white")]);

  test.each([
    [
      "ends with the repeated row",
      { row: 0, column: 0, rows: 3, columns: 5 },
      { row: 0, column: 0, rows: 5, columns: 5 },
    ],
    ["goes on below it", { row: 0, column: 1, rows: 9, columns: 2 }, { row: 0, column: 1, rows: 11, columns: 2 }],
    ["ends above it, as the person wants", { row: 0, column: 0, rows: 2, columns: 5 }, undefined],
    ["begins below it", { row: 3, column: 0, rows: 2, columns: 5 }, undefined],
  ])("that %s", (_, area, expected) => {
    expect(printedArea(area, three)).toEqual(expected);
  });

  test("stays as it is for one line, and where there is none", () => {
    expect(printedArea({ row: 0, column: 0, rows: 3, columns: 5 }, plan(template))).toBeUndefined();
    expect(printedArea(undefined, three)).toBeUndefined();
  });
});

describe("several words in one field", () => {
  test("have their own words each, and the whole its own before them", () => {
    const cell = "{{line.colour|yellow=gelb|white=weiß|yellow, rose=zweifarbig}}";
    expect(filled(cell, [line("yellow, white")])).toBe("gelb, weiß");
    expect(filled(cell, [line("yellow, champagne")])).toBe("gelb, champagne");
    expect(filled(cell, [line("yellow, rose")])).toBe("zweifarbig");
  });
});

describe("free lines", () => {
  const template = [["{{line.colour}}"], ["{{extra.text}}", "{{extra.amount}}"], ["{{total}}"]];
  const extra = (text: string, amount: string): Fields =>
    new Map([
      ["extra.text", said(text)],
      ["extra.amount", said(amount)],
    ]);

  test("repeat in rows of their own below the lines, and what follows moves down by both", () => {
    const lines = [line("yellow"), line("rose"), line("white")];
    const { writes, repeatedExtras } = planFill(template, [], QUOTE, lines, [extra("Box", "12"), extra("Ribbon", "3")]);
    expect(repeatedExtras).toEqual({ row: 1, height: 1, times: 2 });
    expect(writes.map(({ row, column, content }) => [row, column, content])).toEqual([
      [0, 0, "yellow"],
      [1, 0, "rose"],
      [2, 0, "white"],
      [3, 0, "Box"],
      [3, 1, "'12"],
      [4, 0, "Ribbon"],
      [4, 1, "'3"],
      [5, 0, 12.5],
    ]);
  });

  test("hide their row where there are none", () => {
    const { hidden, unknown } = planFill(template, [], QUOTE, [line("yellow"), line("rose")], []);
    expect(hidden).toEqual([2]);
    expect(unknown).toEqual([]);
  });

  test("may stand above the lines, and between two lines' rows they are what the template says nothing of", () => {
    const above = planFill(
      [["{{extra.text}}"], ["{{line.colour}}"]],
      [],
      QUOTE,
      [line("yellow")],
      [extra("Box", ""), extra("Ribbon", "")],
    );
    expect(above.writes.map(({ row, content }) => [row, content])).toEqual([
      [0, "Box"],
      [1, "Ribbon"],
      [2, "yellow"],
    ]);
    const between = [["{{line.colour}}"], ["{{extra.text}}"], ["{{line.solid}}"]];
    expect(planFill(between, [], QUOTE, [line("yellow", "hollow")], [extra("Box", "")]).unknown).toEqual([
      "{{extra.text}} in A2",
    ]);
  });

  test("let the print area grow with them", () => {
    const printed = planFill(template, [], QUOTE, [line("yellow"), line("rose")], [extra("Box", ""), extra("Bag", "")]);
    expect(printedArea({ row: 0, column: 0, rows: 3, columns: 2 }, printed)).toEqual({
      row: 0,
      column: 0,
      rows: 5,
      columns: 2,
    });
  });
});

test("a row is hidden where nothing is left of its optional phrases, whatever else they name", () => {
  expect(plan([["[[{{discount}} for {{customer}}]]"]]).hidden).toEqual([0]);
  expect(plan([["[[{{discount}} for {{customer}}]]", "{{total}}"]]).hidden).toEqual([]);
});

describe("what the total counts and the template has no place for", () => {
  const terms = (texts: Readonly<Record<string, string>>): Fields =>
    new Map(Object.entries({ total: "1,200", ...texts }).map(([name, text]) => [name, said(text)]));
  const lines = [line("yellow"), line("white")];
  const unplaced = (template: Block, quote: Fields, extras: readonly Fields[] = []) =>
    planFill(template, [], quote, lines, extras).unplaced;

  test("is named: lines, free lines, discount and the customer's gold", () => {
    const quote = terms({ discount: "50.00", shipping: "", ownGoldCredit: "300.00" });
    expect(unplaced([["{{total}}"]], quote, [new Map([["extra.amount", said("200")]])])).toEqual([
      "line.amount",
      "extra.amount",
      "discount",
      "ownGoldCredit",
    ]);
  });

  test("is nothing where all of it stands somewhere, also in a phrase or with words of one's own", () => {
    const template = [["{{line.amount}}"], ["{{extra.amount}}"], ["[[less {{discount|50=fifty}}]]", "{{total}}"]];
    expect(unplaced(template, terms({ discount: "50" }), [new Map([["extra.amount", said("200")]])])).toEqual([]);
  });

  test("is nothing on a template without a total", () => {
    expect(unplaced([["{{customer}}"]], terms({ discount: "50" }))).toEqual([]);
  });
});
