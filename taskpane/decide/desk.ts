import { openBudget } from "./budget";
import { openMustBring } from "./mustbring";
import { openSpotRisk } from "./spotriskpart";
import { openStones } from "./stones";

/** What works the parts that decide. */
export const openers = { openMustBring, openSpotRisk, openStones, openBudget };
