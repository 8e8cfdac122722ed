import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { TorusGeometry } from "three";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { binaryStl, boxAt, bytesOf, stlText, TETRAHEDRON, textStl } from "../src/modelfile";
import { fill, press, view } from "./desk";
import { settled } from "./person.mjs";
import { deskForEach, Workshop } from "./workshop";

let folder: string;
const inWorkshop = (workshop: Workshop) => workshop.sitDown("book=workshop");
const desk = deskForEach(inWorkshop, "software");

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "curbwright-models-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

beforeEach(async () => {
  await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
});

const BOX = () => binaryStl(boxAt([2, 3, 4], [0, 0, 0]));
const open = async () => {
  await view(desk, "Links");
  await desk.pane.getByText("Link from a model", { exact: true }).click();
};
const said = (sentence: string | RegExp) => desk.pane.getByText(sentence).first().waitFor();
const headline = () => desk.pane.locator(".weighed .headline").textContent();

/** Chooses a file as a person does, from the disk. */
async function choose(name: string, bytes: Uint8Array): Promise<void> {
  const path = join(folder, name);
  await writeFile(path, bytes);
  const chooser = desk.page.waitForEvent("filechooser");
  await desk.pane.getByRole("button", { name: /Choose (an STL|another) file/ }).click();
  await (await chooser).setFiles(path);
}

async function examine(name: string, bytes: Uint8Array): Promise<void> {
  await open();
  await choose(name, bytes);
  await said(new RegExp(`^${name}, [\\d,]+ triangles$`));
}

/** Lets files fall on the place for them. */
async function drop(...files: readonly (readonly [string, Uint8Array])[]): Promise<void> {
  const given = files.map(([name, bytes]) => [name, [...bytes]] as const);
  const transfer = await desk.pane.evaluateHandle((list) => {
    const made = new DataTransfer();
    for (const [name, bytes] of list) made.items.add(new File([Uint8Array.from(bytes)], name));
    return made;
  }, given);
  await desk.pane.locator(".drop").dispatchEvent("drop", { dataTransfer: transfer });
}

/** Keeps a worker's last word from the pane until the answer is called. */
async function withoutReport(): Promise<() => Promise<void>> {
  await desk.pane.evaluate(() => {
    const usual = Object.getOwnPropertyDescriptor(Worker.prototype, "onmessage");
    if (!usual) throw new Error("Workers have no onmessage here");
    Object.defineProperty(Worker.prototype, "onmessage", {
      ...usual,
      set(tell: (event: MessageEvent) => void) {
        usual.set?.call(this, (event: MessageEvent) => event.data.kind === "examined" || tell(event));
      },
    });
    Object.assign(window, { goOn: () => Object.defineProperty(Worker.prototype, "onmessage", usual) });
  });
  return () => desk.pane.evaluate("goOn()");
}

const scripts = () =>
  desk.pane.evaluate(() =>
    performance
      .getEntriesByType("resource")
      .map(({ name }) => new URL(name).pathname.split("/").pop() ?? "")
      .filter((name) => name.startsWith("model")),
  );

test("nothing of it is loaded before it is opened, the picture only with a model", async () => {
  expect(await scripts()).toEqual([]);
  await open();
  await desk.pane.getByRole("button", { name: "Choose an STL file" }).waitFor();
  expect(await scripts()).toEqual(["model.js"]);
  await choose("box.stl", BOX());
  await desk.pane.locator(".stage canvas").waitFor();
  expect(await scripts()).toContain("modelpicture.js");
});

