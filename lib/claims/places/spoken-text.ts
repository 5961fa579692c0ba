import type { CaptionRemark } from '#lib/cut/captions';
import { readSpoken } from '#lib/cut/spoken';
import type { PlacedLine } from './placed-text';

/** What captions or a transcript say, joined into one text. */
interface JoinedText {
  readonly text: string;
  readonly lines: readonly PlacedLine[];
  readonly remarks: readonly CaptionRemark[];
}

/**
 * The words of captions or a transcript as one text, its lines joined by line feeds, with the time and the line of the
 * file from which each came.
 * @example joinSpoken(srt).lines[0] // { start: 0, line: 2, startMs: 1000, endMs: 2500 }
 */
export function joinSpoken(pasted: string): JoinedText {
  const read = readSpoken(pasted);
  if (!read.ok) {
    const [problem] = read.problems;
    const message = problem?.message ?? '';
    return { text: '', lines: [], remarks: [{ line: 1, code: 'empty', message, skipped: true }] };
  }
  const { format, lines: spoken, remarks } = read.value;
  const lines: PlacedLine[] = [];
  let text = '';
  for (const { startMs, endMs, text: words, line } of spoken) {
    if (text !== '') text += '\n';
    // Of bare words each line of a paragraph is a line of what was pasted; of cues all stand at their times.
    const parts = format === 'words' ? linesIn(words) : [0];
    parts.forEach((offset, index) =>
      lines.push({ start: text.length + offset, line: line + index, startMs, endMs }),
    );
    text += words;
  }
  return { text, lines, remarks };
}

/** Where each line of some words begins. */
export function linesIn(text: string): number[] {
  const found = [0];
  for (const match of text.matchAll(/\r\n|\n|\r/g)) found.push(match.index + match[0].length);
  return found;
}
