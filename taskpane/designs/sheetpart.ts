import { isPlatingUnnamed, type PricedLine, type Rates } from "../../src/index";
import { button } from "../controls/button";
import { element } from "../controls/element";
import { countsOf, type DoneEvents } from "../controls/ended";
import { field } from "../controls/field";
import { whileWorking } from "../controls/pressstep";
import { progress } from "../controls/progress";
import type { Chosen } from "../designtable/chosendesigns";
import { putValueSheet } from "../excel/designs/pricesheet";
import type { RatesReading } from "../excel/rates/rates";
import type { Addition } from "../excel/tables/additions";
import { dateSerial } from "../excel/template/fields";
import { pause } from "../running/slices";
import type { PartEvents } from "../views/lazypart";
import { cautionsAt } from "../wording/cautions";
import { showCellDate, showSpot, today } from "../wording/display";
import { PLATING_TEXTS } from "../wording/platingtexts";
import { BENCH_COLUMNS, CUSTOMER_COLUMNS, type SheetColumn } from "../wording/pricesheetcolumns";
import { TEXTS } from "../wording/texts";
import { csvOf } from "./pricecsv";
import { isPriced, priceInSlices } from "./pricing";
import { cellOf, csvText, headOf, isCustomerColumn } from "./sheetcolumns";

const texts = TEXTS.catalogue.sheet;

export interface SheetPart {
  readonly root: HTMLElement;
}

type Readers = "customers" | "bench";

/** What a new sheet for customers shows. */
const USUAL: readonly SheetColumn[] = ["design", "mark", "colour", "length", "price"];
const USUAL_BENCH: readonly SheetColumn[] = ["design", "mark", "length", "weight", "cast", "landed", "price", "margin"];

/** Price sheets of values, for the counter, the web or the bench, and the same as CSV. */
export function sheetPart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly chosen: () => Promise<Chosen | undefined>;
  readonly rates: PartEvents["rates"];
  readonly added: (addition: Addition) => Promise<void>;
  readonly done: DoneEvents["done"];
  readonly note: DoneEvents["note"];
}): SheetPart {
  const readers = field({
    id: "sheet-for",
    label: texts.readers,
    choices: [
      { value: "customers", shown: texts.customers },
      { value: "bench", shown: texts.bench },
    ],
  });
  const boxes = element("div", { class: "checks" });
  const group = element("fieldset", {}, element("legend", {}, texts.columns), boxes);
  const caution = element("p", { class: "caution" }, texts.benchCaution);
  const make = button(texts.make, "outline", () => void on.attempt(put));
  const download = button(texts.download, "outline", () => void on.attempt(() => csv("download")));
  const copy = button(texts.copy, "outline", () => void on.attempt(() => csv("copy")));
  const working = progress(on.note);
  const byHand = element("div", { class: "byhand" });
  const root = element(
    "details",
    { class: "task" },
    element("summary", {}, texts.title),
    element("p", { class: "help" }, texts.about),
    readers.root,
    caution,
    group,
    element("div", { class: "actions" }, make.root, download.root, copy.root),
    working.root,
    byHand,
  );

  const readersNow = (): Readers => (readers.control.value === "bench" ? "bench" : "customers");
  const offer = () => {
    const forBench = readersNow() === "bench";
    caution.hidden = !forBench;
    const offered: readonly SheetColumn[] = forBench ? [...CUSTOMER_COLUMNS, ...BENCH_COLUMNS] : CUSTOMER_COLUMNS;
    const usual = forBench ? USUAL_BENCH : USUAL;
    boxes.replaceChildren(
      ...offered.map((column) => {
        const box = element("input", { type: "checkbox", value: column, id: `sheet-${column}` });
        box.checked = usual.includes(column);
        return element("label", { for: `sheet-${column}` }, box, " ", texts.names[column]);
      }),
    );
  };
  readers.control.addEventListener("change", offer);
  offer();

  /** The columns asked for; a cost can be among them for the bench alone, whatever the boxes say. */
  function asked(): readonly SheetColumn[] {
    const checked = [...boxes.querySelectorAll("input")].flatMap((box) => (box.checked ? [box.value] : []));
    const all: readonly SheetColumn[] = [...CUSTOMER_COLUMNS, ...BENCH_COLUMNS];
    return all.filter((column) => checked.includes(column) && (readersNow() === "bench" || isCustomerColumn(column)));
  }

  interface Reckoned {
    readonly columns: readonly SheetColumn[];
    readonly lines: readonly PricedLine[];
    readonly rates: Rates;
    readonly reading: Extract<RatesReading, { found: true }>;
  }

  async function reckon(): Promise<Reckoned | undefined> {
    const { reading, rates } = on.rates();
    byHand.replaceChildren();
    const columns = asked();
    if (!reading?.found || !rates) on.note(TEXTS.catalogue.ratesFirst);
    else if (columns.length === 0) on.note(texts.noColumns);
    else {
      const chosen = await on.chosen();
      const lines = chosen && (await working.follow((slicing) => priceInSlices(chosen, rates, slicing)));
      return lines && { columns, lines, rates, reading };
    }
    return undefined;
  }

  async function put(): Promise<void> {
    return whileWorking(make, texts.making, async () => {
      const reckoned = await reckon();
      if (!reckoned) return;
      const { columns, lines, rates, reading } = reckoned;
      const forBench = columns.some((column) => !isCustomerColumn(column));
      const priced = lines.filter(isPriced);
      const addition = await working.follow(({ progress: told, signal }) =>
        putValueSheet({
          what: forBench ? "bench sheet" : "price sheet",
          name: forBench ? texts.benchName : texts.name,
          title: forBench ? texts.benchTitle : rates.workshop || texts.name,
          notes: notesOf(rates, reading, forBench),
          columns: columns.map((column) => {
            const sample = priced[0] && cellOf(priced[0], column, rates);
            const kind = sample === undefined || "text" in sample ? "text" : sample.share ? "share" : "figure";
            return {
              head: headOf(column, rates),
              kind,
              decimals: sample && "decimals" in sample ? sample.decimals : 0,
              width:
                column === "design"
                  ? 190
                  : Math.max(column === "colour" ? 120 : 70, headOf(column, rates).length * 6.4 + 12),
            };
          }),
          rows: priced.map((line) =>
            columns.map((column) => {
              const cell = cellOf(line, column, rates);
              if ("text" in cell) return cell.text;
              return cell.figure === undefined ? "" : cell.figure.rounded(cell.decimals).toNumber();
            }),
          ),
          wrote: async (share) => {
            told(share);
            await pause(signal);
          },
        }),
      );
      if (!addition) return;
      const { remarks, left } = leftOf(columns, lines);
      on.done([texts.made(addition.sheet), ...remarks].join(" "), countsOf(addition.looked, left), addition.sheet);
      await on.added(addition);
    });
  }

  async function csv(how: "download" | "copy"): Promise<void> {
    const press = how === "download" ? download : copy;
    return whileWorking(press, texts.making, async () => {
      const reckoned = await reckon();
      if (!reckoned) return;
      const { columns, lines, rates } = reckoned;
      const text = csvOf([
        columns.map((column) => headOf(column, rates)),
        ...lines.filter(isPriced).map((line) => columns.map((column) => csvText(cellOf(line, column, rates)))),
      ]);
      if (how === "download") {
        save(text, `${texts.file(today())}.csv`);
        handedOut(texts.downloaded, columns, lines);
      } else if (await copied(text)) handedOut(texts.copied, columns, lines);
      else showByHand(text);
    });
  }

  /** Rows went out as a text: none of them can show an error. */
  function handedOut(sentence: string, columns: readonly SheetColumn[], lines: readonly PricedLine[]): void {
    const { remarks, left } = leftOf(columns, lines);
    const written = lines.filter(isPriced).length;
    on.done([sentence, ...remarks].join(" "), { of: written + left.rows, written, faults: left.sentences });
  }

  function showByHand(text: string): void {
    const area = element("textarea", { readonly: true, rows: "6", "aria-label": texts.copyByHand });
    area.value = text;
    byHand.replaceChildren(element("p", { class: "help" }, texts.copyByHand), area);
    area.focus();
    area.select();
  }

  return { root };
}

