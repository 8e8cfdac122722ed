import { expect, it } from "vitest";
import { shownShare } from "../../../taskpane/controls/progressed";
import { writeAs } from "../../../taskpane/wording/language";

it.each([
  [0, "0% done"],
  [0.456, "45% done"],
  [0.999, "99% done"],
  [1, "100% done"],
])("long work that has come %d of its way says %s: all only when all is done", (share, shown) => {
  writeAs(() => "en-US");
  expect(shownShare(share).replace(/\s(?=%)/, "")).toBe(shown);
});
