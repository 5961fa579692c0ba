import type { ChapterRow } from './chapter-row';
import { DishList } from './dish-list';
import type { DraftLink, LeftWhy } from './draft';
import { chapterNames, nameKey, namedByAside } from './named-by-aside';
import { rowKinds, type RowKind } from './row-kinds';
import type { Row } from './text-rows';

/** What the lines below a heading or a label are, until the next: ingredients, a method, or nothing of a dish. */
export type Section = 'none' | 'list' | 'method' | 'other';

/** A description that is being read from top to bottom: what was found, and what stands above the line in hand. */
export class Reading {
  /** What each line is by its own words. */
  readonly kinds: readonly RowKind[];
  private readonly chapterNames: ReadonlySet<string>;
  readonly dishes = new DishList();
  readonly chapters: ChapterRow[] = [];
  readonly links: DraftLink[] = [];
  readonly hook: Row[] = [];
  readonly disclosure: Row[] = [];
  section: Section = 'none';
  blankBefore = true;
  /** The first paragraph is over. */
  hookOver = false;
  /** The plain line right above, which may name a link. */
  above: Row | null = null;

  constructor(readonly rows: readonly Row[]) {
    const kinds = rowKinds(rows);
    this.chapterNames = chapterNames(kinds);
    this.kinds = namedByAside(rows, kinds, this.chapterNames);
  }

  /** Whether a chapter is called so. */
  readonly isChapter = (title: string): boolean => this.chapterNames.has(nameKey(title));

  leave(why: LeftWhy, row: Row): void {
    this.dishes.leave(why, row);
  }
}
