import type { NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { COLOURS, type Colour } from "../gold/alloy";
import { LINE_LABELS } from "../order/fields";
import { fieldsNamed } from "../reading/formfields";
import { ORDER_LENGTH_UNITS, PIECE_KINDS } from "../reading/orderwords";
import { accepted, type Parsed, parseForm } from "../reading/parse";
import { type Length, lengthIn } from "../units/length";

export const ASKED_PIECE_LABELS = {
  piece: LINE_LABELS.kind,
  colour: LINE_LABELS.colour,
  length: LINE_LABELS.length,
  lengthUnit: LINE_LABELS.lengthUnit,
} as const;
export type AskedPieceKey = keyof typeof ASKED_PIECE_LABELS;

/** What is known of another seller's piece besides its price. It decides which of the workshop's own links is compared with it. */
export interface AskedPiece {
  readonly kind: (typeof PIECE_KINDS)[number];
  /** Undefined where it is not said. */
  readonly colour: Colour | undefined;
  /** The usual one where it is not said. */
  readonly length: Length;
  readonly lengthUnit: (typeof ORDER_LENGTH_UNITS)[number];
  readonly isLengthSaid: boolean;
}

/** The usual length of a chain and of a bracelet, where none is given. It is only used to choose a link. Common practice. */
const USUAL: Readonly<Record<AskedPiece["kind"], Readonly<Record<AskedPiece["lengthUnit"], string>>>> = {
  chain: { in: "22", cm: "55", mm: "550" },
  bracelet: { in: "8", cm: "20", mm: "200" },
};

const LENGTH: NumberRule = { above: "0", most: "100000", right: "a length above 0, such as 22, or nothing" };

const named = fieldsNamed(ASKED_PIECE_LABELS);
const FIELDS = {
  piece: named.wordOr("piece", PIECE_KINDS, "chain"),
  colour: named.optionalWord("colour", COLOURS),
  length: named.optional("length", LENGTH),
  lengthUnit: named.word("lengthUnit", ORDER_LENGTH_UNITS),
};

/** Reads what is known of a piece, or every fault in it. */
export function parseAskedPiece(record: Readonly<Record<string, unknown>>): Parsed<AskedPiece> {
  const read = parseForm(FIELDS, record);
  if (!read.ok) return read;
  const { piece: kind, colour, length, lengthUnit } = read.value;
  const usual = usualPiece(kind, lengthUnit);
  return accepted(
    length ? { ...usual, colour, length: lengthIn(length, lengthUnit), isLengthSaid: true } : { ...usual, colour },
  );
}

/** A piece of which no more is known than its kind. */
export function usualPiece(kind: AskedPiece["kind"], lengthUnit: AskedPiece["lengthUnit"]): AskedPiece {
  const length = lengthIn(Quotient.of(USUAL[kind][lengthUnit]), lengthUnit);
  return Object.freeze({ kind, colour: undefined, length, lengthUnit, isLengthSaid: false });
}
