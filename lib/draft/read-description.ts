import { follows } from '#lib/cut/read-chapters';
import type { ChapterRow } from './chapter-row';
import { cleanTitle, cut } from './clean-title';
import { asksToDo, SAYS_I } from './asks-to-do';
import { fromLine, leftOut, type Described } from './described';
import { DishList } from './dish-list';
import type { DraftLink, LeftWhy, Said } from './draft';
import { headingAt, type Heading } from './heading';
import { ingredientRow } from './ingredient-row';
import { linksIn } from './links-in';
import { isList, listPieces } from './list-pieces';
import { portionsWithin, readPortions } from './portions-said';
import { rowKinds, type RowKind } from './row-kinds';
import { foldRow, textRows, type Row } from './text-rows';
import { ASKS, ELSEWHERE, PART } from './words';

/** The longest hook and disclosure and most links, as the file format has them. */
const MOST_HOOK = 600;
const MOST_DISCLOSURE = 400;
const MOST_LINKS = 40;
/** Lines that are read: a hundred times those of a long description. */
const MOST_ROWS = 5000;

/**
 * What a description says of dishes, and what it has beside them: its first paragraph, chapters, links, who paid.
 * One reading from top to bottom: a heading or a label says what the lines below it are, until the next.
 * @returns all of it by line; a line that became nothing is `left`
 */
export function readDescription(description: string): Described {
  const rows = textRows(description);
  const read = new Reader(rows.slice(0, MOST_ROWS)).read();
  const next = rows[MOST_ROWS];
  if (!next) return read;
  const message = `At most ${MOST_ROWS} lines of a description are read: the rest was not.`;
  const rest = leftOut('full', fromLine(next.line, next.text), message);
  return { ...read, left: [...read.left, rest] };
}

class Reader {
  private readonly kinds: readonly RowKind[];
  private readonly dishes = new DishList();
  private readonly chapters: ChapterRow[] = [];
  private readonly links: DraftLink[] = [];
  private readonly hook: Row[] = [];
  private readonly disclosure: Row[] = [];
  private section: 'none' | 'list' | 'method' | 'other' = 'none';
  private blankBefore = true;
  private hookOver = false;
  /** The plain line right above, which may name a link. */
  private above: Row | null = null;

  constructor(private readonly rows: readonly Row[]) {
    this.kinds = rowKinds(rows);
  }

  read(): Described {
    this.rows.forEach((row, at) => this.take(row, at));
    return {
      hook: this.joined(this.hook, MOST_HOOK, '\n'),
      chapters: this.chapters,
      dishes: this.dishes.end(),
      links: this.links,
      disclosure: this.joined(this.disclosure, MOST_DISCLOSURE, ' '),
      left: this.dishes.left,
    };
  }

  private take(row: Row, at: number): void {
    const kind = this.kinds[at] ?? { kind: 'blank' };
    const above = this.above;
    if (kind.kind !== 'blank') this.above = null;
    if (kind.kind !== 'words' && this.hook.length > 0) this.hookOver = true;
    switch (kind.kind) {
      case 'blank':
        this.blankBefore = true;
        return;
      case 'rule':
      case 'hashtags':
      case 'chaptersLabel':
        break;
      case 'chapter':
        this.takeChapter(kind.chapter);
        break;
      case 'links':
        this.takeLinks(row, above);
        break;
      case 'disclosure':
        this.disclosure.push(row);
        break;
      case 'allergens':
        this.leave('allergens', row);
        break;
      case 'numbers':
        this.takeNumbers(row);
        break;
      case 'portions':
        this.dishes.takePortions(row, kind.portions);
        break;
      case 'table':
        this.takeTable(row, kind.table);
        break;
      case 'inline':
        this.takeInline(row, kind);
        break;
      case 'ingredientsLabel':
        this.takeLabel(row, kind);
        break;
      case 'methodLabel':
        this.section = 'method';
        this.dishes.any();
        if (kind.rest !== '') this.dishes.addMethod(row, kind.rest);
        break;
      case 'amount':
      case 'words':
        this.takeWords(row, kind.kind, at);
    }
    this.blankBefore = false;
  }

