import { CellAlertManagerService } from "@univerjs/preset-sheets-core";

/**
 * Keeps the grid from saying beside the mouse what is wrong with a cell: its box lies over the next cells, stays when the mouse
 * has left the grid, and takes the clicks meant for them. The status line says it, and Excel shows no such box either.
 */
export function quietAlerts(): void {
  CellAlertManagerService.prototype.showAlert = () => undefined;
}
