import { type ModelUnit, Quotient } from "../../src/index";
import { element, setText } from "../controls/element";
import { TEXTS } from "../wording/texts";
import type { Report } from "./message";
import type { ModelPicture } from "./picture";
import type { Shape } from "./shape";
import { showSides } from "./side";

const { picture: texts, unit: units } = TEXTS.model;

/** Up to this many triangles a picture is drawn without being asked for. */
const AT_ONCE = 200_000;

export interface PictureFold {
  readonly root: HTMLElement;
  /** Shows which solids are ticked, and the size they will have. */
  show(ticked: ReadonlySet<number>, unit: ModelUnit | undefined, scale: Quotient | undefined): void;
  /** Closes the picture; it is not shown again. */
  close(): void;
}

/** The picture of a model, loaded when it is unfolded. */
export function pictureFold(report: Report, shape: Shape): PictureFold {
  const note = element("p", { class: "help", role: "status" });
  const stage = element("div", { class: "stage" });
  const legend = element(
    "p",
    { class: "help legend", "aria-hidden": "true" },
    ...(["metal", "sprue", "faulty"] as const).map((look) => element("span", { class: look }, texts.legend[look])),
  );
  legend.hidden = true;
  const root = element("details", { class: "modelpicture" }, element("summary", {}, texts.title), note, stage, legend);
  const isFaulty = report.solids.map(({ volume }) => volume === undefined);
  let picture: ModelPicture | undefined;
  let refresh = () => {};
  let isLoading = false;
  let isClosed = false;
  const say = (sentence: string) => {
    setText(note, sentence);
    note.hidden = sentence === "";
  };
  const load = async () => {
    if (picture || isLoading) return;
    isLoading = true;
    say(texts.loading);
    try {
      const { drawModel } = await import(/* webpackChunkName: "modelpicture" */ "./picture");
      if (isClosed) return;
      picture = drawModel(stage, shape, isFaulty);
      legend.hidden = picture === undefined;
      say(picture ? texts.keys : texts.noDrawing);
      refresh();
    } catch (error) {
      // After a network failure the next opening tries again; any other error is our mistake.
      if (!(error instanceof Error && error.name === "ChunkLoadError")) throw error;
      say(texts.notLoaded);
    } finally {
      isLoading = false;
    }
  };
  root.addEventListener("toggle", () => {
    if (root.open) void load();
  });
  root.open = report.triangles <= AT_ONCE;
  say("");
  return {
    root,
    show(ticked, unit, scale) {
      refresh = () => {
        const sides = unit && showSides(shape.size, unit, scale ?? Quotient.one);
        const size = sides ? units.size(...sides) : texts.unknownSize;
        picture?.show(ticked, sides, texts.said(report.solids.length, ticked.size, size));
      };
      refresh();
    },
    close() {
      isClosed = true;
      picture?.close();
      picture = undefined;
    },
  };
}
