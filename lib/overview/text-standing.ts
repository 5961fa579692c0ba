import type { CaptionRemark } from '#lib/cut/captions';
import { readSpoken, type Spoken } from '#lib/cut/spoken';
import { linesOf } from '#lib/cut/text-lines';
import type { EditText } from '#lib/episode/edit-schema';
import { printCount, printRuntime } from '#lib/units/print';

/** What a text of the edit is, and what could not be read of it. */
export interface TextStanding {
  /** 'SubRip captions, 412 lines, until 12:40'. */
  readonly words: string;
  readonly remarks: readonly CaptionRemark[];
}

const FORMATS: Readonly<Record<Spoken['format'], string>> = {
  webvtt: 'WebVTT captions',
  subrip: 'SubRip captions',
  transcript: 'a transcript with times',
  words: 'words without times',
};

/**
 * How a text of the edit was understood.
 * @example textStanding({ kind: 'captions', text: srt }).words // 'SubRip captions, 412 lines, until 12:40'
 */
export function textStanding({ kind, text }: Pick<EditText, 'kind' | 'text'>): TextStanding {
  if (kind !== 'captions') {
    const lines = linesOf(text.trim());
    const words = lines.length === 1 ? 'one line' : `${printCount(lines.length)} lines`;
    return { words: `${words}, ${printCount([...text].length)} characters`, remarks: [] };
  }
  const read = readSpoken(text);
  if (!read.ok) return { words: 'no words could be read', remarks: [] };
  const { format, lines, remarks } = read.value;
  const endMs = lines.reduce((end, line) => Math.max(end, line.endMs ?? line.startMs ?? 0), 0);
  const until = endMs > 0 ? `, until ${printRuntime(Math.floor(endMs / 1000))}` : '';
  const count = lines.length === 1 ? 'one line' : `${printCount(lines.length)} lines`;
  return { words: `${FORMATS[format]}, ${count}${until}`, remarks };
}
