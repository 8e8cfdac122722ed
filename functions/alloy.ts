import { alloyDensity, CostingError, isBlank, METALS, readWord } from "../src/index";
import { gridOf } from "./grid";
import { type Figure, numberFrom0 } from "./readers";
import { spread } from "./spread";

/** The parts of one list of metals, each an argument of its own. */
type Parts = Readonly<Record<string, ReturnType<typeof numberFrom0.of>>>;

const formulas = new Map<string, (cells: Readonly<Record<string, unknown>>) => unknown[][]>();
const MOST_FORMULAS = 200;
/** Faults name the range, not the place in it. */
const part: Figure<Parts[string]> = { ...numberFrom0, read: (cell) => numberFrom0.read(cell, "parts") };

/**
 * The density of an alloy from a range of symbols and a range of parts of equal shape: a formula for each list of metals.
 * Errors: wrongShape, blank, and those of its cells.
 */
export function densityOf(metals: unknown, parts: unknown): unknown[][] {
  const symbols = gridOf(metals).flat();
  const amounts = gridOf(parts).flat();
  if (symbols.length !== amounts.length) {
    throw new CostingError(
      "wrongShape",
      "parts",
      `found ${amounts.length} cells beside ${symbols.length} metals; give one part for each metal`,
    );
  }
  const named: unknown[] = [];
  const cells: Record<string, unknown> = {};
  symbols.forEach((symbol, at) => {
    if (isBlank(symbol) && isBlank(amounts[at])) return;
    cells[`part${named.length}`] = [[amounts[at]]];
    named.push(symbol);
  });
  if (named.length === 0) {
    throw new CostingError("blank", "metals", 'found nothing; give symbols such as "Au", "Ag", "Cu"');
  }
  return formulaOf(named)(cells);
}

function formulaOf(named: readonly unknown[]): (cells: Readonly<Record<string, unknown>>) => unknown[][] {
  const name = JSON.stringify(named);
  const known = formulas.get(name);
  if (known) return known;
  const metals = named.map((symbol) => readWord(symbol, "metals", METALS));
  const readers = Object.fromEntries(metals.map((_, at) => [`part${at}`, part]));
  const made = spread<Parts>(readers, (row) =>
    alloyDensity(
      metals.flatMap((metal, at) => {
        const parts = row[`part${at}`];
        return parts ? [{ metal, parts }] : [];
      }),
    ),
  );
  if (formulas.size >= MOST_FORMULAS) formulas.clear();
  formulas.set(name, made);
  return made;
}
