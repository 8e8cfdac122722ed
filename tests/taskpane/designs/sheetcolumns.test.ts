import { expect, test } from "vitest";
import { PRICE_COLUMN_KEYS, Quotient, spotsAround } from "../../../src/index";
import { isPriced } from "../../../taskpane/designs/pricing";
import { cellOf, csvText, headOf, isCustomerColumn } from "../../../taskpane/designs/sheetcolumns";
import { rangeInSlices } from "../../../taskpane/designs/spotrange";
import type { Chosen } from "../../../taskpane/designtable/chosendesigns";
import { BENCH_COLUMNS, CUSTOMER_COLUMNS } from "../../../taskpane/wording/pricesheetcolumns";
import { priceLines } from "../../src/designlists";
import { ratesOf } from "../../src/orders";

const HEADER = ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link", "Solid or hollow"];
const RATES = ratesOf();
/** 100 links of 1 g: at 25.00 a gram, casting fee 1.50, labour 50 and 2 g lost: 2,750 landed, x 1.3 = 3,575. */
const CURB = ["Curb", 250, "yellow", 25, 4, 1, "hollow"];

test("customers are offered no cost; every column is offered to somebody once", () => {
  const costs = PRICE_COLUMN_KEYS.filter((key) => !["design", "links", "finished", "price"].includes(key));
  expect(CUSTOMER_COLUMNS.filter((column) => costs.some((cost) => cost === column))).toEqual([]);
  expect(BENCH_COLUMNS).toEqual(costs);
  expect(BENCH_COLUMNS.filter(isCustomerColumn)).toEqual([]);
});

test("a line's cells, rounded once, and hollow is said", () => {
  const [line] = priceLines([HEADER, CURB], RATES).filter(isPriced);
  if (!line) throw new Error("not priced");
  expect(CUSTOMER_COLUMNS.map((column) => csvText(cellOf(line, column, RATES)))).toEqual([
    "Curb, hollow",
    "Chain in yellow 250 gold, hollow links.",
    "250",
    "yellow",
    "25 in",
    "100",
    "100.0",
    "3575.00",
  ]);
  expect(csvText(cellOf(line, "landed", RATES))).toBe("2750.00");
  // 825 / 3,575 = 0.2307…
  expect(csvText(cellOf(line, "margin", RATES))).toBe("0.231");
  expect([headOf("price", RATES), headOf("landed", RATES)]).toEqual(["Price, USD", "Landed cost, USD"]);
});

test("a catalogue at spots around: prices, costs and lines below the floor (hand arithmetic)", async () => {
  const cells = [HEADER.slice(0, 6), CURB.slice(0, 6), ["Odd", "25K", "yellow", 25, 4, 1]];
  const chosen: Chosen = {
    designs: { sheet: "D", sheetId: "1", row: 0, column: 0, table: undefined, cells },
    matches: [],
    headers: HEADER.slice(0, 6),
    direct: true,
  };
  const slicing = { progress: () => undefined, signal: new AbortController().signal };
  const spots = spotsAround(RATES.spot, Quotient.of("0.2"), 1);
  const range = await rangeInSlices(chosen, RATES, { spots, present: 1, as: [] }, slicing);
  // At 20 a gram 2,240 x 1.3 = 2,912, up to 2,915; at 30 3,260 x 1.3 = 4,238, up to 4,240; 3,260 / 0.9 = 3,622 is above 3,575.
  expect(range.at.map(({ prices }) => prices.value().toString())).toEqual(["2915", "3575", "4240"]);
  expect(range.at.map(({ landed }) => landed.value().toString())).toEqual(["2240", "2750", "3260"]);
  expect(range.at.map(({ belowFloor }) => belowFloor)).toEqual([0, 0, 1]);
  expect(range.lines).toHaveLength(1);
});