describe("a box of 2 x 3 x 4", () => {
  test("weighs 0.24 g in millimetres at 10 g/cm³, and goes into the order", async () => {
    await examine("box.stl", BOX());
    await said("2 × 3 × 4 mm");
    // 2 x 25.4, 3 x 25.4, 4 x 25.4; 101.6 mm is no link.
    await said("50.8 × 76.2 × 101.6 mm");
    await fill(desk, { Density: "10" });
    await said("Choose the unit first.");
    expect(await headline()).toBe("–");
    await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
    await said("2 × 3 × 4 mm · 24 mm³");
    expect(await headline()).toBe("0.240 g");
    // The invented workshop loses 4.5 % of the cast weight: 0.24 x 0.955.
    await press(desk, "Use in the order: 0.229 g finished (0.240 g cast less 4.5% loss)");
    // The order is shown, with the cursor in what was filled.
    expect(await desk.pane.getByLabel("Weight of one link", { exact: true }).inputValue()).toBe("0.2292");
    expect(await desk.pane.getByLabel("Weight of one link", { exact: true }).evaluate((e) => e.matches(":focus"))).toBe(
      true,
    );
  });

  test("in inches it is too large for a link, and says so", async () => {
    await examine("box.stl", BOX());
    await fill(desk, { Density: "10" });
    await desk.pane.getByRole("radio", { name: /Inches/ }).check();
    await said(/largest side would be 101\.6 mm: too large for a link/);
    // 24 in³ x 16387.064 x 10 / 1000.
    expect(await headline()).toBe("3,932.895 g");
    await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
    await desk.pane.getByText(/too large for a link/).waitFor({ state: "hidden" });
  });

  test("to twice its width it weighs eight times as much, less the shrinkage of wax and metal", async () => {
    await examine("box.stl", textStl(boxAt([2, 3, 4], [0, 0, 0])));
    await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
    await fill(desk, { Density: "10", "Cast it": "toWidth", "Wanted width": "6" });
    // Its middle side, 3, is offered as its width.
    await said(/Every length is 200 % of the drawn one, the pitch too/);
    expect(await headline()).toBe("1.920 g");
    await fill(desk, { Wax: "2.5", Metal: "1" });
    await said("3.475 % of each length together.");
    // 1.92 x 0.96525³ = 1.92 x 0.899333…
    expect(await headline()).toBe("1.727 g");
    await fill(desk, { "Links among the ticked": "2" });
    expect(await headline()).toBe("0.863 g");
    // With seats for stones it keeps its size.
    await desk.pane.getByLabel("The model has seats for stones").check();
    await said(/seats for stones, which would no longer fit their stones/);
    expect(await headline()).toBe("–");
  });

  test("takes its density from a composition, and says what is wrong with one", async () => {
    await examine("box.stl", BOX());
    await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
    await fill(desk, { "Density taken from": "mixed", Au: "583", Ag: "104", Cu: "313" });
    // The published worked example: 13.33. 24 x 13.33 / 1000.
    await said(/^13\.33 g\/cm³\./);
    expect(await headline()).toBe("0.320 g");
    await fill(desk, { Cu: "500" });
    await said(/found parts that sum to 1187; give parts by weight/);
    expect(await headline()).toBe("–");
    await fill(desk, { "Density taken from": "own", Density: "13,5" });
    // What is wrong is told once the person goes on.
    await desk.page.keyboard.press("Tab");
    await said(/comma where a point would be right/);
  });
});

test("the order's gold is where the alloy begins", async () => {
  await fill(desk, { Mark: "585", Colour: "yellow" });
  await examine("box.stl", BOX());
  await said(/typical mix, common practice: Au 583, Ag 104, Cu 313/);
});

test("a file that is dropped is examined; several, or none, are told of", async () => {
  await open();
  await desk.pane.getByRole("button", { name: "Choose an STL file" }).waitFor();
  await drop(["box.stl", BOX()], ["other.stl", BOX()]);
  await said("Several files were dropped; drop one STL file.");
  await drop();
  await said("What was dropped is no file; drop an STL file.");
  await drop(["box.stl", BOX()]);
  await said("box.stl, 12 triangles");
  expect(await desk.pane.getByText(/Several files/).count()).toBe(0);
});

test("a worker that cannot be loaded is told of, and the next try succeeds", async () => {
  await desk.page.route("**/modelworker.js?*", (route) => route.abort());
  await open();
  await choose("box.stl", BOX());
  await said(/The model could not be examined: .* Try once more/);
  await desk.page.unroute("**/modelworker.js?*");
  await choose("box.stl", BOX());
  await said("box.stl, 12 triangles");
});

