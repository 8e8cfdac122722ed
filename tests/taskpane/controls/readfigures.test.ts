import { afterEach, expect, it, vi } from "vitest";
import type { Fault } from "../../../src/index";
import { countedTexts, filledWith, freshEntries, misread, typedIn } from "../../../taskpane/controls/entries";
import type { Form } from "../../../taskpane/controls/form";
import { formPlan } from "../../../taskpane/controls/formplan";
import { readFigures } from "../../../taskpane/controls/readfigures";
import { writeAs } from "../../../taskpane/wording/language";

type Key = "width" | "links";
const LABELS = { width: "Wanted width", links: "Links in the model" };
const RULES = {
  width: { right: "a width in mm above 0", above: "0", most: "1000" },
  links: { right: "a whole number of links from 1", least: "1", whole: true },
};
const { figure, group } = formPlan<Key>();
const GROUPS = [group("size", "", [figure("width", "half"), figure("links", "half", { start: "1" })])];

afterEach(() => writeAs(() => "en-US"));

/** What a form is to its reader, without a page. */
function formWith(texts: Partial<Record<Key, string>>) {
  const typed = Object.entries(texts) as [Key, string][];
  const entries = typed.reduce((before, [key, text]) => typedIn(before, key, text), freshEntries(GROUPS));
  const judge = vi.fn<(faults: readonly Fault[]) => void>();
  const form: Pick<Form<Key>, "labels" | "counted" | "misread" | "judge"> = {
    labels: LABELS,
    counted: () => countedTexts(GROUPS, entries),
    misread: () => misread(GROUPS, LABELS, entries),
    judge,
  };
  return { form: form as Form<Key>, judge };
}

const shown = (form: Form<Key>) =>
  Object.entries(readFigures(form, RULES) ?? {}).map(([key, figure]) => [key, figure?.toNumber()]);

it("gives each figure that is there, and leaves out one that is blank", () => {
  const { form, judge } = formWith({});
  expect(shown(form)).toEqual([["links", 1]]);
  expect(shown(formWith({ width: "7.5" }).form)).toEqual([
    ["width", 7.5],
    ["links", 1],
  ]);
  expect(judge).toHaveBeenCalledWith([]);
});

it("gives none where one is faulty, and says at which field by its label", () => {
  const { form, judge } = formWith({ width: "0", links: "1.5" });
  expect(readFigures(form, RULES)).toBeUndefined();
  const [faults] = judge.mock.calls[0] ?? [[]];
  expect(faults.map(({ field }) => field)).toEqual(["width", "links"]);
  expect(faults[0]?.sentence).toMatch(/^Wanted width: found "?0"?; give a width in mm above 0/);
});

it("reads a decimal comma where that is the way, and asks where a figure may be two", () => {
  writeAs(() => "de-DE");
  expect(shown(formWith({ width: "7,5" }).form)).toContainEqual(["width", 7.5]);
  const { form, judge } = formWith({ width: "1.500" });
  expect(readFigures(form, { ...RULES, width: { ...RULES.width, most: "2000" } })).toBeUndefined();
  expect(judge.mock.calls[0]?.[0].map(({ field }) => field)).toEqual(["width"]);
});

it("what was filled in reads as it was given", () => {
  writeAs(() => "de-DE");
  const filled = filledWith(GROUPS, freshEntries(GROUPS), { width: "6.25" });
  expect(filled.texts.width).toBe("6,25");
  expect(countedTexts(GROUPS, filled).width).toBe("6.25");
});
