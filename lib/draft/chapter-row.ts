import { readChapterLine, type ListedChapter } from '#lib/cut/read-chapters';
import { cleanTitle } from './clean-title';
import type { Row } from './text-rows';

/** A chapter of a description, with the line that it stands in. */
export interface ChapterRow extends ListedChapter {
  readonly line: number;
  readonly words: string;
}

/**
 * The chapter that a line is; null for any other.
 * @example chapterRow(rowOf('Intro [0:00]')) // { startMs: 0, title: 'Intro', … }
 */
export function chapterRow({ line, body, text }: Row): ChapterRow | null {
  const found = readChapterLine(body);
  if (!found) return null;
  const title = cleanTitle(found.title);
  return /\p{L}/u.test(title) ? { ...found, line, title, words: text } : null;
}
