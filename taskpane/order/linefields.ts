import { isPlated, LINE_FIELDS, type LineKey, PATTERN_LETTERS } from "../../src/index";
import type { At, PlannedGroup } from "../controls/formplan";
import { CAUTIONS, type CautionKey, type CautionPlace, cautionsAt } from "../wording/cautions";
import { locale } from "../wording/language";
import { TEXTS } from "../wording/texts";
import { shownWord } from "./choices";
import { declaredFields, listed, UNIT_BESIDE } from "./declaredfields";
import { claspStonesGroup, stonesGroup } from "./stonefields";

const { form } = TEXTS;
const { groups, holds } = form;

const { place, group } = declaredFields<LineKey>(LINE_FIELDS, form.help);
const isOwn = (at: At<LineKey>) => at("colour") === "own";
/** White gold; and an alloy of the workshop's own whose composition says so. */
const mayHoldNickel = (at: At<LineKey>) =>
  at("colour") === "white" || /w/i.test(at("pattern")) || (isOwn(at) && /\bni\b/i.test(at("composition")));
const hasClasp = (at: At<LineKey>) => at("clasp") !== "none";
const hasBoughtClasp = (at: At<LineKey>) => at("clasp") === "bought lobster clasp";

/** The fields of a line from top to bottom. Called once Office is there: the units it starts with are those of the workbook's place. */
export function lineGroups(): readonly PlannedGroup<LineKey>[] {
  const unit = locale() === "en-US" ? "in" : "cm";
  return [
    group("piece", groups.piece, [
      place("design", "whole"),
      place("mark", "half", {
        caution: cautionWhere("mark", "mark", (at) => at("mark").trim() !== ""),
        cautionFold: CAUTIONS.mark.step,
      }),
      place("colour", "half", {
        caution: cautionWhere("colour", "nickel", mayHoldNickel),
        cautions: ["mark", "colour"],
      }),
      place("colourName", "half", { isAsked: isOwn }),
      place("composition", "half", { isAsked: isOwn }),
      place("kind", "half"),
      place("quantity", "half", { start: "1" }),
    ]),
    group("chain", groups.chain, [
      place("lengthGiven", "whole"),
      place("length", "half", UNIT_BESIDE),
      place("lengthUnit", "half", { start: unit }),
      place("ease", "whole", {
        isAsked: (at) => at("lengthGiven") === "neck" || at("lengthGiven") === "wrist",
      }),
      place("linksPer", "half"),
      place("linksPerUnit", "half", { start: unit }),
      place("linkWeight", "whole"),
    ]),
    group(
      "clasp",
      groups.clasp,
      [
        place("clasp", "whole"),
        place("claspLength", "third", { isAsked: hasClasp }),
        place("claspWeight", "third", { isAsked: hasClasp }),
        place("claspCost", "third", { isAsked: hasClasp }),
        place("claspPremium", "half", { isAsked: hasBoughtClasp }),
        place("claspMark", "half", { isAsked: hasBoughtClasp }),
      ],
      (at) => shownWord(at("clasp")),
    ),
    alloyGroup(),
    stonesGroup(),
    claspStonesGroup(),
    group(
      "findings",
      groups.findings,
      [
        place("findings", "whole"),
        place("findingsWeight", "half"),
        place("findingsCost", "half"),
        place("findingsPremium", "half"),
        place("findingsMark", "half"),
        place("engraving", "half"),
        place("engravingCost", "half"),
        place("setup", "half"),
      ],
      (at) =>
        listed(
          at("findings"),
          at("engraving") === "" && at("engravingCost") === "" ? "" : holds.engraved,
          at("setup") === "" ? "" : holds.setup,
        ),
    ),
    group(
      "price",
      groups.price,
      [
        place("linePriceBy", "half"),
        place("linePriceFigure", "half", {
          isAsked: (at) => at("linePriceBy") !== "as the quote",
        }),
      ],
      (at) =>
        at("linePriceBy") === "as the quote"
          ? shownWord("as the quote").toLowerCase()
          : holds.figure(shownWord(at("linePriceBy")).toLowerCase(), at("linePriceFigure")),
    ),
  ];
}

/** A caution under a field, while the form holds what it is about. */
function cautionWhere(
  place: CautionPlace,
  key: CautionKey,
  applies: (at: At<LineKey>) => boolean,
): (at: At<LineKey>) => string {
  const [words = ""] = cautionsAt(place, [key]);
  return (at) => (applies(at) ? words : "");
}

const OTHER_WEIGHTS = [
  ["linkWeightYellow", "yellow", "Y"],
  ["linkWeightRose", "rose", "R"],
  ["linkWeightWhite", "white", "W"],
  ["linkWeightGreen", "green", "G"],
] as const;

function isPlatedIn(at: At<LineKey>): boolean {
  const pattern = [...at("pattern").toUpperCase()].map((letter) => PATTERN_LETTERS[letter] ?? "");
  const choice = LINE_FIELDS.plated.words.find((word) => word === at("plated"));
  return choice !== undefined && isPlated(choice, [at("colour"), ...pattern]);
}

function alloyGroup(): PlannedGroup<LineKey> {
  return group(
    "alloy",
    groups.alloy,
    [
      place("solidity", "half", {
        caution: cautionWhere("hollow links", "hollow", (at) => at("solidity") === "hollow"),
      }),
      place("plated", "half", { cautions: ["solidity"] }),
      place("platingMetal", "whole", {
        isAsked: isPlatedIn,
        caution: cautionWhere("plating", "plating", isPlatedIn),
        cautions: ["platingMetal"],
      }),
      place("pattern", "whole"),
      ...OTHER_WEIGHTS.map(([key, colour, letter]) =>
        place(key, "whole", {
          isAsked: (at) => at("colour") !== colour && at("pattern").toUpperCase().includes(letter),
        }),
      ),
      place("linkCasting", "whole"),
    ],
    (at) =>
      [
        shownWord(at("solidity")).toLowerCase(),
        ...(at("plated") === "as usual" ? [] : [shownWord(at("plated")).toLowerCase()]),
        ...(at("pattern").trim() === "" ? [] : [holds.pattern(at("pattern").trim().toUpperCase())]),
      ].join(", "),
  );
}
