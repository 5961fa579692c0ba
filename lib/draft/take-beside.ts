import { follows } from '#lib/cut/read-chapters';
import type { ChapterRow } from './chapter-row';
import { fromLine, leftOut } from './described';
import { linksIn } from './links-in';
import { portionsWithin } from './portions-said';
import type { Reading } from './reading';
import type { Row } from './text-rows';

/** Most links, as the file format has them. */
const MOST_LINKS = 40;

/** Times go up; a line of a time of day or of minutes is no chapter. A chapter ends the dish above it. */
export function takeChapter(reading: Reading, chapter: ChapterRow): void {
  if (!follows(chapter, reading.chapters.at(-1))) {
    const message = 'It does not come after the chapter before it.';
    reading.dishes.left.push(leftOut('prose', fromLine(chapter.line, chapter.words), message));
    return;
  }
  reading.chapters.push(chapter);
  reading.section = 'none';
  reading.dishes.current = null;
}

/**
 * The links of a line.
 * @param above the plain line right above, which names a bare address
 */
export function takeLinks(reading: Reading, row: Row, above: Row | null): void {
  const found = linksIn(row, above?.body ?? '');
  if (reading.section === 'method') reading.section = 'none';
  const fits = found.links.slice(0, Math.max(0, MOST_LINKS - reading.links.length));
  reading.links.push(...fits);
  reading.dishes.left.push(...found.left);
  if (fits.length < found.links.length) reading.leave('full', row);
  if (
    above &&
    fits[0] &&
    reading.dishes.left.at(-1)?.from.line === above.line &&
    row.body.startsWith('http')
  )
    reading.dishes.left.pop();
}

/** Numbers of a dish end its list, and may say its portions: "Serves 6. Per portion 430 kcal." */
export function takeNumbers(reading: Reading, row: Row): void {
  reading.leave('numbers', row);
  const portions = portionsWithin(row.folded);
  if (portions !== null && portions !== 'unclear') reading.dishes.takePortions(row, portions);
  if (
    reading.section === 'list' &&
    reading.dishes.current &&
    reading.dishes.current.lines.length > 0
  )
    reading.section = 'none';
}
