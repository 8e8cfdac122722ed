import { expect, test } from "vitest";
import { type CautionKey, cautionText } from "../../../taskpane/wording/cautions";
import { type Desk, fill, HUNDRED_GRAMS, press, setRate, view, withRates } from "../../workbook/desk";
import { settled } from "../../workbook/person.mjs";
import { deskForEach } from "../../workbook/workshop";

const desk = deskForEach(withRates);

/** The cautions of the order form that apply now, folded away or not. */
async function said(): Promise<string[]> {
  await settled(desk.page);
  return desk.pane.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>("form .caution, section.result .caution")]
      .filter((each) => !each.closest("[hidden]") && !each.querySelector(".caution"))
      .map((each) => each.textContent ?? ""),
  );
}
const words = (...keys: CautionKey[]) => keys.map(cautionText);

test("an order has no caution before a mark, a colour or a customer's gold is typed; each comes at its step and goes with it", async () => {
  expect(await said()).toEqual([]);
  const { Mark: mark, ...order } = HUNDRED_GRAMS;
  await fill(desk, order);
  expect(await said()).toEqual([]);
  await fill(desk, { Mark: mark });
  expect(await said()).toEqual(words("mark"));
  expect(await desk.pane.getByText(cautionText("mark")).isVisible(), "it is folded away").toBe(false);
  await fill(desk, { Colour: "white" });
  expect(await said()).toEqual(words("mark", "nickel", "plating"));
  await fill(desk, { Colour: "yellow", "Solid or hollow": "hollow" });
  expect(await said()).toEqual(words("mark", "hollow"));
  await fill(desk, { "Solid or hollow": "solid", "Links with stones": "all links" });
  expect(await said()).toEqual(words("mark", "stones"));
  await fill(desk, { "Links with stones": "no links", "Customer's gold": "5" });
  expect(await said()).toEqual(words("mark", "publicGold"));
  await fill(desk, { "Customer's gold": "", Mark: "" });
  expect(await said()).toEqual([]);
});

test("a total above USD 10,000 has the caution for cash under the terms, and one of 10,000 or of euros has not", async () => {
  const own = { ...HUNDRED_GRAMS, "This line's price by": "own price", "This line's figure": "10000" };
  await fill(desk, own);
  expect(await said()).toEqual(words("mark"));
  await fill(desk, { "This line's figure": "10000.01" });
  expect(await said()).toEqual(words("mark", "cash"));
  await setRate(desk, "Currency", "EUR");
  expect(await said()).toEqual(words("mark"));
});

test("quotes of one customer that come to more than USD 10,000 together have it under the open quotes, once", async () => {
  const make = async (price: string) => {
    await fill(desk, { ...HUNDRED_GRAMS, "This line's price by": "own price", "This line's figure": price });
    await press(desk, "Make the quote");
    await desk.pane.getByText("are in the workbook", { exact: false }).waitFor();
  };
  await make("6000");
  await make("4000");
  const together = (desk: Desk) => desk.pane.locator(".besides").first();
  await view(desk, "Decide");
  await desk.pane.getByText("Open quotes and spot", { exact: true }).click();
  await desk.pane.getByText("2 open quotes", { exact: false }).waitFor();
  expect(await together(desk).textContent()).not.toContain(cautionText("cash"));
  await view(desk, "Quote");
  await make("0.01");
  await view(desk, "Decide");
  await desk.pane.getByText("Quotes of Ada Quillfeather come to USD 10,000.01 together", { exact: false }).waitFor();
  const text = (await together(desk).textContent()) ?? "";
  expect(text.split(cautionText("cash"))).toHaveLength(2);
});

test("the estimate from wax or resin has its four, each with its rule", async () => {
  await view(desk, "Links");
  await desk.pane.getByText("Weight from wax, another alloy, another width", { exact: true }).click();
  const part = desk.pane.locator("section.estimate", { hasText: "From wax or resin" });
  await part.waitFor();
  expect(await part.locator(".caution").allTextContents()).toEqual(words("casting", "burnout", "resin", "alcohol"));
});
