import { type ModelUnit, Quotient } from "../../src/index";
import { element, say } from "../controls/element";
import { legend } from "../plots/legend";
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
  const looks = legend(
    (["metal", "sprue", "faulty"] as const).map((look) => ({
      sample: element("span", { class: `sample ${look}` }),
      text: texts.legend[look],
    })),
  );
  looks.setAttribute("aria-hidden", "true");
  looks.hidden = true;
  const root = element("details", { class: "modelpicture" }, element("summary", {}, texts.title), note, stage, looks);
  const isFaulty = report.solids.map(({ volume }) => volume === undefined);
  let picture: ModelPicture | undefined;
  let refresh = () => {};
  let isLoading = false;
  let isClosed = false;
  const load = async () => {
    if (picture || isLoading) return;
    isLoading = true;
    say(note, texts.loading);
    try {
      const { drawModel } = await import(/* webpackChunkName: "modelpicture" */ "./picture");
      if (isClosed) return;
      picture = drawModel(stage, shape, isFaulty);
      looks.hidden = picture === undefined;
      say(note, picture ? texts.keys : texts.noDrawing);
      refresh();
    } catch (error) {
      // After a network failure the next opening tries again; any other error is our mistake.
      if (!(error instanceof Error && error.name === "ChunkLoadError")) throw error;
      say(note, texts.notLoaded);
    } finally {
      isLoading = false;
    }
  };
  root.addEventListener("toggle", () => {
    if (root.open) void load();
  });
  root.open = report.triangles <= AT_ONCE;
  say(note, "");
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
