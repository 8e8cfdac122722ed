/** What the part says before it is loaded. */
export const SOURCING_PART = {
  title: "Make or buy",
  about: "The plain chain made at your own rates, against what makers of ready chain ask.",
} as const;
