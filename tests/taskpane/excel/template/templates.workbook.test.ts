import { beforeAll, describe, expect, test } from "vitest";
import type { OrderForm } from "../../../../src/order/order";
import { ORDER, RATES } from "../../../src/orders";
import { texts, withRates } from "../../../workbook/desk";
import { settled } from "../../../workbook/person.mjs";
import { deskForAll } from "../../../workbook/workshop";
import { fillTemplate, pagesOf } from "../papers";

const { customer: _customer, spot: _spot, discount: _discount, ...PLAIN } = ORDER;
const PLATED = { ...RATES, plating: "40", platingMetal: "rhodium", tax: "0.08", taxIs: "on top", tolerance: "0.05" };
/** Three lines of which each says much: a clasp, stones, an engraving, a pattern, hollow links of an alloy by name. */
const RICH = [
  {
    ...PLAIN,
    design: "Plain curb 8 mm",
    mark: "14K",
    clasp: "cast box clasp",
    claspWeight: "3.4",
    findings: "two jump rings",
    findingsCost: "14",
    engraving: "For Ada, always",
    engravingCost: "35",
  },
  {
    ...PLAIN,
    design: "Two-colour curb",
    mark: "585",
    kind: "bracelet",
    pattern: "YYW",
    linkWeightWhite: "2.1",
    quantity: "2",
    stonesOn: "every n-th link",
    stoneEvery: "3",
    stoneDiameter: "2.5",
    stonePrice: "12",
  },
  {
    ...PLAIN,
    design: "Hollow curb 12 mm",
    mark: "750",
    colour: "own",
    colourName: "champagne",
    composition: "Au 750 Ag 140 Cu 110",
    solidity: "hollow",
    // 98.4 links in 24 in: 98 of them reach 23.90 in.
    linksPer: "4.1",
  },
];
const TERMS = {
  customer: "Ada Quillfeather",
  settled: "by final weight",
  spotShown: "yes",
  discount: "0.05",
  shipping: "15",
  ownGoldWeight: "12.5",
  ownGoldMark: "14K",
  ownGoldUse: "used",
};

/** An order of so many lines that uses every row of a quote, free lines too. */
function orderOf(lines: number): OrderForm {
  return {
    order: TERMS,
    lines: Array.from({ length: lines }, (_, index) => ({ ...RICH[index % 3], setup: String(index) })),
    extras: [
      { text: "Gift box", amount: "12", cost: "5" },
      { text: "Old clasp taken in", amount: "-20", cost: "" },
    ],
  };
}
const ONE_PLAIN: OrderForm = {
  order: { customer: "Ada Quillfeather" },
  lines: [{ ...PLAIN, design: "Plain curb" }],
  extras: [],
};

