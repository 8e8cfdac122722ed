import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Outside, readSource, type SpotSource } from "../../../taskpane/designs/spotsource";

const ANSWERS: Readonly<Record<string, string>> = {
  "/json": '{"data":[{"metal":"silver","price":30.5},{"metal":"gold","price":"2651.25"}],"note":"none","price":0}',
  "/comma": '{"price":"2,651.25"}',
  "/csv": "date,metal,price\r\n2026-05-30,gold,2640\r\n2026-05-31,gold,2651.25\r\n",
  "/semicolons": "date;price\n2026-05-31;2651.25\n",
};

let server: Server;
let base = "";

beforeAll(async () => {
  server = createServer(({ url = "" }, response) => {
    if (url === "/never") return;
    if (url === "/gone") return void response.writeHead(404).end("no");
    if (url === "/away")
      return void response.writeHead(302, { location: `${base.replace("127.0.0.1", "localhost")}/json` }).end();
    response.end(ANSWERS[url] ?? "<html>");
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(() => {
  server.closeAllConnections();
  server.close();
});

const here: Outside = { fetch, allows: ({ hostname }) => hostname === "127.0.0.1", patience: 10_000 };
const read = (path: string, kind: SpotSource["kind"], place: string, outside = here) =>
  readSource({ url: `${base}${path}`, kind, place }, outside);
const sentence = async (...given: Parameters<typeof read>) => {
  const reading = await read(...given);
  return reading.ok ? `read ${reading.amount}` : reading.sentence;
};

describe("a number is read", () => {
  test("from JSON, as a number or a text, by keys and list places", async () => {
    expect(await read("/json", "json", "data.1.price")).toMatchObject({ ok: true, amount: "2651.25" });
    expect(await read("/json", "json", "data.0.price")).toMatchObject({ ok: true, amount: "30.5" });
  });

  test("from CSV, by line and by column or its word", async () => {
    expect(await read("/csv", "csv", "last/price")).toMatchObject({ ok: true, amount: "2651.25" });
    expect(await read("/csv", "csv", "2 / 3")).toMatchObject({ ok: true, amount: "2640" });
    expect(await read("/semicolons", "csv", "2/Price")).toMatchObject({ ok: true, amount: "2651.25" });
  });
});

describe("what fails is said plainly", () => {
  test("an address that is not https is not asked", async () => {
    for (const url of [`${base}/json`, "ftp://a.example/x", "gold", ""]) {
      expect(await readSource({ url, kind: "json", place: "price" })).toEqual({
        ok: false,
        sentence: "The address must be a whole one that begins with https://.",
      });
    }
  });

  test("an answer that came from elsewhere, over an address that is not allowed, is not read", async () => {
    expect(await sentence("/away", "json", "data.1.price")).toMatch(
      /^The answer came from localhost:\d+, which is not/,
    );
  });

  test("an error, no answer, a late one", async () => {
    expect(await sentence("/gone", "json", "price")).toMatch(/answered with the error 404 and no number\.$/);
    const nobody: Outside = { ...here, fetch: () => Promise.reject(new TypeError("Failed to fetch")) };
    expect(await sentence("/json", "json", "price", nobody)).toMatch(/^No answer from 127\.0\.0\.1:\d+: .*\(CORS\)/);
    expect(await sentence("/never", "json", "price", { ...here, patience: 50 })).toMatch(/gave no answer in time/);
  });

  test("an answer of another kind, a wrong place, no number, none above 0", async () => {
    expect(await sentence("/other", "json", "price")).toBe(
      "The answer is not JSON. Look at the address, or choose CSV.",
    );
    expect(await sentence("/json", "json", "data.1.prize")).toBe(
      "The answer has no “prize” in data.1; there is metal, price.",
    );
    expect(await sentence("/json", "json", "data.length")).toContain("The answer has no “length” in data");
    expect(await sentence("/json", "json", "data")).toBe("There is no number at data.");
    expect(await sentence("/json", "json", "note")).toContain('The answer at note: found "none"');
    expect(await sentence("/json", "json", "price")).toContain("The answer at price: found 0");
    expect(await sentence("/comma", "json", "price")).toContain('found "2,651.25", which has separators in it');
    expect(await sentence("/csv", "csv", "price")).toContain("for CSV give line/column");
    expect(await sentence("/csv", "csv", "9/price")).toBe("The answer has no line 9; it has 3.");
    expect(await sentence("/csv", "csv", "2/spot")).toBe(
      "The answer has no column spot; its first line says date, metal, price.",
    );
  });
});
