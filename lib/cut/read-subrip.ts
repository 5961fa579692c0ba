import { readTiming } from '#lib/cut/caption-times';
import { remarksOfTimes, type CaptionRemark, type Captions, type Cue } from '#lib/cut/captions';
import { linesOf } from '#lib/cut/text-lines';

const NUMBER = /^\s*\d+\s*$/;

/**
 * A SubRip file (no standard; the form from memory): number, times, words, an empty line. A line with two times
 * begins a cue and the number above it belongs to it; all else are its words, empty lines between them included, so
 * that no word is lost. What cannot be read is named by its line.
 */
export function readSubRip(text: string): Captions {
  const lines = linesOf(text);
  const starts = lines.flatMap((line, at) => (line.includes('-->') ? [at] : []));
  const remarks: CaptionRemark[] = [];
  const blocks: Cue[] = [];
  const before = firstOf(lines, starts[0] ?? lines.length);
  if (lines.slice(0, before).some((line) => line.trim() !== '')) {
    const message = 'Words before the first times: left out.';
    remarks.push({ line: 1, code: 'block', message, skipped: true });
  }
  for (const [index, at] of starts.entries()) {
    const from = firstOf(lines, at);
    const until = firstOf(lines, starts[index + 1] ?? lines.length);
    const name = from < at ? (lines[from] ?? '').trim() : '';
    const written = (lines[at] ?? '').trim();
    const line = at + 1;
    const of = { line, skipped: false };
    const times = readTiming(written);
    if (times === null) {
      const message = `“${written}” should say from when to when, as in 00:00:01,000 --> 00:00:04,000: left out with its words.`;
      remarks.push({ line, code: 'times', message, skipped: true });
      continue;
    }
    if (name === '') remarks.push({ ...of, code: 'number', message: 'It has no number.' });
    const endMs = Math.max(times.startMs, times.endMs);
    if (endMs > times.endMs) {
      const message = 'It ends before it begins: it is taken to end where it begins.';
      remarks.push({ ...of, code: 'backwards', message });
    }
    const words = lines
      .slice(at + 1, until)
      .join('\n')
      .replace(/\n+$/, '');
    blocks.push({ kind: 'cue', name, ...times, endMs, text: words, line });
  }
  const all = [...remarks, ...remarksOfTimes(blocks)];
  return { format: 'subrip', head: '', blocks, remarks: all.sort((a, b) => a.line - b.line) };
}

/** Where the cue begins whose times stand at a line: at its number, if one is directly above and a line of its own. */
function firstOf(lines: readonly string[], timesAt: number): number {
  const above = lines[timesAt - 1];
  const alone = timesAt < 2 || (lines[timesAt - 2] ?? '').trim() === '';
  const isTimes = timesAt < lines.length;
  return isTimes && alone && above !== undefined && NUMBER.test(above) ? timesAt - 1 : timesAt;
}
