/** The sentences about taking a link's weight into the order. */
export const LINK_OFFER_TEXTS = {
  finished: (finished: string) => `Use in the order: ${finished} finished`,
  /** Shows both weights: the finished one, which the scale will show, and the one from the file or the wax. */
  cast: (finished: string, cast: string, loss: string) =>
    `Use in the order: ${finished} finished (${cast} cast less ${loss} loss)`,
  castOfFinished: (finished: string, cast: string, loss: string) =>
    `Use in the order: ${finished} finished (${cast} cast less a loss of ${loss} of the finished weight)`,
  inGrams:
    "This is a cast weight, and an order takes the finished weight. The Rates sheet gives the loss in grams per piece, so the loss of one link is not known. Type the finished weight of one link in the order.",
  noLoss: (faults: string) =>
    `This is a cast weight, and an order takes the finished weight. Correct the loss on the Rates sheet. ${faults}`,
  noRates:
    "This is a cast weight, and an order takes the finished weight. The Rates sheet, which says the loss, cannot be read now.",
  used: (finished: string) => `The order has ${finished}, finished, as the weight of one link.`,
  usedWithLinks: (finished: string, links: string) =>
    `The order has ${finished}, finished, as the weight of one link, and ${links} links per length.`,
} as const;
