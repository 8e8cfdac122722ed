import { isPlated, LINE_FIELDS, type LineKey, PATTERN_LETTERS } from "../../src/index";
import type { At, PlannedGroup } from "../controls/formplan";
import { locale } from "../wording/language";
import { TEXTS } from "../wording/texts";
import { shownWord } from "./choices";
import { declaredFields, listed, UNIT_BESIDE } from "./declaredfields";
import { claspStonesGroup, stonesGroup } from "./stonefields";

const { form, cautions } = TEXTS;
const { groups, holds } = form;

const { place, group } = declaredFields<LineKey>(LINE_FIELDS, form.help);
const isOwn = (at: At<LineKey>) => at("colour") === "own";
const hasClasp = (at: At<LineKey>) => at("clasp") !== "none";

/** The fields of a line from top to bottom. Called once Office is there: the units it starts with are those of the workbook's place. */
export function lineGroups(): readonly PlannedGroup<LineKey>[] {
  const unit = locale() === "en-US" ? "in" : "cm";
  return [
    group("piece", groups.piece, [
      place("design", "whole"),
      place("mark", "half", { caution: () => cautions.mark }),
      place("colour", "half", {
        caution: (at) => (at("colour") === "white" || /w/i.test(at("pattern")) ? cautions.nickel : ""),
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
        caution: (at) => (at("solidity") === "hollow" ? cautions.hollow : ""),
      }),
      place("plated", "half", { cautions: ["solidity"] }),
      place("platingMetal", "whole", {
        isAsked: isPlatedIn,
        caution: () => cautions.plating,
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
