import { offerApi } from "./api";
import { Book } from "./book";
import { shiftClock } from "./clock";
import { download } from "./download";
import { Faults } from "./faults";
import { type Blanks, registerFunctions } from "./functions";
import { guard } from "./guard";
import { PaneHost } from "./host";
import { watchLists } from "./lists";
import { readMetadata } from "./metadata";
import { openingOf } from "./opening";
import { paintEvery } from "./painting";
import { Pane } from "./pane";
import { printSheet } from "./print";
import { fitNumbers } from "./show";
import { watchSplitter } from "./splitter";
import { type State, settled } from "./state";
import { StatusLine } from "./status";
import { startEngine, whenDrawn } from "./univer";

/** As in manifest.xml: the word before the dot. */
const NAMESPACE = "CURB";

const BLANKS: readonly Blanks[] = ["null", "zero", "text"];

function element<T extends HTMLElement>(id: string, type: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof type)) throw new Error(`The page has no #${id}`);
  return found;
}

async function start(): Promise<void> {
  const query = new URLSearchParams(location.search);
  const { open, locale, clockShift } = await openingOf(query);
  if (clockShift !== 0) shiftClock(window, clockShift);
  window.workbookAround = { locale, clockShift };
  const frame = element("pane", HTMLIFrameElement);
  watchSplitter(element("splitter", HTMLElement), frame, Number(query.get("pane") ?? 360));
  paintEvery(Number(query.get("paint") ?? 0));
  const engine = startEngine(element("grid", HTMLElement));
  const book = new Book(engine);
  const host = new PaneHost(book);
  const pane = new Pane(frame);
  const faults = new Faults(book);
  const state: State = { book, host, pane, faults, reset: () => reset(state, open), renew: () => renew(state, open) };
  open(book);
  fitNumbers(engine);
  const status = new StatusLine(element("status", HTMLElement));
  status.watch(state);
  guard(book, (text) => status.refuse(text));
  watchLists(book);
  wire(state);
  const ready = Promise.all([
    whenDrawn(engine),
    loadFunctions(state, BLANKS.find((each) => each === query.get("blanks")) ?? "null"),
  ]).then(() => settled(state));
  offerApi(state, ready, locale);
  await ready;
  document.documentElement.dataset.ready = "";
}

async function loadFunctions({ book, host, pane, faults }: State, blanks: Blanks): Promise<void> {
  const opened = openPane(pane, host);
  const response = await fetch("/addin/functions.json");
  if (!response.ok) throw new Error(`/addin/functions.json: ${response.status} (is the add-in built? npm run build)`);
  registerFunctions(book, NAMESPACE, readMetadata(await response.json()), pane.associated, faults, blanks);
  await opened;
  book.calculation.recalculate();
}

function openPane(pane: Pane, host: PaneHost): Promise<void> {
  return pane.open((window) => host.connect(window));
}

/** Opens workbook and pane as if Excel had been closed and opened again. */
async function renew(state: State, open: (book: Book) => void): Promise<void> {
  const { book, host, pane, faults } = state;
  await settled(state);
  pane.close();
  host.forget();
  faults.clear();
  open(book);
  await openPane(pane, host);
  book.calculation.recalculate();
  await settled(state);
}

/** Brings the workbook back as the page opened it; the pane stays. */
async function reset(state: State, open: (book: Book) => void): Promise<void> {
  await settled(state);
  state.faults.clear();
  open(state.book);
  state.book.calculation.recalculate();
  await settled(state);
}

function wire(state: State): void {
  const press = (id: string, act: () => Promise<void>) => {
    const button = element(id, HTMLButtonElement);
    button.addEventListener("click", () => {
      button.disabled = true;
      act()
        .catch((error: unknown) => {
          element("status", HTMLElement).textContent = `That failed: ${error instanceof Error ? error.message : error}`;
          console.error(error);
        })
        .finally(() => {
          button.disabled = false;
        });
    });
  };
  press("save", () => download(state));
  press("print", async () => {
    await settled(state);
    printSheet(state.book, state.book.active().getSheetId());
  });
  press("reset", () => state.reset());
}

start().catch((error: unknown) => {
  console.error(error);
  element("status", HTMLElement).textContent =
    `The page could not start: ${error instanceof Error ? error.message : error}`;
});
