import { failed, ok, type Result } from '#lib/result';
import { captionWords } from '#lib/cut/caption-words';
import { cuesOf, type CaptionRemark, type Captions } from '#lib/cut/captions';
import { readSubRip } from '#lib/cut/read-subrip';
import { hasTimeMarks, readTranscript } from '#lib/cut/read-transcript';
import { readWebVtt } from '#lib/cut/read-webvtt';
import { linesOf } from '#lib/cut/text-lines';

/** Words that were said, from a time to another; null where nobody knows it. */
export interface SpokenLine {
  readonly startMs: number | null;
  readonly endMs: number | null;
  readonly text: string;
  /** Where it stands in what was pasted, counted from 1. */
  readonly line: number;
}

/** What was said, by whichever way it came in. */
export interface Spoken {
  readonly format: 'webvtt' | 'subrip' | 'transcript' | 'words';
  readonly lines: readonly SpokenLine[];
  readonly remarks: readonly CaptionRemark[];
  /** The file itself, where it was one of captions. */
  readonly captions: Captions | null;
}

/** Characters that are read at most: captions of a long day have some hundred thousand. */
const MOST = 64 * 1024 * 1024;

/**
 * What was said, of captions in WebVTT or SubRip, a transcript with marks of time, or bare words: told apart by what
 * stands in it. Lines that captions repeat as they roll are said once.
 * @returns `empty` or `too-long` in words, else all that could be read, with remarks by line
 * @example readSpoken('1\n00:00:01,000 --> 00:00:02,000\n180 calories') // one line from 1000 to 2000 ms
 */
export function readSpoken(text: string): Result<Spoken> {
  if (text.length > MOST) {
    const message = 'This is longer than 64 million characters: give one episode at a time.';
    return failed({ path: 'captions', code: 'too-long', message });
  }
  if (text.trim() === '') {
    return failed({ path: 'captions', code: 'empty', message: 'There are no words in it.' });
  }
  const clean = text.replace(/^\uFEFF/, '');
  const isWebVtt = /^WEBVTT(?:[ \t\r\n]|$)/.test(clean);
  if (isWebVtt || hasArrow(clean)) {
    const captions = isWebVtt ? readWebVtt(clean) : readSubRip(clean);
    const { format, remarks } = captions;
    return ok({ format, lines: spokenLines(captions), remarks, captions });
  }
  const format = hasTimeMarks(clean) ? 'transcript' : 'words';
  return ok({ format, lines: readTranscript(clean), remarks: [], captions: null });
}

const hasArrow = (text: string): boolean => /^\s*-?[\d:.,]+\s*-->\s*-?[\d:.,]+/m.test(text);

/**
 * The words of captions line by line. Captions that roll repeat the line above until it scrolls away: a line that
 * the cue just before said too, at the place where this one begins, is not said again.
 */
export function spokenLines(captions: Pick<Captions, 'blocks'>): SpokenLine[] {
  const said: SpokenLine[] = [];
  let before: readonly string[] = [];
  let beforeEndMs = -Infinity;
  for (const { startMs, endMs, text, line } of cuesOf(captions)) {
    const all = linesOf(captionWords(text)).filter((words) => words !== '');
    // Repeated later, after a pause, it was said again.
    const repeated = startMs - beforeEndMs < ROLLING_MS ? overlap(before, all) : 0;
    const fresh = all.slice(repeated);
    if (fresh.length > 0) said.push({ startMs, endMs, text: fresh.join('\n'), line });
    if (all.length > 0) {
      before = all;
      beforeEndMs = endMs;
    }
  }
  return said;
}

/** Rolling captions follow one another without a pause; a small one is forgiven (common practice, no source). */
const ROLLING_MS = 150;

/** How many lines at the end of one are the first lines of the next. */
function overlap(before: readonly string[], now: readonly string[]): number {
  for (let count = Math.min(before.length, now.length); count > 0; count -= 1) {
    const tail = before.slice(before.length - count);
    if (tail.every((words, index) => words === now[index])) return count;
  }
  return 0;
}
