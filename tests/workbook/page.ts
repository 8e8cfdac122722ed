import { offerApi } from "./api";
import { Book } from "./book";
import { shiftClock } from "./clock";
import { download } from "./download";
import { Faults } from "./faults";
import { type Blanks, errorAsData, type Handing, registerFunctions } from "./functions";
import { guard } from "./guard";
import { PaneHost } from "./host";
import { LastSave } from "./lastsave";
import { watchLists } from "./lists";
import { losing } from "./losing";
import { readMetadata } from "./metadata";
import { readFailure } from "./mood";
import { openingOf } from "./opening";
import { paintEvery } from "./painting";
import { Pane } from "./pane";
import { PrintButtons } from "./printbuttons";
import { ask } from "./question";
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
  const failing = query.get("fail");
  if (failing !== null) host.mood.fail(readFailure(failing));
  const pane = new Pane(frame);
  const faults = new Faults(book);
  const lastSave = new LastSave(book);
  const openWorkbook = () => {
    open(book);
    lastSave.note("opened");
  };
  const state: State = {
    book,
    host,
    pane,
    faults,
    lastSave,
    reset: () => reset(state, open),
    renew: () => renew(state, openWorkbook),
  };
  openWorkbook();
  book.changes.onChanged(({ byAddin }) => {
    if (byAddin) pane.forgetTyped();
  });
  fitNumbers(engine);
  const status = new StatusLine(element("status", HTMLElement));
  status.watch(state);
  guard(book, (text) => status.refuse(text));
  watchLists(book);
  const prints = new PrintButtons(state, {
    quote: element("print", HTMLButtonElement),
    front: element("print-front", HTMLButtonElement),
    dialog: element("question", HTMLDialogElement),
  });
  book.onOpened(() => prints.follow());
  wire(state, prints);
  warnBeforeLoss(state);
  const ready = Promise.all([
    whenDrawn(engine),
    loadFunctions(state, {
      blanks: BLANKS.find((each) => each === query.get("blanks")) ?? "null",
      errors: query.get("errors") === "class" ? pane.errorAsClass : errorAsData,
    }),
  ]).then(() => settled(state));
  offerApi(state, ready, locale);
  await ready;
  document.documentElement.dataset.ready = "";
}

async function loadFunctions({ book, host, pane, faults }: State, handing: Handing): Promise<void> {
  const opened = openPane(pane, host);
  const response = await fetch("/addin/functions.json");
  if (!response.ok) throw new Error(`/addin/functions.json: ${response.status} (is the add-in built? npm run build)`);
  registerFunctions(book, NAMESPACE, readMetadata(await response.json()), pane.associated, faults, handing);
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
  state.lastSave.note("reset");
  state.book.calculation.recalculate();
  await settled(state);
}

/** Asks where something would be lost. */
async function mayReset(state: State, dialog: HTMLDialogElement): Promise<boolean> {
  await settled(state);
  const unsaved = state.lastSave.unsaved();
  if (!unsaved) return true;
  const { before, items } = losing(unsaved);
  const after = "The reset takes this away and brings the demo back. To keep it, cancel and save as .xlsx first.";
  return ask(dialog, { title: "Reset the demo?", body: [before, items, after], go: "Reset and lose this" });
}

/** The browser's own question, before the page is left or reloaded. */
function warnBeforeLoss({ lastSave, pane }: State): void {
  window.addEventListener("beforeunload", (event) => {
    if (lastSave.unsaved() || pane.hasTyped()) event.preventDefault();
  });
}

/** What a press does, once all questions are answered. */
type Act = () => Promise<void>;

function wire(state: State, prints: PrintButtons): void {
  const dialog = element("question", HTMLDialogElement);
  const press = (id: string, begin: () => Promise<Act | undefined>) => {
    const button = element(id, HTMLButtonElement);
    let isBusy = false;
    const run = async () => {
      const act = await begin();
      if (!act) return;
      const isIn = document.activeElement === button;
      button.disabled = true;
      try {
        await act();
      } finally {
        button.disabled = false;
        prints.follow();
        // A disabled button loses the keyboard focus.
        if (isIn && (document.activeElement ?? document.body) === document.body) button.focus();
      }
    };
    button.addEventListener("click", () => {
      if (isBusy) return;
      isBusy = true;
      run()
        .catch((error: unknown) => {
          element("status", HTMLElement).textContent = `That failed: ${error instanceof Error ? error.message : error}`;
          console.error(error);
        })
        .finally(() => {
          isBusy = false;
        });
    });
  };
  press("save", async () => () => download(state));
  press("print", () => prints.quote());
  press("print-front", () => prints.front());
  press("reset", async () => ((await mayReset(state, dialog)) ? state.reset : undefined));
}

start().catch((error: unknown) => {
  console.error(error);
  element("status", HTMLElement).textContent =
    `The page could not start: ${error instanceof Error ? error.message : error}`;
});
