import { isBlank } from "../../../src/index";
import { run, WorkbookFault } from "../run";

/** A selection of more cells than these is no list of weights. */
const MOST_CELLS = 500;

/** The values of the selected cells that hold something. A first cell with a text and no figure is a header and is left out. */
export async function readSelectedWeights(): Promise<readonly unknown[]> {
  return run(async (context) => {
    const used = context.workbook.getSelectedRange().getUsedRangeOrNullObject(true);
    used.load("values,cellCount");
    await context.sync();
    if (used.isNullObject) {
      throw new WorkbookFault("The selected cells are empty. Select the cells with the weights and try again.");
    }
    if (used.cellCount > MOST_CELLS) {
      throw new WorkbookFault(
        `The selection holds ${used.cellCount} cells. Select the weights alone, ${MOST_CELLS} at most, and try again.`,
      );
    }
    const [first, ...others] = used.values.flat().filter((cell) => !isBlank(cell));
    return typeof first === "string" && !/\d/.test(first) ? others : [first, ...others];
  });
}
