import {
  CostingError,
  cashBeforeSale,
  depositCovers,
  depositWanted,
  MOST_PIECES,
  paidBackWith,
  piecesCarried,
  piecesCost,
  Quotient,
  timesMoney,
} from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

/** What goes out for each piece; casting is among what each costs, by its weight. */
const PIECE = {
  each: read.moneyFrom0,
  casting: read.counted(read.moneyFrom0, "0"),
  castingMinimum: read.counted(read.moneyFrom0, "0"),
} as const;

const PIECESCOST = spread({ ...PIECE, pieces: read.counted(read.wholeAbove0, "1") }, (row) => {
  return piecesCost(row, row.pieces).amount;
});

/**
 * What pieces made together cost: pieces x each, their casting not below the caster's minimum for all of them.
 * @customfunction PIECESCOST
 * @param each What one piece costs, its casting by weight, money; a cell or a range.
 * @param casting Casting of one piece by weight, a part of each, money; a cell or a range.
 * @param castingMinimum Least the caster charges for the pieces together, money; a cell or a range.
 * @param [pieces] Pieces made together, 1 if omitted; a cell or a range.
 * @returns Money, unrounded.
 */
export function costOfPieces(
  each: unknown[][],
  casting: unknown[][],
  castingMinimum: unknown[][],
  pieces?: unknown[][],
): unknown[][] {
  return PIECESCOST({ each, casting, castingMinimum, pieces });
}

const CASHNEEDED = spread(
  { once: read.moneyFrom0, made: read.moneyFrom0, deposits: read.counted(read.moneyFrom0, "0") },
  (row) => cashBeforeSale(row.once, row.made, row.deposits).amount,
);

/**
 * Cash of your own before the first sale: what is paid once, and of the pieces what deposits do not cover.
 * @customfunction CASHNEEDED
 * @param once What is paid once, before the first piece, money; a cell or a range.
 * @param made What the pieces cost, money; a cell or a range.
 * @param [deposits] What customers pay before the work, for all the pieces, money, 0 if omitted; a cell or a range.
 * @returns Money, unrounded.
 */
export function cashNeededFor(once: unknown[][], made: unknown[][], deposits?: unknown[][]): unknown[][] {
  return CASHNEEDED({ once, made, deposits });
}

/** What decides how many pieces cash carries. */
const CARRIED = {
  cash: read.anyMoney,
  once: read.moneyFrom0,
  ...PIECE,
  deposit: read.counted(read.moneyFrom0, "0"),
} as const;

const MOSTPIECES = spread(CARRIED, ({ cash, once, deposit, ...piece }) => {
  const carried = piecesCarried({ cash, once, piece, deposit });
  return Quotient.of(carried ? (carried.to ?? MOST_PIECES) : 0);
});

/**
 * How many pieces at a time the cash at hand carries at most: 0 where it carries none, 1000 where deposits pay for any number.
 * @customfunction MOSTPIECES
 * @param cash Cash at hand, money; a cell or a range.
 * @param once What is paid once, before any deposit, money; a cell or a range.
 * @param each What one piece costs, its casting by weight, money; a cell or a range.
 * @param casting Casting of one piece by weight, a part of each, money; a cell or a range.
 * @param castingMinimum Least the caster charges for the pieces together, money; a cell or a range.
 * @param [deposit] What a customer pays of one piece before the work, money, 0 if omitted; a cell or a range.
 * @returns Pieces, a whole number.
 */
export function mostPieces(
  cash: unknown[][],
  once: unknown[][],
  each: unknown[][],
  casting: unknown[][],
  castingMinimum: unknown[][],
  deposit?: unknown[][],
): unknown[][] {
  return MOSTPIECES({ cash, once, each, casting, castingMinimum, deposit });
}

const FEWESTPIECES = spread(CARRIED, ({ cash, once, deposit, ...piece }) =>
  Quotient.of(piecesCarried({ cash, once, piece, deposit })?.from ?? 0),
);

