import {
  type Currency,
  EVERY_MARK,
  MAKER_LABELS,
  type MakerKey,
  MINIMUM_UNITS,
  type PriceLists,
  parseMakerOffer,
} from "../../src/index";
import { button, linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import { formPlan } from "../controls/formplan";
import { spokenNote } from "../controls/note";
import { pressSteps } from "../controls/pressstep";
import { readForm } from "../controls/readform";
import { addMaker, beginMakers, type MakersReading } from "../excel/makeorbuy/makerbook";
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

export interface MakerPart {
  readonly root: HTMLElement;
  show(reading: MakersReading, lists: PriceLists | undefined, currency: Currency | undefined): void;
}

/** The price lists that the workbook keeps: how many, what is wrong with them, and a row written down. */
export function makerPart(on: {
  readonly goTo: (sheet: string) => void;
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  /** Runs a step that writes price lists; they are read again at its end. */
  readonly write: (act: () => Promise<void>) => Promise<void>;
}): MakerPart {
  const state = element("p", { class: "help" });
  const faults = element("div", { class: "faults", role: "status" });
  const note = spokenNote();
  const begin = button(texts.begin, "outline", () => void on.attempt(beginTable));
  const sheetLink = linkButton("", () => on.goTo(sheet));
  const steps = pressSteps(note);
  const press = button(texts.press, "outline", add);
  const form = readForm(
    {
      name: "maker",
      title: texts.formTitle,
      groups: GROUPS,
      labels: LABELS,
      parse: (typed: Record<Asked, string>) => (currency ? parseMakerOffer(typed, currency) : undefined),
    },
    { changed: () => form.read(), submitted: add, lacking: note.say },
  );
  const root = element(
    "details",
    { class: "task" },
    element("summary", {}, texts.lists),
    state,
    element("div", { class: "actions" }, sheetLink, begin.root),
    faults,
    element("h3", {}, texts.formTitle),
    form.root,
    element("div", { class: "actions" }, press.root),
    note.root,
  );
  let sheet = "";
  let currency: Currency | undefined;

  async function beginTable(): Promise<void> {
    begin.work(texts.beginning);
    try {
      await on.write(beginMakers);
      note.say(texts.begun);
    } finally {
      begin.rest();
    }
  }

  function add(): void {
    const offer = form.ask();
    if (!offer) return;
    const cells = cellsOf(form.counted());
    void steps.run(press, texts.pressing, async () => {
      await on.write(() => addMaker({ ...cells, date: dateSerial(today()) }));
      note.say(texts.written(offer.maker));
      form.fill(TYPED_ANEW);
      form.read();
      form.goTo("from");
    });
  }

  return {
    root,
    show(reading, lists, nowCurrency) {
      currency = nowCurrency;
      sheet = reading.kind === "read" ? reading.sheet : "";
      const makers = new Set(lists?.offers.map(({ maker }) => maker.toLowerCase()));
      setText(
        state,
        reading.kind === "refused"
          ? reading.sentence
          : makers.size === 0
            ? texts.none
            : texts.count(makers.size, lists?.offers.length ?? 0),
      );
      state.classList.toggle("fault", reading.kind === "refused");
      setText(sheetLink, SOURCING_TEXTS.show(sheet));
      sheetLink.hidden = sheet === "";
      begin.root.hidden = reading.kind !== "none";
      const wrong = lists?.faults ?? [];
      faults.replaceChildren(
        element("p", { class: "fault" }, texts.faults(wrong.length)),
        element("ul", {}, ...wrong.map(({ sentence }) => element("li", { class: "fault" }, sentence))),
      );
      faults.hidden = wrong.length === 0;
      if (wrong.length > 0) root.open = true;
    },
  };
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
