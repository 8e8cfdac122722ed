import { shiftClock } from "./clock";

/**
 * Runs in the task pane's page before office.js: gives office.js the two objects it looks for in desktop Excel:
 * `window.external` for questions answered at once, and `_richApiNativeBridge` for the messages of Excel.run.
 * office.js is pinned to one version because none of this is documented.
 */

interface NativeBridge {
  sendMessageToHost(text: string): void;
  onMessageFromHost?: (text: string) => void;
}

const SETS = {
  ExcelApi: "1.17",
  ExcelApiDesktop: "1.1",
  SharedRuntime: "1.2",
  CustomFunctionsRuntime: "1.5",
  RibbonApi: "1.2",
  DialogApi: "1.2",
  AddinCommands: "1.3",
  DelayForCellEdit: "1.1",
};

const settings = { Read: () => [[], []], Write: () => undefined };

/** The Office theme, each colour an integer as desktop Excel gives it; `?theme=dark` on the workbook page tries the dark one. */
const query = new URLSearchParams(parent.location.search);
const dark = query.get("theme") === "dark";
const THEME = dark
  ? {
      bodyBackgroundColor: 0x262626,
      bodyForegroundColor: 0xffffff,
      controlBackgroundColor: 0x363636,
      controlForegroundColor: 0xffffff,
    }
  : {
      bodyBackgroundColor: 0xffffff,
      bodyForegroundColor: 0x252525,
      controlBackgroundColor: 0xfafafa,
      controlForegroundColor: 0x252525,
    };

const { locale: LANGUAGE, clockShift } = parent.workbookAround ?? { locale: "en-US", clockShift: 0 };
if (clockShift !== 0) shiftClock(window, clockShift);

const CONTEXT: Record<string, unknown> = {
  AppType: 1,
  SolutionRef: "curbwright-workbook-page",
  AppVersionMajor: 16,
  AppVersionMinor: 1,
  AppUILocale: "en-US",
  AppDataLocale: LANGUAGE,
  DocUrl: "",
  AppCapabilities: 1,
  ActivationMode: 1,
  ControlIntegrationLevel: 1,
  SolutionToken: "",
  CorrelationId: "00000000-0000-0000-0000-000000000000",
  InstanceId: "workbook-page",
  TouchEnabled: false,
  CommerceAllowed: false,
  SupportedMatrix: JSON.stringify(SETS),
  HostCustomMessage: "",
  HostFullVersion: "16.0.0.0",
  DialogRequirementMatrix: "{}",
  FeaturesForSolution: "{}",
  InitialDisplayMode: 0,
  Settings: settings,
  OfficeThemeInfo: JSON.stringify(THEME),
};

const context = Object.fromEntries(Object.entries(CONTEXT).map(([name, value]) => [`Get${name}`, () => value]));

const bridge: NativeBridge = {
  // The page around the pane puts its receiver here; until then messages wait.
  sendMessageToHost: (text) => waiting.push(text),
};
const waiting: string[] = [];

const external = {
  GetContext: () => context,
  RegisterEvent: (_id: number, _target: string, _handler: unknown, callback?: (status: number) => void) =>
    callback?.(0),
  UnregisterEvent: (_id: number, _target: string, callback?: (status: number) => void) => callback?.(0),
};

Object.defineProperty(window, "external", { value: external, configurable: true });
Object.assign(window, { _richApiNativeBridge: bridge, curbwrightWaitingMessages: waiting });

// office.js replaces the page's address to remove its query; a frame with another address could not be reloaded.
