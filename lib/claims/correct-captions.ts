import { cuesOf, type Captions, type Cue } from '#lib/cut/captions';
import { TAGS } from '#lib/cut/caption-words';
import { characterPlaces, type CharacterPlace } from '#lib/cut/character-places';
import { linesOf } from '#lib/cut/text-lines';
import { readSpoken } from '#lib/cut/spoken';
import { joinSpoken, linesIn } from './places/spoken-text';

/** A correction that the person accepted: a stretch of what the captions say, and the right words. */
export interface AcceptedCorrection {
  /** UTF-16 units of the joined text, as a statement has them; `end` is the first unit after it. */
  readonly start: number;
  readonly end: number;
  readonly words: string;
}

/** Captions with corrections in them, and the corrections that have no place there. */
export interface CorrectedCaptions {
  readonly text: string;
  readonly left: readonly (AcceptedCorrection & { readonly why: string })[];
}

/** A stretch of the file that is written anew. */
interface Change {
  readonly from: number;
  readonly to: number;
  readonly words: string;
}

/**
 * A caption file (WebVTT, SubRip) in which only the words of accepted corrections are others. Words that run over lines
 * or cues stay on as many lines; captions that roll say the same again, and are corrected there too.
 *
 * Laws: without a correction the file is the same to the byte; with some, all outside their stretches is, so that no
 * cue's times change.
 *
 * @param pasted the file as it came in
 * @example correctCaptions(srt, [{ start: 14, end: 26, words: 'about 610 calories' }]).text
 */
export function correctCaptions(
  pasted: string,
  corrections: readonly AcceptedCorrection[],
): CorrectedCaptions {
  if (corrections.length === 0) return { text: pasted, left: [] };
  const read = readSpoken(pasted);
  const captions = read.ok ? read.value.captions : null;
  if (!captions) {
    const why = 'it is a transcript and no captions: only captions have times to keep';
    return { text: pasted, left: corrections.map((one) => ({ ...one, why })) };
  }
  const rows = rowsOf(pasted, captions);
  const changes: Change[] = [];
  const left: (AcceptedCorrection & { why: string })[] = [];
  const inOrder = [...corrections].sort((a, b) => a.start - b.start);
  let done = 0;
  for (const one of inOrder) {
    const made = one.start < done ? 'it overlaps another correction' : changesFor(one, rows);
    if (typeof made === 'string') left.push({ ...one, why: made });
    else {
      const escaped = made.map((each) => ({
        ...each,
        words: captions.format === 'webvtt' ? escape(each.words) : each.words,
      }));
      changes.push(...escaped);
      done = one.end;
    }
  }
  return { text: written(pasted, changes), left };
}

/** Words in WebVTT have no bare `&`, `<` or `>` (W3C WebVTT, 4.2.2). */
const escape = (words: string): string =>
  words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** A line of words of a cue: where it stands in the joined text (null where it is only said again), and in the file. */
interface Row {
  readonly start: number | null;
  readonly words: string;
  readonly places: readonly CharacterPlace[];
  /** The cue that it is of, counted from 0. */
  readonly cue: number;
}

function rowsOf(pasted: string, captions: Captions): Row[] {
  const file = { starts: linesIn(pasted), lines: linesOf(pasted) };
  const { text, lines: joined } = joinSpoken(pasted);
  const said = new Map(
    joined.map(({ line, start }, at) => {
      const next = joined[at + 1];
      return [line, { start, end: next ? next.start - 1 : text.length }];
    }),
  );
  return cuesOf(captions).flatMap((cue, number) => {
    const own = wordsOf(cue, file);
    const span = said.get(cue.line);
    // What rolls on from the cue before is not said again: the last lines are the new ones.
    const fresh = span ? text.slice(span.start, span.end).split('\n').length : 0;
    let start = span?.start ?? 0;
    return own.map((row, at): Row => {
      if (at < own.length - fresh) return { ...row, start: null, cue: number };
      const here = start;
      start += row.words.length + 1;
      const isThere = text.startsWith(row.words, here);
      return { ...row, start: isThere ? here : null, cue: number };
    });
  });
}

