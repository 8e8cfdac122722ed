import { describe, expect, test } from "vitest";
import { CostingError } from "../../../src/exact/errors";
import { attempt, field, parseForm } from "../../../src/reading/parse";

const refuse = (name: string) => (value: unknown) => {
  if (value === "bad") throw new CostingError("unknownWord", name, "found bad; give good");
  return `read ${String(value)}`;
};
const SHAPE = { one: field(refuse("One")), two: field(refuse("Two")), three: field(refuse("Three")) };

describe("reading a form", () => {
  test("gives each field as its reader read it", () => {
    expect(parseForm(SHAPE, { one: 1, two: "2", three: undefined })).toEqual({
      ok: true,
      value: { one: "read 1", two: "read 2", three: "read undefined" },
    });
  });

  test("gathers the fault of every field, in the order of the form, with its key, code and sentence", () => {
    expect(parseForm(SHAPE, { one: "bad", two: "good", three: "bad" })).toEqual({
      ok: false,
      faults: [
        { field: "one", code: "unknownWord", sentence: "One: found bad; give good" },
        { field: "three", code: "unknownWord", sentence: "Three: found bad; give good" },
      ],
    });
  });

  test("a field that is not there is read as nothing, and fields of no one are left alone", () => {
    expect(parseForm(SHAPE, { four: "bad" })).toMatchObject({ ok: true, value: { one: "read undefined" } });
    expect(parseForm(SHAPE, { four: "bad" })).not.toHaveProperty("value.four");
  });

  test("our own mistakes are not dressed as a person's", () => {
    const broken = {
      one: field(() => {
        throw new TypeError("ours");
      }),
    };
    expect(() => parseForm(broken, { one: 1 })).toThrow(TypeError);
    expect(() =>
      attempt("one", () => {
        throw new TypeError("ours");
      }),
    ).toThrow(TypeError);
  });
});

test("a step that fails is the fault of the field it is tried for", () => {
  expect(attempt("length", () => 7)).toEqual({ ok: true, value: 7 });
  expect(attempt("length", () => refuse("Length")("bad"))).toEqual({
    ok: false,
    faults: [{ field: "length", code: "unknownWord", sentence: "Length: found bad; give good" }],
  });
});