/** What is not in it: lines without a price, and plating where nobody has named the metal. */
function leftOf(columns: readonly SheetColumn[], lines: readonly PricedLine[]) {
  const left = lines.filter(({ kind }) => kind === "refused").length;
  const unnamed = columns.includes("colour")
    ? lines.filter((line) => isPriced(line) && isPlatingUnnamed(line.sheet.line)).length
    : 0;
  const sentences = [
    ...(left === 0 ? [] : [texts.leftOut(left)]),
    ...(unnamed === 0 ? [] : [PLATING_TEXTS.designs(unnamed)]),
  ];
  const remarks = [
    ...(lines.some((line) => isPriced(line) && line.sheet.line.hollow) ? cautionsAt("price sheet", ["hollow"]) : []),
  ];
  return { remarks, left: { rows: left, sentences } };
}

function notesOf(rates: Rates, reading: Extract<RatesReading, { found: true }>, forBench: boolean): readonly string[] {
  const { time, timeWords } = reading.spotRead;
  const readAt = time === undefined ? timeWords : showCellDate(time);
  const dated = texts.dated(showCellDate(dateSerial(today())), showSpot(rates.spot), readAt);
  const tax = rates.tax.isZero()
    ? []
    : [rates.taxIncluded ? texts.taxIn(rates.taxName || texts.tax) : texts.taxOn(rates.taxName || texts.tax)];
  const contact = !forBench && rates.workshopContact !== "" ? [rates.workshopContact] : [];
  return [...contact, dated, ...(forBench ? [texts.benchNote] : [...tax, texts.moves])];
}

/** Hands a text to the browser as a file. The mark at its beginning tells Excel that it is UTF-8. */
function save(text: string, name: string): void {
  const url = URL.createObjectURL(new Blob(["\uFEFF", text], { type: "text/csv;charset=utf-8" }));
  const link = element("a", { href: url, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has begun to read it by then.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Whether it is on the clipboard; some hosts do not let a pane write there. */
async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
