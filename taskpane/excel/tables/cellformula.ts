import { run, WorkbookFault } from "../run";

/** Puts a formula into the selected cell. Errors: WorkbookFault where that is not one empty cell. */
export async function putFormulaIntoCell(formula: string): Promise<string> {
  return run(async (context) => {
    const selected = context.workbook.getSelectedRange();
    selected.load("address,cellCount");
    const cell = selected.getCell(0, 0);
    cell.load("formulas");
    const { protection } = selected.worksheet;
    protection.load("protected");
    await context.sync();
    const address = selected.address.slice(selected.address.lastIndexOf("!") + 1);
    if (selected.cellCount !== 1)
      throw new WorkbookFault(`${address} is more than one cell. Select one empty cell and press again.`);
    if (cell.formulas[0]?.[0] !== "")
      throw new WorkbookFault(
        `${address} is not empty, and nothing in it was changed. Select an empty cell and press again.`,
      );
    if (protection.protected) {
      throw new WorkbookFault(
        "This sheet is protected. Take its protection off (Review, Unprotect Sheet) or select a cell of another sheet.",
      );
    }
    cell.formulas = [[formula]];
    await context.sync();
    return address;
  });
}
