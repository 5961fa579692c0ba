import { fromLine, leftOut, type DescribedDish } from './described';
import type { DraftLine, LeftOut, LeftWhy, Said } from './draft';
import type { Heading } from './heading';
import { ingredientRow, plainIngredient } from './ingredient-row';
import { isList, listPieces } from './list-pieces';
import type { SaidPortions } from './portions-said';
import type { Row } from './text-rows';

/** Ingredients of one dish, of all, and the longest method, as the file format has them. */
const MOST_LINES = 400;
const MOST_LINES_IN_ALL = 1000;
const MOST_METHOD = 8000;
const MOST_DISHES = 90;

/** A dish that is being read. */
export interface OpenDish {
  readonly title: Said | null;
  /** How its heading is marked; null where it has none. */
  readonly style: Heading['style'] | 'inline' | null;
  /** Its list has a label of its own. */
  labelled: boolean;
  /** Its heading turned out to be that of a part of a dish. */
  isPart: boolean;
  /** Headings within it that could name dishes of their own: "Green sauce:". */
  readonly maybeDishes: Said[];
  /** A heading within it can only name a part: "For the topping:", "Sauce:". */
  hasParts: boolean;
  readonly lines: DraftLine[];
  portions: DescribedDish['portions'];
  readonly method: Said[];
}

/** The dishes of a description as it is read, line by line; the last one that was opened is the one in hand. */
export class DishList {
  readonly left: LeftOut[] = [];
  /** The dish that lines go to; null where a chapter, a label or a heading has ended it. */
  current: OpenDish | null = null;
  private readonly dishes: OpenDish[] = [];
  private readonly loosePortions: { readonly row: Row; readonly count: number }[] = [];
  private count = 0;

  get isEmpty(): boolean {
    return this.dishes.length === 0;
  }

  open(title: Said | null, style: OpenDish['style']): OpenDish {
    const own = { labelled: false, isPart: false, lines: [], portions: null, method: [] };
    const dish: OpenDish = { title, style, ...own, maybeDishes: [], hasParts: false };
    if (this.dishes.length < MOST_DISHES) this.dishes.push(dish);
    this.current = dish;
    return dish;
  }

  /** The dish in hand, or a new one without a name. */
  any(): OpenDish {
    return this.current ?? this.open(null, null);
  }

  /** A label stays with the dish above it, unless that one has a list of its own already. */
  continueOrOpen(): OpenDish {
    const dish = this.current;
    const goesOn = dish?.method.length === 0 && (dish.lines.length === 0 || dish.style !== null);
    return dish && goesOn ? dish : this.open(null, null);
  }

  /**
   * A heading of a part goes on with the dish in hand. One that could be a dish of its own opens one where none is in
   * hand, and is told at the end where no other heading shows that the dish has parts.
   */
  takePart(said: Said, style: OpenDish['style'], maybeDish: boolean): void {
    if (this.current === null && maybeDish) this.open(said, style).isPart = true;
    else if (maybeDish) this.any().maybeDishes.push(said);
    else this.any().hasParts = true;
  }

  takePortions(row: Row, portions: SaidPortions): void {
    if (portions === 'unclear') this.leave('portions', row);
    else if (this.current) this.givePortions(this.current, row, portions);
    else this.loosePortions.push({ row, count: portions });
  }

  givePortions(dish: OpenDish, row: Row, count: SaidPortions | null): void {
    if (count === null) return;
    if (count === 'unclear' || (dish.portions !== null && dish.portions.count !== count))
      this.leave('portions', row);
    else dish.portions ??= { count, from: fromLine(row.line, row.text) };
  }

  /** The ingredients of a line: one, or several that are parted by commas. */
  addLines(row: Row): void {
    const overridden = row.ingredient !== row.body;
    const pieces = overridden ? [] : listPieces(row.ingredient);
    if (isList(pieces)) for (const piece of pieces) this.addLine(row, piece);
    else this.addLine(row, row.ingredient);
  }

  addLine(row: Row, words: string): void {
    const dish = this.any();
    const isFull = dish.lines.length >= MOST_LINES || this.count >= MOST_LINES_IN_ALL;
    const read = isFull ? null : (ingredientRow(words) ?? plainIngredient(words));
    if (read?.parts.length === 0) this.leave('tooLong', row);
    else if (!read || !this.dishes.includes(dish)) this.leave('full', row);
    else {
      this.count += 1;
      dish.lines.push({ ...read, from: fromLine(row.line, row.text) });
    }
  }

  addMethod(row: Row, words: string): void {
    const dish = this.any();
    const text = words.trim();
    const length = dish.method.reduce((sum, line) => sum + line.text.length + 1, text.length);
    if (length > MOST_METHOD) this.leave('full', row);
    else dish.method.push({ text, from: fromLine(row.line, row.text) });
  }

  /** The dishes that have a name, an ingredient or a method. Portions outside every dish are those of the only one. */
  end(): DescribedDish[] {
    const [only] = this.dishes;
    for (const { row, count } of this.loosePortions) {
      if (only && this.dishes.length === 1) this.givePortions(only, row, count);
      else this.leave('portions', row);
    }
    for (const { title, maybeDishes, hasParts } of this.dishes) {
      const of = title === null ? 'the dish above it' : `“${title.text}”`;
      const message = `Read as a part of ${of}: if it is a dish of its own, its lines below belong there.`;
      if (!hasParts)
        this.left.push(...maybeDishes.map(({ from }) => leftOut('unclear', from, message)));
    }
    return this.dishes
      .filter(({ title, lines, method }) => title !== null || lines.length + method.length > 0)
      .map(({ title, isPart, lines, portions, method }) => ({
        title,
        isPart,
        lines,
        portions,
        method,
      }));
  }

  leave(why: LeftWhy, row: Row): void {
    this.left.push(leftOut(why, fromLine(row.line, row.text)));
  }
}
