/** Asked each time: a host may learn the workbook's language late. */
let asked: () => string = () => "en-US";

/** The language tag that numbers and dates are shown in and typed in. */
export function locale(): string {
  return asked();
}

/** Sets the language of numbers and dates to the host's; without a host they are written as in the United States. */
export function writeAs(language: () => string): void {
  asked = language;
}
