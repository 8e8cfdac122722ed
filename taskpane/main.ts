import { followAppearance } from "./appearance";
import { element } from "./element";
import { locale, whenReady } from "./excel/host";
import { writeAs } from "./language";
import { openPane, refusePane } from "./pane";
import { TEXTS } from "./texts";

const place = document.getElementById("pane");
if (!place) throw new Error("taskpane.html has no place for the pane");
place.append(element("p", { class: "alone" }, TEXTS.opening));
const { inExcel } = await whenReady();
writeAs(locale);
followAppearance();
if (inExcel) openPane(place);
else refusePane(place);
