import { cleanTitle } from './clean-title';
import type { Row } from './text-rows';

/** A chapter as a description lists it. */
export interface ChapterRow {
  readonly line: number;
  readonly startMs: number;
  /** Where the list says its end as well. */
  readonly endMs: number | null;
  readonly title: string;
  readonly words: string;
}

/** Far longer than a chapter's line. */
const LONGEST = 200;
const TIME = String.raw`[[(]?((?:\d{1,2}:)?\d{1,2}:[0-5]\d)[\])]?`;
const BEFORE = new RegExp(`^${TIME}(?:\\s?[-–—]\\s?${TIME})?[\\s\\-–—:|•.)]*(.*)$`);
const BEHIND = new RegExp(
  `(?:\\s[-–—|]\\s?|\\s?(?=[[(]))${TIME}(?:\\s?[-–—]\\s?${TIME})?\\s*\\.?$`,
);

/**
 * The chapter that a line is; null for any other. Its time stands before the title, or behind it in brackets or
 * after a dash.
 * @example chapterRow(rowOf('Intro [0:00]')) // { startMs: 0, title: 'Intro', … }
 */
export function chapterRow({ line, body, text }: Row): ChapterRow | null {
  if (body.length > LONGEST) return null;
  const first = BEFORE.exec(body);
  const last = first ? null : BEHIND.exec(body);
  const found = first ?? last;
  if (!found) return null;
  const [, start, end] = found;
  const title = cleanTitle(first ? (first[3] ?? '') : body.slice(0, last?.index));
  const startMs = msOf(start);
  // "7:00 am" is the time of day, and without letters nothing is named.
  if (startMs === null || !/\p{L}/u.test(title) || /^[ap]\.?m\b/i.test(title)) return null;
  return { line, startMs, endMs: msOf(end), title, words: text };
}

function msOf(clock: string | undefined): number | null {
  if (clock === undefined) return null;
  const parts = clock.split(':').map(Number);
  if (parts.length === 3 && (parts[1] ?? 0) > 59) return null;
  let seconds = 0;
  for (const part of parts) seconds = seconds * 60 + part;
  return seconds * 1000;
}
