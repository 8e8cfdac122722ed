/** Where a caution is shown: a step in the side panel, or a sheet. */
export type CautionPlace =
  | "caster's ticket"
  | "polisher's ticket"
  | "setter's ticket"
  | "engraver's ticket"
  | "plater's ticket"
  | "job sheet"
  | "Rates sheet"
  | "cash plan"
  | "wax or resin"
  | "3-D file"
  | "mark"
  | "colour"
  | "hollow links"
  | "plating"
  | "stones"
  | "customer's gold"
  | "terms"
  | "open quotes"
  | "price sheet";

/** What to take care of at a step: what to do first, then the rule that says so. */
export interface Caution {
  readonly step: string;
  readonly words: string;
  /** The rule, for no more than it says; undefined where nobody has read it in full. */
  readonly rule?: string;
  readonly where: readonly CautionPlace[];
}

const EVERY_TICKET = [
  "caster's ticket",
  "polisher's ticket",
  "setter's ticket",
  "engraver's ticket",
  "plater's ticket",
] as const;

/** Every caution, once. Never in place of local codes, a licensed trade, an assay office or a tax adviser. */
export const CAUTIONS = {
  casting: {
    step: "Casting",
    words:
      "Molten metal and fumes: cast only in a ventilated workshop that local fire and emission rules allow, not at home. Protect eyes, face, hands.",
    rule: "local fire and emission codes",
    where: ["caster's ticket", "job sheet", "wax or resin"],
  },
  burnout: {
    step: "Burnout, investment",
    words:
      "Investment dust contains silica. Do not breathe it: work wet or with extraction, and wear a mask that fits. Vent the burnout kiln outdoors.",
    rule: "silica: 29 CFR 1910.1053, 50 µg/m³, action level 25",
    where: ["caster's ticket", "wax or resin"],
  },
  resin: {
    step: "Resin",
    words:
      "Uncured resin can make your skin allergic. Wear gloves and eye protection. Wash it off with soap and water, not with alcohol.",
    rule: "the resin’s safety data sheet",
    where: ["3-D file", "wax or resin"],
  },
  alcohol: {
    step: "Alcohol",
    words:
      "Isopropyl vapour can be lit from 12 °C (53 °F), from 2% in air. No flame or spark near it. Keep the air fresh.",
    rule: "NIOSH Pocket Guide: flash point 53 °F, LEL 2.0%",
    where: ["wax or resin", "3-D file"],
  },
  laser: {
    step: "Laser joining",
    words:
      "An open laser welder is usually class 4: eye protection for its wavelength, working interlocks, a trained operator.",
    rule: "class: 21 CFR 1040.10, IEC 60825-1; use: ANSI Z136.1",
    where: ["polisher's ticket"],
  },
  torch: {
    step: "Torch joining",
    words:
      "Keep burnable things away, check the hoses, and have fresh air. Use cadmium-free solder; it counts in the mark’s tolerance. Do not breathe flux fumes.",
    rule: "solder and mark: 15 U.S.C. 295",
    where: ["polisher's ticket"],
  },
  nickel: {
    step: "Nickel",
    words:
      "EU, UK: nickel white gold may release at most 0.5 µg/cm²/week; plated, it must keep that for two years of wear. Ask the caster.",
    rule: "REACH Annex XVII 27(1)(b), (c)",
    where: ["colour", "caster's ticket", "plater's ticket"],
  },
  mark: {
    step: "Marks",
    words:
      "Write the true karat directly before “gold”. US: a struck karat needs your name or registered trademark beside it. UK: a hallmark from 1 g.",
    rule: "16 CFR 23.3(b)(2); 15 U.S.C. 297(b); Hallmarking Act 1973",
    where: ["mark", "polisher's ticket"],
  },
  /** In place of the one above where all metal of a piece weighs less. */
  lightMark: {
    step: "Marks",
    words:
      "Write the true karat directly before “gold”. US: a struck karat needs your name or registered trademark beside it. UK: below 1 g of metal, no hallmark is needed.",
    rule: "16 CFR 23.3(b)(2); 15 U.S.C. 297(b); Hallmarking Act 1973",
    where: ["polisher's ticket"],
  },
  hollow: {
    step: "Hollow",
    words:
      "Call hollow links hollow wherever the piece is described, never solid: buyers read “solid gold” as not hollow inside.",
    rule: "16 CFR 23.1; FTC consumer advice",
    where: ["hollow links", ...EVERY_TICKET, "price sheet"],
  },
  plating: {
    step: "Plating",
    words: "Name the metal: “plated with rhodium”. Never write “plated” alone beside gold: it reads as gold-plated.",
    rule: "16 CFR 23.7 for rhodium",
    where: ["plating", "plater's ticket"],
  },
  publicGold: {
    step: "Gold from the public",
    words:
      "Buying gold may need a licence, proof of identity and a holding time: ask locally. Test it. US: buying and selling more than USD 50,000 each in a year may bring duties.",
    rule: "state and local law; 31 CFR 1027.100",
    where: ["customer's gold", "job sheet"],
  },
  cash: {
    step: "Cash",
    words:
      "US: more than USD 10,000 in cash from one buyer, for one order or connected orders, goes on Form 8300 within 15 days.",
    rule: "IRS Publication 1544: related payments within 12 months",
    where: ["terms", "open quotes", "job sheet"],
  },
  tax: {
    step: "Tax",
    words:
      "EU, UK: show consumers the price with tax in it. Ask a tax adviser which rate applies. Set tax aside from every sale.",
    where: ["Rates sheet", "cash plan"],
  },
  stones: {
    step: "Stones",
    words: "Buy the stones only after the cast seats have been checked.",
    rule: "common practice",
    where: ["stones", "setter's ticket"],
  },
} as const satisfies Readonly<Record<string, Caution>>;
export type CautionKey = keyof typeof CAUTIONS;

/** Once, at the end of a sheet with cautions. */
export const LOCAL_LAW_FIRST = "Local law, your assay office and your tax adviser come first.";

/** A caution as it is read: the words, then the rule in brackets. */
export function cautionText(key: CautionKey): string {
  const { words, rule }: Caution = CAUTIONS[key];
  return rule === undefined ? words : `${words} (${rule})`;
}

/** Some cautions as they are read at a place. A caution that does not belong there is our mistake. */
export function cautionsAt(place: CautionPlace, wanted: readonly CautionKey[]): readonly string[] {
  return wanted.map((key) => {
    const { where }: Caution = CAUTIONS[key];
    if (!where.includes(place)) throw new Error(`The caution ${key} has no place at ${place}`);
    return cautionText(key);
  });
}
