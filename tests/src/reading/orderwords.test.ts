import { expect, test } from "vitest";
import * as words from "../../../src/reading/orderwords";

test("no list offers a word twice", () => {
  for (const [name, list] of Object.entries(words)) expect(new Set<string>(list).size, name).toBe(list.length);
});
