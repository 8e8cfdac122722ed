import { expect, test } from "vitest";
import { atRoundRates } from "./catalogue";
import { fill, HUNDRED_GRAMS, press } from "./desk";
import { settled, typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach(atRoundRates);

const plain = (text: string | null) => (text ?? "").replace(/\s+/g, " ").trim();
const result = async (term: string) =>
  plain(await desk.pane.locator(`dt:text-is("${term}") + dd`).first().textContent());
/** Row, counted from 1, and value of a row of the job by its words; the last of several. */
const jobRow = async (label: string) => {
  const rows = await desk.page.evaluate(() => window.workbookPage.read("Job 1001", "A1:C120"));
  const at = rows.findLastIndex(([first, second]) => first?.text === label || second?.text === label);
  return { row: at + 1, values: rows[at]?.map(({ value }) => value) ?? [] };
};
const figureOf = async (label: string) => (await jobRow(label)).values.find((value) => typeof value === "number");

test("a clasp bought by its weight follows the spot of its job, and the form asks for cost or premium", async () => {
  // Fine gold is 25.00 a gram: 3 g of 500 gold at 12.50 and 10 over it.
  await fill(desk, { ...HUNDRED_GRAMS, Clasp: "bought lobster clasp", "Clasp length": "0", "Clasp weight": "3" });
  await fill(desk, { "Clasp premium": "10", "Mark of the clasp": "500" });
  await desk.pane.getByText("Cost lines", { exact: true }).click();
  expect(await result("Clasp")).toBe("USD 67.50");
  // 100 + 3 x 0.5.
  expect(await result("Fine gold")).toContain("101.50 g in the piece");
  // Of the clasp nothing is asked; the spot of tests is.
  const asked = await desk.pane.locator("footer .question > p").allTextContents();
  expect(asked.filter((sentence) => !sentence.startsWith("Spot is "))).toEqual([]);
  await fill(desk, { "Clasp cost": "70" });
  await desk.pane.getByLabel("Clasp cost", { exact: true }).blur();
  await desk.pane.getByText("Clasp premium: found 10 beside clasp cost; give one of the two").waitFor();
  await fill(desk, { "Clasp cost": "" });
  await press(desk, "Make the quote");
  await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001 are in the workbook.").waitFor();
  expect(await figureOf("Clasp")).toBe(67.5);
  expect(await figureOf("Fine gold, finished")).toBe(101.5);
  // 102 x 26.50 less the fee on the lost grams as it is charged, 50 labour, and the clasp.
  const landed = await figureOf("Landed cost");
  expect(plain(String(landed))).toBe("2817.5");
  const { row } = await jobRow("Mark of the clasp");
  await typeIn(desk.page, "Job 1001", `B${row}`, "1000");
  await settled(desk.page);
  // 3 x (25 + 10).
  expect(await figureOf("Clasp")).toBe(105);
});
