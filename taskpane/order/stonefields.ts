import { LINE_FIELDS, type LineKey, STONE_KEYS } from "../../src/index";
import type { At, PlannedField, PlannedGroup } from "../controls/formplan";
import { cautionsAt } from "../wording/cautions";
import { TEXTS } from "../wording/texts";
import { shownWord } from "./choices";
import { declaredFields } from "./declaredfields";

const { form } = TEXTS;
const { groups, holds } = form;

const { place, group } = declaredFields<LineKey>(LINE_FIELDS, form.help);
const inLinks = (at: At<LineKey>) => at("stonesOn") !== "no links";
const onClasp = (at: At<LineKey>) => at("clasp") !== "none" && !/^\s*0*\s*$/.test(at("claspStoneCount"));

/** The stones in the links of a line. */
export function stonesGroup(): PlannedGroup<LineKey> {
  return group(
    "stones",
    groups.stones,
    [
      place("stonesOn", "whole", {
        caution: (at) => (inLinks(at) || onClasp(at) ? cautionsAt("stones", ["stones"]).join(" ") : ""),
        cautions: ["stonesOn"],
      }),
      place("stoneEvery", "half", { isAsked: (at) => at("stonesOn") === "every n-th link" }),
      place("stoneCount", "half", { isAsked: (at) => at("stonesOn") === "a number of links" }),
      place("stonesPerLink", "half", { isAsked: inLinks }),
      ...oneStone(STONE_KEYS.links, inLinks),
      place("breakage", "half", {
        isAsked: (at) => inLinks(at) || onClasp(at),
      }),
    ],
    stonesHeld,
  );
}

/** The stones on the clasp of a line; none where there is no clasp. */
export function claspStonesGroup(): PlannedGroup<LineKey> {
  return group(
    "clasp-stones",
    groups.claspStones,
    [place("claspStoneCount", "whole"), ...oneStone(STONE_KEYS.clasp, onClasp)],
    (at) => (onClasp(at) ? holds.stones(at("claspStoneCount").trim()) : holds.none),
    (at) => at("clasp") !== "none",
  );
}

/** The fields of one stone; the share broken is one for both sets and stands apart. */
function oneStone(
  keys: (typeof STONE_KEYS)[keyof typeof STONE_KEYS],
  isThere: (at: At<LineKey>) => boolean,
): readonly PlannedField<LineKey>[] {
  const isRound = (at: At<LineKey>) => isThere(at) && at(keys.shape) === "round";
  const isRectangular = (at: At<LineKey>) => isThere(at) && at(keys.shape) === "rectangular";
  return [
    place(keys.kind, "half", { isAsked: isThere }),
    place(keys.shape, "half", { isAsked: isThere }),
    place(keys.diameter, "half", { isAsked: isRound }),
    place(keys.length, "half", { isAsked: isRectangular }),
    place(keys.width, "half", { isAsked: isRectangular }),
    place(keys.depth, "half", { isAsked: isThere }),
    place(keys.gravity, "half", { isAsked: (at) => isThere(at) && at(keys.kind).trim() !== "" }),
    place(keys.carat, "half", { isAsked: isThere }),
    place(keys.price, "half", { isAsked: isThere }),
    place(keys.priced, "half", { isAsked: isThere }),
    place(keys.fee, "half", { isAsked: isThere }),
  ];
}

function stonesHeld(at: At<LineKey>): string {
  const each = at("stonesPerLink").trim();
  switch (at("stonesOn")) {
    case "no links":
      return holds.none;
    case "a number of links":
      return counted(at("stoneCount").trim(), each);
    case "every n-th link":
      return holds.stonesOn(holds.everyLink(at("stoneEvery").trim()), each);
    default:
      return holds.stonesOn(shownWord(at("stonesOn")).toLowerCase(), each);
  }
}

/** The stones of one piece where both are plain small counts. */
function counted(links: string, each: string): string {
  if (!/^\d{1,5}$/.test(links) || !/^\d{0,5}$/.test(each)) return shownWord("a number of links").toLowerCase();
  return holds.stones(String(Number(links) * (each === "" ? 1 : Number(each))));
}
