import { withoutUnseen } from '#lib/episode/read-ingredient-clean';
import { plainWidth } from '#lib/episode/read-ingredient-tokens';

/** A chapter as a description lists it. */
export interface ListedChapter {
  readonly startMs: number;
  /** Where the list says its end as well. */
  readonly endMs: number | null;
  /** Its words, with whatever marks stand around them. */
  readonly title: string;
}

/** Far longer than a chapter's line. */
const LONGEST = 200;
const TIME = String.raw`[[(]?((?:\d{1,2}:)?\d{1,2}:[0-5]\d)[\])]?`;
const BEFORE = new RegExp(`^${TIME}(?:\\s?[-–—]\\s?${TIME})?[\\s\\-–—:|•.)]*(.*)$`);
const BEHIND = new RegExp(
  `(?:\\s[-–—|]\\s?|\\s?(?=[[(]))${TIME}(?:\\s?[-–—]\\s?${TIME})?\\s*\\.?$`,
);
/** "7:00 am" is the time of day. */
const OF_DAY = /^[^\p{L}\p{N}]*(?:[ap]\.?m|noon|uhr|o['’]?clock)(?![\p{L}\p{N}])/iu;

/**
 * The chapter that a line without its bullet is; null for any other. Its time stands before the title, or behind it in
 * brackets or after a dash; a time of day is none.
 * @example readChapterLine('Intro [0:00]') // { startMs: 0, endMs: null, title: 'Intro' }
 */
export function readChapterLine(body: string): ListedChapter | null {
  if (body.length > LONGEST) return null;
  const first = BEFORE.exec(body);
  const last = first ? null : BEHIND.exec(body);
  const found = first ?? last;
  if (!found) return null;
  const [, start, end] = found;
  const title = (first ? (first[3] ?? '') : body.slice(0, last?.index)).trim();
  const startMs = msOf(start);
  // Without letters nothing is named.
  if (startMs === null || !/\p{L}/u.test(title) || OF_DAY.test(title)) return null;
  return { startMs, endMs: msOf(end), title };
}

/** Whether a chapter may follow the one before it in a list: times go up. */
export function follows(
  { startMs }: Pick<ListedChapter, 'startMs'>,
  before: Pick<ListedChapter, 'startMs'> | undefined,
): boolean {
  return before === undefined || startMs > before.startMs;
}

/**
 * The chapters that lines of a text list, each at the place of its line: two or more whose times rise; at 0:00 a list
 * begins anew. All null where the lines list none.
 * @example chaptersIn(['Hello', '0:00 Intro', '0:45 Oats']) // [null, the intro, the oats]
 */
export function chaptersIn(lines: readonly string[]): (ListedChapter | null)[] {
  const found: (ListedChapter | null)[] = lines.map(() => null);
  let last: ListedChapter | undefined;
  let count = 0;
  lines.forEach((line, index) => {
    const chapter = readChapterLine(bodyOf(line));
    const anew = chapter?.startMs === 0;
    if (!chapter || !(anew || follows(chapter, last))) return;
    if (anew) {
      found.fill(null, 0, index);
      count = 0;
    }
    found[index] = last = chapter;
    count += 1;
  });
  return count > 1 ? found : lines.map(() => null);
}

/** A line without the bullet, picture or mark before its first letter, number or bracket. */
function bodyOf(line: string): string {
  if (line.length > 2 * LONGEST) return '';
  return plainWidth(withoutUnseen(line).text)
    .replace(/^[^\p{L}\p{N}[(]+/u, '')
    .trim();
}

function msOf(clock: string | undefined): number | null {
  if (clock === undefined) return null;
  const parts = clock.split(':').map(Number);
  if (parts.length === 3 && (parts[1] ?? 0) > 59) return null;
  let seconds = 0;
  for (const part of parts) seconds = seconds * 60 + part;
  return seconds * 1000;
}
