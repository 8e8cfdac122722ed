import { beforeEach, expect, test } from "vitest";
import { fill, filledCells, HUNDRED_GRAMS, menu, press, sheetNames, texts, withRates } from "./desk";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

beforeEach(async () => {
  await fill(desk, HUNDRED_GRAMS);
});

const syncs = () => desk.page.evaluate(() => window.workbookPage.syncCount);
const made = (number: string) =>
  desk.pane.getByText(`Quote ${number}, Job ${number} and Tickets ${number} are in the workbook.`).waitFor();

/** Two lines more: a pattern of two colours, and hollow links with a cast clasp. */
async function addLines(): Promise<void> {
  await press(desk, "Add a line");
  await fill(desk, {
    ...line("Tide curb"),
    "Colour pattern": "YYW",
    "Weight of one white link": "2.5",
    Plating: "not plated",
    Quantity: "2",
  });
  await press(desk, "Add a line");
  await fill(desk, {
    ...line("Shell curb"),
    "Solid or hollow": "hollow",
    Clasp: "cast box clasp",
    "Clasp weight": "3",
    "Clasp length": "0",
    Engraving: "For Ada",
    "Engraving cost": "0",
  });
}

function line(design: string): Record<string, string> {
  const { Customer: _customer, ...rest } = HUNDRED_GRAMS;
  return { ...rest, Design: design };
}

test("three lines come to a quote, a job and tickets, in as many syncs as one", async () => {
  const before = await syncs();
  await press(desk, "Make the quote");
  await made("1001");
  const one = (await syncs()) - before;
  expect(one).toBeLessThanOrEqual(5);
  await addLines();
  const between = await syncs();
  await press(desk, "Make the quote");
  await made("1002");
  // The table of quotes is there by now, which asks for no more.
  expect((await syncs()) - between).toBeLessThanOrEqual(one);
  const quote = (await texts(desk, "Quote 1002", "A10:B12")).map(([design, words]) => [design, words]);
  expect(quote.map(([design]) => design)).toEqual(["Plain curb", "Tide curb", "Shell curb"]);
  expect(quote.map(([, words]) => words)).toEqual([
    "Chain in yellow 1000 gold, solid links. Finished length 12.5 in, 50 links, about 100.0 g.",
    "Chain in yellow and white 1000 gold, solid links: two yellow links, then one white, repeated. The white links are not plated. Finished length 12.5 in, 50 links, about 108.0 g each.",
    "Chain in yellow 1000 gold, hollow links. Finished length 12.5 in, 50 links, about 103.0 g. Box clasp. Engraved: “For Ada”.",
  ]);
  const job = (await texts(desk, "Job 1002", "A1:A260")).flat();
  expect(job.filter((text) => /^\d\. .*, chain, /.test(text))).toEqual([
    "1. Plain curb, chain, 1000, solid",
    "2. Tide curb, chain, 1000, solid",
    "3. Shell curb, chain, 1000, hollow",
  ]);
  const tickets = (await texts(desk, "Tickets 1002", "A1:A80")).flat().filter((text) => /ticket$/.test(text));
  expect(tickets).toEqual(["Caster's ticket", "Polisher's ticket", "Engraver's ticket"]);
});

test("no cell of the tickets says a cost or the customer, and the job has no faults", async () => {
  await addLines();
  await press(desk, "Make the quote");
  await made("1001");
  const words = (await filledCells(desk, "Tickets 1001")).map(({ text }) => text).join("\n");
  expect(words).not.toMatch(/cost|price|margin|USD|Quillfeather/i);
  const faults = await desk.page.evaluate(() =>
    ["Job 1001", "Tickets 1001"].flatMap((sheet) =>
      window.workbookPage
        .read(sheet, "A1:H260")
        .flat()
        .flatMap(({ error, formula }) => (error ? [`${formula}: ${error.code}`] : [])),
    ),
  );
  expect(faults).toEqual([]);
});

test("a fill that fails takes its tickets back with the rest", async () => {
  await menu(desk, "protect", "Rates");
  await press(desk, "Make the quote");
  await desk.pane.getByText("is protected").first().waitFor();
  expect(await sheetNames(desk)).toEqual(["Sheet1", "Rates", "Quote template"]);
});

test("a number whose tickets alone are left is not given again", async () => {
  await menu(desk, "rename", "Sheet1", "Tickets 1001");
  await press(desk, "Make the quote");
  await made("1002");
  expect(await sheetNames(desk)).toContain("Tickets 1002");
});
