import { isBlank } from "../../../src/index";
import { ON_THE_SCALE } from "../job/readings";
import { readAfterEdit, run } from "../run";

/** The cream cells of a job sheet for the links of one alloy at one stage, and what stands in them. */
export interface JobPlace {
  readonly sheet: string;
  readonly stage: JobStage;
  readonly design: string;
  readonly mark: string;
  /** "" where the line has one colour. */
  readonly colour: string;
  readonly pieces: unknown;
  readonly weight: unknown;
  readonly who: unknown;
  readonly row: number;
  /** The row that asks how many were sent; undefined on job sheets of earlier versions, and for castings. */
  readonly sentRow: number | undefined;
}
export type JobStage = "cast" | "polished";

/** What is written into those cells; undefined leaves them blank. */
export interface JobFigures {
  readonly pieces: number;
  readonly weight: number;
  readonly who: string;
  readonly sent: number | undefined;
}

const [COUNTED, WEIGHT, WHO] = [3, 4, 6];

/** The places of a job's sheet; none where there is no such sheet. */
export async function readJob(job: string): Promise<readonly JobPlace[]> {
  return readAfterEdit(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(`Job ${job.trim()}`);
    sheet.load("name");
    await context.sync();
    if (sheet.isNullObject) return [];
    const used = sheet.getUsedRange(true);
    used.load("values,rowIndex,columnIndex");
    await context.sync();
    // Another sheet of that name does not begin as ours does.
    return used.rowIndex === 0 && used.columnIndex === 0 ? placesIn(sheet.name, used.values) : [];
  });
}

/** Writes figures into a job's cells. @param figures undefined to leave them blank */
export async function writeJob(place: JobPlace, figures: JobFigures | undefined): Promise<void> {
  await run(async (context) => {
    const sheet = context.workbook.worksheets.getItem(place.sheet);
    const put = (row: number, column: number, content: string | number) => {
      sheet.getRangeByIndexes(row, column, 1, 1).values = [[content]];
    };
    put(place.row, COUNTED, figures?.pieces ?? "");
    put(place.row, WEIGHT, figures?.weight ?? "");
    put(place.row, WHO, figures?.who ?? "");
    if (place.sentRow !== undefined && (!figures || figures.sent !== undefined)) {
      put(place.sentRow, COUNTED, figures?.sent ?? "");
    }
    await context.sync();
  });
}

/** "1. Harbour 8, bracelet, 14K, solid". */
const BLOCK = /^\d+\. (.*), [^,]+, ([^,]+), (?:solid|hollow)$/;

function placesIn(sheet: string, rows: readonly (readonly unknown[])[]): readonly JobPlace[] {
  const places: JobPlace[] = [];
  let [design, mark, isScale] = ["", "", false];
  const sentRows = new Map<string, number>();
  for (const [row, cells] of rows.entries()) {
    const label = String(cells[0] ?? "").trim();
    const block = BLOCK.exec(label);
    if (block) [design = "", mark = ""] = block.slice(1);
    if (block || label === ON_THE_SCALE.finished) {
      isScale = false;
      sentRows.clear();
    }
    if (label === ON_THE_SCALE.title) isScale = true;
    if (!isScale) continue;
    const [words = "", colour = ""] = label.split(/, (.*)/);
    if (words === ON_THE_SCALE.sent) sentRows.set(colour, row);
    const stage = (["cast", "polished"] as const).find((each) => words === ON_THE_SCALE[each]);
    if (!stage) continue;
    places.push({
      sheet,
      stage,
      design,
      mark,
      colour,
      pieces: cells[COUNTED],
      weight: cells[WEIGHT],
      who: cells[WHO],
      row,
      sentRow: stage === "polished" ? sentRows.get(colour) : undefined,
    });
  }
  return places;
}

/** Whether nothing was written into a place. */
export function isFree({ pieces, weight }: JobPlace): boolean {
  return isBlank(pieces) && isBlank(weight);
}
