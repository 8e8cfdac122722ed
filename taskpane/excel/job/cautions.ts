import type { OrderLine } from "../../../src/index";

/** What to take care of, in short lines, each where it applies. Never in place of local codes, a licensed trade or an assay office. */
export const CAUTIONS = {
  casting: [
    "Casting and burnout: molten metal, fumes and silica dust. A ventilated workshop under local fire",
    "and emission codes, never indoors at home.",
  ],
  nickel: [
    "White gold with nickel: chains and bracelets may release at most 0.5 µg/cm²/week (REACH Annex XVII",
    "entry 27, EN 1811). Say which alloy it is.",
  ],
  joining: [
    "Joining by laser: class 4 unless the work is fully enclosed (ANSI Z136.1). Eye protection, interlocks,",
    "a trained operator.",
  ],
  mark: [
    "Mark: the karat struck must be true and stand next to the word gold (16 CFR 23.3); your assay office",
    "or local law comes first.",
  ],
  hollow: ["Hollow links: say so wherever the piece is described, and never sell it as solid."],
  plating: [
    "Plating: name the metal, “plated with rhodium”. “Plated” alone beside gold reads as gold-plated",
    "(16 CFR 23.7).",
  ],
  seats: ["Buy stones only after the cast seats have been checked."],
} as const satisfies Record<string, readonly string[]>;
export type Caution = keyof typeof CAUTIONS;

/** Which of some cautions apply to lines of an order. */
export function cautionsFor(lines: readonly OrderLine[], wanted: readonly Caution[]): readonly Caution[] {
  const applies: Readonly<Record<Caution, boolean>> = {
    casting: true,
    nickel: lines.some((line) => line.linkGroups.some(({ colour }) => colour === "white")),
    joining: true,
    mark: true,
    hollow: lines.some(({ hollow }) => hollow),
    plating: lines.some(({ plated }) => plated),
    seats: lines.some(({ stones }) => stones.length > 0),
  };
  return wanted.filter((caution) => applies[caution]);
}
