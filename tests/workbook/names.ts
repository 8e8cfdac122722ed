import { type IDefinedNamesServiceParam, RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/preset-sheets-core";
import { parseReference, printReference, type Rect } from "./address";
import type { Book } from "./book";
import { alreadyExists, invalid } from "./failure";
import { shifted } from "./extras";

export interface DefinedName {
  readonly id: string;
  readonly name: string;
  /** With its "=". */
  readonly formula: string;
  readonly comment: string;
  readonly visible: boolean;
  /** The sheet it is scoped to; undefined for the workbook. */
  readonly sheetId?: string;
}

const WORKBOOK = "AllDefaultWorkbook";

/**
 * The workbook's defined names. The grid's engine knows a name once for the whole workbook, so where a sheet has a name
 * that the workbook has too, the sheet's is kept here: listed and readable, but formulas take the workbook's.
 */
export class Names {
  private shadows: DefinedName[] = [];
  private made = 0;

  constructor(private readonly book: Book) {}

  /** Called once the book can tell of shifts. */
  watch(): void {
    this.book.changes.onShifted((sheetId, shift) => {
      this.shadows = this.shadows.map((name) => {
        const target = this.targetOf(name);
        if (target?.sheetId !== sheetId) return name;
        const rect = shifted(target.rect, shift);
        return { ...name, formula: rect ? `=${this.print(sheetId, rect)}` : "=#REF!" };
      });
    });
  }

  clear(): void {
    this.shadows = [];
  }

  all(): DefinedName[] {
    const map = this.book.engine.names.getDefinedNameMap(this.book.id) ?? {};
    return [...Object.values(map).map(fromGrid), ...this.shadows].sort((a, b) => a.name.localeCompare(b.name));
  }

  find(name: string, sheetId?: string): DefinedName | undefined {
    const wanted = name.toLowerCase();
    return this.all().find((item) => item.name.toLowerCase() === wanted && item.sheetId === sheetId);
  }

  /** Adds a name for a formula text ("=Rates!$B$2", "=0.05"). */
  add(name: string, formula: string, comment: string, sheetId?: string): DefinedName {
    checkName(name);
    if (this.find(name, sheetId)) throw alreadyExists();
    this.made += 1;
    const item: DefinedName = {
      id: `name-${this.made}`,
      name,
      formula: formula.startsWith("=") ? formula : `=${formula}`,
      comment,
      visible: true,
      ...(sheetId === undefined ? {} : { sheetId }),
    };
    if (this.all().some((other) => other.name.toLowerCase() === name.toLowerCase())) this.shadows.push(item);
    else this.put(item);
    return item;
  }

  change(item: DefinedName, changes: Partial<DefinedName>): DefinedName {
    const changed = { ...item, ...changes };
    const at = this.shadows.findIndex((shadow) => shadow.id === item.id);
    if (at >= 0) this.shadows[at] = changed;
    else this.put(changed);
    return changed;
  }

  delete(item: DefinedName): void {
    this.shadows = this.shadows.filter((shadow) => shadow.id !== item.id);
    this.book.engine.commands.syncExecuteCommand(RemoveDefinedNameMutation.id, { unitId: this.book.id, id: item.id });
    // A sheet's name of the same letters comes into its own now.
    const heir = this.shadows.find((shadow) => shadow.name.toLowerCase() === item.name.toLowerCase());
    if (!heir) return;
    this.shadows = this.shadows.filter((shadow) => shadow !== heir);
    this.put(heir);
  }

  /** The cells a name points to; undefined where its formula is not one plain reference. */
  targetOf(item: DefinedName): { sheetId: string; rect: Rect } | undefined {
    const reference = parseReference(item.formula.replace(/^=/, ""));
    if (!reference) return undefined;
    const sheet = reference.sheet === undefined ? item.sheetId : this.book.find(reference.sheet)?.getSheetId();
    return sheet === undefined ? undefined : { sheetId: sheet, rect: reference.rect };
  }

  /** As Excel does: a copied sheet takes the names that point into its source along, scoped to itself. */
  copySheet(fromId: string, toId: string): void {
    for (const item of this.all()) {
      const target = this.targetOf(item);
      if (item.sheetId !== fromId && !(item.sheetId === undefined && target?.sheetId === fromId)) continue;
      if (this.find(item.name, toId)) continue;
      const formula = target?.sheetId === fromId ? `=${this.print(toId, target.rect)}` : item.formula;
      this.add(item.name, formula, item.comment, toId);
    }
  }

  beforeDelete(sheetId: string): void {
    for (const item of this.all()) {
      if (item.sheetId === sheetId) this.delete(item);
      else if (this.targetOf(item)?.sheetId === sheetId) this.change(item, { formula: "=#REF!" });
    }
  }

  print(sheetId: string, rect: Rect): string {
    return printReference(this.book.sheet(sheetId).getSheetName(), rect, "$");
  }

  private put(item: DefinedName): void {
    this.book.engine.commands.syncExecuteCommand(SetDefinedNameMutation.id, {
      unitId: this.book.id,
      id: item.id,
      name: item.name,
      // The grid wants plain references bare and formulas with their "=".
      formulaOrRefString: this.targetOf(item) ? item.formula.slice(1) : item.formula,
      comment: item.comment,
      hidden: !item.visible,
      localSheetId: item.sheetId ?? WORKBOOK,
    });
  }
}

function fromGrid(param: IDefinedNamesServiceParam): DefinedName {
  const scoped = param.localSheetId && param.localSheetId !== WORKBOOK;
  return {
    id: param.id,
    name: param.name,
    formula: param.formulaOrRefString.startsWith("=") ? param.formulaOrRefString : `=${param.formulaOrRefString}`,
    comment: param.comment ?? "",
    visible: param.hidden !== true,
    ...(scoped && param.localSheetId ? { sheetId: param.localSheetId } : {}),
  };
}

function checkName(name: string): void {
  const words = /^[\p{L}_\\][\p{L}\p{N}_.\\?]{0,254}$/u.test(name);
  if (!words || parseReference(name) || /^(r|c|r\d*c\d*)$/i.test(name)) throw invalid();
}
