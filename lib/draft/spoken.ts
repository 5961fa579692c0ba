import { lastAt } from '#lib/cut/last-at';
import type { From } from './draft';
import { readSpoken } from '#lib/cut/spoken';
import { failed, ok, type Problem, type Result } from '#lib/result';
import type { CaptionRemark } from '#lib/cut/captions';

/** What is said, joined, with the line and the time of each stretch. */
export interface SpokenText {
  readonly text: string;
  readonly lines: readonly SpokenPlace[];
  readonly remarks: readonly CaptionRemark[];
  /** When the last of it is over; null in texts without times. */
  readonly endMs: number | null;
}

export interface SpokenPlace {
  /** Offset in the joined text. */
  readonly start: number;
  readonly line: number;
  readonly startMs: number | null;
}

/** As long as a text of an episode may be: captions of a day have some hundred thousand characters. */
export const MOST_CAPTIONS = 8_000_000;

/** The words of captions or a transcript as one text, its lines joined by line feeds. */
export function spokenText(captions: string): Result<SpokenText> {
  if (captions.length > MOST_CAPTIONS) {
    const message =
      'These captions are longer than 8 million characters, far more than an episode has: give those of one episode.';
    return failed({ path: 'captions', code: 'too-long', message });
  }
  const read = readSpoken(captions);
  if (!read.ok) return failed(...(read.problems as [Problem, ...Problem[]]));
  const parts: string[] = [];
  const lines: SpokenPlace[] = [];
  let length = 0;
  let endMs: number | null = null;
  for (const { text, line, startMs, endMs: end } of read.value.lines) {
    lines.push({ start: length, line, startMs });
    parts.push(text);
    length += text.length + 1;
    const last = end ?? startMs;
    if (last !== null && last > (endMs ?? -1)) endMs = last;
  }
  return ok({ text: parts.join('\n'), lines, remarks: read.value.remarks, endMs });
}

/** The place of words in what is said. */
export function fromSpoken({ text, lines }: SpokenText, start: number, end: number): From {
  const place = lastAt(lines, start);
  return {
    text: 'captions',
    line: place?.line ?? 1,
    startMs: place?.startMs ?? null,
    words: text.slice(start, end).replace(/\s+/g, ' '),
  };
}

/** Offset of the first line that begins at a time or after it; the length of the text where none does. */
export function offsetAt({ text, lines }: SpokenText, ms: number): number {
  return lines.find(({ startMs }) => startMs !== null && startMs >= ms)?.start ?? text.length;
}
