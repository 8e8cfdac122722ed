import { type CostSheet, colourName, type OrderLine } from "../../../src/index";
import { asText, type PaperCell } from "../paper";
import { COUNT, SCALE } from "./figures";
import { type JobRow, type Ref, section } from "./row";
import { alloyKey } from "./weights";

/** The words by which the section and its rows are found again, on job sheets of every version. */
export const ON_THE_SCALE = {
  title: "On the scale, all pieces",
  cast: "Cast",
  sent: "Sent to the polisher",
  polished: "Polished",
  finished: "Finished pieces",
} as const;

/** Places for what the scale says at each stage, all pieces of the line together, beside what is expected. */
export function readings({ line, alloys }: CostSheet): JobRow[] {
  const several = alloys.length > 1;
  const of = (index: number) => {
    const alloy = alloys[index];
    return several && alloy ? `, ${colourName(alloy.colour, line)}` : "";
  };
  const all = (at: Ref, index: number) => {
    const parts = alloys[index]?.claspParts ?? undefined;
    const links = at(alloyKey(index));
    return `(${parts && !parts.isZero() ? `${links}+${parts.value()}` : links})*${at("quantity")}`;
  };
  const places = alloys.map((_, index) => index);
  return [
    section(ON_THE_SCALE.title, ["Expected", "Expected, g", "Counted", "Weight, g", "Date", "Who"]),
    reading("models", "Links sent as models", (at) => places.map((index) => all(at, index)).join("+")),
    ...places.map((index) =>
      reading(
        castKey(index),
        `${ON_THE_SCALE.cast}${of(index)}`,
        (at) => all(at, index),
        (at) => `${at(alloyKey(index), "G")}*${at("quantity")}`,
      ),
    ),
    ...places.map((index) =>
      reading(sentKey(index), `${ON_THE_SCALE.sent}${of(index)}`, (at) => all(at, index), undefined, "counted alone"),
    ),
    ...places.map((index) =>
      reading(
        polishedKey(index),
        `${ON_THE_SCALE.polished}${of(index)}`,
        (at) => all(at, index),
        (at) => `${at(alloyKey(index), "F")}*${at("quantity")}`,
      ),
    ),
    reading(
      "finishedPieces",
      ON_THE_SCALE.finished,
      (at) => at("quantity"),
      (at) => withStones(line, at),
    ),
  ];
}

/** What the finished pieces should show on the scale, their stones with them; blank while the carats are not known. */
function withStones({ stones }: OrderLine, at: Ref): string {
  if (stones.length === 0) return `${at("finished")}*${at("quantity")}`;
  const carats = at("carats");
  return `IF(ISNUMBER(${carats}),(${at("finished")}+CURB.WEIGHTIN(${carats},"ct","g"))*${at("quantity")},"")`;
}

/** Keys of the readings of an alloy. */
export function castKey(index: number): string {
  return `cast${index}`;
}
export function sentKey(index: number): string {
  return `sent${index}`;
}
export function polishedKey(index: number): string {
  return `polished${index}`;
}

/** A row to write in: how many were counted, what they weigh, when, and who weighed them. */
function reading(
  key: string,
  label: string,
  count: (at: Ref) => string,
  weight?: (at: Ref) => string,
  lies: "on the scale" | "counted alone" = "on the scale",
): JobRow {
  const blank = (format?: string): PaperCell =>
    format ? { content: "", look: "inputRight", format } : { content: "", look: "input" };
  return {
    key,
    cells: (at) => [
      { content: asText(label), look: "item" },
      { content: `=${count(at)}`, look: "number", format: COUNT },
      { content: weight ? `=${weight(at)}` : "", look: "number", format: SCALE },
      blank(COUNT),
      lies === "on the scale" ? blank(SCALE) : { content: "" },
      blank("d mmm"),
      blank(),
    ],
  };
}
