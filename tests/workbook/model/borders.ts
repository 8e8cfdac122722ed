import type { IBorderData } from "@univerjs/core";
import { clamp } from "../cells";
import { gap, notFound } from "../failure";
import { changeStyle, color, EDGES, type Edge, type Line, lineAt, NO_LINE, styleAt, toBorder } from "../styles";
import { type Arguments, type Calls, Entity, oneOf, type Reads, type Writes } from "./entity";
import type { RangeEntity } from "./range";

const NAMES = Object.keys(EDGES) as readonly Edge[];
const STYLES = ["None", "Continuous", "Dash", "DashDot", "DashDotDot", "Dot", "Double", "SlantDashDot"] as const;
const WEIGHTS = ["Hairline", "Thin", "Medium", "Thick"] as const;

export class Borders extends Entity {
  readonly type = "RangeBorderCollection";

  constructor(private readonly range: RangeEntity) {
    super(range.book);
  }

  override readonly reads: Reads = { count: () => NAMES.length };
  override readonly calls: Calls = {
    getItemAt: (given) => {
      const name = NAMES[given.whole(0)];
      if (!name) throw notFound();
      return new Border(this.range, name);
    },
  };

  override item(given: Arguments): Entity {
    const name = given.text(0);
    if (name.startsWith("Diagonal")) throw gap(`RangeBorderCollection.getItem("${name}")`);
    return new Border(this.range, oneOf(name, NAMES));
  }

  override items(): Entity[] {
    return NAMES.map((name) => new Border(this.range, name));
  }
}

class Border extends Entity {
  readonly type = "RangeBorder";

  constructor(
    private readonly range: RangeEntity,
    private readonly name: Edge,
  ) {
    super(range.book);
  }

  override get id(): string {
    return this.name;
  }

  override readonly reads: Reads = {
    sideIndex: () => this.name,
    style: () => this.line.style,
    weight: () => this.line.weight,
    color: () => this.line.color,
  };

  override readonly writes: Writes = {
    style: (value) => this.draw({ ...this.line, style: oneOf(value, STYLES) }),
    // As in Excel, giving a weight or a colour to an edge without a line draws one.
    weight: (value) => this.draw({ ...this.visible, weight: oneOf(value, WEIGHTS) }),
    color: (value) => this.draw({ ...this.visible, color: color(value) }),
  };

  private get visible(): Line {
    return this.line.style === "None" ? { ...this.line, style: "Continuous" } : this.line;
  }

  /** The line of the edge's first cell. */
  private get line(): Line {
    const sheet = this.book.worksheet(this.range.sheetId);
    const rect = clamp(sheet, this.range.rect);
    const [part] = EDGES[this.name];
    for (let row = rect.row; part && row < rect.row + rect.rows; row += 1)
      for (let column = rect.column; column < rect.column + rect.columns; column += 1)
        if (part.on(rect, row, column)) return lineAt(styleAt(sheet, row, column).bd, part.side);
    return NO_LINE;
  }

  private draw(line: Line): void {
    const border = toBorder(line);
    const rect = clamp(this.book.worksheet(this.range.sheetId), this.range.rect);
    changeStyle(this.book, this.range.sheetId, rect, (row, column) => {
      const sides = EDGES[this.name].filter((part) => part.on(rect, row, column));
      if (sides.length === 0) return undefined;
      const bd: IBorderData = Object.fromEntries(sides.map(({ side }) => [side, border]));
      return { bd };
    });
  }
}