  /** Times go up; a line of a time of day or of minutes is no chapter. */
  private takeChapter(chapter: ChapterRow): void {
    if (!follows(chapter, this.chapters.at(-1))) {
      const message = 'It does not come after the chapter before it.';
      this.dishes.left.push(leftOut('prose', fromLine(chapter.line, chapter.words), message));
      return;
    }
    this.chapters.push(chapter);
    this.section = 'none';
    this.dishes.current = null;
  }

  private takeLinks(row: Row, above: Row | null): void {
    const found = linksIn(row, above?.body ?? '');
    if (this.section === 'method') this.section = 'none';
    const fits = found.links.slice(0, Math.max(0, MOST_LINKS - this.links.length));
    this.links.push(...fits);
    this.dishes.left.push(...found.left);
    if (fits.length < found.links.length) this.leave('full', row);
    if (
      above &&
      fits[0] &&
      this.dishes.left.at(-1)?.from.line === above.line &&
      row.body.startsWith('http')
    )
      this.dishes.left.pop();
  }

  private takeNumbers(row: Row): void {
    this.leave('numbers', row);
    const portions = portionsWithin(row.folded);
    if (portions !== null && portions !== 'unclear') this.dishes.takePortions(row, portions);
    if (this.section === 'list' && this.dishes.current && this.dishes.current.lines.length > 0)
      this.section = 'none';
  }

  private takeTable(row: Row, table: Extract<RowKind, { kind: 'table' }>['table']): void {
    if (table.kind === 'total') this.leave('numbers', row);
    if (table.kind !== 'ingredient') return;
    this.dishes.any();
    this.section = 'list';
    this.dishes.addLine(row, table.words);
  }

  private takeInline(row: Row, inline: Extract<RowKind, { kind: 'inline' }>): void {
    const { head, pieces, portions } = inline;
    const title = cleanTitle(head);
    const inside =
      this.dishes.current !== null &&
      this.dishes.current.style !== 'inline' &&
      this.section === 'list';
    const isPart = PART.test(foldRow(title)) || (inside && pieces.length === 1);
    if (this.section === 'other') this.leave('prose', row);
    else if (isPart || !/\p{L}/u.test(title)) {
      this.dishes.any();
      this.section = 'list';
    } else {
      const many = isList(pieces) || this.dishes.current?.style === 'inline';
      if (!many) {
        this.takeProse(row);
        return;
      }
      const open = this.dishes.open({ text: title, from: fromLine(row.line, row.text) }, 'inline');
      this.dishes.givePortions(open, row, portions);
      this.section = 'list';
    }
    if (this.section === 'list') for (const piece of pieces) this.dishes.addLine(row, piece);
  }

  private takeLabel(row: Row, label: Extract<RowKind, { kind: 'ingredientsLabel' }>): void {
    const rest = label.rest.replace(/^[([]|[)\]]:?$/g, '').trim();
    const folded = foldRow(rest);
    const pieces = listPieces(rest);
    const named = cleanTitle(label.title || rest.replace(/^(?:for|of)\s+/i, ''));
    if (rest !== '' && ELSEWHERE.test(folded)) {
      this.leave('elsewhere', row);
      this.section = 'none';
      return;
    }
    const isPart = PART.test(folded) || PART.test(foldRow(named));
    const plain =
      (label.title === '' && rest === '') ||
      isPart ||
      isList(pieces) ||
      ingredientRow(rest) !== null;
    const portions = label.portions ?? readPortions(folded, true);
    if (plain || readPortions(folded, true) !== null) this.dishes.continueOrOpen();
    else this.dishes.open({ text: named, from: fromLine(row.line, row.text) }, 'plain');
    this.section = 'list';
    const dish = this.dishes.current;
    if (!dish) return;
    dish.labelled = true;
    this.dishes.givePortions(dish, row, portions);
    if (!isPart && rest !== '' && readPortions(folded, true) === null) {
      if (isList(pieces)) for (const piece of pieces) this.dishes.addLine(row, piece);
      else if (ingredientRow(rest)) this.dishes.addLine(row, rest);
    }
  }

