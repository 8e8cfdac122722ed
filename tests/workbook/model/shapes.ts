import type { Book } from "../book";
import { notFound } from "../failure";
import { cornerOf, moveTo, newPicture, type Picture } from "../pictures";
import { type Arguments, type Calls, Entity, number, type Reads, text, type Writes } from "./entity";

/** The shapes over a sheet's cells: pictures, and no others. */
export class ShapeCollection extends Entity {
  readonly type = "ShapeCollection";

  constructor(
    book: Book,
    private readonly sheetId: string,
  ) {
    super(book);
  }

  override readonly calls: Calls = {
    addImage: (given) => {
      const { pictures } = this.book.extrasOf(this.sheetId);
      const ids = pictures.map(({ id }) => Number(id));
      const id = String(Math.max(0, ...ids) + 1);
      pictures.push(newPicture(given.text(0), id, `Picture ${id}`));
      return new ShapeEntity(this.book, this.sheetId, id);
    },
    getCount: () => this.items().length,
  };

  override item(given: Arguments): Entity {
    const wanted = given.text(0);
    const found = this.book.extrasOf(this.sheetId).pictures.find(({ id, name }) => id === wanted || name === wanted);
    if (!found) throw notFound();
    return new ShapeEntity(this.book, this.sheetId, found.id);
  }

  override items(): Entity[] {
    return this.book.extrasOf(this.sheetId).pictures.map(({ id }) => new ShapeEntity(this.book, this.sheetId, id));
  }
}

class ShapeEntity extends Entity {
  readonly type = "Shape";

  constructor(
    book: Book,
    private readonly sheetId: string,
    private readonly pictureId: string,
  ) {
    super(book);
  }

  override get id(): string {
    return this.pictureId;
  }

  override readonly reads: Reads = {
    id: () => this.pictureId,
    name: () => this.picture.name,
    type: () => "Image",
    left: () => cornerOf(this.sheet, this.picture).left,
    top: () => cornerOf(this.sheet, this.picture).top,
    width: () => this.picture.width,
    height: () => this.picture.height,
  };

  override readonly writes: Writes = {
    name: (value) => {
      this.picture.name = text(value);
    },
    left: (value) => moveTo(this.sheet, this.picture, { ...cornerOf(this.sheet, this.picture), left: number(value) }),
    top: (value) => moveTo(this.sheet, this.picture, { ...cornerOf(this.sheet, this.picture), top: number(value) }),
    width: (value) => {
      this.picture.width = number(value);
    },
    height: (value) => {
      this.picture.height = number(value);
    },
  };

  override readonly calls: Calls = {
    delete: () => {
      const extras = this.book.extrasOf(this.sheetId);
      extras.pictures = extras.pictures.filter(({ id }) => id !== this.pictureId);
    },
  };

  private get picture(): Picture {
    const found = this.book.extrasOf(this.sheetId).pictures.find(({ id }) => id === this.pictureId);
    if (!found) throw notFound();
    return found;
  }

  private get sheet() {
    return this.book.worksheet(this.sheetId);
  }
}
