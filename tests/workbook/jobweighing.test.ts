import { beforeEach, expect, test } from "vitest";
import { fill, HUNDRED_GRAMS, menu, press, texts, withRates } from "./desk";
import { settled, typeIn } from "./person.mjs";
import { ADA, note, set, tableRow, unfold, weigh } from "./scale";
import { deskForEach } from "./workshop";

const desk = deskForEach(withRates);
const ADAS = { ...ADA, mark: "24K", width: "" };

/** The row of the job sheet with a label, from its section of readings. */
async function rowOf(label: string): Promise<number> {
  const labels = (await texts(desk, "Job 1001", "A1:A160")).flat();
  return labels.indexOf(label, labels.indexOf("On the scale, all pieces")) + 1;
}
const onJob = async (label: string) => {
  const row = await rowOf(label);
  return (await texts(desk, "Job 1001", `D${row}:E${row}`))[0];
};
const typeOnJob = async (label: string, column: string, text: string) =>
  typeIn(desk.page, "Job 1001", `${column}${await rowOf(label)}`, text);
const said = async () =>
  ((await desk.pane.locator(".jobweighing > p").textContent()) ?? "").replaceAll(/\s+/g, " ").trim();

beforeEach(async () => {
  await fill(desk, { ...HUNDRED_GRAMS, Customer: "Ada Quillfeather" });
  await press(desk, "Make the quote");
  await desk.pane.getByText("Quote 1001, Job 1001 and Tickets 1001").first().waitFor();
  await unfold(desk, "Weigh in");
});

test("a weighing of a job is written once: its cream cells show what was written down, and go back with it", async () => {
  await weigh(desk, { ...ADAS, job: "1001", stage: "cast", pieces: "95", weight: "190" });
  expect(await onJob("Cast")).toEqual(["95", "190.00"]);
  expect(await said()).toBe("Job 1001 and the Weigh-ins sheet both have 95 links, 190 g cast.");
  await weigh(desk, { stage: "polished", who: "Bram", sent: "93", pieces: "50", weight: "95.5" });
  // A second batch of the same job counts in.
  await weigh(desk, { pieces: "41", weight: "78.31" });
  expect(await onJob("Polished")).toEqual(["91", "173.81"]);
  expect((await onJob("Sent to the polisher"))?.[0]).toBe("93");
  await press(desk, "Take it out again");
  expect(await onJob("Polished")).toEqual(["50", "95.50"]);
});

test("what was typed on the job sheet fills the form at one press, as its line's link", async () => {
  await typeOnJob("Cast", "D", "95");
  await typeOnJob("Cast", "E", "190");
  await set(desk, "weighin", { job: "1001", stage: "cast" });
  await expect.poll(said).toBe("Job 1001 has 95 links, 190 g cast. The Weigh-ins sheet has none of it yet.");
  await press(desk, "Fill from the job sheet");
  await desk.pane.locator("#weighin-weight").press("Enter");
  await desk.pane.getByText("Written down: 95 pieces").waitFor();
  await settled(desk.page);
  const { Job, Mark, Pieces, "Weight g": weight } = await tableRow(desk, "Weigh-ins", 1);
  expect([Job, Mark, Pieces, weight]).toEqual(["1001", "1000", "95", "190.000"]);
  expect(await said()).toBe("Job 1001 and the Weigh-ins sheet both have 95 links, 190 g cast.");
});

test("where both are filled and differ, both figures are said, nothing is written over, and one press makes them one", async () => {
  await typeOnJob("Cast", "D", "95");
  await typeOnJob("Cast", "E", "190");
  await weigh(desk, { ...ADAS, job: "1001", stage: "cast", pieces: "94", weight: "188" });
  const differ =
    "Job 1001 has 95 links, 190 g cast. The Weigh-ins sheet has 94 links, 188 g cast. Correct the one that is wrong.";
  await expect.poll(said).toBe(differ);
  expect(await onJob("Cast")).toEqual(["95", "190.00"]);
  await press(desk, "Write it on the job sheet");
  await expect.poll(said).toBe("Job 1001 and the Weigh-ins sheet both have 94 links, 188 g cast.");
  expect(await onJob("Cast")).toEqual(["94", "188.00"]);
});

test("a protected job sheet is told, and the weighing stands in the table", async () => {
  await menu(desk, "protect", "Job 1001");
  await weigh(desk, { ...ADAS, job: "1001", stage: "cast", pieces: "95", weight: "190" });
  expect(await note(desk, "Weigh in")).toContain("protected");
  expect((await tableRow(desk, "Weigh-ins", 1)).Pieces).toBe("95");
  await expect.poll(said).toBe("The Weigh-ins sheet has 95 links, 190 g cast. Job 1001 has none of it.");
});
