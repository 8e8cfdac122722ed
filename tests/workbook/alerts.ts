import { CellAlertManagerService } from "@univerjs/preset-sheets-core";

/**
 * Stops the grid from showing a cell's fault in a box beside the mouse. The box covers the next cells, stays when the mouse has
 * left the grid, and takes clicks meant for those cells. The status line shows the fault, and Excel has no such box either.
 */
export function quietAlerts(): void {
  CellAlertManagerService.prototype.showAlert = () => undefined;
}
