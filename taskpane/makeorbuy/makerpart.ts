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
import { type SmallField, smallForm, spokenNote } from "../controls/smallform";
import { addMaker, beginMakers, type MakersReading } from "../excel/makeorbuy/makerbook";
import { isRefusal, sentenceOf } from "../excel/run";
import { dateSerial } from "../excel/template/fields";
import { withPoint } from "../wording/decimalmark";
import { today } from "../wording/display";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";

const { makers: texts } = SOURCING_TEXTS;

/** What a row is written down with here; currency and date come by themselves. */
type Asked = Exclude<MakerKey, "currency" | "date">;
const ASKED = {
  maker: { plan: { label: MAKER_LABELS.maker, required: true }, width: "half" },
  mark: { plan: { label: texts.forMark, required: true, help: texts.help.mark }, width: "half" },
  from: { plan: { label: MAKER_LABELS.from, numeric: true, help: texts.help.from }, width: "half" },
  surcharge: {
    plan: { label: MAKER_LABELS.surcharge, required: true, numeric: true, help: texts.help.surcharge },
    width: "half",
  },
  minimum: { plan: { label: MAKER_LABELS.minimum, numeric: true, help: texts.help.minimum }, width: "half" },
  minimumIn: {
    plan: {
      label: MAKER_LABELS.minimumIn,
      choices: ["", ...MINIMUM_UNITS, "money"].map((value) => ({ value, shown: texts.units[value] ?? value })),
    },
    width: "half",
  },
  lead: { plan: { label: MAKER_LABELS.lead, help: texts.help.lead }, width: "half" },
  note: { plan: { label: MAKER_LABELS.note }, width: "half" },
} as const satisfies Record<Asked, SmallField>;
/** Typed anew for each class; maker, mark, minimum and lead time stay for the next one. */
const ANEW = ["from", "surcharge"] as const satisfies readonly Asked[];
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
  const press = button(texts.press, "outline", () => void add());
  const form = smallForm<Asked>("maker", texts.formTitle, ASKED, {
    changed: () => form.judge(faultsNow()),
    submitted: () => void add(),
  });
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
  let busy = false;
  form.fill({ mark: EVERY_MARK });

  function typed(): Record<Asked, string> {
    const texts = form.typed();
    return Object.fromEntries(
      Object.entries(texts).map(([key, text]) => [
        key,
        FIGURES.some((each) => each === key) ? withPoint(text, "figure") : text,
      ]),
    ) as Record<Asked, string>;
  }

  function parsed() {
    return currency ? parseMakerOffer(typed(), currency) : undefined;
  }

  function faultsNow() {
    const read = parsed();
    return !read || read.ok ? [] : read.faults;
  }

  async function beginTable(): Promise<void> {
    begin.work(texts.beginning);
    try {
      await on.write(beginMakers);
      note.say(texts.begun);
    } finally {
      begin.rest();
    }
  }

  async function add(): Promise<void> {
    const read = parsed();
    if (busy || !read) return;
    if (!read.ok) return form.demand(read.faults);
    busy = true;
    press.work(texts.pressing);
    note.say("");
    try {
      const cells = cellsOf(typed());
      await on.write(() => addMaker({ ...cells, date: dateSerial(today()) }));
      note.say(texts.written(read.value.maker));
      form.fill(Object.fromEntries(ANEW.map((key) => [key, ""])));
      form.calm();
      form.judge(faultsNow());
      form.fields.from.control.focus();
    } catch (error) {
      note.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      busy = false;
      press.rest();
    }
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
