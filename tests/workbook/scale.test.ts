import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { cellAt, type Desk, fill, HUNDRED_GRAMS, menu, press, setRate, sheetNames, texts, Workshop, withRates } from "./desk";
import { settled, typeIn } from "./person.mjs";

let workshop: Workshop;
let desk: Desk;

beforeAll(async () => {
  workshop = await Workshop.open();
});
afterAll(() => workshop.close());
beforeEach(async () => {
  desk = await withRates(workshop);
});
afterEach(async () => {
  expect(desk.crashes).toEqual([]);
  await desk.page.close();
});

async function unfold(title: string, field: string): Promise<void> {
  await desk.pane.getByText(title, { exact: true }).click();
  await desk.pane.locator(field).waitFor();
  await settled(desk.page);
}
const weighInOpen = () => unfold("Weigh in", "#weighin-pieces");
const set = async (name: string, values: Readonly<Record<string, string>>) => {
  for (const [key, text] of Object.entries(values)) {
    const control = desk.pane.locator(`#${name}-${key}`);
    if ((await control.evaluate((element) => element.tagName)) === "SELECT") await control.selectOption(text);
    else await control.fill(text);
  }
};
const ADA = { model: "Ada curb", width: "8", mark: "14K", colour: "yellow" };
const plain = (text: string) => text.replaceAll(/\s/g, " ");
const said = async () => plain((await desk.pane.locator(".scalesaid").innerText()).replaceAll("\n", " "));

/** Types a weigh-in and ends with Enter. */
async function weigh(values: Readonly<Record<string, string>>): Promise<void> {
  await set("weighin", values);
  await desk.pane.locator("#weighin-weight").press("Enter");
  await desk.pane.locator(".scalesaid .saidhead").waitFor();
  await settled(desk.page);
}
const row = async (sheet: string, number: number) => (await texts(desk, sheet, `A${number}:V${number}`))[0] ?? [];

describe("look", () => {
  test("all", async () => {
    await weighInOpen();
    await weigh({ ...ADA, job: "1001", stage: "cast", pieces: "10", weight: "20.5" });
    await weigh({ stage: "polished", who: "Bram", pieces: "10", weight: "20.1" });
    await weigh({ stage: "finished", who: "Cleo", pieces: "10", weight: "19.9" });
    await weigh({ stage: "finished", pieces: "10", weight: "20.6", who: "Cleo" });
    console.log(await said());
    console.log(JSON.stringify(await texts(desk, "Weigh-ins", "A4:V9")));
    console.log(JSON.stringify(await texts(desk, "Finisher losses", "A4:H7")));
    console.log(JSON.stringify(await texts(desk, "Link weights", "A4:T6")));
    console.log(await sheetNames(desk));
  });
});
