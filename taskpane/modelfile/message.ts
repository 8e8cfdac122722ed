import type { Measure, Model } from "../../src/index";
import type { Shape } from "./shape";

/** The result of examining a model file, without its triangles. */
export type Report = Omit<Model, "mesh" | "solidOf">;

/** The messages of the worker, in this order; the last is one of examined, refused, broken. */
export type Message =
  | { readonly kind: "progress"; readonly step: "reading" | "examining"; readonly share: number }
  | { readonly kind: "measured"; readonly measure: Measure }
  | { readonly kind: "examined"; readonly report: Report; readonly shape: Shape }
  /** What is wrong with the file, in the costing library's sentence. */
  | { readonly kind: "refused"; readonly sentence: string }
  /** A mistake of ours: it should not happen. */
  | { readonly kind: "broken"; readonly said: string };

export type Ask = { readonly file: File };