test("a file that falls beside its place does not replace the pane", async () => {
  await open();
  await fill(desk, { Customer: "Ada Quillfeather" });
  const kept = await desk.pane.evaluate(() => {
    const transfer = new DataTransfer();
    transfer.items.add(new File(["solid"], "box.stl"));
    const event = new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true });
    document.querySelector("h1")?.dispatchEvent(event);
    return event.defaultPrevented;
  });
  expect(kept).toBe(true);
});

describe("what is wrong is said, and nothing is weighed silently", () => {
  test.each([
    ["picture.stl", Uint8Array.from({ length: 300 }, (_, i) => (i * 89) % 256), /cut off or no STL/],
    ["empty.stl", new Uint8Array(0), /found an empty file/],
    ["comma.stl", bytesOf(stlText(TETRAHEDRON).replace("vertex 0 1 0", "vertex 0 1,5 0")), /line 5, which has a comma/],
    ["cut.stl", BOX().slice(0, 400), /found 6 of the 12 triangles/],
  ] as const)("%s", async (name, bytes, sentence) => {
    await open();
    await choose(name, bytes);
    await said(sentence);
    // And the next file is taken as if nothing had been.
    await choose("box.stl", BOX());
    await said("box.stl, 12 triangles");
    expect(await desk.pane.getByText(sentence).count()).toBe(0);
  });

  test("an open solid has no volume, and no weight where it is ticked", async () => {
    const stl = binaryStl(boxAt([2, 3, 4], [0, 0, 0]), boxAt([2, 2, 2], [9, 0, 0]));
    const cut = stl.slice(0, stl.length - 50);
    new DataView(cut.buffer).setUint32(80, 23, true);
    await examine("open.stl", cut);
    await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
    await fill(desk, { Density: "10" });
    await said(/^Not closed: 3 edges are open, first at /);
    await said(/no volume/);
    expect(await headline()).toBe("0.240 g");
    expect(await desk.pane.getByLabel("Solid 2").isChecked()).toBe(false);
    await desk.pane.getByLabel("Solid 2").check();
    await said("No weight: Solid 2 has no volume. Untick it, or repair the model and export it again.");
    expect(await headline()).toBe("–");
    expect(await desk.pane.getByRole("button", { name: /^Use in the order/ }).count()).toBe(0);
  });

  test("overlapping solids are warned about", async () => {
    await examine("overlap.stl", binaryStl(boxAt([2, 3, 4], [0, 0, 0]), boxAt([2, 3, 4], [1, 0.5, 0.5])));
    await said(/^Solids 1 and 2 overlap, first found at .*: what they share counts twice\.$/);
  });
});

test("a sprue is left unticked: links alone, and what has to be cast", async () => {
  await examine(
    "tree.stl",
    binaryStl(boxAt([2, 3, 4], [0, 0, 0]), boxAt([2, 3, 4], [9, 0, 0]), boxAt([10, 1, 1], [5, 9, 0])),
  );
  await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
  await fill(desk, { Density: "10", "Links among the ticked": "2" });
  await desk.pane.getByLabel("Solid 3").uncheck();
  expect(await headline()).toBe("0.240 g");
  const rows = await desk.pane.locator(".weighed .row").allTextContents();
  // 24 + 24, and 10 more.
  expect(rows.map((text) => text.replace(/\s/g, " "))).toEqual([
    "All ticked solids0.480 g",
    "With what is not ticked0.580 g",
  ]);
});

test("two solids alike count as one link until the person says how many; parts of one link are no links alike", async () => {
  await examine(
    "two.stl",
    binaryStl(boxAt([2, 3, 4], [0, 0, 0]), boxAt([2, 3, 4], [9, 0, 0]), boxAt([1, 1, 1], [5, 9, 0])),
  );
  await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
  await fill(desk, { Density: "10" });
  await desk.pane.getByLabel("Solid 3").uncheck();
  // 24 mm³ each at 10 g/cm³.
  expect(await headline()).toBe("0.480 g");
  await said("The 2 ticked solids are alike, and count as one link. If each is a link, type 2 for the links.");
  await fill(desk, { "Links among the ticked": "2" });
  expect(await headline()).toBe("0.240 g");
  expect(await desk.pane.getByText("The 2 ticked solids", { exact: false }).count()).toBe(0);
  await desk.pane.getByLabel("Solid 3").check();
  await desk.pane.getByLabel("Solid 2").uncheck();
  await said(/^The 2 ticked solids differ in volume, so one link is their average\./);
});

