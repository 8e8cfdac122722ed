import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { binaryStl, boxAt } from "../src/modelfile";
import { clearRate, fill, HUNDRED_GRAMS, setRate, view, withRates } from "./desk";
import { settled } from "./person.mjs";
import { set, unfold } from "./scale";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "curbwright-links-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const ESTIMATES = "Weight from wax, another alloy, another width";
const plain = (text: string | null) => (text ?? "").replaceAll(/\s+/g, " ").trim();
const written = () => desk.pane.getByLabel("Weight of one link", { exact: true }).first().inputValue();

/** A box of 2 x 3 x 4 mm at 10 g/cm³: 0.24 g cast. */
async function weighModel(): Promise<void> {
  await view(desk, "Links");
  await desk.pane.getByText("Link from a model", { exact: true }).click();
  const path = join(folder, "box.stl");
  await writeFile(path, binaryStl(boxAt([2, 3, 4], [0, 0, 0])));
  const chooser = desk.page.waitForEvent("filechooser");
  await desk.pane.getByRole("button", { name: "Choose an STL file" }).click();
  await (await chooser).setFiles(path);
  await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
  await fill(desk, { "Density taken from": "own", Density: "10" });
}

async function estimate(form: string, values: Readonly<Record<string, string>>): Promise<void> {
  await unfold(desk, ESTIMATES);
  await set(desk, form, values);
}

async function keepLink(): Promise<void> {
  await unfold(desk, "Kept links");
  await set(desk, "link", { model: "Ada curb", width: "8" });
  await desk.pane.getByRole("button", { name: "Keep this link" }).click();
  await desk.pane.getByLabel("Link from the table Links").waitFor();
}

/** Every place of the pane that offers a link's weight to the order, and where its button stands. */
const PLACES = {
  "3-D model": { make: weighModel, within: ".weighed" },
  "wax or resin": {
    make: () => estimate("wax", { wax: "1", waxDensity: "1", metalDensity: "13.5" }),
    within: "section.estimate:has(#wax-wax)",
  },
  "another alloy, from a casting": {
    make: () => estimate("recast", { weight: "2", stage: "cast", fromDensity: "13", toDensity: "15.6" }),
    within: "section.estimate:has(#recast-weight)",
  },
  "another alloy, from a finished link": {
    make: () => estimate("recast", { weight: "2", fromDensity: "13", toDensity: "15.6" }),
    within: "section.estimate:has(#recast-weight)",
  },
  "another width, from a casting": {
    make: () => estimate("resize", { weight: "2", stage: "cast", fromWidth: "8", toWidth: "10" }),
    within: "section.estimate:has(#resize-weight)",
  },
  "another width, from a finished link": {
    make: () => estimate("resize", { weight: "2", fromWidth: "8", toWidth: "10" }),
    within: "section.estimate:has(#resize-weight)",
  },
  "kept links": { make: keepLink, within: ".scalerow:has(#link-choice)" },
} as const;
type Place = keyof typeof PLACES;
const CAST = ["3-D model", "wax or resin", "another alloy, from a casting", "another width, from a casting"] as const;

const offer = (place: Place) => desk.pane.locator(`${PLACES[place].within} .linkoffer`);
const button = (place: Place) => offer(place).getByRole("button");
const words = async (place: Place) => plain(await button(place).textContent());
const sentence = async (place: Place) => plain(await offer(place).locator("p").textContent());

beforeEach(async () => {
  await fill(desk, HUNDRED_GRAMS);
});

// Hand arithmetic at a loss of 4.5 % of the cast weight: 0.24 x 0.955 = 0.2292; 13.5 x 0.955 = 12.8925;
// 2 x 15.6/13 = 2.4, x 0.955 = 2.292; 2 x (10/8)³ = 3.90625, x 0.955 = 3.73046875.
const OFFERED: Readonly<Record<Place, readonly [words: string, filled: string]>> = {
  "3-D model": ["Use in the order: 0.229 g finished (0.240 g cast less 4.5% loss)", "0.2292"],
  "wax or resin": ["Use in the order: 12.89 g finished (13.50 g cast less 4.5% loss)", "12.8925"],
  "another alloy, from a casting": ["Use in the order: 2.29 g finished (2.40 g cast less 4.5% loss)", "2.292"],
  "another alloy, from a finished link": ["Use in the order: 2.40 g finished", "2.4"],
  "another width, from a casting": ["Use in the order: 3.73 g finished (3.91 g cast less 4.5% loss)", "3.73047"],
  "another width, from a finished link": ["Use in the order: 3.91 g finished", "3.90625"],
  "kept links": ["Use in the order: 2.00 g finished", "2"],
};

describe("a link's weight goes into the order finished", () => {
  beforeEach(async () => {
    await setRate(desk, "Loss", "0.045");
  });

  test.each(Object.keys(PLACES) as Place[])("from %s", async (place) => {
    await PLACES[place].make();
    const [said, filled] = OFFERED[place];
    await desk.pane.getByRole("button", { name: said, exact: true }).waitFor();
    expect(await words(place)).toBe(said);
    await fill(desk, { "Weight of one link": "9" });
    await view(desk, "Links");
    await button(place).click();
    await settled(desk.page);
    expect(await written()).toBe(filled);
  });

  test("and what is cast for the order is what the model weighs: 50 links of 0.24 g", async () => {
    await weighModel();
    await button("3-D model").click();
    await settled(desk.page);
    const result = plain(await desk.pane.locator(".figures").first().textContent());
    // 50 x 0.2292 finished; 50 x 0.24 cast.
    expect(result).toContain("11.46 g");
    expect(result).toContain("12.00 g");
  });
});

describe("where Rates do not say the loss of one link", () => {
  test.each(CAST)("a cast weight from %s is not offered, and the pane says what is missing", async (place) => {
    await clearRate(desk, "Loss");
    await PLACES[place].make();
    expect(await button(place).count()).toBe(0);
    expect(await sentence(place)).toContain("Correct the loss on the Rates sheet. Polish loss: found nothing");

    // Grams are per piece.
    await setRate(desk, "Loss", "1.2");
    await setRate(desk, "LossBasis", "grams");
    await desk.pane.getByText("The Rates sheet gives the loss in grams per piece", { exact: false }).first().waitFor();
    expect(await button(place).count()).toBe(0);
    expect(await written()).toBe("2");
  });

  test("it is offered once they do, counted from the finished weight: 13.5 / 1.08 = 12.5", async () => {
    await clearRate(desk, "Loss");
    await PLACES["wax or resin"].make();
    await setRate(desk, "LossBasis", "finished");
    await setRate(desk, "Loss", "0.08");
    const said = "Use in the order: 12.50 g finished (13.50 g cast less a loss of 8% of the finished weight)";
    await desk.pane.getByRole("button", { name: said, exact: true }).click();
    await settled(desk.page);
    expect(await written()).toBe("12.5");
  });

  test("a finished weight is offered all the same", async () => {
    await clearRate(desk, "Loss");
    const place = "another width, from a finished link";
    await PLACES[place].make();
    expect(await words(place)).toBe("Use in the order: 3.91 g finished");
  });
});
