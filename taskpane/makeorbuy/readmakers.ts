import {
  type MakerFault,
  type OrderLine,
  type PriceLists,
  type Rates,
  type Seller,
  type SellersFrom,
  sellersFor,
} from "../../src/index";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { unreadSentences } from "./messages";

const { makers: texts } = SOURCING_TEXTS;

/** The workbook's price lists, as far as they can be read. */
export interface ReadMakers {
  readonly lists: PriceLists | undefined;
  /** Why the table cannot be read; "" where it can, or where there is none. */
  readonly refused: string;
}

/** Who is asked for a line's chain, and what is said of that. */
export interface AskedMakers {
  readonly sellers: readonly Seller[];
  /** Why the surcharge on Rates counts, or nobody's; "" where price lists do. */
  readonly from: "" | Exclude<SellersFrom, "price lists">;
  readonly unreadRows: readonly MakerFault[];
}

export function askedMakers({ lists, refused }: ReadMakers, line: OrderLine, rates: Rates): AskedMakers {
  const { sellers, from, unread } = sellersFor(lists, line, rates);
  // A table that cannot be read is not one that is not there.
  const isSaid = from === "nowhere: the piece is hollow" || (from !== "price lists" && refused === "");
  return { sellers, from: isSaid ? from : "", unreadRows: unread };
}

/** What an answer says of price lists that it had to do without. */
export function unreadOf({ refused }: ReadMakers, rows: readonly MakerFault[]): readonly string[] {
  return [...(refused === "" ? [] : [texts.unreadTable(refused)]), ...unreadSentences(rows)];
}
