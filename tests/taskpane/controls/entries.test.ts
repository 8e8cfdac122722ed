import { afterEach, describe, expect, it } from "vitest";
import {
  allGoneFrom,
  blankLabels,
  countedTexts,
  faultBeside,
  filledWith,
  freshEntries,
  goneFrom,
  typedIn,
} from "../../../taskpane/controls/entries";
import { choicesOf, fieldsOf, formPlan } from "../../../taskpane/controls/formplan";
import { writeAs } from "../../../taskpane/wording/language";

type Key = "model" | "width" | "stage" | "loss";

const LABELS: Readonly<Record<Key, string>> = { model: "Model", width: "Width", stage: "Stage", loss: "Loss" };
const { words, figure, choice, group } = formPlan<Key>({ width: "Across the link." });
const GROUPS = [
  group("link", "", [
    words("model", "whole", { required: true }),
    figure("width", "half", { required: true, unit: "mm" }),
    choice("stage", "half", choicesOf(["cast", "finished"], { cast: "Cast", finished: "Finished" })),
    figure("loss", "half", { isAsked: (at) => at("stage") === "finished" }),
  ]),
];
const FAULTS = [
  { field: "model", code: "blank", sentence: "Model: found nothing; give a name" },
  { field: "width", code: "outOfRange", sentence: 'Width: found "-2.5"; give millimetres above 0, such as 6.5' },
] as const;

const fresh = freshEntries(GROUPS);
const besides = (entries: typeof fresh) => fieldsOf(GROUPS).map((each) => faultBeside(each, entries, FAULTS));

afterEach(() => writeAs(() => "en-US"));

it("a form starts with the first word of each choice, and nothing else", () => {
  expect(fresh.texts).toEqual({ model: "", width: "", stage: "cast", loss: "" });
  expect(fresh.blurred.size).toBe(0);
});

describe("what is wrong with a field", () => {
  it("is told once the person has gone on from it, not while it is typed", () => {
    const typed = typedIn(fresh, "width", "-2.5");
    expect(besides(typed)).toEqual(["", "", "", ""]);
    expect(besides(goneFrom(typed, "width"))).toEqual(["", FAULTS[1].sentence, "", ""]);
  });

  it("is not told of a field that was passed over empty, until all is asked for", () => {
    const passed = goneFrom(fresh, "model");
    expect(besides(passed)[0]).toBe("");
    expect(besides(allGoneFrom(GROUPS, passed))[0]).toBe(FAULTS[0].sentence);
  });

  it("is told at once of a choice, since a choice is never half typed", () => {
    const fault = { field: "stage", code: "unknown", sentence: "Stage: found wax" } as never;
    expect(fieldsOf(GROUPS).map((each) => faultBeside(each, fresh, [fault]))).toEqual(["", "", "Stage: found wax", ""]);
  });

  it("is told with a decimal comma where that is the way, what was typed as it was typed", () => {
    writeAs(() => "de-DE");
    const typed = goneFrom(typedIn(fresh, "width", "-2,5"), "width");
    expect(besides(typed)[1]).toBe('Width: found "-2,5"; give millimetres above 0, such as 6,5');
  });
});

it("a filled field is one that the person has gone on from, and an emptied one is fresh again", () => {
  const filled = filledWith(GROUPS, fresh, { model: "Ada curb", width: "8" });
  expect([...filled.blurred]).toEqual(["model", "width"]);
  expect([...filledWith(GROUPS, filled, { width: "" }).blurred]).toEqual(["model"]);
});

it("no change touches the entries before it", () => {
  typedIn(fresh, "model", "x");
  goneFrom(typedIn(fresh, "model", "x"), "model");
  filledWith(GROUPS, fresh, { model: "x" });
  allGoneFrom(GROUPS, fresh);
  expect(fresh).toEqual(freshEntries(GROUPS));
});

it("what is still to fill is called by its labels, as long as it is blank", () => {
  expect(blankLabels(GROUPS, LABELS, fresh, FAULTS)).toEqual(["Model", "Width"]);
  expect(blankLabels(GROUPS, LABELS, typedIn(fresh, "width", "-2.5"), FAULTS)).toEqual(["Model"]);
});

it("a figure is read with a comma or a point, words as they are, and what is not asked for not at all", () => {
  writeAs(() => "de-DE");
  const typed = typedIn(typedIn(typedIn(fresh, "width", "7,5"), "model", "Curb 7,5"), "loss", "2");
  expect(countedTexts(GROUPS, typed)).toEqual({ model: "Curb 7,5", width: "7.5", stage: "cast", loss: "" });
  expect(countedTexts(GROUPS, typedIn(typed, "stage", "finished")).loss).toBe("2");
});

it("a field says its unit and its quiet word", () => {
  const [, width] = fieldsOf(GROUPS);
  expect([width?.unit(() => "", "EUR"), width?.plan.help]).toEqual(["mm", "Across the link."]);
});
