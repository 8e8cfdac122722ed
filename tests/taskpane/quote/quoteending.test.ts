import { describe, expect, it, vi } from "vitest";
import { quoteMade, quoteThere } from "../../../taskpane/quote/quoteending";

const SEEN = { kind: "seen", rows: 90, faulty: [], waiting: 0 } as const;
const FILLED = {
  number: { year: 2026, serial: 1001 } as never,
  quoteSheet: "Quote 1001",
  jobSheet: "Job 1001",
  ticketsSheet: "Tickets 1001",
  unknownFields: [],
  unplacedFields: [],
  formulaFields: [],
  errors: [],
  isSigned: true,
  looked: { job: SEEN, tickets: SEEN },
};

describe("how the making of a quote ended", () => {
  it("names all that was made, and goes to each of its sheets", () => {
    const goTo = vi.fn();
    const { kind, sentence, remarks, ways = [] } = quoteMade(FILLED, goTo);
    expect([kind, remarks]).toEqual(["done", []]);
    for (const sheet of ["Quote 1001", "Job 1001", "Tickets 1001"]) expect(sentence).toContain(sheet);
    for (const { press } of ways) press();
    expect(goTo.mock.calls).toEqual([["Quote 1001"], ["Job 1001"], ["Tickets 1001"]]);
  });

  it("says all that the template left open, each as a sentence of its own", () => {
    const { remarks = [] } = quoteMade(
      {
        ...FILLED,
        isSigned: false,
        unknownFields: ["{{color}} in B7"],
        unplacedFields: ["discount", "shipping"],
        formulaFields: ["{{customer}} in B8"],
        errors: ["#N/A in B9"],
      },
      () => undefined,
    );
    expect(remarks).toHaveLength(5);
    for (const [at, found] of ["#N/A in B9", "", "{{color}} in B7", "{{discount}}", "{{customer}} in B8"].entries())
      expect(remarks[at]).toContain(found);
  });

  it("is not done where the job or the tickets show errors, or could not be looked at", () => {
    const job = { ...SEEN, faulty: [12, 13] };
    const { kind, remarks } = quoteMade({ ...FILLED, looked: { job, tickets: SEEN } }, () => undefined);
    expect([kind, remarks]).toEqual(["noted", ["Job 1001: 2 of 90 rows show an error: rows 12 and 13."]]);
    const unseen = { kind: "unseen", sentence: "A cell is being edited." } as const;
    expect(quoteMade({ ...FILLED, looked: { job: SEEN, tickets: unseen } }, () => undefined).kind).toBe("noted");
  });

  it("offers a revision where the order has its quote already", () => {
    const revise = vi.fn();
    const { kind, ways = [] } = quoteThere(FILLED, "This order is Quote 1001.", { goTo: () => undefined, revise });
    expect(kind).toBe("noted");
    ways.at(-1)?.press();
    expect(revise).toHaveBeenCalledOnce();
  });
});
