import { run } from "./run";

/** The Office theme of the moment, in the colours that Office gives. */
export interface Theme {
  readonly dark: boolean;
  readonly highContrast: boolean;
  readonly background: string;
  readonly foreground: string;
}

/** Resolves when Office has loaded the add-in. */
export async function whenReady(): Promise<{ readonly inExcel: boolean }> {
  const { host } = await Office.onReady();
  return { inExcel: host === Office.HostType.Excel };
}

/** The Office theme; undefined where the host gives none. */
export function theme(): Theme | undefined {
  const office: Office.OfficeTheme | undefined = Office.context?.officeTheme;
  if (!office?.bodyBackgroundColor) return undefined;
  return {
    dark: office.isDarkTheme ?? isDark(office.bodyBackgroundColor),
    highContrast: matchMedia("(forced-colors: active)").matches,
    background: office.bodyBackgroundColor,
    foreground: office.bodyForegroundColor,
  };
}

/** Calls the handler when the person changes the Office theme, where the host reports it. */
export function onThemeChange(handler: () => void): void {
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", handler);
  matchMedia("(forced-colors: active)").addEventListener("change", handler);
}

/** The language tag that numbers and dates are shown in. */
export function locale(): string {
  // Some hosts give Windows' number of a language, which Intl does not accept.
  const given: readonly unknown[] = [Office.context?.contentLanguage, navigator.language];
  return given.find((tag): tag is string => typeof tag === "string" && isLanguage(tag)) ?? "en-US";
}

function isLanguage(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length > 0;
  } catch {
    return false;
  }
}

/** Brings a sheet to the front if it exists; gives whether it does. */
export async function goToIfThere(name: string): Promise<boolean> {
  return run(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(name);
    sheet.load("name");
    await context.sync();
    if (sheet.isNullObject) return false;
    sheet.activate();
    await context.sync();
    return true;
  });
}

/** Brings a sheet to the front. */
export async function goTo(sheet: string): Promise<void> {
  await run(async (context) => {
    context.workbook.worksheets.getItem(sheet).activate();
    await context.sync();
  });
}

function isDark(colour: string): boolean {
  const channels = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour)?.slice(1) ?? [];
  const [red = 255, green = 255, blue = 255] = channels.map((channel) => Number.parseInt(channel, 16));
  // Relative weights of Rec. 709 luma.
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue < 128;
}
