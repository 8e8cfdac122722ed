/** What a number may be. `right` ends the sentence: "…; give <right>". */
export interface NumberRule {
  readonly right: string;
  /** Greater than this. */
  readonly above?: string;
  /** At least this. */
  readonly least?: string;
  /** Less than this. */
  readonly below?: string;
  /** At most this. */
  readonly most?: string;
  readonly whole?: boolean;
  /** A share: "5 %" counts as 0.05. */
  readonly share?: boolean;
}

export const MONEY_AT_LEAST_0: NumberRule = {
  least: "0",
  most: "1000000000000",
  right: "an amount of money from 0, such as 1.50",
};
export const SPOT_RULE: NumberRule = {
  above: "0",
  most: "1000000000000",
  right: "the money for one troy ounce of fine gold, such as 2650",
};
export const SHARE: NumberRule = {
  share: true,
  least: "0",
  below: "1",
  right: "a share from 0 to below 1, such as 0.02 or 2 %",
};
export const WHOLE_SHARE: NumberRule = {
  share: true,
  least: "0",
  most: "1",
  right: "a share from 0 to 1, such as 0.5 or 50 %",
};
export const MARKUP_RULE: NumberRule = {
  share: true,
  least: "0",
  most: "1000000",
  right: "a share of cost from 0, such as 0.30 or 30 %",
};
