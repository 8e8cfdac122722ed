export { goTo, locale, onThemeChange, type Theme, theme, whenReady } from "./host";
export { type Filled, fillQuote, type Job } from "./quote";
export { layOutRates, type RatesReading, readRates, watchRates } from "./rates";
export { WorkbookFault } from "./run";
export { readSelectedOrder } from "./selection";
