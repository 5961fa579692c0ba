import { readSentence } from '#lib/method/read-sentence';
import type { ChapterRow } from './chapter-row';
import { cleanTitle, cut } from './clean-title';
import { fromLine, leftOut, type Described, type DescribedDish } from './described';
import type { DraftLine, DraftLink, LeftOut, LeftWhy, Said } from './draft';
import { headingAt, type Heading } from './heading';
import { ingredientRow, plainIngredient } from './ingredient-row';
import { linksIn } from './links-in';
import { isList, listPieces } from './list-pieces';
import { portionsWithin, readPortions, type SaidPortions } from './portions-said';
import { rowKinds, type RowKind } from './row-kinds';
import { foldRow, textRows, type Row } from './text-rows';
import { ASKS, ELSEWHERE, PART } from './words';

/** Ingredients of one dish, of all, and of the longest method and hook, as the file format has them. */
const MOST_LINES = 400;
const MOST_LINES_IN_ALL = 1000;
const MOST_METHOD = 8000;
const MOST_HOOK = 600;
const MOST_DISCLOSURE = 400;
const MOST_DISHES = 90;
const MOST_LINKS = 40;
/** Lines that are read: a hundred times those of a long description. */
const MOST_ROWS = 5000;

interface OpenDish {
  title: Said | null;
  readonly style: Heading['style'] | 'inline' | null;
  labelled: boolean;
  /** Its heading turned out to be that of a part of a dish. */
  isPart: boolean;
  readonly lines: DraftLine[];
  portions: DescribedDish['portions'];
  readonly method: Said[];
}

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
  private readonly dishes: OpenDish[] = [];
  private readonly chapters: ChapterRow[] = [];
  private readonly links: DraftLink[] = [];
  private readonly left: LeftOut[] = [];
  private readonly hook: Row[] = [];
  private readonly disclosure: Row[] = [];
  private readonly loosePortions: { readonly row: Row; readonly count: number }[] = [];
  private section: 'none' | 'list' | 'method' | 'other' = 'none';
  private dish: OpenDish | null = null;
  private blankBefore = true;
  private hookOver = false;
  private count = 0;
  /** The plain line right above, which may name a link. */
  private above: Row | null = null;

  constructor(private readonly rows: readonly Row[]) {
    this.kinds = rowKinds(rows);
  }

  read(): Described {
    this.rows.forEach((row, at) => this.take(row, at));
    this.settlePortions();
    const said = this.dishes.filter(
      ({ title, lines, method }) => title !== null || lines.length > 0 || method.length > 0,
    );
    return {
      hook: this.joined(this.hook, MOST_HOOK, '\n'),
      chapters: this.chapters,
      dishes: said.map(({ title, isPart, lines, portions, method }) => ({
        title,
        isPart,
        lines,
        portions,
        method,
      })),
      links: this.links,
      disclosure: this.joined(this.disclosure, MOST_DISCLOSURE, ' '),
      left: this.left,
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
        this.takePortions(row, kind.portions);
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
        this.dish ??= this.open(null, null);
        if (kind.rest !== '') this.addMethod(row, kind.rest);
        break;
      case 'amount':
      case 'words':
        this.takeWords(row, kind.kind, at);
    }
    this.blankBefore = false;
  }

  /** Times go up; a line of a time of day or of minutes is no chapter. */
  private takeChapter(chapter: ChapterRow): void {
    const last = this.chapters.at(-1);
    if (last && chapter.startMs <= last.startMs) {
      const message = 'It does not come after the chapter before it.';
      this.left.push(leftOut('prose', fromLine(chapter.line, chapter.words), message));
      return;
    }
    this.chapters.push(chapter);
    this.section = 'none';
    this.dish = null;
  }

  private takeLinks(row: Row, above: Row | null): void {
    const found = linksIn(row, above?.body ?? '');
    const fits = found.links.slice(0, Math.max(0, MOST_LINKS - this.links.length));
    this.links.push(...fits);
    this.left.push(...found.left);
    if (fits.length < found.links.length) this.leave('full', row);
    if (
      above &&
      fits[0] &&
      this.left.at(-1)?.from.line === above.line &&
      row.body.startsWith('http')
    )
      this.left.pop();
  }

  private takeNumbers(row: Row): void {
    this.leave('numbers', row);
    const portions = portionsWithin(row.folded);
    if (portions !== null && portions !== 'unclear') this.takePortions(row, portions);
    if (this.section === 'list' && this.dish && this.dish.lines.length > 0) this.section = 'none';
  }

  private takePortions(row: Row, portions: SaidPortions): void {
    if (portions === 'unclear') this.leave('portions', row);
    else if (this.dish) this.givePortions(this.dish, row, portions);
    else this.loosePortions.push({ row, count: portions });
  }

  private givePortions(dish: OpenDish, row: Row, count: SaidPortions | null): void {
    if (count === null) return;
    if (count === 'unclear' || (dish.portions !== null && dish.portions.count !== count))
      this.leave('portions', row);
    else dish.portions ??= { count, from: fromLine(row.line, row.text) };
  }

  /** Portions that stand outside every dish are those of the only one. */
  private settlePortions(): void {
    const [only] = this.dishes;
    for (const { row, count } of this.loosePortions) {
      if (only && this.dishes.length === 1) this.givePortions(only, row, count);
      else this.leave('portions', row);
    }
  }

  private takeTable(row: Row, table: Extract<RowKind, { kind: 'table' }>['table']): void {
    if (table.kind === 'total') this.leave('numbers', row);
    if (table.kind !== 'ingredient') return;
    this.dish ??= this.open(null, null);
    this.section = 'list';
    this.addLine(row, table.words);
  }

  private takeInline(row: Row, inline: Extract<RowKind, { kind: 'inline' }>): void {
    const { head, pieces, portions } = inline;
    const title = cleanTitle(head);
    const inside = this.dish !== null && this.dish.style !== 'inline' && this.section === 'list';
    const isPart = PART.test(foldRow(title)) || (inside && pieces.length === 1);
    if (this.section === 'other') this.leave('prose', row);
    else if (isPart || !/\p{L}/u.test(title)) {
      this.dish ??= this.open(null, null);
      this.section = 'list';
    } else {
      const many = isList(pieces) || this.dish?.style === 'inline';
      if (!many) {
        this.takeProse(row);
        return;
      }
      const open = this.open({ text: title, from: fromLine(row.line, row.text) }, 'inline');
      this.givePortions(open, row, portions);
      this.section = 'list';
    }
    if (this.section === 'list') for (const piece of pieces) this.addLine(row, piece);
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
    if (plain || readPortions(folded, true) !== null) this.continueOrOpen();
    else this.open({ text: named, from: fromLine(row.line, row.text) }, 'plain');
    this.section = 'list';
    const dish = this.dish;
    if (!dish) return;
    dish.labelled = true;
    this.givePortions(dish, row, portions);
    if (!isPart && rest !== '' && readPortions(folded, true) === null) {
      if (isList(pieces)) for (const piece of pieces) this.addLine(row, piece);
      else if (ingredientRow(rest)) this.addLine(row, rest);
    }
  }

  /** A label stays with the dish above it, unless that one has a list of its own already. */
  private continueOrOpen(): void {
    const { dish } = this;
    if (dish && dish.method.length === 0 && (dish.lines.length === 0 || dish.style !== null))
      return;
    this.open(null, null);
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
        this.addMethod(row, row.body);
        return;
      }
    }
    if (kind === 'amount') {
      if (this.section === 'list' || this.isListed(at)) {
        this.dish ??= this.open(null, null);
        this.section = 'list';
        this.addLines(row);
      } else if (this.dish && asksToDo(row)) this.addMethod(row, row.body);
      else this.takeProse(row);
      return;
    }
    if (this.section === 'list' && this.isPlainIngredient(row)) this.addLine(row, row.ingredient);
    else if (this.dish && asksToDo(row)) {
      this.section = 'method';
      this.addMethod(row, row.body);
    } else this.takeProse(row);
  }

  /** Whether what the heading says was taken up. */
  private takeHeading(row: Row, heading: Heading): boolean {
    const { dish } = this;
    const inLabelled =
      dish !== null && dish.labelled && dish.style !== null && this.section === 'list';
    const weaker = inLabelled && heading.style !== dish.style && WEAK.has(heading.style);
    if (heading.role === 'quiet') {
      this.section = 'none';
      this.dish = null;
      return true;
    }
    // What stands beside parts in the same form is a part itself: "Ragu:", "White sauce:".
    if (heading.role === 'part' && dish?.style === 'colon' && heading.style === 'colon')
      dish.isPart ||= !dish.labelled;
    if (heading.role === 'part' || (heading.role === 'dish' && weaker)) {
      this.dish ??= this.open(null, null);
      this.section = 'list';
      return true;
    }
    if (heading.role === 'other') {
      // A line of an ingredient in capitals within a list is none.
      if (this.section === 'list' && !this.blankBefore && heading.style === 'capitals')
        return false;
      this.section = 'other';
      this.dish = null;
      this.above = row;
      return true;
    }
    if (heading.role === 'list') {
      this.continueOrOpen();
      this.section = 'list';
      return true;
    }
    if (heading.style === 'plain' && this.section === 'method' && !this.blankBefore) return false;
    if (heading.style === 'plain' && this.section === 'list' && !this.blankBefore) return false;
    const open = this.open(
      { text: heading.title, from: fromLine(row.line, row.text) },
      heading.style,
    );
    this.givePortions(open, row, heading.portions);
    this.section = 'none';
    return true;
  }

  private open(title: Said | null, style: OpenDish['style']): OpenDish {
    const dish: OpenDish = {
      title,
      style,
      labelled: false,
      isPart: false,
      lines: [],
      portions: null,
      method: [],
    };
    if (this.dishes.length < MOST_DISHES) this.dishes.push(dish);
    this.dish = dish;
    return dish;
  }

  /** An amount outside a list begins one right below its dish, as a bullet, or beside another. */
  private isListed(at: number): boolean {
    if (this.dish && this.dish.title !== null && this.dish.lines.length === 0) return true;
    const beside = [at - 1, at + 1].some((near) => this.kinds[near]?.kind === 'amount');
    return beside || this.rows[at]?.lead === 'bullet';
  }

  private isPlainIngredient(row: Row): boolean {
    const { folded, lead, text } = row;
    const words = folded.split(' ').length;
    if (ASKS.test(folded) || words > 14) return false;
    if (lead === 'bullet') return !(/[.!?]$/.test(text) && words > 6);
    const joined = !this.blankBefore || this.dish?.lines.length === 0;
    return joined && words <= 7 && !/[.!?:]$/.test(text) && !SAYS_I.test(folded);
  }

  private addLines(row: Row): void {
    const pieces = listPieces(row.ingredient.replace(/[\u202d\u202e]/g, ''));
    const overridden = row.ingredient !== row.body;
    if (!overridden && isList(pieces)) for (const piece of pieces) this.addLine(row, piece);
    else this.addLine(row, row.ingredient);
  }

  private addLine(row: Row, words: string): void {
    const { dish } = this;
    if (!dish) return;
    if (dish.lines.length >= MOST_LINES || this.count >= MOST_LINES_IN_ALL) {
      this.leave('full', row);
      return;
    }
    const read = ingredientRow(words) ?? plainIngredient(words);
    if (read.parts.length === 0) {
      this.leave('tooLong', row);
      return;
    }
    const more = dish.lines.length + read.parts.length;
    if (more > MOST_LINES || !this.dishes.includes(dish)) {
      this.leave('full', row);
      return;
    }
    this.count += 1;
    dish.lines.push({ ...read, from: fromLine(row.line, row.text) });
  }

  private addMethod(row: Row, words: string): void {
    const dish = (this.dish ??= this.open(null, null));
    const text = words.trim();
    const length = dish.method.reduce((sum, line) => sum + line.text.length + 1, text.length);
    if (length > MOST_METHOD) this.leave('full', row);
    else dish.method.push({ text, from: fromLine(row.line, row.text) });
  }

  private takeProse(row: Row): void {
    if (this.section === 'method' || this.section === 'list') this.section = 'none';
    const first = this.hook.length === 0 || (!this.hookOver && !this.blankBefore);
    if (first && !this.hookOver && this.dishes.length === 0 && !ASKS.test(row.folded)) {
      this.hook.push(row);
      return;
    }
    if (this.hook.length > 0) this.hookOver = true;
    this.leave('prose', row);
    this.above = row;
  }

  private leave(why: LeftWhy, row: Row): void {
    this.left.push(leftOut(why, fromLine(row.line, row.text)));
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
const SAYS_I = /\b(?:i|i'm|i've|you|we|it's|this|that's|let me|don't)\b/;
/** Words before the verb of a sentence that asks for something. */
const BEFORE_VERB =
  /^(?:(?:then|now|next|first|finally|meanwhile|lastly|in a (?:large |small )?(?:bowl|pan|tray|pot))[,:]?\s+)*/;

/** Whether a line asks for something to be done, as a method does: its first word is the verb. */
function asksToDo({ body, folded }: Row): boolean {
  if (body.length > 1200 || SAYS_I.test(folded.slice(0, 40))) return false;
  const [sentence = ''] = body.split(/(?<=[.!?])\s/);
  const [step] = readSentence(sentence.slice(0, 400));
  if (!step || step.verb === '') return false;
  const first = folded.replace(BEFORE_VERB, '').split(/[^a-z-]+/)[0] ?? '';
  return first.startsWith(step.verb.slice(0, 5)) && folded.split(' ').length >= 3;
}