describe.each([
  { paper: "Letter", locale: "en-US" },
  { paper: "A4", locale: "en-GB" },
])("the built-in quote on $paper", ({ paper, locale }) => {
  const desk = deskForAll((workshop) => withRates(workshop, `locale=${locale}`));

  test("prints on that paper, its header row repeated", async () => {
    const { setup } = await desk.page.evaluate(() => window.workbookPage.print("Quote template"));
    expect(setup).toMatchObject({ paperSize: paper, zoom: { horizontalFitToPages: 1 } });
    const head = setup.titleRows?.row ?? -1;
    expect((await texts(desk, "Quote template", `A${head + 1}:E${head + 1}`))[0]).toContain("Amount, {{currency}}");
  });

  test.each([
    [1, 1],
    [8, 1],
    [20, 2],
  ])("of %i lines prints on %i pages", async (lines, pages) => {
    const sheet = `Quote of ${lines}`;
    const unknown = await fillTemplate(desk, "Quote template", sheet, { form: orderOf(lines), rates: PLATED, locale });
    expect(unknown).toEqual([]);
    expect(await pagesOf(desk, sheet)).toBe(pages);
    const said = (await texts(desk, sheet, "A1:E120")).flat();
    expect(said.filter((text) => /^(Plain|Two-colour|Hollow) curb/.test(text))).toHaveLength(lines);
  });

  test("says mark, colour, solid or hollow, about what weight, what is included and how long it holds", async () => {
    await fillTemplate(desk, "Quote template", "Quote of three", { form: orderOf(3), rates: PLATED, locale });
    const html = await desk.page.evaluate(() => window.workbookPage.print("Quote of three").html);
    expect(html).toContain("Chain, 14K gold, yellow, solid; 24 in, 96 links");
    expect(html).toContain("Bracelet, 585 gold, yellow, white, solid, white links plated with rhodium;");
    expect(html).toContain("Chain, 750 gold, champagne, hollow; 24 in, 98 links reaching about 23.9 in");
    // 14K at 100 a gram of fine gold is 58.33.
    expect(html).toMatch(/links, 195\.40 g;|>195\.40</);
    expect(html).toContain("A gram more or less: USD 58.33");
    expect(html).toContain("The weight stated is without stones (0.2 g a carat).");
    expect(html).toContain("A gram more or less is stated before the discount of 5%.");
    expect(html).toContain("Gift box");
    expect(html).toContain("The price includes gold, casting, joining, polishing");
    expect(html).toContain("This price holds until");
    // 3,110.34768 as Rates hold it.
    expect(html).toContain("It rests on a gold price of USD 3,110.35 an ounce (31.1 g) of fine gold");
    expect(html).toContain("within 5% of the weight stated");
    expect(html).toContain("12.50 g marked 14K, used in this work");
    expect(html).not.toMatch(/\{\{|\[\[/);
  });

  test("leaves out every row that a plain order has nothing for", async () => {
    await fillTemplate(desk, "Quote template", "Plain quote", {
      form: ONE_PLAIN,
      rates: { ...PLATED, tax: "0" },
      locale,
    });
    const html = await desk.page.evaluate(() => window.workbookPage.print("Plain quote").html);
    expect(html).not.toMatch(
      /Discount|Shipping|Your gold|To pay|of which|Sales tax|own gold|gold price of|stones|engraved/,
    );
    expect(html).toContain("Subtotal");
    expect(html).toContain("The price is fixed; the finished weight may differ by 5%");
  });
});

/** A PNG of one dark dot, in base64. */
const DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR4nGNgYGD4DwABBAEAX+XDSwAAAABJRU5ErkJggg==";

describe("a template of the person's own, in another language", () => {
  const desk = deskForAll(withRates);
  beforeAll(async () => {
    await desk.pane.evaluate(async (png) => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.add("Angebot template");
        const put = (address: string, cells: string[][]) => {
          sheet.getRange(address).values = cells;
        };
        put("B2:C2", [["Angebot {{number}} für {{customer}}", ""]]);
        sheet.getRange("B2:E2").merge();
        sheet.getRange("B2").format.font.name = "Georgia";
        sheet.getRange("B2").format.font.size = 19;
        put("B4:E4", [["Stück", "Beschreibung", "", "Betrag"]]);
        sheet.getRange("B4:E4").format.fill.color = "#1F3A2E";
        sheet.getRange("B4:E4").format.font.color = "#FFFFFF";
        const words = "yellow=Gelbgold|white=Weißgold|rose=Roségold|champagne=Champagner";
        put("B5:E5", [["{{line.quantity}}", "{{line.design}}", "", "{{line.amount}}"]]);
        put("C6:D6", [[`{{line.colour|${words}}}, {{line.solid|solid=massiv|hollow=hohl}}`, ""]]);
        sheet.getRange("C6:D6").merge();
        sheet.getRange("C6").format.font.italic = true;
        put("C8:E8", [["{{extra.text}}", "", "{{extra.amount}}"]]);
        put("C10:E10", [["Summe", "", "{{total}}"]]);
        sheet.getRange("E10").numberFormat = [['#,##0.00 "Dollar"']];
        sheet.getRange("B:B").format.columnWidth = 45;
        sheet.getRange("C:C").format.columnWidth = 190;
        const [emblem, seal] = ["E2", "B10"].map((cell) => sheet.getRange(cell).load("left,top"));
        await context.sync();
        for (const [name, under] of [
          ["Emblem", emblem],
          ["Seal", seal],
        ] as const) {
          if (!under) continue;
          const picture = sheet.shapes.addImage(png);
          picture.set({ name, left: under.left + 3, top: under.top + 2, width: 24, height: 16 });
        }
        sheet.pageLayout.orientation = Excel.PageOrientation.landscape;
        sheet.pageLayout.setPrintArea("B2:E10");
        await context.sync();
      });
    }, DOT);
    await settled(desk.page);
  });

  test.each([
    { lines: 1, colours: ["Gelbgold, massiv"], total: 10 },
    { lines: 3, colours: ["Gelbgold, massiv", "Gelbgold, Weißgold, massiv", "Champagner, hohl"], total: 14 },
  ])(
    "is filled for $lines and keeps its merged cells, fonts, fills, widths, pictures and page",
    async ({ lines, colours, total }) => {
      const sheet = `Angebot ${lines}`;
      await fillTemplate(desk, "Angebot template", sheet, { form: orderOf(lines), rates: PLATED, locale: "de-DE" });
      const rows = await texts(desk, sheet, "A1:E20");
      expect(rows[1]?.[1]).toBe("Angebot 2001 für Ada Quillfeather");
      const blocks = Array.from({ length: lines }, (_, index) => 4 + 2 * index);
      expect(blocks.map((row) => rows[row]?.[2])).toEqual(
        ["Plain curb 8 mm", "Two-colour curb", "Hollow curb 12 mm"].slice(0, lines),
      );
      expect(blocks.map((row) => rows[row + 1]?.[2])).toEqual(colours);
      // The free lines stand below the lines, one row each, and the sum below them.
      const below = 5 + 2 * (lines - 1) + 2;
      expect([rows[below]?.[2], rows[below + 1]?.[2]]).toEqual(["Gift box", "Old clasp taken in"]);
      expect(rows[total]?.[2]).toBe("Summe");
      expect(rows[total]?.[4]).toMatch(/^[\d,]+\.\d\d Dollar$/);
      const kept = await desk.pane.evaluate(
        ([name, lastBlock, lastRow]) =>
          Excel.run(async (context) => {
            const made = context.workbook.worksheets.getItem(name);
            const merged = made.getRange("A1:E20").getMergedAreasOrNullObject();
            merged.areas.load("items/address");
            const title = made.getRange("B2").load("format/font/name,format/font/size");
            const head = made.getRange("B4").load("format/fill/color,format/font/color,format/columnWidth");
            const words = made.getRange(`C${lastBlock + 2}`).load("format/font/italic");
            made.pageLayout.load("orientation");
            made.shapes.load("items/name,items/left,items/top,items/width,items/height");
            const under = ["E2", `B${lastRow}`].map((cell) => made.getRange(cell).load("left,top"));
            await context.sync();
            return {
              pictures: made.shapes.items.map(({ name, left, top, width, height }, index) => {
                const cell = under[index];
                return [name, left - (cell?.left ?? 0), top - (cell?.top ?? 0), width, height];
              }),
              merged: merged.areas.items.map(({ address }) => address.split("!")[1]).sort(),
              title: [title.format.font.name, title.format.font.size],
              head: [head.format.fill.color, head.format.font.color, head.format.columnWidth],
              italic: words.format.font.italic,
              orientation: made.pageLayout.orientation,
            };
          }),
        [sheet, blocks.at(-1) ?? 0, total + 1] as const,
      );
      expect(kept).toEqual({
        // Over the cells they were put on, though rows were added between them.
        pictures: [
          ["Emblem", 3, 2, 24, 16],
          ["Seal", 3, 2, 24, 16],
        ],
        merged: ["B2:E2", ...blocks.map((row) => `C${row + 2}:D${row + 2}`)].sort(),
        title: ["Georgia", 19],
        head: ["#1F3A2E", "#FFFFFF", 45],
        italic: true,
        orientation: "Landscape",
      });
      const { setup, html } = await desk.page.evaluate((name) => window.workbookPage.print(name), sheet);
      expect(html.match(/<img alt="(Emblem|Seal)"/g)).toHaveLength(2);
      expect(setup.area).toEqual({ row: 1, column: 1, rows: total, columns: 4 });
    },
  );

  test("loses the rows of free lines where there are none", async () => {
    await fillTemplate(desk, "Angebot template", "Ohne", { form: ONE_PLAIN, rates: PLATED, locale: "de-DE" });
    const html = await desk.page.evaluate(() => window.workbookPage.print("Ohne").html);
    expect(html).not.toContain("{{");
    expect(html).toContain("Plain curb");
  });
});
