import {
  type AskingColumn,
  doubledWords,
  doublesOf,
  nthColumn,
  readAskingHeader,
  SEEN_LABELS,
  SEEN_WORDS,
  type SeenKey,
  wordsOf,
} from "../../src/index";
import { MOST_OTHER_LETTERS, wordsApart } from "../wording/headerdistance";

/** What a column of a list is taken for. */
export interface ColumnMatch extends Omit<AskingColumn, "key"> {
  /** Undefined for a column that is not used. */
  readonly key: SeenKey | undefined;
  /** Known: the header is one of our words. Likely: it is near to one, for the person to look at. */
  readonly certainty: "known" | "likely" | "none";
}

/** What each header of a row is, or is likely to be. No field is guessed twice. */
export function matchAskingHeaders(cells: readonly unknown[]): readonly ColumnMatch[] {
  const headers = cells.map((cell, place) => ({
    ...readAskingHeader(cell),
    place,
    header: wordsOf(cell),
  }));
  const found = new Map<number, { key: SeenKey; certainty: ColumnMatch["certainty"] }>();
  const isTaken = (key: SeenKey) => [...found.values()].some((each) => each.key === key);
  // Two headers that name one field both stand for it, so that the person is asked which of them counts.
  for (const { place, key } of headers) if (key) found.set(place, { key, certainty: "known" });
  const guesses = headers
    .filter(({ words, key }) => words !== "" && key === undefined)
    .flatMap(({ place, words }) =>
      SEEN_WORDS.map((known) => ({ place, key: known.key, far: wordsApart(words, known.words) })),
    )
    .filter(({ far }) => far <= MOST_OTHER_LETTERS)
    .sort((a, b) => a.far - b.far);
  for (const { place, key } of guesses) {
    if (!found.has(place) && !isTaken(key)) found.set(place, { key, certainty: "likely" });
  }
  return headers.map(({ words: _, key: __, ...said }) => ({
    ...said,
    ...(found.get(said.place) ?? { key: undefined, certainty: "none" }),
  }));
}

/** The columns that are fields. */
export function usedColumns(matches: readonly ColumnMatch[]): readonly AskingColumn[] {
  return matches.flatMap(({ certainty: _, key, ...said }) => (key ? [{ ...said, key }] : []));
}

/** What is missing for a premium: a price for the piece needs its weight. @param byPiece whether any price is for the whole piece */
export function missingOf(matches: readonly ColumnMatch[], byPiece: boolean): readonly string[] {
  const needed: readonly SeenKey[] = byPiece ? ["price", "weight", "mark"] : ["price", "mark"];
  return needed.filter((key) => matches.every((match) => match.key !== key)).map((key) => SEEN_LABELS[key]);
}

/** Fields that more than one column is taken for, each with its columns. */
export function doubledOf(matches: readonly ColumnMatch[]): readonly string[] {
  const placed = matches.flatMap(({ key, place }) =>
    key ? [{ key, what: SEEN_LABELS[key], place: nthColumn(place) }] : [],
  );
  return doublesOf(placed).map(doubledWords);
}
