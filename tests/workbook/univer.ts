/** The grid's library, started with what the page needs and nothing that reaches the network. */
import {
  ICommandService,
  type Injector,
  LifecycleStages,
  LocaleType,
  LogLevel,
  mergeLocales,
  Univer,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import {
  FormulaDataModel,
  IActiveDirtyManagerService,
  IDefinedNamesService,
  IDescriptionService,
  IFunctionService,
  UniverSheetsCorePreset,
} from "@univerjs/preset-sheets-core";
import enUS from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsTablePlugin } from "@univerjs/sheets-table";
import "@univerjs/sheets-table/facade";
import { quietAlerts } from "./alerts";
import { closeBrackets } from "./brackets";
import { countIndents } from "./indents";
import { theme } from "./theme";

export interface Engine {
  readonly api: FUniver;
  readonly injector: Injector;
  readonly commands: ICommandService;
  readonly dirty: IActiveDirtyManagerService;
  readonly formulas: FormulaDataModel;
  readonly functions: IFunctionService;
  readonly descriptions: IDescriptionService;
  readonly names: IDefinedNamesService;
}

/** Starts the grid in the given element. The workbook itself is opened afterwards. */
export function startEngine(container: HTMLElement): Engine {
  countIndents();
  closeBrackets();
  quietAlerts();
  const univer = new Univer({
    theme,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(enUS) },
    logLevel: LogLevel.ERROR,
  });
  const preset = UniverSheetsCorePreset({
    container,
    header: true,
    toolbar: false,
    formulaBar: true,
    footer: { sheetBar: true, statisticBar: true, menus: false, zoomSlider: true },
    statusBarStatistic: true,
    contextMenu: true,
    disableTextFormatAlert: true,
    disableTextFormatMark: true,
    sheets: { disableForceStringAlert: true, disableForceStringMark: true },
  });
  for (const plugin of preset.plugins) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
    else univer.registerPlugin(plugin);
  }
  univer.registerPlugin(UniverSheetsTablePlugin);
  const api = FUniver.newAPI(univer);
  const injector = univer.__getInjector();
  return {
    api,
    injector,
    commands: injector.get(ICommandService),
    dirty: injector.get(IActiveDirtyManagerService),
    formulas: injector.get(FormulaDataModel),
    functions: injector.get(IFunctionService),
    get descriptions() {
      return injector.get(IDescriptionService);
    },
    names: injector.get(IDefinedNamesService),
  };
}

/** Resolves when the grid has been drawn. */
export function whenDrawn(engine: Engine): Promise<void> {
  return new Promise((resolve) => {
    const lifecycle = engine.api.getCurrentLifecycleStage();
    if (lifecycle >= LifecycleStages.Rendered) return resolve();
    const stop = engine.api.addEvent(engine.api.Event.LifeCycleChanged, ({ stage }) => {
      if (stage < LifecycleStages.Rendered) return;
      stop.dispose();
      resolve();
    });
  });
}
