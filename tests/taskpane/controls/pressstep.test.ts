import { expect, it, vi } from "vitest";
import type { Button } from "../../../taskpane/controls/button";
import type { SpokenNote } from "../../../taskpane/controls/note";
import { pressSteps, whileWorking } from "../../../taskpane/controls/pressstep";
import { WorkbookFault } from "../../../taskpane/excel/run";

function bench() {
  const note = { say: vi.fn(), failed: vi.fn() };
  const by = { work: vi.fn(), rest: vi.fn() };
  return { note, by, steps: pressSteps(note as unknown as SpokenNote), button: by as unknown as Button };
}

it("a button says what goes on, and rests when it is done", async () => {
  const { steps, button, by, note } = bench();
  await steps.run(button, "Writing…", async () => expect(by.rest).not.toHaveBeenCalled());
  expect(by.work).toHaveBeenCalledWith("Writing…");
  expect(by.rest).toHaveBeenCalledOnce();
  expect(note.failed).not.toHaveBeenCalled();
});

it("one step runs at a time: a second press does nothing", async () => {
  const { steps, button } = bench();
  let end = () => {};
  const first = steps.run(button, "Writing…", () => new Promise((resolve) => (end = resolve)));
  const second = vi.fn();
  expect(steps.isBusy).toBe(true);
  await steps.run(button, "Writing…", second);
  expect(second).not.toHaveBeenCalled();
  end();
  await first;
  expect(steps.isBusy).toBe(false);
});

it("what the workbook refuses is told in the note, and ends there", async () => {
  const { steps, button, by, note } = bench();
  await steps.run(button, "Writing…", async () => {
    throw new WorkbookFault("The sheet is protected.");
  });
  expect(note.failed).toHaveBeenCalledWith("The sheet is protected.");
  expect(by.rest).toHaveBeenCalledOnce();
});

it("a mistake of ours is told too, and stays an error", async () => {
  const { steps, button, by, note } = bench();
  const mistake = new Error("ours");
  await expect(steps.run(button, "Writing…", () => Promise.reject(mistake))).rejects.toBe(mistake);
  expect(note.failed).toHaveBeenCalledOnce();
  expect(by.rest).toHaveBeenCalledOnce();
  expect(steps.isBusy).toBe(false);
});

it("work without a note gives what it came to, and its button rests also where it fails", async () => {
  const { button, by } = bench();
  expect(await whileWorking(button, "Reading…", async () => 7)).toBe(7);
  await expect(whileWorking(button, "Reading…", () => Promise.reject(new Error("x")))).rejects.toThrow("x");
  expect(by.rest).toHaveBeenCalledTimes(2);
});
