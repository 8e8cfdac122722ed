import { MAKER_LABELS, type MakerKey, MINIMUM_UNITS } from "../../../src/index";
import type { TablePlan } from "../tables/tableplan";

/** The name of the table of makers' price lists, as formulas use it. */
export const MAKER_TABLE = "Makers";

const GRAMS = "General";
const MONEY = "#,##0.00##";

/** Each row is a class of a maker's price list. No formulas: the person types all of it. */
export const MAKER_PLAN: TablePlan<MakerKey> = {
  name: MAKER_TABLE,
  sheet: "Maker prices",
  lead: [
    "One row a class of weight: what a maker adds to the metal rate, a gram, for one chain from so many grams up to the maker's next row. Sort, filter, add columns.",
    "Mark: as stamped, or all. Minimum order: the least that is sold at once, in g, kg, dwt, ozt or money. Currency: empty for the workbook's own. Nothing here is ever shown to a customer.",
  ],
  columns: {
    maker: { header: MAKER_LABELS.maker, width: 130, look: "input" },
    mark: { header: MAKER_LABELS.mark, width: 50, look: "inputStart" },
    from: { header: MAKER_LABELS.from, width: 60, look: "inputRight", format: GRAMS },
    surcharge: { header: MAKER_LABELS.surcharge, width: 100, look: "inputRight", format: MONEY },
    currency: { header: MAKER_LABELS.currency, width: 66, look: "inputAfterNumber" },
    minimum: { header: MAKER_LABELS.minimum, width: 92, look: "inputRight", format: GRAMS },
    minimumIn: {
      header: MAKER_LABELS.minimumIn,
      width: 90,
      look: "inputAfterNumber",
      choices: [...MINIMUM_UNITS, "money"],
    },
    lead: { header: MAKER_LABELS.lead, width: 84, look: "inputStart" },
    date: { header: MAKER_LABELS.date, width: 76, look: "inputStart", format: "yyyy-mm-dd" },
    note: { header: MAKER_LABELS.note, width: 170, look: "input" },
  },
};