/** The lines of a cue's words, each unit with its place in the file. */
function wordsOf(
  { line, text }: Cue,
  { starts, lines }: { readonly starts: readonly number[]; readonly lines: readonly string[] },
): Pick<Row, 'words' | 'places'>[] {
  const written = text === '' ? [] : lines.slice(line, line + linesOf(text).length);
  // Where each line begins in the cue's text, and so much further on in the file.
  let begins = 0;
  const shifts = written.map((words, at) => {
    const from = begins;
    begins += words.length + 1;
    return { from, by: (starts[line + at] ?? 0) - from };
  });
  let at = 0;
  return characterPlaces(written.join('\n')).map((places) => ({
    words: places.map(({ char }) => char).join(''),
    places: places.map(({ char, from, to }) => {
      while ((shifts[at + 1]?.from ?? Infinity) <= from) at += 1;
      const by = shifts[at]?.by ?? 0;
      return { char, from: from + by, to: to + by };
    }),
  }));
}

/** What is changed for a correction, or why nothing can be. */
function changesFor(
  { start, end, words }: AcceptedCorrection,
  rows: readonly Row[],
): Change[] | string {
  const pieces = rows.flatMap((row, at) => {
    if (row.start === null) return [];
    const from = Math.max(start, row.start) - row.start;
    const to = Math.min(end, row.start + row.words.length) - row.start;
    return from < to ? [{ row, at, from, to }] : [];
  });
  if (pieces.length === 0) return 'its words are not in the captions any more';
  const shares = spread(
    words,
    pieces.map(({ row, from, to }) => row.words.slice(from, to)),
  );
  if (shares === null) return 'it has fewer words than the lines it runs over';
  return pieces.flatMap(({ row, at, from, to }, index) => {
    const fresh = shares[index] ?? '';
    return [row, ...rolledOn(rows, at)].flatMap(({ places }) => {
      const [first, last] = [places[from], places[to - 1]];
      return first && last ? [{ from: first.from, to: last.to, words: fresh }] : [];
    });
  });
}

/** The new words on as many lines as the old: each line as many words as it had, the first what is more. */
function spread(words: string, old: readonly string[]): string[] | null {
  const all = words.split(/\s+/).filter((word) => word !== '');
  if (old.length === 1) return [words];
  if (all.length < old.length) return null;
  const rest = old.slice(1).map((line) => line.split(/\s+/).filter((word) => word !== '').length);
  const shares: string[] = [];
  let end = all.length;
  for (let at = rest.length - 1; at >= 0; at -= 1) {
    const count = Math.max(1, Math.min(rest[at] ?? 1, end - at - 1));
    shares.unshift(all.slice(end - count, end).join(' '));
    end -= count;
  }
  return [all.slice(0, end).join(' '), ...shares];
}

/** The same line where the next cues only say it again, as captions do that roll. */
function rolledOn(rows: readonly Row[], at: number): Row[] {
  const line = rows[at];
  if (!line) return [];
  const again: Row[] = [];
  let { cue } = line;
  for (const row of rows.slice(at + 1)) {
    if (row.cue > cue + 1) break;
    if (row.cue === cue + 1 && row.start === null && row.words === line.words) {
      again.push(row);
      cue = row.cue;
    }
  }
  return again;
}

function written(pasted: string, changes: readonly Change[]): string {
  const inOrder = [...changes].sort((a, b) => a.from - b.from);
  let text = '';
  let at = 0;
  for (const { from, to, words } of inOrder) {
    // Tags between the words stay, behind them: what was opened before is closed after.
    const tags = pasted.slice(from, to).match(TAGS) ?? [];
    text += pasted.slice(at, from) + words + tags.join('');
    at = to;
  }
  return text + pasted.slice(at);
}
