import type { Budget } from "../../../src/index";
import { addressOf } from "../address";
import { onOwnSheet } from "../designs/pricelist";
import { locale } from "../host";
import { paperSizeFor, putPaper } from "../paper";
import type { Added } from "../tables/additions";
import { budgetPaper, type MetalByWeight } from "./budgetpaper";

/** Puts a budget on a sheet of its own; nothing else in the workbook is touched, and takeOut takes it out again. */
export async function putBudget(budget: Budget, metal: MetalByWeight | undefined): Promise<Added> {
  const paper = budgetPaper(budget, metal);
  const extent = `A1:${addressOf(paper.rows.length - 1, paper.widths.length - 1)}`;
  return onOwnSheet("Budget", async (context, sheet) => {
    putPaper(sheet, { ...paper, size: paperSizeFor(locale()) });
    sheet.activate();
    await context.sync();
    return { what: "budget", from: undefined, follows: undefined, areas: [extent], extent, before: undefined };
  });
}
