/** The words that may be chosen in an order. */

export const ORDER_LENGTH_UNITS = ["in", "cm", "mm"] as const;
export const LINKS_PER_UNITS = ["in", "cm"] as const;
export const PIECE_KINDS = ["chain", "bracelet"] as const;
export const LENGTH_GIVEN = ["finished length", "neck", "wrist"] as const;
export const SOLIDITIES = ["solid", "hollow"] as const;
export const PLATING_CHOICES = ["as usual", "plated", "not plated"] as const;
/** Closed and open in turn: every second link is cast open, to join the closed ones; a chain begins with a closed one. */
export const LINK_CASTINGS = ["closed and open in turn", "all open", "all closed"] as const;
export const STONES_ON = ["no links", "all links", "every n-th link", "a number of links"] as const;
/** Where diamonds, rubies, sapphires and emeralds come from. */
export const STONE_ORIGINS = ["not said", "natural", "laboratory-grown"] as const;
/** How the links are joined. */
export const JOININGS = ["laser or torch", "laser", "torch"] as const;
export const STONE_PRICED = ["a stone", "a carat"] as const;
export const LINE_PRICE_BY = ["as the quote", "markup", "margin", "premium", "own price"] as const;
export const ORDER_PRICE_BY = ["as Rates", "markup", "margin", "premium"] as const;
export const SETTLEMENTS = ["fixed", "by final weight"] as const;
export const OWN_GOLD_USES = ["credited", "used"] as const;
export const YES_NO = ["no", "yes"] as const;
