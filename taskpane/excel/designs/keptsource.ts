import { readAfterEdit, run } from "../run";

const SETTING = "curbwright.catalogue.source";

/** What was kept of a spot's source in this workbook, as it was written; undefined for nothing. */
export async function readKeptSource(): Promise<unknown> {
  return readAfterEdit(async (context) => {
    const setting = context.workbook.settings.getItemOrNullObject(SETTING);
    setting.load("value");
    await context.sync();
    const value: unknown = setting.isNullObject ? undefined : setting.value;
    return value;
  });
}

/** Keeps a spot's source in the workbook, unseen. */
export async function keepSource(text: string): Promise<void> {
  await run(async (context) => {
    context.workbook.settings.add(SETTING, text);
    await context.sync();
  });
}
