/** What is said where the final weight settles a price. */
export const SETTLING_TEXTS = {
  legalScale: "Weigh on a scale that is legal for trade where you sell.",
  heavier: (whose: string, brings: string, costs: string, loses: string | undefined, keeps: string) =>
    `${whose} brings ${brings} per gram and costs ${costs}: you ${loses === undefined ? `keep ${keeps}` : `lose ${loses}`} on each gram.`,
  heavierPiece: "A heavier piece",
  heavierLine: (line: number) => `Line ${line}: a heavier piece`,
  stonesUnweighed: (line: number | undefined) =>
    `${line === undefined ? "Weigh" : `Line ${line}: weigh`} the stones and type the carat of one stone. Stones are no gold: their weight is taken off the final weight.`,
  carats: "ct; stones are no gold: 0.2 g a carat comes off the scale's weight",
  typeCarats: "type the carat of each stone above",
} as const;
