import {
  CLASPS,
  COLOURS,
  isPlated,
  LENGTH_GIVEN,
  LINE_PRICE_BY,
  LINK_CASTINGS,
  LINKS_PER_UNITS,
  type LineKey,
  ORDER_LENGTH_UNITS,
  PATTERN_LETTERS,
  PIECE_KINDS,
  PLATING_CHOICES,
  SOLIDITIES,
} from "../../src/index";
import { locale } from "../wording/language";
import { PLATING_TEXTS } from "../wording/platingtexts";
import { TEXTS } from "../wording/texts";
import { type At, type PlannedGroup, planOf, shownWord } from "./formplan";
import { claspStonesGroup, stonesGroup } from "./stonefields";

const { form, cautions } = TEXTS;
const { groups, holds } = form;

const { words, figure, mark, figures, money, choice, group } = planOf<LineKey>(form.help);
const grams = () => form.grams;
const chainUnit = (at: At<LineKey>) => at("lengthUnit");
const isOwn = (at: At<LineKey>) => at("colour") === "own";
const hasClasp = (at: At<LineKey>) => at("clasp") !== "none";

/** The fields of a line from top to bottom. Called once Office is there: the units it starts with are those of the workbook's place. */
export function lineGroups(): readonly PlannedGroup<LineKey>[] {
  const unit = locale() === "en-US" ? "in" : "cm";
  return [
    group("piece", groups.piece, [
      words("design", "whole", { required: true }),
      mark("mark", "half", { required: true, caution: () => cautions.mark }),
      choice("colour", "half", COLOURS, {
        caution: (at) => (at("colour") === "white" || /w/i.test(at("pattern")) ? cautions.nickel : ""),
        cautions: ["mark", "colour"],
      }),
      words("colourName", "half", { required: true, isAsked: isOwn }),
      figures("composition", "half", { required: true, isAsked: isOwn }),
      choice("kind", "half", PIECE_KINDS),
      figure("quantity", "half", { required: true, start: "1" }),
    ]),
    group("chain", groups.chain, [
      choice("lengthGiven", "whole", LENGTH_GIVEN),
      figure("length", "half", { required: true }),
      choice("lengthUnit", "half", ORDER_LENGTH_UNITS, { start: unit }),
      figure("ease", "whole", {
        required: true,
        unit: chainUnit,
        isAsked: (at) => at("lengthGiven") === "neck" || at("lengthGiven") === "wrist",
      }),
      figure("linksPer", "half", { required: true }),
      choice("linksPerUnit", "half", LINKS_PER_UNITS, { start: unit }),
      figure("linkWeight", "whole", { required: true, unit: grams }),
    ]),
    group(
      "clasp",
      groups.clasp,
      [
        choice("clasp", "whole", CLASPS),
        figure("claspLength", "third", { unit: chainUnit, isAsked: hasClasp }),
        figure("claspWeight", "third", { unit: grams, isAsked: hasClasp }),
        money("claspCost", "third", { isAsked: hasClasp }),
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
        words("findings", "whole"),
        figure("findingsWeight", "half", { unit: grams }),
        money("findingsCost", "half"),
        words("engraving", "half"),
        money("engravingCost", "half"),
        money("setup", "half"),
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
        choice("linePriceBy", "half", LINE_PRICE_BY),
        figure("linePriceFigure", "half", {
          required: true,
          isAsked: (at) => at("linePriceBy") !== "as the quote",
          unit: (at, currency) => priceUnit(at("linePriceBy"), currency),
        }),
      ],
      (at) =>
        at("linePriceBy") === "as the quote"
          ? shownWord("as the quote").toLowerCase()
          : holds.figure(shownWord(at("linePriceBy")).toLowerCase(), at("linePriceFigure")),
    ),
  ];
}

/** The unit of a way of pricing's figure; a share has none. */
export function priceUnit(by: string, currency: string): string {
  if (by === "premium") return form.aGram(currency);
  return by === "own price" ? currency : "";
}

/** What there is of these, or that there is none. */
export function listed(...parts: readonly string[]): string {
  const there = parts.filter((part) => part.trim() !== "");
  return there.length > 0 ? there.join(", ") : holds.none;
}

const OTHER_WEIGHTS = [
  ["linkWeightYellow", "yellow", "Y"],
  ["linkWeightRose", "rose", "R"],
  ["linkWeightWhite", "white", "W"],
  ["linkWeightGreen", "green", "G"],
] as const;

function isPlatedIn(at: At<LineKey>): boolean {
  const pattern = [...at("pattern").toUpperCase()].map((letter) => PATTERN_LETTERS[letter] ?? "");
  const choice = PLATING_CHOICES.find((word) => word === at("plated"));
  return choice !== undefined && isPlated(choice, [at("colour"), ...pattern]);
}

function alloyGroup(): PlannedGroup<LineKey> {
  return group(
    "alloy",
    groups.alloy,
    [
      choice("solidity", "half", SOLIDITIES, {
        caution: (at) => (at("solidity") === "hollow" ? cautions.hollow : ""),
      }),
      choice("plated", "half", PLATING_CHOICES, { cautions: ["solidity"] }),
      words("platingMetal", "whole", {
        isAsked: isPlatedIn,
        usual: ({ platingMetal }) => platingMetal || PLATING_TEXTS.noneOnRates,
        caution: () => cautions.plating,
        cautions: ["platingMetal"],
      }),
      words("pattern", "whole"),
      ...OTHER_WEIGHTS.map(([key, colour, letter]) =>
        figure(key, "whole", {
          required: true,
          unit: grams,
          isAsked: (at) => at("colour") !== colour && at("pattern").toUpperCase().includes(letter),
        }),
      ),
      choice("linkCasting", "whole", LINK_CASTINGS),
    ],
    (at) =>
      [
        shownWord(at("solidity")).toLowerCase(),
        ...(at("plated") === "as usual" ? [] : [shownWord(at("plated")).toLowerCase()]),
        ...(at("pattern").trim() === "" ? [] : [holds.pattern(at("pattern").trim().toUpperCase())]),
      ].join(", "),
  );
}
