/** What the plots say. */
export const plots = {
  title: "Plots",
  ofLine: (number: number) => `line ${number}`,
  loading: "Loading the plots…",
  notLoaded: "The plots could not be loaded. Close this part and open it again.",
  points: "Points of this plot",
  sourcing: {
    title: "Make or buy by weight",
    above: (weight: string) => `Above ${weight} of plain chain a gram costs less made than bought.`,
    always: "At any weight a gram costs less made than bought.",
    never: "At these rates a gram never costs less made than bought.",
    outside: "That lies outside this plot.",
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
