import { element } from "./controls/element";
import { locale, whenReady } from "./excel/host";
import { openPane, refusePane } from "./pane";
import { followAppearance } from "./views/appearance";
import { writeAs } from "./wording/language";
import { TEXTS } from "./wording/texts";

const place = document.getElementById("pane");
if (!place) throw new Error("taskpane.html has no place for the pane");
place.append(element("p", { class: "alone" }, TEXTS.opening));
const { inExcel } = await whenReady();
writeAs(locale);
followAppearance();
if (inExcel) openPane(place);
else refusePane(place);
