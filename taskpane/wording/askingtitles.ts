/** What the parts about asking prices are called; the rest of their words is loaded with them. */
export const ASKING_TITLES = {
  check: "Price check",
  list: "A list of asking prices",
  listAbout:
    "Cells, a table or CSV with a row of headers, such as Date, Shop, Mark, Weight g, Price. Nothing in it is changed.",
  premiums: "Premiums seen",
  premiumsAbout: "What is asked over the metal, by weight and by month, from the table AskingPrices.",
} as const;

/**
 * The classes of weights, light to heavy, as pane and sheet name them; WEIGHT_CLASSES of the costing library says where they
 * begin.
 */
export const WEIGHT_CLASS_WORDS = [
  "under 5 g",
  "5 to 10 g",
  "10 to 20 g",
  "20 to 50 g",
  "50 to 100 g",
  "100 g and more",
] as const;
