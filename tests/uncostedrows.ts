/** Fields of a design by their headers: 50 links of 2 g in fine gold. */
export const PLAIN_ROW = {
  Design: "Curb",
  Mark: "1000",
  Length: 12.5,
  "Length unit": "in",
  "Links per in": 4,
  "Weight of one link": 2,
  Colour: "yellow",
} as const;

/** A row in which something would count as free, or for less than the gold in it at 25.00 a gram. */
export interface UncostedRow {
  readonly what: string;
  readonly cells: Readonly<Record<string, string | number>>;
  /** The field whose blank or too small cost it is. */
  readonly field: string;
  /** What its fault says in a table. */
  readonly fault: string;
  /** What is asked beside the button. */
  readonly asks: string;
  /** The cost that mends it. */
  readonly mended: number;
}

const LOBSTER = { Clasp: "bought lobster clasp", "Clasp length": 0.5, "Clasp weight": 3 };

export const UNCOSTED_ROWS: readonly UncostedRow[] = [
  {
    what: "a clasp of which nothing is said but its kind",
    cells: { Clasp: "bought lobster clasp" },
    field: "Clasp cost",
    fault: "Clasp cost: found nothing for the bought lobster clasp; give what it costs, or 0 for free",
    asks: "The bought lobster clasp has no cost, no weight and no length. Do they count as 0?",
    mended: 20,
  },
  {
    what: "a clasp with a weight and no cost",
    cells: LOBSTER,
    field: "Clasp cost",
    fault: "Clasp cost: found nothing for the bought lobster clasp; give what it costs, or 0 for free",
    asks: "The bought lobster clasp has no cost. Is it free?",
    mended: 75,
  },
  {
    what: "a clasp that costs less than its gold",
    cells: { ...LOBSTER, "Clasp cost": 74.99 },
    field: "Clasp cost",
    // 3 g at 25.00.
    fault:
      "Clasp cost: found 74.99, less than the 75.00 that the gold in it is worth; give what it costs now, or 0 for free",
    asks: "The bought lobster clasp costs USD 74.99, but its gold alone is worth USD 75.00. Is the cost right?",
    mended: 75,
  },
  {
    what: "findings with a weight and no cost",
    cells: { "Weight of other findings": 0.4 },
    field: "Cost of other findings",
    fault: "Cost of other findings: found nothing for the other findings; give what they cost, or 0 for free",
    asks: "The other findings have no cost. Are they free?",
    mended: 10,
  },
  {
    what: "findings that cost less than their gold",
    cells: { "Weight of other findings": 0.4, "Cost of other findings": 9 },
    field: "Cost of other findings",
    // 0.4 g at 25.00.
    fault:
      "Cost of other findings: found 9.00, less than the 10.00 that the gold in it is worth; give what it costs now, or 0 for free",
    asks: "The other findings cost USD 9.00, but their gold alone is worth USD 10.00. Is the cost right?",
    mended: 10,
  },
  {
    what: "stones without a price",
    cells: { "How many links": 12 },
    field: "Price of one stone",
    fault: "Price of one stone: found nothing for the 12 stones in the links; give what they cost, or 0 for free",
    asks: "The 12 stones in the links have no cost. Are they free?",
    mended: 3,
  },
  {
    what: "a stone on the clasp without a price",
    cells: { ...LOBSTER, "Clasp cost": 90, "Stones on the clasp": 1 },
    field: "Price of one clasp stone",
    fault: "Price of one clasp stone: found nothing for the stone on the clasp; give what it costs, or 0 for free",
    asks: "The stone on the clasp has no cost. Is it free?",
    mended: 3,
  },
];

/** A row under headers that name all of its fields and more. */
export const UNCOSTED_HEADERS = [
  ...new Set([
    ...Object.keys(PLAIN_ROW),
    ...UNCOSTED_ROWS.flatMap(({ cells, field }) => [...Object.keys(cells), field]),
  ]),
];

export function cellsOf(row: Readonly<Record<string, string | number>>): (string | number)[] {
  const all: Readonly<Record<string, string | number>> = { ...PLAIN_ROW, ...row };
  return UNCOSTED_HEADERS.map((header) => all[header] ?? "");
}