test("forty solids are shown thirty at a time", async () => {
  await examine("many.stl", binaryStl(...Array.from({ length: 40 }, (_, i) => boxAt([1, 1, 1], [2 * i, 0, 0]))));
  expect(await desk.pane.locator(".solids > li").count()).toBe(30);
  await press(desk, "Show 10 more");
  expect(await desk.pane.locator(".solids > li").count()).toBe(40);
});

test("a large file: the pane stays free, shows how far it is, and cancels at once", async () => {
  const large = binaryStl(new TorusGeometry(7, 3, 400, 800));
  await open();
  // The worker's last word is kept back: a quick machine would be done before Cancel is pressed.
  const goOn = await withoutReport();
  await choose("large.stl", large);
  const bar = desk.pane.getByRole("progressbar", { name: "How far the model is examined" });
  await bar.waitFor();
  await said(/20 × 20 × 6 in the file's unit, closed/);
  await desk.pane.waitForFunction(() => Number(document.querySelector("progress")?.value) > 0.25);
  // The pane answers meanwhile.
  await fill(desk, { Customer: "Ada Quillfeather" });
  await view(desk, "Links");
  await desk.pane.getByRole("button", { name: "Cancel" }).click();
  await bar.waitFor({ state: "hidden" });
  expect(await desk.pane.locator(".examined").count()).toBe(0);
  await goOn();
  await choose("box.stl", BOX());
  await said("box.stl, 12 triangles");
  expect(await desk.pane.getByText(/large\.stl/).count()).toBe(0);
});

describe("the picture", () => {
  const canvas = () => desk.pane.locator(".stage canvas");
  /** Its pixels, once nothing moves any more. */
  const pixels = async () => {
    await settled(desk.page);
    return (await canvas().screenshot()).toString("base64");
  };

  test("is turned with the arrow keys and set back with Home, at once where motion is not wanted", async () => {
    await desk.page.emulateMedia({ reducedMotion: "reduce" });
    await examine("box.stl", BOX());
    await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
    await canvas().waitFor();
    expect(await canvas().getAttribute("aria-label")).toBe(
      "Picture of the model: one solid, 1 ticked as metal, 2 × 3 × 4 mm.",
    );
    expect((await desk.pane.locator(".dimension").allTextContents()).sort()).toEqual(["2 mm", "3 mm", "4 mm"]);
    await canvas().focus();
    // The first key also shows where the focus is.
    await desk.page.keyboard.press("Home");
    const before = await pixels();
    await desk.page.keyboard.press("ArrowRight");
    expect((await pixels()) === before).toBe(false);
    await desk.page.keyboard.press("Home");
    expect((await pixels()) === before).toBe(true);
    // A sprue looks different from metal.
    await desk.pane.getByLabel("Solid 1").uncheck();
    await canvas().focus();
    await desk.page.keyboard.press("Home");
    expect((await pixels()) === before).toBe(false);
    expect(await canvas().getAttribute("aria-label")).toContain("0 ticked as metal");
  });

  test("is not drawn where the browser cannot, and says so; the weight is there all the same", async () => {
    await desk.sit(async () => inWorkshop(await Workshop.open("none")));
    await desk.pane.getByLabel("Customer", { exact: true }).waitFor();
    await examine("box.stl", BOX());
    await said("This computer draws no pictures in three dimensions here. The figures do not need one.");
    await desk.pane.getByRole("radio", { name: /Millimetres/ }).check();
    await fill(desk, { Density: "10" });
    expect(await headline()).toBe("0.240 g");
  });
});
