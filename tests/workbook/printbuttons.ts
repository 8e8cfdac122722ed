import {
  InsertSheetMutation,
  RemoveSheetMutation,
  SetWorksheetActiveOperation,
  SetWorksheetNameMutation,
} from "@univerjs/preset-sheets-core";
import { showsCost } from "./costshown";
import { printSheet } from "./print";
import { ask } from "./question";
import { quoteToPrint } from "./quotesheets";
import { type State, settled } from "./state";

/** Commands after which another sheet is active, or sheets were added, deleted or renamed. */
const FOLLOWED: readonly string[] = [
  SetWorksheetActiveOperation.id,
  InsertSheetMutation.id,
  RemoveSheetMutation.id,
  SetWorksheetNameMutation.id,
];

/** Two buttons that print: one a quote, the other the active sheet where that is another one. Each prints the sheet it names. */
export class PrintButtons {
  private quoteSheet: string | undefined;
  private frontSheet: string | undefined;

  constructor(
    private readonly state: State,
    private readonly elements: {
      readonly quote: HTMLButtonElement;
      readonly front: HTMLButtonElement;
      readonly dialog: HTMLDialogElement;
    },
  ) {
    state.book.engine.commands.onCommandExecuted(({ id }) => {
      if (FOLLOWED.includes(id)) setTimeout(() => this.follow());
    });
  }

  /** Writes on the buttons what they print now. */
  follow(): void {
    const { book } = this.state;
    const { quote, front } = this.elements;
    const active = book.active();
    const name = active.getSheetName();
    const printable = quoteToPrint(
      name,
      book.sheets().map((sheet) => sheet.getSheetName()),
    );
    this.quoteSheet = printable?.sheet && book.sheet(printable.sheet).getSheetId();
    this.frontSheet = active.getSheetId();
    quote.textContent = labelOf(printable);
    quote.disabled = this.quoteSheet === undefined;
    front.textContent = `Print this sheet: ${name}`;
    front.title = name;
    front.hidden = this.frontSheet === this.quoteSheet;
  }

  /** Prints the quote that its button names. */
  async quote(): Promise<(() => Promise<void>) | undefined> {
    const sheet = this.quoteSheet;
    return sheet === undefined ? undefined : () => this.print(sheet);
  }

  /** Prints the active sheet. Where it shows cost, the person is asked first; undefined where they say no. */
  async front(): Promise<(() => Promise<void>) | undefined> {
    const { book } = this.state;
    const sheet = this.frontSheet;
    if (sheet === undefined) return undefined;
    const print = () => this.print(sheet);
    await settled(this.state);
    if (!book.find(sheet) || !showsCost(book, sheet)) return print;
    const name = book.sheet(sheet).getSheetName();
    const body = [
      `${name} shows your cost: not for the customer.`,
      "For the customer, print the quote: it is made without cost.",
    ];
    return (await ask(this.elements.dialog, { title: `Print ${name}?`, body, go: `Print ${name}` }))
      ? print
      : undefined;
  }

  private async print(sheetId: string): Promise<void> {
    await settled(this.state);
    if (!this.state.book.find(sheetId)) throw new Error("The sheet was deleted before it was printed.");
    printSheet(this.state.book, sheetId);
  }
}

function labelOf(quote: ReturnType<typeof quoteToPrint>): string {
  if (!quote) return "No quote yet";
  return quote.sheet === undefined ? `Quote ${quote.number} has no sheet` : `Print quote ${quote.number}`;
}
