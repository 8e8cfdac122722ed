/** Clasps by what they do. A bought one's gold is in its cost; a cast one is cast with the links, in their alloy. */
export const CLASPS = ["bought lobster clasp", "cast box clasp", "cast hidden clasp", "none"] as const;
export type ClaspKind = (typeof CLASPS)[number];

/** The pieces a caster casts for one clasp. Source: common practice: box and tongue; the two halves of a hidden clasp. */
export const CLASP_PARTS: Readonly<Record<ClaspKind, number>> = {
  "bought lobster clasp": 0,
  "cast box clasp": 2,
  "cast hidden clasp": 2,
  none: 0,
};

export function isCast(clasp: ClaspKind): boolean {
  return CLASP_PARTS[clasp] > 0;
}
