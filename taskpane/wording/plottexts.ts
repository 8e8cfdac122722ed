/** What the plots say. */
export const plots = {
  title: "Plots",
  ofLine: (number: number) => `line ${number}`,
  loading: "Loading the plots…",
  notLoaded: "The plots could not be loaded. Close this part and open it again.",
  points: "Points of this plot",
  sourcing: {
    title: "Make or buy by weight",
    by: {
      "heavier links": "With heavier links at this length",
      "more links": "With more of the same links",
      either: "With heavier links or with more of them",
    },
    above: (by: string, weight: string) => `${by}, making costs less per gram above ${weight} of plain chain.`,
    always: (by: string) => `${by}, making costs less per gram at any weight.`,
    never: (by: string) => `${by}, making never costs less per gram at these rates.`,
    outside: "That crossing with heavier links lies outside this plot.",
    curves: "The curves are of heavier links.",
    order: (weight: string, make: string, buy: string) =>
      `The plain chain of this order, ${weight}, costs ${make} a gram made and ${buy} bought.`,
    weight: "Plain chain, grams",
    perGram: (currency: string) => `${currency} a gram`,
    made: "made",
    bought: "bought",
    madeHead: (currency: string) => `Made, ${currency} a gram`,
    boughtHead: (currency: string) => `Bought, ${currency} a gram`,
    crossing: (weight: string) => `crossing ${weight}`,
    thisOrder: (weight: string) => `this order ${weight}`,
  },
  margin: {
    title: "Margin if spot moves",
    order: (price: string, margin: string, spot: string) =>
      `The price of ${price} leaves a margin of ${margin} at this order's spot of ${spot}.`,
    discounted: (price: string, margin: string, spot: string) =>
      `The price after the discount, ${price}, leaves a margin of ${margin} at this order's spot of ${spot}.`,
    withTax: (price: string) => `${price} with tax in it`,
    upTo: (least: string, spot: string) => `Your least margin of ${least} is kept up to a spot of ${spot}.`,
    onlyUpTo: (least: string, spot: string) =>
      `Your least margin of ${least} would be kept only up to a spot of ${spot}.`,
    never: (least: string) => `No spot is low enough for your least margin of ${least}.`,
    outside: "That lies outside this plot.",
    spot: (currency: string) => `Spot, ${currency} an ounce`,
    margin: "Margin",
    line: "this price",
    least: (least: string) => `least margin ${least}`,
    floor: (spot: string) => `floor ${spot}`,
    thisOrder: (spot: string) => `this order ${spot}`,
  },
} as const;
