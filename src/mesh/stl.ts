import { CostingError, found } from "../exact/errors";
import type { Mesh } from "./mesh";
import type { Progress } from "./meshprogress";
import { BINARY_HEADER, BINARY_TRIANGLE, countedTriangles, readBinary } from "./stlbinary";
import { readStlText } from "./stltext";

/** The triangles of an STL file, in the file's own unit. */
export interface StlModel {
  readonly format: StlFormat;
  /** Corners equal in every coordinate are one. Binary files hold single precision, texts are kept in double. */
  readonly mesh: Mesh;
}

export type StlFormat = "binary" | "text";

/** The largest file that is read: about 5 million triangles in binary, about 1 million in text. */
export const LARGEST_STL = 256 * 2 ** 20;

/** The field that sentences about a file name. */
export const STL_FIELD = "STL file";

/**
 * Reads an STL file, binary or text. Which of them is decided by its contents, not by its first word.
 * Errors: blank for an empty file or one without triangles; tooLarge; wrongShape for what is no STL, is cut off or holds
 * another number of triangles than it says; notANumber and outOfRange for coordinates.
 * Source: the StereoLithography Interface Specification's two forms, as their usual descriptions give them (80 bytes of
 * header, a count, 50 bytes a triangle; solid, facet normal, outer loop, vertex).
 */
export function readStl(bytes: Uint8Array, progress: Progress = () => {}): StlModel {
  const format = formatOf(bytes);
  const mesh = format === "binary" ? readBinary(bytes, progress) : readStlText(bytes, progress);
  return { format, mesh };
}

/** Which form a file has. Errors: as readStl, for what shows without reading the triangles. */
export function formatOf(bytes: Uint8Array): StlFormat {
  const size = bytes.length;
  if (size === 0) throw new CostingError("blank", STL_FIELD, `found an empty file; ${RIGHT}`);
  refuseLargeStl(size);
  const counted = countedTriangles(bytes);
  if (counted !== undefined && BINARY_HEADER + BINARY_TRIANGLE * counted === size) return "binary";
  if (beginsAsText(bytes)) return "text";
  const other = otherKind(bytes);
  if (other) throw new CostingError("wrongShape", STL_FIELD, `found ${other}; ${RIGHT}`);
  if (counted === undefined) {
    throw new CostingError("wrongShape", STL_FIELD, `found ${size} bytes, too few for an STL; ${RIGHT}`);
  }
  return "binary";
}

/** Errors: tooLarge for a file of more bytes than are read. */
export function refuseLargeStl(size: number): void {
  if (size <= LARGEST_STL) return;
  throw new CostingError(
    "tooLarge",
    STL_FIELD,
    `found ${megabytes(size)} MB; give at most ${megabytes(LARGEST_STL)} MB, exported with a coarser mesh or as binary STL`,
  );
}

const RIGHT = "give an STL file of the model, binary or text";
/** In bytes: enough for a long name in the first line. */
const LOOK = 1024;

function beginsAsText(bytes: Uint8Array): boolean {
  const start = startOf(bytes);
  return /^\s*solid\b/i.test(start) && !start.includes("\0");
}

/** The first characters, without a byte order mark. */
function startOf(bytes: Uint8Array): string {
  const marked = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  return latin(bytes, marked ? 3 : 0, LOOK);
}

/** What a file that is no STL most likely is. */
function otherKind(bytes: Uint8Array): string | undefined {
  const start = latin(bytes, 0, LOOK);
  if (start.startsWith("PK")) return "a ZIP archive (3MF files are such archives too)";
  if (start.startsWith("\x1f\x8b")) return "a packed file (gzip)";
  if (start.startsWith("\xff\xfe") || start.startsWith("\xfe\xff")) return "a text in UTF-16";
  const isText = /^[\t\r\n\x20-\x7e]+$/.test(start);
  return isText ? `a text that begins with ${found(start.trim().slice(0, 24)).replace("found ", "")}` : undefined;
}

function latin(bytes: Uint8Array, from: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(from, from + length));
}

function megabytes(size: number): string {
  return Math.ceil(size / 2 ** 20).toLocaleString("en-US");
}
