import {
  BooleanNumber,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
  mergeWorksheetSnapshotWithDefault,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import type { FWorkbook, FWorksheet } from "@univerjs/preset-sheets-core";
import { InsertSheetMutation, SetWorksheetOrderMutation } from "@univerjs/preset-sheets-core";
import { type Calculation, watchCalculation } from "./calculation";
import { Changes } from "./changes";
import { type Extras, newExtras } from "./extras";
import { alreadyExists, denied, invalid, notFound } from "./failure";
import { Names } from "./names";
import { Tables } from "./tables";
import type { Engine } from "./univer";

const DEFAULT_ROWS = 200;
const DEFAULT_COLUMNS = 26;
/** Pixels. Excel has 64 x 20 with the usual font; a little wider here, so that figures with separators fit. */
export const DEFAULT_WIDTH = 72;
export const DEFAULT_HEIGHT = 22;

/** The one open workbook over the grid: sheets, their order, names and extras. Cells are read and written in cells.ts. */
export class Book {
  readonly calculation: Calculation;
  readonly names: Names;
  readonly tables: Tables;
  readonly changes: Changes;
  /** Whether sheets may not be added, deleted or renamed. */
  structure: { isProtected: boolean; password?: string } = { isProtected: false };
  /** What add-ins save in the workbook. */
  readonly settings = new Map<string, unknown>();
  private readonly extras = new Map<string, Extras>();
  private readonly openListeners: (() => void)[] = [];
  private facade!: FWorkbook;
  private opened = 0;

  constructor(readonly engine: Engine) {
    this.calculation = watchCalculation(engine, () => this.id);
    this.names = new Names(this);
    this.tables = new Tables(this);
    this.changes = new Changes(this);
    this.names.watch();
    this.tables.watch();
  }

  /** Opens a workbook with one empty sheet and closes the one before. @param id of the sheet, where a certain id is needed */
  open(sheetName: string, id?: string): void {
    if (this.opened > 0) this.engine.api.disposeUnit(this.id);
    this.opened += 1;
    this.extras.clear();
    this.settings.clear();
    this.structure = { isProtected: false };
    this.names.clear();
    this.tables.clear();
    const sheet = this.blank(sheetName, id);
    const data: Partial<IWorkbookData> = {
      id: `book-${this.opened}`,
      name: "Workbook",
      locale: LocaleType.EN_US,
      sheetOrder: [sheet.id],
      sheets: { [sheet.id]: sheet },
      defaultStyle: { ff: "Segoe UI", fs: 11, vt: 3 },
    };
    this.facade = this.engine.api.createWorkbook(data);
    for (const listener of this.openListeners) listener();
  }

  /** Called when another workbook was opened, with its first sheet. */
  onOpened(listener: () => void): void {
    this.openListeners.push(listener);
  }

  get id(): string {
    return this.facade?.getId() ?? "";
  }

  get workbook(): FWorkbook {
    return this.facade;
  }

  get model(): Workbook {
    return this.facade.getWorkbook();
  }

  /** Resolves when the grid knows every table and every formula shows its value. */
  async settled(): Promise<void> {
    await this.tables.settled();
    await this.calculation.settled();
  }

  sheets(): FWorksheet[] {
    return this.facade.getSheets();
  }

  /** The sheet with that id, or else with that name, in any case of letters; undefined for none. */
  find(idOrName: string): FWorksheet | undefined {
    const found = this.findModel(idOrName);
    return (found && this.facade.getSheetBySheetId(found.getSheetId())) ?? undefined;
  }

  sheet(idOrName: string): FWorksheet {
    const sheet = this.find(idOrName);
    if (!sheet) throw notFound();
    return sheet;
  }

  worksheet(idOrName: string): Worksheet {
    const found = this.findModel(idOrName);
    if (!found) throw notFound();
    return found;
  }

  active(): FWorksheet {
    return this.facade.getActiveSheet();
  }

  activate(id: string): void {
    if (this.active().getSheetId() !== id) this.facade.setActiveSheet(this.sheet(id));
  }

  extrasOf(id: string): Extras {
    let extras = this.extras.get(id);
    if (!extras) {
      extras = newExtras();
      this.extras.set(id, extras);
    }
    return extras;
  }

  /** Adds a sheet after the last one and leaves the active sheet active, as Excel's API does. */
  add(name?: string, id?: string): FWorksheet {
    const checked = name === undefined ? this.freeName() : this.checkedName(name);
    return this.insert(this.blank(checked, id), this.sheets().length);
  }

  insert(data: IWorksheetData, index: number): FWorksheet {
    this.checkStructure();
    const active = this.active().getSheetId();
    const params = { unitId: this.id, index, sheet: data };
    if (!this.engine.commands.syncExecuteCommand(InsertSheetMutation.id, params)) throw invalid();
    this.activate(active);
    return this.sheet(data.id);
  }

  /** Copies a sheet with all that belongs to it; the copy's name is the source's with (2), (3)… */
  copy(id: string, index: number): FWorksheet {
    const source = this.worksheet(id);
    const data = structuredClone(source.getSnapshot());
    const name = this.numbered(source.getName());
    const copy = this.insert({ ...data, id: this.newId(), name, hidden: BooleanNumber.FALSE }, index);
    const extras = structuredClone(this.extrasOf(id));
    this.extras.set(copy.getSheetId(), { ...extras, veryHidden: false });
    this.names.copySheet(id, copy.getSheetId());
    this.calculation.recalculate();
    return copy;
  }

  delete(id: string): void {
    this.checkStructure();
    const sheet = this.sheet(id);
    const visible = this.sheets().filter((other) => !other.isSheetHidden() && other.getSheetId() !== id);
    if (visible.length === 0) throw invalid("A workbook must keep at least one visible sheet.");
    this.names.beforeDelete(id);
    this.tables.beforeDelete(id);
    if (this.active().getSheetId() === id) this.facade.setActiveSheet(visible[0] ?? sheet);
    this.facade.deleteSheet(sheet);
    this.extras.delete(id);
    // Formulas that pointed to the sheet show #REF! only once they are calculated again.
    this.calculation.recalculate();
  }

  rename(id: string, name: string): void {
    const sheet = this.sheet(id);
    if (sheet.getSheetName() === name) return;
    this.checkStructure();
    sheet.setName(this.checkedName(name, id));
  }

  move(id: string, index: number): void {
    this.checkStructure();
    const from = this.sheets().findIndex((sheet) => sheet.getSheetId() === id);
    if (!Number.isInteger(index) || index < 0 || index >= this.sheets().length) throw invalid();
    const params = { unitId: this.id, subUnitId: id, fromOrder: from, toOrder: index };
    this.engine.commands.syncExecuteCommand(SetWorksheetOrderMutation.id, params);
  }

  /** Not through the grid's facade, which is slow to make and would be made for every cell that is read. */
  private findModel(idOrName: string): Worksheet | undefined {
    const name = idOrName.toLowerCase();
    return (
      this.model.getSheetBySheetId(idOrName) ??
      this.model.getSheets().find((sheet) => sheet.getName().toLowerCase() === name)
    );
  }

  private checkStructure(): void {
    if (this.structure.isProtected) throw denied();
  }

  private checkedName(name: string, ownId?: string): string {
    const illegal = name.trim() === "" || name.length > 31 || /[[\]:*?/\\]/.test(name) || /^'|'$/.test(name);
    if (illegal || name.toLowerCase() === "history") throw invalid();
    const taken = this.find(name);
    if (taken && taken.getSheetName().toLowerCase() === name.toLowerCase() && taken.getSheetId() !== ownId)
      throw alreadyExists();
    return name;
  }

  private freeName(): string {
    for (let number = this.sheets().length + 1; ; number += 1)
      if (!this.find(`Sheet${number}`)) return `Sheet${number}`;
  }

  private numbered(name: string): string {
    const stem = name.replace(/ \(\d+\)$/, "");
    for (let number = 2; ; number += 1) {
      const tail = ` (${number})`;
      const candidate = stem.slice(0, 31 - tail.length) + tail;
      if (!this.find(candidate)) return candidate;
    }
  }

  private newId(): string {
    return `{${crypto.randomUUID().toUpperCase()}}`;
  }

  private blank(name: string, id = this.newId()): IWorksheetData {
    return mergeWorksheetSnapshotWithDefault({
      id,
      name,
      rowCount: DEFAULT_ROWS,
      columnCount: DEFAULT_COLUMNS,
      defaultColumnWidth: DEFAULT_WIDTH,
      defaultRowHeight: DEFAULT_HEIGHT,
      cellData: {},
      mergeData: [],
      rowData: {},
      columnData: {},
    });
  }
}
