import {
  type Currency,
  EVERY_MARK,
  MAKER_LABELS,
  type MakerKey,
  MINIMUM_UNITS,
  parseMakerOffer,
} from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { formPlan } from "../controls/formplan";
import type { SpokenNote } from "../controls/note";
import { pressSteps } from "../controls/pressstep";
import { readForm } from "../controls/readform";
import { addMaker } from "../excel/makeorbuy/makerbook";
import { dateSerial } from "../excel/template/fields";
import { today } from "../wording/display";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";

const { makers: texts } = SOURCING_TEXTS;

/** What a row is written down with here; currency and date come by themselves. */
type Asked = Exclude<MakerKey, "currency" | "date">;
const { words, figure, mark, choice, group } = formPlan<Asked>(texts.help);
const GROUPS = [
  group("offer", "", [
    words("maker", "half", { required: true }),
    mark("mark", "half", { required: true, start: EVERY_MARK }),
    figure("from", "half"),
    figure("surcharge", "half", { required: true }),
    figure("minimum", "half"),
    choice(
      "minimumIn",
      "half",
      ["", ...MINIMUM_UNITS, "money"].map((value) => ({ value, shown: texts.units[value] ?? value })),
    ),
    words("lead", "half"),
    words("note", "half"),
  ]),
];
const LABELS: Readonly<Record<Asked, string>> = { ...MAKER_LABELS, mark: texts.forMark };
/** Typed anew for each class; maker, mark, minimum and lead time stay for the next one. */
const TYPED_ANEW = { from: "", surcharge: "" } as const satisfies Partial<Record<Asked, string>>;
const FIGURES: readonly Asked[] = ["from", "surcharge", "minimum", "mark"];

/** The form that writes a row of a price list down. @param write runs what writes; the lists are read again at its end */
export function makerForm(
  note: SpokenNote,
  currency: () => Currency | undefined,
  write: (act: () => Promise<void>) => Promise<void>,
): readonly HTMLElement[] {
  const steps = pressSteps(note);
  const press = button(texts.press, "outline", add);
  const form = readForm(
    {
      name: "maker",
      title: texts.formTitle,
      groups: GROUPS,
      labels: LABELS,
      parse(typed: Record<Asked, string>) {
        const now = currency();
        return now && parseMakerOffer(typed, now);
      },
    },
    { changed: () => form.read(), submitted: add, lacking: note.say },
  );

  function add(): void {
    const offer = form.ask();
    if (!offer) return;
    const cells = cellsOf(form.counted());
    void steps.run(press, texts.pressing, async () => {
      await write(() => addMaker({ ...cells, date: dateSerial(today()) }));
      note.say(texts.written(offer.maker));
      form.fill(TYPED_ANEW);
      form.read();
      form.goTo("from");
    });
  }

  return [form.root, element("div", { class: "actions" }, press.root)];
}

/** Figures as numbers, so that the sheet can count with them; a mark such as 585 too. */
function cellsOf(texts: Readonly<Record<Asked, string>>): Partial<Record<MakerKey, string | number>> {
  return Object.fromEntries(
    Object.entries(texts).flatMap(([key, text]) => {
      const said = text.trim();
      if (said === "") return [];
      return [[key, FIGURES.some((each) => each === key) && /^\d*\.?\d+$/.test(said) ? Number(said) : said]];
    }),
  );
}
