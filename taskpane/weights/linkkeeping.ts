import {
  KEPT_LINK_LABELS,
  type KeptLink,
  type KeptLinkKey,
  type LineKey,
  type Parsed,
  parseKeptLink,
} from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { formPlan } from "../controls/formplan";
import { spokenNote } from "../controls/note";
import { pressSteps } from "../controls/pressstep";
import { readForm } from "../controls/readform";
import { keepLink } from "../excel/weights/scalerow";
import { today } from "../wording/display";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { linkName } from "../wording/shownweight";
import type { ScaleEvents, Writing } from "./weightevents";

const { links: texts } = SCALE_TEXTS;

/** What only this part asks; the rest of a kept link comes from the order. */
type Asked = "model" | "width";
const FROM_ORDER = [
  "mark",
  "colour",
  "linksPer",
  "linksPerUnit",
  "linkWeight",
] as const satisfies readonly (KeptLinkKey & LineKey)[];

const { words, figure, group } = formPlan<Asked>(texts.keepHelp);
const KEEPING_GROUPS = [
  group("keeping", "", [
    words("model", "half", { required: true }),
    figure("width", "half", { unit: SCALE_TEXTS.millimetres }),
  ]),
];

export interface LinkKeeping {
  readonly parts: readonly HTMLElement[];
  /** A name for the link, where none is typed. */
  suggest(model: string): void;
}

/** Writes the order's link down in the Links table. */
export function linkKeeping(on: ScaleEvents, write: Writing): LinkKeeping {
  const kept = spokenNote();
  const keep = button(texts.keep, "outline", keepTyped);
  const steps = pressSteps(kept);
  const form = readForm(
    { name: "link", title: texts.keepTitle, groups: KEEPING_GROUPS, labels: KEPT_LINK_LABELS, parse },
    { changed: () => form.read(), submitted: keepTyped, lacking: kept.say },
  );

  function parse(asked: Readonly<Record<Asked, string>>): Parsed<KeptLink> {
    const line = on.line();
    const taken = Object.fromEntries(FROM_ORDER.map((key) => [key, line[key] ?? ""]));
    return parseKeptLink({ ...taken, ...asked } as Record<KeptLinkKey, string>);
  }

  function keepTyped(): void {
    const link = form.ask();
    if (!link) {
      const parsed = parse(form.counted());
      const ofOrder = parsed.ok ? undefined : parsed.faults.find(({ field: key }) => !(key in form.counted()));
      if (ofOrder) kept.failed(texts.inOrder(ofOrder.sentence));
      return;
    }
    void steps.run(keep, texts.keeping, async () => {
      await write(() => keepLink(link, today()));
      const { model, width, mark, colour } = link;
      kept.say(texts.kept(linkName({ model, width: width?.value().toFixed(), mark, colour })));
      form.fill({ model: "", width: "" });
    });
  }

  return {
    parts: [
      element("h3", {}, texts.keepTitle),
      element("p", { class: "help" }, texts.keepAbout),
      form.root,
      element("div", { class: "actions" }, keep.root),
      kept.root,
    ],
    suggest(model) {
      if (form.counted().model === "") form.fill({ model });
    },
  };
}
