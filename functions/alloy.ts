import { alloyDensity, CostingError, isBlank, METALS, readWord } from "../src/index";
import { type Grid, plainGridOf } from "./grid";
import { type Figure, numberFrom0 } from "./readers";
import { spread } from "./spread";

/** The parts of one list of metals, each as one argument. */
type Parts = Readonly<Record<string, ReturnType<typeof numberFrom0.of>>>;

const formulas = new Map<string, (cells: Readonly<Record<string, unknown>>) => unknown[][]>();
const MOST_FORMULAS = 200;
/** Faults name the range, not the place in it. */
const part: Figure<Parts[string]> = { ...numberFrom0, read: (cell, _, said) => numberFrom0.read(cell, "parts", said) };

/**
 * The density of an alloy from a range of symbols and a range of parts of equal shape: a formula for each list of metals.
 * Errors: wrongShape, blank, and those of its cells.
 */
export function densityOf(metals: unknown, parts: unknown): unknown[][] {
  const symbols = listOf(plainGridOf(metals));
  const amounts = listOf(plainGridOf(parts));
  if (symbols.length !== amounts.length) {
    throw new CostingError(
      "wrongShape",
      "parts",
      `found ${amounts.length} cells beside ${symbols.length} metals; give one part for each metal`,
    );
  }
  const named: unknown[] = [];
  const cells: Record<string, unknown> = {};
  for (let at = 0; at < symbols.length; at += 1) {
    if (isBlank(symbols[at]) && isBlank(amounts[at])) continue;
    cells[nameOfPart(named.length)] = [[amounts[at]]];
    named.push(symbols[at]);
  }
  if (named.length === 0) {
    throw new CostingError("blank", "metals", 'found nothing; give symbols such as "Au", "Ag", "Cu"');
  }
  return formulaOf(named)(cells);
}

/** A loop, since Array.flat takes longer than all other steps. */
function listOf(grid: Grid): readonly unknown[] {
  const list: unknown[] = [];
  for (const row of grid) for (let at = 0; at < row.length; at += 1) list.push(row[at]);
  return list;
}

const PARTS = Array.from({ length: 16 }, (_, at) => `part${at}`);

function nameOfPart(at: number): string {
  return PARTS[at] ?? `part${at}`;
}

function formulaOf(named: readonly unknown[]): (cells: Readonly<Record<string, unknown>>) => unknown[][] {
  // The key: the number of symbols, and the symbols with a separator that none of them contains.
  const name = `${named.length}:${named.join("\u0000")}`;
  const known = formulas.get(name);
  if (known) return known;
  const metals = named.map((symbol) => readWord(symbol, "metals", METALS));
  const readers = Object.fromEntries(metals.map((_, at) => [nameOfPart(at), part]));
  const made = spread<Parts>(readers, (row) =>
    alloyDensity(
      metals.flatMap((metal, at) => {
        const parts = row[nameOfPart(at)];
        return parts ? [{ metal, parts }] : [];
      }),
    ),
  );
  if (formulas.size >= MOST_FORMULAS) formulas.clear();
  formulas.set(name, made);
  return made;
}
