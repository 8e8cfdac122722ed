import type { Safe, Unsaved } from "./lastsave";
import { quoteOf } from "./quotesheets";

const SINCE: Record<Safe, string> = {
  opened: "Since the workbook was opened, this was made or changed:",
  saved: "Since the workbook was saved, this was made or changed:",
  reset: "Since the demo was reset, this was made or changed:",
};

/** This many are named; more are only counted. */
const NAMED = 6;

/** What a person reads before unsaved work is lost. */
export function losing(unsaved: Unsaved): { readonly before: string; readonly items: readonly string[] } {
  const { whole, others } = quotesIn(unsaved.added);
  const items = [
    ...(whole.length === 0 ? [] : [quotes(whole)]),
    ...sheets("New", others),
    ...sheets("Changed", unsaved.changed),
    ...sheets("Deleted", unsaved.deleted),
    ...(unsaved.besides && isNoSheet(unsaved)
      ? ["The order of the sheets, or names and settings of the workbook"]
      : []),
  ];
  return { before: SINCE[unsaved.since], items };
}

/** Numbers of new quotes that have all their sheets, and the other new sheets. */
function quotesIn(added: readonly string[]): { readonly whole: readonly string[]; readonly others: readonly string[] } {
  const of = (name: string) => quoteOf(name)?.number;
  const whole = added
    .filter((name) => quoteOf(name)?.kind === "quote")
    .map((name) => of(name) ?? "")
    .filter((number) => added.filter((name) => of(name) === number).length === 3);
  return { whole, others: added.filter((name) => !whole.includes(of(name) ?? "")) };
}

function quotes(numbers: readonly string[]): string {
  const [only = ""] = numbers;
  if (numbers.length === 1) return `Quote ${only}, with its job and tickets`;
  return `${numbers.length} quotes, with their jobs and tickets: ${list(numbers)}`;
}

function sheets(what: string, names: readonly string[]): readonly string[] {
  return names.length === 0 ? [] : [`${what} ${names.length === 1 ? "sheet" : "sheets"}: ${list(names)}`];
}

function list(names: readonly string[]): string {
  const shown = names.length > NAMED ? names.slice(0, NAMED - 1) : names;
  const rest = names.length - shown.length;
  return rest > 0 ? `${shown.join(", ")} and ${rest} more` : shown.join(", ");
}

function isNoSheet({ added, changed, deleted }: Unsaved): boolean {
  return added.length + changed.length + deleted.length === 0;
}
