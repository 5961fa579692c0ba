import type { SpokenLine } from '#lib/cut/spoken';
import { linesOf } from '#lib/cut/text-lines';

/** `[m:ss]`, `(h:mm:ss)` anywhere, or a bare `m:ss` at the beginning of a line. */
const MARK =
  /[[(](?:(\d{1,3}):)?(\d{1,2}):([0-5]\d)[\])]|^[ \t]*(?:(\d{1,3}):)?(\d{1,2}):([0-5]\d)(?=\s|$)/g;

/** Whether a text has marks of time, so that it is read as a transcript and not as bare words. */
export function hasTimeMarks(text: string): boolean {
  return linesOf(text).some((line) => [...line.matchAll(MARK)].length > 0);
}

/**
 * A transcript with marks of time before what is said: each stretch begins at its mark and ends at the next. What
 * stands before the first mark has no beginning, the last has no end; nobody knows them. Words without a mark are
 * one stretch a paragraph.
 * @example readTranscript('[1:05] Barley first (1:12) then oil')[0] // { startMs: 65_000, endMs: 72_000, text: 'Barley first', line: 1 }
 */
export function readTranscript(text: string): SpokenLine[] {
  const found: { startMs: number | null; text: string; line: number }[] = [];
  let open: { startMs: number | null; text: string; line: number } | null = null;
  const say = (words: string, line: number) => {
    const trimmed = words.trim();
    if (trimmed === '') return;
    if (open === null) found.push((open = { startMs: null, text: trimmed, line }));
    else open.text = open.text === '' ? trimmed : `${open.text}\n${trimmed}`;
  };
  for (const [index, line] of linesOf(text).entries()) {
    if (line.trim() === '' && open?.startMs === null) open = null;
    let from = 0;
    for (const mark of line.matchAll(MARK)) {
      const startMs = msOf(mark);
      if (startMs === null) continue;
      say(line.slice(from, mark.index), index + 1);
      found.push((open = { startMs, text: '', line: index + 1 }));
      from = mark.index + mark[0].length;
    }
    say(line.slice(from), index + 1);
  }
  return found.map((stretch, index) => ({
    ...stretch,
    endMs: stretch.startMs === null ? null : (found[index + 1]?.startMs ?? null),
  }));
}

function msOf(mark: RegExpExecArray): number | null {
  const [hours, minutes, seconds] = mark[2] === undefined ? mark.slice(4, 7) : mark.slice(1, 4);
  if (hours !== undefined && Number(minutes) > 59) return null;
  return ((Number(hours ?? 0) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000;
}
