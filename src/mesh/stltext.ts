import { CostingError, found } from "../exact/errors";
import { FARTHEST, refuseCoordinate } from "./coordinate";
import type { Mesh } from "./mesh";
import type { Progress } from "./meshprogress";
import { NumberText } from "./numbertext";
import { Welding } from "./weld";

const FIELD = "STL file";
/** About how many characters a triangle takes. */
const USUAL_FACET = 160;
const STRIDE = 16384;

/**
 * The mesh of a text file. Words may be on any lines, in capitals or small letters; several solids may follow each other;
 * a facet's normal is ignored.
 * Errors: blank, wrongShape with the line, notANumber, outOfRange.
 */
export function readStlText(bytes: Uint8Array, progress: Progress): Mesh {
  const words = new Words(bytes);
  const welding = new Welding("double", Math.ceil(bytes.length / USUAL_FACET));
  let triangles = 0;
  while (words.next()) {
    if (!words.is("solid")) words.refuse('"solid" or the end of the file');
    words.passName();
    while (words.is("facet")) {
      words.expect("normal");
      for (let axis = 0; axis < 3; axis += 1) words.must("a number of the normal");
      words.expect("outer");
      words.expect("loop");
      for (let corner = 0; corner < 3; corner += 1) {
        words.expect("vertex");
        const x = words.coordinate();
        const y = words.coordinate();
        welding.add(x, y, words.coordinate());
      }
      triangles += 1;
      words.expect("endloop");
      words.expect("endfacet");
      words.must('"facet" or "endsolid"');
      if (triangles % STRIDE === 0) progress(words.share());
    }
    if (!words.is("endsolid")) words.refuse('"facet" or "endsolid"');
    words.passLine();
  }
  if (triangles === 0) throw new CostingError("blank", FIELD, "found no triangles; export the model again");
  return welding.mesh();
}

/** Words of a text in bytes, one after another, without making a string of it. */
class Words {
  private start = 0;
  private end = 0;
  private readonly number: NumberText;

  constructor(private readonly bytes: Uint8Array) {
    if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) this.end = 3;
    this.number = new NumberText(bytes);
  }

  /** Goes to the next word; false where none is left. */
  next(): boolean {
    const { bytes } = this;
    let at = this.end;
    while (at < bytes.length && isSpace(bytes[at] ?? 0)) at += 1;
    this.start = at;
    while (at < bytes.length && !isSpace(bytes[at] ?? 0)) at += 1;
    this.end = at;
    return at > this.start;
  }

  is(word: string): boolean {
    if (this.end - this.start !== word.length) return false;
    // 0x20 is the bit in which small letters differ from capitals.
    for (let i = 0; i < word.length; i += 1) {
      if (((this.bytes[this.start + i] ?? 0) | 0x20) !== word.charCodeAt(i)) return false;
    }
    return true;
  }

  must(right: string): void {
    if (!this.next()) {
      throw new CostingError(
        "wrongShape",
        FIELD,
        `found its end where ${right} should follow, so it is cut off; export or copy it again`,
      );
    }
  }

  expect(word: string): void {
    this.must(`"${word}"`);
    if (!this.is(word)) this.refuse(`"${word}"`);
  }

  coordinate(): number {
    this.must("a coordinate");
    const value = this.number.read(this.start, this.end);
    if (value === undefined) this.refuseNumber();
    if (!(value <= FARTHEST && value >= -FARTHEST)) refuseCoordinate(value, FIELD, `line ${this.line()}`);
    return value;
  }

  /** Passes a solid's name: whatever comes before its first facet or its end. */
  passName(): void {
    this.must('"facet" or "endsolid"');
    while (!this.is("endsolid") && !(this.is("facet") && this.isFollowedBy("normal"))) {
      this.must('"facet" or "endsolid"');
    }
  }

  passLine(): void {
    while (this.end < this.bytes.length && !isLineEnd(this.bytes[this.end] ?? 0)) this.end += 1;
  }

  share(): number {
    return this.end / this.bytes.length;
  }

  refuse(right: string): never {
    throw new CostingError(
      "wrongShape",
      FIELD,
      `${found(this.word())} on line ${this.line()} where ${right} should stand; repair the model and export it again`,
    );
  }

  private isFollowedBy(word: string): boolean {
    const { start, end } = this;
    const follows = this.next() && this.is(word);
    this.start = start;
    this.end = end;
    return follows;
  }

  private refuseNumber(): never {
    const word = this.word();
    const why = /^[+-]?\d*,\d+$|^[+-]?[\d.]+,\d+$/.test(word)
      ? "which has a comma where a point would be right; export it with decimal points"
      : "which is not a number; repair the model and export it again";
    throw new CostingError("notANumber", FIELD, `${found(word)} as a coordinate on line ${this.line()}, ${why}`);
  }

  private word(): string {
    return String.fromCharCode(...this.bytes.subarray(this.start, Math.min(this.end, this.start + 60)));
  }

  private line(): number {
    let lines = 1;
    for (let i = 0; i < this.start; i += 1) {
      const byte = this.bytes[i];
      // A carriage return counts where no line feed follows it.
      if (byte === 10 || (byte === 13 && this.bytes[i + 1] !== 10)) lines += 1;
    }
    return lines;
  }
}

/** Spaces, tabs, ends of lines; also zeros and the end-of-file mark (26) that old programs pad with. */
function isSpace(byte: number): boolean {
  return byte === 32 || (byte >= 9 && byte <= 13) || byte === 0 || byte === 26;
}

function isLineEnd(byte: number): boolean {
  return byte === 10 || byte === 13;
}
