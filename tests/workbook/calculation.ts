import {
  ClearSelectionFormatCommand,
  type FormulaExecutedStateType,
  SetBorderCommand,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationResultMutation,
  SetFormulaCalculationStartMutation,
  SetRangeValuesMutation,
  SetStyleCommand,
  SetTriggerFormulaCalculationStartMutation,
} from "@univerjs/preset-sheets-core";
import type { Engine } from "./univer";

/**
 * Knows when every formula shows its value. The grid calculates a moment after a change and does not say that a change is
 * waiting, so changes are counted here. All is settled when the last calculation covered the last change and has ended.
 */
export interface Calculation {
  settled(): Promise<void>;
  isSettled(): boolean;
  /**
   * Resolves when no calculation is running, though one may be waiting. Cells must not move during one: its results would be
   * written to where they were when it began.
   */
  idle(): Promise<void>;
  /** Calculates everything again, also what did not change. */
  recalculate(): void;
  /** Called after each calculation with the ids of the sheets it wrote to. */
  onCalculated(listener: (sheetIds: string[]) => void): void;
}

export function watchCalculation(engine: Engine, unitId: () => string): Calculation {
  let changes = 0;
  let started = 0;
  let running = 0;
  let waiting: (() => void)[] = [];
  let waitingForIdle: (() => void)[] = [];
  const listeners: ((sheetIds: string[]) => void)[] = [];

  const isSettled = () => running === 0 && started >= changes;
  const end = () => {
    running = Math.max(0, running - 1);
    const resolved = [...(running === 0 ? waitingForIdle : []), ...(isSettled() ? waiting : [])];
    if (running === 0) waitingForIdle = [];
    if (isSettled()) waiting = [];
    for (const resolve of resolved) resolve();
  };

  engine.commands.onCommandExecuted((command, options) => {
    if (command.id === SetFormulaCalculationStartMutation.id) {
      started = changes;
      running += 1;
    } else if (command.id === SetFormulaCalculationNotificationMutation.id) {
      const state = readState(command.params);
      if (state !== undefined) end();
    } else if (command.id === SetFormulaCalculationResultMutation.id) {
      const sheetIds = sheetsOf(command.params, unitId());
      if (sheetIds.length > 0) for (const listener of listeners) listener(sheetIds);
    } else if (engine.dirty.get(command.id)) {
      // Cells that the calculation itself writes, and changes of looks, start no calculation.
      const isValues = command.id === SetRangeValuesMutation.id;
      if (!isValues || !(options?.onlyLocal || isLookOnly(command.params))) changes += 1;
    }
  });

  return {
    isSettled,
    settled: () => (isSettled() ? Promise.resolve() : new Promise((resolve) => waiting.push(resolve))),
    idle: () => (running === 0 ? Promise.resolve() : new Promise((resolve) => waitingForIdle.push(resolve))),
    // Through the grid's own queue: two calculations at once would disturb each other.
    recalculate: () => {
      engine.commands.syncExecuteCommand(SetTriggerFormulaCalculationStartMutation.id, EVERYTHING);
    },
    onCalculated: (listener) => listeners.push(listener),
  };
}

const LOOKS: readonly unknown[] = [SetStyleCommand.id, SetBorderCommand.id, ClearSelectionFormatCommand.id];

function isLookOnly(params: unknown): boolean {
  return typeof params === "object" && params !== null && "trigger" in params && LOOKS.includes(params.trigger);
}

const EVERYTHING = {
  forceCalculation: true,
  dirtyRanges: [],
  dirtyNameMap: {},
  dirtyDefinedNameMap: {},
  dirtySuperTableMap: {},
  dirtyUnitFeatureMap: {},
  dirtyUnitOtherFormulaMap: {},
  clearDependencyTreeCache: {},
};

function readState(params: unknown): FormulaExecutedStateType | undefined {
  if (typeof params !== "object" || params === null || !("functionsExecutedState" in params)) return undefined;
  return typeof params.functionsExecutedState === "number" ? params.functionsExecutedState : undefined;
}

function sheetsOf(params: unknown, unitId: string): string[] {
  if (typeof params !== "object" || params === null || !("unitData" in params)) return [];
  const units = params.unitData;
  if (typeof units !== "object" || units === null || !(unitId in units)) return [];
  const sheets: unknown = Reflect.get(units, unitId);
  return typeof sheets === "object" && sheets !== null ? Object.keys(sheets) : [];
}