/**
 * How many pieces at a time the cash at hand carries at least: more than 1 where few share the caster's minimum badly; 0 where it carries none.
 * @customfunction FEWESTPIECES
 * @param cash Cash at hand, money; a cell or a range.
 * @param once What is paid once, before any deposit, money; a cell or a range.
 * @param each What one piece costs, its casting by weight, money; a cell or a range.
 * @param casting Casting of one piece by weight, a part of each, money; a cell or a range.
 * @param castingMinimum Least the caster charges for the pieces together, money; a cell or a range.
 * @param [deposit] What a customer pays of one piece before the work, money, 0 if omitted; a cell or a range.
 * @returns Pieces, a whole number.
 */
export function fewestPieces(
  cash: unknown[][],
  once: unknown[][],
  each: unknown[][],
  casting: unknown[][],
  castingMinimum: unknown[][],
  deposit?: unknown[][],
): unknown[][] {
  return FEWESTPIECES({ cash, once, each, casting, castingMinimum, deposit });
}

const DEPOSITNEEDED = spread(
  { room: read.anyMoney, ...PIECE, price: read.moneyAbove0, pieces: read.counted(read.wholeAbove0, "1") },
  ({ room, price, pieces, ...piece }) => {
    const share = depositWanted(room, piecesCost(piece, pieces), timesMoney(price, pieces));
    if (share) return share;
    throw new CostingError(
      "neverReached",
      "room",
      "found cash that carries the pieces at no deposit; more cash is needed before the first piece",
    );
  },
);

/**
 * The least deposit, as a share of the price, at which your cash carries the pieces. #N/A where not even the whole price beforehand does.
 * @customfunction DEPOSITNEEDED
 * @param room Cash that is left when what is paid once is paid, money; a cell or a range.
 * @param each What one piece costs, its casting by weight, money; a cell or a range.
 * @param casting Casting of one piece by weight, a part of each, money; a cell or a range.
 * @param castingMinimum Least the caster charges for the pieces together, money; a cell or a range.
 * @param price Price of one piece without tax, money; a cell or a range.
 * @param [pieces] Pieces made together, 1 if omitted; a cell or a range.
 * @returns A share, 0.5 for 50 %; unrounded.
 */
export function depositNeeded(
  room: unknown[][],
  each: unknown[][],
  casting: unknown[][],
  castingMinimum: unknown[][],
  price: unknown[][],
  pieces?: unknown[][],
): unknown[][] {
  return DEPOSITNEEDED({ room, each, casting, castingMinimum, price, pieces });
}

const DEPOSITCOVERS = spread(
  { deposit: read.moneyFrom0, tax: read.counted(read.moneyFrom0, "0"), taxDue: read.taxDue },
  (row) => depositCovers(row.deposit, row.tax, row.taxDue).amount,
);

/**
 * What of a deposit pays for what goes out before the sale: the deposit, without the tax in it where that is due with the deposit.
 * @customfunction DEPOSITCOVERS
 * @param deposit What the customer pays beforehand, money; a cell or a range.
 * @param [tax] The tax in it, money, 0 if omitted; a cell or a range.
 * @param [taxDue] "at delivery" (where blank) or "with the deposit"; a cell or a range.
 * @returns Money, unrounded.
 */
export function coveredByDeposit(deposit: unknown[][], tax?: unknown[][], taxDue?: unknown[][]): unknown[][] {
  return DEPOSITCOVERS({ deposit, tax, taxDue });
}

const PAIDBACKWITH = spread({ once: read.moneyFrom0, gain: read.anyMoney }, (row) => {
  const piece = paidBackWith(row.once, row.gain);
  if (piece !== undefined) return Quotient.of(piece);
  throw new CostingError("neverReached", "gain", "found nothing left of a piece; no number of them pays it back");
});

/**
 * The piece with which what is paid once has come back: the first at which pieces x gain reaches it. #N/A where no number does.
 * @customfunction PAIDBACKWITH
 * @param once What is paid once, before the first piece, money; a cell or a range.
 * @param gain What is left of the price of one piece, money; a cell or a range.
 * @returns The piece, counted from 1.
 */
export function paidBackAt(once: unknown[][], gain: unknown[][]): unknown[][] {
  return PAIDBACKWITH({ once, gain });
}
