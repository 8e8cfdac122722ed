import {
  type IDefinedNamesServiceParam,
  type ISetDefinedNameMutationParam,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
} from "@univerjs/preset-sheets-core";
import { parseReference, printReference, type Rect } from "./address";
import type { Book } from "./book";
import { shifted } from "./extras";
import { alreadyExists, invalid } from "./failure";

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

/** A name that the grid does not know. Its cells are kept here, since the grid does not move its formula along. */
interface Shadow extends DefinedName {
  target?: { sheetId: string; rect: Rect };
}

const WORKBOOK = "AllDefaultWorkbook";

/**
 * The workbook's defined names. The grid's engine knows a name once for the whole workbook, so where a sheet has a name
 * that the workbook has too, the sheet's is kept here: listed and readable, but formulas take the workbook's.
 */
export class Names {
  private shadows: Shadow[] = [];
  private made = 0;

  constructor(private readonly book: Book) {}

  /** Called once the book can report shifts. */
  watch(): void {
    this.book.changes.onShifted((sheetId, shift) => {
      for (const shadow of this.shadows) {
        if (shadow.target?.sheetId !== sheetId) continue;
        const rect = shifted(shadow.target.rect, shift);
        if (rect) shadow.target = { sheetId, rect };
        else this.replace(shadow, { ...shadow, formula: "=#REF!" });
      }
    });
  }

  clear(): void {
    this.shadows = [];
  }

  all(): DefinedName[] {
    const map = this.book.engine.names.getDefinedNameMap(this.book.id) ?? {};
    return [...Object.values(map).map(fromGrid), ...this.shadows.map((shadow) => this.fromShadow(shadow))].sort(
      (a, b) => a.name.localeCompare(b.name),
    );
  }

  find(name: string, sheetId?: string): DefinedName | undefined {
    const wanted = name.toLowerCase();
    return this.all().find((item) => item.name.toLowerCase() === wanted && item.sheetId === sheetId);
  }

  /** Adds a name for a formula text ("=Rates!$B$2", "=0.05"). */
  add(name: string, formula: string, comment: string, sheetId?: string): DefinedName {
    checkName(name);
    // Names and tables share their names.
    if (
      this.find(name, sheetId) ||
      this.book.tables.all().some((table) => table.name.toLowerCase() === name.toLowerCase())
    )
      throw alreadyExists();
    this.made += 1;
    const item: DefinedName = {
      id: `name-${this.made}`,
      name,
      formula: formula.startsWith("=") ? formula : `=${formula}`,
      comment,
      visible: true,
      ...(sheetId === undefined ? {} : { sheetId }),
    };
    if (this.all().some((other) => other.name.toLowerCase() === name.toLowerCase()))
      this.shadows.push(this.shadow(item));
    else this.put(item);
    return item;
  }

  change(item: DefinedName, changes: Partial<DefinedName>): DefinedName {
    const changed = { ...item, ...changes };
    const shadow = this.shadows.find(({ id }) => id === item.id);
    if (shadow) this.replace(shadow, changed);
    else this.put(changed);
    return changed;
  }

  delete(item: DefinedName): void {
    const others = this.shadows.filter((shadow) => shadow.id !== item.id);
    if (others.length < this.shadows.length) {
      this.shadows = others;
      return;
    }
    this.book.engine.commands.syncExecuteCommand(RemoveDefinedNameMutation.id, this.param(item));
    // A sheet's name with the same letters can be given to the grid now.
    const heir = this.shadows.find((shadow) => shadow.name.toLowerCase() === item.name.toLowerCase());
    if (!heir) return;
    this.shadows = this.shadows.filter((shadow) => shadow !== heir);
    this.put(this.fromShadow(heir));
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

  private shadow(item: DefinedName): Shadow {
    const target = this.targetOf(item);
    return { ...item, ...(target ? { target } : {}) };
  }

  private fromShadow({ target, ...item }: Shadow): DefinedName {
    return target ? { ...item, formula: `=${this.print(target.sheetId, target.rect)}` } : item;
  }

  private replace(shadow: Shadow, item: DefinedName): void {
    this.shadows = this.shadows.map((each) => (each === shadow ? this.shadow(item) : each));
  }

  private put(item: DefinedName): void {
    this.book.engine.commands.syncExecuteCommand(SetDefinedNameMutation.id, this.param(item));
  }

  private param(item: DefinedName): ISetDefinedNameMutationParam {
    return {
      unitId: this.book.id,
      id: item.id,
      name: item.name,
      // The grid needs plain references without "=". It puts the text of other formulas in place of the name: hence the brackets.
      formulaOrRefString: this.targetOf(item) ? item.formula.slice(1) : `=(${item.formula.slice(1)})`,
      comment: item.comment,
      hidden: !item.visible,
      localSheetId: item.sheetId ?? WORKBOOK,
    };
  }
}

function fromGrid(param: IDefinedNamesServiceParam): DefinedName {
  const scoped = param.localSheetId && param.localSheetId !== WORKBOOK;
  return {
    id: param.id,
    name: param.name,
    formula: `=${param.formulaOrRefString.replace(/^=/, "").replace(/^\((.*)\)$/s, "$1")}`,
    comment: param.comment ?? "",
    visible: param.hidden !== true,
    ...(scoped && param.localSheetId ? { sheetId: param.localSheetId } : {}),
  };
}

function checkName(name: string): void {
  const words = /^[\p{L}_\\][\p{L}\p{N}_.\\?]{0,254}$/u.test(name);
  if (!words || parseReference(name) || /^(r|c|r\d*c\d*)$/i.test(name)) throw invalid();
}
