/**
 * Small changes to the grid's source when the workbook page is built, where the grid offers no other way. Each names the text it
 * replaces in one file of Univer 0.25.1; the build fails where that text is not there exactly once.
 * @type {readonly { file: string, from: string, to: string, why: string }[]}
 */
export const GRID_EDITS = [
  {
    file: "@univerjs/engine-formula/lib/es/index.js",
    from: "const deleteFormulaIdMap = /* @__PURE__ */ new Map();\n\t\tconst formulaData = this.getFormulaData();",
    to: "const deleteFormulaIdMap = new Map();\nconst formulaData = { [unitId]: { [sheetId]: this.getSheetFormulaData(unitId, sheetId) } };",
    why: "It goes through the cells of every sheet at each change of one, and uses those of that one alone.",
  },
  {
    file: "@univerjs/sheets-formula/lib/es/index.js",
    from: "}, 100);",
    to: "}, 0);",
    why: "It waits a tenth of a second after each change before it calculates; Excel calculates at once.",
  },
  {
    file: "@univerjs/sheets-ui/lib/es/index.js",
    from: "const cellRaw = pos.rawData;",
    to: 'const cellRaw = pos.rawData;\nif (this._configService.getConfig("sheets-ui.config")?.disableForceStringMark) return next(cell);',
    why: "It reads every text as a date and a number each time the cell is drawn, for a mark that is switched off.",
  },
];

/**
 * Whether a source file's path is one of those that are changed.
 * @param {string} path
 * @returns {boolean}
 */
export function isEdited(path) {
  return editsOf(path).length > 0;
}

function editsOf(path) {
  return GRID_EDITS.filter(({ file }) => path.replaceAll("\\", "/").endsWith(`/${file}`));
}

/**
 * The webpack loader that makes them.
 * @this {import("webpack").LoaderContext<unknown>}
 * @param {string} source
 * @returns {string}
 */
export default function editGrid(source) {
  let edited = source;
  for (const { file, from, to } of editsOf(this.resourcePath)) {
    const parts = edited.split(from);
    if (parts.length !== 2)
      throw new Error(`${file} holds ${JSON.stringify(from)} ${parts.length - 1} times, not once`);
    edited = parts.join(to);
  }
  return edited;
}