  private takeWords(row: Row, kind: 'amount' | 'words', at: number): void {
    const heading = kind === 'words' ? headingAt(this.rows, this.kinds, at) : null;
    if (heading && this.takeHeading(row, heading)) return;
    if (this.section === 'other') {
      this.takeProse(row);
      return;
    }
    if (this.section === 'method') {
      if (kind === 'amount' && row.lead !== 'number' && this.blankBefore && this.isListed(at))
        this.section = 'list';
      else if (!this.blankBefore || row.lead === 'number' || asksToDo(row)) {
        this.dishes.addMethod(row, row.body);
        return;
      }
    }
    if (kind === 'amount') {
      if (this.section === 'list' || this.isListed(at)) {
        this.dishes.any();
        this.section = 'list';
        this.dishes.addLines(row);
      } else if (this.dishes.current && asksToDo(row)) this.dishes.addMethod(row, row.body);
      else this.takeProse(row);
      return;
    }
    if (this.section === 'list' && this.isPlainIngredient(row))
      this.dishes.addLine(row, row.ingredient);
    else if (this.dishes.current && asksToDo(row)) {
      this.section = 'method';
      this.dishes.addMethod(row, row.body);
    } else this.takeProse(row);
  }

  /** Whether what the heading says was taken up. */
  private takeHeading(row: Row, heading: Heading): boolean {
    const dish = this.dishes.current;
    const inLabelled =
      dish !== null && dish.labelled && dish.style !== null && this.section === 'list';
    const weaker = inLabelled && heading.style !== dish.style && WEAK.has(heading.style);
    if (heading.role === 'quiet') {
      this.section = 'none';
      this.dishes.current = null;
      return true;
    }
    // What stands beside parts in the same form is a part itself: "Ragu:", "White sauce:".
    if (heading.role === 'part' && dish?.style === 'colon' && heading.style === 'colon')
      dish.isPart ||= !dish.labelled;
    if (heading.role === 'part' || (heading.role === 'dish' && weaker)) {
      this.dishes.any();
      this.section = 'list';
      return true;
    }
    if (heading.role === 'other') {
      // A line of an ingredient in capitals within a list is none.
      if (this.section === 'list' && !this.blankBefore && heading.style === 'capitals')
        return false;
      this.section = 'other';
      this.dishes.current = null;
      this.above = row;
      return true;
    }
    if (heading.role === 'list') {
      this.dishes.continueOrOpen();
      this.section = 'list';
      return true;
    }
    if (heading.style === 'plain' && this.section === 'method' && !this.blankBefore) return false;
    if (heading.style === 'plain' && this.section === 'list' && !this.blankBefore) return false;
    const open = this.dishes.open(
      { text: heading.title, from: fromLine(row.line, row.text) },
      heading.style,
    );
    this.dishes.givePortions(open, row, heading.portions);
    this.section = 'none';
    return true;
  }

  /** An amount outside a list begins one right below its dish, as a bullet, or beside another. */
  private isListed(at: number): boolean {
    if (
      this.dishes.current &&
      this.dishes.current.title !== null &&
      this.dishes.current.lines.length === 0
    )
      return true;
    const beside = [at - 1, at + 1].some((near) => this.kinds[near]?.kind === 'amount');
    return beside || this.rows[at]?.lead === 'bullet';
  }

  private isPlainIngredient(row: Row): boolean {
    const { folded, lead, text } = row;
    const words = folded.split(' ').length;
    if (ASKS.test(folded) || words > 14) return false;
    if (lead === 'bullet') return !(/[.!?]$/.test(text) && words > 6);
    const joined = !this.blankBefore || this.dishes.current?.lines.length === 0;
    return joined && words <= 7 && !/[.!?:]$/.test(text) && !SAYS_I.test(folded);
  }

  private takeProse(row: Row): void {
    if (this.section === 'method' || this.section === 'list') this.section = 'none';
    const first = this.hook.length === 0 || (!this.hookOver && !this.blankBefore);
    if (first && !this.hookOver && this.dishes.isEmpty && !ASKS.test(row.folded)) {
      this.hook.push(row);
      return;
    }
    if (this.hook.length > 0) this.hookOver = true;
    this.leave('prose', row);
    this.above = row;
  }

  private leave(why: LeftWhy, row: Row): void {
    this.dishes.leave(why, row);
  }

  private joined(rows: readonly Row[], most: number, glue: string): Said | null {
    const [first] = rows;
    if (!first) return null;
    const text = cut(rows.map((row) => row.text).join(glue), most);
    return { text, from: fromLine(first.line, rows.map((row) => row.text).join(' ')) };
  }
}

const WEAK: ReadonlySet<Heading['style']> = new Set([
  'colon',
  'bold',
  'deepHash',
  'plain',
  'picture',
  'capitals',
]);
