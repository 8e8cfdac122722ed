import { button } from "../controls/button";
import { element } from "../controls/element";
import { field } from "../controls/field";
import { fileDrop } from "../controls/filedrop";
import { whileWorking } from "../controls/pressstep";
import { listTables, readChosen } from "../excel/designs/designs";
import { ASKING_TABLE } from "../excel/market/askingtable";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { type CsvText, decodeText, readCsv } from "../wording/csvtext";

const { list: texts } = ASKING_TEXTS;

/** A list as it was read: its headers, the rows under them, and where they are from. */
export interface ReadList {
  readonly headers: readonly unknown[];
  readonly rows: readonly (readonly unknown[])[];
  readonly where: string;
}

export interface ListSource {
  readonly root: HTMLElement;
  /** Offers the tables there are now. */
  refresh(): Promise<void>;
}

/** Bytes of a file that are read at once. */
const LARGEST = 5_000_000;

/** Where a list is: cells or a table of the workbook, a pasted text, a file. */
export function listSource(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly read: (list: ReadList) => Promise<void>;
  readonly refused: (sentence: string) => void;
}): ListSource {
  const from = field({ id: "list-from", label: texts.from, choices: [] });
  const pasted = element("textarea", { id: "list-pasted", rows: "5", spellcheck: "false" });
  const paste = element("div", { class: "pasted" }, element("label", { for: "list-pasted" }, texts.pasted), pasted);
  const file = fileDrop(texts.fileWords, (given) => void on.attempt(() => take(given)), on.refused);
  const reading = button(texts.read, "outline", () => void on.attempt(read));
  const actions = element("div", { class: "actions" }, reading.root);

  const adapt = () => {
    const { value } = from.control;
    paste.hidden = value !== "paste";
    file.root.hidden = value !== "file";
    actions.hidden = value === "file";
  };
  from.control.addEventListener("change", adapt);
  offer([]);

  function offer(tables: readonly string[]): void {
    from.offer([
      { value: "selection", shown: texts.selection },
      ...tables.map((name) => ({ value: `table:${name}`, shown: texts.table(name) })),
      { value: "paste", shown: texts.paste },
      { value: "file", shown: texts.file },
    ]);
    adapt();
  }

  async function read(): Promise<void> {
    return whileWorking(reading, texts.reading, async () => {
      const { value } = from.control;
      if (value === "paste") return await given(readCsv(pasted.value), texts.pastedName, texts.noText);
      const table = /^table:(.*)$/.exec(value)?.[1];
      const words = { table: texts.noTable, cells: texts.noCells };
      const designs = await readChosen(
        table === undefined ? { kind: "selection" } : { kind: "table", name: table },
        words,
      );
      const [headers = [], ...rows] = designs.cells;
      await on.read({ headers, rows, where: designs.table ?? designs.sheet });
    });
  }

  async function take(given_: File): Promise<void> {
    if (given_.size > LARGEST) return on.refused(texts.tooLarge);
    const bytes = new Uint8Array(await given_.arrayBuffer());
    await given(readCsv(decodeText(bytes)), given_.name, texts.oneRow);
  }

  async function given(
    { rows: [headers = [], ...rows], separator }: CsvText,
    name: string,
    none: string,
  ): Promise<void> {
    const isEmpty = headers.every((cell) => cell.trim() === "");
    if (isEmpty || rows.every((row) => row.every((cell) => cell.trim() === ""))) {
      return on.refused(isEmpty ? none : texts.oneRow);
    }
    const shown = texts.separators[separator];
    await on.read({ headers, rows, where: shown && headers.length > 1 ? texts.separated(name, shown) : name });
  }

  return {
    root: element("div", { class: "listsource" }, from.root, paste, file.root, actions),
    async refresh() {
      offer((await listTables()).filter((name) => name !== ASKING_TABLE));
    },
  };
}
