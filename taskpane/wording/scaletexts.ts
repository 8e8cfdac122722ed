import type {
  Colour,
  KeptLinkKey,
  RecastKey,
  RecastStage,
  ResizeKey,
  Stage,
  WaxKey,
  WeighInKey,
} from "../../src/index";

/** Every sentence of the pane about weighing, links and their weights. */
export const SCALE_TEXTS = {
  grams: "g",
  millimetres: "mm",
  density: "g/cm³",
  yesNo: { no: "No", yes: "Yes" },

  weighIn: {
    title: "Weigh in",
    about: "A count and a weight are enough; Enter writes them to the Weigh-ins sheet.",
    form: "A weigh-in",
    stages: {
      model: "model (wax, resin)",
      cast: "cast",
      polished: "polished",
      finished: "finished",
    } satisfies Record<Stage, string>,
    help: {
      job: "A quote's number, or nothing.",
      model: "The same name at every weighing.",
      pieces: "Links, without clasp.",
      weight: "Grams, or with its unit: 8.04 dwt, 0.4 ozt, 12 ct.",
      sent: "How many went out. What is missing is told.",
      who: "Who polished or finished it.",
    } satisfies Partial<Record<WeighInKey, string>>,
    colours: {
      yellow: "Yellow",
      rose: "Rose",
      white: "White",
      green: "Green",
      own: "Own alloy",
    } satisfies Record<Colour, string>,
    press: "Write it down",
    working: "Writing…",
    written: (pieces: string, weight: string, stage: string) =>
      `Written down: ${pieces === "1" ? "one piece" : `${pieces} pieces`}, ${weight}, ${stage}.`,
    undo: "Take it out again",
    undoing: "Taking it out…",
    undone: "It was taken out of the Weigh-ins sheet. What you typed is back in the fields.",
    guess: {
      one: (link: string, weight: string) => `${link}: still a guess: ${weight} after one weighing.`,
      wide: (link: string, weight: string, within: string, weighings: string) =>
        `${link}: still a guess: ${weight}, give or take ${within} after ${weighings} weighings.`,
    },
    known: (link: string, weight: string, within: string, weighings: string) =>
      `${link}: ${weight}, give or take ${within} after ${weighings} weighings.`,
    farOff: (one: string) =>
      `One piece comes to ${one}, far from the other weighings of it. It is written down all the same: look at count and weight, and weigh again.`,
    loss: (share: string, lost: string, out: string, from: string) =>
      `Loss since ${from}: ${share}, ${lost} of the ${out} that went out.`,
    sinceCast: (share: string) => `Since cast it is ${share}.`,
    allowed: (share: string) => `Allowed on Rates: ${share} of the cast weight.`,
    noLimit: "Rates gives no share to hold it against.",
    above: (share: string, allowed: string) =>
      `The loss since cast, ${share}, is above the ${allowed} that Rates allows.`,
    moreBack: (back: string, out: string) => `More metal came back than went out: ${back} against ${out}.`,
    tenTimes: (one: string) => `One piece comes to ${one}, ten times the other weighings of it or a tenth.`,
    leftOut: "It is written down, but left out of averages. Look at count and weight, and weigh again.",
    stillCounted:
      "The table WeighIns was begun by an earlier version, so its averages still count it. Take it out, or correct its row.",
    confirm: "It is right: count it",
    confirming: "Writing…",
    confirmed: "It counts now: the column Confirmed of its row says yes.",
    none: (link: string) => `${link}: no weighing counts yet.`,
    missing: (pieces: string, weight: string, worth: string | undefined) =>
      `Sent and not returned: ${pieces === "1" ? "one piece" : `${pieces} pieces`}, ${weight}${worth === undefined ? "" : `, ${worth} at the metal rate`}.`,
    noCast: (job: string) => `Job ${job} has no cast weigh-in of this link: no loss can be said.`,
  },

  job: {
    figures: (pieces: string, weight: string, stage: string) =>
      `${pieces === "" ? "links not counted" : `${pieces} links`}, ${weight === "" ? "not weighed" : `${weight}\u00a0g`} ${stage}`,
    jobAlone: (sheet: string, figures: string) => `${sheet} has ${figures}. The Weigh-ins sheet has none of it yet.`,
    tableAlone: (sheet: string, figures: string) => `The Weigh-ins sheet has ${figures}. ${sheet} has none of it.`,
    same: (sheet: string, figures: string) => `${sheet} and the Weigh-ins sheet both have ${figures}.`,
    differ: (sheet: string, job: string, table: string) =>
      `${sheet} has ${job}. The Weigh-ins sheet has ${table}. Correct the one that is wrong.`,
    take: "Fill from the job sheet",
    put: "Write it on the job sheet",
    putting: "Writing…",
  },

  links: {
    title: "Kept links",
    none: "No links written down yet. Fill the order's mark, colour, links and weight of one link, then keep it here.",
    choose: "Link from the table Links",
    used: (name: string) => `The order has the mark, colour, links and weight of ${name}.`,
    usedMean: (weight: string, weighings: string, pieces: string, within: string | undefined) =>
      `Weight of one link: ${weight}, the mean of ${weighings === "1" ? "one weighing" : `${weighings} weighings`} of ${pieces} finished pieces${within === undefined ? "" : `, give or take ${within}`}.`,
    stillGuess: "It is still a guess.",
    leftOut: "Weighings that cannot be are left out of it until the table Weigh-ins says that they are confirmed.",
    wasEstimated: (weight: string) => `The estimate was ${weight}.`,
    usedEstimate: (weight: string) =>
      `Weight of one link: ${weight}, an estimate: no finished ones of it were weighed yet.`,
    unusable: (name: string) =>
      `${name} has neither an estimate nor a weighing yet, so it cannot go into the order yet. Fill its Estimate g in the table Links, or weigh some finished.`,
    keepTitle: "Keep this link",
    keepAbout: "Writes the open order's mark, colour, links per length and weight of one link to the table Links.",
    keepHelp: {
      width: "Empty where the name says it.",
    } satisfies Partial<Record<KeptLinkKey, string>>,
    keep: "Keep this link",
    keeping: "Writing…",
    kept: (name: string) => `${name} is in the table Links, its weight as an estimate.`,
    inOrder: (sentence: string) => `In the order: ${sentence}`,
  },

  estimates: {
    title: "Weight from wax, another alloy, another width",
    press: "Put the formula into the selected cell",
    pressing: "Writing…",
    placed: (address: string, formula: string, stage: RecastStage) =>
      `${address} now has ${formula}${stage === "cast" ? ". It is a cast weight." : ""}`,
    wax: {
      title: "From wax or resin",
      words: "Cast weight = weight of the wax or resin × density of the metal ÷ density of the wax or resin",
      help: {
        wax: "One link without sprue, or its share.",
        waxDensity: "Common practice: waxes about 0.9 to 1.0, casting resins 1.1 to 1.2. Ask for your material's own.",
        metalDensity: "Ask the caster, or give a composition such as Au 585 Ag 265 Cu 150.",
      } satisfies Partial<Record<WaxKey, string>>,
    },
    recast: {
      title: "In another alloy",
      words: "Weight in the other alloy = weight now × its density ÷ density now",
      help: {
        fromDensity: "Or a composition.",
        toDensity: "Or a composition such as Au 750 Ag 125 Cu 125.",
      } satisfies Partial<Record<RecastKey, string>>,
      note: "A karat alone fixes no density. One worked out from a composition may be off by about a per cent.",
    },
    resize: {
      title: "At another width",
      words: "Weight at the wanted width = weight × (wanted width ÷ its width)³; the pitch grows with the width",
      help: {
        toWidth: "In the same unit.",
        linksPer: "To have them at the new width too.",
      } satisfies Partial<Record<ResizeKey, string>>,
      links: (links: string) => `Links in the same length: ${links}`,
    },
    stages: { finished: "Finished", cast: "As cast" } satisfies Record<RecastStage, string>,
    stageHelp: "Polished and ready, or as it came from the caster.",
    result: (weight: string, stage: RecastStage) => `= ${weight} ${stage === "cast" ? "as cast" : "finished"}`,
  },
} as const;
